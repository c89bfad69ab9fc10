"""Every type of hood on the Air page: what is said of it, and what can be changed on it."""

import asyncio
from pathlib import Path

import pytest
from nicegui import ui
from nicegui.testing import User

PATIENCE = 60
FILE = "all-types.yaml"
HOODS = ["bath slots", "arm", "slot hood", "canopy", "booth", "hopper box", "wheel hood", "catcher"]
SOURCES = ["weld", "seam", "crucible", "bell", "sand hopper", "buff", "saw", "pickling bath"]


@pytest.fixture(autouse=True)
def all_types(folder: Path) -> Path:
    """The file with a hood of every kind, beside the demo file."""
    file = folder / FILE
    file.write_text((Path(__file__).parent / FILE).read_text(encoding="utf-8"), encoding="utf-8")
    return file


async def look_at(user: User, part: str) -> None:
    await user.open(f"/?file={FILE}&part={part}")
    await see(user, f"Change the {part}")


async def see(user: User, text: str) -> None:
    await user.should_see(text, retries=PATIENCE)


def field(user: User, label: str) -> ui.input:
    return next(iter(user.find(marker=label, kind=ui.input).elements))


def fill(user: User, label: str, text: str) -> None:
    with user:
        field(user, label).value = text


def choose(user: User, label: str, value: str, kind: type = ui.select) -> None:
    with user:
        next(iter(user.find(marker=label, kind=kind).elements)).value = value


async def fault_at(user: User, label: str) -> str:
    for _ in range(PATIENCE):
        if field(user, label).error:
            break
        await asyncio.sleep(0.1)
    return field(user, label).error or "no fault is shown"


async def written(user: User, path: Path, text: str) -> None:
    """Save, until the file says the text; the draft is edited a moment after typing."""
    for _ in range(PATIENCE):
        user.find("Save").click()
        if text in path.read_text(encoding="utf-8"):
            return
        await asyncio.sleep(0.1)
    raise AssertionError(f"the file never said {text!r}")


@pytest.mark.parametrize("hood", HOODS)
async def test_every_hood_has_a_card_with_its_question_and_its_fields(visitor: User, hood: str):
    await look_at(visitor, hood)
    await see(visitor, "Is what is intended enough?")
    await see(visitor, "Intended flow")
    await see(visitor, "It looks")


@pytest.mark.parametrize("source", SOURCES)
async def test_every_source_has_its_fields(visitor: User, source: str):
    await look_at(visitor, source)
    await see(visitor, "How is it given off?")


@pytest.mark.parametrize(
    "source, label, value",
    [
        ("weld", "Point 2: Height, z", "1.0 m"),
        ("seam", "Other end: Along the room, x", "4.0 m"),
        ("bell", "Opposite corner: Height, z", "1.5 m"),
        ("crucible", "Temperature", "700 degC"),
        ("crucible", "Height of its hot sides", "600 mm"),
        ("buff", "Wheel diameter", "300 mm"),
        ("saw", "Speed of the throw", "10 m/s"),
        ("saw", "Towards, as three numbers", "0, 1, 0"),
        ("sand hopper", "Density in bulk", "1500 kg/m3"),
    ],
)
async def test_the_extent_and_the_strength_of_a_source_can_be_changed(visitor: User, source, label, value):
    await look_at(visitor, source)
    assert field(visitor, label).value == value


async def test_a_canopy_is_hung_by_its_height_above_the_work(visitor: User, all_types: Path):
    await look_at(visitor, "canopy")
    await see(visitor, "The canopy, 1200\u2009mm above the crucible")
    fill(visitor, "Height above the crucible", "3 ft")
    await see(visitor, "The canopy, 914\u2009mm above the crucible")
    await written(visitor, all_types, "at: [5.4 m, 5.2 m, 1.6144 m]")


async def test_a_canopy_that_would_go_through_the_roof_is_told_at_the_field(visitor: User):
    await look_at(visitor, "canopy")
    fill(visitor, "Height above the crucible", "4 m")
    assert "above the room's 3.6 m" in await fault_at(visitor, "Height above the crucible")


async def test_the_open_sides_of_a_canopy_are_a_choice(visitor: User, all_types: Path):
    await look_at(visitor, "canopy")
    choose(visitor, "Open sides", "3", ui.radio)
    await written(visitor, all_types, "open_sides: 3")


async def test_an_enclosure_speaks_of_face_velocity(visitor: User):
    await look_at(visitor, "booth")
    await see(visitor, "0.508\u2009m/s face velocity for the bell: spray booth")
    await see(visitor, "open area x face velocity")
    await see(visitor, "2 x 2 x 0.508 = 2.032 m3/s")
    await see(visitor, "enclosure, around the bell")


async def test_the_form_of_an_enclosure_changes_its_need(visitor: User, all_types: Path):
    await look_at(visitor, "booth")
    choose(visitor, "Form", "laboratory cupboard")
    await see(visitor, "laboratory cupboard, ")
    await written(visitor, all_types, "form: laboratory cupboard")


async def test_a_face_velocity_can_be_stated_and_removed_again(visitor: User, all_types: Path):
    before = all_types.read_text(encoding="utf-8")
    await look_at(visitor, "booth")
    fill(visitor, "Face velocity, stated", "100 fpm")
    await see(visitor, "stated in the workplace file")
    visitor.find(marker="remove Face velocity, stated").click()
    await see(visitor, "spray booth, 0.508 to 0.635")
    visitor.find("Save").click()
    assert all_types.read_text(encoding="utf-8") == before


