"""The panel of the computed air: what a visitor reads, tries and keeps. The browser's part is played by events."""

import asyncio

import pytest
from nicegui import ui
from nicegui.testing import User

from hoodwright.web.components.scene import Scene

PATIENCE = 60
FLOW, SPEED, WAY = "Flow of the bench nozzle", "Draught, speed", "Draught, towards"
SHARE = {
    "kind": "share",
    "n": 1,
    "told": True,
    "shown": "85 %",
    "interval": "75 % to 95 %",
    "sentence": "The bench nozzle catches about 85 % of the flux fume.",
    "claim": "captured",
    "banner": "not validated for capture",
    "handbook": "meets the need: it gets what the equations ask",
    "differs": "the equations do not know the draught",
}


def scene(user: User) -> Scene:
    return next(iter(user.find(kind=Scene).elements))


def live(user: User) -> dict:
    return scene(user).props["live"]


def field(user: User, label: str) -> ui.input:
    return next(iter(user.find(marker=label, kind=ui.input).elements))


def slider(user: User, label: str) -> ui.slider:
    return next(iter(user.find(marker=f"slide {label}", kind=ui.slider).elements))


async def put(user: User, element, value) -> None:
    with user:
        element.value = value


async def see(user: User, text: str) -> None:
    await user.should_see(text, retries=PATIENCE)


async def until(what, patience: int = PATIENCE) -> None:
    for _ in range(patience):
        if what():
            return
        await asyncio.sleep(0.1)
    assert what()


async def opened(user: User, place: str = "/") -> None:
    await user.open(place)
    await see(user, "How much of the")


def says(user: User, event: str, args) -> None:
    user.find(kind=Scene).trigger(event, args)


async def test_the_sentence_stands_with_its_banner_and_the_handbook_beside_it(visitor: User):
    await opened(visitor)
    await see(visitor, "Computing the air around the bench nozzle")
    says(visitor, "share", SHARE)
    await see(visitor, SHARE["sentence"])
    await see(visitor, "Computed air, not validated for capture.")
    await see(visitor, SHARE["handbook"])
    await see(visitor, SHARE["differs"])


async def test_the_scene_is_asked_for_the_chosen_hood_and_its_source(visitor: User):
    await opened(visitor)
    asked = live(visitor)
    assert asked["url"] == "/live?file=demo.yaml"
    assert (asked["hood"], asked["source"]) == ("bench nozzle", "solder joint")
    assert (asked["flow"], asked["draught"]) == (None, None)


async def test_a_slider_changes_the_air_but_not_the_file(visitor: User):
    await opened(visitor)
    await put(visitor, slider(visitor, FLOW), 480)
    await until(lambda: live(visitor)["flow"] == pytest.approx(480 / 3600))
    assert field(visitor, FLOW).value == "480 m3/h"
    await see(visitor, "480\u2009m³/h = 283\u2009cfm; the file says 320\u2009m³/h")
    await see(visitor, "as on disk")
    assert field(visitor, "Intended flow").value == "320 m3/h"


async def test_any_unit_is_typed_and_what_was_understood_is_shown(visitor: User):
    await opened(visitor)
    await put(visitor, field(visitor, SPEED), "60 fpm")
    await until(lambda: live(visitor)["draught"] is not None)
    assert live(visitor)["draught"] == pytest.approx((0.3048, 0.0, 0.0))
    await see(visitor, "0.305\u2009m/s = 60\u2009fpm")
    assert slider(visitor, SPEED).value == pytest.approx(0.3048)


async def test_the_way_of_the_draught_is_told_in_degrees_and_words(visitor: User):
    await opened(visitor)
    await see(visitor, "90°, along the room; as in the file")
    await put(visitor, field(visitor, WAY), "out of the room")
    await see(visitor, "180°, out of the room; the file says 90°, along the room")
    assert live(visitor)["draught"] == pytest.approx((0.0, -0.12, 0.0))


@pytest.mark.parametrize(
    ("label", "text", "fault"),
    [
        (FLOW, "0 m3/h", "more than 0 is needed"),
        (FLOW, "three", "write for example"),
        (SPEED, "-1 m/s", "0 or more is needed"),
        (SPEED, "5 kg", "kg"),
        (WAY, "north", "a direction on the floor plan is needed"),
    ],
)
async def test_a_fault_is_told_at_the_field_and_the_air_stays(visitor: User, label: str, text: str, fault: str):
    await opened(visitor)
    await put(visitor, field(visitor, label), text)
    await until(lambda: field(visitor, label).error)
    assert fault in field(visitor, label).error
    assert (live(visitor)["flow"], live(visitor)["draught"]) == (None, None)


async def test_what_is_tried_is_kept_in_the_file_as_one_step_back(visitor: User):
    await opened(visitor)
    await put(visitor, field(visitor, FLOW), "250 cfm")
    await put(visitor, field(visitor, SPEED), "0.3 m/s")
    visitor.find("Keep in the file").click()
    await see(visitor, "Kept in the file; Undo takes it back.")
    await until(lambda: field(visitor, "Intended flow").value == "424.8 m3/h")
    await until(lambda: (live(visitor)["flow"], live(visitor)["draught"]) == (None, None))
    await see(visitor, "unsaved edits")
    visitor.find("Undo").click()
    await until(lambda: (field(visitor, FLOW).value, field(visitor, SPEED).value) == ("320 m3/h", "0.12 m/s"))
    await see(visitor, "as on disk")


