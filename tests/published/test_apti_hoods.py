"""[apti-hoods]: one diameter before an unflanged hood the velocity is below a tenth of that at the face."""

import math

import pytest

from hoodwright.hoods import dallavalle_plain

DIAMETER = 0.2
AREA = math.pi / 4 * DIAMETER**2


@pytest.mark.read
def test_less_than_a_tenth_one_diameter_away():  # ro.1diam
    assert dallavalle_plain(DIAMETER, AREA) * AREA < 0.10


def test_the_bound_refuses_four_fifths_of_a_diameter():
    assert dallavalle_plain(0.8 * DIAMETER, AREA) * AREA > 0.10
