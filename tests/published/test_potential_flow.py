"""[potential-flow]: exact solutions, checked against their own closed numbers and by summing sinks."""

import math

import numpy as np
import pytest

from hoodwright.hoods import (
    far_field_least_flow,
    far_field_most_flow,
    flanged_catch_radius,
    flanged_disc_aperture,
    flanged_disc_uniform,
    flanged_reach_in_draught,
    flanged_rectangle,
    line_sink_flanged,
    line_sink_free,
)

TOL = 0.000005  # half the last digit of the shares
SUM_TOL = 2e-4  # relative: 200 x 200 squares, second order, at no less than 30 squares' distance

# check rows: tya.sq.0.05, tya.sq.0.15, tya.sq.0.6
SQUARE = [(0.05, 0.71287), (0.15, 0.33333), (0.6, 0.03747)]
# check rows: disc.uni.0.25, disc.uni.1.0, disc.uni.2.0
DISC_UNIFORM = [(0.25, 0.55279), (1.0, 0.10557), (2.0, 0.02986)]
# check rows: disc.pot.0.25, disc.pot.1.0, disc.pot.2.0
DISC_APERTURE = [(0.25, 0.4), (1.0, 0.1), (2.0, 0.02941)]


@pytest.mark.derived
@pytest.mark.parametrize("distance, share", SQUARE)
def test_square_of_300_mm(distance, share):
    assert flanged_rectangle(distance, 0.3, 0.3) * 0.09 == pytest.approx(share, rel=0, abs=TOL)


@pytest.mark.derived
@pytest.mark.parametrize("diameters, share", DISC_UNIFORM)
def test_disc_of_even_suction(diameters, share):
    assert flanged_disc_uniform(diameters, 1.0) * math.pi / 4 == pytest.approx(share, rel=0, abs=TOL)


@pytest.mark.derived
@pytest.mark.parametrize("diameters, share", DISC_APERTURE)
def test_disc_as_ideal_aperture(diameters, share):
    assert flanged_disc_aperture(diameters, 1.0) * math.pi / 4 == pytest.approx(share, rel=0, abs=TOL)


@pytest.mark.derived
def test_far_from_a_flange_the_air_comes_from_a_half_space():  # lim.flange
    assert 1 / flanged_rectangle(1e4, 0.3, 0.1) / 1e8 == pytest.approx(6.2832, rel=0, abs=0.00005)
    assert far_field_least_flow(1.0) == pytest.approx(6.2832, rel=0, abs=0.00005)


@pytest.mark.derived
def test_far_in_the_open_the_air_comes_from_all_round():  # lim.free
    assert far_field_most_flow(1e4, 0.1) / 1e8 == pytest.approx(12.566, rel=0, abs=0.0005)


@pytest.mark.derived
@pytest.mark.parametrize("distance", [0.1, 0.3, 1.0])
def test_rectangle_agrees_with_a_sum_of_sinks(distance):
    half_long, half_short, n = 0.2, 0.1, 200
    y, z = np.meshgrid(*(side * ((np.arange(n) + 0.5) / n * 2 - 1) for side in (half_long, half_short)))
    summed = np.mean(distance / (2 * np.pi * (y**2 + z**2 + distance**2) ** 1.5))
    assert flanged_rectangle(distance, 0.4, 0.2) == pytest.approx(summed, rel=SUM_TOL)


def test_tolerance_sees_whole_sides_in_place_of_half_sides():
    a = b = 0.3
    wrong = 2 / math.pi * math.atan(a * b / (0.15 * math.sqrt(a**2 + b**2 + 0.15**2)))
    assert abs(wrong - 0.33333) > TOL


def test_tolerance_tells_the_two_discs_apart():
    pairs = zip(DISC_UNIFORM, DISC_APERTURE, strict=True)
    assert all(abs(uniform - aperture) > TOL for (_, uniform), (_, aperture) in pairs)


@pytest.mark.derived
def test_reach_of_a_flanged_sink_in_a_draught():
    """Ids rank.axis and rank.far: 0.2 m3/s in a draught of 0.25 m/s."""
    assert flanged_reach_in_draught(0.2, 0.25) == pytest.approx(0.5046, rel=0, abs=0.00005)
    assert flanged_catch_radius(0.2, 0.25) == pytest.approx(0.7136, rel=0, abs=0.0001)


@pytest.mark.derived
@pytest.mark.parametrize("distance", [0.05, 0.3, 2.0])
def test_line_sink_agrees_with_a_sum_of_points(distance):
    places = (np.arange(4000) + 0.5) / 4000 * 0.6 - 0.3
    summed = np.mean(distance / (4 * np.pi * (places**2 + distance**2) ** 1.5))
    assert line_sink_free(distance, 0.6) == pytest.approx(summed, rel=SUM_TOL)


@pytest.mark.derived
def test_narrow_rectangle_in_a_flange_is_the_line():
    assert flanged_rectangle(0.3, 0.6, 1e-4) == pytest.approx(line_sink_flanged(0.3, 0.6), rel=1e-6)
