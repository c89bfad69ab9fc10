import numpy as np
import pytest

from hoodwright.errors import InputError, RangeError
from hoodwright.hoods import (
    canopy_flow,
    cold_canopy_flow,
    high_canopy_origin,
    high_canopy_plume_velocity,
    high_canopy_plume_width,
    high_canopy_side,
    low_canopy_flow_rectangular,
    low_canopy_flow_round,
    low_canopy_reach,
    low_canopy_side,
    measured_capture,
)

FUNCTIONS = [
    lambda x: cold_canopy_flow(0.25, x, 0.5),
    low_canopy_reach,
    low_canopy_side,
    lambda x: low_canopy_flow_round(x, 400.0),
    lambda x: low_canopy_flow_rectangular(2.0, x, 400.0),
    high_canopy_origin,
    high_canopy_plume_width,
    lambda x: high_canopy_plume_velocity(x, 400.0, 3.0),
    lambda x: high_canopy_side(x, 2.0),
    lambda x: canopy_flow(1.0, x, 4.0),
]


@pytest.mark.parametrize("function", FUNCTIONS)
def test_scalar_array_and_empty_array(function):
    assert np.ndim(function(1.5)) == 0
    assert function(np.array([1.0, 1.5, 2.0]))[1] == pytest.approx(function(1.5))
    assert function(np.array([])).shape == (0,)


@pytest.mark.parametrize("sides, factor", [(4, 1.4), (3, 1.4), (2, 1.0)])
def test_cold_canopy_by_its_open_sides(sides, factor):
    assert cold_canopy_flow(0.25, 3.2, 0.7, open_sides=sides) == pytest.approx(factor * 0.25 * 3.2 * 0.7)


def test_a_plume_wider_than_its_canopy_adds_nothing():
    assert canopy_flow(1.0, 4.0, 3.0) == 1.0
    assert canopy_flow(1.0, 3.0, 4.0) == pytest.approx(1.508)


@pytest.mark.parametrize(
    "call, text",
    [
        (lambda: cold_canopy_flow(0.25, 3.2, 0.7, open_sides=1), "open sides 1 is not 2, 3 or 4; .* a booth"),
        (lambda: cold_canopy_flow(0.0, 3.2, 0.7), "capture velocity 0 m/s is not above 0 m/s"),
        (lambda: cold_canopy_flow(0.25, 0.0, 0.7), "length of open sides 0 m is not above 0 m"),
        (lambda: low_canopy_reach(0.0), "width of the source 0 m is not above 0 m"),
        (lambda: low_canopy_side(-1.0), "side of the source -1 m is not above 0 m"),
        (lambda: low_canopy_flow_round(1.0, 0.0), "excess temperature 0 K is not above 0 K"),
        (lambda: low_canopy_flow_rectangular(0.0, 1.0, 400.0), "length of the canopy 0 m is not above 0 m"),
        (lambda: high_canopy_origin(0.0), "width of the source 0 m is not above 0 m"),
        (lambda: high_canopy_plume_width(0.0), "distance from the origin 0 m is not above 0 m"),
        (lambda: high_canopy_plume_velocity(0.0, 400.0, 3.0), "area of the source 0 m2 is not above 0 m2"),
        (lambda: high_canopy_side(1.0, -1.0), "height -1 m is below 0 m"),
        (lambda: canopy_flow(0.0, 1.0, 2.0), "flow of the plume 0 m3/s is not above 0 m3/s"),
    ],
)
def test_outside_the_range_is_refused_in_words(call, text):
    with pytest.raises(RangeError, match=text):
        call()


def test_an_unknown_burner_is_told_the_rows():
    with pytest.raises(InputError, match="burner 'middle' is not in table canopy_capture"):
        measured_capture("middle")
