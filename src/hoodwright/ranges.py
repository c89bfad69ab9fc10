"""Checks on what a formula is given. A message says what, got, allowed, and what to do."""

import math

import numpy as np

from hoodwright.errors import RangeError

SLACK = 1e-9  # relative: a limit that itself carries rounding still counts as inside
LOWEST_TEMPERATURE, HIGHEST_TEMPERATURE = 150.0, 2000.0  # K
LOWEST_PRESSURE, HIGHEST_PRESSURE = 1e4, 1e6  # Pa


def numbers(what, value):
    """`value` as floats, all of them finite. One plain number, which is what most calls bring, takes a short way."""
    if isinstance(value, float) and math.isfinite(value):
        return np.float64(value)
    value = np.asarray(value, dtype=float)
    if not np.all(np.isfinite(value)):
        raise RangeError(f"{what} {value[~np.isfinite(value)].flat[0]:g} is not a finite number; give a number")
    return value


def refuse(outside, what, value, relation, limit, unit, tail):
    """Raise RangeError for the first value where `outside` holds."""
    if not (outside.any() if isinstance(outside, np.ndarray) else outside):
        return
    outside, value, limit = np.broadcast_arrays(outside, value, limit)
    got, allowed = (f"{v[outside].flat[0]:.6g} {unit}".rstrip() for v in (value, limit))
    raise RangeError(f"{what} {got} is {relation} {allowed}{tail}")


def not_below(what, value, low, unit, tail):
    """`value`, none of it below `low`."""
    value = numbers(what, value)
    refuse(value < low - SLACK * abs(low), what, value, "below", low, unit, tail)
    return value


def not_above(what, value, high, unit, tail):
    """`value`, none of it above `high`."""
    value = numbers(what, value)
    refuse(value > high + SLACK * abs(high), what, value, "above", high, unit, tail)
    return value


def within(what, value, low, high, unit, tail):
    """`value`, all of it from `low` to `high`."""
    not_below(what, value, low, unit, tail)
    return not_above(what, value, high, unit, tail)


def positive(what, value, unit):
    """`value`, all of it above zero."""
    value = numbers(what, value)
    refuse(value <= 0, what, value, "not above", 0.0, unit, "; give its true size")
    return value


def not_negative(what, value, unit):
    """`value`, all of it zero or more."""
    return not_below(what, value, 0.0, unit, "; give it as a positive size")


def gas_temperature(temperature, what="temperature"):
    """Kelvin at which air is taken for an ideal gas; catches degrees Celsius."""
    tail = ", the limit for air as an ideal gas; give kelvin"
    return within(what, temperature, LOWEST_TEMPERATURE, HIGHEST_TEMPERATURE, "K", tail)


def absolute_pressure(p_abs, what="absolute pressure"):
    """Pascals at which air is taken for an ideal gas; catches gauge pressures and kilopascals."""
    tail = ", the limit for air as an ideal gas; give absolute pascals, not gauge"
    return within(what, p_abs, LOWEST_PRESSURE, HIGHEST_PRESSURE, "Pa", tail)


def water_content(humidity_ratio):
    """Kilograms of water per kilogram of dry air, none of it below zero."""
    return not_below("humidity ratio", humidity_ratio, 0.0, "kg/kg", "; give kg of water per kg of dry air")
