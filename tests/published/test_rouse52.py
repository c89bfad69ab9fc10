"""[rouse52], constants from memory: to be confirmed."""

import pytest

from hoodwright.hoods import buoyancy_flux, rouse_1952_plume_flow

# check row pl.ryh: 0.153 B^(1/3) as m3/s for each W^(1/3) m^(5/3), with g 9.81, 1.2 kg/m3, 1005 J/(kg K), 293 K.
# check rows: pl.ryh
REMEMBERED, TOL = 0.00463, 0.000005


@pytest.mark.memory
def test_flow_of_one_watt_at_one_metre():
    found = rouse_1952_plume_flow(buoyancy_flux(1.0, 293.0, 1.2), 1.0)
    assert found == pytest.approx(REMEMBERED, rel=0, abs=TOL)


def test_tolerance_sees_another_constant():
    assert abs(0.154 / 0.153 * REMEMBERED - REMEMBERED) > TOL
