"""Duct systems as built, against answers by hand."""

import math

import numpy as np
import pytest

from hoodwright.air import density
from hoodwright.ducts.as_built import solve_system
from hoodwright.ducts.mixing import mixed_temperatures
from hoodwright.ducts.system import DuctSystem, Meeting, RoomAir, Run
from hoodwright.errors import InputError
from hoodwright.network import fan_curve

ROOM, HOT = 293.15, 573.15


def duct(name, start, end, diameter=0.1, **more):
    return Run(name, start, end, math.pi * diameter**2 / 4, diameter, **more)


def two_hoods(law="momentum", **more):
    return DuctSystem(
        [
            duct("A", "hood A", "J", length=3.0, roughness=1.5e-4, loss=0.9),
            duct("B", "hood B", "J", length=5.0, roughness=1.5e-4, loss=0.5, **more),
            duct("main", "J", "fan", 0.16, length=4.0, roughness=1.5e-4),
            duct("the fan", "fan", "stack", 0.16, fan=fan_curve([0.0, 0.2, 0.4], [1200.0, 1000.0, 200.0])),
            duct("stack", "stack", "outside", 0.16, length=3.0, roughness=1.5e-4, loss=1.0),
        ],
        {"hood A": 0.0, "hood B": 0.0, "outside": 0.0},
        [Meeting("J", law, {"B": math.radians(30)}, {"B": 0.18})],
    )


def test_hot_air_in_a_stack_drives_itself():
    # 10 m of air at 300 degC in a room at 20 degC, against 2 velocity pressures
    system = DuctSystem(
        [duct("stack", "hood", "outside", rise=10.0, loss=2.0, temperature=HOT)], {"hood": 0.0, "outside": 0.0}
    )
    found = solve_system(system)
    rho, cold = float(density(HOT, 101325.0)), float(density(ROOM, 101325.0))
    velocity = math.sqrt((cold - rho) * 9.80665 * 10 / rho)
    assert found.velocity[0] == pytest.approx(velocity, rel=1e-5)
    assert found.head[0] == pytest.approx(found.loss[0], rel=1e-6)


def test_streams_mix_by_mass():
    found = solve_system(two_hoods(temperature=373.15))
    mass = found.flow * found.density
    mixed = (mass[0] * ROOM + mass[1] * 373.15) / (mass[0] + mass[1])
    assert found.temperature[2:] == pytest.approx([mixed] * 3)
    assert mass[2] == pytest.approx(mass[0] + mass[1])
    assert found.flow[2] > found.flow[0]


def test_the_fan_gives_what_all_losses_take():
    found = solve_system(two_hoods())
    way = [found.at(name) for name in ("A", "main", "stack")]
    taken = found.loss[way].sum() + found.meeting_loss[way].sum()
    assert found.rise[found.at("the fan")] == pytest.approx(taken, rel=1e-9)


def test_static_pressures_agree_where_runs_meet():
    # the balance of momentum has one static pressure at all inlets
    found = solve_system(two_hoods())
    assert found.p_static_end[0] == pytest.approx(found.p_static_end[1], abs=0.01)


def test_the_tabulated_law_leaves_one_static_pressure_behind_the_entry():
    found = solve_system(two_hoods("tabulated"))
    entry = found.p_static_end[1] - 0.18 * found.p_velocity[1]
    assert found.p_static_end[0] == pytest.approx(entry, abs=0.01)


def test_momentum_takes_over_where_the_flow_turns_back():
    system = two_hoods("tabulated")
    system = DuctSystem(system.runs, {"hood A": 0.0, "hood B": -2500.0, "outside": 0.0}, system.meetings)
    found = solve_system(system)
    assert found.flow[1] < 0
    assert found.turned_back == ("J",)


def test_a_given_temperature_stays():
    system = two_hoods(temperature=350.0)
    assert mixed_temperatures(system, np.array([1.0, 1.0, 2.0, 2.0, 2.0])) == pytest.approx(
        [ROOM, 350.0, (ROOM + 350) / 2, (ROOM + 350) / 2, (ROOM + 350) / 2]
    )


def test_thin_air_gives_the_same_flow_at_less_pressure():
    low, high = two_hoods(), two_hoods()
    high = DuctSystem(high.runs, high.pressures, high.meetings, RoomAir(p_abs=80000.0))
    sea, hill = solve_system(low), solve_system(high)
    assert hill.flow == pytest.approx(sea.flow, rel=0.01)
    assert hill.rise[3] == pytest.approx(sea.rise[3] * 80 / 101.325, rel=0.02)


def test_two_runs_of_one_name_are_refused():
    with pytest.raises(InputError, match="the run 'A' is there twice"):
        DuctSystem([duct("A", "x", "y"), duct("A", "y", "z")], {"x": 0.0, "z": 0.0})


def test_a_meeting_nothing_leaves_is_refused():
    with pytest.raises(InputError, match="J: 1 runs arrive and 0 leave"):
        DuctSystem([duct("A", "x", "J")], {"x": 0.0}, [Meeting("J", "momentum")])
