"""[us-1910-94-d], withdrawn tables G-14 and G-15, from memory: to be confirmed against a printed copy."""

from itertools import pairwise

import pytest

from hoodwright.hoods import lateral_exhaust_flow, tank_control_velocity

FPM, FOOT = 0.00508, 0.3048
CLASSES = [("A-1", 150), ("B-2", 100), ("C-2", 75), ("D-2", 50)]
# class, ratio of width to length, against a wall, cfm per square foot
RATES = [
    ("A-1", 0.5, True, 260),
    ("A-1", 0.5, False, 340),
    ("B-2", 0.3, True, 150),
    ("C-2", 2.0, False, 190),
    ("D-2", 0.05, True, 50),
]
TOL = 0.5  # half the last remembered digit


@pytest.mark.memory
@pytest.mark.parametrize("tank_class, remembered", CLASSES)
def test_control_velocity(tank_class, remembered):
    assert tank_control_velocity(tank_class) / FPM == pytest.approx(remembered, rel=0, abs=TOL)


@pytest.mark.memory
@pytest.mark.parametrize("tank_class, ratio, wall, remembered", RATES)
def test_flow_for_each_square_foot(tank_class, ratio, wall, remembered):
    length = 6 * FOOT
    flow = lateral_exhaust_flow(tank_class, length, ratio * length, against_wall=wall)
    assert flow / (ratio * length**2) / FPM == pytest.approx(remembered, rel=0, abs=TOL)


def test_tolerance_tells_the_rows_apart():
    rates = sorted({rate for *_, rate in RATES})
    assert min(b - a for a, b in pairwise(rates)) > 2 * TOL
