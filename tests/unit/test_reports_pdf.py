"""The PDF of the assess job: what a reader finds on it, and that the same input gives the same bytes."""

import dataclasses
import hashlib
import io
import math
import subprocess
import sys
from pathlib import Path

import pytest
from pypdf import PdfReader

from hoodwright.errors import HoodwrightError, InputError
from hoodwright.reports import assessment_pdf
from hoodwright.reports.pdf import typeset
from hoodwright.results import Caution, Outcome, Quantity, Verdict
from hoodwright.sources import find_source
from hoodwright.tasks.assessment import (
    AirAnswer,
    Assessment,
    Bound,
    DuctAnswer,
    FanAnswer,
    HoodAnswer,
    JunctionAnswer,
    LawNeed,
    Line,
    SourceNeed,
)
from hoodwright.workplace import Document

TEXT = """hoodwright: 1
name: Test room
about: Invented for this test.
room: {size: [4 m, 5 m, 3 m]}
people: [{name: worker, at: [2 m, 1 m]}]
contaminants: [{name: fume, kind: fume}]
surfaces: [{name: bench, corner: [1 m, 1.4 m, 0.9 m], sides: [[1 m, 0 m, 0 m], [0 m, 0.6 m, 0 m]]}]
sources:
  - {name: joint, contaminant: fume, at: [2 m, 1.8 m, 1 m], dispersion: gentle}
hoods:
  - {name: nozzle, type: capturing, serves: [joint], opening: {round: 100 mm}, flange: 100 mm,
     at: [2 m, 1.9 m, 1 m], facing: [0, -1, 0], intended_flow: 320 m3/h}
"""
DUCTS = """ducts:
  - {name: branch, from: nozzle, to: fan, round: 100 mm, length: 3 m}
  - {name: stack, from: fan, to: outside, round: 100 mm, length: 2 m}
fans: [{name: fan, efficiency: 55 %}]
"""
MET = Outcome(Verdict.MEETS, "enough is enough")
SHORT = Outcome(Verdict.SHORT, "by at least 1 m3/h")
UNKNOWN = Outcome(Verdict.CANNOT_TELL, "nothing was read today")
LAW = LawNeed(
    "DallaValle, flanged",
    0.0808,
    Line("Q = 0.75 V (10 X² + A)", "0.75 x 1 x (10 x 0.1² + 0.00785) = 0.0808 m3/s", "exam-equations, flanged opening"),
)
BOUND = Bound(0.0628, 0.1756, "it lies outside the equations' range", "potential-flow, far-field bound")
NEED = SourceNeed(
    "joint", 0.1, 0.0, 1.0, "gentle release, upper end", "capture-table, table 2.3", (LAW,), BOUND, velocity=1.1
)
HOOD = HoodAnswer(
    name="nozzle",
    type="capturing",
    needs=(NEED,),
    design_flow=0.0889,
    intended=0.0889,
    commissioned=Quantity(0.0905, "flow", 0.0045, "read on site, 2026-03-02"),
    today=None,
    suction=None,
    suction_line=None,
    enough=MET,
    met=UNKNOWN,
    sentence="The nozzle needs this much and is meant to get that much.",
    hints=(),
)
PRACTICE = "common-practice, practitioner's review"
ANSWER = Assessment(
    workplace="Test room",
    about="Invented for this test.",
    system="SI",
    version="9.8.7",
    air=AirAnswer(294.15, 98590.0, 0.007, 1.163, 1.8e-5),
    hoods=(HOOD,),
    ducts=(),
    junctions=(),
    fans=(),
    cautions=(
        Caution("fume", "fume needs care", PRACTICE),
        Caution("Test room", "this room needs care", "imc-502, 502.7.3"),
    ),
    sources=("exam-equations", "capture-table", "common-practice", "imc-502"),
)
DROP = Line("friction = f L / D x VP", "0.02 x 3 / 0.1 x 74 = 44.4 Pa", "colebrook39, 3.7 and 2.51; roughness-table")
WALK = Line("FTP = TP out - TP in", "149 - (-688) = 837 Pa", "definition")


def duct(name, start, to, first, last):
    return DuctAnswer(name, start, to, "round 100 mm", 0.0889, 11.3, 74.0, first, last, 10.2, "fume", MET, (DROP,))


