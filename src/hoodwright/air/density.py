"""What air weighs."""

from hoodwright.ranges import absolute_pressure, gas_temperature, water_content

GAS_CONSTANT = 287.042  # J/(kg K), dry air
MASS_RATIO_INVERSE = 1.607858  # molar mass of dry air / water


def specific_volume(temperature, p_abs, humidity_ratio=0.0):
    """Volume of moist air for each kilogram of dry air in it.

    Parameters
    ----------
    temperature : float or array [K]
    p_abs : float or array, broadcast with the others [Pa]
    humidity_ratio : float or array, broadcast with the others [kg water / kg dry air]

    Returns
    -------
    specific_volume : broadcast shape [m3 / kg dry air]

    Valid: 150 to 2000 K, 10 kPa to 1 MPa, humidity ratio of 0 or more; outside this RangeError is raised.
    Source: [ashrae-f17, ch. 1, eq. 26]
    """
    t, p, w = gas_temperature(temperature), absolute_pressure(p_abs), water_content(humidity_ratio)
    return GAS_CONSTANT * t * (1 + MASS_RATIO_INVERSE * w) / p


def density(temperature, p_abs, humidity_ratio=0.0):
    """Mass of moist air, water included, in each cubic metre.

    Parameters
    ----------
    temperature : float or array [K]
    p_abs : float or array, broadcast with the others [Pa]
    humidity_ratio : float or array, broadcast with the others [kg water / kg dry air]

    Returns
    -------
    density : broadcast shape [kg/m3]

    Valid: 150 to 2000 K, 10 kPa to 1 MPa, humidity ratio of 0 or more; outside this RangeError is raised.
    Source: [ashrae-f17, ch. 1, eq. 11]
    """
    return (1 + water_content(humidity_ratio)) / specific_volume(temperature, p_abs, humidity_ratio)
