"""Heat that a hot surface gives to still air: the part that drives a plume.

Radiation is left out: it warms walls and people, not the air that rises. Air properties are taken at the film
temperature, the mean of surface and air. Nusselt numbers take a Rayleigh number of the length named with each.
"""

import numpy as np

from hoodwright.air import density, viscosity
from hoodwright.ranges import SLACK, gas_temperature, not_below, positive, refuse, within

GRAVITY = 9.81  # m/s2
HEAT_CAPACITY = 1006.0  # J/(kg K), of air
PRANDTL = 0.71  # of air, 200 to 1000 K within 4 %
LATENT_HEAT = 2.257e6  # J/kg, of steam at 100 degC

PLATE_LARGEST_RAYLEIGH = 1e12
FACE_RAYLEIGH = (1e4, 1e7, 1e11)  # laminar from the first, turbulent from the second to the third

STATE_HEAT = "state the convective heat instead"


def rayleigh_number(length, surface_temperature, air_temperature, kinematic_viscosity, prandtl=PRANDTL):
    """Strength of the buoyancy along a surface: g (Ts - Ta) L^3 Pr / (Tf nu^2), Tf the film temperature.

    Parameters
    ----------
    length : float or array [m]
        Height of a vertical plate, diameter of a level cylinder, area / perimeter of a level face.
    surface_temperature, air_temperature : float or array, broadcast with `length` [K]
    kinematic_viscosity : float or array, broadcast with the others [m2/s]
        At the film temperature.
    prandtl : float or array, broadcast with the others [1]

    Returns
    -------
    rayleigh : broadcast shape [1]

    Valid: all above 0, surface warmer than the air; else RangeError is raised.
    Source: [cengel-heat, example 9-2]
    """
    surface, air = _warmer(surface_temperature, air_temperature)
    nu = positive("kinematic viscosity", kinematic_viscosity, "m2/s")
    film = (surface + air) / 2
    return GRAVITY * (surface - air) * positive("length", length, "m") ** 3 * prandtl / (film * nu**2)


def nusselt_vertical_plate(rayleigh, prandtl=PRANDTL):
    """Mean Nusselt number of a vertical plate, by Churchill and Chu: laminar and turbulent in one.

    Parameters
    ----------
    rayleigh : float or array [1]
        By the height of the plate.
    prandtl : float or array, broadcast with `rayleigh` [1]

    Returns
    -------
    nusselt : broadcast shape [1]

    Valid: Rayleigh number above 0, up to 1e12; outside this RangeError is raised.
    Source: [cengel-heat, example 9-2]
    """
    return (0.825 + _churchill_chu(rayleigh, prandtl, 0.492)) ** 2


def nusselt_level_cylinder(rayleigh, prandtl=PRANDTL):
    """Mean Nusselt number of a level cylinder, by Churchill and Chu.

    Parameters
    ----------
    rayleigh : float or array [1]
        By the diameter.
    prandtl : float or array, broadcast with `rayleigh` [1]

    Returns
    -------
    nusselt : broadcast shape [1]

    Valid: Rayleigh number above 0, up to 1e12; outside this RangeError is raised.
    Source: [churchill-chu75, formula]
    """
    return (0.60 + _churchill_chu(rayleigh, prandtl, 0.559)) ** 2


def nusselt_face_up(rayleigh):
    """Mean Nusselt number of a level hot face that looks up: 0.54 Ra^(1/4), turbulent 0.15 Ra^(1/3).

    Parameters
    ----------
    rayleigh : float or array, any shape [1]
        By area / perimeter.

    Returns
    -------
    nusselt : same shape as `rayleigh` [1]

    Valid: Rayleigh number 1e4 to 1e11, turbulent from 1e7; outside this RangeError is raised.
    Source: [cengel-heat, example 9-2]
    """
    lowest, turbulent, highest = FACE_RAYLEIGH
    tail = f", the limit of [cengel-heat, table 9-1]; {STATE_HEAT}"
    ra = within("Rayleigh number of a level face", rayleigh, lowest, highest, "", tail)
    return np.where(ra < turbulent, 0.54 * ra**0.25, 0.15 * np.cbrt(ra))[()]


def heat_of_vertical_plate(height, area, surface_temperature, air_temperature, p_abs=101325.0):
    """Heat that the vertical sides of a hot body give to the air.

    Parameters
    ----------
    height : float or array [m]
    area : float or array, broadcast with `height` [m2]
        Of one or all sides of that height.
    surface_temperature, air_temperature : float or array, broadcast with the others [K]
    p_abs : float or array, broadcast with the others [Pa]

    Returns
    -------
    heat : broadcast shape [W]

    Valid: surface warmer than the air, Rayleigh number up to 1e12; else RangeError is raised. Still air.
    Source: [cengel-heat, example 9-2]
    """
    number = rayleigh_number(height, *_film(surface_temperature, air_temperature, p_abs))
    return _heat(nusselt_vertical_plate(number), height, area, surface_temperature, air_temperature)


