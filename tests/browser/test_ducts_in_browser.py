"""Ducts in a real browser: the drawing answers a damper, by mouse and by keyboard, on a desk and on a phone."""

import pytest
from playwright.sync_api import Page, expect

from curved_demo import demo

LONGEST_FIRST_MS = 60_000  # the first run on a machine compiles
WIDTH_OF = (
    "(name) => parseFloat(getComputedStyle(document.querySelector(`.duct[data-part='${name}'] .band`)).strokeWidth)"
)


@pytest.fixture
def ducts(page: Page, shop) -> Page:
    """The page of the demo with curves; nothing moves by itself."""
    (shop.folder / "curved.yaml").write_text(demo(), encoding="utf-8")
    page.emulate_media(reduced_motion="reduce")
    page.goto(f"{shop.url}/ducts?file=curved.yaml&part=C1")
    expect(page.locator(".live-sentence")).to_contain_text("With dirty filters", timeout=LONGEST_FIRST_MS)
    return page


def test_a_damper_moved_by_its_keys_makes_its_duct_thinner(ducts: Page):
    before = ducts.evaluate(WIDTH_OF, "C1")
    ducts.locator(".duct[data-part='C1']").focus()
    for _ in range(20):
        ducts.keyboard.press("+")
    ducts.wait_for_function(f"({WIDTH_OF})('C1') < {before} - 1")
    expect(ducts.get_by_role("button", name="Keep in the file")).to_be_enabled()
    expect(ducts.locator(".duct-look h2")).to_have_text("C1")


def test_arrow_keys_walk_along_the_air_and_enter_looks(ducts: Page):
    ducts.locator(".duct[data-part='C1']").focus()
    ducts.keyboard.press("ArrowRight")
    expect(ducts.locator(".spot[data-part='J2']")).to_be_focused()
    ducts.keyboard.press("Enter")
    expect(ducts.locator(".duct-look h2")).to_have_text("J2")


def test_a_click_on_a_hood_looks_at_it_and_shuts_it(ducts: Page):
    ducts.locator(".spot[data-part='buff hood']").click()
    expect(ducts.locator(".duct-look h2")).to_have_text("buff hood")
    ducts.get_by_role("button", name="Shut buff hood").click()
    expect(ducts.locator(".live-sentence")).to_contain_text("the buff hood shut")
    expect(ducts.locator(".spot[data-part='buff hood'] .trouble")).to_have_text("shut")


def test_on_a_phone_only_the_drawing_scrolls_sideways(ducts: Page):
    ducts.set_viewport_size({"width": 390, "height": 844})
    ducts.wait_for_function("document.documentElement.scrollWidth <= 390")  # the plots follow the new width
    drawing = ducts.locator(".duct-drawing")
    assert drawing.evaluate("one => one.scrollWidth > one.clientWidth")
    expect(drawing).to_be_visible()
