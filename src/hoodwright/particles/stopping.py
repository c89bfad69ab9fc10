"""How far a particle flies that is thrown into still air.

Stokes' form, speed times relaxation time, overstates it: two times for 100 um at 10 m/s. A crowd of particles flies
farther than one alone, since it drags the air along.
"""

import numpy as np

from hoodwright.particles.drag import HIGHEST_REYNOLDS, drag_coefficient, particle_reynolds_number
from hoodwright.ranges import not_above, not_below, not_negative, positive, within

NODES, WEIGHTS = np.polynomial.legendre.leggauss(48)  # enough for ten digits over the whole range
MERCER_LOW, MERCER_HIGH = 1.0, 400.0


def relaxation_time(diameter, density, viscosity, slip=1.0):
    """Time in which a slow particle takes up the motion of the air: rho d^2 C / (18 mu).

    Parameters
    ----------
    diameter : float or array [m]
    density : float or array, broadcast with `diameter` [kg/m3]
        Of the particle.
    viscosity : float or array, broadcast with the others [Pa s]
    slip : float or array, broadcast with the others [-]
        From `slip_factor`; matters below about 10 um.

    Returns
    -------
    time : broadcast shape [s]

    Valid: all above 0, slip of 1 or more; else RangeError is raised.
    Source: [hinds, relaxation time]
    """
    d, rho, mu = _given(diameter, density, viscosity)
    return rho * d**2 * _slip(slip) / (18 * mu)


def stokes_stopping_distance(speed, time):
    """Stopping distance by Stokes' drag: speed times relaxation time. An upper bound, near only for slow, fine dust.

    Parameters
    ----------
    speed : float or array [m/s]
        With which the particle is thrown.
    time : float or array, broadcast with `speed` [s]
        From `relaxation_time`.

    Returns
    -------
    distance : broadcast shape [m]

    Valid: speed of 0 or more, time above 0; else RangeError is raised.
    Source: [hinds, stopping distance]
    """
    return not_negative("speed", speed, "m/s") * positive("relaxation time", time, "s")


def stopping_distance(diameter, density, speed, air_density, viscosity, slip=1.0):
    """Stopping distance of a sphere by its drag at every speed on its way.

    S = (4 rhop d C / (3 rho)) integral of dRe / (Re Cd), from 0 to the Reynolds number of the throw.

    Parameters
    ----------
    diameter : float or array [m]
    density : float or array, broadcast with `diameter` [kg/m3]
        Of the particle.
    speed : float or array, broadcast with the others [m/s]
        With which the particle is thrown.
    air_density : float or array, broadcast with the others [kg/m3]
    viscosity : float or array, broadcast with the others [Pa s]
    slip : float or array, broadcast with the others [-]
        From `slip_factor`; matters below about 10 um.

    Returns
    -------
    distance : broadcast shape [m]

    Valid: speed of 0 or more, the others above 0, slip of 1 or more, Reynolds number up to 200 000; else RangeError
    is raised. One particle alone in still air, no gravity.
    Source: [barati14, first formula, integrated over the way]
    """
    d, rho_p, mu = _given(diameter, density, viscosity)
    reynolds = particle_reynolds_number(d, speed, air_density, mu)
    rho = positive("density of the air", air_density, "kg/m3")
    return (4 * rho_p * d * _slip(slip) / (3 * rho) * _way(reynolds))[()]


def mercer_stopping_distance(diameter, density, speed, air_density, viscosity):
    """Stopping distance by Mercer's closed form: (rhop d / rho) (r - sqrt(6) atan(r / sqrt(6))), r = Re^(1/3).

    For a pocket calculator; `stopping_distance` holds over a wider range.

    Parameters
    ----------
    diameter : float or array [m]
    density : float or array, broadcast with `diameter` [kg/m3]
        Of the particle.
    speed : float or array, broadcast with the others [m/s]
    air_density : float or array, broadcast with the others [kg/m3]
    viscosity : float or array, broadcast with the others [Pa s]

    Returns
    -------
    distance : broadcast shape [m]

    Valid: Reynolds number 1 to 400; outside this RangeError is raised.
    Source: [hinds, Mercer's formula, from memory]
    """
    d, rho_p, mu = _given(diameter, density, viscosity)
    rho = positive("density of the air", air_density, "kg/m3")
    tail = ", the limit of Mercer's formula; use stopping_distance"
    reynolds = particle_reynolds_number(d, speed, rho, mu)
    root = np.cbrt(within("Reynolds number", reynolds, MERCER_LOW, MERCER_HIGH, "", tail))
    return rho_p * d / rho * (root - np.sqrt(6) * np.arctan(root / np.sqrt(6)))


def _way(reynolds):
    """Integral of dRe / (Re Cd) from 0, in the logarithm of 1 + Re, where it is smooth."""
    reynolds = not_above(
        "Reynolds number", reynolds, HIGHEST_REYNOLDS, "", ", the limit of [barati14]; give a slower or smaller one"
    )
    reach = np.log1p(reynolds)[..., np.newaxis]
    place = np.maximum(np.expm1(reach * (NODES + 1) / 2), 1e-30)
    height = (1 + place) / (place * drag_coefficient(place))
    return np.sum(height * WEIGHTS, axis=-1) * reach[..., 0] / 2


def _given(diameter, density, viscosity):
    return (
        positive("diameter of the particle", diameter, "m"),
        positive("density of the particle", density, "kg/m3"),
        positive("viscosity", viscosity, "Pa s"),
    )


def _slip(slip):
    return not_below("slip factor", slip, 1.0, "", "; give 1 where slip does not matter")