async def test_a_removed_flange_leaves_the_comment_behind_it(visitor: User, all_types: Path):
    await look_at(visitor, "arm")
    visitor.find(marker="remove Flange width").click()
    await written(visitor, all_types, "    # wide enough\n")
    assert "flange" not in all_types.read_text(encoding="utf-8")


async def test_what_another_value_needs_is_not_removed(visitor: User):
    await look_at(visitor, "arm")
    visitor.find(marker="remove Flow read today").click()
    await see(visitor, "no flow of today is given")
    fill(visitor, "Uncertainty of today's flow, ±", "5 %")
    assert "flow: missing" in await fault_at(visitor, "Uncertainty of today's flow, ±")


async def test_the_way_a_hood_looks_is_a_choice_or_three_numbers(visitor: User, all_types: Path):
    await look_at(visitor, "arm")
    fill(visitor, "The same as three numbers", "0 -1 -0.5")
    await see(visitor, "out of the room, −y and down")
    await written(visitor, all_types, "facing: [0, -1, -0.5]")
    await asyncio.sleep(1.0)  # so that no check of the typed numbers is still on its way
    choose(visitor, "It looks", "0, -1, 0")
    await written(visitor, all_types, "facing: [0, -1, 0]\n    intended_flow: 700")


async def test_a_way_that_is_none_is_told_at_the_field(visitor: User):
    await look_at(visitor, "arm")
    fill(visitor, "The same as three numbers", "down")
    assert "a direction is three plain numbers" in await fault_at(visitor, "The same as three numbers")
    fill(visitor, "The same as three numbers", "0, 0, 0")
    await see(visitor, "points nowhere")


async def test_a_turn_that_is_not_square_to_the_axis_is_told_at_the_field(visitor: User):
    await look_at(visitor, "slot hood")
    fill(visitor, "Direction of its first side", "0, 1, 0")
    assert "must be square to 'facing'" in await fault_at(visitor, "Direction of its first side")


async def test_the_opening_becomes_a_slot_and_a_slot_too_short_is_told(visitor: User, all_types: Path):
    await look_at(visitor, "arm")
    choose(visitor, "Shape of the opening", "slot", ui.radio)
    await see(visitor, "Length of the slot")
    await written(visitor, all_types, "opening: {slot: [1500 mm, 150 mm]}")
    fill(visitor, "Length of the slot", "300 mm")
    assert "at least 5 times as long as wide" in await fault_at(visitor, "Length of the slot")


async def test_the_entry_into_the_duct_is_chosen_and_taken_away(visitor: User, all_types: Path):
    await look_at(visitor, "slot hood")
    fill(visitor, "Included angle of the taper", "90 deg")
    await written(visitor, all_types, "entry: {taper: 90 deg}")
    choose(visitor, "Entry into the duct", "loss")
    await see(visitor, "Loss, in velocity pressures")
    choose(visitor, "Entry into the duct", "none")
    await visitor.should_not_see("Loss, in velocity pressures")


async def test_the_nozzle_that_pushes_and_a_filter_have_their_fields(visitor: User):
    await look_at(visitor, "slot hood")
    assert field(visitor, "Flow blown").value == "60 m3/h"
    await look_at(visitor, "hopper box")
    assert field(visitor, "Filter, loaded").value == "120 Pa"
    assert field(visitor, "chute: diameter").value == "200 mm"


async def test_a_tank_has_its_class_and_a_wheel_its_work(visitor: User, all_types: Path):
    await look_at(visitor, "pickling bath")
    choose(visitor, "Hazard", "C", ui.radio)
    choose(visitor, "How fast it gives off", "3", ui.radio)
    await written(visitor, all_types, "tank: {hazard: C, evolution: 3}")
    await look_at(visitor, "buff")
    choose(visitor, "Work", "polishing")
    await written(visitor, all_types, "work: polishing")


async def test_a_choice_that_does_not_fit_is_told_below_it(visitor: User):
    await look_at(visitor, "buff")
    choose(visitor, "Work", "belt")
    await see(visitor, "'belt' is told by its width alone")


async def test_a_line_for_a_calculator_stands_with_where_from(visitor: User):
    await look_at(visitor, "booth")
    await visitor.should_not_see("2 * 2 * 0.508")
    visitor.find("where from?").click()
    await see(visitor, "recompute")
    await see(visitor, "2 * 2 * 0.508")


async def test_a_place_outside_its_enclosure_is_told_plainly(visitor: User, all_types: Path):
    text = all_types.read_text(encoding="utf-8").replace("at: [7.6 m, 4.3 m, 1.1 m]", "at: [7.6 m, 2.3 m, 1.1 m]")
    all_types.write_text(text, encoding="utf-8")
    await look_at(visitor, "booth")
    await see(visitor, "cannot be told")
    await see(visitor, "it is not inside the booth")


async def test_what_a_hood_serves_is_one_click_away(visitor: User):
    await look_at(visitor, "wheel hood")
    await see(visitor, "It serves:")
    await look_at(visitor, "buff")
    await see(visitor, "Served by:")
