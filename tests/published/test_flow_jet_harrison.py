"""[harrison09] against the stream of the computed air: what a hood above an opening must take.

Rows as in test_harrison09.py, where they are cited and counted. The computed stream is a sheet as wide as the opening.
It starts with the flow at the edge by the published equation, and the heat of the fire; nothing is fitted. A plume that
clings to the wall takes in air on one side only: it is half of a free one of twice the heat and flow.
"""

import statistics
from dataclasses import replace

import numpy as np
import pytest

from analytic_air import still_air
from hoodwright.flow import follow, spill_sheet
from published.test_harrison09 import ADHERED, BALCONY, edge

DENSITY, ROOM = 1.2, 293.15
TOL = 0.20  # told beforehand for this comparison; NIST states 10 % as one standard deviation of the measured flow
# Computed over measured: mean and standard deviation, found once and stated.
FREE, CLINGING = (0.932, 0.055), (0.928, 0.126)
MISSED = {  # an opening taller than wide, where the equation for the edge is far off too
    "SE17-p5": "computed 23 % less",
    "SE17-p9": "computed 31 % less",
    "SE18-p3": "computed 21 % less",
    "SE18-p7": "computed 29 % less",
    "SE18-p9": "computed 32 % less",
}


def told(width, kilowatts, height, sides=2):
    """Mass flow of the sheet whose flow at the edge is that of the equation."""
    both = 2 / sides
    jet = spill_sheet((0, 0, 0), width, both * edge(width, kilowatts) / DENSITY, both * 1000 * kilowatts, ROOM, DENSITY)
    path = follow(still_air().arrays, np.zeros(3), jet)
    return DENSITY * np.interp(height, path.travelled, path.flow) / both


def clinging():
    for name, *values in ADHERED:
        marks = [pytest.mark.xfail(strict=True, reason=MISSED[name])] if name in MISSED else []
        yield pytest.param(*values, id=name, marks=marks)


@pytest.mark.read
@pytest.mark.parametrize("width, kilowatts, height, measured", [pytest.param(*r[1:], id=r[0]) for r in BALCONY])
def test_a_free_plume(width, kilowatts, height, measured):
    assert told(width, kilowatts, height) == pytest.approx(measured, rel=TOL)


@pytest.mark.read
@pytest.mark.parametrize("width, kilowatts, height, measured", list(clinging()))
def test_a_plume_that_clings_to_a_wall(width, kilowatts, height, measured):
    assert told(width, kilowatts, height, sides=1) == pytest.approx(measured, rel=TOL)


@pytest.mark.derived
@pytest.mark.parametrize("rows, sides, stated", [(BALCONY, 2, FREE), (ADHERED, 1, CLINGING)], ids=["free", "clinging"])
def test_bias_and_scatter(rows, sides, stated):
    ratios = [told(width, kilowatts, height, sides) / measured for _, width, kilowatts, height, measured in rows]
    assert statistics.mean(ratios) == pytest.approx(stated[0], abs=0.002)
    assert statistics.stdev(ratios) == pytest.approx(stated[1], abs=0.002)


def test_tolerance_sees_a_round_stream():
    """The same flow and heat in a round stream misses most rows: it takes in too little air."""

    missed = 0
    for _, width, kilowatts, height, measured in BALCONY:
        sheet = spill_sheet((0, 0, 0), width, edge(width, kilowatts) / DENSITY, 1000 * kilowatts, ROOM, DENSITY)
        path = follow(still_air().arrays, np.zeros(3), replace(sheet, width=0.0))
        missed += abs(DENSITY * np.interp(height, path.travelled, path.flow) / measured - 1) > TOL
    assert missed > len(BALCONY) / 2
