"""Hoods of wheels, and hoods in the way of a thrown stream, by numbers worked out on paper from the tables."""

import dataclasses
import math

import pytest

from hoodwright.results import Verdict
from hoodwright.tasks.assess import assess
from hoodwright.tasks.need import needs_of
from hoodwright.workplace import parse_workplace

CFM = 0.3048**3 / 60
PAPER = 2e-4  # relative: the numbers below carry five digits

WHEEL = "wheel: {work: grinding, diameter: 300 mm, width: 50 mm}"
THROWS = "throws: {speed: 20 m/s, grain: 300 um, grain_density: 7800 kg/m3, towards: [0, 1, 0]}"
SHOP = f"""hoodwright: 1
name: Shop
air: {{temperature: 20 degC, pressure: 101325 Pa}}
room: {{size: [9 m, 9 m, 3 m]}}
contaminants: [{{name: steel dust, kind: dust, hazards: [sparks]}}]
sources:
  - {{name: stone, contaminant: steel dust, at: [2 m, 2 m, 1 m], dispersion: thrown, {WHEEL}}}
hoods:
  - name: shroud
    type: receiving
    serves: [stone]
    opening: {{rectangle: [200 mm, 150 mm]}}
    at: [2 m, 2.2 m, 1 m]
    facing: [0, -1, 0]
    intended_flow: 700 m3/h
ducts:
  - {{name: A1, from: shroud, to: grinder fan, round: 125 mm, length: 3 m}}
  - {{name: stack, from: grinder fan, to: outside, round: 125 mm, length: 3 m}}
fans: [{{name: grinder fan}}]
"""


def shop(*changes: tuple[str, str], text: str = SHOP):
    for old, new in changes:
        assert old in text, old
        text = text.replace(old, new)
    return parse_workplace(text)


def plain(found):
    """An answer with plain spaces where thin ones stand before units, and whole numbers without their zero."""
    if isinstance(found, Verdict):
        return found
    if isinstance(found, str):
        return found.replace("\u2009", " ").replace(".0 mm", " mm")
    if isinstance(found, tuple):
        return tuple(plain(one) for one in found)
    if dataclasses.is_dataclass(found):
        fields = {field.name: plain(getattr(found, field.name)) for field in dataclasses.fields(found)}
        return type(found)(**fields)
    return found


def need_in(workplace, design_flow=None):
    return plain(needs_of(workplace.hoods[0], workplace, design_flow)[0])


def told(*changes):
    """Outcome, caution texts and hints of the first hood."""
    answer = plain(assess(shop(*changes)))
    return answer.hoods[0], [caution.text for caution in answer.cautions], answer.hoods[0].hints


def thrown(*changes, throws=THROWS):
    return shop((WHEEL, throws), *changes)


def test_a_grinding_wheel_asks_what_its_row_says():
    """300 mm is 11.8 in: over 9 to 16 in, 390 cfm up to 2 in (50.8 mm); 390 x 0.000471947 = 0.18406 m3/s."""
    need = need_in(shop(), 0.2)
    (law,) = need.laws
    assert law.equation == "table G-4"
    assert law.flow == pytest.approx(0.18406, rel=PAPER)
    assert law.line.filled == "wheel 0.3 m across: 390 cfm = 0.18406 m3/s"
    assert law.source == "us-1910-94, table G-4"
    assert need.place == "50 mm from"  # 200 mm less the radius
    assert need.velocity == pytest.approx(0.2 / 0.03)


def test_a_wider_wheel_asks_more_by_the_ratio():
    """4.5 in where the row has 2 in: 390 x 2.25 = 877.5 cfm = 0.41413 m3/s."""
    (law,) = need_in(shop(("width: 50 mm", "width: 4.5 in"))).laws
    assert law.flow == pytest.approx(877.5 * CFM)
    assert law.line.filled.endswith("390 cfm = 0.18406 m3/s; x 0.1143 / 0.0508 = 0.41413 m3/s")


@pytest.mark.parametrize(
    ("wheel", "equation", "cfm"),
    [
        ("{work: cutting off, diameter: 300 mm, width: 3 mm}", "table G-4", 390),
        ("{work: buffing, diameter: 300 mm, width: 75 mm}", "table G-5", 500),
        ("{work: scratch brushing, diameter: 150 mm, width: 20 mm}", "table G-5", 300),
        ("{work: single-spindle disc, diameter: 400 mm}", "table V-3", 390),
        ("{work: double-spindle disc, diameter: 400 mm}", "table V-3", 610),
        ("{work: covered vertical-spindle disc, diameter: 400 mm}", "table V-4", 500),
        ("{work: open vertical-spindle disc, diameter: 400 mm}", "table V-4", 780),
        ("{work: belt, width: 100 mm}", "table V-5", 300),
    ],
)
def test_every_kind_of_work_has_its_table(wheel, equation, cfm):
    (law,) = need_in(shop((WHEEL, f"wheel: {wheel}"))).laws
    assert (law.equation, law.flow) == (equation, pytest.approx(cfm * CFM))


