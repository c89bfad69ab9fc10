"""[practice-questions]: questions and options were read; the answer key was not."""

import math

import pytest

from hoodwright.air import actual_flow, total_pressure
from hoodwright.hoods import flow_from_suction
from hoodwright.units import parse, to_unit

ONE_ATMOSPHERE = 101325  # Pa
IN_WG = 249.089  # Pa
FOOT, CFM = 0.3048, 0.3048**3 / 60
TOL_OF_TENS = 5  # cfm: half the last digit of options that end in 0
KELVIN_70_F, KELVIN_600_F = (70 + 459.67) / 1.8, (600 + 459.67) / 1.8
TOL_ACFM = 2  # 460 for 459.67 in the usual hand calculation moves the answer by 0.6; printed to 1
TOL_IN_WG = 0.005  # half the last printed digit


@pytest.mark.read
def test_ten_oven_doors_of_100_cfm_heated_to_600_f():  # air.hotgas.acfm
    found = actual_flow(10 * 100, KELVIN_600_F, ONE_ATMOSPHERE, KELVIN_70_F, ONE_ATMOSPHERE)
    assert found == pytest.approx(2000, rel=0, abs=TOL_ACFM)


@pytest.mark.read
def test_total_pressure_upstream_of_a_fan():  # vp.tp
    assert total_pressure(-3.50 * IN_WG, 2.00 * IN_WG) / IN_WG == pytest.approx(-1.5, rel=0, abs=TOL_IN_WG)


@pytest.mark.read
def test_velocity_through_a_doorway():  # vp.door
    found = to_unit(parse("2300 cfm", "flow") / (parse("3 ft", "length") * parse("7 ft", "length")), "velocity", "fpm")
    assert found == pytest.approx(110, rel=0, abs=0.5)


@pytest.mark.read
def test_flow_of_a_grinder_hood_from_its_suction():
    density, inch = 0.95 * 0.075 * 0.45359237 / FOOT**3, 248.6  # kg/m3; the inch that belongs to 4005
    area = math.pi / 4 * (FOOT / 2) ** 2
    found = flow_from_suction(1.69 * inch, area, 1 / 0.78**2 - 1, density) / CFM
    assert found == pytest.approx(820, rel=0, abs=TOL_OF_TENS)


def test_tolerance_sees_the_density_left_out():
    assert abs(4005 * 0.78 * math.pi / 16 * math.sqrt(1.69) - 820) > TOL_OF_TENS


def test_tolerance_sees_a_reference_of_60_f():
    found = actual_flow(1000, KELVIN_600_F, ONE_ATMOSPHERE, (60 + 459.67) / 1.8, ONE_ATMOSPHERE)
    assert abs(found - 2000) > TOL_ACFM


def test_tolerance_sees_a_wrong_sign():
    assert abs(3.50 + 2.00 - -1.5) > TOL_IN_WG
