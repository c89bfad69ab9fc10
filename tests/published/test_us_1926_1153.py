"""[us-1926-1153]: hand-held grinders, table 1: 25 cfm for each inch of the wheel's diameter.

The products are printed in two texts that explain the table, one on 4 in wheels and one on 5 in wheels.
"""

import pytest

from hoodwright.hoods import form_flow_range

CFM, INCH = 0.3048**3 / 60, 0.0254
TOL = 0.5  # cfm: half the last printed digit; the diameters are exact
ROWS = [(1, 25), (4, 100), (5, 125)]


@pytest.mark.read
@pytest.mark.parametrize("inches, cfm", ROWS)
def test_flow_of_a_shroud_goes_by_the_wheel(inches, cfm):
    low, high = form_flow_range("on-tool grinder", 0.01, inches * INCH)
    assert low == high
    assert low / CFM == pytest.approx(cfm, rel=0, abs=TOL)


def test_tolerance_tells_neighbouring_wheels_apart():
    assert abs(form_flow_range("on-tool grinder", 0.01, 4.5 * INCH)[0] / CFM - 100) > TOL
