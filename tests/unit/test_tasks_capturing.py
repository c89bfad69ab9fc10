"""Slots, resting hoods, tables and sources with extent: what they ask, by numbers worked out on paper."""

import math

import pytest

from hoodwright.tasks.assess import assess
from hoodwright.tasks.need import needs_of
from hoodwright.tasks.recompute import recompute
from hoodwright.workplace import parse_workplace

BENCH = """
hoodwright: 1
name: Bench
room: {size: [9 m, 9 m, 3 m]}
contaminants: [{name: fume, kind: fume, hazards: []}]
surfaces: [{name: bench, corner: [1 m, 1 m, 0.9 m], sides: [[2 m, 0 m, 0 m], [0 m, 1.5 m, 0 m]]}]
sources: [{name: joint, contaminant: fume, at: [2 m, 1.8 m, 1.3 m], dispersion: gentle}]
hoods:
  - name: hood
    type: capturing
    serves: [joint]
    opening: {slot: [1 m, 50 mm]}
    flange: 0 mm
    at: [2 m, 2 m, 1.3 m]
    facing: [0, -1, 0]
"""
PAPER = 2e-4


def need_of(*changes: tuple[str, str]):
    text = BENCH
    for old, new in changes:
        assert old in text
        text = text.replace(old, new)
    workplace = parse_workplace(text)
    return needs_of(workplace.hoods[0], workplace)[0]


def flows(need) -> dict[str, float]:
    return {law.equation: law.flow for law in need.laws}


FLANGED = ("flange: 0 mm", "flange: 230 mm")  # sqrt(1 x 0.05) = 224 mm
LOW = [("at: [2 m, 2 m, 1.3 m]", "at: [2 m, 2 m, 0.95 m]"), ("1.8 m, 1.3 m]", "1.8 m, 0.95 m]")]
SQUARE = ("{slot: [1 m, 50 mm]}", "{rectangle: [200 mm, 100 mm]}")


def test_plain_slot():
    """3.7 x 1 x 0.5 x 0.2 = 0.37 m3/s."""
    assert flows(need_of()) == {"Silverman, plain slot": pytest.approx(0.37, rel=PAPER)}


def test_flanged_slot_and_the_exact_line():
    """2.6 x 1 x 0.5 x 0.2 = 0.26; 2 pi x 0.2 x sqrt(0.2² + 0.5²) x 0.5 = 0.338365 m3/s."""
    assert flows(need_of(FLANGED)) == {
        "Silverman, flanged slot": pytest.approx(0.26, rel=PAPER),
        "line in an infinite flange": pytest.approx(0.338365, rel=PAPER),
    }


def test_a_line_source_is_judged_at_its_end():
    """Before the end of the slot, at 0.5 m aside: 2 pi X L V / (s2 / r2), s2 = 1, r2 = sqrt(1.04), s1 = 0.

    2 pi x 0.2 x 1 x 0.5 x 1.019804 = 0.640762 m3/s.
    """
    seam = ("at: [2 m, 1.8 m, 1.3 m]", "line: [[1.5 m, 1.8 m, 1.3 m], [2.5 m, 1.8 m, 1.3 m]]")
    need = need_of(FLANGED, seam)
    assert flows(need) == {"line in an infinite flange": pytest.approx(0.640762, rel=PAPER)}
    assert need.place == "200\u2009mm from the far end of"


def test_a_slot_law_that_asks_less_than_is_certain_is_not_used():
    """At 0.45 m the flanged law asks 2.6 x 0.5 x 0.45 = 0.585 m3/s, 2 pi x 0.45² x 0.5 = 0.636173: none can do it."""
    far, no_bench = ("1.8 m, 1.3 m]", "1.55 m, 1.3 m]"), ("1 m, 0.9 m]", "1 m, 0.1 m]")
    assert list(flows(need_of(FLANGED, far, no_bench))) == ["line in an infinite flange"]
    assert "Silverman, flanged slot" in flows(need_of(FLANGED, ("1.8 m, 1.3 m]", "1.6 m, 1.3 m]")))


