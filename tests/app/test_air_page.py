"""The Air page: the right numbers and messages for a visitor."""

import asyncio

from nicegui import ui
from nicegui.testing import User

DISTANCE = "Distance to the solder joint, along the hood's axis"
PATIENCE = 40


def field(user: User, label: str) -> ui.input:
    return next(iter(user.find(marker=label, kind=ui.input).elements))


async def fill(user: User, label: str, text: str) -> None:
    with user:
        field(user, label).value = text


async def fault_at(user: User, label: str) -> str:
    for _ in range(PATIENCE):
        if field(user, label).error:
            break
        await asyncio.sleep(0.1)
    return field(user, label).error or "no fault is shown"


async def see(user: User, text: str) -> None:
    await user.should_see(text, retries=PATIENCE)


async def test_the_question_comes_first_and_the_answer_is_a_sentence(visitor: User):
    await visitor.open("/")
    await see(visitor, "What gives off what, and what should catch it?")
    await see(visitor, "The bench nozzle, 100\u2009mm from the solder joint, needs 291\u2009m³/h")


async def test_both_questions_are_answered_apart(visitor: User):
    await visitor.open("/?part=glue cabinet")
    await see(visitor, "Is what is intended enough?")
    await see(visitor, "Is it met today?")
    await see(visitor, "falls short")
    await see(visitor, "is computed as built, with dirty filters")


async def test_four_values_stand_side_by_side(visitor: User):
    await visitor.open("/")
    for name in ("required", "intended", "commissioned", "today"):
        await see(visitor, name)
    await see(visitor, "338\u2009m³/h")
    await see(visitor, "± 17\u2009m³/h")


async def test_a_new_distance_changes_the_answer_and_the_coordinate(visitor: User):
    await visitor.open("/")
    await fill(visitor, DISTANCE, "150 mm")
    await see(visitor, "The bench nozzle, 150\u2009mm from the solder joint")
    assert field(visitor, "Into the room, y").value == "1.95 m"


async def test_a_field_shows_what_it_understood(visitor: User):
    await visitor.open("/")
    await fill(visitor, "Intended flow", "200 cfm")
    await see(visitor, "340\u2009m³/h = 200\u2009cfm")


async def test_a_fault_is_told_at_the_field_and_the_answer_stays(visitor: User):
    await visitor.open("/")
    await fill(visitor, "Flange width", "3 kg")
    assert "3 kg" in await fault_at(visitor, "Flange width")
    await see(visitor, "needs 291\u2009m³/h")


async def test_a_place_outside_the_room_is_told_at_the_field(visitor: User):
    await visitor.open("/")
    await fill(visitor, "Height, z", "5 m")
    assert "outside the room" in await fault_at(visitor, "Height, z")


async def test_a_hood_in_its_own_source_is_refused(visitor: User):
    await visitor.open("/")
    await fill(visitor, DISTANCE, "0 mm")
    assert "give a positive distance" in await fault_at(visitor, DISTANCE)


async def test_undo_brings_back_the_first_answer(visitor: User):
    await visitor.open("/")
    await fill(visitor, DISTANCE, "150 mm")
    await see(visitor, "The bench nozzle, 150\u2009mm from the solder joint")
    visitor.find("Undo").click()
    await see(visitor, "The bench nozzle, 100\u2009mm from the solder joint")
    assert field(visitor, DISTANCE).value == "100 mm"


async def test_us_units_reach_the_sentence_and_leave_the_file_alone(visitor: User, folder):
    before = (folder / "demo.yaml").read_text(encoding="utf-8")
    await visitor.open("/")
    visitor.find("US").click()
    await see(visitor, "3.94\u2009in from the solder joint, needs 171\u2009cfm")
    visitor.find("Save").click()
    assert (folder / "demo.yaml").read_text(encoding="utf-8") == before


async def test_where_from_tells_formula_numbers_source_and_range(visitor: User):
    await visitor.open("/")
    await visitor.should_not_see("Q = 0.75 V (10 X² + A)")
    visitor.find("where from?").click()
    await see(visitor, "Q = 0.75 V (10 X² + A)")
    await see(visitor, "0.75 x 1 x (10 x 0.1² + 0.007854) = 0.08089 m3/s")
    await see(visitor, "lies inside it")


async def test_cautions_stand_with_what_they_concern(visitor: User):
    await visitor.open("/?part=crucible canopy")
    await see(visitor, "bronze fume: ")
    await see(visitor, "lead: a ventilation test does")


async def test_hints_tell_what_each_change_would_take_side_by_side(visitor: User):
    await visitor.open("/?part=glue cabinet")
    await see(visitor, "What would help most?")
    await see(visitor, "More flow: ")
    for name in ("required flow", "fan power", "make-up air"):
        await see(visitor, name)


async def test_saving_keeps_the_comments(visitor: User, folder):
    await visitor.open("/")
    await fill(visitor, DISTANCE, "150 mm")
    await see(visitor, "unsaved edits")
    visitor.find("Save").click()
    await see(visitor, "as on disk")
    text = (folder / "demo.yaml").read_text(encoding="utf-8")
    assert "at: [2.0 m, 1.95 m, 1.06 m]    # 100 mm from the joint" in text
