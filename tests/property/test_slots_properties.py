"""What must hold for slots, resting hoods and sinks in a draught, whatever the numbers."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from hoodwright.hoods import (
    dallavalle_plain,
    flanged_reach_in_draught,
    flanged_rectangle,
    fletcher_1977_plain,
    free_reach_in_draught,
    garrison_1983_plain,
    line_sink_aside,
    line_sink_flanged,
    line_sink_free,
    resting_flanged,
    resting_plain,
    resting_slot_flanged,
    resting_slot_plain,
    silverman_flanged,
    silverman_plain,
)

LENGTHS = st.floats(0.1, 5.0)
SHARES = st.floats(0.01, 0.45)


@given(length=LENGTHS, share=SHARES)
def test_flanged_slot_draws_more_than_a_plain_one(length, share):
    assert silverman_flanged(share * length, length) > silverman_plain(share * length, length)
    assert line_sink_flanged(share * length, length) == pytest.approx(2 * line_sink_free(share * length, length))


@given(length=LENGTHS, share=st.floats(0.01, 0.2))
def test_velocity_halves_when_slot_or_distance_doubles(length, share):
    x = share * length
    for law in (silverman_plain, silverman_flanged):
        assert law(2 * x, length) == pytest.approx(law(x, length) / 2)
        assert law(x, 2 * length) == pytest.approx(law(x, length) / 2)


@given(length=LENGTHS)
def test_near_a_line_is_endless_and_far_a_point(length):
    near, far = 1e-4 * length, 1e4 * length
    assert line_sink_free(near, length) == pytest.approx(1 / (2 * 3.141592653589793 * near * length), rel=1e-6)
    assert line_sink_free(far, length) == pytest.approx(1 / (4 * 3.141592653589793 * far**2), rel=1e-6)


@given(share=st.floats(0.05, 0.4))
def test_a_long_rectangle_draws_about_as_a_line(share):
    """The measured law for 16:1, which has a duct behind it, lies between 0.85 and 2 times the line in open space."""
    ratio = fletcher_1977_plain(share, 1.0, 1 / 16) / line_sink_free(share, 1.0)
    assert 0.85 < ratio < 2.0


@given(area=st.floats(0.001, 1.0), share=st.floats(0.0, 1.4))
def test_each_surface_helps(area, share):
    x = share * (4 * area / 3.141592653589793) ** 0.5
    assert resting_plain(x, area, 2) >= resting_plain(x, area, 1)
    assert resting_flanged(x, area, 1) > resting_plain(x, area, 1)


@given(length=LENGTHS, x=st.floats(0.05, 2.0), a=st.floats(0.0, 2.0))
def test_a_line_is_the_sum_of_its_halves(length, x, a):
    """Two halves with half the flow each, seen from their own middles."""
    halves = [line_sink_aside(x, abs(a + shift * length / 4), length / 2) for shift in (-1, 1)]
    assert sum(halves) / 2 == pytest.approx(line_sink_aside(x, a, length), rel=1e-9, abs=1e-12)


@given(length=LENGTHS, x=st.floats(0.05, 2.0), a=st.floats(0.0, 2.0), b=st.floats(0.0, 2.0))
def test_a_line_draws_less_the_farther_aside(length, x, a, b):
    near, far = sorted((a, b))
    assert line_sink_aside(x, far, length) <= line_sink_aside(x, near, length) * (1 + 1e-12)
    assert line_sink_aside(x, 0.0, length) == pytest.approx(line_sink_free(x, length))


@given(length=LENGTHS, a=st.floats(0.01, 0.5), b=st.floats(0.01, 0.5))
def test_slots_draw_less_farther_away(length, a, b):
    near, far = sorted((a * length, b * length))
    for law in (silverman_plain, silverman_flanged, line_sink_free, resting_slot_plain, resting_slot_flanged):
        assert law(near, length) >= law(far, length)


@given(area=st.floats(0.001, 1.0), a=st.floats(0.0, 1.4), b=st.floats(0.0, 1.4), surfaces=st.sampled_from([1, 2]))
def test_hoods_at_rest_draw_less_farther_away(area, a, b, surfaces):
    near, far = sorted(share * (4 * area / 3.141592653589793) ** 0.5 for share in (a, b))
    assert resting_plain(near, area, surfaces) >= resting_plain(far, area, surfaces)


@given(area=st.floats(0.001, 1.0), share=st.floats(0.0, 1.4))
def test_at_rest_it_draws_more_than_free_and_no_more_than_its_images(area, share):
    x = share * (4 * area / 3.141592653589793) ** 0.5
    free = dallavalle_plain(x, area)
    assert free <= resting_plain(x, area, 1) <= 2 * free
    assert resting_plain(x, area, 1) <= resting_plain(x, area, 2) <= 4 * free


@given(side=st.floats(0.05, 1.0), share=st.floats(0.05, 3.0))
def test_a_rectangle_becomes_the_square(side, share):
    for law in (fletcher_1977_plain, flanged_rectangle):
        nearly, square = (law(share * side, long_side, side) for long_side in (side * (1 + 1e-9), side))
        assert nearly == pytest.approx(square, rel=1e-6)


@given(diameter=st.floats(0.05, 1.0), a=st.floats(0.51, 1.5), b=st.floats(0.51, 1.5))
def test_nozzle_draws_less_farther_away(diameter, a, b):
    near, far = sorted((a, b))
    assert garrison_1983_plain(near * diameter, diameter) >= garrison_1983_plain(far * diameter, diameter)


@given(flow=st.floats(0.001, 10.0), draught=st.floats(0.01, 2.0))
def test_four_times_the_flow_reaches_twice_as_far(flow, draught):
    assert flanged_reach_in_draught(4 * flow, draught) == pytest.approx(2 * flanged_reach_in_draught(flow, draught))
    assert free_reach_in_draught(flow, draught) < flanged_reach_in_draught(flow, draught)
