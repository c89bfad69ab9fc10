"""How fast a particle settles: three laws by a criterion, and one by the drag of a sphere over the whole range.

`excess_density` is the particle's density less that of the fluid. In air the fluid's is often left out.
"""

import numpy as np

from hoodwright.particles.drag import HIGHEST_REYNOLDS, drag_coefficient
from hoodwright.ranges import not_above, not_below, positive

GRAVITY = 9.80665
STOKES_LIMIT, NEWTON_LIMIT, HIGHEST_CRITERION = 3.3, 43.6, 2360.0
FOOT, POUND = 0.3048, 0.45359237
INTERMEDIATE = 0.153 * POUND**0.01 / FOOT**0.02  # printed for feet, pounds and seconds; the exponents are rounded
LOWEST_LOG, HALVINGS = -70.0, 70  # of the Reynolds number; each halving narrows it two times


def settling_criterion(diameter, excess_density, fluid_density, viscosity):
    """Criterion for the law by which a particle settles: K = d (g drho rho / mu^2)^(1/3).

    Below 3.3 Stokes' law holds, to 43.6 the intermediate one, above that Newton's.

    Parameters
    ----------
    diameter : float or array [m]
    excess_density : float or array, broadcast with `diameter` [kg/m3]
    fluid_density : float or array, broadcast with the others [kg/m3]
    viscosity : float or array, broadcast with the others [Pa s]

    Returns
    -------
    criterion : broadcast shape [-]

    Valid: all above 0; else RangeError is raised.
    Source: [abulencia, examples 23.4 and 23.8]
    """
    d, drho, rho, mu = _given(diameter, excess_density, fluid_density, viscosity)
    return d * np.cbrt(GRAVITY * drho * rho / mu**2)


def stokes_settling_velocity(diameter, excess_density, viscosity, slip=1.0):
    """Stokes' law: v = drho d^2 g C / (18 mu).

    Parameters
    ----------
    diameter : float or array [m]
    excess_density : float or array, broadcast with `diameter` [kg/m3]
    viscosity : float or array, broadcast with the others [Pa s]
    slip : float or array, broadcast with the others [-]
        From `slip_factor`; matters below about 10 um.

    Returns
    -------
    velocity : broadcast shape [m/s]

    Valid: all above 0, slip of 1 or more; else RangeError is raised. Holds for a criterion below 3.3.
    Source: [abulencia, examples 23.4 and 23.5]
    """
    d, drho, _, mu = _given(diameter, excess_density, 1.0, viscosity)
    return drho * d**2 * GRAVITY * _slip(slip) / (18 * mu)


def intermediate_settling_velocity(diameter, excess_density, fluid_density, viscosity):
    """The intermediate law: v = 0.153 (g drho)^0.71 d^1.14 / (rho^0.29 mu^0.43) in feet, pounds and seconds.

    In SI units the factor is 0.155.

    Parameters
    ----------
    diameter : float or array [m]
    excess_density : float or array, broadcast with `diameter` [kg/m3]
    fluid_density : float or array, broadcast with the others [kg/m3]
    viscosity : float or array, broadcast with the others [Pa s]

    Returns
    -------
    velocity : broadcast shape [m/s]

    Valid: all above 0; else RangeError is raised. Holds for a criterion of 3.3 to 43.6.
    Source: [abulencia, examples 23.4 and 23.7]
    """
    d, drho, rho, mu = _given(diameter, excess_density, fluid_density, viscosity)
    return INTERMEDIATE * (GRAVITY * drho) ** 0.71 * d**1.14 / (rho**0.29 * mu**0.43)


