"""[canopy-hot], from memory: example of a high canopy and the regression of a low one, in feet and degF.

A pot of 4 ft with metal at 1000 degF in air of 100 degF, canopy 10 ft above.
"""

import math

import pytest

from hoodwright.hoods import (
    canopy_flow,
    high_canopy_origin,
    high_canopy_plume_velocity,
    high_canopy_plume_width,
    high_canopy_side,
    low_canopy_flow_rectangular,
    low_canopy_flow_round,
    low_canopy_reach,
    low_canopy_side,
)

FOOT, FPM = 0.3048, 0.00508
CFM = FOOT**3 / 60
AREA = 12.57  # ft2
WARMER = 900 / 1.8  # K
TOL_FT, TOL_FPM, TOL_CFM = 0.05, 0.5, 0.5  # half the last digit
TOL_EXAMPLE = 50 + 20500 * 0.003  # cfm: half a hundred; Dc as 7.3 for 7.29 ft, twice


@pytest.mark.memory
def test_virtual_origin():  # pl.hi.xc
    assert high_canopy_origin(4 * FOOT) / FOOT == pytest.approx(10.7, rel=0, abs=TOL_FT)
    assert (high_canopy_origin(4 * FOOT) + 10 * FOOT) / FOOT == pytest.approx(20.7, rel=0, abs=TOL_FT)


@pytest.mark.memory
def test_width_of_the_plume():  # pl.hi.dc
    assert high_canopy_plume_width(21 * FOOT) / FOOT == pytest.approx(7.3, rel=0, abs=TOL_FT)


@pytest.mark.memory
def test_velocity_of_the_plume():  # pl.hi.vf
    found = high_canopy_plume_velocity(AREA * FOOT**2, WARMER, 21 * FOOT)
    assert found / FPM == pytest.approx(150, rel=0, abs=TOL_FPM)


@pytest.mark.memory
def test_flow_of_the_high_canopy():  # pl.hi.q
    wide = high_canopy_plume_width(21 * FOOT)
    side = high_canopy_side(wide, 10 * FOOT)
    plume, face = (math.pi / 4 * d**2 for d in (wide, side))
    velocity = high_canopy_plume_velocity(AREA * FOOT**2, WARMER, 21 * FOOT)
    assert canopy_flow(velocity * plume, plume, face) / CFM == pytest.approx(20500, rel=0, abs=TOL_EXAMPLE)


@pytest.mark.memory
def test_flow_of_a_low_round_canopy():  # pl.lo.round
    """4.7 D^2.33 dT^0.42 for 5 ft and 500 degF."""
    assert low_canopy_flow_round(5 * FOOT, 500 / 1.8) / CFM == pytest.approx(2718, rel=0, abs=TOL_CFM)


SIZES = [(2.0, 3.0, 200.0), (4.0, 6.0, 620.0), (1.5, 1.5, 1800.0)]


@pytest.mark.memory
@pytest.mark.parametrize("width, length, warmer", SIZES)
def test_si_twins_agree_with_the_printed_forms(width, length, warmer):
    """Feet and degrees Fahrenheit as printed, against the functions in SI; 1e-9 is rounding."""
    kelvin = warmer / 1.8
    round_ = low_canopy_flow_round(width * FOOT, kelvin) / CFM
    assert round_ == pytest.approx(4.7 * width**2.33 * warmer**0.42, rel=1e-9)
    rectangular = low_canopy_flow_rectangular(length * FOOT, width * FOOT, kelvin) / CFM
    assert rectangular == pytest.approx(6.2 * width**1.33 * warmer**0.42 * length, rel=1e-9)
    assert high_canopy_origin(width * FOOT) / FOOT == pytest.approx((2 * width) ** 1.138, rel=1e-9)
    assert high_canopy_plume_width(length * FOOT) / FOOT == pytest.approx(0.5 * length**0.88, rel=1e-9)
    velocity = high_canopy_plume_velocity(width * FOOT**2, kelvin, length * FOOT) / FPM
    assert velocity == pytest.approx(8 * width**0.33 * warmer**0.42 / length**0.25, rel=1e-9)


@pytest.mark.memory
def test_sizes_and_reach_of_a_low_canopy():
    assert low_canopy_side(2 * FOOT) == pytest.approx(3 * FOOT)
    assert low_canopy_reach(2 * FOOT) == pytest.approx(2 * FOOT)
    assert low_canopy_reach(8 * FOOT) == pytest.approx(3 * FOOT)


def test_tolerances_see_kelvin_taken_for_fahrenheit():
    assert abs(4.7 * 5**2.33 * (500 / 1.8) ** 0.42 - 2718) > 100 * TOL_CFM
    assert abs(8 * AREA**0.33 * WARMER**0.42 / 21**0.25 - 150) > 10 * TOL_FPM
