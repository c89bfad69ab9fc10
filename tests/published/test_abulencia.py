"""[abulencia], worked examples 17.2, 17.3, 20.4 and 29.3, read in an open collection of textbook companions."""

import math

import pytest

from hoodwright.air import velocity_from_pressure
from hoodwright.ducts import (
    pressure_loss,
    reynolds_number,
    scaled_flow,
    scaled_power,
    scaled_pressure,
    shaft_power,
)
from hoodwright.hoods import enclosure_flow

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
def test_reynolds_number_of_the_foundry_main():  # duct.fan29.re
    assert reynolds() == pytest.approx(807607, rel=0, abs=REYNOLDS_TOL)


@pytest.mark.read
def test_pressure_drop_of_the_foundry_main():  # duct.fan29.dp
    assert drop(0.003) == pytest.approx(12.71, rel=0, abs=DROP_TOL)


@pytest.mark.read
def test_flow_at_the_new_speed():  # fan.ab17.2q
    assert scaled_flow(12200, SPEED_RATIO) == pytest.approx(15123.97, rel=0, abs=FLOW_TOL)


@pytest.mark.read
def test_pressure_at_the_new_speed():  # fan.ab17.2p
    assert scaled_pressure(5, SPEED_RATIO) == pytest.approx(7.68, rel=0, abs=PRESSURE_TOL)


@pytest.mark.read
def test_power_at_the_new_speed():  # fan.ab17.2h
    assert scaled_power(9.25, SPEED_RATIO) == pytest.approx(17.62, rel=0, abs=POWER_TOL)


@pytest.mark.read
def test_brake_power():  # fan.ab17.3
    assert brake_power(0.63) == pytest.approx(17.55, rel=0, abs=BRAKE_TOL)


def test_tolerances_tell_wrong_exponents_and_neighbours_apart():
    assert abs(5 * SPEED_RATIO**2.02 - 7.68) > PRESSURE_TOL
    assert abs(9.25 * SPEED_RATIO**2.99 - 17.62) > POWER_TOL
    assert abs(drop(0.003, 1.002 * VELOCITY) - 12.71) > DROP_TOL
    assert abs(brake_power(0.64) - 17.55) > BRAKE_TOL
    assert abs(reynolds() * 1.00001 - 807607) > REYNOLDS_TOL


# Example 20.4: an enclosing hood with a face of 30 by 25 in at 100 fpm.
HOOD_TOL = 0.5  # cfm: half the last printed digit


@pytest.mark.read
def test_flow_of_an_enclosing_hood():  # ab20.4.hood
    flow = enclosure_flow(30 * 25 / 144 * FOOT**2, 100 / 60 * FOOT)
    assert flow / CFM == pytest.approx(521, rel=0, abs=HOOD_TOL)


# Example 19.2: a pitot tube on the axis; 0.0166667 ft of water, air of 0.075 lb/ft3.
AXIS_TOL = 0.005 + 29.87 * 0.5 * (32.2 / 32.174 - 1)  # ft/s: half the last digit; the book's g


@pytest.mark.read
def test_velocity_on_the_axis():  # tr.ab19.2
    p_velocity = 62.4 * POUND_PER_FT3 * 9.80665 * 0.0166667 * FOOT
    found = velocity_from_pressure(p_velocity, 0.075 * POUND_PER_FT3) / FOOT
    assert found == pytest.approx(29.87, rel=0, abs=AXIS_TOL)


def test_axis_tolerance_sees_another_density():
    assert abs(29.87 * (0.075 / 0.0752) ** 0.5 - 29.87) > AXIS_TOL
