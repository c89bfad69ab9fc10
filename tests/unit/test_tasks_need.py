"""What a hood needs at its source, by numbers worked out on paper from the printed equations."""

import math

import pytest

from hoodwright.tasks.need import needs_of
from hoodwright.workplace import parse_workplace

# A round opening of 100 mm looks along -y. A = pi / 4 x 0.1² = 0.00785398 m2.
BENCH = """
hoodwright: 1
name: Bench
room: {size: [9 m, 9 m, 3 m]}
contaminants: [{name: fume, kind: fume, hazards: []}]
surfaces: []
sources: [{name: joint, contaminant: fume, at: [2 m, 1.85 m, 1 m], dispersion: gentle}]
hoods:
  - name: nozzle
    type: capturing
    serves: [joint]
    opening: {round: 100 mm}
    flange: 0 mm
    at: [2 m, 2 m, 1 m]
    facing: [0, -1, 0]
"""
PAPER = 2e-4  # relative: the numbers below carry five digits


def need_of(*changes: tuple[str, str], design_flow: float | None = None):
    text = BENCH
    for old, new in changes:
        assert old in text
        text = text.replace(old, new)
    workplace = parse_workplace(text)
    return needs_of(workplace.hoods[0], workplace, design_flow)[0]


def flows(need) -> dict[str, float]:
    return {law.equation: law.flow for law in need.laws}


def source_at(x: str, y: str) -> tuple[str, str]:
    return "at: [2 m, 1.85 m, 1 m]", f"at: [{x}, {y}, 1 m]"


RECTANGLE = ("{round: 100 mm}", "{rectangle: [200 mm, 100 mm]}")
FULL_FLANGE = ("flange: 0 mm", "flange: 150 mm")


def test_plain_round_opening():
    """Q = V (10 X² + A) = 0.5 x (10 x 0.15² + 0.00785398) = 0.116427 m3/s.

    Garrison: X / D = 1.5, share 0.08 x 1.5^-1.7 = 0.0401550; 0.5 x 0.00785398 / 0.0401550 = 0.0977958 m3/s.
    """
    need = need_of()
    assert flows(need) == {
        "DallaValle, plain": pytest.approx(0.116427, rel=PAPER),
        "Garrison 1983, plain round nozzle": pytest.approx(0.0977958, rel=PAPER),
    }
    assert need.distance == pytest.approx(0.15)
    # 1 - 0.0977958 / 0.116427 = 0.16002
    assert need.spread == pytest.approx(0.16002, abs=1e-4)


def test_flanged_round_opening_by_four_equations():
    """At 100 mm, with a flange of 100 mm (at least sqrt A = 88.6 mm), V = 0.5 m/s:

    DallaValle      0.75 x 0.5 x (10 x 0.1² + 0.00785398)              = 0.040445 m3/s
    even suction    0.5 x pi x 0.05² / (1 - 0.1 / sqrt(0.1² + 0.05²))  = 0.0039270 / 0.105573 = 0.037197 m3/s
    ideal potential 0.5 x 2 pi x (0.05² + 0.1²)                        = 0.039270 m3/s
    Garrison        X / D = 1, share 0.10; 0.5 x 0.00785398 / 0.10     = 0.039270 m3/s
    """
    need = need_of(source_at("2 m", "1.9 m"), ("flange: 0 mm", "flange: 100 mm"))
    assert flows(need) == {
        "DallaValle, flanged": pytest.approx(0.040445, rel=PAPER),
        "round opening in an infinite flange, even suction": pytest.approx(0.037197, rel=PAPER),
        "round opening in an infinite flange, ideal potential": pytest.approx(0.039270, rel=PAPER),
        "Garrison 1983, flanged round nozzle": pytest.approx(0.039270, rel=PAPER),
    }
    assert need.flow == pytest.approx(0.040445, rel=PAPER)
    # 1 - 0.037197 / 0.040445 = 0.08031
    assert need.spread == pytest.approx(0.08031, abs=1e-4)


def test_plain_rectangle_where_fletcher_asks_most():
    """200 x 100 mm at 150 mm: A = 0.02 m2, V = 0.5 m/s.

    DallaValle 0.5 x (10 x 0.15² + 0.02) = 0.12250 m3/s
    Fletcher   X / sqrt A = 1.06066, b = 0.2 x 1.06066^(-1/3) = 0.196112, a = 1.06066 x 2^0.196112 = 1.21510,
               0.5 x 0.02 x (0.93 + 8.58 x 1.21510²) = 0.135981 m3/s
    """
    need = need_of(RECTANGLE)
    assert flows(need) == {
        "DallaValle, plain": pytest.approx(0.12250, rel=PAPER),
        "Fletcher 1977, plain rectangle": pytest.approx(0.135981, rel=PAPER),
    }
    assert need.flow == pytest.approx(0.135981, rel=PAPER)


