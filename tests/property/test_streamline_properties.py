"""Streamlines, whatever the scene: none crosses a plate or a body; what a hood draws comes through the hole."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from test_flow_properties import QUICK, cabinet, turned

from hoodwright.flow import Hole, Mouth, Plate, Resolution, Scene, in_solid, opening_starts, solve, streamlines

FLOW = {"hood": 0.02}
EVERY = 1e-4  # m: every step is kept
WAY = 3.0
SHEET = Plate("sheet", (0.15, -0.2, -0.2), (0.0, 0.4, 0.0), (0.0, 0.0, 0.4), (Hole((0.15, 0.1, 0.0), (0.1, 0.1)),))


@pytest.fixture(scope="module")
def screened():
    """A hood behind a sheet with a hole; the sheet lies on lines of the grid."""
    mouth = Mouth("hood", (0, 0, 0), (1, 0, 0), (0.1, 0.1), flange=0.05)
    return solve(Scene((mouth,), (SHEET,)), Resolution(5, 1.35, 0.6))


part = st.floats(-1.0, 1.0)


@settings(max_examples=40, deadline=None)
@given(st.tuples(part, part, part), st.tuples(part, part, part), st.booleans())
def test_no_line_crosses_a_plate_but_through_its_hole(screened, place, draught, against):
    start = np.array([place]) * 0.5
    if bool(in_solid(screened, start)[0]):
        return
    found = streamlines(screened, screened.scene.mouths, FLOW, draught, start, WAY, EVERY, against=against)[0]
    assert not np.any(in_solid(screened, found.places[:-1]))
    heights = SHEET.height(found.places)
    for n in np.flatnonzero(heights[:-1] * heights[1:] < 0):
        share = heights[n] / (heights[n] - heights[n + 1])
        crossing = found.places[n] + share * (found.places[n + 1] - found.places[n])
        in_sheet = np.all(np.abs(crossing[1:]) < 0.2 - 1e-9)
        in_hole = abs(crossing[1] - 0.1) < 0.05 + 1e-6 and abs(crossing[2]) < 0.05 + 1e-6
        assert not in_sheet or in_hole


@pytest.mark.parametrize("seed", range(3))
def test_all_air_of_a_tilted_cabinet_comes_through_its_opening(seed):
    scene, wall, hole = cabinet(turned(seed))
    bases = solve(scene, QUICK)
    starts = opening_starts(scene.mouths[0].frame, 40, 0.03)
    starts = starts[~in_solid(bases, starts)]
    found = streamlines(bases, scene.mouths, FLOW, (0.2, -0.1, 0.1), starts, WAY, EVERY, against=True)
    out = [line for line in found if line.end == "edge"]
    rim = wall.hole_frame(hole).grown(2 * bases.report.smallest)
    assert len(out) > 0.8 * len(found) > 0
    for line in out:
        heights = rim.height(line.places)
        last = int(np.flatnonzero(heights[:-1] * heights[1:] < 0)[0])
        assert rim.holds(line.places[last])
