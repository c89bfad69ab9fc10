"""Every point at which a fan can run in its duct system."""

import math

import pytest

from hoodwright.ducts import DuctSystem, Meeting, Run, asked_of_fan, fan_points, solve_system
from hoodwright.errors import InputError
from hoodwright.network import fan_curve

CURVE = fan_curve([0.0, 0.2, 0.4, 0.6], [900.0, 800.0, 500.0, 0.0])
AREA = 0.02


def system(loss=3.0, meetings=()):
    runs = [
        Run("duct", "hood", "inlet", AREA, 0.16, loss=loss),
        Run("fan", "inlet", "outlet", AREA, 0.16, fan=CURVE),
        Run("stack", "outlet", "outside", AREA, 0.16, loss=1.0),
    ]
    return DuctSystem(runs, {"hood": 0.0, "outside": 0.0}, meetings)


def test_what_is_asked_goes_with_the_square_of_the_flow():
    solved = solve_system(system())
    asked = asked_of_fan(system(), solved, "fan")
    for flow in (0.1, 0.3):
        by_hand = 4.0 * solved.density[0] / 2 * (flow / AREA) ** 2
        assert asked(flow) == pytest.approx(by_hand, rel=1e-5)
    assert asked(0.0) == pytest.approx(0.0, abs=1e-6)


def test_the_point_is_the_one_that_is_solved():
    solved = solve_system(system())
    (point,) = fan_points(system(), solved, "fan")
    assert point.flow == pytest.approx(float(solved.flow[1]), rel=1e-8)
    assert point.pressure == pytest.approx(float(solved.rise[1]), rel=1e-8)
    assert point.stable


def test_a_loss_in_the_fan_itself_is_asked_too():
    one = system()
    runs = [one.runs[0], Run("fan", "inlet", "outlet", AREA, 0.16, fan=CURVE, loss=2.0), one.runs[2]]
    more = DuctSystem(runs, one.pressures)
    (point,) = fan_points(more, solve_system(more), "fan")
    assert point.flow == pytest.approx(float(solve_system(system(5.0)).flow[1]), rel=1e-5)


def test_a_run_that_is_no_fan_or_meets_others_is_refused():
    solved = solve_system(system())
    with pytest.raises(InputError, match="duct is no fan, or part of a meeting"):
        asked_of_fan(system(), solved, "duct")
    meeting = system(meetings=[Meeting("inlet", "tabulated")])
    with pytest.raises(InputError, match="give the fan an inlet run of its own"):
        fan_points(meeting, solved, "fan")


def test_a_second_fan_stays_on_its_curve():
    wide = math.sqrt(4 * 2 * AREA / math.pi)
    runs = [
        Run("a", "hood a", "in a", AREA, 0.16, loss=3.0),
        Run("fan a", "in a", "J", AREA, 0.16, fan=CURVE),
        Run("b", "hood b", "in b", AREA, 0.16, loss=3.0),
        Run("fan b", "in b", "J", AREA, 0.16, fan=CURVE),
        Run("stack", "J", "outside", 2 * AREA, wide, loss=1.0),
    ]
    both = DuctSystem(runs, {"hood a": 0.0, "hood b": 0.0, "outside": 0.0})
    solved = solve_system(both)
    (point,) = fan_points(both, solved, "fan a")
    assert point.flow == pytest.approx(float(solved.flow[1]), rel=1e-8)
    assert solved.flow[1] == pytest.approx(float(solved.flow[3]))
