"""The report and its figures for every type of hood: what must be on the page, and that the figures are true."""

import io
import math
import re
from pathlib import Path
from xml.etree import ElementTree

import pytest
from pypdf import PdfReader

import curved_demo
from hoodwright.reports import assessment_pdf, close_up_svg, flow_svg, scene_svg
from hoodwright.reports.close_up import close_up_caption
from hoodwright.reports.flow_figure import flow_caption
from hoodwright.reports.words import in_system, required_words, summary
from hoodwright.tasks.assess import assess
from hoodwright.tasks.picture import picture
from hoodwright.workplace import Document
from odd_hoods import ODD_HOODS

SVG = "{http://www.w3.org/2000/svg}"
ROOT = Path(__file__).parents[2]
DEMO = (ROOT / "src/hoodwright/workplace/starters/demo.yaml").read_text(encoding="utf-8")
UNCURVED = curved_demo.demo(curved_demo.UNCURVED)
SMALLEST_TEXT = 60  # letters: a page with fewer than this beside its head and foot is nearly blank


class Told:
    """A workplace with its answer, shapes and report, made once."""

    def __init__(self, text, system="SI", paper="a4"):
        document = Document(text)
        self.workplace = document.workplace()
        self.answer = assess(self.workplace, system)
        self.shapes = picture(self.workplace)
        pdf = assessment_pdf(document, self.answer, self.workplace, paper)
        self.pages = [" ".join(page.extract_text().split()) for page in PdfReader(io.BytesIO(pdf)).pages]
        self.text = " ".join(self.pages)

    def hood(self, name):
        return next(hood for hood in self.answer.hoods if hood.name == name)

    def close_up(self, name):
        return ElementTree.fromstring(close_up_svg(self.shapes, name, self.answer.system))


@pytest.fixture(scope="module")
def odd():
    return Told(ODD_HOODS)


@pytest.fixture(scope="module")
def demo():
    return Told(UNCURVED)


@pytest.fixture(scope="module")
def american():
    return Told(ODD_HOODS, "US", "us-letter")


def words(root):
    return ["".join(element.itertext()) for element in root.iter(f"{SVG}text")]


def section(told, name):
    """The part of the report about one hood."""
    rest = told.text[told.text.index(f"Does the {name} get enough air?") + 40 :]
    ends = (rest.find(mark) for mark in ("get enough air?", "What does the run ask"))
    return rest[: min(end for end in ends if end > 0)]


@pytest.mark.parametrize("which", ["odd", "demo", "american"])
def test_no_page_is_nearly_blank(which, request):
    told = request.getfixturevalue(which)
    for page in told.pages[:-1]:
        body = re.sub(r"File: .*?SHA-256 of the file: \w+", "", page)
        assert len(body) > SMALLEST_TEXT


def test_first_page_holds_every_sentence_and_the_scene(demo):
    first = " ".join(demo.pages[0].split())
    for hood in demo.answer.hoods:
        assert hood.name in first
    assert "The scene from the front left" in first
    assert "Of 5 hoods" in first and "glue cabinet" in first


def test_what_is_computed_as_built_is_told_on_the_first_page():
    curved = Told(DEMO)
    assert all(hood.name in curved.pages[0] for hood in curved.answer.hoods)
    assert "computed as built, with dirty filters" in curved.pages[0]
    assert "falls short at 2 (glue cabinet, buff hood)" in summary(curved.answer.hoods)


def test_numbers_join_answers_and_scene(demo):
    scene = ElementTree.fromstring(scene_svg(demo.shapes, "SI", with_key=False))
    assert {"1", "2", "3", "4", "5"} <= set(words(scene))
    keyed = " ".join(words(ElementTree.fromstring(scene_svg(demo.shapes, "SI"))))
    for hood in demo.answer.hoods:
        assert hood.name in keyed


def test_numbers_in_the_scene_do_not_cover_each_other(demo):
    scene = ElementTree.fromstring(scene_svg(demo.shapes, "SI", with_key=False))
    discs = [c for c in scene.iter(f"{SVG}circle") if c.get("r") == "8.5"]
    places = [(float(c.get("cx")), float(c.get("cy"))) for c in discs]
    assert len(places) == 5
    assert min(math.dist(a, b) for i, a in enumerate(places) for b in places[i + 1 :]) > 17