def heat_of_face_up(area, perimeter, surface_temperature, air_temperature, p_abs=101325.0):
    """Heat that a level hot face, looking up, gives to the air.

    Parameters
    ----------
    area : float or array [m2]
    perimeter : float or array, broadcast with `area` [m]
    surface_temperature, air_temperature : float or array, broadcast with the others [K]
    p_abs : float or array, broadcast with the others [Pa]

    Returns
    -------
    heat : broadcast shape [W]

    Valid: surface warmer than the air, Rayleigh number 1e4 to 1e11; else RangeError is raised. Still air.
    Source: [cengel-heat, example 9-2]
    """
    length = positive("area", area, "m2") / positive("perimeter", perimeter, "m")
    number = rayleigh_number(length, *_film(surface_temperature, air_temperature, p_abs))
    return _heat(nusselt_face_up(number), length, area, surface_temperature, air_temperature)


def heat_of_level_cylinder(length, diameter, surface_temperature, air_temperature, p_abs=101325.0):
    """Heat that a level hot cylinder gives to the air by its curved side; the ends are left out.

    Parameters
    ----------
    length, diameter : float or array [m]
    surface_temperature, air_temperature : float or array, broadcast with the others [K]
    p_abs : float or array, broadcast with the others [Pa]

    Returns
    -------
    heat : broadcast shape [W]

    Valid: surface warmer than the air, Rayleigh number up to 1e12; else RangeError is raised. Still air.
    Source: [churchill-chu75, formula]
    """
    number = rayleigh_number(diameter, *_film(surface_temperature, air_temperature, p_abs))
    area = np.pi * positive("length", length, "m") * diameter
    return _heat(nusselt_level_cylinder(number), diameter, area, surface_temperature, air_temperature)


def heat_of_body(area, perimeter, height, surface_temperature, air_temperature, p_abs=101325.0):
    """Heat that a hot body gives to the air: its level top and its vertical sides.

    Parameters
    ----------
    area : float or array [m2]
        Of the top.
    perimeter, height : float or array, broadcast with `area` [m]
    surface_temperature, air_temperature : float or array, broadcast with the others [K]
    p_abs : float or array, broadcast with the others [Pa]

    Returns
    -------
    heat : broadcast shape [W]

    Valid: as `heat_of_face_up` and `heat_of_vertical_plate`; all of it at one temperature.
    Source: [cengel-heat, example 9-2]
    """
    top = heat_of_face_up(area, perimeter, surface_temperature, air_temperature, p_abs)
    sides = positive("perimeter", perimeter, "m") * positive("height", height, "m")
    return top + heat_of_vertical_plate(height, sides, surface_temperature, air_temperature, p_abs)


def heat_of_steam(boils_off):
    """Heat that the steam of a boiling tank brings into the air, as it condenses there.

    Parameters
    ----------
    boils_off : float or array, any shape [kg/s]

    Returns
    -------
    heat : same shape as `boils_off` [W]

    Valid: above 0; else RangeError is raised. Latent heat of 2257 kJ/kg, at 100 degC.
    Source: [ashrae-a99, ch. 29, eq. 23]
    """
    return LATENT_HEAT * positive("steam", boils_off, "kg/s")


def _churchill_chu(rayleigh, prandtl, share):
    tail = f", the limit of [churchill-chu75, range]; {STATE_HEAT}"
    ra = within("Rayleigh number", positive("Rayleigh number", rayleigh, ""), 0.0, PLATE_LARGEST_RAYLEIGH, "", tail)
    return 0.387 * ra ** (1 / 6) / (1 + (share / prandtl) ** (9 / 16)) ** (8 / 27)


def _warmer(surface_temperature, air_temperature):
    """Both temperatures, the surface warmer than the air."""
    air = gas_temperature(air_temperature, "air temperature")
    surface = not_below("surface temperature", surface_temperature, 0.0, "K", "; give kelvin")
    tail = ", the air around it; a surface must be warmer than the air to make it rise"
    refuse(surface <= air * (1 + SLACK), "surface temperature", surface, "not above", air, "K", tail)
    return surface, air


def _film(surface_temperature, air_temperature, p_abs):
    """Surface and air temperature, and the kinematic viscosity of the air between them."""
    surface, air = _warmer(surface_temperature, air_temperature)
    film = (surface + air) / 2
    return surface, air, viscosity(film) / density(film, p_abs)


def _heat(nusselt, length, area, surface_temperature, air_temperature):
    surface, air = _warmer(surface_temperature, air_temperature)
    conductivity = viscosity((surface + air) / 2) * HEAT_CAPACITY / PRANDTL
    return nusselt * conductivity / length * positive("area", area, "m2") * (surface - air)
