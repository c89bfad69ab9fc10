"""Canopies: what they need, what refuses and disturbs them, what would help. Expected flows are worked by hand."""

import math
import re

import pytest

from hoodwright.results import Verdict
from hoodwright.tasks.assess import assess
from hoodwright.tasks.hint_tools import Case
from hoodwright.tasks.need import needs_of
from hoodwright.tasks.receiving import disturbance, hints, refusal
from hoodwright.tasks.run import Effect
from hoodwright.workplace import parse_workplace

COLD = """
hoodwright: 1
name: Shop
room: {size: [9 m, 9 m, 5 m]}
contaminants: [{name: vapour, kind: vapour, hazards: []}]
sources:
- {name: bath, contaminant: vapour, dispersion: still, box: [[1.5 m, 1.7 m, 0.9 m], [2.5 m, 2.3 m, 0.9 m]]}
hoods:
- name: canopy
  type: receiving
  serves: [bath]
  opening: {rectangle: [1.6 m, 1.2 m]}
  at: [2 m, 2 m, 1.6 m]
  intended_flow: 3000 m3/h
"""
BOX = "box: [[1.5 m, 1.7 m, 0.9 m], [2.5 m, 2.3 m, 0.9 m]]"
BODY = "at: [2 m, 2 m, 0.9 m], heat: {form: body, round: 400 mm, height: 500 mm, temperature: 1100 degC}"
RIM = "at: [2 m, 2 m, 1.6 m]"
OPENING = "opening: {rectangle: [1.6 m, 1.2 m]}"
ROOM = "room: {size: [9 m, 9 m, 5 m]}"
PLAIN = "kind: vapour, hazards: []"
HOT = ((BOX, BODY), (OPENING, "opening: {round: 800 mm}"), (RIM, "at: [2 m, 2 m, 1.25 m]"))
HIGH = ((BOX, BODY), (OPENING, "opening: {round: 1600 mm}"), (RIM, "at: [2 m, 2 m, 2.4 m]"))
FLOW = "intended_flow: 3000 m3/h"


def shop(*changes):
    text = COLD
    for old, new in changes:
        assert old in text, old
        text = text.replace(old, new)
    return parse_workplace(text)


def answer(*changes, system="SI"):
    return assess(shop(*changes), system)


def canopy(*changes, **how):
    return answer(*changes, **how).hoods[0]


def need(*changes):
    workplace = shop(*changes)
    return needs_of(workplace.hoods[0], workplace)[0]


def law(name, *changes):
    return next(law for law in need(*changes).laws if law.equation == name)


def told(outcome) -> str:
    return str(outcome).replace("\u2009", " ")


def cautions(*changes) -> str:
    return " | ".join(caution.text for caution in answer(*changes).cautions).replace("\u2009", " ")


def hints_of(*changes) -> dict[str, str]:
    """Every hint of the canopy itself, whether or not the answer shows them."""
    workplace = shop(*changes)
    hood = workplace.hoods[0]
    worst = max(needs_of(hood, workplace), key=lambda need: need.flow)
    case = Case(hood, worst, workplace, lambda changed, flow: Effect(None, None), "SI")
    return {hint.change: hint.text.replace("\u2009", " ") for hint in hints(case)}


def recomputed(filled: str) -> tuple[float, float]:
    left, right = filled.rsplit(" = ", 1)
    left = left.split(": ")[-1].replace("²", "**2").replace("^", "**").replace(" x ", " * ")
    return eval(left, {"pi": math.pi, "__builtins__": {}}), float(right.split()[0])


def test_four_open_sides_take_the_perimeter_of_the_work():
    """1.4 x 3.2 m x 0.7 m x 0.25 m/s = 0.784 m3/s."""
    assert need().flow == pytest.approx(0.784)
    assert canopy().sentence.replace("\u2009", " ") == (
        "The canopy, 700 mm above the bath, needs 2820 m³/h and is meant to get 3000 m³/h."
    )
    assert canopy().enough.verdict is Verdict.MEETS


@pytest.mark.parametrize("sides, flow", [(3, 1.4 * 2.6 * 0.7 * 0.25), (2, 1.6 * 0.7 * 0.25)])
def test_fewer_open_sides(sides, flow):
    assert need((RIM, f"{RIM}\n  open_sides: {sides}")).flow == pytest.approx(flow)


