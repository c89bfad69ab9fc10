"""[iv-problem-set]: solved problems on definitions and general principles."""

import pytest

from hoodwright.air import velocity_from_pressure
from hoodwright.hoods import hood_suction

FPM = 0.00508  # m/s
IN_WG_68_F = 248.6  # Pa, the inch of water that belongs to 4005
STANDARD_DENSITY = 0.075 * 0.45359237 / 0.3048**3  # kg/m3
TOL_IN_WG = 0.005  # half the last printed digit
TOL_FPM = 0.5 / 4005 * 7108.17 + 0.005  # 4005 is rounded to 1, the answer to 0.01


def _suction(p_velocity, entry_coefficient):
    velocity = velocity_from_pressure(p_velocity, STANDARD_DENSITY)
    return hood_suction(velocity * 1.0, 1.0, 1 / entry_coefficient**2 - 1, STANDARD_DENSITY)


@pytest.mark.read
def test_hood_static_pressure():
    found = _suction(3.2 * IN_WG_68_F, 0.96) / IN_WG_68_F
    assert found == pytest.approx(3.47, rel=0, abs=TOL_IN_WG)


@pytest.mark.read
def test_duct_velocity():
    found = velocity_from_pressure(3.15 * IN_WG_68_F, STANDARD_DENSITY) / FPM
    assert found == pytest.approx(7108.17, rel=0, abs=TOL_FPM)


def test_tolerance_sees_a_coefficient_that_is_not_squared():
    assert abs(3.2 / 0.96 - 3.47) > TOL_IN_WG


def test_tolerance_sees_the_other_inch_of_water():
    assert abs(velocity_from_pressure(3.15 * 249.089, STANDARD_DENSITY) / FPM - 7108.17) > TOL_FPM
