"""Water in air: saturation, and the ways to say how moist air is.

The humidity ratio W (kg of water per kg of dry air) is the one measure the other modules take. The formulas
treat moist air as an ideal gas: at saturation W comes out 0.4 to 2 % lower than the tables of real air.
"""

import numpy as np

from hoodwright.ranges import absolute_pressure, not_above, not_below, refuse, water_content, within

FREEZING_POINT = 273.15  # K
TRIPLE_POINT = 273.16  # K
COLDEST, HOTTEST = 173.15, 473.15  # K
MASS_RATIO = 0.621945  # molar mass of water / dry air

# Coefficients of 1/T, 1, T, T^2, T^3, T^4 and ln T in the logarithm of the saturation pressure.
OVER_ICE = (-5674.5359, 6.3925247, -9.677843e-3, 6.2215701e-7, 2.0747825e-9, -9.484024e-13, 4.1635019)
OVER_WATER = (-5800.2206, 1.3914993, -4.8640239e-2, 4.1764768e-5, -1.4452093e-8, 0.0, 6.5459673)


def saturation_pressure(temperature):
    """Pressure of water vapour over ice or water, with which it neither dries nor condenses.

    Over ice up to the triple point, over water above it: there the two formulas meet.

    Parameters
    ----------
    temperature : float or array, any shape [K]

    Returns
    -------
    p_saturation : same shape as `temperature` [Pa]

    Valid: 173.15 to 473.15 K; outside this RangeError is raised.
    Source: [ashrae-f17, ch. 1, eq. 5 and 6]
    """
    tail = ", the limit of [ashrae-f17, ch. 1, eq. 5 and 6]; give kelvin inside it"
    t = within("temperature", temperature, COLDEST, HOTTEST, "K", tail)
    return np.where(t <= TRIPLE_POINT, _saturation(OVER_ICE, t), _saturation(OVER_WATER, t))[()]


def humidity_ratio_from_vapour_pressure(p_vapour, p_abs):
    """Water in air, from the pressure of its vapour.

    Parameters
    ----------
    p_vapour : float or array [Pa]
    p_abs : float or array, broadcast with `p_vapour` [Pa]
        Absolute pressure of the moist air.

    Returns
    -------
    humidity_ratio : broadcast shape [kg water / kg dry air]

    Valid: vapour pressure from 0 to below `p_abs`; outside this RangeError is raised.
    Source: [ashrae-f17, ch. 1, eq. 20]
    """
    p_abs = absolute_pressure(p_abs)
    p_vapour = not_below("vapour pressure", p_vapour, 0.0, "Pa", "; check the humidity")
    tail = ", the pressure of the air: water would boil; check temperature and pressure"
    refuse(p_vapour >= p_abs, "vapour pressure", p_vapour, "not below", p_abs, "Pa", tail)
    return MASS_RATIO * p_vapour / (p_abs - p_vapour)


def vapour_pressure_from_humidity_ratio(humidity_ratio, p_abs):
    """Pressure of the water vapour in air.

    Parameters
    ----------
    humidity_ratio : float or array [kg water / kg dry air]
    p_abs : float or array, broadcast with `humidity_ratio` [Pa]

    Returns
    -------
    p_vapour : broadcast shape [Pa]

    Valid: humidity ratio of 0 or more; below this RangeError is raised.
    Source: [ashrae-f17, ch. 1, eq. 20 solved for the vapour pressure]
    """
    humidity_ratio = water_content(humidity_ratio)
    return absolute_pressure(p_abs) * humidity_ratio / (MASS_RATIO + humidity_ratio)


