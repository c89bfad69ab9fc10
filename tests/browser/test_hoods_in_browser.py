"""Every type of hood in a real browser: drawn, chosen, changed, and read by keyboard."""

import re
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

ALL_TYPES = Path(__file__).parents[1] / "app" / "all-types.yaml"
HOODS = {
    "bath slots": "capturing",
    "arm": "capturing",
    "slot hood": "capturing",
    "canopy": "receiving",
    "booth": "enclosing",
    "hopper box": "enclosing",
    "wheel hood": "receiving",
    "catcher": "receiving",
}


@pytest.fixture
def open_at(page: Page, shop):
    """Opens the page with a part of the file that has every kind of hood."""
    (shop.folder / ALL_TYPES.name).write_text(ALL_TYPES.read_text(encoding="utf-8"), encoding="utf-8")

    def go(part: str, file: str = ALL_TYPES.name) -> Page:
        page.goto(f"{shop.url}/?file={file}&part={part}")
        expect(page.locator(".scene[data-drawn]")).to_be_visible()
        return page

    return go


def drawn(page: Page) -> dict[str, tuple[str, int]]:
    """What the scene says it has drawn: part, kind and number of bodies."""
    told = page.locator(".scene").get_attribute("data-parts") or ""
    found = (re.fullmatch(r"(\w+): (.+) \((\d+)\)", part) for part in told.split("; "))
    return {match[2]: (match[1], int(match[3])) for match in found if match}


def test_every_hood_and_source_is_drawn_as_what_it_is(open_at):
    parts = drawn(open_at("arm"))
    assert {name: parts[name][0] for name in HOODS} == HOODS
    assert all(count >= 3 for _, count in parts.values())
    assert parts["booth"][1] >= 5 + 4  # five walls and a rim of four bars
    assert parts["seam"][1] == 3 + 1  # a point of light, and the bar of its line
    assert parts["bell"][1] > 12  # twelve edges of a box


@pytest.mark.parametrize("part", ["arm", "slot hood", "canopy", "booth", "wheel hood", "catcher"])
def test_the_chosen_hood_is_framed_whole_and_named(open_at, part: str):
    page = open_at(part)
    name = page.locator(".scene-hood", has_text=re.compile(f"^{part}$"))
    expect(name).to_be_visible()
    scene, label = page.locator(".scene").bounding_box(), name.bounding_box()
    assert scene and label
    assert scene["x"] <= label["x"] and label["x"] + label["width"] <= scene["x"] + scene["width"]
    assert scene["y"] <= label["y"] and label["y"] + label["height"] <= scene["y"] + scene["height"]


def test_labels_do_not_lie_on_each_other(open_at):
    page = open_at("booth")
    page.get_by_role("button", name="Whole room").click()
    page.wait_for_function("document.querySelector('.scene.far')")
    page.wait_for_timeout(500)
    overlaps = page.evaluate(
        "(() => { const all = [...document.querySelectorAll('.scene-label')]"
        ".filter(e => e.offsetParent && getComputedStyle(e).visibility != 'hidden')"
        ".map(e => [e.textContent, e.getBoundingClientRect()]);"
        "return all.flatMap(([a, r], i) => all.slice(i + 1).filter(([_, s]) =>"
        " r.left < s.right && s.left < r.right && r.top < s.bottom - 1 && s.top < r.bottom - 1)"
        ".map(([b]) => `${a} on ${b}`)); })()"
    )
    assert overlaps == []


def test_a_canopy_hung_lower_changes_its_answer(open_at):
    page = open_at("canopy")
    before = page.locator(".answer .sentence").first.inner_text()
    expect(page.locator(".scene-measure")).to_have_text("1200\u2009mm above")
    page.get_by_label("Height above the crucible").fill("2 ft")
    expect(page.locator(".answer .sentence").first).to_contain_text("610\u2009mm above the crucible")
    expect(page.locator(".scene-measure")).to_have_text("610\u2009mm above")
    assert page.locator(".answer .sentence").first.inner_text() != before
    page.get_by_role("button", name="Undo").click()
    expect(page.get_by_label("Height above the crucible")).to_have_value("1200 mm")


def test_a_source_inside_its_enclosure_is_chosen_through_the_wall(open_at):
    page = open_at("booth")
    box, label = page.locator(".scene").bounding_box(), page.locator(".scene-source", has_text="bell").bounding_box()
    assert box and label
    page.mouse.click(label["x"] + label["width"] / 2, label["y"] - 4)
    expect(page.get_by_role("heading", name=re.compile("Change the (bell|booth)"))).to_be_visible()
    page.locator(".scene-source", has_text="bell").click()
    expect(page.get_by_role("heading", name="Change the bell")).to_be_visible()


def test_a_list_is_opened_and_chosen_by_keyboard(open_at):
    page = open_at("booth")
    form = page.get_by_role("combobox", name="Form")
    form.focus()
    page.keyboard.press("Enter")
    page.keyboard.press("ArrowDown")
    page.keyboard.press("Enter")
    expect(page.get_by_text("unsaved edits")).to_be_visible()
    expect(page.locator(".answer").first).not_to_contain_text("face velocity for the bell: spray booth, ")


def test_a_value_is_removed_by_keyboard_and_undone(open_at):
    page = open_at("arm")
    page.get_by_role("button", name="Remove Flange width from the file").focus()
    page.keyboard.press("Enter")
    expect(page.get_by_label("Flange width", exact=True)).to_have_value("")
    page.get_by_role("button", name="Undo").click()
    expect(page.get_by_label("Flange width", exact=True)).to_have_value("75 mm")


def test_a_hood_at_the_wall_says_so(open_at):
    page = open_at("canopy")
    page.locator(".part.hood", has_text="canopy").focus()
    for _ in range(18):
        page.keyboard.press("Shift+PageUp")
    expect(page.get_by_text("The canopy is at the wall; it goes no farther.")).to_be_visible()


def test_save_stays_in_sight(open_at):
    page = open_at("booth")
    page.evaluate("scrollTo(0, document.documentElement.scrollHeight)")
    expect(page.get_by_role("button", name="Save", exact=True)).to_be_in_viewport(ratio=1)


@pytest.mark.parametrize("width", [820, 1280])
def test_nothing_is_cut_off_with_many_hoods(open_at, width: int):
    page = open_at("booth")
    page.set_viewport_size({"width": width, "height": 900})
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")
    page.goto(page.url.replace("/?", "/ducts?"))
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")
