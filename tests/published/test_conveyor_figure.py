"""[conveyor-figure]: figure VS-50-20, text version on a public page."""

import pytest

from hoodwright.hoods import face_velocity_range

FPM = 0.00508
PRINTED = (150, 200)
TOL = 0.5  # fpm: half the last printed digit


@pytest.mark.read
@pytest.mark.parametrize("end", [0, 1])
def test_indraught_at_all_openings_of_a_transfer_point(end):
    assert face_velocity_range("transfer point")[end] / FPM == pytest.approx(PRINTED[end], rel=0, abs=TOL)


def test_tolerance_tells_the_ends_apart():
    assert PRINTED[1] - PRINTED[0] > 2 * TOL
