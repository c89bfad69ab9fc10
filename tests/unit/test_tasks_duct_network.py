"""Ductwork of a workplace as built, against answers by hand."""

import math

import pytest

from built_shop import LINE, ONE_DUCTS, TWO_DUCTS, hood, one_hood, shop, two_hoods
from curved_demo import UNCURVED, demo
from hoodwright.air import density
from hoodwright.errors import InputError
from hoodwright.tasks.as_built.network import as_built, system_of
from hoodwright.workplace import parse_workplace

RHO, AREA = 1.204152, 0.02


def flow_of(coefficient: float, area: float = AREA, fan: float = 1.0) -> float:
    """Where 1000 - 2000 Q = K rho / 2 (Q / A)²; a fan of n times the flow has 1000 - 2000 Q / n."""
    a, b = coefficient * RHO / 2 / area**2, 2000 / fan
    return (-b + math.sqrt(b**2 + 4 * a * 1000)) / (2 * a)


def test_one_hood_and_one_fan():
    found = as_built(one_hood())
    flow = flow_of(0.5 + 1.5 + 1.0)
    vp = RHO * (flow / AREA) ** 2 / 2
    assert found.hood("hood 1").flow == pytest.approx(flow, rel=1e-5)
    assert found.hood("hood 1").suction == pytest.approx(1.5 * vp, rel=1e-5)
    duct, stack, fan = found.duct("A"), found.duct("stack"), found.fan("fan")
    assert duct.static_pressure == pytest.approx(-3.0 * vp, rel=1e-5)
    assert duct.total_pressure == pytest.approx(-2.0 * vp, rel=1e-5)
    assert duct.loss == pytest.approx(1.5 * vp, rel=1e-5)
    assert stack.static_pressure == pytest.approx(0.0, abs=0.01)
    assert fan.total_pressure == pytest.approx(1000 - 2000 * flow, rel=1e-5)
    assert fan.static_pressure == pytest.approx(1000 - 2000 * flow - vp, rel=1e-5)
    assert [(point.stable, point.runs) for point in fan.points] == [(True, True)]


def test_a_static_curve_gets_the_velocity_pressure_of_its_outlet():
    # static 1000 - 2000 Q at the outlet of the stack's size: the open end is then paid for
    found = as_built(one_hood(LINE.replace("total", "static")))
    assert found.hood("hood 1").flow == pytest.approx(flow_of(0.5 + 1.5), rel=1e-3)


def test_two_hoods_that_keep_their_speed_where_they_meet():
    flow = flow_of(0.5 + 1.5 + 1.0, 2 * AREA)
    for law in ("momentum", "tabulated"):
        found = as_built(two_hoods(), law=law)
        assert found.hood("hood 1").flow == pytest.approx(flow / 2, rel=1e-5)
        assert found.fan("fan").flow == pytest.approx(flow, rel=1e-5)
        assert found.junctions[0].imbalance == pytest.approx(0.0, abs=1e-12)


def test_a_wider_duct_without_a_cone_loses_the_step():
    # Borda-Carnot: half the speed behind, rho / 2 (V1 - V2)² = VP1 / 4; by the table all that is lost in VP: 3/4 VP1
    ducts = ONE_DUCTS.replace("to: fan, ", "to: B, ").replace(
        "- {name: stack", "- {name: wide, from: B, to: fan, rectangle: [200 mm, 200 mm], length: 0 m}\n- {name: stack"
    )
    found = as_built(one_hood(ducts=ducts))
    assert found.hood("hood 1").flow == pytest.approx(flow_of(0.5 + 1.5 + 0.25 + 1.0), rel=1e-4)
    found = as_built(one_hood(ducts=ducts), law="tabulated")
    assert found.hood("hood 1").flow == pytest.approx(flow_of(0.5 + 1.5 + 0.75 + 1.0), rel=1e-4)


def test_a_cone_wins_back_what_its_table_says():
    # 10 deg: 28 % of the drop of VP is lost
    ducts = ONE_DUCTS.replace("to: fan, ", "to: B, ").replace(
        "- {name: stack",
        "- {name: wide, from: B, to: fan, rectangle: [200 mm, 200 mm], length: 0 m, taper: 10 deg}\n- {name: stack",
    )
    found = as_built(one_hood(ducts=ducts))
    assert found.hood("hood 1").flow == pytest.approx(flow_of(0.5 + 1.5 + 0.28 * 0.75 + 1.0), rel=1e-4)