async def test_back_to_the_values_of_the_file(visitor: User):
    await opened(visitor)
    await put(visitor, slider(visitor, FLOW), 480)
    visitor.find("Back to the file's values").click()
    await until(lambda: live(visitor)["flow"] is None)
    assert field(visitor, FLOW).value == "320 m3/h"


async def test_us_units_reach_the_sliders(visitor: User):
    await opened(visitor)
    visitor.find("US").click()
    await until(lambda: field(visitor, FLOW).value == "188.3 cfm")
    assert field(visitor, SPEED).value == "23.62 fpm"
    await put(visitor, slider(visitor, FLOW), 250)
    await until(lambda: live(visitor)["flow"] == pytest.approx(250 * 0.3048**3 / 60))


async def test_toggles_say_what_is_drawn_and_lay_the_plane(visitor: User):
    await opened(visitor)
    await visitor.should_not_see("Plane through the source:")
    visitor.find("Capture map").click()
    await see(visitor, "✓ Capture map")
    await see(visitor, "where on the plane a source would still be caught")
    visitor.find("upright").click()
    assert (live(visitor)["layers"], live(visitor)["plane"]) == (["map"], "upright")
    says(visitor, "layer", {"layer": "map", "words": "Inside the 90 % line it still catches nine tenths."})
    await see(visitor, "Inside the 90 % line it still catches nine tenths.")
    visitor.find("Smoke").click()
    assert live(visitor)["smoke"] is False


async def test_a_dragged_source_is_an_edit_with_a_step_back(visitor: User):
    await opened(visitor)
    says(visitor, "moved", {"name": "solder joint", "at": [2.0, 1.75, 1.06]})
    await see(visitor, "The bench nozzle, 150\u2009mm from the solder joint")
    await see(visitor, "unsaved edits")
    visitor.find("Undo").click()
    await see(visitor, "The bench nozzle, 100\u2009mm from the solder joint")


async def test_a_dragged_hood_stays_in_the_room(visitor: User):
    await opened(visitor)
    says(visitor, "moved", {"name": "bench nozzle", "at": [2.0, 99.0, 1.06]})
    await until(lambda: field(visitor, "Into the room, y").value == "7 m")


async def test_a_fault_of_the_air_is_told_in_the_panel(visitor: User):
    await opened(visitor)
    says(visitor, "fault", {"words": "solder joint: it lies inside the bench; move it"})
    await see(visitor, "it lies inside the bench")
    says(visitor, "share", SHARE)
    await visitor.should_not_see("it lies inside the bench")


async def test_another_hood_has_its_own_question(visitor: User):
    await opened(visitor, "/?part=crucible canopy")
    await see(visitor, "How much of the bronze fume does it catch?")
    assert (live(visitor)["hood"], live(visitor)["source"]) == ("crucible canopy", "crucible")


async def test_capture_against_distance_is_told_in_words_and_as_a_table(visitor: User):
    await opened(visitor)
    await put(visitor, field(visitor, SPEED), "0.3 m/s")
    visitor.find("Capture against distance").click()
    await until(lambda: any("the captured share of the solder joint goes from" in t for t in texts(visitor)), 300)
    await see(visitor, "Shaded: interval.")
    await see(visitor, "The same as a table")
    await see(visitor, "it stands here now")


def texts(user: User) -> list[str]:
    return [getattr(element, "text", "") or "" for element in user.client.elements.values()]


async def test_an_enclosure_is_not_asked_for_a_distance(visitor: User):
    await opened(visitor, "/?part=glue cabinet")
    visitor.find("Capture against distance").click()
    await see(visitor, "An enclosure is judged by the inward velocity of its openings")


async def test_without_a_scene_the_share_and_stills_come_from_the_server(visitor: User):
    await opened(visitor)
    says(visitor, "blind", {})
    await until(lambda: any("100\u2009mm from the solder joint, at 320\u2009m³/h" in t for t in texts(visitor)), 300)
    await see(visitor, "This browser has no WebGL, so the scene and the smoke are still pictures")


async def test_the_computed_air_is_saved_as_a_pdf(visitor: User):
    await opened(visitor)
    visitor.find("PDF of the computed air").click()
    answer = await visitor.download.next(timeout=120)
    assert answer.content.startswith(b"%PDF")


async def test_while_the_air_compiles_the_page_says_so_and_stays_usable(visitor: User, monkeypatch):
    from hoodwright.tasks import warm_up

    monkeypatch.setattr(warm_up, "state", lambda: warm_up.Ready(False, "preparing", 0.3))
    await opened(visitor)
    await see(visitor, "the first run compiles, 10 to 40 seconds")
    await put(visitor, field(visitor, FLOW), "200 cfm")
    await see(visitor, "340\u2009m³/h = 200\u2009cfm")
    monkeypatch.setattr(warm_up, "state", lambda: warm_up.Ready(True, "ready", 1.0))
    await visitor.should_not_see("the first run compiles, 10 to 40 seconds", retries=PATIENCE)


async def test_a_hood_of_two_sources_asks_which(visitor: User, folder):
    text = (folder / "demo.yaml").read_text(encoding="utf-8")
    two = text.replace("serves: [solder joint]", "serves: [solder joint, glue pot]")
    (folder / "demo.yaml").write_text(two, encoding="utf-8")
    await opened(visitor)
    assert live(visitor)["source"] == "solder joint"
    next(e for e in visitor.client.elements.values() if getattr(e, "text", "") == "✓ solder joint")
    visitor.find(kind=Scene).trigger("choose", "glue pot")
    await until(lambda: live(visitor)["source"] == "glue pot")
