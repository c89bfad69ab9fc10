"""[cal-5154-1], section (c)(1) and (2), read in the text of the amendment."""

import pytest

from hoodwright.hoods import face_velocity_range

FPM = 0.00508
MEAN, ANYWHERE, UNATTENDED = 100, 70, 60
TOL = 0.5  # fpm: half the last printed digit


@pytest.mark.read
def test_the_mean_asked_lies_within_our_range():
    low, high = (v / FPM for v in face_velocity_range("laboratory cupboard"))
    assert low - TOL <= MEAN <= high + TOL


@pytest.mark.read
@pytest.mark.parametrize("least", [ANYWHERE, UNATTENDED])
def test_our_range_begins_above_what_is_let_pass_at_one_point_or_unattended(least):
    assert face_velocity_range("laboratory cupboard")[0] / FPM > least + TOL


@pytest.mark.read
@pytest.mark.xfail(strict=True, reason="the state asks a mean of 100 fpm, [nfpa-45] begins at 80: we begin at 80")
def test_the_mean_asked_is_not_our_lower_end():
    assert face_velocity_range("laboratory cupboard")[0] / FPM == pytest.approx(MEAN, rel=0, abs=TOL)
