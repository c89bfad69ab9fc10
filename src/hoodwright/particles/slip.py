"""Small particles slip between the molecules of the air, and settle faster than Stokes says."""

import numpy as np

from hoodwright.ranges import absolute_pressure, gas_temperature, positive

AIR_MOLAR_MASS, GAS_CONSTANT = 0.028965, 8.31446  # kg/mol, J/(mol K)
WATER_DENSITY = 1000.0


def mean_free_path(temperature, p_abs, viscosity):
    """How far a molecule of air flies between two collisions: 2 mu / (p sqrt(8 M / (pi R T))).

    Parameters
    ----------
    temperature : float or array [K]
    p_abs : float or array, broadcast with `temperature` [Pa]
    viscosity : float or array, broadcast with the others [Pa s]

    Returns
    -------
    path : broadcast shape [m]

    Valid: 150 to 2000 K, 10 to 1000 kPa, viscosity above 0; else RangeError is raised.
    Source: [seinfeld-pandis, eq. 9.6]
    """
    t, p = gas_temperature(temperature), absolute_pressure(p_abs)
    return 2 * positive("viscosity", viscosity, "Pa s") / (p * np.sqrt(8 * AIR_MOLAR_MASS / (np.pi * GAS_CONSTANT * t)))


def slip_factor(diameter, path):
    """Cunningham's factor: by how much a small particle settles faster than Stokes says.

    C = 1 + (2 L / d) (1.257 + 0.40 exp(-1.10 d / 2 L))

    Parameters
    ----------
    diameter : float or array [m]
    path : float or array, broadcast with `diameter` [m]
        Mean free path L of the air: 0.066 um in a room.

    Returns
    -------
    factor : broadcast shape [-]

    Valid: both above 0; else RangeError is raised.
    Source: [abulencia, example 23.3]
    """
    d = positive("diameter of the particle", diameter, "m")
    ratio = 2 * positive("mean free path", path, "m") / d
    return 1 + ratio * (1.257 + 0.40 * np.exp(-1.10 / ratio))


def aerodynamic_diameter(diameter, density):
    """Diameter of the sphere of 1000 kg/m3 that settles equally fast; slip is left out.

    Parameters
    ----------
    diameter : float or array [m]
    density : float or array, broadcast with `diameter` [kg/m3]
        Of the particle as a whole, hollows included.

    Returns
    -------
    diameter : broadcast shape [m]

    Valid: both above 0; else RangeError is raised. Below about 1 um slip makes it a little wrong.
    Source: [abulencia, example 23.1]
    """
    relative = positive("density of the particle", density, "kg/m3") / WATER_DENSITY
    return positive("diameter of the particle", diameter, "m") * np.sqrt(relative)
