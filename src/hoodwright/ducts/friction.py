"""Friction of air in straight ducts.

All friction factors here are Darcy's; some textbooks print Fanning's, a quarter of it.
"""

import numpy as np

from hoodwright.errors import NoSolution
from hoodwright.ranges import not_negative, positive, within
from hoodwright.tables import load_table

LAMINAR_END = 2000.0
TURBULENT_START = 4000.0
ROUGHEST = 0.1
MAX_STEPS = 20
SETTLED = 1e-12

INCH = 0.0254  # m, exact
FOOT = 0.3048  # m, exact
FPM = 0.00508  # m/s, exact
INCH_WATER = 249.089  # Pa, water at 4 degC
MILLIMETRE = 0.001  # m, exact


def reynolds_number(velocity, diameter, density, viscosity):
    """Reynolds number of the flow in a duct.

    Parameters
    ----------
    velocity : float or array, any shape [m/s]
    diameter : float or array, broadcast with `velocity` [m]
        Hydraulic diameter if the duct is not round.
    density : float or array, broadcast with `velocity` [kg/m3]
    viscosity : float or array, broadcast with `velocity` [Pa s]
        Dynamic viscosity.

    Returns
    -------
    reynolds : broadcast shape [-]

    Valid: velocity 0 or more, the others above 0; outside this RangeError is raised.
    Source: [abulencia, ex. 29.3]
    """
    v = not_negative("velocity", velocity, "m/s")
    d = positive("diameter", diameter, "m")
    rho = positive("density", density, "kg/m3")
    mu = positive("viscosity", viscosity, "Pa s")
    return rho * v * d / mu


def friction_factor(reynolds, relative_roughness):
    """Darcy friction factor of a straight duct.

    Laminar below Reynolds number 2000, Colebrook above 4000, and between them a cubic that
    meets both in value and slope, so that a solver sees no corner.

    Parameters
    ----------
    reynolds : float or array, any shape [-]
    relative_roughness : float or array, broadcast with `reynolds` [-]
        Height of the roughness over the diameter.

    Returns
    -------
    f : broadcast shape [-]

    Valid: reynolds above 0, relative roughness 0 to 0.1 (usual charts end at 0.05); outside this
    RangeError is raised, and NoSolution if the iteration does not settle.
    Source: [colebrook39, constants 3.7 and 2.51]
    """
    re = positive("Reynolds number", reynolds, "")
    e = _relative_roughness(relative_roughness, ROUGHEST)
    re, e = np.broadcast_arrays(re, e)
    turbulent = _colebrook(np.maximum(re, TURBULENT_START), e)
    bridge = _bridge(np.clip(re, LAMINAR_END, TURBULENT_START), e)
    return np.where(re < LAMINAR_END, 64 / re, np.where(re < TURBULENT_START, bridge, turbulent))[()]


def _colebrook(re, e):
    """Newton on x = 1/sqrt(f): x + 2 log10(e/3.7 + 2.51 x/Re) = 0."""
    x = -1.8 * np.log10((e / 3.7) ** 1.11 + 6.9 / re)
    residual = np.inf
    for _ in range(MAX_STEPS):
        wall = e / 3.7 + 2.51 * x / re
        g = x + 2 * np.log10(wall)
        residual = np.max(np.abs(g), initial=0.0)
        if residual <= SETTLED:
            return x**-2
        x = x - g / (1 + 2 * 2.51 / (np.log(10) * re * wall))
    raise NoSolution(
        f"friction factor did not settle: residual {residual:.3g} after {MAX_STEPS} steps, Reynolds number "
        f"{np.min(re):g} to {np.max(re):g}, relative roughness {np.min(e):g} to {np.max(e):g}; check both"
    )


def _colebrook_slope(f, re, e):
    """df/dRe along Colebrook's curve, from the derivative of its implicit form."""
    x = 1 / np.sqrt(f)
    wall = 2 * 2.51 / (np.log(10) * re * (e / 3.7 + 2.51 * x / re))
    dx = wall * x / re / (1 + wall)
    return -2 * dx / x**3


def _bridge(re, e):
    """Cubic in Re from the laminar law to Colebrook, with the value and slope of each at its end."""
    start, end = LAMINAR_END, TURBULENT_START
    f0, slope0 = 64 / start, -64 / start**2
    f1 = _colebrook(np.full_like(re, end), e)
    slope1 = _colebrook_slope(f1, end, e)
    width = end - start
    t = (re - start) / width
    rise = (3 - 2 * t) * t**2
    bend0, bend1 = t * (1 - t) ** 2, t**2 * (t - 1)
    return f0 + (f1 - f0) * rise + width * (slope0 * bend0 + slope1 * bend1)


def haaland_1983(reynolds, relative_roughness):
    """Darcy friction factor by Haaland's explicit formula, within about 1.5 % of Colebrook.

    Parameters
    ----------
    reynolds : float or array, any shape [-]
    relative_roughness : float or array, broadcast with `reynolds` [-]

    Returns
    -------
    f : broadcast shape [-]

    Valid: reynolds 4000 to 1e8, relative roughness 0 to 0.05; outside this RangeError is raised.
    Source: [colebrook39, explicit form of S. E. Haaland (1983)]
    """
    re = _turbulent(reynolds, 4e3)
    e = _relative_roughness(relative_roughness, 0.05)
    return (-1.8 * np.log10((e / 3.7) ** 1.11 + 6.9 / re)) ** -2