@pytest.mark.parametrize(
    ("wheel", "why"),
    [
        ("{work: buffing, diameter: 1 m, width: 75 mm}", "it is 1000 mm across and the published table ends at 914 mm"),
        ("{work: single-spindle disc, diameter: 2 m}", "it is 2 m across and the published table ends at 1830 mm"),
        ("{work: belt, width: 300 mm}", "it is 300 mm wide and the published table ends at 229 mm"),
    ],
)
def test_beyond_its_table_no_flow_is_told(wheel, why):
    workplace = shop((WHEEL, f"wheel: {wheel}"))
    need = need_in(workplace)
    assert (need.laws, need.untold) == ((), f"{why}: no flow is published for it")
    assert assess(workplace).hoods[0].enough.verdict is Verdict.CANNOT_TELL


def test_the_table_is_for_a_hood_close_by():
    far, _, hints = told(("at: [2 m, 2.2 m, 1 m]", "at: [2 m, 2.6 m, 1 m]"))
    assert str(far.enough) == (
        "cannot tell: stone: its hood stands 450 mm away: the table is for a hood close by, which is taken as within "
        "300 mm"
    )
    assert [hint.change for hint in hints] == ["closer"]
    assert hints[0].text.startswith("within 300 mm of the stone and facing it, the table asks 663 m³/h")
    assert hints[0].make_up_air.value == hints[0].flow.value == pytest.approx(663 / 3600)


def test_a_hood_that_looks_away_is_told():
    away, _, hints = told(("facing: [0, -1, 0]", "facing: [0, 1, 0]"))
    assert "the hood does not look at it" in away.enough.because
    assert [hint.change for hint in hints] == ["closer"]


def test_a_hood_above_a_wheel_is_refused():
    above, _, hints = told(
        ("at: [2 m, 2.2 m, 1 m]", "at: [2 m, 2 m, 1.2 m]"), ("facing: [0, -1, 0]", "facing: [0, 0, -1]")
    )
    assert above.enough.because == "the stone throws its stream out: a hood above it that looks down does not take it"
    assert hints == ()


def test_enough_and_short():
    assert told()[0].enough.verdict is Verdict.MEETS
    short, _, hints = told(("700 m3/h", "600 m3/h"))
    assert short.enough.because == ("by 62.6 m³/h: 'table G-4' asks 663 m³/h for the stone; 600 m³/h is intended")
    assert [hint.change for hint in hints] == ["more flow"]


def test_a_wide_wheel_is_offered_a_narrower_one():
    _, _, hints = told(("width: 50 mm", "width: 100 mm"))
    assert [hint.change for hint in hints] == ["narrower wheel", "more flow"]
    assert hints[0].text.startswith("with a wheel up to 50.8 mm wide, the stone asks 663 m³/h")
    assert hints[0].flow.value < hints[1].flow.value


def test_the_wheels_of_one_hood_add_up():
    """390 cfm and 300 cfm: 690 x 0.000471947 = 0.32564 m3/s for each of the two."""
    second = "wheel: {work: buffing, diameter: 200 mm, width: 40 mm}"
    line = f"  - {{name: mop, contaminant: steel dust, at: [2 m, 2.05 m, 1 m], dispersion: thrown, {second}}}\nhoods:"
    workplace = shop(("\nhoods:", "\n" + line), ("serves: [stone]", "serves: [stone, mop]"))
    needs = needs_of(workplace.hoods[0], workplace)
    assert [need.flow for need in needs] == pytest.approx([0.32564, 0.32564], rel=PAPER)
    assert needs[0].laws[0].line.filled.endswith("; with the mop + 0.14158 = 0.32564 m3/s")


def test_a_stream_that_misses_the_hood_is_told():
    missing, _, _ = told((WHEEL, f"{WHEEL}, {THROWS.replace('[0, 1, 0]', '[1, 1, 0]')}"))
    assert missing.enough.because == "the stream of the stone misses the opening by 100 mm: move it or make it wider"


def test_a_person_in_the_stream_is_told():
    person = "people: [{name: helper, at: [2 m, 2.1 m], facing: [0, -1, 0], breathing_height: 1.5 m}]\nsources:"
    hood = told(("sources:", person))[0]
    assert hood.enough.because == "helper stands between the stone and its hood, in the stream"


