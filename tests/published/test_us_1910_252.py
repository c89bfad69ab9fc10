"""[us-1910-252]: welding hoods, least flow for 100 fpm at the far end of a zone, and duct for 4000 fpm.

The regulation prints no formula. A hemisphere around the opening, 2 pi x^2 V, is our reading of its table.
"""

import pytest

from hoodwright.hoods import equal_area_diameter, far_field_least_flow, welding_hood_flow

CFM, FPM, INCH = 0.3048**3 / 60, 0.00508, 0.0254
TOL_CFM = 12.5  # half of the 25 cfm that the table is rounded to
TOL_INCH = 0.25  # half of the half inch to which the ducts are said to be rounded

# check rows: weld.q.6, weld.q.8, weld.q.12
FLOW = [
    (6, 150),
    (8, 275),
    (10, 425),
    pytest.param(*(12, 600), marks=pytest.mark.xfail(reason="a hemisphere asks 628 cfm, 4.7 % more than printed")),
]
SLIP = "published value does not follow: the exact diameter rounds to half an inch less"
# check rows: weld.d.6, weld.d.8, weld.d.10, weld.d.12
DUCT = [
    pytest.param(*(150, 3.0), marks=pytest.mark.xfail(reason=SLIP)),
    (275, 3.5),
    (425, 4.5),
    pytest.param(*(600, 5.5), marks=pytest.mark.xfail(reason=SLIP)),
]


def _hemisphere(inches):
    return far_field_least_flow(inches * INCH) * 100 * FPM / CFM


@pytest.mark.read
@pytest.mark.parametrize("inches, cfm", FLOW)
def test_flow_is_that_of_a_hemisphere(inches, cfm):
    assert _hemisphere(inches) == pytest.approx(cfm, rel=0, abs=TOL_CFM)


@pytest.mark.read
@pytest.mark.parametrize("cfm, inches", DUCT)
def test_duct_carries_the_flow_at_4000_fpm(cfm, inches):
    diameter = equal_area_diameter(cfm * CFM / (4000 * FPM)) / INCH
    assert diameter == pytest.approx(inches, rel=0, abs=TOL_INCH)


def test_all_four_flows_lie_within_five_per_cent_of_a_hemisphere():
    table = [(6, 150), (8, 275), (10, 425), (12, 600)]
    assert all(abs(_hemisphere(inches) / cfm - 1) < 0.05 for inches, cfm in table)


def test_tolerance_sees_a_full_sphere_and_the_neighbouring_zone():
    assert abs(2 * _hemisphere(6) - 150) > TOL_CFM
    assert abs(_hemisphere(8) - 150) > TOL_CFM


# ids weld.q.6, weld.q.8, weld.q.10 and weld.q.12, weld.d.6 to weld.d.12
@pytest.mark.read
@pytest.mark.parametrize("inches, cfm", [(6, 150), (8, 275), (10, 425), (12, 600)])
def test_the_table_itself(inches, cfm):
    assert welding_hood_flow(inches * INCH) / CFM == pytest.approx(cfm, rel=0, abs=0.5)


def test_the_zone_that_holds_the_distance_rules():
    assert welding_hood_flow(7 * INCH) / CFM == pytest.approx(275, rel=0, abs=0.5)
