"""The Air page as a visitor meets it, in a real browser."""

import re

import pytest
from playwright.sync_api import Page, expect

DISTANCE = "Distance to the solder joint, along the hood's axis"
LONGEST_START_S = 3.0
SIZES = [(1024, 768), (1440, 900), (820, 1180)]


@pytest.fixture
def air(page: Page, shop) -> Page:
    """The Air page, drawn."""
    page.goto(shop.url)
    expect(page.locator(".scene[data-drawn]")).to_be_visible()
    expect(page.get_by_label(DISTANCE)).to_have_value("100 mm")
    return page


def sentence(page: Page):
    return page.locator(".answer .sentence")


def test_the_page_answers_soon_after_start(shop):
    print(f"\nfirst answer of / after {shop.answered_after_s:.2f} s from the start of Python")
    assert shop.answered_after_s < 10 * LONGEST_START_S  # the figure is in benchmarks; shared machines are slow


def test_the_question_and_the_answer_stand_first(air: Page):
    expect(air.get_by_role("heading", level=1)).to_have_text("What gives off what, and what should catch it?")
    expect(sentence(air)).to_contain_text("The bench nozzle, 100\u2009mm from the solder joint")


def test_a_new_distance_changes_the_outcome_and_the_file_keeps_its_comments(air: Page, shop):
    before = shop.file.read_text(encoding="utf-8")
    expect(air.locator(".outcome").first).to_contain_text("meets the need")
    air.get_by_label(DISTANCE).fill("150 mm")
    expect(air.locator(".outcome").first).to_contain_text("falls short")
    expect(sentence(air)).to_contain_text("150\u2009mm")
    assert shop.file.read_text(encoding="utf-8") == before
    air.get_by_role("button", name="Save").click()
    expect(air.get_by_text("as on disk")).to_be_visible()
    after = shop.file.read_text(encoding="utf-8")
    changed = [(a, b) for a, b in zip(before.splitlines(), after.splitlines(), strict=True) if a != b]
    assert [b.strip() for _, b in changed] == ["at: [2.0 m, 1.95 m, 1.06 m]    # 100 mm from the joint"]


def test_any_unit_is_understood_and_a_fault_stands_at_the_field(air: Page):
    field = air.get_by_label(DISTANCE)
    field.fill("6 in")
    expect(air.get_by_text("152\u2009mm = 6\u2009in")).to_be_visible()
    field.fill("3 bananas")
    expect(air.locator(".field").first).to_contain_text("unit bananas is not known")
    expect(sentence(air)).to_contain_text("152\u2009mm")


def test_a_reload_loses_neither_the_draft_nor_half_typed_text(air: Page, shop):
    air.get_by_label(DISTANCE).fill("150 mm")
    expect(sentence(air)).to_contain_text("150\u2009mm")
    air.get_by_label("Intended flow", exact=True).fill("300 m3/")
    expect(air.locator(".field", has_text="Intended flow")).to_contain_text("write for example")
    air.reload()
    expect(air.get_by_label(DISTANCE)).to_have_value("150 mm")
    expect(air.get_by_label("Intended flow", exact=True)).to_have_value("300 m3/")
    expect(air.locator(".field", has_text="Intended flow")).to_contain_text("write for example")
    expect(air.get_by_text("unsaved edits")).to_be_visible()
    assert "1.90 m" in shop.file.read_text(encoding="utf-8")


def test_undo_takes_back_one_edit_at_a_time(air: Page):
    air.get_by_label(DISTANCE).fill("150 mm")
    expect(sentence(air)).to_contain_text("150\u2009mm")
    air.get_by_label("Intended flow", exact=True).fill("400 m3/h")
    expect(sentence(air)).to_contain_text("400\u2009m³/h")
    air.get_by_role("button", name="Undo").click()
    expect(air.get_by_label("Intended flow", exact=True)).to_have_value("320 m3/h")
    expect(sentence(air)).to_contain_text("150\u2009mm")
    air.get_by_role("button", name="Undo").click()
    expect(air.get_by_label(DISTANCE)).to_have_value("100 mm")
    expect(air.get_by_role("button", name="Undo")).to_be_disabled()


def test_us_units_on_request(air: Page):
    air.get_by_role("button", name="US", exact=True).click()
    expect(sentence(air)).to_contain_text("cfm")


def test_where_from_opens_and_goes_back(air: Page):
    ask = air.get_by_role("button", name="where from? DallaValle")
    ask.click()
    expect(air.get_by_text("Q = 0.75 V (10 X² + A)")).to_be_visible()
    expect(air.get_by_text("lies inside it").first).to_be_visible()
    air.get_by_role("button", name="back DallaValle").click()
    expect(air.get_by_text("Q = 0.75 V (10 X² + A)")).to_be_hidden()


