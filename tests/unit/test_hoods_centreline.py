import math

import numpy as np
import pytest

from hoodwright.errors import RangeError
from hoodwright.hoods import (
    dallavalle_flanged,
    dallavalle_plain,
    dallavalle_reach,
    equal_area_diameter,
    far_field_least_flow,
    far_field_most_flow,
    flanged_disc_aperture,
    flanged_disc_uniform,
    flanged_rectangle,
    fletcher_1977_plain,
    fletcher_1977_reach,
    full_flange_width,
)

CALLS = [
    (equal_area_diameter, (0.02,)),
    (full_flange_width, (0.02,)),
    (dallavalle_reach, (0.15,)),
    (dallavalle_plain, (0.1, 0.02)),
    (dallavalle_flanged, (0.1, 0.02)),
    (fletcher_1977_plain, (0.1, 0.2, 0.1)),
    (flanged_rectangle, (0.1, 0.2, 0.1)),
    (flanged_disc_uniform, (0.1, 0.15)),
    (flanged_disc_aperture, (0.1, 0.15)),
    (far_field_least_flow, (0.5,)),
    (far_field_most_flow, (0.5, 0.1)),
]


@pytest.mark.parametrize("function, arguments", CALLS)
def test_scalar_array_and_empty_array(function, arguments):
    scalar = function(*arguments)
    assert isinstance(scalar, float)
    for shape in ((3,), (2, 1), (0,)):
        found = function(np.full(shape, arguments[0]), *arguments[1:])
        assert found.shape == shape
        assert np.all(found == scalar)


def test_distances_and_openings_broadcast():
    assert flanged_rectangle(np.array([[0.1], [0.2]]), np.array([0.1, 0.2, 0.3]), 0.1).shape == (2, 3)


def test_at_the_face_the_velocity_is_the_mean_one():
    assert dallavalle_plain(0, 0.02) == pytest.approx(1 / 0.02)
    assert flanged_rectangle(0, 0.2, 0.1) == pytest.approx(1 / 0.02)
    assert flanged_disc_uniform(0, 0.2) == pytest.approx(4 / (math.pi * 0.04))
    assert flanged_disc_aperture(0, 0.2) == pytest.approx(2 / (math.pi * 0.04))


@pytest.mark.parametrize("diameter", [0.05, 0.1, 0.15, 0.3])
def test_dallavalle_holds_at_its_very_reach(diameter):
    assert dallavalle_plain(dallavalle_reach(diameter), math.pi / 4 * diameter**2) > 0


@pytest.mark.parametrize("area", [0.01, 0.02, 0.3])
def test_fletcher_holds_at_both_ends_of_its_reach(area):
    side = math.sqrt(area)
    assert np.all(fletcher_1977_plain(np.array(fletcher_1977_reach(area)), side, side) > 0)


def test_a_plane_alongside_halves_the_least_flow():
    assert far_field_least_flow(1.0, [0.0]) == pytest.approx(math.pi)
    assert far_field_least_flow(1.0, [0.0, 0.0]) == pytest.approx(math.pi / 2)


def test_a_plane_farther_off_helps_less():
    """A plane half the distance off: its image lies x aside and sqrt(2) x away, a share of 2^-1.5 = 0.353553."""
    assert far_field_least_flow(1.0, [1.0]) == pytest.approx(2 * math.pi / 1.353553, rel=1e-6)
    """Two of them at right angles: two images and one of both, 3^-1.5 = 0.192450 of the opening's own."""
    assert far_field_least_flow(1.0, [1.0, 1.0]) == pytest.approx(2 * math.pi / (1 + 0.707107 + 0.192450), rel=1e-6)


REFUSED = [
    (
        dallavalle_plain,
        (0.5, math.pi / 4 * 0.01),
        r"distance 0\.5 m is above 0\.15 m, the limit of \[dallavalle, range of 1\.5 diameters\]; use far_",
    ),
    (dallavalle_flanged, (0.5, 0.01), r"distance 0\.5 m is above 0\.169257 m, the limit of \[dallavalle"),
    (dallavalle_plain, (-0.1, 0.01), r"distance -0\.1 m is below 0 m; give it as a positive size"),
    (dallavalle_plain, (0.1, 0.0), "area 0 m2 is not above 0 m2; give its true size"),
    (fletcher_1977_plain, (5.0, 0.2, 0.2), r"distance 5 m is above 0\.6 m, the limit of \[fletcher77"),
    (
        fletcher_1977_plain,
        (0.001, 0.2, 0.2),
        r"distance 0\.001 m is below 0\.01 m, the limit of \[fletcher77",
    ),
    (
        fletcher_1977_plain,
        (0.1, 0.1, 0.2),
        r"long side / short side 0\.5 is below 1, .*; give the longer side first",
    ),
    (fletcher_1977_plain, (0.1, 1.0, 0.05), "long side / short side 20 is above 16, .* or use another law"),
    (flanged_rectangle, (-0.1, 0.2, 0.1), r"distance -0\.1 m is below 0 m"),
    (flanged_rectangle, (0.1, 0.2, 0.0), "short side 0 m is not above 0 m"),
    (flanged_disc_uniform, (0.1, -0.2), r"diameter -0\.2 m is not above 0 m"),
    (far_field_most_flow, (0.0, 0.1), "distance 0 m is not above 0 m"),
]


@pytest.mark.parametrize("function, arguments, text", REFUSED)
def test_what_is_refused_and_in_which_words(function, arguments, text):
    with pytest.raises(RangeError, match=text):
        function(*arguments)


def test_a_negative_offset_of_an_image_is_refused():
    with pytest.raises(RangeError, match=r"image offset -1 m is below 0 m"):
        far_field_least_flow(1.0, [-1.0])


def test_the_first_distance_outside_is_named_with_its_own_limit():
    with pytest.raises(RangeError, match=r"distance 0\.3 m is above 0\.169257 m"):
        dallavalle_plain(0.3, np.array([1.0, 0.01]))
