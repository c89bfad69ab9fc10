"""[nfpa-45], read second-hand in a list of standards."""

import pytest

from hoodwright.hoods import face_velocity_range

FPM = 0.00508
PRINTED = (80, 120)
TOL = 0.5  # fpm: half the last printed digit


@pytest.mark.read
@pytest.mark.parametrize("end", [0, 1])
def test_face_velocity_of_a_laboratory_cupboard(end):
    assert face_velocity_range("laboratory cupboard")[end] / FPM == pytest.approx(PRINTED[end], rel=0, abs=TOL)


def test_tolerance_tells_the_ends_apart():
    assert PRINTED[1] - PRINTED[0] > 2 * TOL