def test_a_draught_faster_than_the_opening_is_told():
    """0.18406 m3/s through 0.0625 m2 is 2.945 m/s."""
    draught = "room: {size: [9 m, 9 m, 3 m], draught: {towards: [1, 0, 0], speed: 3 m/s}}"
    hood = told(("room: {size: [9 m, 9 m, 3 m]}", draught), ("[200 mm, 150 mm]", "[250 mm, 250 mm]"))[0]
    assert hood.enough.because.startswith("draughts reach 3 m/s, the 2.94 m/s in the opening or more")


def test_an_opening_too_large_or_too_narrow_does_not_take_the_stream():
    """0.18406 m3/s through 1 m2 is 0.184 m/s, below the 2.5 m/s of the slowest thrown release."""
    large = told(("[200 mm, 150 mm]", "[1 m, 1 m]"))[0]
    assert large.enough.verdict is Verdict.CANNOT_TELL
    assert "makes 0.18 m/s in an opening so large, less than the 2.5 m/s" in large.enough.because
    narrow = told(("[200 mm, 150 mm]", "[40 mm, 30 mm]"))[0]
    assert narrow.enough.verdict is Verdict.CANNOT_TELL
    assert "opens 40 mm at the widest and the wheel or belt is 50 mm wide" in narrow.enough.because


def test_a_hood_within_the_wheel_must_look_at_it_too():
    hood = told(("at: [2 m, 2.2 m, 1 m]", "at: [2 m, 2.1 m, 1 m]"), ("facing: [0, -1, 0]", "facing: [0, 1, 0]"))[0]
    assert hood.enough.verdict is Verdict.CANNOT_TELL and "does not look at it" in hood.enough.because


def test_cautions_of_a_grinding_wheel():
    _, texts, _ = told()
    assert any(text.startswith("keep its tongue within 6.4 mm of the wheel") for text in texts)
    assert any("guidance asks for 10 m/s at the inlets" in text for text in texts)
    assert any(text.startswith("work that reaches outside the hood of the stone") for text in texts)
    assert any("examination every 6 months" in text for text in texts)
    assert any(text.startswith("fine metal dust, lint and oily fibres") for text in texts)
    assert not any("name the hazard 'sparks'" in text for text in texts)


def test_hazards_that_are_not_named_are_asked_for():
    _, texts, _ = told(("hazards: [sparks]", "hazards: []"))
    assert any("name the hazard 'sparks'" in text for text in texts)


def test_a_slow_branch_is_told():
    """700 m3/h through 125 mm is 15.8 m/s; at 22.86 m/s the branch is sqrt(4 x 0.19444 / (pi x 22.86)) = 104 mm."""
    _, texts, _ = told()
    assert "A1 runs at 15.8 m/s; 22.9 m/s is recommended for wheels: it may be 104 mm across at most" in texts
    _, texts, _ = told(
        ("round: 125 mm, length: 3 m}\n  - {name: stack", "round: 100 mm, length: 3 m}\n  - {name: stack")
    )
    assert not any("is recommended for wheels" in text for text in texts)


def test_cautions_of_other_wheels():
    _, texts, _ = told((WHEEL, "wheel: {work: buffing, diameter: 300 mm, width: 100 mm}"))
    assert any("for this one it is our reading" in text for text in texts)
    assert any("adjustable tongue at the top" in text for text in texts)
    _, texts, _ = told((WHEEL, "wheel: {work: open vertical-spindle disc, diameter: 900 mm}"))
    assert "spread its flow over 4 outlets round the rim, or as evenly by other means" in texts


def test_a_thrown_stream_into_its_hood_has_no_published_flow():
    """The chips fly 8.5 m: Stokes would say 43 m."""
    workplace = thrown()
    answer = plain(assess(workplace)).hoods[0]
    assert str(answer.enough) == (
        "cannot tell: stone: its stream flies into the opening, 200 mm away where its grains fly 8.5 m, but no "
        "published equation gives the flow to keep it there"
    )
    assert answer.sentence.startswith("The shroud, 200 mm along the stream from the stone, has no equation to tell")


def test_the_stopping_distance_is_shown_with_its_line():
    texts = [caution.text for caution in plain(assess(thrown())).cautions]
    line = next(text for text in texts if text.startswith("in still air one grain of the stone flies 8.5 m"))
    assert "20 x 7800 x 0.0003² / (18 x " in line
    assert any(text.startswith("fine dust (10 µm) thrown with the stone stops after 32 mm") for text in texts)


