"""The PDF of the computed air: what a reader finds on it, and what must never stand there."""

import io
import re

import pytest
from pypdf import PdfReader
from typer.testing import CliRunner

from hoodwright.cli import app
from hoodwright.errors import InputError
from hoodwright.flow import Plan
from hoodwright.reports import capture_pdf
from hoodwright.reports.capture_content import capture_content
from hoodwright.reports.capture_figure import capture_svg
from hoodwright.reports.pdf import facts_of
from hoodwright.tasks.capture.job import capture_of
from hoodwright.tasks.capture.pages import pages_of
from hoodwright.tasks.picture import picture
from hoodwright.workplace import Document

FEW = Plan(realisations=78, particles=1)
BANNER = "NOT VALIDATED FOR CAPTURE"
SHOP = """\
hoodwright: 1
name: Test shop
about: Invented for this test.
room: {size: [6 m, 3 m, 2.5 m], draught: {towards: [1, 0, 0], speed: 0.05 m/s}}
contaminants: [{name: fume, kind: fume}]
surfaces: [{name: bench, corner: [1 m, 1 m, 0.9 m], sides: [[1 m, 0 m, 0 m], [0 m, 0.6 m, 0 m]]}]
sources:
  - {name: joint, contaminant: fume, at: [1.5 m, 1.3 m, 1.1 m], dispersion: gentle}
  - {name: pot, contaminant: fume, at: [4.5 m, 1.3 m, 1.1 m], dispersion: still}
hoods:
  - {name: nozzle, type: capturing, serves: [joint], opening: {round: 100 mm},
     at: [1.5 m, 1.4 m, 1.1 m], facing: [0, -1, 0], intended_flow: 300 m3/h, today: {flow: 200 m3/h}}
  - {name: box, type: enclosing, form: cabinet, serves: [pot], opening: {rectangle: [600 mm, 300 mm]},
     inside: [0.8 m, 0.6 m, 0.5 m], at: [4.5 m, 1.1 m, 1.2 m], facing: [0, -1, 0], intended_flow: 600 m3/h}
"""


def made(text=SHOP, paper="a4", **asked):
    document = Document(text)
    workplace = document.workplace()
    return capture_pdf(document, capture_of(workplace, plan=FEW, **asked), workplace, paper)


def words_of(pdf):
    return [" ".join(page.extract_text().split()) for page in PdfReader(io.BytesIO(pdf)).pages]


@pytest.fixture(scope="module")
def whole():
    return made()


@pytest.fixture(scope="module")
def pages(whole):
    return words_of(whole)


@pytest.fixture(scope="module")
def content():
    document = Document(SHOP)
    workplace = document.workplace()
    report = capture_of(workplace, plan=FEW)
    return capture_content(report, pages_of(report, workplace), picture(workplace), facts_of(document, workplace))


def test_every_page_has_the_banner_its_number_and_the_checksum(pages):
    assert len(pages) == 4
    for number, page in enumerate(pages, 1):
        assert page.count(BANNER) == 1 and f"Page {number} of 4" in page
        assert Document(SHOP).checksum in page and "Made by hoodwright" in page


def test_each_pair_has_its_page(pages):
    assert "What does the air do with what the sources give off?" in pages[0] and "Invented for this test" in pages[0]
    assert "Does the nozzle catch what the joint gives off?" in pages[1]
    assert "Does the box catch what the pot gives off?" in pages[2]
    assert "And at other distances?" in pages[1] and "And at other distances?" not in pages[2]


def test_no_per_cent_where_none_may_be_claimed(pages, content):
    assert "%" not in pages[2] and "cannot tell" in pages[2]
    box = content["pages"][1]
    assert not box["told"] and "%" not in re.sub(r"<[^>]*>", "", box["smoke"]) and box["curve"] == ""
    assert next(row for row in content["overview"] if row["hood"] == "box")["interval"] == "-"


def test_an_enclosure_is_judged_by_its_openings(pages):
    assert "How fast does the air go in?" in pages[2] and "main opening" in pages[2]


