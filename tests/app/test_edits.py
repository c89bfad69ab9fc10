"""Edits as people ask for them: what is moved, and what is left alone."""

from importlib.resources import files

import pytest

from hoodwright.errors import InputError
from hoodwright.tasks.edits import (
    distance_along_axis,
    height_above,
    held_at_wall,
    moved_by,
    moved_to_distance,
    moved_to_height,
    with_shape,
    with_text,
)
from hoodwright.workplace import Document


@pytest.fixture
def demo() -> Document:
    return Document((files("hoodwright") / "workplace" / "starters" / "demo.yaml").read_text(encoding="utf-8"))


def distance(document: Document, hood: int = 0, source: int = 0) -> float:
    workplace = document.workplace()
    return distance_along_axis(workplace.hoods[hood], workplace.sources[source])


def test_the_demo_nozzle_stands_100_mm_before_its_joint(demo):
    assert distance(demo) == pytest.approx(0.1)


def test_the_asked_distance_is_the_new_one(demo):
    assert distance(moved_to_distance(demo, "bench nozzle", "solder joint", 0.15)) == pytest.approx(0.15)


def test_only_the_coordinate_along_the_axis_is_rewritten_and_its_comment_stays(demo):
    moved = moved_to_distance(demo, "bench nozzle", "solder joint", 0.15)
    old, new = demo.text.splitlines(), moved.text.splitlines()
    changed = [pair for pair in zip(old, new, strict=True) if pair[0] != pair[1]]
    assert changed == [
        (
            "    at: [2.0 m, 1.90 m, 1.06 m]    # 100 mm from the joint",
            "    at: [2.0 m, 1.95 m, 1.06 m]    # 100 mm from the joint",
        )
    ]


def test_the_offset_beside_the_axis_stays(demo):
    aside = moved_by(demo, "bench nozzle", (0.03, 0.0, 0.02))
    moved = moved_to_distance(aside, "bench nozzle", "solder joint", 0.2)
    assert moved.workplace().hoods[0].at == pytest.approx((2.03, 2.0, 1.08))


def test_a_step_back_undoes_a_step(demo):
    there = moved_by(demo, "bench nozzle", (0.01, 0.0, 0.1))
    assert moved_by(there, "bench nozzle", (-0.01, 0.0, -0.1)).workplace() == demo.workplace()


def test_a_coordinate_keeps_the_unit_it_was_written_in(demo):
    inches = demo.set(("hoods", 0, "at", 0), "80 in")
    moved = moved_by(inches, "bench nozzle", (0.0254, 0.0, 0.0))
    assert moved.words(("hoods", 0, "at", 0)) == "81 in"


def test_a_hood_is_held_inside_the_room(demo):
    assert moved_by(demo, "bench nozzle", (0.0, 0.0, -9.0)).workplace().hoods[0].at[2] == 0.0


@pytest.mark.parametrize("wrong", [0.0, -0.1, float("nan")])
def test_a_distance_must_be_positive(demo, wrong):
    with pytest.raises(InputError, match="give a positive distance"):
        moved_to_distance(demo, "bench nozzle", "solder joint", wrong)


def test_an_unknown_hood_is_named_in_the_error(demo):
    with pytest.raises(InputError, match="no hood is named 'canopy'; there is: bench nozzle, crucible canopy, "):
        moved_by(demo, "canopy", (0.0, 0.0, 0.1))


def test_a_group_that_is_missing_is_added_with_its_first_word(demo):
    written = with_text(demo, ("hoods", 2, "today", "flow"), "240 m3/h")
    assert written.workplace().hoods[2].today.flow == pytest.approx(240 / 3600)


def test_a_key_that_is_missing_is_added(demo):
    bare = demo.remove(("hoods", 0, "flange"))
    assert with_text(bare, ("hoods", 0, "flange"), "80 mm").workplace().hoods[0].flange == pytest.approx(0.08)


def test_a_step_in_inches_is_written_short(demo):
    inches = demo.set(("hoods", 0, "at", 0), "80 in")
    moved = moved_by(inches, "bench nozzle", (0.01, 0.0, 0.0))
    assert moved.words(("hoods", 0, "at", 0)) == "80.39 in"
    assert moved_by(moved, "bench nozzle", (-0.01, 0.0, 0.0)).words(("hoods", 0, "at", 0)) == "80 in"


def test_a_distance_beyond_the_wall_is_told_and_not_held_silently(demo):
    with pytest.raises(InputError, match=r"6 m would put the hood at y 7\.8 m, outside the room \(0 to 7 m\); "):
        moved_to_distance(demo, "bench nozzle", "solder joint", 6.0)


def test_a_step_against_the_wall_is_known(demo):
    assert held_at_wall(demo, "bench nozzle", (0.0, 0.0, 9.0))
    assert not held_at_wall(demo, "bench nozzle", (0.0, 0.0, 0.1))


def test_a_canopy_is_hung_at_a_height_above_its_work(demo):
    moved = moved_to_height(demo, "crucible canopy", "crucible", 0.6)
    workplace = moved.workplace()
    assert height_above(workplace.hoods[1], workplace.source("crucible")) == pytest.approx(0.6)
    assert workplace.hoods[1].at[:2] == demo.workplace().hoods[1].at[:2]
    assert "# 1.1 m above the melt" in moved.text


@pytest.mark.parametrize(
    "height, told",
    [(0.0, "a canopy hangs more than 0 m above its source"), (4.0, "above the room's 3.6 m; choose a height")],
)
def test_a_canopy_hangs_above_its_work_and_in_the_room(demo, height, told):
    with pytest.raises(InputError, match=told):
        moved_to_height(demo, "crucible canopy", "crucible", height)


@pytest.mark.parametrize(
    "shape, sides",
    [("rectangle", (0.1, 0.1)), ("slot", (1.0, 0.1)), ("round", (0.1, 0.1))],
)
def test_another_shape_takes_the_size_over(demo, shape, sides):
    assert with_shape(demo, "bench nozzle", shape).workplace().hoods[0].opening.sides == pytest.approx(sides)