def test_a_damper_takes_its_pascals_at_the_intended_flow():
    ducts = ONE_DUCTS.replace("[{loss: 1.5}]", "[{damper: 40 Pa}]")
    vp = RHO * (320 / 3600 / AREA) ** 2 / 2
    found = as_built(one_hood(ducts=ducts))
    assert found.duct("A").damper == pytest.approx(40 / vp, rel=1e-5)
    assert found.hood("hood 1").flow == pytest.approx(flow_of(0.5 + 40 / vp + 1.0), rel=1e-4)
    stated = as_built(one_hood(ducts=ONE_DUCTS.replace("{loss: 1.5}", "{damper_loss: 1.5}")))
    assert stated.hood("hood 1").flow == pytest.approx(flow_of(3.0), rel=1e-5)
    moved = as_built(one_hood(ducts=ducts), dampers={"A": 7.0})
    assert moved.hood("hood 1").flow == pytest.approx(flow_of(0.5 + 7.0 + 1.0), rel=1e-4)


def test_a_closed_gate_stops_its_own_hood_and_helps_the_other():
    before, found = as_built(two_hoods()), as_built(two_hoods(), closed=["hood 2"])
    assert found.hood("hood 2").flow == pytest.approx(0.0, abs=1e-3)
    assert found.hood("hood 1").flow > 1.2 * before.hood("hood 1").flow
    assert not found.duct("B").settles  # nobody is told that dust settles behind a shut gate


FILTER = ONE_DUCTS.replace("A, from: hood 1, to: fan", "A, from: hood 1, to: filter").replace(
    "- {name: stack",
    "- {name: clean, from: filter, to: fan, rectangle: [100 mm, 200 mm], length: 0 m}\n- {name: stack",
)
CLEANER = "cleaners: [{name: filter, resistance: {clean: 200 Pa, dirty: 500 Pa, at: 720 m3/h, exponent: 1}}]"


@pytest.mark.parametrize(("loaded", "pascals"), [(False, 200.0), (True, 500.0), (0.5, 350.0)])
def test_a_filter_takes_pressure_in_proportion_to_the_flow(loaded, pascals):
    # 1000 - 2000 Q = 3 VP + R Q / 0.2
    found = as_built(one_hood(ducts=FILTER, rest=CLEANER), loaded=loaded)
    a, b = 3.0 * RHO / 2 / AREA**2, 2000 + pascals / 0.2
    flow = (-b + math.sqrt(b**2 + 4 * a * 1000)) / (2 * a)
    assert found.hood("hood 1").flow == pytest.approx(flow, rel=1e-5)
    assert found.cleaners[0].pressure == pytest.approx(pascals * flow / 0.2, rel=1e-5)


def test_a_filter_in_the_hood_counts_too():
    found = as_built(one_hood(more=", filter: {clean: 200 Pa, dirty: 500 Pa, at: 720 m3/h}"), loaded=True)
    a, b = 3.0 * RHO / 2 / AREA**2, 2000 + 500 / 0.2
    assert found.hood("hood 1").flow == pytest.approx((-b + math.sqrt(b**2 + 4 * a * 1000)) / (2 * a), rel=1e-5)


def test_two_fans_into_one_stack():
    # where they meet the air keeps its speed; each line has half of the common end
    ducts = """\
- {name: A, from: hood 1, to: fan 1, rectangle: [100 mm, 200 mm], length: 0 m, fittings: [{loss: 1.5}]}
- {name: B, from: hood 2, to: fan 2, rectangle: [100 mm, 200 mm], length: 0 m, fittings: [{loss: 1.5}]}
- {name: A2, from: fan 1, to: J, rectangle: [100 mm, 200 mm], length: 0 m}
- {name: B2, from: fan 2, to: J, rectangle: [100 mm, 200 mm], length: 0 m}
- {name: stack, from: J, to: outside, rectangle: [200 mm, 200 mm], length: 0 m}"""
    found = as_built(shop([hood(1), hood(2)], ducts, f"- {{name: fan 1, {LINE}}}\n- {{name: fan 2, {LINE}}}"))
    assert [fan.flow for fan in found.fans] == pytest.approx([flow_of(3.0)] * 2, rel=1e-5)
    assert found.duct("stack").flow == pytest.approx(2 * flow_of(3.0), rel=1e-5)
    assert all(point.stable for fan in found.fans for point in fan.points)


def test_a_strong_fan_blows_back_through_a_weak_one():
    ducts = """\
- {name: A, from: hood 1, to: fan 1, rectangle: [100 mm, 200 mm], length: 0 m}
- {name: B, from: hood 2, to: fan 2, rectangle: [100 mm, 200 mm], length: 0 m}
- {name: A2, from: fan 1, to: J, rectangle: [100 mm, 200 mm], length: 0 m}
- {name: B2, from: fan 2, to: J, rectangle: [100 mm, 200 mm], length: 0 m, joins_at: 90 deg}
- {name: stack, from: J, to: outside, rectangle: [100 mm, 200 mm], length: 0 m, fittings: [{loss: 20}]}"""
    weak = "pressure: total, curve: [[0 m3/h, 30 Pa], [100 m3/h, 20 Pa], [200 m3/h, 0 Pa]]"
    found = as_built(shop([hood(1), hood(2)], ducts, f"- {{name: fan 1, {LINE}}}\n- {{name: fan 2, {weak}}}"))
    assert found.hood("hood 2").flow < 0
    assert found.hood("hood 2").blows_out
    told = {caution.about: caution.text for caution in found.cautions}
    assert told["hood 2"].startswith("the air runs backwards: it blows ")
    assert "the air runs backwards through it" in told["fan 2"]


