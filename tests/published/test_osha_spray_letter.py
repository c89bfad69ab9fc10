"""[osha-spray-letter]: the velocities of table G-10 lie from 50 to 250 fpm; the mean over the face is 100."""

import pytest

from hoodwright.hoods import face_velocity_range

FPM = 0.00508
TOL = 0.5  # fpm: half the last printed digit
# check rows: spray.g10
BOOTHS = ["spray booth", "spray room", "spray booth electrostatic", "metal spraying booth"]


@pytest.mark.read
@pytest.mark.parametrize("form", BOOTHS)
def test_every_booth_lies_within_the_table(form):
    low, high = face_velocity_range(form)
    assert 50 - TOL <= low / FPM <= high / FPM <= 250 + TOL


@pytest.mark.read
def test_mean_over_an_open_face():
    assert face_velocity_range("spray booth")[0] / FPM == pytest.approx(100, rel=0, abs=TOL)


def test_the_bounds_can_fail():
    assert face_velocity_range("blast cabinet")[1] / FPM > 250 + TOL