def test_a_point_takes_the_rim_of_the_canopy():
    point = need((BOX, "at: [2 m, 2 m, 0.9 m]"))
    assert point.flow == pytest.approx(1.4 * 5.6 * 0.7 * 0.25)
    assert "of the rim, since the work is a point" in point.laws[0].line.filled


def test_a_line_counts_on_both_sides():
    assert need((BOX, "line: [[1.5 m, 2 m, 0.9 m], [2.5 m, 2 m, 0.9 m]]")).flow == pytest.approx(1.4 * 2 * 0.7 * 0.25)


def test_a_box_is_judged_from_its_lowest_point():
    deep = BOX.replace("2.3 m, 0.9 m", "2.3 m, 0.6 m")
    assert need((BOX, deep)).distance == pytest.approx(1.0)


def test_velocity_follows_the_flow():
    hood = canopy((FLOW, "intended_flow: 1411.2 m3/h"))
    assert hood.worst.velocity == pytest.approx(0.125)
    assert hood.enough.verdict is Verdict.SHORT


def test_a_low_round_canopy_over_hot_work():
    """D 0.8 m = 2.6247 ft, 1080 K = 1944 degF more: 4.7 x 2.6247^2.33 x 1944^0.42 = 1071 cfm."""
    flow = 4.7 * (0.8 / 0.3048) ** 2.33 * (1.8 * 1080) ** 0.42 * 0.3048**3 / 60
    assert law("low canopy, round", *HOT).flow == pytest.approx(flow, rel=1e-6)


def test_a_low_canopy_smaller_than_published_is_counted_as_large_as_published():
    small = (HOT[0], (OPENING, "opening: {round: 450 mm}"), HOT[2])
    assert law("low canopy, round", *small).flow == pytest.approx(
        4.7 * (0.7048 / 0.3048) ** 2.33 * 1944**0.42 * 0.3048**3 / 60
    )


def test_a_low_rectangular_canopy_over_hot_work():
    square = (HOT[0], (OPENING, "opening: {rectangle: [1 m, 800 mm]}"), HOT[2])
    flow = 6.2 * (0.8 / 0.3048) ** 1.33 * 1944**0.42 * (1 / 0.3048) * 0.3048**3 / 60
    assert law("low canopy, rectangular", *square).flow == pytest.approx(flow)


def test_a_high_canopy_over_hot_work():
    """Ds 0.4 m = 1.3123 ft, y 1.5 m = 4.9213 ft, in feet and degrees Fahrenheit as printed."""
    ds, y, foot = 0.4 / 0.3048, 1.5 / 0.3048, 0.3048
    xc = y + (2 * ds) ** 1.138
    dc, vf = 0.5 * xc**0.88, 8 * (math.pi / 4 * ds**2) ** 0.33 * 1944**0.42 / xc**0.25
    cfm = vf * math.pi / 4 * dc**2 + 100 * math.pi / 4 * ((1.6 / foot) ** 2 - dc**2)
    assert law("high canopy", *HIGH).flow == pytest.approx(cfm * foot**3 / 60, rel=1e-6)


def test_where_only_the_heat_is_known_the_plume_answers():
    stated = (BODY, BODY.replace("temperature: 1100 degC", "convective: 8 kW"))
    found = need(*HIGH, stated)
    assert [law.equation for law in found.laws] == ["point plume"]
    plume = 0.005 * 8000 ** (1 / 3) * (1.5 + 2.1 * 0.4) ** (5 / 3)
    width = 0.5 * 0.3048**0.12 * (1.5 + 0.3048 * (2 * 0.4 / 0.3048) ** 1.138) ** 0.88
    assert found.flow == pytest.approx(plume + 0.508 * math.pi / 4 * (1.6**2 - width**2))


def test_a_long_hot_source_sends_up_a_sheet():
    tank = "at: [2 m, 2 m, 0.9 m], heat: {form: boiling tank, rectangle: [2 m, 300 mm], boils_off: 8 kg/h}"
    wide = (OPENING, "opening: {rectangle: [3.4 m, 1.6 m]}")
    assert [law.equation for law in need((BOX, tank), wide, HIGH[2]).laws] == ["line plume"]
    low = need((BOX, tank), wide, (RIM, "at: [2 m, 2 m, 1.1 m]"))
    assert [law.equation for law in low.laws] == ["boiling tank"]
    steam = 8 / 3600 / 0.6
    flow = 5.0 * 0.6 * (steam * 2) ** (1 / 3) + 0.508 * (3.4 * 1.6 - 0.6)
    assert low.flow == pytest.approx(flow, rel=0.001)


