"""Ducts: what really flows, what can be tried without touching the file, and what is kept in it."""

from nicegui import ui
from nicegui.testing import User

from curved_demo import UNCURVED, demo
from hoodwright.web.components.duct_layout import DuctDrawing

PATIENCE = 80


async def see(user: User, text: str) -> None:
    await user.should_see(text, retries=PATIENCE)


async def opened(user: User, folder, text: str | None = None, **asked) -> DuctDrawing:
    """The page of the demo with curves; its drawing."""
    (folder / "demo.yaml").write_text(text or demo(), encoding="utf-8")
    await user.open("/ducts?file=demo.yaml" + "".join(f"&{key}={value}" for key, value in asked.items()))
    await see(user, "With dirty filters" if text is None else "What really flows?")
    return next(iter(user.find(kind=DuctDrawing).elements))


def typed(user: User, label: str, text: str) -> None:
    with user:
        next(iter(user.find(marker=label, kind=ui.input).elements)).value = text


def duct(drawing: DuctDrawing, name: str) -> dict:
    return next(one for one in drawing.props["ducts"] if one["name"] == name)


async def test_the_answer_stands_first_in_a_sentence(visitor: User, folder):
    await opened(visitor, folder)
    await see(visitor, "the bench nozzle gets")
    await see(visitor, "dust settles in D1")
    await see(visitor, "The roof fan moves")


async def test_a_damper_that_is_shut_leaves_its_hood_less(visitor: User, folder):
    drawing = await opened(visitor, folder, part="C1")
    width = duct(drawing, "C1")["width"]
    typed(visitor, "Damper in C1", "40")
    await see(visitor, "the crucible canopy gets")
    assert duct(drawing, "C1")["width"] < width
    assert duct(drawing, "C1")["damper"]["turn"] > 0


async def test_what_is_tried_adds_up_and_goes_back(visitor: User, folder):
    drawing = await opened(visitor, folder, part="C1")
    before = duct(drawing, "D1")["about"]
    typed(visitor, "Damper in C1", "40")
    await see(visitor, "the crucible canopy gets")
    visitor.find("buff hood", kind=None).click()
    await see(visitor, "With dirty filters and the buff hood shut")
    await see(visitor, "the crucible canopy gets")
    visitor.find("Back to the file").click()
    await see(visitor, "the bench nozzle gets")
    assert duct(drawing, "D1")["about"] == before
    await see(visitor, "open; as in the file")


async def test_kept_in_the_file_is_one_step_back(visitor: User, folder):
    await opened(visitor, folder, part="C1")
    typed(visitor, "Damper in C1", "4")
    typed(visitor, "Speed of the roof fan", "90 %")
    await see(visitor, "the roof fan at 90 % of its speed")
    visitor.find("Keep in the file").click()
    await see(visitor, "Kept in the file; Undo takes it back.")
    await see(visitor, "unsaved edits")
    await see(visitor, "4 velocity pressures of the duct; as in the file")
    visitor.find("Undo").click()
    await see(visitor, "as on disk")
    await see(visitor, "open; as in the file")


async def test_without_a_curve_the_intended_flows_are_shown(visitor: User, folder):
    drawing = await opened(visitor, folder, demo(UNCURVED))
    await see(
        visitor, "The file gives no curve for the roof fan and the booth fan, so what really flows there cannot be told"
    )
    assert "meant 320\u2009m³/h" in duct(drawing, "A1")["about"]
    assert all("intended" in one["classes"] for one in drawing.props["ducts"])
    await visitor.should_not_see("Keep in the file")


async def test_clean_filters_give_every_hood_more(visitor: User, folder):
    drawing = await opened(visitor, folder)
    width = duct(drawing, "A1")["about"]
    typed(visitor, "Filters, clean to dirty", "0 %")
    await see(visitor, "With clean filters, dust settles in D1")
    assert duct(drawing, "A1")["about"] != width


async def test_required_intended_and_today_side_by_side(visitor: User, folder):
    await opened(visitor, folder)
    await see(visitor, "What does every hood need, and get?")
    await see(visitor, "of what is required")
    await see(visitor, "meets the need, but less than intended")


async def test_the_fan_tells_where_it_runs(visitor: User, folder):
    await opened(visitor, folder)
    await see(visitor, "roof fan: what it gives, and what the ducts ask")
    await see(visitor, "; stable")


async def test_units_follow(visitor: User, folder):
    drawing = await opened(visitor, folder)
    visitor.find("US").click()
    await see(visitor, "\u2009cfm of 188\u2009cfm")
    assert "fpm" in duct(drawing, "A1")["about"]


async def test_a_file_without_ducts_says_so(visitor: User, folder):
    text = demo()
    text = text[: text.index("\nducts:")] + "\n"
    (folder / "demo.yaml").write_text(text, encoding="utf-8")
    await visitor.open("/ducts?file=demo.yaml")
    await see(visitor, "The file has no ducts yet")
    await visitor.should_not_see("Try it")


async def test_sizes_are_found_shown_and_applied_in_one_step(visitor: User, folder):
    await opened(visitor, folder)
    visitor.find("Find the sizes").click()
    await see(visitor, "Before the roof fan")
    await see(visitor, "cost of ducts and dampers")
    visitor.find("Apply").click()
    await see(visitor, "Applied; Undo takes all of it back.")
    await see(visitor, "unsaved edits")
    visitor.find("Undo").click()
    await see(visitor, "as on disk")


async def test_sizes_that_are_discarded_leave_the_file_alone(visitor: User, folder):
    await opened(visitor, folder)
    visitor.find("Find the sizes").click()
    await see(visitor, "Before the roof fan")
    visitor.find("Discard").click()
    await see(visitor, "Discarded; the file is as it was.")
    await see(visitor, "as on disk")
    await visitor.should_not_see("Before the roof fan")


async def test_states_of_use_of_the_file_can_be_tried(visitor: User, folder):
    text = demo() + "\nscenarios:\n  - {name: bells only, closed: [buff hood, glue cabinet], dampers: {C1: 6}}\n"
    (folder / "demo.yaml").write_text(text, encoding="utf-8")
    await visitor.open("/ducts?file=demo.yaml&part=C1")
    await see(visitor, "With dirty filters")
    visitor.find("bells only").click()
    await see(visitor, "the buff hood and the glue cabinet shut")
    await see(visitor, "6 velocity pressures of the duct; the file says open")
    visitor.find("all hoods open").click()
    await see(visitor, "open; as in the file")


async def test_a_main_that_is_shut_cannot_be_kept_and_says_why(visitor: User, folder):
    await opened(visitor, folder, part="A3")
    visitor.find("Shut A3").click()
    await see(visitor, "With dirty filters and A3 shut")
    visitor.find("Keep in the file").click()
    await see(visitor, "a main that is shut is no state of use: open A3 first")
