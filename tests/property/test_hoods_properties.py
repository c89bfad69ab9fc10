"""What must hold for any opening. Lengths in metres; a share of the axis laws is a velocity per flow."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from pytest import approx

from hoodwright.hoods import (
    capture_velocity_range,
    dallavalle_flanged,
    dallavalle_plain,
    equal_area_diameter,
    far_field_least_flow,
    far_field_most_flow,
    flanged_disc_aperture,
    flanged_disc_uniform,
    flanged_rectangle,
    fletcher_1977_plain,
    flow_from_suction,
    hood_suction,
    required_flow,
)

sides = st.floats(0.05, 1.0)
aspects = st.floats(1, 16)
near = st.floats(0.06, 1.3)  # distances in equal-area diameters that every law covers
far = st.floats(0.02, 50)
scales = st.floats(0.2, 5)
losses = st.floats(0, 3)


def _laws(x, long_side, short_side):
    area = long_side * short_side
    diameter = equal_area_diameter(area)
    return {
        "dallavalle plain": dallavalle_plain(x, area),
        "dallavalle flanged": dallavalle_flanged(x, area),
        "fletcher": fletcher_1977_plain(x, long_side, short_side),
        "rectangle": flanged_rectangle(x, long_side, short_side),
        "disc": flanged_disc_uniform(x, diameter),
        "aperture": flanged_disc_aperture(x, diameter),
    }


@given(near, sides, aspects, scales)
def test_scaling_all_lengths_scales_the_flow_with_the_area(diameters, short_side, aspect, scale):
    long_side = aspect * short_side
    x = diameters * equal_area_diameter(long_side * short_side)
    small, large = _laws(x, long_side, short_side), _laws(scale * x, scale * long_side, scale * short_side)
    for name, value in small.items():
        assert large[name] * scale**2 == approx(value, rel=1e-9), name


@given(near, sides, aspects, st.floats(1.01, 1.1))
def test_velocity_falls_with_distance(diameters, short_side, aspect, step):
    long_side = aspect * short_side
    x = diameters * equal_area_diameter(long_side * short_side)
    here, farther = _laws(x, long_side, short_side), _laws(step * x, long_side, short_side)
    for name, value in here.items():
        assert farther[name] < value, name


@given(near, sides)
def test_flanged_never_needs_more_than_plain(diameters, diameter):
    area, x = math.pi / 4 * diameter**2, diameters * diameter
    assert required_flow(0.5, dallavalle_flanged(x, area)) <= required_flow(0.5, dallavalle_plain(x, area))


@given(far, sides, aspects)
def test_a_rectangle_may_be_turned(x, short_side, aspect):
    turned = flanged_rectangle(x, short_side, aspect * short_side)
    assert flanged_rectangle(x, aspect * short_side, short_side) == approx(turned)


@given(far, sides)
def test_a_square_lies_between_its_inner_and_outer_circle(x, side):
    velocity_per_face = flanged_rectangle(x, side, side) * side**2
    inner, outer = side, side * math.sqrt(2)
    assert flanged_disc_uniform(x, inner) * math.pi / 4 * inner**2 <= velocity_per_face * (1 + 1e-9)
    assert velocity_per_face <= flanged_disc_uniform(x, outer) * math.pi / 4 * outer**2 * (1 + 1e-9)


@given(far, sides)
def test_suction_at_the_edge_draws_less_on_the_axis_than_even_suction(x, diameter):
    assert flanged_disc_aperture(x, diameter) < flanged_disc_uniform(x, diameter)


@pytest.mark.parametrize("law", [flanged_disc_uniform, flanged_disc_aperture])
@given(sides)
def test_far_away_only_the_flow_counts(law, diameter):
    x = 1000 * diameter
    assert required_flow(1.0, law(x, diameter)) == approx(far_field_least_flow(x), rel=1e-6)


@given(near, sides, aspects)
def test_every_law_lies_between_the_two_bounds(diameters, short_side, aspect):
    long_side = aspect * short_side
    area = long_side * short_side
    x = diameters * equal_area_diameter(area)
    least, most = far_field_least_flow(x), far_field_most_flow(x, math.hypot(long_side, short_side) / 2)
    for name, value in _laws(x, long_side, short_side).items():
        assert least < 1 / value < most, name


@given(st.floats(1.5, 50), sides, aspects, st.floats(-0.9, 5))
def test_suction_spread_anyhow_stays_between_the_bounds(diameters, short_side, aspect, peak):
    """Sinks over a rectangle, weaker or stronger towards its edges; in the open, and in an endless flange."""
    half_long, half_short = aspect * short_side / 2, short_side / 2
    x = diameters * equal_area_diameter(4 * half_long * half_short)
    steps = (np.arange(20) + 0.5) / 10 - 1
    y, z = np.meshgrid(half_long * steps, half_short * steps)
    weight = 1 + peak * np.maximum(*np.abs(np.meshgrid(steps, steps))) ** 4
    open_space = np.average(x / (4 * np.pi * (x**2 + y**2 + z**2) ** 1.5), weights=weight)
    assert 1 / open_space < far_field_most_flow(x, math.hypot(half_long, half_short)) * (1 + 1e-12)
    assert 1 / (2 * open_space) > far_field_least_flow(x) * (1 - 1e-12)


@given(far, sides, st.floats(0, 2))
def test_a_mirror_image_beside_the_opening_keeps_to_the_least_flow(x, diameter, gap):
    """A plane `gap` beside the rim doubles the opening; the image lies twice the gap from the axis, or more."""
    angle, radius = np.meshgrid(np.linspace(0, 2 * np.pi, 24, endpoint=False), (np.arange(12) + 0.5) / 12)
    y, z = diameter / 2 * radius * np.cos(angle), diameter / 2 * radius * np.sin(angle)
    image = 2 * (gap + diameter / 2) - y
    both = sum(np.average(x / (2 * np.pi * (x**2 + across**2 + z**2) ** 1.5), weights=radius) for across in (y, image))
    assert 1 / both >= far_field_least_flow(x, [2 * gap]) * (1 - 1e-12)


@given(far, sides, scales)
def test_least_flow_grows_with_the_square_of_the_distance(x, r, scale):
    assert far_field_least_flow(scale * x) == approx(scale**2 * far_field_least_flow(x))
    assert far_field_most_flow(scale * x, scale * r) == approx(scale**2 * far_field_most_flow(x, r))


@given(st.floats(0.1, 10), st.floats(0.1, 10))
def test_flow_is_in_proportion_to_the_capture_velocity(velocity, velocity_per_flow):
    flow = required_flow(velocity, velocity_per_flow)
    assert required_flow(2 * velocity, velocity_per_flow) == approx(2 * flow)
    assert flow * velocity_per_flow == approx(velocity)


def test_each_release_class_begins_where_the_one_before_ends():
    ranges = [capture_velocity_range(release) for release in ("still", "gentle", "driven", "thrown")]
    assert [low for low, _ in ranges[1:]] == [high for _, high in ranges[:-1]]


@given(st.floats(0, 5), st.floats(0.001, 0.5), losses, st.floats(0.3, 2))
def test_flow_comes_back_from_the_suction(flow, area, loss, rho):
    suction = hood_suction(flow, area, loss, rho)
    assert flow_from_suction(suction, area, loss, rho) == approx(flow, rel=1e-9, abs=1e-150)


@given(st.floats(0.01, 5), st.floats(0.001, 0.5), losses, st.floats(0.3, 2))
def test_twice_the_flow_makes_four_times_the_suction(flow, area, loss, rho):
    suction = hood_suction(flow, area, loss, rho)
    assert hood_suction(2 * flow, area, loss, rho) == approx(4 * suction)
    assert hood_suction(flow, area, loss, 2 * rho) == approx(2 * suction)
    assert hood_suction(flow, area, loss + 0.1, rho) > suction
