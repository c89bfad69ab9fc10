"""[arasu], worked example 3.10, read in an open collection of textbook companions.

A radial fan: 75 mm wg, wheel 0.89 m at 720 rpm, blades at 39 degrees and 0.1 m wide, radial
velocity 9.15 m/s, air of 1.2 kg/m3. The shaft power follows from the change of whirl.
"""

import math

import pytest

from hoodwright.ducts import shaft_power

HEAD = 75 * 9.81  # Pa; the book takes 1 mm wg as 9.81 Pa
RADIAL = 9.15
RIM = math.pi * 0.89 * 720 / 60
WHIRL = RIM - RADIAL / math.tan(math.radians(39))
FLOW = math.pi * 0.89 * 0.1 * RADIAL
TOL = 0.05 + 82.1 * (9.81 / 9.80665 - 1)  # per cent: half the last printed digit, and the 9.81


def efficiency_per_cent(whirl):
    power_at_shaft = 1.2 * FLOW * RIM * whirl
    return 100 * shaft_power(FLOW, HEAD, 1.0) / power_at_shaft


@pytest.mark.read
def test_efficiency():  # fan.ar310.eff
    assert efficiency_per_cent(WHIRL) == pytest.approx(82.1, rel=0, abs=TOL)


def test_tolerance_tells_a_blade_of_40_degrees_apart():
    assert abs(efficiency_per_cent(RIM - RADIAL / math.tan(math.radians(40))) - 82.1) > TOL
