"""A run of two branches by the hand method, worked out on paper.

Dry air at 20 degC and 101325 Pa: rho = 101325 / (287.042 x 293.15) = 1.20415 kg/m3, mu = 1.81341e-5 Pa s.
f by Colebrook with e = 0.15 mm, iterated by hand to five digits.

A     400 m3/h, 100 mm: V = 14.1471 m/s, VP = 120.499 Pa, Re = 93939, f = 0.0238481
      hood flanged: SP = -(1 + 0.49) VP = -179.543 Pa
      3 m: 0.715443 VP, elbow of 5 pieces 0.24 VP: loss 115.130 Pa, SP at the end -294.673 Pa
B     200 m3/h, 80 mm: V = 11.0524 m/s, VP = 73.5466 Pa, Re = 58712, f = 0.0258157
      hood plain: SP = -(1 + 0.93) VP = -141.945 Pa
      4 m: 1.29079 VP, smooth elbow 0.15 VP, entry at 30 deg 0.18 VP: loss 119.203 Pa, SP at the end -261.148 Pa
J     A governs; 261.148 / 294.673 = 0.88623; B would take 200 x sqrt(294.673 / 261.148) = 212.452 m3/h
main  600 m3/h, 125 mm: V = 13.5812 m/s, VP = 111.052 Pa, Re = 112728, f = 0.0226038
      VP of what arrives (400 x 120.499 + 200 x 73.5466) / 600 = 104.848: acceleration 6.2038 Pa, start -300.877 Pa
      5 m: 100.408 Pa, SP at the end -401.285 Pa
link  filter, dirty, 500 Pa at 600 m3/h: start -901.285 Pa; 1 m: 20.0815 Pa, SP at the end -921.366 Pa
stack 3 m: 60.2446 Pa, ends at 0 Pa, starts at 60.2446 Pa
fan   TP in -921.366 + 111.052 = -810.315, TP out 60.2446 + 111.052 = 171.296: FTP 981.611 Pa, clean 731.611 Pa
      FSP 60.2446 + 810.315 = 870.560 Pa; air power 0.166667 x 981.611 = 163.602 W; at 50 %: 327.204 W
"""

import re

import pytest

from hoodwright.results import Verdict
from hoodwright.tasks.assess import assess
from hoodwright.workplace import parse_workplace

PAPER = 1e-4  # relative: six digits were carried through some ten steps
TWO_BRANCHES = """
hoodwright: 1
name: Bench
air: {temperature: 20 degC, pressure: 101325 Pa}
room: {size: [9 m, 9 m, 3 m]}
contaminants: [{name: fume, kind: fume}]
sources:
- {name: left joint, contaminant: fume, at: [2 m, 1.9 m, 1 m], dispersion: gentle}
- {name: right joint, contaminant: fume, at: [4 m, 1.9 m, 1 m], dispersion: gentle}
hoods:
- {name: left hood, type: capturing, serves: [left joint], opening: {round: 100 mm}, flange: 100 mm, at: [2 m, 2 m, 1 m], facing: [0, -1, 0], intended_flow: 400 m3/h}
- {name: right hood, type: capturing, serves: [right joint], opening: {round: 80 mm}, at: [4 m, 2 m, 1 m], facing: [0, -1, 0], intended_flow: 200 m3/h}
ducts:
- {name: A, from: left hood, to: J, round: 100 mm, length: 3 m, fittings: [{elbow: 90 deg, pieces: 5}]}
- {name: B, from: right hood, to: J, round: 80 mm, length: 4 m, fittings: [{elbow: 90 deg}], joins_at: 30 deg}
- {name: main, from: J, to: filter, round: 125 mm, length: 5 m}
- {name: link, from: filter, to: fan, round: 125 mm, length: 1 m}
- {name: stack, from: fan, to: outside, round: 125 mm, length: 3 m}
cleaners: [{name: filter, resistance: {clean: 250 Pa, dirty: 500 Pa, at: 600 m3/h}}]
fans: [{name: fan, efficiency: 50 %}]
"""  # noqa: E501