def test_a_rectangle_may_be_given_upright():
    upright = ("{round: 100 mm}", "{rectangle: [100 mm, 200 mm]}")
    assert flows(need_of(upright)) == flows(need_of(RECTANGLE))


def test_flanged_rectangle():
    """200 x 100 mm at 150 mm, flange 150 mm (at least sqrt A = 141.4 mm), V = 0.5 m/s:

    DallaValle   0.75 x 0.5 x (10 x 0.15² + 0.02) = 0.091875 m3/s
    solid angle  a b = 0.1 x 0.05 = 0.005; X sqrt(a² + b² + X²) = 0.15 x sqrt(0.035) = 0.0280624;
                 atan(0.178174) = 0.176324; 0.5 x pi x 0.02 / (2 x 0.176324) = 0.089086 m3/s
    """
    assert flows(need_of(RECTANGLE, FULL_FLANGE)) == {
        "DallaValle, flanged": pytest.approx(0.091875, rel=PAPER),
        "rectangle in an infinite flange, even suction": pytest.approx(0.089086, rel=PAPER),
    }


def test_a_slot_is_too_long_for_dallavalle():
    """500 x 50 mm at 100 mm: X / sqrt A = 0.632456, b = 0.2 x 0.632456^(-1/3) = 0.232999,
    a = 0.632456 x 10^0.232999 = 1.08151; 0.5 x 0.025 x (0.93 + 8.58 x 1.08151²) = 0.137070 m3/s.
    Silverman: 3.7 x 0.5 x 0.5 x 0.1 = 0.0925 m3/s."""
    need = need_of(("{round: 100 mm}", "{rectangle: [500 mm, 50 mm]}"), source_at("2 m", "1.9 m"))
    assert flows(need) == {
        "Silverman, plain slot": pytest.approx(0.0925, rel=PAPER),
        "Fletcher 1977, plain rectangle": pytest.approx(0.137070, rel=PAPER),
    }


def test_a_slot_of_twenty_to_one_has_the_line_law_alone():
    """3.7 x 1.0 x 0.5 x 0.15 = 0.2775 m3/s; lying upright it is the same slot."""
    for sides in ("[1000 mm, 50 mm]", "[50 mm, 1000 mm]"):
        need = need_of(("{round: 100 mm}", f"{{rectangle: {sides}}}"))
        assert flows(need) == {"Silverman, plain slot": pytest.approx(0.2775, rel=PAPER)}


def test_the_most_demanding_source_class_range_is_used_by_hazard():
    """Gentle release: 0.5 to 1.0 m/s; the upper end for an asthmagen. Q doubles."""
    plain, grave = need_of(), need_of(("hazards: []", "hazards: [asthmagen]"))
    assert (plain.capture_velocity, grave.capture_velocity) == (0.5, 1.0)
    assert grave.flow == pytest.approx(2 * plain.flow)
    assert grave.basis == "gentle release, 0.5 to 1\u2009m/s; upper end taken for the hazard 'asthmagen'"


def test_sparks_alone_do_not_raise_the_capture_velocity():
    assert need_of(("hazards: []", "hazards: [sparks]")).capture_velocity == 0.5


def test_a_stated_capture_velocity_overrules_the_class():
    need = need_of(("dispersion: gentle", "dispersion: gentle, capture_velocity: 0.8 m/s"))
    assert need.flow == pytest.approx(0.8 / 0.5 * 0.116427, rel=PAPER)
    assert need.basis == "stated in the workplace file"


def test_a_narrow_flange_is_counted_as_none():
    """sqrt A = 88.6 mm: a flange of 88 mm is too narrow, one of 89 mm is wide enough."""
    assert list(flows(need_of(("flange: 0 mm", "flange: 88 mm")))) == [
        "DallaValle, plain",
        "Garrison 1983, plain round nozzle",
    ]
    assert "DallaValle, flanged" in flows(need_of(("flange: 0 mm", "flange: 89 mm")))


def test_the_end_of_the_range_is_inside_it_however_the_place_was_typed():
    """1.5 diameters of 100 mm are 150 mm; 1.09 m - 0.94 m is 0.15000000000000013 m."""
    edge = need_of(("at: [2 m, 2 m, 1 m]", "at: [2 m, 1.09 m, 1 m]"), source_at("2 m", "0.94 m"))
    assert edge.distance > 1.5 * 0.1
    assert edge.in_range
    assert not need_of(source_at("2 m", "1.849 m")).in_range


def test_velocity_at_the_source_at_the_design_flow():
    """0.5 m/s takes 0.116427 m3/s; half that flow brings 0.25 m/s."""
    assert need_of(design_flow=0.0582135).velocity == pytest.approx(0.25, rel=PAPER)


def test_a_source_in_the_opening_gets_the_face_velocity():
    """X = 0: Q = V A = 0.5 x 0.00785398 = 0.00392699 m3/s."""
    need = need_of(source_at("2 m", "2 m"), design_flow=0.00392699)
    assert need.flow == pytest.approx(0.00392699, rel=PAPER)
    assert need.velocity == pytest.approx(0.5, rel=PAPER)