def test_needs_that_nothing_tells_are_not_called_zero(odd):
    hood = odd.hood("cut catcher")
    figure = words(ElementTree.fromstring(flow_svg(hood, "SI")))
    assert "cannot be told" in figure and not any(w.startswith("≥ 0") for w in figure)
    assert "nothing is drawn" in flow_caption(hood)
    assert "required cannot be told" in odd.text
    assert required_words(hood.worst, "SI") == "cannot be told"


def test_openings_of_an_enclosure_have_their_inward_velocity(odd):
    told, hood = section(odd, "robot cell"), odd.hood("robot cell")
    area = 0.4 * 0.3 + 3 * math.pi / 4 * 0.06**2 + 0.9 * 0.01
    assert hood.openings[0].velocity == pytest.approx(700 / 3600 / area, rel=1e-9)
    assert hood.openings[0].velocity_today == pytest.approx(650 / 3600 / area, rel=1e-9)
    for part in ("3 × cable port", "gap under the door", "main opening", f"{hood.openings[0].velocity:.3g}"):
        assert part in told
    assert "Not drawn" in close_up_caption(odd.shapes, "robot cell")


def test_capturing_hoods_have_no_openings_table(odd):
    assert odd.hood("tray slot").openings == ()
    assert "How fast does the air go in?" not in section(odd, "tray slot")


def test_entry_of_slots_is_shown_line_by_line(odd):
    told = section(odd, "tray slot")
    assert len(odd.hood("tray slot").entry_lines) >= 2
    assert "(A duct / A slots)²" in told and "2 slots" in told


def test_a_filter_in_the_hood_is_shown(odd):
    assert "filter in downdraught table" in section(odd, "downdraught table")


def test_hints_stand_in_a_table_with_flow_power_and_make_up_air(odd):
    told = section(odd, "corner hood")
    assert "change required flow fan power then make-up air" in told
    assert "through the same ducts the fan then takes" not in told


def test_every_plain_line_can_be_typed(odd):
    law = odd.hood("corner hood").needs[0].laws[0]
    told = section(odd, "corner hood").replace("\u200b", "")
    lines = re.findall(r"type: ([0-9.+*/^() a-z,-]+?) (?=Holds|Exact|[A-Z])", told)
    assert lines
    value = eval(lines[0].replace("^", "**"), {"sqrt": math.sqrt})
    assert value == pytest.approx(law.flow, rel=1e-3)


def test_close_up_of_a_slot_shows_width_length_and_distance(odd):
    shown = words(odd.close_up("tray slot"))
    assert "40\u2009mm" in shown and "by 900\u2009mm" in shown
    distance = odd.hood("tray slot").needs[0].distance
    assert any(f"{1000 * distance:.0f}\u2009mm" in w for w in shown)
    assert "along its slot" in odd.close_up("tray slot").find(f"{SVG}desc").text


def test_close_up_of_a_table_that_looks_up_is_level(odd):
    root = odd.close_up("downdraught table")
    assert "looks up" in root.find(f"{SVG}desc").text
    assert "Seen level" in close_up_caption(odd.shapes, "downdraught table")
    opening = max((el for el in root.iter(f"{SVG}line") if el.get("stroke-width") == "2.6"), key=lambda el: 1)
    assert float(opening.get("y1")) == pytest.approx(float(opening.get("y2")), abs=0.5)
    body = next(root.iter(f"{SVG}polygon")).get("points")
    assert max(float(p.split(",")[1]) for p in body.split()) > float(opening.get("y1"))


def test_push_nozzle_is_drawn_and_blows_towards_the_hood(odd):
    root = odd.close_up("tank hood")
    assert "push nozzle" in words(root)
    assert "push nozzle" in root.find(f"{SVG}desc").text
    assert "push nozzle" not in words(odd.close_up("tray slot"))


def test_thrown_streams_have_an_arrow(odd):
    root = odd.close_up("cut catcher")
    assert "throws" in root.find(f"{SVG}desc").text
    heads = [el for el in root.iter(f"{SVG}polygon") if len(el.get("points").split()) == 3]
    assert len(heads) == 1


def test_wheels_are_round_and_beside_their_hood(demo):
    root = demo.close_up("buff hood")
    outlines = [el.get("points").split() for el in root.iter(f"{SVG}polyline")]
    wheel = max(outlines, key=len)
    xs, ys = ([float(p.split(",")[i]) for p in wheel] for i in (0, 1))
    assert max(xs) - min(xs) == pytest.approx(max(ys) - min(ys), rel=0.02)


