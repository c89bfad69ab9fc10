"""Streams that leave a source: in still air against exact laws, in moving air against what must happen."""

from dataclasses import replace

import numpy as np
import pytest

from analytic_air import analytic_air, lines, point_sink, still_air
from hoodwright.errors import InputError, RangeError
from hoodwright.flow import (
    follow,
    free_jet_at,
    free_jet_velocity,
    heat_plume,
    jet_laws,
    nozzle_jet,
    plume_constant,
    spill_sheet,
    supply_jet,
)

ROOM, DENSITY = 293.15, 1.2
UP = (0.0, 0.0, 1.0)
STILL = np.zeros(3, np.float32)
BORE = np.pi * 0.01**2 / 4


@pytest.fixture(scope="module")
def still():
    return still_air().arrays


def bent(speed):
    """A jet upward in an even draught along x."""
    grid = (lines(-1, 4, 10), lines(-1, 1, 4), lines(-0.5, 5, 10))
    return follow(analytic_air(grid).arrays, [speed, 0.0, 0.0], nozzle_jet((0, 0, 0), UP, BORE, 5.0, ROOM, ROOM))


@pytest.mark.parametrize("diameters", [25, 50, 100, 200])
def test_speed_on_the_axis_falls_with_the_distance(still, diameters):
    """Constant K of u / u0 = K d / x, told as 5.6 to 6.6 beyond 25 diameters."""
    path = follow(still, STILL, nozzle_jet((0, 0, 0), UP, BORE, 10.0, ROOM, ROOM))
    speed = np.interp(diameters * 0.01, path.travelled, path.axis_speed)
    assert 5.6 < speed / 10.0 * diameters < 6.6
    assert speed == pytest.approx(free_jet_velocity(diameters * 0.01, BORE, 10.0), rel=0.02)


def test_a_jet_keeps_its_momentum_and_its_core(still):
    path = follow(still, STILL, nozzle_jet((0, 0, 0), UP, BORE, 10.0, ROOM, ROOM))
    momentum = np.pi * path.radius**2 * path.axis_speed**2 / 2
    assert momentum == pytest.approx(BORE * 100.0, rel=1e-6)
    assert path.axis_speed[path.travelled < 0.06] == pytest.approx(10.0, rel=0.01)


@pytest.mark.parametrize("heat, area, height", [(500.0, 0.01, 1.0), (500.0, 0.01, 3.0), (5000.0, 0.09, 2.0)])
def test_flow_of_a_plume_against_the_room_formula(still, heat, area, height):
    """0.9 to 1.05 of 0.005 q^(1/3) z^(5/3), z from the virtual origin, 1.9 diameters below the face."""
    path = follow(still, STILL, heat_plume((0, 0, 0), area, heat, ROOM, DENSITY))
    flow = np.interp(height, path.places[:, 2], path.flow)
    origin = 1.9 * np.sqrt(4 * area / np.pi)
    assert 0.9 < flow / (0.005 * heat ** (1 / 3) * (height + origin) ** (5 / 3)) < 1.05


def test_a_plume_grows_as_its_similarity_solution(still):
    """Flow as z^(5/3) from the virtual origin, speed as z^(-1/3); constant c of the flow c B^(1/3) z^(5/3)."""
    jet = heat_plume((0, 0, 0), 0.01, 800.0, ROOM, DENSITY)
    path = follow(still, STILL, jet)
    z = path.places[:, 2] + 1.9 * np.sqrt(4 * 0.01 / np.pi)
    assert path.flow == pytest.approx(plume_constant() * np.cbrt(jet.buoyancy) * z ** (5 / 3), rel=0.005)
    assert path.axis_speed * np.cbrt(z) == pytest.approx(path.axis_speed[0] * np.cbrt(z[0]), rel=0.005)


def test_eight_times_the_heat_doubles_the_flow(still):
    flows = [
        np.interp(2.0, path.places[:, 2], path.flow)
        for path in (follow(still, STILL, heat_plume((0, 0, 0), 0.04, q, ROOM, DENSITY)) for q in (100.0, 800.0))
    ]
    assert flows[1] == pytest.approx(2 * flows[0], rel=1e-3)