def answer_of(*changes: tuple[str, str]):
    text = TWO_BRANCHES
    for old, new in changes:
        assert old in text
        text = text.replace(old, new)
    return assess(parse_workplace(text))


def ducts_of(*changes: tuple[str, str]) -> dict:
    return {duct.name: duct for duct in answer_of(*changes).ducts}


def paper(value: float):
    return pytest.approx(value, rel=PAPER)


def test_the_air_of_the_run():
    air = answer_of().air
    assert (air.density, air.viscosity) == (paper(1.20415), paper(1.81341e-5))


@pytest.mark.parametrize(
    "name, velocity, p_velocity, start, end",
    [
        ("A", 14.1471, 120.499, -179.543, -294.673),
        ("B", 11.0524, 73.5466, -141.945, -261.148),
        ("main", 13.5812, 111.052, -300.877, -401.285),
        ("link", 13.5812, 111.052, -901.285, -921.366),
        ("stack", 13.5812, 111.052, 60.2446, 0.0),
    ],
)
def test_each_duct(name, velocity, p_velocity, start, end):
    duct = ducts_of()[name]
    assert duct.velocity == paper(velocity)
    assert duct.velocity_pressure == paper(p_velocity)
    assert duct.static_pressure_start == paper(start)
    assert duct.static_pressure == paper(end)
    assert duct.total_pressure == paper(end + p_velocity)


def test_the_paper_tells_a_forgotten_elbow():
    without = ducts_of((", fittings: [{elbow: 90 deg, pieces: 5}]", ""))["A"]
    assert without.static_pressure != paper(-294.673)


def test_hood_suction():
    left, right = answer_of().hoods
    assert (left.suction, right.suction) == (paper(179.543), paper(141.945))
    assert left.suction_line.filled == "(1 + 0.49) x 1.2042 x 14.147² / 2 = 179.54 Pa"


def test_a_bell_mouth_loses_hardly_anything():
    """F = 0.04: 1.04 x 120.499 = 125.319 Pa."""
    assert answer_of(("flange: 100 mm", "flange: 100 mm, bell_mouth: true")).hoods[0].suction == paper(125.319)


def test_the_junction():
    (junction,) = answer_of().junctions
    assert (junction.name, junction.governing) == ("J", "A")
    assert junction.ratio == paper(0.88623)
    assert junction.advice == "correct the flow of the side with less suction"
    ((name, flow),) = junction.corrected
    assert (name, flow * 3600) == ("B", paper(212.452))


@pytest.mark.parametrize(
    "length, advice",
    [
        ("1 m", "choose another size for one side"),
        ("4 m", "correct the flow of the side with less suction"),
        ("5 m", "leave both sides as they are"),
    ],
)
def test_advice_at_the_junction_by_the_length_of_the_lesser_branch(length, advice):
    """Each metre of B takes 23.73 Pa: ratio 0.645 at 1 m, 0.886 at 4 m, 0.967 at 5 m."""
    (junction,) = answer_of(("round: 80 mm, length: 4 m", f"round: 80 mm, length: {length}")).junctions
    assert junction.advice == advice


def test_the_fan():
    (fan,) = answer_of().fans
    assert fan.flow * 3600 == paper(600)
    assert fan.total_pressure == paper(981.611)
    assert fan.total_pressure_clean == paper(731.611)
    assert fan.static_pressure == paper(870.560)
    assert fan.air_power == paper(163.602)
    assert fan.power == paper(327.204)


def test_without_an_efficiency_no_shaft_power_is_told():
    answer = answer_of(("{name: fan, efficiency: 50 %}", "{name: fan}"))
    assert answer.fans[0].power is None
    assert all(hint.fan_power is None for hood in answer.hoods for hint in hood.hints)