def humidity_ratio_from_relative_humidity(temperature, relative_humidity, p_abs):
    """Water in air, from its relative humidity.

    Parameters
    ----------
    temperature : float or array [K]
    relative_humidity : float or array, broadcast with the others [fraction]
        Vapour pressure over saturation pressure, 0 to 1; not the degree of saturation.
    p_abs : float or array, broadcast with the others [Pa]

    Returns
    -------
    humidity_ratio : broadcast shape [kg water / kg dry air]

    Valid: 173.15 to 473.15 K below boiling, humidity 0 to 1; outside this RangeError is raised.
    Source: [ashrae-f17, ch. 1, eq. 12 and 20]
    """
    tail = "; give a fraction from 0 to 1, not per cent"
    relative_humidity = within("relative humidity", relative_humidity, 0.0, 1.0, "", tail)
    return humidity_ratio_from_vapour_pressure(relative_humidity * saturation_pressure(temperature), p_abs)


def humidity_ratio_from_dew_point(dew_point, p_abs):
    """Water in air, from its dew point (below freezing: its frost point).

    Parameters
    ----------
    dew_point : float or array [K]
    p_abs : float or array, broadcast with `dew_point` [Pa]

    Returns
    -------
    humidity_ratio : broadcast shape [kg water / kg dry air]

    Valid: 173.15 to 473.15 K below boiling; outside this RangeError is raised.
    Source: [ashrae-f17, ch. 1, eq. 20 and 36]
    """
    return humidity_ratio_from_vapour_pressure(saturation_pressure(dew_point), p_abs)


def humidity_ratio_from_wet_bulb(temperature, wet_bulb, p_abs):
    """Water in air, from a dry and a wet thermometer.

    Parameters
    ----------
    temperature : float or array [K]
        Of the dry bulb.
    wet_bulb : float or array, broadcast with the others [K]
        Of the wet bulb; at 273.15 K and above it carries water, below it ice.
    p_abs : float or array, broadcast with the others [Pa]

    Returns
    -------
    humidity_ratio : broadcast shape [kg water / kg dry air]

    Valid: wet bulb up to the dry bulb, and not so low that no air is dry enough; else RangeError is raised.
    Source: [ashrae-f17, ch. 1, eq. 33 and 35]
    """
    not_above("wet bulb", wet_bulb, np.asarray(temperature), "K", ", the dry bulb; check the two readings")
    saturated = humidity_ratio_from_dew_point(wet_bulb, p_abs)
    dry, wet = (np.asarray(t, dtype=float) - FREEZING_POINT for t in (temperature, wet_bulb))
    cooling = 1.006 * (dry - wet)
    over_water = ((2501 - 2.326 * wet) * saturated - cooling) / (2501 + 1.86 * dry - 4.186 * wet)
    over_ice = ((2830 - 0.24 * wet) * saturated - cooling) / (2830 + 1.86 * dry - 2.1 * wet)
    ratio = np.where(wet >= 0, over_water, over_ice)[()]
    tail = ": no air is this dry; check the wet-bulb reading against [ashrae-f17, ch. 1, eq. 33 and 35]"
    return not_below("humidity ratio", ratio, 0.0, "", tail)[()]


def relative_humidity_from_humidity_ratio(temperature, humidity_ratio, p_abs):
    """Relative humidity of air that holds a known amount of water.

    Parameters
    ----------
    temperature : float or array [K]
    humidity_ratio : float or array, broadcast with the others [kg water / kg dry air]
    p_abs : float or array, broadcast with the others [Pa]

    Returns
    -------
    relative_humidity : broadcast shape [fraction]

    Valid: 173.15 to 473.15 K, water up to saturation; beyond it RangeError is raised, for water condenses.
    Source: [ashrae-f17, ch. 1, eq. 12 and 20]
    """
    relative = vapour_pressure_from_humidity_ratio(humidity_ratio, p_abs) / saturation_pressure(temperature)
    tail = ": water would condense; check temperature and humidity ratio"
    return np.minimum(not_above("relative humidity", relative, 1.0, "", tail), 1.0)


def _saturation(coefficients, t):
    a, b, c, d, e, f, g = coefficients
    return np.exp(a / t + b + c * t + d * t**2 + e * t**3 + f * t**4 + g * np.log(t))