def test_a_warm_jet_rises_and_a_cold_one_falls(still):
    ends = [
        follow(still, STILL, nozzle_jet((0, 0, 2), (1, 0, 0), 1e-3, 1.0, t, ROOM)).places[-1, 2] for t in (333.0, 273.0)
    ]
    assert ends[0] > 2.5 and ends[1] < 1.5


def test_a_hot_nozzle_carries_its_mass_and_momentum_as_room_air():
    jet = nozzle_jet((0, 0, 0), (0, 0, 2), 0.01, 3.0, 2 * ROOM, ROOM)
    assert (jet.flow, jet.speed) == (pytest.approx(0.015), 3.0)
    assert jet.buoyancy == pytest.approx(9.81 * 0.03 * 0.5) and jet.direction == UP


def test_a_draught_bends_a_jet_and_a_stronger_one_more():
    slow, fast = bent(0.1), bent(0.4)
    at = [np.interp(0.5, path.places[:, 2], path.places[:, 0]) for path in (slow, fast)]
    assert 0.01 < at[0] < at[1]
    assert np.all(np.diff(slow.flow) > 0) and slow.flow[0] == pytest.approx(5 * BORE)


def test_a_stream_tells_what_ended_it():
    grid = (lines(-1, 1, 20), lines(-1, 1, 20), lines(0, 2, 20))
    jet = nozzle_jet((0, 0, 0.5), UP, BORE, 5.0, ROOM, ROOM)
    assert follow(analytic_air(grid).arrays, STILL, jet).ended == "edge"
    assert follow(analytic_air(grid, walls=[(2, 15)]).arrays, STILL, jet).ended == "wall"
    sink = analytic_air((lines(-1, 1, 40),) * 3, {"hood": (point_sink, 0.0501)})
    near = nozzle_jet((0, 0, -0.3), UP, BORE, 1.0, ROOM, ROOM)
    assert follow(sink.arrays, [0.05, 0, 0, 0], near).ended == "hood"
    weak = nozzle_jet((0, 0, 0.1), UP, 1e-6, 0.05, ROOM, ROOM)
    assert follow(analytic_air(grid).arrays, STILL, weak).ended == "spent"


def test_a_sheet_takes_in_more_than_a_round_stream_and_turns_round_far_up(still):
    """A wide sheet grows with the height, a round plume with its 5/3 power; far above, the width no longer tells."""
    sheet = spill_sheet((0, 0, 0), 2.0, 0.05, 500.0, ROOM, DENSITY)
    wide, round_one = (follow(still, STILL, jet) for jet in (sheet, replace(sheet, width=0.0)))
    assert np.interp(1.0, wide.places[:, 2], wide.flow) > 1.5 * np.interp(1.0, round_one.places[:, 2], round_one.flow)
    flows = [np.interp([0.5, 1.0, 4.0, 8.0], p.places[:, 2], p.flow) for p in (wide, round_one)]
    assert flows[0][1] - 0.05 == pytest.approx(2 * (flows[0][0] - 0.05), rel=0.15)
    assert flows[0][3] / flows[0][2] > 2.2


GRILLE = supply_jet((1, 2, 3), (0, -1, 0), 0.04, 0.08, 1.0)  # 2 m/s


def test_a_free_jet_on_its_axis_has_the_speed_of_the_law():
    for distance in (0.0, 0.5, 2.0, 5.0):
        velocity, turbulence = free_jet_at(GRILLE, (1, 2 - distance, 3))
        assert velocity == pytest.approx((0, -free_jet_velocity(distance, 0.04, 2.0), 0))
        assert turbulence == pytest.approx(0.27 * abs(velocity[1]))


