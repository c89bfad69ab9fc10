"""[guffey-barnea]: face velocities of the test of a benchtop enclosing hood, abstract read."""

import pytest

from hoodwright.hoods import enclosure_flow, face_velocity_range, opening_velocity

FPM = 0.00508
# check rows: cap.enc.range
TESTED = [(60, 0.30), (170, 0.86)]  # fpm, m/s
TOL = 0.005  # m/s: half the last printed digit


@pytest.mark.read
@pytest.mark.parametrize("fpm, printed", TESTED)
def test_face_velocity_in_both_units(fpm, printed):
    area = 0.5
    flow = enclosure_flow(area, fpm * FPM)
    assert opening_velocity(flow, area) == pytest.approx(printed, rel=0, abs=TOL)


@pytest.mark.read
def test_the_fastest_of_the_test_is_our_upper_end_for_cabinets():
    assert face_velocity_range("cabinet")[1] == pytest.approx(0.86, rel=0, abs=TOL)


@pytest.mark.read
def test_the_velocity_with_the_highest_exposures_is_never_recommended_for_a_cabinet():
    assert face_velocity_range("cabinet")[0] > 0.30 + TOL


def test_tolerance_tells_a_wrong_unit():
    assert abs(60 * 0.005 * 1.05 - 0.30) > TOL
