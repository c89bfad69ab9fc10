"""[duct-maker-hoods]: hood losses by the slope of the wall against the face, conical and rectangular.

A slope of 45 degrees is an included angle of 90. Our table is of a chart, from memory, but for 180 degrees: there this
one, which was read and asks more, is taken itself.
"""

import pytest

from hoodwright.hoods import taper_entry_loss

READING = 0.02  # of the chart that our table comes from, as its rows state it
TOL = READING + 0.005  # and half the last printed digit

# slope, conical, rectangular
ROWS = [
    (80, 0.11, 0.19),
    (70, 0.06, 0.13),
    (60, 0.08, 0.16),
    (50, 0.12, 0.21),
    (45, 0.15, 0.25),
    (40, 0.18, 0.28),
    (30, 0.25, 0.35),
    (20, 0.34, 0.43),
    (10, 0.44, 0.52),
    (0, 0.56, 0.64),
]
APART = {(80, True)}
ENDS = pytest.mark.xfail(reason="the two tables part beyond 0.025 at 20 degrees, rectangular", strict=True)
CASES = [
    pytest.param(slope, rectangular, loss, marks=[ENDS] if (slope, rectangular) in APART else [])
    for slope, conical, oblong in ROWS
    for rectangular, loss in ((False, conical), (True, oblong))
]


@pytest.mark.read
@pytest.mark.parametrize("slope, rectangular, printed", CASES)
def test_loss_by_the_slope_of_the_wall(slope, rectangular, printed):
    found = taper_entry_loss(180 - 2 * slope, rectangular=rectangular)
    assert found == pytest.approx(printed, rel=0, abs=TOL)


def test_tolerance_sees_the_slope_taken_for_the_included_angle():
    missed = [slope for slope, conical, _ in ROWS if slope >= 15 and abs(taper_entry_loss(slope) - conical) > TOL]
    assert len(missed) > 4


def test_tolerance_tells_round_from_rectangular():
    assert all(oblong - conical > TOL for _, conical, oblong in ROWS)