def test_a_cleaner_away_from_its_rated_flow():
    """500 x (600 / 1200)^2 = 125 Pa in place of 500 Pa: FTP 981.611 - 375 = 606.611 Pa."""
    (fan,) = answer_of(("at: 600 m3/h", "at: 1200 m3/h, exponent: 2")).fans
    assert fan.total_pressure == paper(606.611)


def test_a_cleaner_behind_the_fan_is_blown_through():
    """The same 500 Pa on the other side of the fan: the fan does the same, the ducts before it carry less suction."""
    ends = (("to: filter", "to: fan"), ("from: filter, to: fan", "from: fan, to: filter"), ("from: fan, to: outside", "from: filter, to: outside"))  # fmt: skip  # noqa: E501
    answer = answer_of(*ends)
    assert answer.fans[0].total_pressure == paper(981.611)
    ducts = {duct.name: duct for duct in answer.ducts}
    assert ducts["main"].static_pressure == paper(-401.285)
    assert ducts["link"].static_pressure == paper(560.2446)
    assert ducts["link"].static_pressure_start == paper(580.326)


def test_a_rectangular_duct():
    """125 x 100 mm at 600 m3/h: V = 0.166667 / 0.0125 = 13.3333 m/s, VP = 107.035 Pa; D = 2 x 0.125 x 0.1 / 0.225
    = 0.111111 m, Re = 98375, f = 0.0233210 by Colebrook: 3 m lose 0.629667 VP = 67.397 Pa."""
    stack = ducts_of(("to: outside, round: 125 mm", "to: outside, rectangle: [125 mm, 100 mm]"))["stack"]
    assert stack.velocity == paper(13.3333)
    assert stack.static_pressure_start == paper(67.397)


def test_thinner_air_takes_less_pressure_in_proportion():
    """Standard atmosphere at 2000 m: 79495 Pa, 0.78456 of 101325 Pa. VP and hood suction fall by that share."""
    high = answer_of(("pressure: 101325 Pa", "altitude: 2000 m"))
    assert high.air.p_abs == pytest.approx(79495, abs=5)
    assert high.hoods[0].suction == pytest.approx(0.78456 * 179.543, rel=2e-4)
    assert high.ducts[0].velocity == paper(14.1471)


def test_dust_that_settles_is_told():
    """Workshop dust: 3500 fpm = 17.78 m/s; A carries it at 14.15 m/s."""
    duct = ducts_of(("kind: fume", "kind: dust"))["A"]
    assert (duct.carries, duct.transport_velocity) == ("workshop dust", paper(17.78))
    assert duct.transport.verdict is Verdict.SHORT
    assert duct.transport.because.replace("\u2009", " ") == (
        "14.1 m/s is slower than the 17.8 m/s that keep workshop dust moving: it settles"
    )


def test_fume_stays_airborne():
    """Fume: 2000 fpm = 10.16 m/s."""
    duct = ducts_of()["B"]
    assert duct.transport.verdict is Verdict.MEETS
    assert duct.transport_velocity == paper(10.16)


def test_the_main_carries_what_needs_most():
    text = (
        "contaminants: [{name: fume, kind: fume}]",
        "contaminants: [{name: fume, kind: fume}, {name: chips, kind: dust}]",
    )
    ducts = ducts_of(text, ("right joint, contaminant: fume", "right joint, contaminant: chips"))
    assert [ducts[name].carries for name in ("A", "B", "main")] == ["fume", "workshop dust", "workshop dust"]


def test_a_stated_transport_class_overrules_the_kind():
    assert ducts_of(("kind: fume}", "kind: dust, transport: fine dust}"))["A"].carries == "fine dust"


def numbers(filled: str) -> list[float]:
    return [float(found) for found in re.findall(r"-?[\d.]+", filled.replace(" - ", " + -"))]


