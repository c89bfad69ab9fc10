"""[hood-course-21]: width of a full flange, and the range of the opening laws, from the slides of a course."""

import math

import pytest

from hoodwright.hoods import dallavalle_reach, full_flange_width

RADIUS = 0.1
AREA = math.pi * RADIUS**2
TOL_RADII = 0.05  # half the last printed digit
TOL_DIAMETERS = 0.005  # the rule is exact: only rounding


@pytest.mark.read
@pytest.mark.xfail(strict=True, reason="w = sqrt(A) is 1.77 radii; 1.7 is cut off, not rounded")
def test_a_full_flange_is_the_root_of_the_area():
    assert full_flange_width(AREA) / RADIUS == pytest.approx(1.7, rel=0, abs=TOL_RADII)


@pytest.mark.read
def test_a_flange_that_ends_at_the_range_is_one_diameter_wide():
    """w = X - D / 2, which at X = 1.5 D is D."""
    width = dallavalle_reach(2 * RADIUS) - RADIUS
    assert width / (2 * RADIUS) == pytest.approx(1.0, rel=0, abs=TOL_DIAMETERS)


def test_tolerances_can_fail():
    assert abs(AREA / RADIUS - 1.7) > TOL_RADII  # the area in place of its root
    assert abs(2.0 * 2 * RADIUS - RADIUS - 2 * RADIUS) > TOL_DIAMETERS  # a range of two diameters