@pytest.mark.parametrize(
    "heat",
    [
        "form: face, rectangle: [1 m, 500 mm], temperature: 300 degC",
        "form: body, rectangle: [1 m, 500 mm], height: 400 mm, temperature: 300 degC",
        "form: cylinder, rectangle: [1 m, 200 mm], temperature: 150 degC",
        "form: boiling tank, rectangle: [1 m, 500 mm], boils_off: 5 kg/h",
        "form: face, round: 500 mm, convective: 3 kW",
    ],
)
@pytest.mark.parametrize("z", ["1.05 m", "1.6 m", "2.8 m"])
@pytest.mark.parametrize("opening", ["round: 1800 mm", "rectangle: [1.8 m, 1.4 m]"])
def test_every_line_of_hot_work_can_be_recomputed(heat, z, opening):
    found = need(
        (BOX, f"at: [2 m, 2 m, 0.9 m], heat: {{{heat}}}"),
        (OPENING, f"opening: {{{opening}}}"),
        (RIM, f"at: [2 m, 2 m, {z}]"),
        (ROOM, "room: {size: [9 m, 9 m, 5 m], draught: {towards: [1, 0, 0], speed: 0.3 m/s}}"),
    )
    assert found.laws and not found.untold
    for each in found.laws:
        left, right = recomputed(each.line.filled)
        assert left == pytest.approx(right, rel=5e-4), each.line
        assert right == pytest.approx(each.flow, rel=5e-4)


@pytest.mark.parametrize("sides", [4, 3, 2])
@pytest.mark.parametrize("place", [BOX, "at: [2 m, 2 m, 0.9 m]", "path: [[1.5 m, 2 m, 0.9 m], [2.4 m, 2.2 m, 1 m]]"])
def test_every_line_of_cold_work_can_be_recomputed(sides, place):
    found = need((BOX, place), (RIM, f"{RIM}\n  open_sides: {sides}"))
    left, right = recomputed(found.laws[0].line.filled)
    assert left == pytest.approx(right, rel=5e-4) and right == pytest.approx(found.flow, rel=5e-4)


@pytest.mark.parametrize(
    ("hazard", "words"),
    [
        ("carcinogen", "a carcinogen"),
        ("asthmagen", "an asthmagen"),
        ("asbestos", "asbestos"),
        ("isocyanate", "isocyanates"),
    ],
)
def test_grave_hazards_refuse_a_canopy(hazard, words):
    hood = canopy((PLAIN, f"kind: vapour, hazards: [{hazard}]"), (FLOW, "intended_flow: 30000 m3/h"))
    assert told(hood.enough).startswith(f"cannot tell: the bath gives off {words}: a canopy draws it past the face")


def test_lead_is_cautioned():
    assert "gives off lead: a canopy only where nobody ever bends over the work" in cautions(
        (PLAIN, "kind: vapour, hazards: [lead]")
    )


@pytest.mark.parametrize("at, refused", [("[2 m, 1.5 m]", True), ("[2 m, 1.2 m]", False), ("[2 m, 2 m]", True)])
def test_a_person_between_the_work_and_the_canopy_refuses_it(at, refused):
    person = f"{ROOM}\npeople: [{{name: Ada, at: {at}, facing: [0, 1, 0], breathing_height: 1.5 m}}]"
    workplace = shop((ROOM, person))
    found = refusal(workplace.hoods[0], workplace.sources[0], workplace)
    wanted = "Ada works between the bath and the canopy, in the air that rises to it"
    assert found == (wanted if refused else None)


def test_a_thrown_stream_refuses_a_canopy():
    assert "a canopy does not hold it" in told(
        canopy(("dispersion: still", "dispersion: thrown"), (FLOW, "intended_flow: 90000 m3/h")).enough
    )