def test_a_recomputed_line_leads_to_the_next():
    """Acceleration and filter stand in lines of their own, so no pressure comes from nowhere."""
    ducts = ducts_of()
    acceleration, start, end = (line.filled for line in ducts["main"].lines[-3:])
    assert numbers(acceleration) == [paper(111.052), paper(-104.848), pytest.approx(6.2038, rel=1e-3)]
    assert numbers(start) == [paper(-294.673), pytest.approx(-6.2038, rel=1e-3), paper(-300.877)]
    assert numbers(end) == [paper(-300.877), paper(-100.408), paper(-401.285)]
    loaded, start, end = (line.filled for line in ducts["link"].lines[-3:])
    assert loaded == "500 x (0.16667 / 0.16667)^1 = 500 Pa"
    assert numbers(start) == [paper(-401.285), -500, paper(-901.285)]
    assert ducts["stack"].lines[-1].filled == "60.245 - 60.245 = 0 Pa"


def test_no_ducts():
    text = TWO_BRANCHES[: TWO_BRANCHES.index("ducts:")]
    answer = assess(parse_workplace(text))
    assert (answer.ducts, answer.junctions, answer.fans) == ((), (), ())
    assert [hood.suction for hood in answer.hoods] == [None, None]
    assert answer.hoods[0].enough.verdict is Verdict.MEETS


def test_a_hood_without_a_duct_adds_nothing_to_the_fan():
    answer = answer_of(("- {name: B, from: right hood", "- {name: B, from: left hood"), ("- {name: A, from: left hood, to: J, round: 100 mm, length: 3 m, fittings: [{elbow: 90 deg, pieces: 5}]}\n", ""))  # fmt: skip  # noqa: E501
    assert answer.fans[0].flow * 3600 == paper(400)
    assert answer.hoods[1].suction is None
    assert all(hint.fan_power is None for hint in answer.hoods[1].hints)


OWN_FANS = (
    ("- {name: main, from: J, to: filter, round: 125 mm, length: 5 m}\n", ""),
    ("- {name: link, from: filter, to: fan, round: 125 mm, length: 1 m}\n", ""),
    ("cleaners: [{name: filter, resistance: {clean: 250 Pa, dirty: 500 Pa, at: 600 m3/h}}]\n", ""),
    ("from: left hood, to: J", "from: left hood, to: fan"),
    ("from: right hood, to: J", "from: right hood, to: second fan"),
    ("{name: fan, efficiency: 50 %}", "{name: fan, efficiency: 50 %}, {name: second fan, efficiency: 40 %}"),
)


def test_two_fans_of_two_runs():
    """Fan of B, no stack losses but its own: TP in = -261.148 + 73.5466 = -187.601 Pa; the short end of 80 mm and
    1 m behind it loses 1.29079 / 4 = 0.322697 VP = 23.733 Pa: TP out = 97.280 Pa, FTP = 284.881 Pa."""
    end = ("- {name: stack", "- {name: end, from: second fan, to: outside, round: 80 mm, length: 1 m}\n- {name: stack")
    answer = answer_of(*OWN_FANS, end)
    first, second = answer.fans
    assert first.flow * 3600 == paper(400)
    assert second.total_pressure == paper(284.881)
    assert second.power == paper(284.881 * 200 / 3600 / 0.40)


def test_two_fans_that_blow_into_one_stack():
    """The stack carries both; its ducts are under pressure, so no junction is balanced there."""
    joined = (
        ("- {name: stack, from: fan, to: outside, round: 125 mm, length: 3 m}", ""),
        ("cleaners:", "cleaners:"),
    )
    ends = "- {name: a, from: fan, to: S, round: 125 mm, length: 1 m}\n- {name: b, from: second fan, to: S, round: 125 mm, length: 1 m}\n- {name: stack, from: S, to: outside, round: 125 mm, length: 3 m}"  # noqa: E501
    answer = answer_of(*OWN_FANS, (joined[0][0], ends))
    ducts = {duct.name: duct for duct in answer.ducts}
    assert answer.junctions == ()
    assert ducts["stack"].flow * 3600 == paper(600)
    assert ducts["stack"].static_pressure_start == paper(60.2446)
    assert ducts["b"].static_pressure > 60
