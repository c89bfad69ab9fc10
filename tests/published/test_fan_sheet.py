"""[fan-sheet]: fan application formula sheet."""

import pytest

from hoodwright.air import velocity_from_pressure
from hoodwright.ducts import shaft_power

FPM = 0.00508  # m/s
IN_WG_68_F = 248.6  # Pa: the 1096.7 of the sheet belongs to water at 68 degrees Fahrenheit, not at 4 Celsius
STANDARD_DENSITY = 0.075 * 0.45359237 / 0.3048**3  # kg/m3
TOL_FPM = 0.5  # half the last printed digit
CFM, HORSEPOWER = 0.3048**3 / 60, 745.69987158  # m3/s, W
# in wg cfm/hp: half the last printed digit, and half the last digit of the 248.6 Pa
TOL_BRAKE = 0.5 + 6356 * 0.05 / IN_WG_68_F


@pytest.mark.read
def test_velocity_of_one_inch_of_water_in_standard_air():  # air.vpconst
    found = velocity_from_pressure(IN_WG_68_F, STANDARD_DENSITY) / FPM
    assert found == pytest.approx(4005, rel=0, abs=TOL_FPM)


def test_tolerance_sees_the_other_inch_of_water():
    assert abs(velocity_from_pressure(249.089, STANDARD_DENSITY) / FPM - 4005) > TOL_FPM


def brake_constant(inch_of_water):
    """Product of cfm and in wg that takes one horsepower at the shaft of a perfect fan."""
    return HORSEPOWER / shaft_power(CFM, inch_of_water, efficiency=1.0)


@pytest.mark.read
def test_brake_power_constant_6356():  # fan.6356
    assert brake_constant(IN_WG_68_F) == pytest.approx(6356, rel=0, abs=TOL_BRAKE)


def test_brake_tolerance_sees_the_other_inch_of_water():
    assert abs(brake_constant(249.089) - 6356) > TOL_BRAKE
