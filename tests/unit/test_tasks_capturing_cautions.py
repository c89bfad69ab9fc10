"""Cautions of slots, resting hoods, forms with a table, and draughts before a capturing hood."""

import pytest

from hoodwright.results import Verdict
from hoodwright.tables import load_table
from hoodwright.tasks.assess import assess
from hoodwright.tasks.capturing.place_cautions import FORMS
from hoodwright.workplace import parse_workplace

BENCH = """
hoodwright: 1
name: Bench
room: {size: [9 m, 9 m, 3 m]}
contaminants: [{name: fume, kind: fume, hazards: []}]
surfaces: [{name: bench, corner: [1 m, 1 m, 0.95 m], sides: [[2 m, 0 m, 0 m], [0 m, 1.5 m, 0 m]]}]
sources: [{name: joint, contaminant: fume, at: [2 m, 1.85 m, 1 m], dispersion: gentle}]
hoods:
  - name: hood
    type: capturing
    serves: [joint]
    opening: {round: 100 mm}
    at: [2 m, 2 m, 1 m]
    facing: [0, -1, 0]
    intended_flow: 300 m3/h
"""
AIRBORNE = ("corner: [1 m, 1 m, 0.95 m]", "corner: [1 m, 1 m, 0.5 m]")
SLOT = ("{round: 100 mm}", "{slot: [1 m, 50 mm]}")


def answer_of(*changes: tuple[str, str], system: str | None = None):
    text = BENCH
    for old, new in changes:
        assert old in text, old
        text = text.replace(old, new)
    return assess(parse_workplace(text), system)


def cautions_of(*changes: tuple[str, str], system: str | None = None) -> list[str]:
    return [c.text.replace("\u2009", " ") for c in answer_of(*changes, system=system).cautions if c.about == "hood"]


def test_what_it_rests_on_is_told_with_what_it_would_need_free():
    """Free, 150 mm before a plain opening of 100 mm: 419.1 m3/h."""
    assert (
        "its rim rests on the bench, which mirrors it for the joint; lifted off, it would need 419 m³/h"
        in cautions_of()
    )
    assert not any("rests on" in text for text in cautions_of(AIRBORNE))


ROOM = [
    ("[2 m, 2 m, 0.05 m]", "[2 m, 1.85 m, 0.05 m]", "floor"),
    ("[2 m, 2 m, 2.95 m]", "[2 m, 1.85 m, 2.95 m]", "ceiling"),
    ("[0.05 m, 2 m, 1.6 m]", "[0.05 m, 1.85 m, 1.6 m]", "wall"),
]


@pytest.mark.parametrize("hood, joint, name", ROOM)
def test_parts_of_the_room_are_surfaces_too(hood, joint, name):
    there = [("at: [2 m, 1.85 m, 1 m]", f"at: {joint}"), ("at: [2 m, 2 m, 1 m]", f"at: {hood}")]
    assert any(text.startswith(f"its rim rests on the {name},") for text in cautions_of(*there))


def test_in_a_corner_both_are_named():
    corner = [
        ("at: [2 m, 1.85 m, 1 m]", "at: [0.05 m, 1.85 m, 1 m]"),
        ("at: [2 m, 2 m, 1 m]", "at: [0.05 m, 2 m, 1 m]"),
    ]
    told = cautions_of(*corner, ("corner: [1 m,", "corner: [0 m,"))
    assert any(text.startswith("its rim rests on the bench and the wall,") for text in told)


def test_a_slot_along_the_bench_says_so():
    assert "its rim rests on the bench, which mirrors it for the joint" in cautions_of(
        SLOT, ("at: [2 m, 2 m, 1 m]", "at: [2 m, 2 m, 0.975 m]"), ("1.85 m, 1 m]", "1.85 m, 0.975 m]")
    )


def test_a_slot_law_that_stands_alone_is_not_to_be_trusted():
    alone = "only the slot law holds for the joint;"
    assert any(text.startswith(alone) for text in cautions_of(SLOT, AIRBORNE))
    assert not any(text.startswith(alone) for text in cautions_of(SLOT, AIRBORNE, ("1 m, 50 mm", "0.6 m, 50 mm")))