def test_beyond_half_its_length_the_line_alone_is_left():
    """At 0.6 m: 2 pi x 0.6 x sqrt(0.36 + 0.25) x 0.5 = 1.47220 m3/s."""
    far = ("at: [2 m, 1.8 m, 1.3 m]", "at: [2 m, 1.4 m, 1.3 m]")
    assert flows(need_of(FLANGED, far)) == {"line in an infinite flange": pytest.approx(1.47220, rel=PAPER)}
    assert not need_of(far).in_range


def test_a_hood_on_the_bench_needs_less():
    """200 x 100 mm, rim on the bench, so its middle is 50 mm above: X² = 0.2² + 0.05² = 0.0425 m2 from its foot.

    DallaValle 0.5 x (5 x 0.0425 + 0.02) = 0.11625 m3/s; free, 0.5 x (10 x 0.2² + 0.02) = 0.21.
    Fletcher, half of a square of 200 mm, a² = 0.0425 / 0.04: 0.5 x 0.04 x (0.93 + 8.58 x 1.0625) / 2 = 0.100463.
    """
    on_bench = need_of(SQUARE, *LOW)
    assert flows(on_bench) == {
        "DallaValle, plain, on a surface": pytest.approx(0.11625, rel=PAPER),
        "Fletcher 1977, plain rectangle, with its image": pytest.approx(0.100463, rel=PAPER),
    }
    assert flows(need_of(SQUARE))["DallaValle, plain"] == pytest.approx(0.21, rel=PAPER)


def test_a_hood_in_a_corner_needs_least():
    """Bench and wall, its foot 50 and 100 mm aside: X² = 0.2² + 0.05² + 0.1² = 0.0525 m2.

    DallaValle 0.5 x (2.5 x 0.0525 + 0.02) = 0.075625 m3/s.
    Fletcher, a quarter of 400 x 200 mm: X / sqrt A = 0.810093, b = 0.2 x 0.810093^(-1/3) = 0.214545,
    a = 0.810093 x 2^0.214545 = 0.939981; 0.5 x 0.08 x (0.93 + 8.58 x 0.883565) / 4 = 0.0851098 m3/s.
    """
    wall = [("[2 m, 2 m, 0.95 m]", "[0.1 m, 2 m, 0.95 m]"), ("[2 m, 1.8 m, 0.95 m]", "[0.1 m, 1.8 m, 0.95 m]")]
    bench = ("corner: [1 m,", "corner: [0 m,")
    assert flows(need_of(SQUARE, *LOW, *wall, bench)) == {
        "DallaValle, plain, in a corner": pytest.approx(0.075625, rel=PAPER),
        "Fletcher 1977, plain rectangle, with its images": pytest.approx(0.0851098, rel=PAPER),
    }


def test_a_slot_along_the_bench_needs_half():
    """Rim 25 mm below its middle: 1.85 x 1 x 0.5 x 0.2 = 0.185 m3/s.

    Fletcher, half of 1 m x 100 mm: X / sqrt A = 0.632456, b = 0.232999, a = 0.632456 x 10^0.232999 = 1.08151;
    0.5 x 0.1 x (0.93 + 8.58 x 1.16966) / 2 = 0.274142 m3/s.
    """
    low = [(old, new.replace("0.95", "0.925")) for old, new in LOW]
    assert flows(need_of(*low)) == {
        "Silverman, plain slot, along a surface": pytest.approx(0.185, rel=PAPER),
        "Fletcher 1977, plain rectangle, with its image": pytest.approx(0.274142, rel=PAPER),
    }