def newton_settling_velocity(diameter, excess_density, fluid_density):
    """Newton's law: v = 1.75 sqrt(g d drho / rho).

    Parameters
    ----------
    diameter : float or array [m]
    excess_density : float or array, broadcast with `diameter` [kg/m3]
    fluid_density : float or array, broadcast with the others [kg/m3]

    Returns
    -------
    velocity : broadcast shape [m/s]

    Valid: all above 0; else RangeError is raised. Holds for a criterion above 43.6.
    Source: [abulencia, example 23.8]
    """
    d, drho, rho, _ = _given(diameter, excess_density, fluid_density, 1.0)
    return 1.75 * np.sqrt(GRAVITY * d * drho / rho)


def settling_velocity_by_criterion(diameter, excess_density, fluid_density, viscosity):
    """Settling velocity by the law that the criterion picks; it jumps by some per cent where the laws meet.

    Parameters
    ----------
    diameter : float or array [m]
    excess_density : float or array, broadcast with `diameter` [kg/m3]
    fluid_density : float or array, broadcast with the others [kg/m3]
    viscosity : float or array, broadcast with the others [Pa s]

    Returns
    -------
    velocity : broadcast shape [m/s]

    Valid: all above 0, criterion up to 2360; else RangeError is raised.
    Source: [abulencia, section 23.4; its upper limit from memory]
    """
    k = settling_criterion(diameter, excess_density, fluid_density, viscosity)
    tail = ", the limit of Newton's law; give a smaller particle"
    k = not_above("settling criterion", k, HIGHEST_CRITERION, "", tail)
    slow = stokes_settling_velocity(diameter, excess_density, viscosity)
    middle = intermediate_settling_velocity(diameter, excess_density, fluid_density, viscosity)
    fast = newton_settling_velocity(diameter, excess_density, fluid_density)
    return np.where(k < STOKES_LIMIT, slow, np.where(k <= NEWTON_LIMIT, middle, fast))[()]


def settling_velocity(diameter, excess_density, fluid_density, viscosity, slip=1.0):
    """Settling velocity of a sphere by its drag, over the whole range.

    Parameters
    ----------
    diameter : float or array [m]
    excess_density : float or array, broadcast with `diameter` [kg/m3]
    fluid_density : float or array, broadcast with the others [kg/m3]
    viscosity : float or array, broadcast with the others [Pa s]
    slip : float or array, broadcast with the others [-]
        From `slip_factor`; matters below about 10 um.

    Returns
    -------
    velocity : broadcast shape [m/s]

    Valid: all above 0, slip of 1 or more, Reynolds number up to 200 000; else RangeError is raised.
    Source: [barati14, first formula, weight against drag]
    """
    d, drho, rho, mu = _given(diameter, excess_density, fluid_density, viscosity)
    pull = 4 / 3 * d**3 * rho * drho * GRAVITY / mu**2 * _slip(slip)  # drag coefficient times Reynolds number squared
    limit = drag_coefficient(HIGHEST_REYNOLDS) * HIGHEST_REYNOLDS**2
    tail = ", the limit of [barati14]; give a smaller particle"
    pull = not_above("drag coefficient times Reynolds number squared", pull, limit, "", tail)
    return (_reynolds_of(pull) * mu / (rho * d))[()]


def _reynolds_of(pull):
    """Reynolds number at which drag balances the weight, by halving its logarithm: the balance rises with it."""
    low = np.full(np.shape(pull), LOWEST_LOG)
    high = np.full(np.shape(pull), np.log(HIGHEST_REYNOLDS))
    for _ in range(HALVINGS):
        middle = (low + high) / 2
        reynolds = np.exp(middle)
        heavy = drag_coefficient(reynolds) * reynolds**2 < pull
        low, high = np.where(heavy, middle, low), np.where(heavy, high, middle)
    return np.exp((low + high) / 2)


def _given(diameter, excess_density, fluid_density, viscosity):
    return (
        positive("diameter of the particle", diameter, "m"),
        positive("excess density", excess_density, "kg/m3"),
        positive("density of the fluid", fluid_density, "kg/m3"),
        positive("viscosity", viscosity, "Pa s"),
    )


def _slip(slip):
    return not_below("slip factor", slip, 1.0, "", "; give 1 where slip does not matter")
