"""Hints: what would help, with numbers that hold when the hint is followed."""

import math
import re

import pytest

from hoodwright.results import Verdict
from hoodwright.tasks.assess import assess
from hoodwright.tasks.hint_tools import Case, hint, rounded
from hoodwright.tasks.run import Effect
from hoodwright.workplace import parse_workplace
from hoodwright.workplace.quantities import Measure
from two_hoods import TWO_HOODS

# Plain opening of 100 mm, 150 mm from a gentle release: 0.5 x (10 x 0.15² + 0.00785398) = 0.116427 m3/s = 419.1 m3/h.
BENCH = """
hoodwright: 1
name: Bench
room: {size: [9 m, 9 m, 3 m]}
contaminants: [{name: fume, kind: fume}]
sources:
- {name: joint, contaminant: fume, at: [2 m, 1.85 m, 1 m], dispersion: gentle}
hoods:
- name: nozzle
  type: capturing
  serves: [joint]
  opening: {round: 100 mm}
  at: [2 m, 2 m, 1 m]
  facing: [0, -1, 0]
  intended_flow: 300 m3/h
"""
DUCTS = """
ducts:
- {name: branch, from: nozzle, to: fan, round: 100 mm, length: 3 m}
- {name: stack, from: fan, to: outside, round: 100 mm, length: 2 m}
fans: [{name: fan, efficiency: 50 %}]
"""


def hood_of(*changes: tuple[str, str], text: str = BENCH, system: str | None = None):
    for old, new in changes:
        assert old in text
        text = text.replace(old, new)
    return assess(parse_workplace(text), system).hoods[0]


def hints_of(*changes, **how) -> dict:
    return {hint.change: hint for hint in hood_of(*changes, **how).hints}


def said(hint) -> str:
    return hint.text.replace("\u2009", " ")


def test_more_flow_is_rounded_up_so_that_it_is_enough():
    hint = hints_of()["more flow"]
    assert said(hint) == "420 m³/h where it is now is enough"
    assert hint.flow.value * 3600 == pytest.approx(420)
    assert hood_of(("300 m3/h", "420 m3/h")).enough.verdict is Verdict.MEETS
    assert hood_of(("300 m3/h", "419 m3/h")).enough.verdict is Verdict.SHORT


def test_closer_until_the_intended_flow_is_enough():
    """300 m3/h = 0.0833333 m3/s: X = sqrt((0.0833333 / 0.5 - 0.00785398) / 10) = 0.126021 m, 126 mm."""
    hint = hints_of()["closer"]
    assert said(hint) == "at 126 mm from the joint, the intended 300 m³/h would be enough"
    assert hood_of(("1.85 m", "1.874 m")).enough.verdict is Verdict.MEETS
    assert hood_of(("1.85 m", "1.873 m")).enough.verdict is Verdict.SHORT


def test_a_flange_lowers_the_need():
    """sqrt A = 88.62 mm: 88.7 mm. At 150 mm: 0.75 x 0.116427 = 0.0873203 m3/s = 314.35 m3/h: 315 m3/h."""
    hint = hints_of()["flange"]
    assert said(hint) == "with a flange 88.7 mm wide all round, 315 m³/h would be enough at the same place"
    flanged = ("opening: {round: 100 mm}", "opening: {round: 100 mm}\n  flange: 88.7 mm")
    assert hood_of(flanged, ("300 m3/h", "315 m3/h")).enough.verdict is Verdict.MEETS


def test_a_hood_with_a_flange_is_not_told_to_get_one():
    assert "flange" not in hints_of(("opening: {round: 100 mm}", "opening: {round: 100 mm}\n  flange: 100 mm"))


def test_a_hood_that_has_enough_is_told_what_closer_would_save():
    """At 75 mm: 0.5 x (10 x 0.075² + 0.00785398) = 0.0320520 m3/s = 115.39 m3/h: 116 m3/h."""
    hints = hints_of(("300 m3/h", "500 m3/h"))
    assert said(hints["closer"]) == "at 75 mm from the joint, 116 m³/h would be enough"
    assert "more flow" not in hints


def test_a_hood_that_looks_away_is_told_to_turn():
    hints = hints_of(("facing: [0, -1, 0]", "facing: [1, 0, 0]"))
    assert list(hints) == ["turn"]
    assert said(hints["turn"]) == "turned to look at the joint, 420 m³/h would be enough"


def test_too_far_away_more_flow_is_only_a_last_word():
    """Bound 0.5 x 4 pi (0.4² + 0.05²)^1.5 / 0.4 = 1.02896 m3/s = 3704.3 m3/h: 3710 m3/h."""
    hints = hints_of(("1.85 m", "1.6 m"))
    assert said(hints["more flow"]) == (
        "3710 m³/h where it is now is enough in still, open air, and far more than a closer hood needs"
    )
    assert said(hints["closer"]) == "at 126 mm from the joint, the intended 300 m³/h would be enough"