def test_a_draught_carries_off_what_lies_beyond_the_reach():
    """Plain: sqrt(Q / (2 pi u)) = sqrt(0.083333 / (2 pi x 0.4)) = 0.18209 m; from 0.6 m/s on less than 150 mm."""
    mild = ("size: [9 m, 9 m, 3 m]", "size: [9 m, 9 m, 3 m], draught: {towards: [1, 0, 0], speed: 0.4 m/s}")
    strong = (mild[0], mild[1].replace("0.4 m/s", "0.6 m/s"))
    fast = ("dispersion: gentle", "dispersion: driven")
    assert not any("in draughts of" in text for text in cautions_of(AIRBORNE, mild, fast))
    assert (
        "in draughts of 0.6 m/s across it, 300 m³/h draws in what lies up to 149 mm ahead; the joint is 150 mm away: "
        "shield it, or bring the hood closer"
    ) in cautions_of(AIRBORNE, strong, fast)


def test_every_form_has_its_caution():
    assert set(FORMS) == set(load_table("hood_forms").columns["form"])


@pytest.mark.parametrize("form", FORMS)
def test_a_form_is_told_what_its_table_supposes(form):
    found = cautions_of(AIRBORNE, ("    facing", f"    form: {form}\n    facing"))
    assert FORMS[form][0] in found
    assert not any("upper end of its class" in text or "off its axis" in text for text in found)


def test_the_upper_end_of_a_form_is_that_of_its_table():
    """400 cfm/ft2 x pi / 4 x 0.1² m2 = 2.032 x 0.00785398 = 0.015959 m3/s = 57.45 m3/h; a side bench has one value."""
    table = ("    facing", "    form: downdraught bench\n    facing")
    assert "for the joint the lower end of its table was taken; the upper end is 57.5 m³/h" in cautions_of(table)
    bench = ("    facing", "    form: side-draught bench\n    facing")
    assert not any("upper end" in text for text in cautions_of(bench))


def test_a_form_tells_no_velocity_at_the_source():
    (need,) = answer_of(("    facing", "    form: downdraught bench\n    facing")).hoods[0].needs
    assert (need.velocity, need.velocity_at_most) == (None, None)
    assert need.basis.endswith("; the table of its form does not ask for it")


def test_the_velocity_is_that_of_the_laws_even_where_the_regulation_asks_more():
    """50 mm: 0.5 x (0.025 + 0.00785398) = 0.016427 m3/s; the table's 150 cfm = 0.070792 m3/s for 0.5 m/s and more."""
    weld = (
        AIRBORNE,
        ("dispersion: gentle", "dispersion: gentle, process: TIG welding"),
        ("1.85 m, 1 m]", "1.95 m, 1 m]"),
    )
    (need,) = answer_of(*weld, ("300 m3/h", "59.137 m3/h")).hoods[0].needs
    assert need.flow == pytest.approx(0.070792, rel=2e-4)
    assert need.velocity == pytest.approx(0.5, rel=2e-4)
    assert not any("upper end" in text for text in cautions_of(*weld))  # the table asks most at either end


def test_a_shroud_on_the_tool_may_hold_what_is_thrown():
    thrown = ("dispersion: gentle", "dispersion: thrown")
    shroud = ("    facing", "    form: on-tool grinder\n    facing")
    assert "thrown" not in answer_of(thrown, shroud).hoods[0].enough.because
    assert answer_of(thrown, shroud).hoods[0].enough.verdict is Verdict.MEETS
    assert "receive or enclose it" in answer_of(thrown).hoods[0].enough.because


def test_a_form_is_not_told_to_turn():
    """A grille that the work lies beside or behind: the table asks for no direction."""
    behind = ("facing: [0, -1, 0]", "form: downdraught bench\n    facing: [0, 0, 1]")
    assert not [hint for hint in answer_of(behind, ("300 m3/h", "20 m3/h")).hoods[0].hints if hint.change == "turn"]


def test_more_flow_is_not_proposed_through_a_duct_that_it_would_race():
    """420 m3/h through 45 mm: 73 m/s."""
    duct = "ducts:\n- {name: A, from: hood, to: fan, round: 45 mm, length: 1 m}\n"
    duct += "- {name: B, from: fan, to: outside, round: 45 mm, length: 1 m}\nfans: [{name: fan}]\nhoods:"
    changes = [AIRBORNE, ("hoods:", duct)]
    assert "more flow" not in {hint.change for hint in answer_of(*changes).hoods[0].hints}
    wide = [AIRBORNE, ("hoods:", duct.replace("45 mm", "80 mm"))]
    assert "more flow" in {hint.change for hint in answer_of(*wide).hoods[0].hints}