def test_every_figure_is_whole_and_inside_its_frame(odd, demo):
    for told in (odd, demo):
        for hood in told.shapes.hoods:
            root = told.close_up(hood.name)
            width, height = float(root.get("width")), float(root.get("height"))
            assert height < 400
            for el in root.iter(f"{SVG}line"):
                assert all(-1 <= float(el.get(k)) <= width + 1 for k in ("x1", "x2"))
                assert all(-1 <= float(el.get(k)) <= height + 1 for k in ("y1", "y2"))
            for el in root.iter(f"{SVG}text"):
                assert 0 <= float(el.get("y")) <= height


def test_each_duct_has_one_block_and_its_numbers_once(odd):
    told = odd.text[odd.text.index("How were the pressures reckoned?") :]
    for duct in odd.answer.ducts:
        assert told.count(f"{duct.name}, {duct.start_from} to {duct.to}") == 1
    assert told.count("static pressure at the end") == len(odd.answer.ducts)
    assert told.count("(A duct / A slots)²") == 0  # stands with the hood


def test_junctions_give_three_ways_with_numbers(demo):
    start = demo.text.index("How do the branches balance?")
    told = demo.text[start : demo.text.index("How were the pressures reckoned?")]
    for junction in demo.answer.junctions:
        assert f"{junction.name}. {junction.governing} governs" in told
    for word in ("Another size:", "More flow:", "Damper:"):
        assert told.count(word) >= len(demo.answer.junctions)


def test_fans_say_what_to_look_for_in_a_catalogue(demo):
    assert demo.text.count("In a catalogue at 1.2\u2009kg/m³ look for") + demo.text.count(
        "In a catalogue at 1.2 kg/m³ look for"
    ) == len(demo.answer.fans)


def test_materials_are_listed(demo):
    assert "What is it made of?" in demo.text and "elbow 90 deg" in demo.text


SI_UNITS = re.compile(r"[\d.][\u2009 ](?:mm|m/s|m³/h|Pa|kPa|kW|W|°C|kg/m³|m²|µPa)(?![\w³])")


def test_no_si_is_left_in_the_words_of_us_reports(american):
    text = american.text
    told = text[: text.index("Where do the numbers come from?")]
    left = [told[max(0, m.start() - 40) : m.end() + 2] for m in SI_UNITS.finditer(told)]
    results_or_both = re.compile(r"= [-−]?[\d.e-]+[\u2009 ]\S+.{0,3}$| \($")  # of lines in SI, and "0.38 m/s (75 fpm)"
    assert [words for words in left if not results_or_both.search(words)] == []


def test_ranges_follow_the_units():
    assert in_system("Holds up to 0.5 m, in air of 20 degC", "US") == "Holds up to 19.7\u2009in, in air of 68\u2009°F"
    assert in_system("Holds up to 0.5 m", "SI") == "Holds up to 0.5 m"
    assert in_system("0.5 m3/s and 2 m² stay", "US") == "0.5 m3/s and 2 m² stay"


def test_summary_counts_and_names_what_falls_short(demo):
    told = summary(demo.answer.hoods)
    assert told.startswith("Of 5 hoods")
    assert "falls short at 1 (glue cabinet)" in told and "falls short at 1 (buff hood)" in told
    assert summary(demo.answer.hoods[:1]) == ""


def many(count):
    hood = (
        "  - {{name: {name}, type: capturing, serves: [joint], opening: {{round: 100 mm}}, flange: 100 mm, "
        "at: [{x} m, 1.9 m, 1 m], facing: [0, -1, 0], intended_flow: 320 m3/h}}\n"
    )
    names = [f"溶接 hood of a rather long name number {i}" for i in range(count)]
    hoods = "".join(hood.format(name=name, x=round(1 + 0.4 * i, 2)) for i, name in enumerate(names))
    return (
        "hoodwright: 1\nname: Many\nroom: {size: [12 m, 5 m, 3 m]}\ncontaminants: [{name: fume, kind: fume}]\n"
        "sources: [{name: joint, contaminant: fume, at: [2 m, 1.8 m, 1 m], dispersion: gentle}]\n"
        f"hoods:\n{hoods}"
    ), names


def test_twenty_hoods_stand_in_a_table_on_the_first_page():
    text, names = many(20)
    told = Told(text)
    assert "Of 20 hoods" in told.pages[0]
    for i in range(20):
        assert f"number {i}" in told.pages[0] + told.pages[1]
    assert len(names) == 20 and len(told.pages) < 60
