"""[barati14], values of the drag formula as the documentation of the open library fluids 1.3.1 prints them."""

import pytest

from hoodwright.particles import drag_coefficient, settling_velocity

POUND_PER_FT3, FOOT = 0.45359237 / 0.3048**3, 0.3048
TOL_DRAG = 0.5e-9  # the library prints sixteen digits; the first term is written as its limit, 1e-12 apart
TOL_VELOCITY = 0.5e-9  # m/s: sixteen digits printed, ours is found by halving to 1e-15


@pytest.mark.read
def test_drag_of_the_paper_at_200():
    assert drag_coefficient(200.0) == pytest.approx(0.7682237950389874, rel=0, abs=TOL_DRAG)


@pytest.mark.read
def test_sand_in_water():  # pa.fl.vt
    found = settling_velocity(70e-6, 2600.0 - 1000.0, 1000.0, 1e-3)
    assert found == pytest.approx(0.004142497244531304, rel=0, abs=TOL_VELOCITY)


@pytest.mark.read
def test_drop_in_a_gas_separator():
    found = settling_velocity(150e-6, (31.2 - 2.07) * POUND_PER_FT3, 2.07 * POUND_PER_FT3, 1.2e-5) / FOOT
    assert found == pytest.approx(0.4491992020345101, rel=0, abs=TOL_VELOCITY)


def test_a_neighbour_would_fail():
    assert abs(drag_coefficient(201.0) - drag_coefficient(200.0)) > 1e5 * TOL_DRAG
