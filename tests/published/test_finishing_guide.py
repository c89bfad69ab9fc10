"""[finishing-guide]: dry-filter booths are typically designed for 125 fpm; one page read."""

import pytest

from hoodwright.hoods import face_velocity

FPM = 0.00508
TOL = 0.5  # fpm: half the last printed digit


@pytest.mark.read
def test_usual_design_of_a_dry_booth_is_our_upper_end():
    assert face_velocity("spray booth", high_hazard=True) / FPM == pytest.approx(125, rel=0, abs=TOL)


def test_tolerance_tells_it_from_the_least_velocity():
    assert abs(face_velocity("spray booth", high_hazard=False) / FPM - 125) > 2 * TOL
