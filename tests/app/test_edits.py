"""Edits as people ask for them: what is moved, and what is left alone."""

from importlib.resources import files

import pytest

from hoodwright.errors import InputError
from hoodwright.tasks.edits import distance_along_axis, moved_by, moved_to_distance, with_text
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
    moved = moved_to_distance(demo, "table hood", "open lacquer jar", 0.2)
    assert moved.workplace().hoods[1].at == pytest.approx((5.0, 1.9, 1.1))


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
    with pytest.raises(InputError, match="no hood is named 'canopy'; there is: bench nozzle, table hood"):
        moved_by(demo, "canopy", (0.0, 0.0, 0.1))


def test_a_group_that_is_missing_is_added_with_its_first_word(demo):
    written = with_text(demo, ("hoods", 1, "today", "flow"), "240 m3/h")
    assert written.workplace().hoods[1].today.flow == pytest.approx(240 / 3600)


def test_a_key_that_is_missing_is_added(demo):
    assert with_text(demo, ("hoods", 1, "flange"), "80 mm").workplace().hoods[1].flange == pytest.approx(0.08)
