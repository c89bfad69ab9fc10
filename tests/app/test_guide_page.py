"""The Guide page: search, sort, one process with its sources, and a workplace started from it."""

import asyncio

from nicegui import ui
from nicegui.testing import User

PATIENCE = 40
SEARCH = "Words of a process, trade, contaminant or hazard"
NAME = "Name of the new file"


async def see(user: User, text: str) -> None:
    await user.should_see(text, retries=PATIENCE)


async def fill(user: User, label: str, text: str) -> None:
    with user:
        next(iter(user.find(marker=label, kind=ui.input).elements)).value = text


async def test_the_question_and_how_many_processes(visitor: User):
    await visitor.open("/guide")
    await see(visitor, "What is done, and what belongs over it?")
    await see(visitor, "77 processes; press a heading to sort, arrow keys walk the list.")
    await see(visitor, "Choose a process to see its hood")


async def test_searching_narrows_the_list(visitor: User):
    await visitor.open("/guide")
    await fill(visitor, SEARCH, "weld chrom")
    await see(visitor, "1 process;")
    await see(visitor, "stainless steel welding")
    await visitor.should_not_see("artificial nails")


async def test_words_that_fit_nothing_suggest_the_nearest(visitor: User):
    await visitor.open("/guide")
    await fill(visitor, SEARCH, "soldring")
    await see(visitor, "No process fits all these words; these come nearest:")
    await see(visitor, "soldering with rosin flux")
    await fill(visitor, SEARCH, "xqzy")
    await see(visitor, "No process fits these words; use fewer.")


async def test_sorting_by_a_heading(visitor: User):
    await visitor.open("/guide")
    visitor.find("Release").click()
    await see(visitor, "Release ▾")


async def test_a_process_is_told_with_every_source(visitor: User):
    await visitor.open("/guide?process=removing asbestos")
    await see(visitor, "Refused, whatever the flow")
    await see(visitor, "UK: most work with asbestos is for licensed contractors only: stop, and call one")
    await see(visitor, "UK: examined at least every 6 months (asbestos)")
    await see(visitor, "From memory, to be confirmed in: Control of Asbestos Regulations 2012, regulation 13")
    await see(visitor, "UK: its record is kept for at least 5 years")


async def test_choosing_a_process_shows_it(visitor: User):
    await visitor.open("/guide")
    visitor.find("chromium plating").click()
    await see(visitor, "Chromium plating: gives off chromic acid mist")


async def test_units_follow_the_file(visitor: User, folder):
    text = (folder / "demo.yaml").read_text(encoding="utf-8").replace("units: SI", "units: US")
    (folder / "demo.yaml").write_text(text, encoding="utf-8")
    await visitor.open("/guide?process=artificial nails")
    await see(visitor, "98.4 to 197\u2009fpm")


async def test_the_guide_opens_in_an_empty_folder_and_starts_a_file(visitor: User, folder):
    (folder / "demo.yaml").unlink()
    await visitor.open("/guide?process=artificial nails")
    visitor.find("Write it and open it").click()
    for _ in range(PATIENCE):
        if (folder / "artificial-nails.yaml").exists():
            break
        await asyncio.sleep(0.1)
    assert "process: artificial nails" in (folder / "artificial-nails.yaml").read_text(encoding="utf-8")
    await see(visitor, "What gives off what, and what should catch it?")


async def test_a_new_file_gets_a_name_of_its_own_and_never_overwrites(visitor: User, folder):
    (folder / "artificial-nails.yaml").write_text("mine", encoding="utf-8")
    await visitor.open("/guide?process=artificial nails")
    field = next(iter(visitor.find(marker=NAME, kind=ui.input).elements))
    assert field.value == "artificial-nails-2.yaml"
    await fill(visitor, NAME, "artificial-nails.yaml")
    visitor.find("Write it and open it").click()
    for _ in range(PATIENCE):
        if field.error:
            break
        await asyncio.sleep(0.1)
    assert "exists already" in field.error
    assert (folder / "artificial-nails.yaml").read_text(encoding="utf-8") == "mine"


async def test_a_name_leads_nowhere_else(visitor: User, folder):
    await visitor.open("/guide?process=artificial nails")
    await fill(visitor, NAME, "../out.yaml")
    visitor.find("Write it and open it").click()
    await asyncio.sleep(0.5)
    field = next(iter(visitor.find(marker=NAME, kind=ui.input).elements))
    assert "a name of a file that ends in .yaml is needed" in field.error
    assert not (folder.parent / "out.yaml").exists()
