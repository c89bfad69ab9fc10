"""Open tanks: the table of lateral exhaust for a hood at the edge, where it holds, and what would help.

A tank of 1.2 m by 0.6 m, class B-2, drawn along its long side: W / L is 0.5, and 225 cfm a square foot are asked.
"""

import pytest

from hoodwright.errors import WorkplaceError
from hoodwright.results import Verdict
from hoodwright.sources import find_source
from hoodwright.tasks.assess import assess
from hoodwright.tasks.capturing.tank_laws import EQUATION, own_part, tank_law, tank_trouble
from hoodwright.workplace import parse_workplace

TANK = """\
hoodwright: 1
name: Test room
room: {size: [8 m, 6 m, 3 m]}
contaminants: [{name: mist, kind: mist}]
sources:
  - name: tank
    contaminant: mist
    box: [[3 m, 3 m, 1 m], [4.2 m, 3.6 m, 1 m]]
    dispersion: still
    tank: {hazard: B, evolution: 2}
hoods:
  - name: rim slot
    type: capturing
    serves: [tank]
    opening: {slot: [1.2 m, 40 mm]}
    at: [3.6 m, 3.6 m, 1.02 m]
    facing: [0, -1, 0]
"""
OPPOSITE = (
    TANK[TANK.index("  - name: rim slot") :]
    .replace("rim slot", "other slot")
    .replace("at: [3.6 m, 3.6 m, 1.02 m]\n    facing: [0, -1, 0]", "at: [3.6 m, 3 m, 1.02 m]\n    facing: [0, 1, 0]")
)
CFM_FT2 = 0.3048 / 60
AREA = 1.2 * 0.6


def workplace_of(*changes: tuple[str, str], more: str = ""):
    text = TANK
    for old, new in changes:
        assert old in text, old
        text = text.replace(old, new, 1)
    return parse_workplace(text + more)


def of(*changes: tuple[str, str], more: str = ""):
    workplace = workplace_of(*changes, more=more)
    return workplace.hoods[0], workplace.sources[0], workplace


def cautions_of(workplace) -> list[str]:
    return [c.text.replace("\u2009", " ") for c in assess(workplace).cautions if c.about == "rim slot"]


def test_the_table_asks_by_class_and_shape():
    hood, source, _ = of()
    law = tank_law(hood, source)
    assert law.flow == pytest.approx(225 * CFM_FT2 * AREA)
    assert law.equation == EQUATION
    assert law.line.formula == "Q = q W L, q of the table: 225 cfm for each square foot"
    assert law.line.filled == "class B-2, 100 fpm, W / L = 0.5, standing free: 1.143 x 0.6 x 1.2 = 0.82296 m3/s"
    assert law.reach == "up to a width of 2 lengths, here 0.5; an undisturbed place"
    assert find_source(law.source).trust == "memory"


def test_a_wall_behind_the_hood_asks_less():
    hood, source, _ = of(("evolution: 2}", "evolution: 2, baffled: true}"))
    assert tank_law(hood, source).flow == pytest.approx(175 * CFM_FT2 * AREA)


def test_what_lies_between_hood_and_liquid_counts_as_width():
    hood, source, _ = of(("3.6 m, 3.6 m, 1.02 m", "3.6 m, 3.8 m, 1.02 m"))
    assert tank_law(hood, source).flow == pytest.approx(225 * CFM_FT2 * 1.2 * 0.8)


def test_a_hood_at_the_short_side_draws_over_the_length():
    hood, source, _ = of(
        ("slot: [1.2 m", "slot: [0.6 m"), ("3.6 m, 3.6 m, 1.02 m", "3 m, 3.3 m, 1.02 m"), ("[0, -1, 0]", "[1, 0, 0]")
    )
    assert tank_law(hood, source).flow == pytest.approx(250 * CFM_FT2 * AREA)


def test_two_hoods_that_face_each_other_share_the_tank():
    """Half the width: W / L is 0.25, 200 cfm a square foot, and half the area for each."""
    hood, source, workplace = of(more=OPPOSITE)
    half = own_part(hood, source, workplace)
    assert half.plan == pytest.approx((1.2, 0.3))
    assert {point[1] for point in half.points} == {3.3, 3.6}
    answer = assess(workplace)
    for found in answer.hoods:
        assert found.worst.laws[0].flow == pytest.approx(200 * CFM_FT2 * AREA / 2)
        assert found.worst.place.startswith("301")
        assert found.worst.place.endswith("from the middle of")


def test_a_hood_beside_another_on_the_same_side_has_all_of_it():
    hood, source, workplace = of(more=OPPOSITE.replace("facing: [0, 1, 0]", "facing: [0, -1, 0]"))
    assert own_part(hood, source, workplace) is source


def test_the_laws_of_slots_stand_beside_it_and_the_most_demanding_rules():
    need = assess(workplace_of(("box: [[3 m, 3 m", "box: [[3 m, 3.1 m"))).hoods[0].worst
    assert [law.equation for law in need.laws][:2] == [EQUATION, "Silverman, plain slot"]
    assert need.flow == max(law.flow for law in need.laws) == need.laws[0].flow


def test_a_short_hood_at_a_tank_is_judged_like_any_other():
    need = assess(workplace_of(("slot: [1.2 m", "slot: [1 m"))).hoods[0].worst
    assert EQUATION not in [law.equation for law in need.laws]


