"""Edits from the live air: what is dragged and what is kept; and how a draught's way is read and told."""

from importlib.resources import files

import pytest

from hoodwright.errors import InputError
from hoodwright.tasks.air_edits import moved_to, with_live_air
from hoodwright.tasks.along_axis import beside_axis, distances_for, is_off_axis
from hoodwright.tasks.bearing import bearing_of, draught_with, read_bearing, told, towards
from hoodwright.workplace import Document

NO_DRAUGHT = "  draught: {towards: [1, 0, 0], speed: 0.12 m/s, wander: 0.06 m/s}\n"


@pytest.fixture
def demo() -> Document:
    return Document((files("hoodwright") / "workplace" / "starters" / "demo.yaml").read_text(encoding="utf-8"))


def changed(old: Document, new: Document) -> list[str]:
    lines = zip(old.text.splitlines(), new.text.splitlines(), strict=True)
    return [after.strip() for before, after in lines if before != after]


def test_a_dragged_source_is_written_in_its_units_and_keeps_its_comment(demo):
    moved = moved_to(demo, "solder joint", (2.1, 1.7, 1.0612345))
    assert changed(demo, moved) == ["at: [2.1 m, 1.7 m, 1.0612 m]    # held in a vice above the bench"]


def test_a_dragged_hood_stops_at_the_wall(demo):
    assert moved_to(demo, "bench nozzle", (2.0, 99.0, 1.06)).workplace().hoods[0].at == (2.0, 7.0, 1.06)


def test_a_dragged_source_stops_at_the_wall(demo):
    assert moved_to(demo, "solder joint", (-3.0, 1.8, 1.06)).workplace().sources[0].at == (0.0, 1.8, 1.06)


@pytest.mark.parametrize("key", ["line", "box", "path"])
def test_a_source_with_an_extent_is_shifted_whole(demo, key):
    ends = "[[1.9 m, 1.75 m, 1.0 m], [2.1 m, 1.85 m, 1.1 m]]"
    document = Document(demo.text.replace("at: [2.0 m, 1.80 m, 1.06 m]", f"{key}: {ends}"))
    moved = moved_to(document, "solder joint", (2.5, 1.8, 1.05)).workplace().sources[0]
    assert moved.centre == pytest.approx((2.5, 1.8, 1.05))
    first, last = getattr(moved, key)
    assert (*first, *last) == pytest.approx((2.4, 1.75, 1.0, 2.6, 1.85, 1.1))


def test_dragging_what_is_not_there_says_what_is(demo):
    with pytest.raises(InputError, match="no hood or source is named 'kettle'; there is: bench nozzle"):
        moved_to(demo, "kettle", (1.0, 1.0, 1.0))


def test_a_place_that_is_no_number_is_refused(demo):
    with pytest.raises(InputError, match="three finite numbers are needed"):
        moved_to(demo, "solder joint", (float("nan"), 1.0, 1.0))


def test_a_tried_flow_is_kept_in_the_unit_of_the_file(demo):
    assert changed(demo, with_live_air(demo, "bench nozzle", flow=0.1)) == ["intended_flow: 360 m3/h"]


def test_a_tried_flow_is_kept_in_us_units_where_the_file_has_them(demo):
    document = Document(demo.text.replace("intended_flow: 320 m3/h", "intended_flow: 188 cfm"))
    assert changed(document, with_live_air(document, "bench nozzle", flow=0.1)) == ["intended_flow: 211.9 cfm"]


def test_a_tried_draught_is_kept_and_its_swing_stays(demo):
    kept = with_live_air(demo, "bench nozzle", draught=(0.0, -0.3, 0.0))
    assert changed(demo, kept) == ["draught: {towards: [0, -1, 0], speed: 0.3 m/s, wander: 0.06 m/s}"]


def test_a_draught_that_only_blows_harder_keeps_its_way(demo):
    kept = with_live_air(demo, "bench nozzle", draught=(0.3, 0.0, 0.0))
    assert changed(demo, kept) == ["draught: {towards: [1, 0, 0], speed: 0.3 m/s, wander: 0.06 m/s}"]


def test_still_air_keeps_the_way_that_was_tried(demo):
    kept = with_live_air(demo, "bench nozzle", draught=(0.0, 0.0, 0.0), bearing=(0.0, 1.0, 0.0))
    assert changed(demo, kept) == ["draught: {towards: [0, 1, 0], speed: 0 m/s, wander: 0.06 m/s}"]


def test_a_draught_is_added_to_a_room_that_has_none(demo):
    document = Document(demo.text.replace(NO_DRAUGHT, ""))
    kept = with_live_air(document, "bench nozzle", draught=(0.0, 0.2, 0.0)).workplace()
    assert (kept.room.draught.towards, kept.room.draught.speed) == ((0.0, 1.0, 0.0), 0.2)


def test_nothing_tried_changes_nothing(demo):
    assert with_live_air(demo, "bench nozzle").text == demo.text


@pytest.mark.parametrize(
    ("text", "bearing"),
    [("90 deg", 90), ("45°", 45), ("-90 deg", 270), ("along the room", 90), ("0, -1, 0", 180), ("[1, 1, 0]", 45)],
)
def test_a_way_is_read_from_an_angle_from_words_or_from_numbers(text, bearing):
    assert read_bearing(text) == pytest.approx(bearing)


@pytest.mark.parametrize("text", ["", "north", "90 mm", "1, 2", "0, 0, 1", "nan, 1, 0"])
def test_what_is_no_way_is_refused_with_an_example(text):
    with pytest.raises(InputError, match=r"a direction on the floor plan is needed: write for example 90 deg"):
        read_bearing(text)


@pytest.mark.parametrize("bearing", [0, 5, 90, 135, 180, 270, 355])
def test_a_bearing_survives_its_direction(bearing):
    assert bearing_of(towards(bearing)) == pytest.approx(bearing, abs=0.01)


def test_a_way_is_told_in_degrees_and_words():
    assert told(90.0) == "90°, along the room"
    assert told(350.0) == "350°, into the room"


def test_a_draught_takes_what_is_tried_and_the_rest_from_the_file(demo):
    workplace = demo.workplace()
    assert draught_with(workplace, None, None) is None
    assert draught_with(workplace, 0.5, None) == pytest.approx((0.5, 0.0, 0.0))
    assert draught_with(workplace, None, 180.0) == pytest.approx((0.0, -0.12, 0.0))


def test_distances_are_round_rise_and_hold_the_present_one(demo):
    workplace = demo.workplace()
    hood, source = workplace.hoods[0], workplace.sources[0]
    found = distances_for(hood, source, workplace, "SI")
    assert list(found) == sorted(found)
    assert any(distance == pytest.approx(0.1) for distance in found)
    assert 0.05 in found
    assert len(found) <= 11
    inches = [distance / 0.0254 for distance in distances_for(hood, source, workplace, "US")]
    assert sum(inch == pytest.approx(round(inch)) for inch in inches) == len(inches) - 1


def test_distances_end_before_the_wall(demo):
    down = moved_to(demo, "crucible canopy", (4.4, 4.6, 1.2)).workplace()
    hood = down.hoods[1]
    assert max(distances_for(hood, down.source("crucible"), down, "SI")) < 1.2


def test_a_source_aside_of_the_axis_is_told(demo):
    workplace = moved_to(demo, "solder joint", (2.05, 1.8, 1.06)).workplace()
    assert beside_axis(workplace.hoods[0], workplace.sources[0]) == pytest.approx(0.05)
    assert is_off_axis(workplace.hoods[0], workplace.sources[0])
    assert not is_off_axis(demo.workplace().hoods[0], demo.workplace().sources[0])
