"""What must hold for any wheel, disc or belt of the tables."""

import math

from hypothesis import given
from hypothesis import strategies as st
from pytest import approx

from hoodwright.hoods import belt_flow, disc_flow, wheel_branch_diameter, wheel_flow, wheel_table_width
from hoodwright.hoods.wheels import DISCS, WHEEL_BRANCH_VELOCITY, WHEELS

works = st.sampled_from(sorted(WHEELS))
discs = st.sampled_from(sorted(DISCS))
wheels = st.floats(0.01, 0.91)


@given(works, wheels, st.floats(1, 10))
def test_flow_doubles_with_width_beyond_the_table(work, diameter, wider):
    width = wider * float(wheel_table_width(work, diameter))
    assert wheel_flow(work, diameter, 2 * width) == approx(2 * wheel_flow(work, diameter, width))


@given(works, wheels, st.floats(0.01, 1))
def test_flow_is_that_of_the_row_up_to_its_width(work, diameter, share):
    width = float(wheel_table_width(work, diameter))
    assert wheel_flow(work, diameter, share * width) == approx(wheel_flow(work, diameter, width))


@given(works, wheels, wheels)
def test_a_larger_wheel_asks_no_less(work, a, b):
    """At widths up to the table's: a wide wheel of the smaller row may ask more than the larger row."""
    small, large = sorted((a, b))
    assert wheel_flow(work, small, 0.001) <= wheel_flow(work, large, 0.001)


@given(wheels)
def test_buffing_asks_no_less_than_grinding_for_a_narrow_wheel(diameter):
    assert wheel_flow("buffing", diameter, 0.001) >= wheel_flow("grinding", diameter, 0.001)


@given(discs, st.floats(0.01, 1.82), st.floats(0.01, 1.82))
def test_a_larger_disc_asks_no_less(kind, a, b):
    small, large = sorted((a, b))
    assert disc_flow(kind, small) <= disc_flow(kind, large)


@given(st.floats(0.01, 1.82))
def test_an_open_disc_and_a_second_spindle_ask_more(diameter):
    assert disc_flow("open vertical-spindle disc", diameter) > disc_flow("covered vertical-spindle disc", diameter)
    assert disc_flow("double-spindle disc", diameter) > disc_flow("single-spindle disc", diameter)


@given(st.floats(0.001, 0.22), st.floats(0.001, 0.22))
def test_a_wider_belt_asks_no_less(a, b):
    small, large = sorted((a, b))
    assert belt_flow(small) <= belt_flow(large)


@given(st.floats(0.01, 5))
def test_the_branch_keeps_its_speed(flow):
    assert flow / (math.pi / 4 * wheel_branch_diameter(flow) ** 2) == approx(WHEEL_BRANCH_VELOCITY)
