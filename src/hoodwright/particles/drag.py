"""Drag of a smooth sphere."""

import numpy as np

from hoodwright.ranges import not_above, not_negative, positive

STOKES = 24.0
HIGHEST_REYNOLDS = 2e5


def particle_reynolds_number(diameter, velocity, density, viscosity):
    """Reynolds number of a particle that moves through air: rho v d / mu.

    Parameters
    ----------
    diameter : float or array [m]
    velocity : float or array, broadcast with `diameter` [m/s]
        Of the particle relative to the air.
    density : float or array, broadcast with the others [kg/m3]
        Of the air.
    viscosity : float or array, broadcast with the others [Pa s]
        Of the air.

    Returns
    -------
    reynolds : broadcast shape [-]

    Valid: velocity of 0 or more, the others above 0; else RangeError is raised.
    Source: [barati14, definition]
    """
    d = positive("diameter of the particle", diameter, "m")
    v = not_negative("velocity", velocity, "m/s")
    return positive("density of the air", density, "kg/m3") * v * d / positive("viscosity", viscosity, "Pa s")


def drag_coefficient(reynolds):
    """Drag coefficient of a smooth sphere, by a fit to measurements over the whole range.

    The fit's first term, 5.4856e9 tanh(4.3774e-9 / Re), is written as what it comes to above a Reynolds number of
    1e-6: 24.0127 / Re. So it tends to Stokes' 24 / Re, 0.05 % above it.

    Parameters
    ----------
    reynolds : float or array, any shape [-]

    Returns
    -------
    coefficient : same shape as `reynolds` [-]

    Valid: above 0 to 200 000; outside this RangeError is raised.
    Source: [barati14, first formula]
    """
    re = positive("Reynolds number", reynolds, "")
    re = not_above(
        "Reynolds number", re, HIGHEST_REYNOLDS, "", ", the limit of [barati14]; give a slower or smaller one"
    )
    return STOKES * _drag_ratio(re) / re


def _drag_ratio(re):
    """Drag over that of Stokes; 1.0005 for a particle that hardly moves."""
    wide = 0.0709 * np.tanh(700.6574 / np.maximum(re, 1e-300)) + 0.3894 * np.tanh(74.1539 / np.maximum(re, 1e-300))
    narrow = 1.7174 * np.tanh(9.9851 / (re + 2.3384)) - 0.1198 * np.tanh(7429.0843 / np.maximum(re, 1e-300))
    return (5.4856 * 4.3774 + re * (wide + narrow + 0.4744)) / STOKES