def swamee_jain_1976(reynolds, relative_roughness):
    """Darcy friction factor by the explicit formula of Swamee and Jain, within about 3 % of Colebrook.

    Parameters
    ----------
    reynolds : float or array, any shape [-]
    relative_roughness : float or array, broadcast with `reynolds` [-]

    Returns
    -------
    f : broadcast shape [-]

    Valid: reynolds 5000 to 1e8, relative roughness 0 to 0.05; outside this RangeError is raised.
    Source: [colebrook39, explicit form of P. K. Swamee and A. K. Jain (1976)]
    """
    re = _turbulent(reynolds, 5e3)
    e = _relative_roughness(relative_roughness, 0.05)
    return (-2 * np.log10(e / 3.7 + 5.74 / re**0.9)) ** -2


def fanning_from_darcy(friction_factor):
    """Fanning friction factor, a quarter of Darcy's.

    Parameters
    ----------
    friction_factor : float or array, any shape [-]
        Darcy friction factor.

    Returns
    -------
    f : same shape as `friction_factor` [-]

    Valid: 0 or more; outside this RangeError is raised.
    Source: [nevers, ex. 6.6]
    """
    return not_negative("friction factor", friction_factor, "") / 4


def pressure_loss(friction_factor, length, diameter, p_velocity):
    """Pressure lost by friction along a straight duct, f (L/D) VP.

    Parameters
    ----------
    friction_factor : float or array, any shape [-]
        Darcy friction factor.
    length : float or array, broadcast [m]
    diameter : float or array, broadcast [m]
        Hydraulic diameter if the duct is not round.
    p_velocity : float or array, broadcast [Pa]

    Returns
    -------
    loss : broadcast shape [Pa]
        Positive.

    Valid: diameter above 0, the others 0 or more; outside this RangeError is raised.
    Source: [abulencia, ex. 29.3]
    """
    f = not_negative("friction factor", friction_factor, "")
    length = not_negative("length", length, "m")
    d = positive("diameter", diameter, "m")
    return f * length / d * not_negative("velocity pressure", p_velocity, "Pa")


def wright_1945(velocity, diameter):
    """Friction of standard air in a galvanised round duct, per metre of duct.

    Published as h = 2.74 (V/1000)^1.9 / D^1.22, in wg per 100 ft, with V in fpm and D in inches.

    Parameters
    ----------
    velocity : float or array, any shape [m/s]
    diameter : float or array, broadcast with `velocity` [m]

    Returns
    -------
    gradient : broadcast shape [Pa/m]
        Pressure lost per metre of duct, positive.

    Valid: velocity 0 or more, diameter above 0 (outside this RangeError is raised); air of 1.2 kg/m3
    and galvanised sheet only; the source prints no other limit.
    Source: [wright, formula]
    """
    v = not_negative("velocity", velocity, "m/s") / FPM
    d = positive("diameter", diameter, "m") / INCH
    h = 2.74 * (v / 1000) ** 1.9 / d**1.22
    return h * INCH_WATER / (100 * FOOT)


def hydraulic_diameter(width, height):
    """Hydraulic diameter of a rectangular duct, four times its area over its perimeter.

    It belongs in the Reynolds number and in the friction law, with the true mean velocity.

    Parameters
    ----------
    width : float or array, any shape [m]
    height : float or array, broadcast with `width` [m]

    Returns
    -------
    diameter : broadcast shape [m]

    Valid: sides above 0; outside this RangeError is raised. At sides of 8 to 1 measured losses are
    2 to 10 % higher than this diameter gives.
    Source: [huebscher47, hydraulic diameter]
    """
    a, b = positive("width", width, "m"), positive("height", height, "m")
    return 2 * a * b / (a + b)


def equivalent_diameter_at_equal_flow(width, height):
    """Diameter of the round duct with the same friction per metre at the same flow.

    The velocity in that round duct is not the velocity in the rectangular one.

    Parameters
    ----------
    width : float or array, any shape [m]
    height : float or array, broadcast with `width` [m]

    Returns
    -------
    diameter : broadcast shape [m]

    Valid: sides above 0; outside this RangeError is raised. Measured up to sides of 8 to 1.
    Source: [huebscher47, circular equivalent at equal flow]
    """
    a, b = positive("width", width, "m"), positive("height", height, "m")
    return 1.30 * (a * b) ** 0.625 / (a + b) ** 0.25


def roughness(material):
    """Height of the roughness of a duct material; of a range, its rougher end.

    Parameters
    ----------
    material : str
        One of the words in tables/duct_roughness.csv, such as "galvanised".

    Returns
    -------
    roughness : float [m]

    Valid: the materials of the table; another word raises InputError.
    Source: [roughness-table, absolute roughness; duct-roughness-21 for black iron and PVC]
    """
    return load_table("duct_roughness").row("material", material)["highest_mm"] * MILLIMETRE


def _relative_roughness(value, highest):
    tail = ", the limit of this formula; give the height of the roughness over the diameter"
    return within("relative roughness", value, 0.0, highest, "", tail)


def _turbulent(reynolds, lowest):
    tail = ", the limit of this formula; use friction_factor there"
    return within("Reynolds number", reynolds, lowest, 1e8, "", tail)
