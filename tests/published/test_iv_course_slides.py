"""[iv-course-slides]: the bench grinder of a course on ventilation testing."""

import pytest

from hoodwright.air import velocity_pressure
from hoodwright.hoods import equal_area_diameter

FPM, FOOT, INCH = 0.00508, 0.3048, 0.0254
IN_WG_68_F = 248.6  # Pa, the inch of water that belongs to 4005
STANDARD_DENSITY = 0.075 * 0.45359237 / 0.3048**3  # kg/m3
TOL_IN_WG = 0.005  # half the last printed digit
TOL_INCH = 3.5 / 2 * 0.00005 / 0.0668  # half the last printed digit of the area


@pytest.mark.read
def test_velocity_pressure_at_4490_fpm():  # hs.grind.vp
    found = velocity_pressure(4490 * FPM, STANDARD_DENSITY) / IN_WG_68_F
    assert found == pytest.approx(1.26, rel=0, abs=TOL_IN_WG)


@pytest.mark.read
@pytest.mark.xfail(reason="published slip: the 0.0668 ft2 printed for a 3 in duct belongs to 3.5 in")
def test_area_printed_for_a_three_inch_duct():  # hs.grind.area
    assert equal_area_diameter(0.0668 * FOOT**2) / INCH == pytest.approx(3, rel=0, abs=TOL_INCH)


@pytest.mark.memory
def test_that_area_belongs_to_three_and_a_half_inches():  # hs.grind.area35
    assert equal_area_diameter(0.0668 * FOOT**2) / INCH == pytest.approx(3.5, rel=0, abs=TOL_INCH)


def test_tolerance_sees_a_velocity_that_is_not_squared():
    assert abs(4490 / 4005 - 1.26) > TOL_IN_WG