def test_hints_tell_the_fan_power_at_their_flow():
    """420 m3/h: V = 14.85 m/s, VP = 132.9 Pa; f = 0.0237, hood 1.93, branch 0.71, stack 0.47 and what leaves it 1,
    less the 1 that the fan finds at its inlet: 3.12 VP = 414 Pa; 414 x 0.11667 / 0.50 = 97 W."""
    hint = hints_of(text=BENCH + DUCTS)["more flow"]
    whole = assess(parse_workplace((BENCH + DUCTS).replace("300 m3/h", "420 m3/h")))
    assert hint.fan_power.value == pytest.approx(whole.fans[0].power)
    assert said(hint).endswith("; through the same ducts the fan then takes 97 W")


def test_a_hint_tells_when_its_flow_would_let_fume_settle():
    """116 m3/h through 100 mm are 4.1 m/s; fume asks 10.2 m/s."""
    hint = hints_of(("300 m3/h", "500 m3/h"), text=BENCH + DUCTS)["closer"]
    assert said(hint).endswith("; branch would then be too wide to keep the stream moving")


def test_the_power_is_that_of_the_hoods_own_fan():
    other = """
- name: other
  type: capturing
  serves: [joint]
  opening: {round: 100 mm}
  at: [2 m, 1.7 m, 1 m]
  facing: [0, 1, 0]
  intended_flow: 2000 m3/h
"""
    more = """
ducts:
- {name: own, from: other, to: big fan, round: 200 mm, length: 3 m}
- {name: end, from: big fan, to: outside, round: 200 mm, length: 3 m}
"""
    text = BENCH + other.lstrip() + DUCTS.replace("ducts:", more.strip())
    text = text.replace("fans: [", "fans: [{name: big fan}, ")
    assert hints_of(text=text)["more flow"].fan_power == hints_of(text=BENCH + DUCTS)["more flow"].fan_power


def test_a_hint_holds_for_every_source_of_the_hood():
    """Two joints 120 mm to the left and right of each other: closer to one is farther from the other."""
    sources = (
        "- {name: joint, contaminant: fume, at: [2 m, 1.85 m, 1 m], dispersion: gentle}",
        "- {name: joint, contaminant: fume, at: [1.95 m, 1.86 m, 1 m], dispersion: gentle}\n"
        "- {name: rod, contaminant: fume, at: [2.05 m, 1.87 m, 1 m], dispersion: gentle}",
    )
    both = (sources, ("serves: [joint]", "serves: [joint, rod]"))
    hints = hints_of(*both)
    assert hints["more flow"].flow.value >= max(need.flow for need in hood_of(*both).needs)
    flow = f"{hints['more flow'].flow.value!r} m3/s"
    assert hood_of(*both, ("300 m3/h", flow)).enough.verdict is Verdict.MEETS
    assert "closer" not in hints or hood_of(*both).worst.source in hints["closer"].text


def test_a_source_that_the_hood_does_not_look_at_leaves_more_flow_unsaid():
    aside = "- {name: rod, contaminant: fume, at: [2.3 m, 2 m, 1 m], dispersion: gentle}\nhoods:"
    hints = hints_of(("hoods:", aside), ("serves: [joint]", "serves: [joint, rod]"))
    assert "more flow" not in hints


def test_hints_in_us_units_are_true_too():
    """126.02 mm = 4.961 in, rounded down to 4.96; 419.14 m3/h = 246.7 cfm, rounded up to 247."""
    hints = hints_of(system="US")
    assert said(hints["closer"]) == "at 4.96 in from the joint, the intended 177 cfm would be enough"
    assert said(hints["more flow"]) == "247 cfm where it is now is enough"
    assert hood_of(("300 m3/h", "247 cfm")).enough.verdict is Verdict.MEETS


def test_the_demo_table_hood_moved_as_hinted_is_enough():
    """The hint says 150 mm: from y = 2.10 m to 1.70 m + 0.15 m."""
    demo = TWO_HOODS
    hint = next(hint for hint in assess(parse_workplace(demo)).hoods[1].hints if hint.change == "closer")
    assert re.match(r"at 150.mm from the open lacquer jar, the intended 250.m³/h would be enough", hint.text)
    moved = assess(parse_workplace(demo.replace("at: [5.0 m, 2.10 m", "at: [5.0 m, 1.85 m"))).hoods[1]
    assert moved.enough.verdict is Verdict.MEETS


def test_nothing_rounds_to_nothing():
    assert rounded(0.0, "length", "US", math.ceil) == 0.0


def test_a_hint_whose_duct_is_far_too_narrow_tells_no_fan():
    case = Case(None, None, None, lambda hood, flow: Effect(1e9, fastest=("A1", 61.0)), "SI")
    found = hint(case, "more flow", "900 m3/h is enough", 0.25)
    assert (found.text, found.fan_power) == ("900 m3/h is enough; A1 is far too narrow for that", None)


def test_places_are_read_to_the_nanometre():
    measure = Measure("length", "m", bare_zero=True, decimals=9)
    assert (measure.read("1e-30 m"), measure.read("-1e-30 m"), measure.read("0.1 m")) == (0.0, 0.0, 0.1)
    assert math.copysign(1.0, measure.read("-1e-30 m")) == 1.0
