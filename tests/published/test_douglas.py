"""[douglas], worked example 14.5: a round duct in, a rectangular duct out. Inputs and answer of an open companion.

0.8 m3/s, 1.2 kg/m3, Fanning 0.008. Inlet 0.3 m, 10 m and a transition worth 20 diameters, fittings 4 VP; outlet
0.4 by 0.2 m, 30 m, fittings 10 VP. The fan must raise 1254.6 Pa.
"""

import math

import pytest

from hoodwright.air import velocity_pressure
from hoodwright.ducts import duct_static_loss, hydraulic_diameter

DARCY = 4 * 0.008
TOL = 0.05  # Pa: half the last printed digit


def fan_pressure(length_in=10 + 20 * 0.3):
    round_vp = velocity_pressure(0.8 / (math.pi * 0.3**2 / 4), 1.2)
    flat_vp = velocity_pressure(0.8 / (0.4 * 0.2), 1.2)
    inlet = duct_static_loss(round_vp, DARCY, length_in, 0.3, 4.0)
    return inlet + duct_static_loss(flat_vp, DARCY, 30.0, hydraulic_diameter(0.4, 0.2), 10.0)


@pytest.mark.read
def test_fan_pressure():
    assert fan_pressure() == pytest.approx(1254.6, rel=0, abs=TOL)


def test_tolerance_tells_a_metre_of_duct_apart():
    assert abs(fan_pressure(17.0) - 1254.6) > TOL