def test_hot_air_in_a_stack_helps_the_fan():
    warm = ONE_DUCTS.replace("length: 0 m}", "length: 12 m, rise: 10 m, temperature: 300 degC}")
    level = warm.replace("rise: 10 m, ", "")
    found, flat = as_built(one_hood(ducts=warm)), as_built(one_hood(ducts=level))
    head = float(density(293.15, 101325.0) - density(573.15, 101325.0)) * 9.80665 * 10
    assert found.duct("stack").buoyancy == pytest.approx(head, rel=1e-6)
    assert flat.duct("stack").buoyancy == 0
    assert found.hood("hood 1").flow > flat.hood("hood 1").flow
    assert found.duct("stack").flow == pytest.approx(found.duct("A").flow * 573.15 / 293.15, rel=1e-4)


def test_a_leak_draws_by_the_suction_at_its_duct():
    ducts = TWO_DUCTS.replace(
        "main, from: J, to: fan, rectangle: [200 mm, 200 mm], length: 0 m",
        "main, from: J, to: fan, rectangle: [200 mm, 200 mm], length: 0 m, leak: {flow: 36 m3/h, at: 500 Pa}",
    )
    found = as_built(two_hoods(ducts))
    main = found.duct("main")
    assert main.leak == pytest.approx(0.01 * (-main.static_pressure / 500) ** 0.65, rel=1e-2)
    assert found.fan("fan").flow == pytest.approx(main.flow + main.leak, rel=1e-9)
    tight = as_built(two_hoods(ducts), leaks=False)
    assert tight.duct("main").leak == 0
    assert tight.hood("hood 1").flow > found.hood("hood 1").flow


def test_a_leak_behind_the_fan_lets_out():
    ducts = ONE_DUCTS.replace(
        "stack, from: fan, to: outside, rectangle: [100 mm, 200 mm], length: 0 m",
        "stack, from: fan, to: outside, rectangle: [100 mm, 200 mm], length: 0 m, fittings: [{loss: 2}], "
        "leak: {flow: 36 m3/h, at: 500 Pa}",
    )
    stack = as_built(one_hood(ducts=ducts)).duct("stack")
    # the air slows down where some of it leaves, so the seam sees a little less than the static pressure behind
    assert stack.leak == pytest.approx(-0.01 * (stack.static_pressure_start / 500) ** 0.65, rel=4e-2)


def test_a_fan_at_another_speed_keeps_to_the_fan_laws():
    # without a filter every loss goes with the square: flow with the speed
    slow = one_hood(f"{LINE}, speed: 2000 rpm, runs_at: 1500 rpm")
    assert as_built(slow).hood("hood 1").flow == pytest.approx(0.75 * flow_of(3.0), rel=1e-4)
    assert as_built(one_hood(), speeds={"fan": 0.75}).hood("hood 1").flow == pytest.approx(
        0.75 * flow_of(3.0), rel=1e-4
    )


def test_system_effect_takes_velocity_pressures_at_both_sides():
    found = as_built(one_hood(f"{LINE}, system_effect: {{inlet: 0.6, outlet: 0.4}}"))
    assert found.hood("hood 1").flow == pytest.approx(flow_of(4.0), rel=1e-4)


def test_power_motor_energy_and_cost():
    fan = f"{LINE}, efficiency: 50 %, drive_loss: 10 %, motor: 200 W, motor_efficiency: 80 %, hours: 1000 h"
    found = as_built(one_hood(fan, rest="prices: {energy: 0.3 per kWh, currency: crowns}"))
    told, flow = found.fan("fan"), flow_of(3.0)
    shaft = flow * (1000 - 2000 * flow) / 0.5
    assert told.shaft_power == pytest.approx(shaft, rel=1e-4)
    assert told.motor_power == pytest.approx(shaft / 0.9, rel=1e-4)
    assert told.energy == pytest.approx(shaft / 0.9 / 0.8, rel=1e-4)  # 1000 h: as many kWh as W
    assert told.cost == pytest.approx(0.3 * told.energy)
    assert told.margin == pytest.approx(1 - shaft / 0.9 / 200, rel=1e-3)
    assert any("its motor is too small" in caution.text for caution in found.cautions)