@pytest.mark.parametrize(
    ("changes", "why"),
    [
        ([("towards: [0, 1, 0]", "towards: [0, -1, 0]")], "its stream does not fly towards the opening: turn the hood"),
        ([("towards: [0, 1, 0]", "towards: [1, 1, 0]")], "its stream misses the opening by 100 mm: move the hood"),
        ([("300 um", "5 um")], "its grains stop after 9.48 mm, short of the opening 200 mm away: what is left must be"),
        ([(f", {THROWS}", "")], "no published equation gives the flow for a thrown stream; add 'throws' to the source"),
        (
            [(f", {THROWS}", ""), ("dispersion: thrown", "dispersion: driven")],
            "no published equation is known for a receiving hood that does not hang above its work",
        ),
    ],
)
def test_why_nothing_can_be_told_of_a_thrown_stream(changes, why):
    need = need_in(shop((WHEEL, THROWS), *changes))
    assert need.untold.startswith(why)
    assert (need.laws, need.flow) == ((), 0.0)


def test_the_worst_point_of_a_long_source_decides():
    """Streams from x = 1.95 to 2.15 m: the farthest passes the rim, 100 mm from the middle, by 50 mm."""
    need = need_in(thrown(("at: [2 m, 2 m, 1 m]", "line: [[1.95 m, 2 m, 1 m], [2.15 m, 2 m, 1 m]]")))
    assert need.untold.startswith("its stream misses the opening by 50 mm")


def test_a_round_opening_is_judged_by_its_rim():
    need = need_in(
        thrown(("{rectangle: [200 mm, 150 mm]}", "{round: 200 mm}"), ("towards: [0, 1, 0]", "towards: [1, 1, 0]"))
    )
    assert need.untold.startswith("its stream misses the opening by 100 mm")


def test_hints_for_a_thrown_stream():
    """15 degrees over 1 m is 0.268 m: 100 mm is there to each side, so 2 x 168 mm are lacking."""
    far = plain(assess(thrown(("at: [2 m, 2.2 m, 1 m]", "at: [2 m, 3 m, 1 m]")))).hoods[0]
    (wider,) = far.hints
    assert wider.change == "wider"
    lacking = math.tan(math.radians(15)) - 0.075
    assert f"an opening of {200 + 2000 * lacking:.0f} mm by" in wider.text
    turned = plain(assess(thrown(("towards: [0, 1, 0]", "towards: [0, -1, 0]")))).hoods[0]
    assert [hint.change for hint in turned.hints] == ["turn"]
    fine = plain(assess(thrown(("300 um", "10 um")))).hoods[0]
    assert [hint.change for hint in fine.hints] == ["closer"]
    assert "at 16 mm along the stream" in fine.hints[0].text


def test_no_hint_without_an_intended_flow():
    assert plain(assess(thrown(("    intended_flow: 700 m3/h\n", "")))).hoods[0].hints == ()


def test_a_boulder_beyond_the_drag_law_is_still_told():
    need = need_in(thrown(("grain: 300 um", "grain: 40 mm"), ("speed: 20 m/s", "speed: 120 m/s")))
    assert need.untold.startswith("its stream flies into the opening, 200 mm away, but no published equation")


def test_a_wheel_whose_grains_stop_short_is_told():
    """100 um of wood at 15 m/s: the hood stands 200 mm from the middle of the wheel."""
    fine = "throws: {speed: 15 m/s, grain: 100 um, grain_density: 700 kg/m3, towards: [0, 1, 0]}"
    _, texts, _ = told((WHEEL, f"{WHEEL}, {fine}"))
    assert any(text.startswith("the grains of the stone stop after 115 mm, short of its opening") for text in texts)


def test_a_named_process_tells_its_examination_itself():
    _, texts, _ = told((WHEEL, f"{WHEEL}, process: dry grinding of steel"))
    assert not any("Great Britain asks for a thorough" in text for text in texts)
    assert any("6 months" in text for text in texts)


@pytest.mark.parametrize(
    ("inches", "cfm"),
    [(9, 220), (16, 390), (19, 500), (24, 610), (30, 880), (36, 1200)],
    ids=lambda number: str(number),
)
def test_the_printed_flow_typed_as_printed_meets_its_row(inches, cfm):
    wheel = f"wheel: {{work: grinding, diameter: {inches} in, width: 1 in}}"
    near = f"at: [2 m, {2 + inches * 0.0127 + 0.05:.3f} m, 1 m]"
    hood = told((WHEEL, wheel), ("700 m3/h", f"{cfm} cfm"), ("at: [2 m, 2.2 m, 1 m]", near))[0]
    assert hood.enough.verdict is Verdict.MEETS