WITH_DUCTS = dataclasses.replace(
    ANSWER,
    ducts=(duct("branch", "nozzle", "fan", -110.0, -155.0), duct("stack", "fan", "outside", 30.0, 0.0)),
    junctions=(
        JunctionAnswer(
            "J9", "branch", (("branch", -155.0), ("other", -120.0)), 0.77, "resize", (("other", 0.05),), "balance-rule"
        ),
    ),
    fans=(FanAnswer("fan", 0.0889, 111.0, 222.0, 205.0, 20.0, 0.55, 36.0, (WALK,)),),
    cautions=(Caution("stack", "tall stacks need care", PRACTICE), Caution("fan", "read its curve", PRACTICE)),
)


def pages(pdf):
    return [" ".join(page.extract_text().split()) for page in PdfReader(io.BytesIO(pdf)).pages]


def made(answer=ANSWER, text=TEXT, paper="a4"):
    document = Document(text)
    return assessment_pdf(document, answer, document.workplace(), paper)


def words(answer=ANSWER, text=TEXT, paper="a4"):
    return " ".join(pages(made(answer, text, paper)))


def changed_hood(**changes):
    return dataclasses.replace(ANSWER, hoods=(dataclasses.replace(HOOD, **changes),))


def test_question_and_answer_stand_on_the_first_page():
    first = pages(made())[0]
    assert first.index("Will these hoods catch what the sources give off?") < first.index(HOOD.sentence)
    assert "meets the need" in first and "cannot tell" in first


def test_invented_workplaces_say_so_on_the_first_page():
    assert "Invented data." in pages(made())[0]
    plain = dataclasses.replace(ANSWER, about="A real room.")
    assert "Invented data." not in words(plain)


def test_every_page_names_version_checksum_file_and_its_number(tmp_path):
    path = tmp_path / "room.yaml"
    path.write_text(TEXT, encoding="utf-8")
    document = Document.open(path)
    found = pages(assessment_pdf(document, ANSWER, document.workplace()))
    checksum = hashlib.sha256(TEXT.encode()).hexdigest()
    for i, page in enumerate(found, 1):
        assert checksum in page and "9.8.7" in page and "room.yaml" in page
        assert f"Page {i} of {len(found)}" in page
        assert str(tmp_path) not in page


def test_four_flows_are_kept_apart():
    told = words()
    for name in ("required", "intended", "commissioned", "today"):
        assert name in told
    assert "326 m³/h ± 16 m³/h read on site, 2026-03-02" in told
    assert "today not given" in told


def test_equations_can_be_recomputed_and_name_their_source():
    told = words()
    assert "Q = 0.75 V (10 X² + A)" in told
    assert "0.75 × 1 × (10 × 0.1² + 0.00785) = 0.0808 m³/s" in told
    assert "[exam-equations, flanged opening] read" in told


def test_every_cited_source_is_given_in_full_with_how_it_was_read():
    told = words(WITH_DUCTS)
    for key in ("exam-equations", "capture-table", "colebrook39", "roughness-table", "balance-rule", "transport-table"):
        source = find_source(key)
        assert f"[{key}]" in told and source.title in told and source.how in told
    assert "from memory: to be confirmed" in told


def test_cautions_stand_beside_what_they_concern():
    found = pages(made())
    assert "This room needs care" in found[0] and "Fume needs care" not in found[0]
    told = words()
    assert told.index("Does the nozzle get enough air?") < told.index("Fume needs care")
    told = words(WITH_DUCTS, TEXT + DUCTS)
    assert told.index("How were the pressures reckoned?") < told.index("Tall stacks need care")


def test_what_is_not_covered_and_room_for_signatures():
    told = words()
    assert "What does this report not cover?" in told and "licensed professional practice" in told
    for blank in ("Prepared by: name", "Checked by: name", "role", "signature", "date"):
        assert blank in told


def test_ducts_junctions_and_fans():
    told = words(WITH_DUCTS, TEXT + DUCTS)
    for part in ("branch nozzle to fan", "J9. branch governs", "−155 Pa", "pressures 0.77", "36 W", "drawn plainly"):
        assert part in told
    assert "149 - (-688) = 837 Pa" in told


def test_without_ducts_the_report_says_so():
    told = words()
    assert "The file has no ducts" in told and "drawn plainly" not in told