def test_efficiency_by_flow_moves_with_the_speed():
    fan = f"{LINE}, efficiency: [[0 m3/h, 40 %], [1800 m3/h, 60 %]], speed: 2000 rpm, runs_at: 1000 rpm"
    told = as_built(one_hood(fan)).fan("fan")
    assert told.efficiency == pytest.approx(0.4 + 0.2 * told.flow / 0.25, rel=1e-6)


STALL = (
    "pressure: total, density: 1.204152 kg/m3, curve: [[0 m3/h, 700 Pa], [180 m3/h, 450 Pa], [300 m3/h, 250 Pa], "
    "[450 m3/h, 640 Pa], [720 m3/h, 640 Pa], [900 m3/h, 560 Pa], [1080 m3/h, 300 Pa]]"
)
THROTTLED = ONE_DUCTS.replace("{loss: 1.5}", "{damper_loss: 24}")


def test_every_point_of_a_fan_with_a_stall_is_found():
    # 25.5 velocity pressures ask 250 Pa near 290 m3/h and 640 Pa near 450, and the curve rises in between
    found = as_built(one_hood(STALL, ducts=THROTTLED))
    points = found.fan("fan").points
    assert [point.stable for point in points] == [True, False, True]
    asked = [25.5 * RHO / 2 * (point.flow / AREA) ** 2 for point in points]
    assert [point.total_pressure for point in points] == pytest.approx(asked, rel=1e-4)
    assert found.fan("fan").stable
    assert any("it can also run at" in caution.text for caution in found.cautions)


@pytest.mark.parametrize("flow", ["200 m3/h", "380 m3/h", "700 m3/h", "1000 m3/h"])
def test_it_settles_beside_a_stall_from_any_start(flow):
    workplace = shop([hood(1, flow)], THROTTLED, f"- {{name: fan, {STALL}}}")
    for damper in (22.0, 24.0, 25.9, 26.0, 26.5, 40.0):
        fan = as_built(workplace, dampers={"A": damper}).fan("fan")
        assert fan.stable
        assert sum(point.runs for point in fan.points) == 1


def test_a_curve_that_swings_between_its_points_is_told():
    rough = "pressure: total, curve: [[0 m3/h, 900 Pa], [500 m3/h, 880 Pa], [520 m3/h, 700 Pa], [1200 m3/h, 100 Pa]]"
    found = as_built(one_hood(rough))
    assert any("swings up and down between" in caution.text for caution in found.cautions)
    assert not as_built(one_hood()).fan("fan").swings


def test_beyond_its_curve_it_is_said():
    short = "pressure: total, curve: [[0 m3/h, 1000 Pa], [100 m3/h, 980 Pa], [200 m3/h, 950 Pa]]"
    found = as_built(one_hood(short))
    assert found.fan("fan").beyond_curve
    assert any("more air than the last point of its curve" in caution.text for caution in found.cautions)


def test_dust_that_settles_as_built_is_told():
    found = as_built(one_hood(LINE, ducts=ONE_DUCTS.replace("{loss: 1.5}", "{loss: 60}")))
    assert found.duct("A").settles
    assert any(c.about == "A" and "it settles" in c.text for c in found.cautions)


def test_what_has_no_curve_is_left_out_or_refused():
    still = parse_workplace(demo(UNCURVED))
    with pytest.raises(InputError, match="no curve is given for roof fan, booth fan"):
        as_built(still)
    fan = "- {name: roof fan, efficiency: 60 %}"
    curve = "pressure: static, curve: [[0 m3/h, 2600 Pa], [3000 m3/h, 2700 Pa], [6000 m3/h, 2000 Pa]]"
    half = parse_workplace(demo(UNCURVED).replace(fan, fan.replace("60 %", f"60 %, {curve}")))
    found = as_built(half)
    assert found.left_out == ("lacquer booth",)
    assert len(found.hoods) == 4


@pytest.mark.parametrize(
    ("state", "words"),
    [
        ({"closed": ["hood 9"]}, "gate of 'hood 9': there is no such part"),
        ({"dampers": {"Z": 1.0}}, "damper of 'Z': there is no such part; there is A, stack"),
        ({"speeds": {"A": 1.0}}, "speed of 'A': there is no such part; there is fan"),
        ({"law": "guess"}, "junction law 'guess' is not known; there is momentum and tabulated"),
        ({"loaded": 2.0}, "filters loaded to 2: 0 is clean and 1 is dirty"),
    ],
)
def test_a_state_that_cannot_be(state, words):
    with pytest.raises(InputError, match=words):
        system_of(one_hood(), **state)


def test_the_tree_has_nothing_left_over():
    found = as_built(two_hoods())
    assert found.residual < 1e-6
    spent = sum(side.flow * (side.total_pressure) for side in found.junctions[0].sides)
    behind = found.duct("main").flow * found.duct("main").total_pressure_start
    assert behind <= spent + 1e-6  # flow x total pressure falls over a junction