def test_handbook_stands_beside(pages, content):
    assert pages[1].count("By the handbook") == 1
    assert all(page["handbook"]["word"] for page in content["pages"])


def test_definition_is_complete(pages, content):
    told = pages[3]
    for words in ("78 moments with 1 particles", "seed 1", "after 15", "flow ±", "place of the source ±", "draught ±"):
        assert words in told
    asked = dict(content["pages"][0]["asked"])
    assert asked["escape radius"] == "450\u2009mm" and asked["flow"] == "300\u2009m³/h"
    assert re.fullmatch(r"\d+, the smallest [\d.]+\u2009mm", asked["cells"])


def test_limits_and_signature_stand_last(pages):
    for words in ("Local codes and licensed professional practice", "calibration, not a validation", "Prepared by"):
        assert words in pages[-1]
    assert not any(re.search(r"\b(safe|safely|pass|passes)\b", page) for page in pages)


def test_same_input_same_bytes(whole):
    assert made() == whole


def test_us_units_on_letter():
    text = SHOP.replace("about:", "units: US\nabout:")
    pdf = made(text, "us-letter", hood="nozzle")
    box = PdfReader(io.BytesIO(pdf)).pages[0].mediabox
    assert (float(box.width), float(box.height)) == (612.0, 792.0)
    read = " ".join(words_of(pdf))
    assert "177 cfm" in read and "3.94 in" in read and "m³/h" not in read and "17.7 in" in read


def test_distances_that_were_asked_for_are_the_rows():
    document = Document(SHOP)
    workplace = document.workplace()
    report = capture_of(workplace, hood="nozzle", distances=[0.05, 0.1, 0.2], plan=FEW)
    page = pages_of(report, workplace)[0]
    assert not page.now.moved and page.curve.answers == report.answers
    facts = facts_of(document, workplace)
    rows = capture_content(report, [page], picture(workplace), facts)["pages"][0]["rows"]
    assert [row["distance"] for row in rows] == ["50\u2009mm", "100\u2009mm", "200\u2009mm"]
    assert [row["here"] for row in rows] == [False, True, False]


def test_curve_marks_where_it_stands_and_what_the_handbook_says():
    workplace = Document(SHOP).workplace()
    report = capture_of(workplace, hood="nozzle", plan=FEW)
    page = pages_of(report, workplace)[0]
    svg = capture_svg(page.curve, page.now)
    assert "it stands here" in svg and "handbook" in svg and "not validated for capture" in svg


def test_todays_flow_is_drawn_and_said():
    workplace = Document(SHOP).workplace()
    report = capture_of(workplace, hood="nozzle", plan=FEW, today=True)
    page = pages_of(report, workplace)[0]
    assert page.now.flow == page.still.flow == pytest.approx(200 / 3600)


def test_paper_must_be_known():
    with pytest.raises(InputError, match="allowed: a4, us-letter"):
        made(paper="a5", hood="box")


def test_command_writes_the_pdf(tmp_path):
    file, target = tmp_path / "shop.yaml", tmp_path / "air.pdf"
    file.write_text(SHOP, encoding="utf-8")
    asked = ["capture", str(file), "--hood", "box", "--pdf"]
    result = CliRunner().invoke(app, [*asked, str(target)])
    assert result.exit_code == 0 and target.read_bytes()[:4] == b"%PDF"
    assert "Report written:" in result.stdout
    with pytest.raises(InputError, match=r"ends in \.pdf"):
        CliRunner().invoke(app, [*asked, "air.doc"], catch_exceptions=False)


def test_distances_that_nobody_asked_for_leave_out_what_stands_there():
    person = "people: [{name: Ann, at: [1.5 m, 0.9 m]}]\nsurfaces:"
    workplace = Document(SHOP.replace("surfaces:", person)).workplace()
    report = capture_of(workplace, hood="nozzle", plan=FEW)
    page = pages_of(report, workplace)[0]
    assert page.now.told and page.curve.answers
    assert all(answer.distance < 0.5 for answer in page.curve.answers)