def test_a_flanged_hood_on_the_bench_has_the_exact_rectangle_too():
    """Half of a square of 200 mm, X = sqrt(0.0425) = 0.206155 m, half sides 0.1 m:

    X sqrt(a² + b² + X²) = 0.206155 x 0.25 = 0.0515388; atan(0.01 / 0.0515388) = 0.191647;
    0.5 x pi x 0.04 / (2 x 0.191647) / 2 = 0.0819629 m3/s.
    """
    flanged = need_of(SQUARE, *LOW, ("flange: 0 mm", "flange: 150 mm"))
    assert flows(flanged) == {
        "DallaValle, flanged, on a surface": pytest.approx(0.75 * 0.11625, rel=PAPER),
        "rectangle in an infinite flange, even suction, with its image": pytest.approx(0.0819629, rel=PAPER),
    }
    law = flanged.laws[1]
    assert law.line.filled.endswith(" / 2 = 0.081963 m3/s")
    assert law.line.formula.endswith("; for the opening with its images, of which it is one of 2")


def test_a_slot_that_stands_on_its_end_is_not_helped():
    """Its image makes it twice as long with twice the flow: before it nothing changes."""
    upright = [("{slot: [1 m, 50 mm]}", "{slot: [1 m, 50 mm]}\n    along: [0, 0, 1]"), ("2 m, 1.3 m]", "2 m, 1.4 m]")]
    standing = need_of(*upright, ("1.8 m, 1.3 m]", "1.8 m, 1.4 m]"))
    assert flows(standing) == {"Silverman, plain slot": pytest.approx(0.37, rel=PAPER)}


def test_a_surface_that_cuts_the_opening_is_not_one_to_rest_on():
    cut = [(old, new.replace("0.95", "0.92")) for old, new in LOW]
    assert "DallaValle, plain" in flows(need_of(SQUARE, *cut))


def test_a_source_below_the_bench_is_not_helped_by_it():
    below = (LOW[0], ("1.8 m, 1.3 m]", "1.8 m, 0.88 m]"))
    assert "DallaValle, plain" in flows(need_of(SQUARE, *below))


def test_every_part_of_the_source_must_lie_over_the_bench():
    """The bench ends at 1 m: half of a seam from 1.0 m to 2.2 m beyond it is drawn from all round."""
    seam = ("at: [2 m, 1.8 m, 0.95 m]", "line: [[2 m, 1.8 m, 0.95 m], [0.95 m, 2.1 m, 0.95 m]]")
    long_one = ("{slot: [1 m, 50 mm]}", "{rectangle: [2.4 m, 100 mm]}")
    low = [(old, new) for old, new in LOW]
    told = flows(need_of(long_one, *low, seam))
    assert all("along a surface" not in name for name in told)


def test_nearer_than_its_width_a_flanged_slot_has_the_exact_rectangle():
    """30 mm before 1 m x 50 mm: a b = 0.5 x 0.025, X sqrt(a² + b² + X²) = 0.03 x sqrt(0.251525) = 0.0150456;

    atan(0.0125 / 0.0150456) = 0.693234; 0.5 x pi x 0.05 / (2 x 0.693288) = 0.0566467 m3/s.
    """
    close = ("1.8 m, 1.3 m]", "1.97 m, 1.3 m]")
    assert flows(need_of(FLANGED, close)) == {
        "rectangle in an infinite flange, even suction": pytest.approx(0.0566467, rel=PAPER)
    }


def test_of_a_slot_the_point_off_its_end_asks_most():
    """0.2 m ahead of the middle, or 0.19 m ahead of the end: 2 pi x 0.19 x 0.5 / (1 / sqrt(0.19² + 1)) = 0.607581."""
    seam = ("at: [2 m, 1.8 m, 1.3 m]", "line: [[2 m, 1.8 m, 1.3 m], [2.5 m, 1.81 m, 1.3 m]]")
    assert need_of(FLANGED, seam).flow == pytest.approx(0.607581, rel=PAPER)


@pytest.mark.parametrize(
    "change", [("corner: [1 m, 1 m, 0.9 m]", "corner: [1 m, 1.9 m, 0.9 m]"), ("0.9 m]", "0.85 m]")]
)
def test_a_bench_that_ends_before_the_source_or_lies_lower_does_not_help(change):
    assert "DallaValle, plain" in flows(need_of(SQUARE, *LOW, change))


