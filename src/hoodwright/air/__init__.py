"""Moist air: how much water it holds, what it weighs, and the pressures of moving air. SI throughout."""

from hoodwright.air.conditions import actual_flow, standard_flow, standard_pressure
from hoodwright.air.density import density, specific_volume
from hoodwright.air.moist import (
    humidity_ratio_from_dew_point,
    humidity_ratio_from_relative_humidity,
    humidity_ratio_from_vapour_pressure,
    humidity_ratio_from_wet_bulb,
    relative_humidity_from_humidity_ratio,
    saturation_pressure,
    vapour_pressure_from_humidity_ratio,
)
from hoodwright.air.pressure import total_pressure, velocity_from_pressure, velocity_pressure
from hoodwright.air.viscosity import viscosity

__all__ = [
    "actual_flow",
    "density",
    "humidity_ratio_from_dew_point",
    "humidity_ratio_from_relative_humidity",
    "humidity_ratio_from_vapour_pressure",
    "humidity_ratio_from_wet_bulb",
    "relative_humidity_from_humidity_ratio",
    "saturation_pressure",
    "specific_volume",
    "standard_flow",
    "standard_pressure",
    "total_pressure",
    "vapour_pressure_from_humidity_ratio",
    "velocity_from_pressure",
    "velocity_pressure",
    "viscosity",
]
