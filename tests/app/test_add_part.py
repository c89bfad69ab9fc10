"""Whole parts on the page: a visitor adds a source and a hood, leads it to a fan, renames it and takes it away."""

import asyncio

from nicegui import ui
from nicegui.testing import User

PATIENCE = 40
EMPTY = "hoodwright: 1\nname: new shop\nroom: {size: [8 m, 6 m, 3 m]}\ncontaminants: []\nsources: []\nhoods: []\n"


async def see(user: User, text: str) -> None:
    await user.should_see(text, retries=PATIENCE)


def pick(user: User, label: str, value: str) -> None:
    with user:
        next(iter(user.find(marker=label, kind=ui.select).elements)).value = value


def typed(user: User, label: str, text: str) -> None:
    with user:
        next(iter(user.find(marker=label, kind=ui.input).elements)).value = text


async def press(user: User, words: str) -> None:
    user.find(words).click()
    await asyncio.sleep(0.2)


async def emptied(user: User, folder, page: str = "/") -> None:
    (folder / "demo.yaml").write_text(EMPTY, encoding="utf-8")
    await user.open(f"{page}?file=demo.yaml")
    await see(user, "Add, rename or take away")


async def test_an_empty_workplace_gets_a_source_and_a_hood(visitor: User, folder):
    await emptied(visitor, folder)
    pick(visitor, "It gives off", "new: fume")
    await press(visitor, "Add the source")
    await see(visitor, "Added: fume, work. Undo takes it back.")
    await press(visitor, "Add the hood")
    await see(visitor, "The work hood, 150\u2009mm from the work, needs")


async def test_a_hood_without_a_source_is_refused_in_words(visitor: User, folder):
    await emptied(visitor, folder)
    await press(visitor, "Add the hood")
    await see(visitor, "a hood serves a source, and there is none yet; add a source first")


async def test_a_part_gets_another_name_everywhere(visitor: User):
    await visitor.open("/?part=solder joint")
    await see(visitor, "The bench nozzle")
    typed(visitor, "Its name", "solder spot")
    await press(visitor, "Rename it")
    await see(visitor, "The solder joint is called solder spot now. Undo takes it back.")
    await see(visitor, "The bench nozzle, 100\u2009mm from the solder spot")


async def test_a_name_that_is_taken_is_told_at_the_field(visitor: User):
    await visitor.open("/?part=solder joint")
    await see(visitor, "The bench nozzle")
    typed(visitor, "Its name", "buff")
    await press(visitor, "Rename it")
    field = next(iter(visitor.find(marker="Its name", kind=ui.input).elements))
    assert field.error == "'buff' is a name in this file already; choose another name"


async def test_a_hood_goes_with_its_duct_and_undo_brings_both_back(visitor: User):
    await visitor.open("/?part=buff hood")
    await see(visitor, "The buff hood")
    await press(visitor, "Take it away")
    await see(visitor, "Taken away: buff hood, and with it: D1. Undo takes it back.")
    await see(visitor, "Change the bench nozzle")
    await press(visitor, "Undo")
    await see(visitor, "The buff hood")


async def test_a_source_that_a_hood_needs_stays_and_the_page_says_why(visitor: User):
    await visitor.open("/?part=buff")
    await see(visitor, "The buff hood")
    await press(visitor, "Take it away")
    await see(visitor, "buff hood serves nothing but 'buff'; take that hood away first")


async def test_a_hood_is_led_to_a_fan_of_its_own_and_gets_a_cleaner(visitor: User, folder):
    await emptied(visitor, folder)
    await press(visitor, "Add the source")
    await press(visitor, "Add the hood")
    await see(visitor, "The work hood")
    await press(visitor, "Save")
    await visitor.open("/ducts?file=demo.yaml")
    await see(visitor, "Add a duct")
    await press(visitor, "Add the duct")
    await see(visitor, "Added: duct, stack, fan. Undo takes it back.")
    await press(visitor, "Add the cleaner")
    await see(visitor, "Added: link, filter. Undo takes it back.")
    await press(visitor, "Add the duct")
    await see(visitor, "every hood has a duct already; add another hood first")
