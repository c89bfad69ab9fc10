"""[abulencia], worked examples 17.2, 17.3 and 29.3, read in an open collection of textbook companions."""

import math

import pytest

from hoodwright.ducts import (
    pressure_loss,
    reynolds_number,
    scaled_flow,
    scaled_power,
    scaled_pressure,
    shaft_power,
)

FOOT, POUND, LBF = 0.3048, 0.45359237, 4.4482216152605
CFM, HORSEPOWER = FOOT**3 / 60, 745.69987158
POUND_PER_FT3, LBF_PER_FT2 = POUND / FOOT**3, LBF / FOOT**2

# Example 29.3: a foundry main for four stations of 3000 acfm at 4000 fpm; both kept unrounded.
VELOCITY = 4000 / 60 * FOOT
DIAMETER = math.sqrt(4 * 4 * 3000 / 4000 / math.pi) * FOOT
DENSITY = 0.075 * POUND_PER_FT3
VISCOSITY = 1.21e-5 * POUND / FOOT
REYNOLDS_TOL = 0.5  # half the last printed digit
DROP_TOL = 0.005 + 12.71 * (32.2 / 32.174 - 1)  # lbf/ft2: half the last digit; the book divides by 32.2

# Example 17.2: a fan taken from 1694 to 2100 rpm.
SPEED_RATIO = 2100 / 1694
FLOW_TOL, PRESSURE_TOL, POWER_TOL = 0.005, 0.005, 0.005  # half the last printed digit of each

# Example 17.3: 1.575e-4 is 5.2/33000 (1 in wg = 5.2 lbf/ft2) cut short by 5 of its own last digits.
INCH_WATER = 5.2 * LBF_PER_FT2
BRAKE_TOL = 0.005 + 17.55 * (5.2 / 33000 / 1.575e-4 - 1)  # bhp: half the last digit, and the cut constant


def reynolds():
    return reynolds_number(VELOCITY, DIAMETER, DENSITY, VISCOSITY)


def drop(fanning, velocity=VELOCITY):
    p_velocity = DENSITY * velocity**2 / 2
    return pressure_loss(4 * fanning, 400 * FOOT, DIAMETER, p_velocity) / LBF_PER_FT2


def brake_power(efficiency):
    return shaft_power(6500 * CFM, 10.80 * INCH_WATER, efficiency) / HORSEPOWER


@pytest.mark.read
def test_reynolds_number_of_the_foundry_main():
    assert reynolds() == pytest.approx(807607, rel=0, abs=REYNOLDS_TOL)


@pytest.mark.read
def test_pressure_drop_of_the_foundry_main():
    assert drop(0.003) == pytest.approx(12.71, rel=0, abs=DROP_TOL)


@pytest.mark.read
def test_flow_at_the_new_speed():
    assert scaled_flow(12200, SPEED_RATIO) == pytest.approx(15123.97, rel=0, abs=FLOW_TOL)


@pytest.mark.read
def test_pressure_at_the_new_speed():
    assert scaled_pressure(5, SPEED_RATIO) == pytest.approx(7.68, rel=0, abs=PRESSURE_TOL)


@pytest.mark.read
def test_power_at_the_new_speed():
    assert scaled_power(9.25, SPEED_RATIO) == pytest.approx(17.62, rel=0, abs=POWER_TOL)


@pytest.mark.read
def test_brake_power():
    assert brake_power(0.63) == pytest.approx(17.55, rel=0, abs=BRAKE_TOL)


def test_tolerances_tell_wrong_exponents_and_neighbours_apart():
    assert abs(5 * SPEED_RATIO**2.02 - 7.68) > PRESSURE_TOL
    assert abs(9.25 * SPEED_RATIO**2.99 - 17.62) > POWER_TOL
    assert abs(drop(0.003, 1.002 * VELOCITY) - 12.71) > DROP_TOL
    assert abs(brake_power(0.64) - 17.55) > BRAKE_TOL
    assert abs(reynolds() * 1.00001 - 807607) > REYNOLDS_TOL
