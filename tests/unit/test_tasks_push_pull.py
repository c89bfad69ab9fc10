"""The push nozzle of a capturing hood: when its jet carries the source, and what the hood must then take."""

import math

import pytest

from hoodwright.results import Verdict
from hoodwright.tasks.assess import assess
from hoodwright.tasks.capturing.push_pull import jet_velocity, push_cautions, push_law, pushed, trouble
from hoodwright.tasks.need import needs_of
from hoodwright.workplace import parse_workplace

# An open tank 1.2 m long and 1 m wide; the jet blows 1.2 m across it, from a slot 6 mm wide.
TANK = """\
hoodwright: 1
name: Test room
room: {size: [8 m, 6 m, 3 m]}
contaminants: [{name: mist, kind: mist}]
sources: [{name: tank, contaminant: mist, box: [[3 m, 3 m, 1 m], [4.2 m, 4 m, 1 m]], dispersion: gentle}]
hoods:
  - name: far side
    type: capturing
    serves: [tank]
    opening: {rectangle: [1.2 m, 0.25 m]}
    at: [3.6 m, 4.1 m, 1.05 m]
    facing: [0, -1, 0]
    push: {at: [3.6 m, 2.9 m, 1.05 m], slot: [1.2 m, 6 mm], flow: 120 m3/h}
"""
PUSH = 120 / 3600
JET = 0.62 * math.sqrt(1.2 / 0.006) * PUSH
EXIT = PUSH / (1.2 * 0.006)


def tank_with(*changes: tuple[str, str]):
    text = TANK
    for old, new in changes:
        assert old in text
        text = text.replace(old, new, 1)
    workplace = parse_workplace(text)
    return workplace.hoods[0], workplace.sources[0], workplace


def test_the_hood_takes_one_and_a_half_times_the_jet_that_arrives():
    hood, source, _ = tank_with()
    law = push_law(hood, source, 0.5, high_hazard=False)
    assert law.flow == pytest.approx(1.5 * JET)
    assert law.line.filled == "1.5 x 0.62 x sqrt(1.2 / 0.006) x 0.033333 = 0.43841 m3/s"
    assert law.reach == "up to six slot lengths, here 7.2 m"


def test_a_grave_hazard_takes_twice_the_jet():
    hood, source, _ = tank_with()
    assert push_law(hood, source, 0.5, high_hazard=True).flow == pytest.approx(2 * JET)


def test_near_the_slot_the_core_has_its_own_growth():
    hood, source, _ = tank_with(
        ("[1.2 m, 6 mm]", "[1.2 m, 0.24 m]"),
        ("flow: 120 m3/h", "flow: 1200 m3/h"),
        ("at: [3.6 m, 2.9 m", "at: [3.6 m, 2.95 m"),
    )
    law = push_law(hood, source, 0.5, high_hazard=False)
    assert law.line.formula == "Q = 1.5 (1 + 0.080 x / b) q"
    assert law.flow == pytest.approx(1.5 * (1 + 0.08 * 1.15 / 0.24) * 1200 / 3600)


def test_velocity_is_that_of_the_jet_at_the_far_end_of_the_source():
    hood, source, _ = tank_with()
    assert jet_velocity(hood, source) == pytest.approx(2.28 * math.sqrt(0.006 / 1.1) * EXIT)


def test_without_a_nozzle_there_is_no_law():
    hood, source, _ = tank_with(("    push: {at: [3.6 m, 2.9 m, 1.05 m], slot: [1.2 m, 6 mm], flow: 120 m3/h}\n", ""))
    assert push_law(hood, source, 0.5, high_hazard=False) is None
    assert jet_velocity(hood, source) is None
    assert trouble(hood, source, 0.5, "SI") == "it has no push nozzle"


@pytest.mark.parametrize(
    "change, why",
    [
        (
            ("flow: 120 m3/h", "flow: 60 m3/h"),
            "its jet has slowed to 0.39 m/s at the far end of the tank, where 0.5 m/s",
        ),
        (("box: [[3 m", "box: [[2.5 m"), "the tank does not lie in the jet of its push nozzle"),
        (("4 m, 1 m]]", "4.3 m, 1 m]]"), "the tank does not lie in the jet of its push nozzle"),
        (("[4.2 m, 4 m, 1 m]", "[4.2 m, 4 m, 0.5 m]"), "the tank does not lie in the jet of its push nozzle"),
        (
            ("slot: [1.2 m, 6 mm]", "slot: [0.15 m, 6 mm]"),
            "its push nozzle is 1200 mm away; 900 mm, six times its slot's",
        ),
    ],
)
def test_why_a_jet_does_not_carry_the_source(change, why):
    hood, source, workplace = tank_with(change)
    told = trouble(hood, source, 0.5, "SI").replace("\u2009", " ")
    assert told.startswith(why)
    assert push_law(hood, source, 0.5, high_hazard=False) is None
    assert pushed(needs_of(hood, workplace)[0], hood, source, workplace) is None


def test_the_need_by_the_jet_stands_in_place_of_the_need_by_suction():
    hood, source, workplace = tank_with()
    need = pushed(needs_of(hood, workplace)[0], hood, source, workplace)
    assert need.in_range and need.flow == pytest.approx(1.5 * JET)
    assert (need.place, need.untold) == ("with a push jet over", "")
    assert need.velocity == pytest.approx(jet_velocity(hood, source))


class Answer:
    """What the cautions ask of a hood's answer."""

    def __init__(self, needs, design_flow):
        self.name, self.needs, self.design_flow = "far side", needs, design_flow


def warned(flow, *changes):
    hood, source, workplace = tank_with(*changes)
    found = push_cautions(hood, Answer(needs_of(hood, workplace), flow), (source,), "SI")
    return " | ".join(caution.text for caution in found).replace("\u2009", " ")


def test_cautions_of_a_push_nozzle():
    assert warned(0.5).startswith("large objects in the jet turn it aside, and the push must stop with the exhaust")
    assert "its jet arrives with 1050 m³/h and the hood takes 900 m³/h: the rest spills" in warned(0.25)
    assert "the jet spreads to about 212 mm on its way" in warned(0.5, ("[1.2 m, 0.25 m]", "[1.2 m, 0.20 m]"))
    assert "the laws of suction alone are asked" in warned(0.5, ("flow: 120 m3/h", "flow: 60 m3/h"))


def test_the_answer_of_a_workplace_with_a_push_nozzle():
    _, source, workplace = tank_with(("    facing: [0, -1, 0]", "    facing: [0, -1, 0]\n    intended_flow: 1600 m3/h"))
    answer = assess(workplace)
    hood = answer.hoods[0]
    assert hood.enough.verdict is Verdict.MEETS
    told = hood.sentence.replace("\u2009", " ")
    assert told == "The far side, with a push jet over the tank, needs 1580 m³/h and is meant to get 1600 m³/h."
    assert hood.worst.velocity == pytest.approx(jet_velocity(workplace.hoods[0], source))
    assert any("lock the nozzle to the fan" in caution.text for caution in answer.cautions)


def test_a_jet_that_falls_short_leaves_suction_alone_to_be_asked():
    _, _, workplace = tank_with(("flow: 120 m3/h", "flow: 60 m3/h"))
    answer = assess(workplace)
    assert all("push-pull" not in law.equation for law in answer.hoods[0].worst.laws)
    assert any("the laws of suction alone are asked" in caution.text for caution in answer.cautions)
