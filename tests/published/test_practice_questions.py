"""[practice-questions]: questions and options were read; the answer key was not."""

import pytest

from hoodwright.air import actual_flow, total_pressure

ONE_ATMOSPHERE = 101325  # Pa
IN_WG = 249.089  # Pa
KELVIN_70_F, KELVIN_600_F = (70 + 459.67) / 1.8, (600 + 459.67) / 1.8
TOL_ACFM = 2  # 460 for 459.67 in the usual hand calculation moves the answer by 0.6; printed to 1
TOL_IN_WG = 0.005  # half the last printed digit


@pytest.mark.read
def test_ten_oven_doors_of_100_cfm_heated_to_600_f():
    found = actual_flow(10 * 100, KELVIN_600_F, ONE_ATMOSPHERE, KELVIN_70_F, ONE_ATMOSPHERE)
    assert found == pytest.approx(2000, rel=0, abs=TOL_ACFM)


@pytest.mark.read
def test_total_pressure_upstream_of_a_fan():
    assert total_pressure(-3.50 * IN_WG, 2.00 * IN_WG) / IN_WG == pytest.approx(-1.5, rel=0, abs=TOL_IN_WG)


def test_tolerance_sees_a_reference_of_60_f():
    found = actual_flow(1000, KELVIN_600_F, ONE_ATMOSPHERE, (60 + 459.67) / 1.8, ONE_ATMOSPHERE)
    assert abs(found - 2000) > TOL_ACFM


def test_tolerance_sees_a_wrong_sign():
    assert abs(3.50 + 2.00 - -1.5) > TOL_IN_WG