@pytest.mark.parametrize("distance", [0.3, 1.5, 4.0])
def test_a_free_jet_keeps_its_momentum(distance):
    """The integral of the squared speed over a section, whatever its distance: flow times speed of the opening."""
    r = np.linspace(0, 4 * max(0.11 * distance, 0.2), 4001)
    speed = -free_jet_at(GRILLE, np.stack([1 + r, 0 * r + 2 - distance, 0 * r + 3], axis=1))[0][:, 1]
    assert np.trapezoid(2 * np.pi * r * speed**2, r) == pytest.approx(0.08 * 2.0, rel=1e-4)


def test_a_free_jet_spreads_as_measured():
    """Half the speed at 0.085 to 0.1 of the distance, as round jets are usually told to spread."""
    halves = [
        free_jet_at(GRILLE, (1 + 3.0 * slope, -1, 3))[0][1] / free_jet_at(GRILLE, (1, -1, 3))[0][1]
        for slope in (0.085, 0.1)
    ]
    assert halves[1] < 0.5 < halves[0]


def test_a_free_jet_does_not_blow_backwards_and_takes_any_number_of_places():
    assert np.all(free_jet_at(GRILLE, (1, 2.1, 3))[0] == 0)
    velocity, turbulence = free_jet_at(GRILLE, np.zeros((0, 3)))
    assert velocity.shape == (0, 3) and turbulence.shape == (0,)


def test_a_supply_grille_blows_faster_through_less():
    whole, half = (supply_jet((0, 0, 0), (1, 0, 0), 0.04, 0.08, s) for s in (1.0, 0.5))
    assert (whole.speed, half.speed) == (pytest.approx(2.0), pytest.approx(4.0))
    assert whole.flow == pytest.approx(half.flow) and whole.buoyancy == 0


def test_free_jet_takes_arrays_and_nothing():
    assert free_jet_velocity(np.array([0.0, 1.0]), BORE, 10.0) == pytest.approx([10.0, 0.643], rel=1e-3)
    assert free_jet_velocity(np.array([]), BORE, 10.0).shape == (0,)


def test_laws_can_leave_the_pressure_out():
    assert jet_laws()[5] == 1.0 and jet_laws(pressure=False)[5] == 0.0


@pytest.mark.parametrize(
    "call, text",
    [
        (lambda: nozzle_jet((0, 0, 0), (0, 0, 0), 1e-3, 1.0, ROOM, ROOM), "all three parts are 0"),
        (
            lambda: nozzle_jet((0, 0, float("nan")), UP, 1e-3, 1.0, ROOM, ROOM),
            "place of the release nan is not a finite",
        ),
        (lambda: nozzle_jet((0, 0, 0), UP, 1e-3, 500.0, ROOM, ROOM), "speed of the release 500 m/s is above 100 m/s"),
        (lambda: nozzle_jet((0, 0, 0), UP, 1e-3, 1.0, 20.0, ROOM), "temperature 20 K is below 150 K"),
        (lambda: heat_plume((0, 0, 0), 0.1, 0.0, ROOM, DENSITY), "convective heat 0 W is not above 0 W"),
        (lambda: heat_plume((0, 0, 0), 0.1, 2e6, ROOM, DENSITY), "convective heat 2e.06 W is above 1e.06 W"),
        (lambda: supply_jet((0, 0, 0), UP, 0.1, 0.1, 1.2), "free share 1.2 is above 1, all of the grille"),
        (lambda: spill_sheet((0, 0, 0), 0.0, 0.1, 100.0, ROOM, DENSITY), "width of the edge 0 m is not above 0 m"),
        (lambda: free_jet_velocity(-1.0, BORE, 1.0), "distance -1 m is below 0 m"),
    ],
)
def test_bad_input_is_told(call, text):
    with pytest.raises((RangeError, InputError), match=text):
        call()


def test_a_stream_against_a_wall_is_told():
    grid = (lines(-1, 1, 4), lines(-1, 1, 4), lines(0, 1, 4))
    air = analytic_air(grid, walls=[(2, 4)])
    with pytest.raises(InputError, match="meets a wall at once; move it into open air or turn it"):
        follow(air.arrays, STILL, nozzle_jet((0, 0, 0.99999), UP, 1e-3, 1.0, ROOM, ROOM))
