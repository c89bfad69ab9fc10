"""[us-32-627], section 627.55(d)(1), read online."""

import pytest

from hoodwright.hoods import face_velocity_range

FPM = 0.00508
PRINTED = (60, 80)
TOL = 0.5  # fpm: half the last printed digit


@pytest.mark.read
@pytest.mark.parametrize("end", [0, 1])
def test_flow_through_the_openings_of_a_ventilated_balance_enclosure(end):
    assert face_velocity_range("balance enclosure")[end] / FPM == pytest.approx(PRINTED[end], rel=0, abs=TOL)


def test_tolerance_tells_the_ends_apart():
    assert PRINTED[1] - PRINTED[0] > 2 * TOL
