"""[cabinet-table], table 16.1 of a university manual; class III in SI from a second university's course page."""

import pytest

from hoodwright.hoods import enclosure_flow, face_velocity_range, purge_flow, velocity_from_enclosure_pressure

FPM, FOOT, INCH_WATER = 0.00508, 0.3048, 249.089
CFM = FOOT**3 / 60
TOL_FPM, TOL_SI = 0.5, 0.005  # half the last printed digit of each
WIDTHS = [(4, 200), (6, 300)]  # ft, cfm of class I
HEIGHT = 8 / 12  # ft: 200 cfm / (75 fpm x 4 ft), so that one row gives the height and the other is the check
TOL_CFM = 50  # "approx.": printed in steps of a hundred


@pytest.mark.read
@pytest.mark.parametrize("form, end, printed", [("biological cabinet class I", 0, 75), ("glove box", 0, 100)])
def test_inward_velocity(form, end, printed):
    assert face_velocity_range(form)[end] / FPM == pytest.approx(printed, rel=0, abs=TOL_FPM)


@pytest.mark.read
def test_velocity_of_the_class_ii_types_is_our_upper_end():
    assert face_velocity_range("biological cabinet class I")[1] / FPM == pytest.approx(100, rel=0, abs=TOL_FPM)


@pytest.mark.read
def test_flow_of_the_wider_cabinet():
    width, printed = WIDTHS[1]
    flow = enclosure_flow(width * HEIGHT * FOOT**2, face_velocity_range("biological cabinet class I")[0])
    assert flow / CFM == pytest.approx(printed, rel=0, abs=TOL_CFM)


@pytest.mark.read
def test_open_glove_port_in_metres_a_second():
    assert face_velocity_range("glove box")[0] == pytest.approx(0.51, rel=0, abs=TOL_SI)


def test_half_an_inch_of_water_draws_far_more_than_that_through_a_crack():
    assert velocity_from_enclosure_pressure(0.5 * INCH_WATER, 1.2) > 10 * face_velocity_range("glove box")[0]


def test_twenty_changes_an_hour_of_a_box_of_one_cubic_metre():
    assert purge_flow(1.0, 20 / 3600) * 3600 == pytest.approx(20)
