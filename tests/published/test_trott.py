"""[trott]: worked examples of chapter 24."""

import pytest

from hoodwright.air import velocity_pressure

TOL = 0.05  # Pa: half the last printed digit; 7 m/s and 0.8419 m3/kg taken as exact


@pytest.mark.read
def test_velocity_pressure_of_example_24_2():  # air.trott24.2
    assert velocity_pressure(7, 1 / 0.8419) == pytest.approx(29.1, rel=0, abs=TOL)


def test_tolerance_sees_another_density():
    assert abs(velocity_pressure(7, 1.2) - 29.1) > TOL
