"""[convective-flow-page]: Q = c P^(1/3) l^(5/3), P in kW, c 0.05 to 0.15, typically 0.06; page read."""

import pytest

from hoodwright.hoods import room_plume_flow

LOWEST, TYPICAL = 0.05, 0.06
TOL = 0.005  # half the last digit of the constant
EXAMPLE, TOL_EXAMPLE = 0.8, 0.05  # m3/s for 10 kW at 3 m, with the typical constant; half the last digit


@pytest.mark.read
def test_our_constant_is_the_lowest_of_the_page():
    assert room_plume_flow(1000.0, 1.0) == pytest.approx(LOWEST, rel=0, abs=TOL)


@pytest.mark.read
def test_heat_and_height_enter_as_in_the_example():
    found = room_plume_flow(10e3, 3.0) * TYPICAL / LOWEST
    assert found == pytest.approx(EXAMPLE, rel=0, abs=TOL_EXAMPLE)


def test_tolerance_sees_another_exponent():
    assert abs(TYPICAL * 10 ** (1 / 3) * 3 ** (4 / 3) - EXAMPLE) > TOL_EXAMPLE
    assert abs(TYPICAL - LOWEST) > TOL