def test_a_click_in_the_scene_chooses_the_hood(air: Page):
    air.get_by_role("button", name="Whole room").click()
    air.locator(".scene-hood", has_text="glue cabinet").click()
    expect(air.get_by_role("heading", name="Change the glue cabinet")).to_be_visible()
    expect(sentence(air)).to_contain_text("The glue cabinet")
    air.reload()
    expect(air.get_by_role("heading", name="Change the glue cabinet")).to_be_visible()


def test_a_source_is_released_more_briskly(air: Page):
    air.locator(".part.source", has_text="solder joint").click()
    air.get_by_text("driven: it is pushed out").click()
    expect(air.locator(".part.source", has_text="solder joint")).to_contain_text("driven")
    expect(air.locator(".answer").first).to_contain_text("driven release")


def test_the_opening_becomes_rectangular(air: Page):
    air.get_by_text("rectangular", exact=True).click()
    air.get_by_label("Width", exact=True).fill("200 mm")
    expect(air.locator(".answer").first).to_contain_text("rectangle in an infinite flange")


def test_the_hood_is_moved_by_keyboard_alone(air: Page):
    air.keyboard.press("Tab")
    expect(air.get_by_text("Skip to the page")).to_be_focused()
    for _ in range(30):
        air.keyboard.press("Tab")
        if air.evaluate("document.activeElement.classList.contains('hood')"):
            break
    row = air.locator(".part.hood").first
    expect(row).to_be_focused()
    assert row.evaluate("e => getComputedStyle(e).outlineStyle") == "solid"
    air.keyboard.press("ArrowUp")
    expect(sentence(air)).to_contain_text("110\u2009mm")
    air.keyboard.press("Shift+ArrowUp")
    expect(sentence(air)).to_contain_text("210\u2009mm")
    expect(row).to_be_focused()


def test_the_scene_takes_the_same_keys(air: Page):
    air.locator(".scene").focus()
    air.keyboard.press("ArrowUp")
    expect(air.locator(".scene-measure")).to_have_text("110\u2009mm")


def test_two_tabs_show_the_same_draft(air: Page, shop):
    other = air.context.new_page()
    other.goto(shop.url)
    expect(other.get_by_label(DISTANCE)).to_have_value("100 mm")
    air.get_by_label(DISTANCE).fill("180 mm")
    expect(sentence(other)).to_contain_text("180\u2009mm")
    expect(other.get_by_label(DISTANCE)).to_have_value("180 mm")


@pytest.mark.parametrize("width, height", SIZES)
def test_nothing_is_cut_off(air: Page, width: int, height: int):
    air.set_viewport_size({"width": width, "height": height})
    assert air.evaluate("document.documentElement.scrollWidth <= innerWidth")
    for name in ("Save", "Undo", "Download PDF", "Download YAML"):
        expect(air.get_by_role("button", name=name)).to_be_in_viewport(ratio=1)


def test_what_is_touched_is_large_enough(air: Page):
    small = air.evaluate(
        "[...document.querySelectorAll('button, .places a, .field input')].filter(e => e.offsetParent)"
        ".map(e => [e.textContent, (e.closest('.q-field__control') ?? e).getBoundingClientRect()])"
        ".filter(([_, r]) => r.height < 42 || r.width < 42).map(([t, r]) => `${t} ${r.width}x${r.height}`)"
    )
    assert small == []


def test_without_webgl_a_still_picture_stands_in(page: Page, shop):
    page.add_init_script(
        "const real = HTMLCanvasElement.prototype.getContext;"
        "HTMLCanvasElement.prototype.getContext = function (kind, ...rest) {"
        "  return /webgl/.test(kind) ? null : real.call(this, kind, ...rest); };"
    )
    page.goto(shop.url)
    expect(page.get_by_text("This browser has no WebGL")).to_be_visible()
    expect(page.locator(".still svg").first).to_be_visible()
    page.get_by_label(DISTANCE).fill("150 mm")
    expect(sentence(page)).to_contain_text("150\u2009mm")


def test_the_page_is_dark_where_the_system_is(air: Page):
    light = air.evaluate("getComputedStyle(document.body).backgroundColor")
    air.emulate_media(color_scheme="dark")
    dark = air.evaluate("getComputedStyle(document.body).backgroundColor")
    assert re.findall(r"\d+", light) > re.findall(r"\d+", dark)