def disturbed(*changes):
    workplace = shop(*changes)
    hood = workplace.hoods[0]
    told = disturbance(needs_of(hood, workplace)[0], hood, workplace, "SI")
    return told.replace("\u2009", " ") if told else told


def test_a_canopy_must_cover_its_work():
    assert disturbed() is None
    assert disturbed((OPENING, "opening: {rectangle: [800 mm, 1.2 m]}")) == (
        "the bath reaches 100 mm past the rim of the canopy: make it larger"
    )
    assert disturbed((RIM, "at: [2.5 m, 2 m, 1.6 m]")).startswith("the bath reaches 200 mm past the rim")
    assert disturbed((OPENING, "opening: {round: 1.1 m}")).startswith("the bath reaches 33.1 mm past the rim")


def test_a_canopy_turned_in_plan_is_measured_along_its_own_sides():
    turned = (RIM, f"{RIM}\n  along: [0, 1, 0]")
    assert disturbed((OPENING, "opening: {rectangle: [1.2 m, 800 mm]}"), turned).startswith("the bath reaches 100 mm")
    assert disturbed((OPENING, "opening: {rectangle: [800 mm, 1.2 m]}"), turned) is None


def test_a_draught_as_fast_as_the_capture_velocity_takes_cold_work_away():
    assert disturbed((ROOM, "room: {size: [9 m, 9 m, 5 m], draught: {towards: [1, 0, 0], speed: 0.3 m/s}}")) == (
        "draughts reach 0.3 m/s, the 0.25 m/s asked at the open sides of the canopy or more: close sides, or shield it"
    )


def test_a_plume_wider_than_its_canopy_rises_past_it():
    assert "is 942 mm wide where it meets the canopy and reaches 70.8 mm past its rim" in disturbed(
        HIGH[0], (OPENING, "opening: {round: 800 mm}"), HIGH[2]
    )


def test_a_draught_carries_a_plume_past_its_canopy():
    windy = (ROOM, "room: {size: [9 m, 9 m, 5 m], draught: {towards: [1, 0, 0], speed: 0.2 m/s}}")
    assert disturbed(*HIGH) is None
    told = disturbed(*HIGH, windy)
    assert told.startswith("draughts carry the plume of the bath 470 mm aside, and the canopy reaches 330 mm past it")


def test_work_above_the_rim_is_not_told():
    hood = canopy((RIM, "at: [2 m, 2 m, 0.5 m]"))
    assert told(hood.enough) == "cannot tell: bath: it does not lie below the rim of the canopy"
    assert hood.hints == ()


def test_a_hot_face_too_small_for_any_correlation_asks_for_the_heat():
    tiny = (BOX, "at: [2 m, 2 m, 0.9 m], heat: {form: face, round: 20 mm, temperature: 90 degC}")
    assert "its convective heat cannot be told: Rayleigh number" in told(canopy(tiny).enough)
    assert "state the convective heat instead" in told(canopy(tiny).enough)


def test_a_surface_colder_than_the_room_makes_no_plume():
    cold = (BOX, "at: [2 m, 2 m, 0.9 m], heat: {form: face, round: 400 mm, temperature: 10 degC}")
    assert "a surface must be warmer than the air" in told(canopy(cold).enough)


def test_cautions_of_cold_canopies():
    text = cautions((RIM, f"{RIM}\n  open_sides: 3"), (OPENING, "opening: {rectangle: [1.2 m, 700 mm]}"))
    assert "it reaches 50 mm past the bath; 0.4 of the height, 280 mm, is usual on every side" in text
    assert "no published equation is known for three open sides" in text
    assert "the lower end of its class was taken; its upper end, 0.5 m/s, takes 4590 m³/h" in text


def test_cautions_of_hot_canopies():
    low = cautions(HOT[0], (OPENING, "opening: {round: 600 mm}"), HOT[2])
    assert "it reaches 100 mm past the bath; 150 mm on every side is the published size" in low
    high = cautions(*HIGH)
    assert "it reaches 330 mm past the plume of the bath; 600 mm on every side is the published size" in high
    assert "leave a margin of a fifth or more, 4820 m³/h" in high
    assert "flat kitchen hoods were found to catch 46 to 63 %, deep ones 73 to 78 %" in cautions(
        HIGH[0], (OPENING, "opening: {round: 1000 mm}"), HIGH[2]
    )