@pytest.mark.parametrize(
    "change, why",
    [
        (("hazard: B, evolution: 2", "hazard: C, evolution: 4"), "class C-4 asks for general ventilation only"),
        (("[0, -1, 0]", "[0, -0.9, -0.4]"), "the table is for a hood that looks level and square across the tank"),
        (("[0, -1, 0]", "[0.5, -1, 0]"), "the table is for a hood that looks level and square across the tank"),
        (
            ("3.6 m, 3.6 m, 1.02 m", "3.6 m, 4 m, 1.02 m"),
            "the table is for a hood at the edge of the tank, within 300 mm",
        ),
        (
            ("3.6 m, 3.6 m, 1.02 m", "3.6 m, 3.6 m, 1.5 m"),
            "the table is for a hood at the edge of the tank, within 300 mm",
        ),
        (("slot: [1.2 m", "slot: [1 m"), "the table is for a hood as long as the side of the tank"),
        (("[4.2 m, 3.6 m, 1 m]", "[4.2 m, 0.4 m, 1 m]"), "the tank is 2.2 times as wide as it is long"),
    ],
)
def test_where_the_table_does_not_hold_a_caution_says_why(change, why):
    change = (change, ("3.6 m, 3.6 m, 1.02 m", "3.6 m, 3 m, 1.02 m")) if "0.4 m" in change[1] else (change,)
    hood, source, workplace = of(*change)
    assert tank_law(hood, source) is None
    assert tank_trouble(hood, source, "SI").replace("\u2009", " ").startswith(why)
    assert any(text.startswith(why) and text.endswith("it is not asked here") for text in cautions_of(workplace))


@pytest.mark.parametrize(
    "width, told",
    [(0.5, None), (0.6, "a hood on each long side is better"), (1.0, "push and pull"), (1.3, "not practical")],
)
def test_a_wide_tank_is_told(width, told):
    texts = cautions_of(workplace_of(("box: [[3 m, 3 m, 1 m]", f"box: [[3 m, {3.6 - width} m, 1 m]")))
    across = [text for text in texts if "of the tank to cross" in text]
    assert bool(across) is (told is not None)
    assert told is None or told in across[0]


def test_a_tank_wider_than_long_is_told_to_be_drawn_the_other_way():
    changes = (
        ("slot: [1.2 m", "slot: [0.6 m"),
        ("3.6 m, 3.6 m, 1.02 m", "3 m, 3.3 m, 1.02 m"),
        ("[0, -1, 0]", "[1, 0, 0]"),
    )
    assert any("wider than long: draw along its longer side" in text for text in cautions_of(workplace_of(*changes)))


def test_hints_at_a_tank_are_a_baffle_and_a_hood_on_the_other_side():
    hints = {hint.change: hint for hint in assess(workplace_of()).hoods[0].hints}
    assert not {"closer", "turn", "plate"} & set(hints)
    assert hints["baffle"].flow.value == pytest.approx(175 * CFM_FT2 * AREA, rel=5e-3)
    assert (
        hints["baffle"].text.replace("\u2009", " ").startswith("with a wall or an upright plate 600 mm high behind it")
    )
    assert hints["two sides"].flow.value == pytest.approx(200 * CFM_FT2 * AREA, rel=5e-3)


def test_the_caution_of_the_lower_end_is_left_out_where_the_table_asks_most():
    assert not any("lower end of its class" in text for text in cautions_of(workplace_of()))


def test_a_canopy_is_not_used_for_hazard_a():
    text = TANK.replace("hazard: B", "hazard: A").replace("type: capturing", "type: receiving")
    text = text.replace("slot: [1.2 m, 40 mm]", "rectangle: [2 m, 1.4 m]").replace("[0, -1, 0]", "[0, 0, -1]")
    text = text.replace("3.6 m, 3.6 m, 1.02 m", "3.6 m, 3.3 m, 1.6 m") + "    intended_flow: 40000 m3/h\n"
    found = assess(parse_workplace(text)).hoods[0]
    assert found.enough.verdict is not Verdict.MEETS
    assert "a tank of hazard A, for which a canopy is not used" in found.enough.because


@pytest.mark.parametrize(
    "change, fault",
    [
        (("hazard: B", "hazard: E"), "sources[tank].tank.hazard: got 'E'; allowed: A, B, C, D; choose one of these"),
        (
            ("evolution: 2", "evolution: 5"),
            "sources[tank].tank.evolution: got '5'; allowed: 1, 2, 3, 4; choose one of these",
        ),
        (
            ("hazard: B, ", "hazzard: B, hazard: B, "),
            "sources[tank].tank.hazzard: unknown key; allowed here: hazard, evolution, baffled; did you mean 'hazard'?",
        ),
        (("hazard: B, ", ""), "sources[tank].tank.hazard: missing; add 'hazard: B'"),
        (
            ("box: [[3 m, 3 m, 1 m], [4.2 m, 3.6 m, 1 m]]", "at: [3 m, 3 m, 1 m]"),
            "sources[tank]: 'tank' needs the liquid's surface: give two opposite corners of it, for example "
            "'box: [[2 m, 1 m, 0.9 m], [3 m, 1.6 m, 0.9 m]]', in place of at",
        ),
        (
            ("[4.2 m, 3.6 m, 1 m]", "[4.2 m, 3 m, 1 m]"),
            "sources[tank]: 'tank' needs a surface: the corners of its 'box' must differ in x and in y",
        ),
    ],
)
def test_one_clear_fault(change, fault):
    with pytest.raises(WorkplaceError) as caught:
        workplace_of(change)
    (told,) = (str(found).split(": ", 1)[1] for found in caught.value.faults)
    assert told == fault
