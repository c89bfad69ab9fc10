"""Shapes for the drawings: where ducts go, where boxes stand, and along which line a source is judged."""

import math
from itertools import pairwise

import pytest

from hoodwright.tasks.assess import assess
from hoodwright.tasks.picture import HoodShape, SourceShape, picture
from hoodwright.workplace import parse_workplace
from odd_hoods import ODD_HOODS
from two_hoods import TWO_HOODS

WORKPLACE = parse_workplace(ODD_HOODS)
SHAPES = picture(WORKPLACE)
DEMO = picture(parse_workplace(TWO_HOODS))


def hood(name, shapes=SHAPES):
    return next(h for h in shapes.hoods if h.name == name)


def source(name, shapes=SHAPES):
    return next(s for s in shapes.sources if s.name == name)


def duct(name, shapes=SHAPES):
    return next(d for d in shapes.ducts if d.name == name)


def test_duct_of_a_table_that_looks_up_goes_down_and_round_it():
    table, points = hood("downdraught table"), duct("T1").points
    assert points[0] == table.duct_at and points[1][2] < table.at[2]
    rising = [(a, b) for a, b in pairwise(points) if b[2] > a[2] + 1e-9]
    assert rising
    for start, _ in rising:
        clear_x = abs(start[0] - table.at[0]) > table.half_width
        clear_y = abs(start[1] - table.at[1]) > table.half_height
        assert clear_x or clear_y
    assert min(p[2] for p in points) > 0


def test_duct_of_a_hood_that_looks_sideways_leaves_behind_it():
    nozzle, points = hood("bench nozzle", DEMO), duct("A1", DEMO).points
    behind = [(b - a) for a, b in zip(nozzle.at, points[1], strict=True)]
    assert sum(b * f for b, f in zip(behind, nozzle.facing, strict=True)) < 0


def test_duct_of_a_canopy_and_of_an_enclosure_leave_upward():
    text = (
        ODD_HOODS.replace("facing: [-1, 0, 0]", "facing: [0, 0, -1]")
        .replace("towards: [1, 0, -0.2]", "towards: [0, 0, 1]")
        .replace("at: [8 m, 5.5 m, 0.9 m]", "at: [7.5 m, 5.5 m, 1.6 m]")
    )
    points = duct("T2", picture(parse_workplace(text))).points
    assert points[1][2] > points[0][2]


def test_boxes_do_not_stand_in_each_other_and_stay_in_the_room():
    x, y, _ = SHAPES.room.size
    for i, one in enumerate(SHAPES.boxes):
        assert 0 < one.centre[0] < x and 0 < one.centre[1] < y
        for other in SHAPES.boxes[i + 1 :]:
            assert math.dist(one.centre, other.centre) > 0.5


def test_two_runs_do_not_share_a_line():
    vapour, dust = (next(b for b in SHAPES.boxes if b.name == name) for name in ("vapour fan", "dust fan"))
    assert vapour.centre[1] != dust.centre[1]


@pytest.mark.parametrize("name", ["tray slot", "downdraught table", "tank hood", "corner hood"])
def test_sights_are_as_long_as_the_answer_says(name):
    answer = next(h for h in assess(WORKPLACE).hoods if h.name == name)
    for need in answer.needs:
        sight = hood(name).sight_of(source(need.source))
        assert math.dist(sight.start, sight.end) == pytest.approx(need.distance, abs=1e-9)


def test_a_thrown_stream_is_judged_along_its_way():
    answer = next(h for h in assess(WORKPLACE).hoods if h.name == "cut catcher")
    sight = hood("cut catcher").sight_of(source("cut"))
    assert math.dist(sight.start, sight.end) == pytest.approx(answer.needs[0].distance, rel=1e-6)
    assert sight.start[0] == pytest.approx(hood("cut catcher").at[0])


def test_an_enclosure_has_no_sights_and_names_its_other_openings():
    assert hood("robot cell").sights == ()
    assert hood("robot cell").also_open == ("3 x cable port", "gap under the door")


def test_a_slot_is_known_by_its_sides():
    shape = HoodShape("s", (0, 0, 1), (0, -1, 0), (1, 0, 0), (0, 0, 1), 0.5, 0.1, False, 0.0, ())
    assert shape.is_slot and hood("tray slot").is_slot and not hood("corner hood").is_slot


def test_without_sights_the_farthest_place_counts():
    shape = HoodShape("s", (0, 0, 1), (0, -1, 0), (1, 0, 0), (0, 0, 1), 0.1, 0.1, True, 0.0, ("x",))
    sight = shape.sight_of(SourceShape("x", (0, -1, 1), extent=((0, -1, 1), (0, -2, 1))))
    assert (sight.start, sight.end) == ((0, 0, 1), (0, -2, 1))


def test_the_stream_of_a_source_is_told_from_its_extent():
    cut, bead = source("cut"), source("bead")
    assert [cut.is_thrown(drawn) for drawn in cut.lines] == [True]
    assert not any(bead.is_thrown(drawn) for drawn in bead.lines)


def test_twenty_runs_fit_into_a_small_room():
    hoods = "".join(
        f"  - {{name: h{i}, type: capturing, serves: [s], opening: {{round: 100 mm}}, at: [{1 + 0.1 * i} m, 1 m, 1 m], "
        "facing: [0, -1, 0], intended_flow: 100 m3/h}\n"
        for i in range(20)
    )
    ducts = "".join(
        f"  - {{name: d{i}, from: h{i}, to: f{i}, round: 100 mm, length: 1 m}}\n"
        f"  - {{name: e{i}, from: f{i}, to: outside, round: 100 mm, length: 1 m}}\n"
        for i in range(20)
    )
    fans = "".join(f"  - {{name: f{i}}}\n" for i in range(20))
    text = (
        "hoodwright: 1\nname: many\nroom: {size: [4 m, 3 m, 2.5 m]}\ncontaminants: [{name: c, kind: vapour}]\n"
        "sources: [{name: s, contaminant: c, at: [1 m, 0.8 m, 1 m], dispersion: still}]\n"
        f"hoods:\n{hoods}ducts:\n{ducts}fans:\n{fans}"
    )
    shapes = picture(parse_workplace(text))
    assert all(0 < box.centre[0] < 4 and 0 < box.centre[1] < 3 for box in shapes.boxes)
