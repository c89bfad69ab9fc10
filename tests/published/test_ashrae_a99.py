"""[ashrae-a99], chapter 29: text and constants read in an online copy, the form of the equations from memory."""

import pytest

from hoodwright.hoods import boiling_tank_flow, heat_of_steam, hot_body_constant, hot_body_flow

BODY, TOL_BODY = 0.038, 0.0005  # half the last digit
TANK, TOL_TANK = 5.0, 0.05  # two digits
LATENT = 2257e3  # J/kg at 100 degC, read


@pytest.mark.memory
def test_constant_of_a_hot_body():  # pl.ashrae20
    assert hot_body_constant(101325.0) == pytest.approx(BODY, rel=0, abs=TOL_BODY)
    assert hot_body_flow(1.0, 1.0, 1.0) == pytest.approx(BODY, rel=0, abs=TOL_BODY)


@pytest.mark.memory
def test_constant_of_a_boiling_tank():  # pl.ashrae24
    """Q0 = 5 A (G L)^(1/3): 2 m2 that boil off 0.002 kg/(s m2), 2 m long."""
    assert boiling_tank_flow(0.004, 2.0, 2.0) / 2 / 0.004 ** (1 / 3) == pytest.approx(TANK, rel=0, abs=TOL_TANK)


@pytest.mark.read
def test_heat_of_steam():
    assert heat_of_steam(1.0) == LATENT


def test_tolerances_see_another_heat_and_pressure():
    assert abs(hot_body_constant(90000.0) - BODY) > TOL_BODY
    assert abs(TANK * (2500 / 2257) ** (1 / 3) - TANK) > TOL_TANK