def test_warm_exhaust_is_told():
    strong = BODY.replace("temperature: 1100 degC", "convective: 40 kW")
    assert "its exhaust is about 40 degC warmer than the room (72 degF)" in cautions((BOX, strong), *HIGH[1:])


def test_hints_of_a_cold_canopy():
    found = hints_of((FLOW, "intended_flow: 2000 m3/h"))
    assert found["lower"] == "350 mm above the bath, 1420 m³/h would be enough"
    assert found["close sides"] == "with curtains or walls on all but two sides, 1010 m³/h would be enough"
    assert found["enclose"].startswith(
        "closed on three sides down to the work, as a booth with the source inside, 2060"
    )
    assert found["more flow"] == "2830 m³/h where it is now is enough"
    assert "larger" not in found


def test_a_canopy_that_does_not_cover_its_work_is_told_the_size_it_needs():
    found = hints_of((OPENING, "opening: {rectangle: [800 mm, 1.2 m]}"))
    assert found["larger"] == "made larger, 1560 mm by 1960 mm, 2830 m³/h would be enough"
    assert "more flow" not in found


def test_a_hot_canopy_is_told_to_hang_lower_and_smaller():
    assert hints_of(*HIGH)["lower"] == "400 mm above the bath and 705 mm across, 1360 m³/h would be enough"


def test_a_refused_canopy_is_told_only_of_other_hoods():
    found = hints_of((PLAIN, "kind: vapour, hazards: [carcinogen]"))
    assert set(found) <= {"enclose", "hood at the side"} and "enclose" in found


def test_a_hood_at_the_side_where_it_takes_less():
    narrow = (BOX, "box: [[1.5 m, 1.9 m, 0.9 m], [2.5 m, 2.1 m, 0.9 m]]")
    found = hints_of(narrow, (RIM, "at: [2 m, 2 m, 2.4 m]"))
    text = found["hood at the side"]
    assert text.startswith("a flanged hood of 1000 mm by 500 mm at the side instead, 250 mm from the far edge")
    flow = 0.75 * 0.25 * (10 * 0.25**2 + 0.5) * 3600
    assert float(re.search(r"takes (\d+)", text)[1]) == pytest.approx(flow, rel=0.01)


def test_in_us_units():
    assert canopy(*HIGH, system="US").sentence.replace("\u2009", " ").startswith("The canopy, 59.1 in above the bath")


@pytest.mark.parametrize("height", ["1 m", "1.0000000001 m", "1.4 m"])
def test_a_canopy_level_with_its_work_or_below_it_is_told_so(height):
    text = f"""
hoodwright: 1
name: Shop
room: {{size: [6 m, 5 m, 3 m]}}
contaminants: [{{name: fume, kind: fume}}]
sources: [{{name: pot, contaminant: fume, at: [3 m, 2 m, {height}], dispersion: gentle}}]
hoods: [{{name: canopy, type: receiving, serves: [pot], opening: {{round: 1 m}}, at: [3 m, 2 m, 1 m]}}]
"""
    found = assess(parse_workplace(text)).hoods[0]
    assert found.enough.because == "pot: it does not lie below the rim of the canopy"
    assert found.hints == ()


def test_the_guide_refuses_a_canopy_though_the_file_names_no_hazard():
    for process in ("MIG or MAG welding", "core making with isocyanate binder"):
        changes = ("dispersion: still", f"dispersion: still, process: {process}")
        outcome = canopy(changes, (FLOW, "intended_flow: 9000 m3/h")).enough
        assert outcome.verdict is Verdict.CANNOT_TELL and f"the guide wants no canopy for '{process}'" in told(outcome)
        assert "would be enough" not in " ".join(hints_of(changes).values())
    grinding = ("dispersion: still", "dispersion: still, process: dry grinding of steel")
    outcome = canopy(grinding, (FLOW, "intended_flow: 9000 m3/h")).enough
    assert outcome.verdict is Verdict.CANNOT_TELL and "counts 'dry grinding of steel' as thrown" in told(outcome)
    melting = canopy(("dispersion: still", "dispersion: still, process: aluminium melting")).enough
    assert melting.verdict is Verdict.MEETS


