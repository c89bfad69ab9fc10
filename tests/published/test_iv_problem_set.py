"""[iv-problem-set]: solved problems on definitions and general principles."""

import pytest

from hoodwright.air import velocity_from_pressure
from hoodwright.hoods import entry_coefficient, hood_suction
from hoodwright.units import parse, to_unit

FPM = 0.00508  # m/s
IN_WG_68_F = 248.6  # Pa, the inch of water that belongs to 4005
STANDARD_DENSITY = 0.075 * 0.45359237 / 0.3048**3  # kg/m3
TOL_IN_WG = 0.005  # half the last printed digit
IN_WG_PER_CM = 1 / 2.54
TOL_FPM = 0.5 / 4005 * 7108.17 + 0.005  # 4005 is rounded to 1, the answer to 0.01


def _suction(p_velocity, entry_coefficient):
    velocity = velocity_from_pressure(p_velocity, STANDARD_DENSITY)
    return hood_suction(velocity * 1.0, 1.0, 1 / entry_coefficient**2 - 1, STANDARD_DENSITY)


@pytest.mark.read
def test_hood_static_pressure():  # vp.vc1
    found = _suction(3.2 * IN_WG_68_F, 0.96) / IN_WG_68_F
    assert found == pytest.approx(3.47, rel=0, abs=TOL_IN_WG)


@pytest.mark.read
def test_duct_velocity():  # vp.vc3
    found = velocity_from_pressure(3.15 * IN_WG_68_F, STANDARD_DENSITY) / FPM
    assert found == pytest.approx(7108.17, rel=0, abs=TOL_FPM)


@pytest.mark.read
def test_velocity_pressure_from_hood_static_pressure():
    found = 2.56 * entry_coefficient(1 / 0.92**2 - 1) ** 2
    assert found == pytest.approx(2.17, rel=0, abs=TOL_IN_WG)


@pytest.mark.read
def test_velocity_at_2_20_centimetres_of_water():  # printed with 0.866 in, which is rounded too
    found = velocity_from_pressure(2.20 * IN_WG_PER_CM * IN_WG_68_F, STANDARD_DENSITY)
    tol = 0.5 / 4005 * 3727.02 + 0.0005 / 0.866 / 2 * 3727.02
    assert found / FPM == pytest.approx(3727.02, rel=0, abs=tol)
    assert found == pytest.approx(18.94, rel=0, abs=tol * FPM + 0.005)


@pytest.mark.read
def test_flow_of_1_5_square_metres_at_4000_fpm():  # vp.vc5
    found = to_unit(parse("1.5 m2", "area") * parse("4000 fpm", "velocity"), "flow", "cfm")
    assert found == pytest.approx(64583.46, rel=0, abs=0.005)


@pytest.mark.read
def test_velocity_of_350_cubic_metres_a_second_through_25_square_feet():  # vp.vc6
    found = to_unit(parse("350 m3/s", "flow") / parse("25 ft2", "area"), "velocity", "fpm")
    assert found == pytest.approx(29664.3, rel=0, abs=0.05)


def test_tolerance_sees_a_coefficient_that_is_not_squared():
    assert abs(3.2 / 0.96 - 3.47) > TOL_IN_WG


def test_tolerance_sees_the_other_inch_of_water():
    assert abs(velocity_from_pressure(3.15 * 249.089, STANDARD_DENSITY) / FPM - 7108.17) > TOL_FPM
