"""[wright], the formula and one worked value, read from an online copy of course notes."""

import pytest

from hoodwright.ducts import wright_1945

FPM, INCH, INCH_WATER, HUNDRED_FEET = 0.00508, 0.0254, 249.089, 30.48
TOL = 0.005  # in wg per 100 ft: half the last printed digit; velocity and diameter are given


def inches_of_water_per_hundred_feet(velocity_fpm, diameter_in):
    return wright_1945(velocity_fpm * FPM, diameter_in * INCH) * HUNDRED_FEET / INCH_WATER


@pytest.mark.read
def test_main_of_54_33_inches_at_4000_fpm():  # duct.wright
    assert inches_of_water_per_hundred_feet(4000, 54.33) == pytest.approx(0.29, abs=TOL)


def test_tolerance_tells_a_neighbouring_velocity_apart():
    assert abs(inches_of_water_per_hundred_feet(4100, 54.33) - 0.29) > TOL


def test_tolerance_tells_a_square_law_apart():
    assert abs(2.74 * 4**2 / 54.33**1.22 - 0.29) > TOL
