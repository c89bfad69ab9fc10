"""Pressure and moisture of the air that a file describes, in whichever way it says them."""

from hoodwright.air import (
    humidity_ratio_from_dew_point,
    humidity_ratio_from_relative_humidity,
    humidity_ratio_from_wet_bulb,
    standard_pressure,
)
from hoodwright.workplace.model import AirState


def pressure_of(air: AirState) -> float:
    """Absolute pressure: as given, or that of the standard atmosphere at the altitude."""
    return air.pressure if air.pressure is not None else float(standard_pressure(air.altitude or 0.0))


def humidity_ratio_of(air: AirState) -> float:
    """Water per dry air; dry where nothing is said. RangeError where no air can be so."""
    p_abs = pressure_of(air)
    if air.wet_bulb is not None:
        return float(humidity_ratio_from_wet_bulb(air.temperature, air.wet_bulb, p_abs))
    if air.dew_point is not None:
        return float(humidity_ratio_from_dew_point(air.dew_point, p_abs))
    return float(humidity_ratio_from_relative_humidity(air.temperature, air.relative_humidity or 0.0, p_abs))