FAR = source_at("2 m", "1.6 m")  # 400 mm, four diameters


def test_far_away_only_certain_bounds_are_given():
    """In the open at least 0.5 x 2 pi x 0.4² = 0.502655 m3/s. The floor 1 m below mirrors the opening, whose nearest
    part is 1 + 0.95 = 1.95 m aside: 0.4³ / (0.4² + 1.95²)^1.5 = 0.064 / 7.88776 = 0.0081138 of its own draw, so
    0.502655 / 1.0081138 = 0.498609 m3/s. At most
    0.5 x 4 pi (0.4² + 0.05²)^1.5 / 0.4 = 0.5 x 4 pi x 0.0655058 / 0.4 = 1.02896 m3/s."""
    need = need_of(FAR, design_flow=0.498609)
    assert not need.in_range
    assert need.flow == need.bound.least == pytest.approx(0.498609, rel=PAPER)
    assert need.bound.most == pytest.approx(1.02896, rel=PAPER)
    assert (need.velocity, need.velocity_at_most) == (None, pytest.approx(0.5, rel=PAPER))


TABLE = "{{name: {name}, corner: [1 m, 1 m, {z} m], sides: [[2 m, 0 m, 0 m], [0 m, 2 m, 0 m]]}}"


def test_each_table_alongside_lowers_the_least_flow():
    """Images 0.1 + 0.05 = 0.15 m and 0.2 + 0.15 = 0.35 m aside, the floor's 1.95 m, and those of two or three of them.
    One table: 0.820896 + 0.0081138 + 0.0080452 = 0.837055, so 0.502655 / 1.837055 = 0.273620 m3/s.
    Two: 0.820896 + 0.426237 + 0.379955 + 0.0081138 + 0.0080452 + 0.0077516 + 0.0076880 = 1.658687,
    so 0.502655 / 2.658687 = 0.189062 m3/s."""
    one = need_of(FAR, ("surfaces: []", f"surfaces: [{TABLE.format(name='t', z=0.9)}]"))
    two = TABLE.format(name="t", z=0.9) + ", " + TABLE.format(name="u", z=1.2)
    assert one.bound.least == pytest.approx(0.273620, rel=PAPER)
    assert need_of(FAR, ("surfaces: []", f"surfaces: [{two}]")).bound.least == pytest.approx(0.189062, rel=PAPER)


def test_a_table_farther_off_helps_less():
    """Half a metre below: 0.5 + 0.45 = 0.95 m aside, 0.064 / 1.095193 = 0.058437; with the floor's 0.0081138 and
    0.0059642 for both: 0.502655 / 1.072515 = 0.468669 m3/s."""
    need = need_of(FAR, ("surfaces: []", f"surfaces: [{TABLE.format(name='t', z=0.5)}]"))
    assert need.bound.least == pytest.approx(0.468669, rel=PAPER)


def test_a_wall_before_the_opening_helps_nothing_and_makes_no_flow_certain():
    wall = "{name: wall, corner: [1 m, 1.55 m, 0 m], sides: [[2 m, 0 m, 0 m], [0 m, 0 m, 3 m]]}"
    need = need_of(FAR, ("surfaces: []", f"surfaces: [{wall}]"))
    assert need.bound.least == pytest.approx(0.498609, rel=PAPER)
    assert need.bound.most is None


def test_off_the_axis_the_straight_distance_is_used_up_to_30_degrees():
    """60 mm aside and 120 mm ahead: 134.2 mm at 26.57 degrees; 0.5 x (10 x 0.018 + 0.00785398) = 0.093927 m3/s."""
    need = need_of(source_at("2.06 m", "1.88 m"))
    assert math.degrees(need.off_axis) == pytest.approx(26.57, abs=0.01)
    assert need.flow == pytest.approx(0.093927, rel=PAPER)
    beyond = need_of(source_at("2.08 m", "1.88 m"))  # 33.7 degrees
    assert not beyond.in_range
    assert beyond.bound.why == "it lies 34 degrees off the hood's axis, where no equation holds"


def test_behind_the_opening_no_flow_is_certainly_enough():
    need = need_of(source_at("2 m", "2.1 m"))
    assert math.degrees(need.off_axis) == pytest.approx(180)
    assert not need.in_range
    assert need.bound.most is None


def test_lines_can_be_recomputed():
    law, nozzle = need_of().laws
    assert nozzle.line.filled == "X / D = 1.5, share = 0.040155: 0.5 x 0.007854 / 0.040155 = 0.097797 m3/s"
    assert law.line.formula == "Q = V (10 X² + A)"
    assert law.line.filled == "0.5 x (10 x 0.15² + 0.007854) = 0.11643 m3/s"
    assert law.source == "exam-equations, plain opening"