@pytest.mark.parametrize("most, said", [(0.1756, "632 m³/h"), (None, "unknown")])
def test_outside_every_range_the_certain_limits_are_given(most, said):
    need = dataclasses.replace(NEED, laws=(), bound=dataclasses.replace(BOUND, most=most), velocity=None)
    told = words(changed_hood(needs=(need,), enough=SHORT))
    assert "outside the equations' range" in told and "falls short" in told
    assert "at least 226 m³/h" in told and said in told


@pytest.mark.parametrize("least, most, angle", [(0.0, None, math.pi), (1e-9, 1e9, 0.0)])
def test_limits_of_any_size_can_be_drawn(least, most, angle):
    need = dataclasses.replace(NEED, laws=(), off_axis=angle, bound=Bound(least, most, "why", BOUND.source))
    empty = changed_hood(needs=(need,), intended=None, commissioned=None, design_flow=0.0)
    assert "No equation is used here: why." in words(empty)


def test_no_hints_are_told_as_such():
    assert "No hint is given" in words()


def test_us_units_and_letter_paper():
    answer = dataclasses.replace(ANSWER, system="US")
    pdf = made(answer, paper="us-letter")
    told = " ".join(pages(pdf))
    assert "188 cfm" in told and "m³/h" not in told and "3 ft" in told
    assert [float(x) for x in PdfReader(io.BytesIO(pdf)).pages[0].mediabox[2:]] == [612.0, 792.0]


def test_a4_is_the_usual_paper():
    box = PdfReader(io.BytesIO(made())).pages[0].mediabox
    assert (round(float(box[2])), round(float(box[3]))) == (595, 842)


def test_unknown_paper_is_refused():
    with pytest.raises(InputError, match="paper 'a5' is not known; allowed: a4, us-letter"):
        made(paper="a5")


ODD = '#panic("x") *b* _e_ $x$ \\ <a> & @r [y] `z` //c "\' } { Ω ж ½'


def test_odd_characters_are_printed_as_they_are():
    hood = dataclasses.replace(HOOD, name=ODD, sentence=f"The {ODD}, far away.", hints=())
    answer = dataclasses.replace(ANSWER, workplace=ODD, about=ODD, hoods=(hood,))
    quoted = "'" + ODD.replace("'", "''") + "'"
    told = words(answer, TEXT.replace("nozzle", quoted))
    assert told.count(" ".join(ODD.split())) >= 4


def test_letters_that_turn_the_reading_direction_are_made_visible():
    told = words(dataclasses.replace(ANSWER, workplace="good\u202ereppib\x07"))
    assert "good¤reppib¤" in told


def test_letters_no_bundled_font_has_do_not_stop_the_report():
    assert made(dataclasses.replace(ANSWER, workplace="溶接 😀")).startswith(b"%PDF")


def test_long_lists_flow_over_pages():
    hoods = tuple(dataclasses.replace(HOOD, sentence=f"Sentence {i}.", hints=()) for i in range(40))
    needs = dataclasses.replace(HOOD, needs=(NEED,) * 40)
    found = pages(made(dataclasses.replace(ANSWER, hoods=(*hoods, needs))))
    assert len(found) > 30
    assert all(any(f"Sentence {i}." in page for page in found) for i in range(40))


def test_a_fault_in_a_template_gives_the_line(monkeypatch):
    monkeypatch.setattr("hoodwright.reports.pdf._template", lambda name: b"fine\n#panic(1)")
    with pytest.raises(HoodwrightError, match=r"could not be set: .*main\.typ:2:1"):
        typeset({})


def test_same_input_same_bytes_and_other_input_other_bytes():
    assert made() == made()
    assert made() != made(text=TEXT + "# a comment\n")
    assert made() != made(dataclasses.replace(ANSWER, version="9.8.8"))


def test_same_bytes_in_two_processes():
    code = (
        "import sys, hashlib; sys.path.insert(0, sys.argv[1]); import test_reports_pdf as t; "
        "print(hashlib.sha256(t.made(t.WITH_DUCTS, t.TEXT + t.DUCTS)).hexdigest())"
    )
    here = hashlib.sha256(made(WITH_DUCTS, TEXT + DUCTS)).hexdigest()
    folder = str(Path(__file__).parent)
    for seed in ("1", "2"):
        run = subprocess.run(
            [sys.executable, "-c", code, folder],
            env={"PYTHONHASHSEED": seed, "TZ": "Pacific/Apia"},
            capture_output=True,
            text=True,
            check=True,
        )
        assert run.stdout.strip() == here
