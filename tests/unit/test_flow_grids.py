"""Grids of the computed air: lines, cuts by plates and bodies, flood fill, edges."""

import math

import numpy as np
import pytest

from hoodwright.errors import InputError, RangeError
from hoodwright.flow import Block, Hole, Mouth, Plate, Resolution, Scene, Surroundings
from hoodwright.flow.grids.choose import box_round, grid_for
from hoodwright.flow.grids.cut import OPEN, WALL, areas_of, cut, mouth_code
from hoodwright.flow.grids.edges import edge_factors
from hoodwright.flow.grids.facing import refuse_blocked
from hoodwright.flow.grids.grid import Grid
from hoodwright.flow.grids.lines import Axis
from hoodwright.flow.grids.reach import reaches
from hoodwright.flow.grids.sealed import close_still_air

COARSE = Resolution(4, 1.4, 0.3)
HOOD = Mouth("hood", (0, 0, 0), (1, 0, 0), (0.1, 0.1), body=0.2)


def cut_of(scene, resolution=COARSE):
    return cut(scene, grid_for(scene, resolution, box_round(scene, resolution)))


def even_grid(n=4, size=1.0):
    return Grid(tuple(np.linspace(0, size, n + 1) for _ in range(3)))


def test_lines_are_snapped_fine_inside_and_grow_outside():
    axis = Axis(-1.0, 2.0, 1.2, 0.5, snaps=[0.03, 0.5])
    axis.refine(0.0, 0.1, 0.01)
    lines = axis.lines()
    widths = np.diff(lines)
    assert lines[0] == -1.0 and lines[-1] == 2.0 and {0.03, 0.5} <= set(lines.tolist())
    assert widths[(lines[:-1] >= 0) & (lines[1:] <= 0.1)].max() <= 0.0101
    assert (widths[1:] / widths[:-1]).max() < 1.6 and widths.min() > 0.008


def test_snaps_too_close_to_one_another_are_left_out():
    lines = Axis(0.0, 1.0, 1.2, 0.1, snaps=[0.5, 0.501]).lines()
    assert 0.5 in lines and 0.501 not in lines


def test_round_mouth_has_its_area_and_a_unit_flow():
    made = cut_of(Scene((HOOD,)), Resolution(8, 1.3, 0.3))
    (faces,) = (part for part in made.mouths[0] if len(part.velocity))
    area = areas_of(made.grid, faces.axis, faces.index)
    assert area.sum() == pytest.approx(math.pi / 4 * 0.01, rel=1e-3)
    assert (area * faces.velocity).sum() == pytest.approx(-1)
    assert np.all(made.codes[0][faces.index] == mouth_code(0))


@pytest.mark.parametrize("facing", [(1, 1, 0), (1, 2, 3), (-1, 0.2, 0.4)])
def test_tilted_mouth_has_nearly_its_area(facing):
    mouth = Mouth("hood", (0, 0, 0), facing, (0.1, 0.1), body=0.2)
    made = cut_of(Scene((mouth,)), Resolution(8, 1.3, 0.3))
    seen = sum(abs(mouth.frame.normal[f.axis]) * areas_of(made.grid, f.axis, f.index).sum() for f in made.mouths[0])
    assert seen == pytest.approx(mouth.area, rel=0.05)


def test_plate_blocks_links_and_leaves_holes():
    plate = Plate("wall", (0.5, 0.0, 0.0), (0, 1, 0), (0, 0, 1), (Hole((0.5, 0.5, 0.5), (0.5, 0.5)),))
    far = Mouth("far", (5, 5, 5), (1, 0, 0), (0.1, 0.1))
    code = cut(Scene((far,), (plate,)), even_grid(4)).codes[0]
    assert np.count_nonzero(code[2] == WALL) == 12 and np.count_nonzero(code[2] == OPEN) == 4
    assert np.all(code[[0, 1, 3, 4]] == OPEN)


def test_solid_cells_have_closed_faces():
    far = Mouth("far", (5, 5, 5), (1, 0, 0), (0.1, 0.1))
    made = cut(Scene((far,), blocks=(Block("box", (0.5, 0.5, 0.25), (0.5, 0.5, 0.5)),)), even_grid(4))
    assert made.solid.sum() == 2 * 2 * 2
    assert np.count_nonzero(made.codes[2] == WALL) == 4 * 3 and np.count_nonzero(made.codes[0] == WALL) == 4 * 3


