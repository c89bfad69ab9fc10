"""[usbm-dust-handbook], chapter 5, read on a public page: exhaust of dumping, and air dragged along by falling grains.

The page gives the rate of the second formula in tons a minute; other texts, from memory, in tons an hour.
"""

import pytest

from hoodwright.errors import RangeError
from hoodwright.hoods import displaced_flow, dumping_flow, induced_flow

FOOT, POUND = 0.3048, 0.45359237
CFM, TON = FOOT**3 / 60, 2000 * POUND
TOL = 1e-9  # relative: both sides are the printed formula, one of them in SI


@pytest.mark.read
@pytest.mark.parametrize("tons_a_minute, pounds_a_cubic_foot", [(1, 100), (5, 100), (2, 45)])
def test_dumping_from_a_truck(tons_a_minute, pounds_a_cubic_foot):
    printed = 33.3 * (600 * tons_a_minute / pounds_a_cubic_foot)
    flow = dumping_flow(tons_a_minute * TON / 60, pounds_a_cubic_foot * POUND / FOOT**3)
    assert flow / CFM == pytest.approx(printed, rel=TOL)


def test_dumping_takes_ten_times_the_bulk_volume():
    assert dumping_flow(1.0, 1600.0) / displaced_flow(1.0, 1600.0) == pytest.approx(10, rel=0.001 + TOL)


INDUCED = [(1, 100, 4, 0.1), (2, 50, 8, 0.02)]  # square feet, tons, feet of fall, feet of grain


@pytest.mark.read
@pytest.mark.parametrize("area, tons, fall, grain", INDUCED)
def test_falling_grains_with_the_rate_in_tons_an_hour(area, tons, fall, grain):
    printed = 10 * area * (tons * fall**2 / grain) ** (1 / 3)
    flow = induced_flow(tons * TON / 3600, fall * FOOT, grain * FOOT, area * FOOT**2)
    assert flow / CFM == pytest.approx(printed, rel=TOL)


@pytest.mark.read
@pytest.mark.xfail(strict=True, reason="the page has the rate in tons a minute: 3.9 times less than in tons an hour")
def test_falling_grains_with_the_rate_in_tons_a_minute():
    area, tons, fall, grain = INDUCED[0]
    printed = 10 * area * (tons * fall**2 / grain) ** (1 / 3)
    flow = induced_flow(tons * TON / 60, fall * FOOT, grain * FOOT, area * FOOT**2)
    assert flow / CFM == pytest.approx(printed, rel=TOL)


@pytest.mark.read
def test_finest_grain_is_an_eighth_of_an_inch():
    assert induced_flow(1.0, 1.0, 0.0254 / 8, 1.0) > 0
    with pytest.raises(RangeError, match=r"grain 0\.003 m is below 0\.003175 m"):
        induced_flow(1.0, 1.0, 0.003, 1.0)


def test_tolerance_sees_a_square_root_in_place_of_the_cube_root():
    assert abs((1.01 * 100) ** 0.5 / 100 ** (1 / 3) - 1) > TOL
