"""[us-method-204]: criteria read as a testing laboratory repeats them; the pressure is from memory."""

import math

import pytest

from hoodwright.hoods import (
    TOTAL_ENCLOSURE_SHARE,
    face_velocity_range,
    least_opening_distance,
    opening_share,
    velocity_from_enclosure_pressure,
)

FPM, MM_HG, INCH_WATER = 0.00508, 133.322387, 249.089
TOL_FPM = 5  # 200 fpm: half the last printed digit but one
TOL_INCH = 0.0005  # half the last printed digit
TOL_PRESSURE = 0.5 * 0.0005 / 0.013  # a root halves the rounding of 0.013 mm Hg


@pytest.mark.read
def test_velocity_through_the_openings():
    assert face_velocity_range("total enclosure")[0] / FPM == pytest.approx(200, rel=0, abs=TOL_FPM)


@pytest.mark.read
def test_velocity_in_metres_an_hour():
    rounding = 50 + TOL_FPM * FPM * 3600  # half the last digit of 3600 that is not 0, and that of 200 fpm
    assert face_velocity_range("total enclosure")[0] * 3600 == pytest.approx(3600, rel=0, abs=rounding)


@pytest.mark.read
@pytest.mark.xfail(strict=True, reason="3600 m/h is 196.9 fpm, printed as 200: we take 200, the more demanding")
def test_metres_an_hour_are_not_exactly_200_fpm():  # pte.fv
    assert face_velocity_range("total enclosure")[0] * 3600 == pytest.approx(3600, rel=0, abs=0.5)


@pytest.mark.read
def test_share_that_may_be_open():  # pte.ndo
    assert pytest.approx(0.05, rel=0, abs=0.005) == TOTAL_ENCLOSURE_SHARE
    assert opening_share(3.0, 60.0) <= TOTAL_ENCLOSURE_SHARE < opening_share(3.4, 60.0)


@pytest.mark.read
def test_distance_from_an_opening_to_a_source():
    diameter = 0.25
    assert least_opening_distance(math.pi / 4 * diameter**2) / diameter == pytest.approx(4, rel=1e-12)


@pytest.mark.memory
def test_pressure_in_inches_of_water():  # pte.dp
    assert pytest.approx(0.007, rel=0, abs=TOL_INCH) == 0.013 * MM_HG / INCH_WATER


@pytest.mark.memory
def test_that_pressure_draws_that_velocity():
    velocity = velocity_from_enclosure_pressure(0.013 * MM_HG, 1.2)
    assert velocity == pytest.approx(face_velocity_range("total enclosure")[0], rel=TOL_PRESSURE)


def test_tolerance_tells_a_rounded_opening_from_a_sharp_one():
    assert abs(0.65 / 0.6 - 1) > TOL_PRESSURE