def test_a_form_has_its_table_alone():
    """1.2 x 0.6 m at 200 cfm/ft2 = 1.016 m/s: 0.73152 m3/s, twice that for a carcinogen."""
    table = [("{slot: [1 m, 50 mm]}", "{rectangle: [1.2 m, 0.6 m]}"), ("flange: 0 mm", "form: downdraught bench")]
    up = ("facing: [0, -1, 0]", "facing: [0, 0, 1]")
    need = need_of(*table, up)
    assert flows(need) == {"table, downdraught bench": pytest.approx(0.73152, rel=PAPER)}
    assert need.laws[0].line.filled == "200 x 0.00508 x 0.72 = 0.73152 m3/s"
    grave = need_of(*table, up, ("hazards: []", "hazards: [carcinogen]"))
    assert grave.flow == pytest.approx(1.46304, rel=PAPER)


def test_a_welding_hood_has_the_regulation_beside_the_laws():
    """200 mm lies in the zone to 8 in: 275 cfm = 0.129786 m3/s."""
    weld = ("dispersion: gentle", "dispersion: gentle, process: MIG or MAG welding")
    assert flows(need_of(weld, SQUARE))["table, movable welding hood"] == pytest.approx(0.129786, rel=PAPER)
    assert "table, movable welding hood" not in flows(need_of(SQUARE))
    law = need_of(weld, SQUARE).laws[-1]
    assert law.line.filled == "275 x 0.00047195 = 0.12979 m3/s"


@pytest.mark.parametrize("process, asked", [("brazing with cadmium filler", True), ("laser cutting of metal", False)])
def test_the_regulation_is_for_welding_brazing_and_flame_cutting(process, asked):
    there = ("dispersion: gentle", f"dispersion: gentle, process: {process}")
    assert ("table, movable welding hood" in flows(need_of(there, SQUARE))) is asked


@pytest.mark.parametrize("fixed", [[], [SQUARE, *LOW]])
def test_a_slot_or_a_resting_hood_is_no_movable_welding_hood(fixed):
    weld = ("dispersion: gentle", "dispersion: gentle, process: MIG or MAG welding")
    assert "table, movable welding hood" not in flows(need_of(weld, *fixed))


def test_a_box_is_judged_at_its_farthest_corner():
    """Corners 0.1 m either side: farthest (0.1, 0.3, 0.1) from the opening: 331.7 mm."""
    box = ("at: [2 m, 1.8 m, 1.3 m]", "box: [[1.9 m, 1.7 m, 1.2 m], [2.1 m, 1.9 m, 1.4 m]]")
    need = need_of(("{slot: [1 m, 50 mm]}", "{rectangle: [400 mm, 300 mm]}"), box)
    assert need.distance == pytest.approx(0.331662, rel=PAPER)


def test_every_law_can_be_recomputed():
    lying = [(old, new.replace("0.95", "0.925")) for old, new in LOW]
    wide = ("flange: 0 mm", "flange: 150 mm")
    for changes in ([], [FLANGED], [SQUARE, *LOW], [SQUARE, *LOW, wide], lying, [FLANGED, *lying]):
        for law in need_of(*changes).laws:
            typed = recompute(law.line.filled)
            assert typed, law.line.filled
            found = eval(typed.replace("^", "**"), {"sqrt": math.sqrt, "atan": math.atan})  # the text is our own
            assert found == pytest.approx(law.flow, rel=1e-3)


def test_the_whole_answer_names_the_sources_of_its_laws():
    answer = assess(parse_workplace(BENCH))
    assert "exam-equations" in answer.sources


def test_a_source_in_line_with_a_tiny_slot_is_answered():
    """0.9 m along a slot of 10 x 1 mm, in its plane: nothing is drawn from there that a number could tell."""
    tiny = ("{slot: [1 m, 50 mm]}", "{rectangle: [10 mm, 1 mm]}")
    beside = ("at: [2 m, 1.8 m, 1.3 m]", "at: [2.9 m, 2 m, 1.3 m]")
    assert not need_of(tiny, beside).in_range
