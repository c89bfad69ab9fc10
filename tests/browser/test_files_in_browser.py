"""Files in the browser: choose, save, conflict, download, faults."""

import json
import urllib.request

import pytest
from playwright.sync_api import Page, expect

DISTANCE = "Distance to the solder joint, along the hood's axis"


@pytest.fixture
def air(page: Page, shop) -> Page:
    """The Air page, ready to be typed in."""
    page.goto(shop.url)
    expect(page.get_by_label(DISTANCE)).to_have_value("100 mm")
    return page


def edit(page: Page) -> None:
    page.get_by_label(DISTANCE).fill("150 mm")
    expect(page.get_by_text("unsaved edits")).to_be_visible()


def change_on_disk(shop) -> str:
    text = shop.file.read_text(encoding="utf-8").replace("flange: 100 mm", "flange: 90 mm")
    shop.file.write_text(text, encoding="utf-8")
    return text


def test_the_yaml_of_the_draft_is_downloaded(air: Page):
    edit(air)
    with air.expect_download() as found:
        air.get_by_role("button", name="Download YAML").click()
    assert found.value.suggested_filename == "demo.yaml"
    text = found.value.path().read_text(encoding="utf-8")
    assert "at: [2.0 m, 1.95 m, 1.06 m]    # 100 mm from the joint" in text


def test_the_pdf_is_downloaded(air: Page):
    with air.expect_download(timeout=60_000) as found:
        air.get_by_role("button", name="Download PDF").click()
    assert found.value.suggested_filename == "demo.pdf"
    assert found.value.path().read_bytes().startswith(b"%PDF")


def test_a_change_on_disk_is_noticed_and_reload_takes_it(air: Page, shop):
    edit(air)
    change_on_disk(shop)
    bar = air.get_by_role("alert")
    expect(bar).to_contain_text("demo.yaml changed on disk")
    expect(bar).to_contain_text("Your edits are kept here")
    bar.get_by_role("button", name="Reload from disk").click()
    expect(air.get_by_label("Flange width", exact=True)).to_have_value("90 mm")
    expect(air.get_by_label(DISTANCE)).to_have_value("100 mm")


def test_saving_over_a_changed_file_asks_first(air: Page, shop):
    edit(air)
    theirs = change_on_disk(shop)
    air.get_by_role("button", name="Save", exact=True).click()
    expect(air.get_by_role("alert")).to_contain_text("What shall be done?")
    assert shop.file.read_text(encoding="utf-8") == theirs
    air.get_by_role("button", name="Overwrite the file").click()
    expect(air.get_by_text("as on disk")).to_be_visible()
    assert "1.95 m" in shop.file.read_text(encoding="utf-8")


def test_a_copy_under_another_name_leaves_both(air: Page, shop):
    edit(air)
    theirs = change_on_disk(shop)
    air.get_by_role("button", name="Save", exact=True).click()
    air.get_by_label("another name").fill("mine.yaml")
    air.get_by_role("button", name="Save under this name").click()
    expect(air).to_have_url(f"{shop.url}/?file=mine.yaml")
    expect(air.get_by_label(DISTANCE)).to_have_value("150 mm")
    assert shop.file.read_text(encoding="utf-8") == theirs
    assert "1.95 m" in (shop.folder / "mine.yaml").read_text(encoding="utf-8")


def test_files_with_faults_are_listed_with_their_faults(air: Page, shop):
    bad = shop.file.read_text(encoding="utf-8").replace("flange: 100 mm", "flange: 3 kg")
    (shop.folder / "bad.yaml").write_text(bad, encoding="utf-8")
    (shop.folder / "other.yaml").write_text("services: {}", encoding="utf-8")
    air.get_by_title("Choose another workplace file").click()
    dialog = air.get_by_role("dialog")
    expect(dialog).to_contain_text("1 fault, cannot be answered yet")
    expect(dialog).not_to_contain_text("other.yaml")
    dialog.get_by_role("button", name="bad.yaml").click()
    expect(air.get_by_role("heading", level=1)).to_have_text("bad.yaml has 1 fault; mend it first")
    expect(air.locator(".faults")).to_contain_text("hoods[bench nozzle].flange")
    with air.expect_download() as found:
        air.get_by_role("button", name="Download YAML").click()
    assert found.value.path().read_text(encoding="utf-8") == bad
    expect(air.get_by_role("button", name="Read the file again")).to_be_visible()
    (shop.folder / "bad.yaml").write_text(shop.file.read_text(encoding="utf-8"), encoding="utf-8")
    expect(air.get_by_label(DISTANCE)).to_have_value("100 mm")


def test_ducts_have_a_plot_and_cards(air: Page):
    air.get_by_role("link", name="Ducts").click()
    air.get_by_text("By hand: what pressure does the air need").click()
    by_hand = air.locator(".plot").last
    expect(by_hand.locator("svg")).to_be_visible()
    expect(by_hand).to_contain_text("gauge pressure (Pa)")
    for name in (
        "roof fan",
        "booth fan",
        "J1",
        "J2",
        "J3",
        "A1",
        "B1",
        "C1",
        "D1",
        "main",
        "link",
        "stack",
        "L1",
        "L2",
    ):
        expect(air.locator(".card").filter(has=air.get_by_role("heading", name=name, exact=True))).to_be_visible()
    air.locator(".card", has_text="bench nozzle to J1").get_by_text("Line by line").click()
    expect(air.get_by_text("SP at the end = SP at the start - losses").first).to_be_visible()
    air.get_by_role("button", name="US", exact=True).click()
    expect(air.locator(".plot").last).to_contain_text("gauge pressure (in wg)")


def test_machines_read_json(shop):
    with urllib.request.urlopen(f"{shop.url}/api/assessment") as reply:
        answer = json.load(reply)
    assert [hood["name"] for hood in answer["hoods"]] == [
        "bench nozzle",
        "crucible canopy",
        "glue cabinet",
        "buff hood",
        "lacquer booth",
    ]
