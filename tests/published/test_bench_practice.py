"""[bench-practice]: slotted benches, 350 cfm for each foot of bench, from memory. This proves typing, not truth."""

import pytest

from hoodwright.hoods import form_flow_range

CFM, FOOT = 0.3048**3 / 60, 0.3048
TOL = 0.5  # cfm: half the last digit


@pytest.mark.memory
@pytest.mark.parametrize("feet, cfm", [(1, 350), (4, 1400)])
def test_flow_goes_by_the_length_of_the_bench(feet, cfm):
    low, high = form_flow_range("side-draught bench", 0.1, feet * FOOT)
    assert low == high
    assert low / CFM == pytest.approx(cfm, rel=0, abs=TOL)


def test_tolerance_sees_a_length_in_metres():
    assert abs(form_flow_range("side-draught bench", 0.1, 1.0)[0] / CFM - 350) > TOL