def test_hazards_that_the_guide_knows_and_the_file_does_not_name_are_asked_for():
    said = cautions(("dispersion: still", "dispersion: still, process: bronze melting and pouring"))
    assert "for its process the guide names lead, the file does not: name what holds as a hazard of the vapour" in said
    named = (
        (PLAIN, "kind: fume, hazards: [lead]"),
        ("dispersion: still", "dispersion: still, process: bronze melting and pouring"),
    )
    assert "the guide names" not in cautions(*named)


def two_of(place: str, other: str, hot: str) -> tuple[tuple[str, str], ...]:
    """The bath replaced by two alike sources at two places."""
    second = f"\n- {{name: other, contaminant: vapour, dispersion: still, {other}{hot}}}"
    return (f"{BOX}}}", f"{place}{hot}}}{second}"), ("serves: [bath]", "serves: [bath, other]")


def test_one_canopy_over_two_hot_sources_takes_both_plumes():
    hot = ", heat: {form: body, round: 300 mm, height: 400 mm, convective: 2 kW}"
    alone = need((BOX, f"at: [1.7 m, 2 m, 0.9 m]{hot}")).flow
    both = need(*two_of("at: [1.7 m, 2 m, 0.9 m]", "at: [2.3 m, 2 m, 0.9 m]", hot))
    # at 0.7 m: 0.005 x 2000^(1/3) x (0.7 + 2.1 x 0.3)^(5/3) = 0.1013 m3/s
    assert both.flow - alone == pytest.approx(0.1013, rel=1e-3)
    assert "with what rises from the other" in both.laws[0].line.filled


def test_one_canopy_over_two_cold_sources_takes_the_perimeter_of_both():
    changes = two_of(
        "box: [[1.4 m, 1.8 m, 0.9 m], [1.8 m, 2.2 m, 0.9 m]]", "box: [[2.2 m, 1.8 m, 0.9 m], [2.6 m, 2.2 m, 0.9 m]]", ""
    )
    # P = 2 x (1.2 + 0.4) = 3.2 m, 1.4 x 3.2 x 0.7 x 0.25 = 0.784 m3/s
    assert need(*changes).flow == pytest.approx(0.784, rel=1e-9)


def test_above_a_tall_hot_body_no_less_is_asked_than_leaves_its_top():
    body = "at: [2 m, 2 m, 0.9 m], heat: {form: body, round: 500 mm, height: 2 m, convective: 10 kW}"
    laws = {law.equation: law.flow for law in need((BOX, body)).laws}  # 0.7 m above it, which counts as high
    # 0.03814 x (10000 x 2 x 0.19635^2)^(1/3) = 0.3497 m3/s at its top; 0.005 x 10000^(1/3) x 1.75^(5/3) = 0.2738 m3/s
    # face 1.92 m2; the rest of it at 0.508 m/s: 0.8756 m3/s over the body
    assert laws["plume at the top of the hot body"] == pytest.approx(0.3497 + 0.508 * (1.92 - 0.19635), rel=2e-3)
    assert laws["plume at the top of the hot body"] > laws["point plume"]


def test_a_hot_line_must_lie_below_its_canopy_with_its_ends():
    line = "line: [[0 m, 2 m, 0.9 m], [4 m, 2 m, 0.9 m]], heat: {form: face, round: 400 mm, convective: 2 kW}"
    outcome = canopy((BOX, line), (FLOW, "intended_flow: 9000 m3/h")).enough
    assert outcome.verdict is Verdict.CANNOT_TELL and "the bath reaches 1200 mm past the rim" in told(outcome)


def test_what_flies_or_falls_below_a_canopy_is_refused_whatever_its_release_class():
    throws = "throws: {speed: 20 m/s, grain: 1 mm, grain_density: 2600 kg/m3, towards: [1, 0, 0]}"
    falls = "falls: {rate: 1000 kg/h, height: 1 m, grain: 5 mm, grain_density: 1500 kg/m3, bulk_density: 800 kg/m3}"
    for field, why in ((throws, "throws its stream out"), (falls, "drags air along")):
        outcome = canopy(
            ("dispersion: still", f"dispersion: still, {field}"), (FLOW, "intended_flow: 9000 m3/h")
        ).enough
        assert outcome.verdict is Verdict.CANNOT_TELL and why in told(outcome)