def closed_box(holes=()):
    return Plate.box("glove box", (-0.1, -0.15, -0.15), (0.2, 0.15, 0.15), holes)


def test_sealed_hood_is_named():
    scene = Scene((HOOD,), closed_box())
    with pytest.raises(
        InputError, match="hood: it is sealed off: no opening lets air come to it; give its enclosure an"
    ):
        close_still_air(scene, cut_of(scene))


def test_an_opening_unseals_it():
    scene = Scene((HOOD,), closed_box((Hole((0.2, 0, 0), (0.05, 0.05)),)))
    assert close_still_air(scene, cut_of(scene)).max() >= 0


def test_air_that_nothing_reaches_is_still():
    scene = Scene((HOOD,), Plate.box("cupboard", (0.15, 0.15, 0.1), (0.3, 0.3, 0.3)))
    made = cut_of(scene)
    before = made.solid.sum()
    close_still_air(scene, made)
    assert made.solid.sum() > before and made.solid[made.grid.cell_at((0.2, 0.2, 0.2))][0]


@pytest.mark.parametrize(
    "parts, what",
    [
        ({"plates": (Plate("bench", (0.005, -1, -1), (0, 2, 0), (0, 0, 2)),)}, "bench"),
        ({"blocks": (Block("anvil", (0.2, 0, 0), (0.39, 1, 1)),)}, "anvil"),
        ({"surroundings": Surroundings(east=0.01)}, "a wall of the room"),
    ],
)
def test_hood_that_faces_its_own_bench_is_named(parts, what):
    with pytest.raises(
        InputError, match=f"hood: its opening faces {what} less than 12.5 mm away, so it can draw no air"
    ):
        refuse_blocked(Scene((HOOD,), **parts))


def test_what_stands_farther_or_holds_the_hood_does_not_block():
    refuse_blocked(Scene((HOOD,), (Plate("bench", (0.05, -1, -1), (0, 2, 0), (0, 0, 2)),)))
    refuse_blocked(Scene((HOOD,), (Plate("panel", (0, -1, -1), (0, 2, 0), (0, 0, 2)),)))


def test_edges_on_even_cells():
    """End of a plate: 1 / .6436 on three faces; outer corner: 1 / .7937 on two (values from r^1/2 and r^2/3)."""
    far = Mouth("far", (5, 5, 5), (1, 0, 0), (0.1, 0.1))
    plate = Plate("plate", (0.5, -1, -1), (0, 1.5, 0), (0, 0, 3))
    factors = edge_factors(cut(Scene((far,), (plate,)), even_grid(4)))
    assert sorted({round(float(f), 4) for part in factors for f in part.ravel()}) == [1.0, 1.5538]
    assert sum(np.count_nonzero(part > 1) for part in factors) == 3 * 4
    block = Block("block", (0, 0, 0), (1.0, 1.0, 9.0))
    factors = edge_factors(cut(Scene((far,), blocks=(block,)), even_grid(4)))
    assert sorted({round(float(f), 3) for part in factors for f in part.ravel()}) == [1.0, 1.26]


def test_faces_across_a_plate_are_not_neighbours():
    far = Mouth("far", (5, 5, 5), (1, 0, 0), (0.1, 0.1))
    plate = Plate("bench", (-1, -1, 0.5), (3, 0, 0), (0, 3, 0))
    bits = reaches(cut(Scene((far,), (plate,)), even_grid(4)))[0]  # faces of x: neighbours along y 1, 2, along z 4, 8
    assert np.all(bits[:, 1:-1, 1] & 8 == 0) and np.all(bits[:, 1:-1, 2] & 4 == 0)
    assert np.all(bits[:, 1:-1, 1] & 7 == 7) and np.all(bits[:, 1:-1, 0] & 8 == 8)


def test_too_many_cells_are_refused():
    scene = Scene((HOOD,))
    fine = Resolution(64, 1.02, 3.0)
    with pytest.raises(RangeError, match="more than 4000000; take fewer cells across an opening, a shorter reach"):
        grid_for(scene, fine, box_round(scene, fine))


def test_watched_points_lie_in_the_box():
    low, high = box_round(Scene((HOOD,), watch=((1.0, 0, 0),), surroundings=Surroundings(floor=-0.2)), COARSE)
    assert high[0] == pytest.approx(1.3) and low[2] == -0.2
