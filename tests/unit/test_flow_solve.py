"""The solved flow: bases, weights, rooms, local boxes, the cache, and what is refused."""

import math

import numpy as np
import pytest

from hoodwright.errors import Cancelled, InputError, NoSolution, RangeError
from hoodwright.flow import Block, Hole, Mouth, Plate, Resolution, Scene, Surroundings, Vent, solve, solve_near
from hoodwright.flow.linear import multigrid
from hoodwright.hoods import flanged_rectangle

QUICK = Resolution(6, 1.3, 0.5)
HOOD = Mouth("hood", (0, 0, 1), (1, 0, 0), (0.1, 0.1), body=0.3)
BENCH = Plate("bench", (-1, -1, 0.9), (3, 0, 0), (0, 2, 0))
WORKER = Block("worker", (0.45, 0, 1.0), (0.2, 0.3, 1.0))


class Ear:
    """Listens like a jobs.Progress, and may stop the work."""

    def __init__(self, stop_at=2.0):
        self.heard, self.stop_at = [], stop_at

    def report(self, fraction, doing):
        self.heard.append((fraction, doing))
        if fraction >= self.stop_at:
            raise Cancelled("stopped")


@pytest.fixture(scope="module")
def bench():
    scene = Scene((HOOD,), (BENCH,), (WORKER,), surroundings=Surroundings.over_floor(), watch=((0.2, 0, 1),))
    return solve(scene, QUICK)


def through_box(air, low, high):
    """Flow into a closed box that stands in the air, over its six sides."""
    return sum(
        air.flux_through(wall) * sign for wall, sign in zip(Plate.box("probe", low, high), inward(), strict=True)
    )


def inward():
    """Sign of each wall's normal (first x second side), seen from inside the box."""
    return (1, -1, -1, 1, 1, -1)


def test_all_that_comes_to_the_hood_goes_in(bench):
    air = bench.field({"hood": 0.05}, (0.1, 0.05, 0))
    assert through_box(air, (-0.2, -0.2, 0.8), (0.2, 0.2, 1.2)) == pytest.approx(0.05, rel=1e-4)
    assert through_box(air, (0.2, -0.2, 1.0), (0.3, 0.2, 1.3)) == pytest.approx(0, abs=1e-6)


def test_velocity_of_scalars_arrays_and_nothing(bench):
    air = bench.field({"hood": 0.05})
    one = air.velocity((0.2, 0, 1))
    assert one.shape == (3,) and one[0] < 0
    assert air.velocity([[[0.2, 0, 1]] * 3] * 2) == pytest.approx(np.broadcast_to(one, (2, 3, 3)))
    assert air.velocity(np.zeros((0, 3))).shape == (0, 3)


def test_the_air_does_not_look_through_the_bench(bench):
    air = bench.field({"hood": 0.05})
    above, below = air.velocity([(0.1, 0, 0.9005), (0.1, 0, 0.8995)])
    assert abs(above[2]) < 0.02 * abs(above[0])
    assert np.linalg.norm(below) < 0.3 * np.linalg.norm(above)


def test_velocity_is_continuous_in_the_open(bench):
    air = bench.field({"hood": 0.05}, (0.1, 0.05, 0))
    way = np.linspace((0.06, -0.2, 0.97), (0.3, 0.25, 1.3), 20001)
    steps = np.linalg.norm(np.diff(air.velocity(way), axis=0), axis=1)
    assert steps.max() < 1e-3


def test_nothing_flows_through_the_worker(bench):
    code = bench.cut.codes[0]
    assert np.all(bench.faces[0][code == 0] == 0)
    assert bench.cut.solid[bench.grid.cell_at((0.45, 0, 1))][0]


def test_arrays_are_as_the_kernels_want_them(bench):
    arrays = bench.arrays
    assert [a.dtype.name for a in arrays[:3]] == ["float64"] * 3 and arrays[6].dtype == np.float32
    assert all(a.flags.c_contiguous for a in arrays)
    assert arrays[6].shape == (*bench.grid.faces_shape(0), 4) and bench.names == ("hood", *bench.names[-3:])
    assert bench.contracted(bench.weights({"hood": 0.05}))[6][..., 0] == pytest.approx(0.05 * arrays[6][..., 0])


def test_distance_to_the_nearest_wall(bench):
    found = bench.distance[bench.grid.cell_at((0.15, 0.5, 1.0))][0]
    centre = np.array([bench.grid.centres[a][i[0]] for a, i in enumerate(bench.grid.cell_at((0.15, 0.5, 1.0)))])
    assert found == pytest.approx(centre[2] - 0.9, abs=0.02)


def test_report_tells_what_was_solved(bench):
    assert bench.report.residual < 1e-7 and bench.report.cells == bench.grid.cells and bench.report.steps < 20


def test_the_same_scene_is_solved_once(bench):
    assert solve(bench.scene, QUICK) is bench
    assert solve(bench.scene, Resolution(5, 1.3, 0.5)) is not bench


def test_progress_is_told_and_may_stop():
    scene = Scene((HOOD,), watch=((0.21, 0, 1),))
    with pytest.raises(Cancelled):
        solve(scene, QUICK, Ear(stop_at=0.3))
    ear = Ear()
    solve(scene, QUICK, ear)
    assert ear.heard[0] == (0.0, "laying the grid") and [f for f, _ in ear.heard] == sorted(f for f, _ in ear.heard)


def test_a_solution_that_does_not_settle_is_no_answer(monkeypatch):
    monkeypatch.setattr(multigrid, "MOST_STEPS", 2)
    with pytest.raises(NoSolution, match=r"the air flow did not settle: residual \S+ after 2 steps, not 1e-07"):
        solve(Scene((HOOD,), watch=((0.22, 0, 1),)), QUICK)


def test_the_answer_does_not_depend_on_threads(monkeypatch, bench):
    monkeypatch.setattr(multigrid, "_processors", lambda: 1)
    again = solve(
        Scene((HOOD,), (BENCH,), (WORKER,), surroundings=Surroundings.over_floor(), watch=((0.2, 0, 1.0),)), QUICK
    )
    assert all(np.array_equal(a, b) for a, b in zip(again.faces, bench.faces, strict=True))


def test_a_wide_flange_acts_as_a_wall():
    mouth = Mouth("hood", (0, 0, 0), (1, 0, 0), (0.1, 0.1), "rectangle", profile=0.0, flange=2.0, body=0.3)
    air = solve(Scene((mouth,)), Resolution(8, 1.25, 1.0)).field({"hood": 1.0})
    assert -air.velocity((0.1, 0, 0))[0] == pytest.approx(flanged_rectangle(0.1, 0.1, 0.1), rel=0.03)


def test_a_closed_room_leaks_evenly_and_says_so():
    hood = Mouth("hood", (1, 1, 1), (1, 0, 0), (0.2, 0.2), body=0.4)
    supply = Vent("supply", (0, 0.5, 1.5), (0.4, 0.4), "west")
    room = Scene((hood,), vents=(supply,), surroundings=Surroundings.room((2, 2, 2)))
    bases = solve(room, Resolution(4, 1.4, 3.0))
    assert bases.names[:2] == ("hood", "supply") and "comes in evenly through its walls" in bases.report.notes[0]
    air = bases.field({"hood": 0.1, "supply": 0.1})
    assert through_box(air, (0.5, 0.7, 0.7), (1.4, 1.3, 1.3)) == pytest.approx(0.1, rel=1e-4)
    assert np.abs(air.velocity((1.999, 1, 1))[0]) < 1e-4


def test_a_free_door_brings_what_the_hood_takes():
    hood = Mouth("hood", (1, 1, 1), (1, 0, 0), (0.2, 0.2), body=0.4)
    door = Vent("door", (0, 1.0, 0.9), (0.8, 1.8), "west", free=True)
    room = Scene((hood,), vents=(door,), surroundings=Surroundings.room((2, 2, 2)))
    air = solve(room, Resolution(4, 1.4, 3.0)).field({"hood": 0.1})
    curtain = Plate("curtain", (0.3, 0, 0), (0, 2, 0), (0, 0, 2))
    assert air.flux_through(curtain) == pytest.approx(0.1, rel=1e-4)


def test_a_local_box_agrees_with_one_fine_grid():
    """Two hoods, a bench, a worker and a door: within 2 % before the hood and above the bench."""
    hoods = (
        Mouth("near", (1.5, 1.5, 1.0), (0, -1, 0), (0.12, 0.12), flange=0.06, body=0.3),
        Mouth("far", (2.6, 0.6, 1.2), (-1, 0, 0), (0.2, 0.2), body=0.3),
    )
    bench = Plate("bench", (1.0, 1.2, 0.88), (1.0, 0, 0), (0, 0.7, 0))
    worker = Block.person("worker", (1.5, 0.85, 0), (0, 1, 0))
    door = Vent("door", (0, 1.2, 1.0), (0.8, 2.0), "west", free=True)
    scene = Scene(hoods, (bench,), (worker,), (door,), Surroundings.room((3, 2.4, 2.4)))
    fine = solve(scene, Resolution(6, 1.2, 4.0))
    local = solve_near(scene, ("near",), Resolution(6, 1.2))
    assert local.cut.here == [True, False] and "drawing through its sides: far" in local.report.notes[0]
    flows = {"near": 0.1, "far": 0.15}
    points = np.random.default_rng(4).normal(size=(300, 3)) * 0.16 + (1.5, 1.3, 1.05)
    points = points[(points[:, 1] < 1.46) & (points[:, 2] > 0.9) & ~fine.cut.solid[fine.grid.cell_at(points)]]
    one, other = fine.field(flows).velocity(points), local.field(flows).velocity(points)
    off = np.linalg.norm(one - other, axis=1) / np.linalg.norm(one, axis=1)
    assert np.median(off) < 0.005 and np.percentile(off, 95) < 0.02


FAULTS = [
    (
        lambda b: b.field({"hood": 0.0}),
        InputError,
        "no hood draws any air: every flow is zero; give a flow to at least",
    ),
    (lambda b: b.field({}), InputError, "no hood draws any air"),
    (lambda b: b.field({"nozzle": 1.0, "hood": 1}), InputError, "there is no hood or vent 'nozzle'; there are hood"),
    (lambda b: b.field({"hood": math.nan}), InputError, "no hood draws any air"),
    (lambda b: b.weights({"hood": math.nan}), RangeError, "hood: flow nan is not a finite number; give m3/s"),
    (lambda b: b.weights({"hood": -0.1}), RangeError, "hood: flow -0.1 m3/s is below zero: a hood draws air"),
    (lambda b: b.weights({"hood": 5.0}), RangeError, "hood: face velocity 636.6 m/s is above 100 m/s, the limit of"),
    (lambda b: b.weights({}, (0, 40.0, 0)), RangeError, "draught 40 m/s is above 10 m/s, more than any workroom has"),
    (lambda b: b.weights({}, (0, math.nan, 0)), RangeError, "draught .* is not made of finite numbers"),
    (
        lambda b: b.refuse_solid("torch", (0.45, 0, 1)),
        InputError,
        r"torch: .* lies in the body of worker; move it into",
    ),
    (lambda b: b.refuse_solid("torch", (-0.1, 0, 1)), InputError, r"torch: .* lies in the body of hood"),
    (lambda b: b.refuse_solid("torch", (9, 0, 1)), InputError, "torch: .* lies outside the box of the computed air"),
    (lambda b: b.refuse_solid("torch", (math.inf, 0, 1)), InputError, "torch: its place is not made of finite numbers"),
    (lambda b: solve_near(b.scene, ("nozzle",)), InputError, "scene: there is no hood nozzle; name hoods of the scene"),
]


@pytest.mark.parametrize("ask, error, text", FAULTS)
def test_bad_questions_are_refused(bench, ask, error, text):
    with pytest.raises(error, match=text):
        ask(bench)


def test_a_source_in_the_air_is_not_refused(bench):
    bench.refuse_solid("torch", [(0.2, 0, 1), (0.1, 0.1, 1.1)])


def test_sealed_enclosure_is_named_by_solve():
    hood = Mouth("cabinet hood", (0, 0, 1), (1, 0, 0), (0.1, 0.1), body=0.1)
    box = Plate.box("cabinet", (0, -0.2, 0.8), (0.4, 0.2, 1.2))
    with pytest.raises(InputError, match="cabinet hood: it is sealed off"):
        solve(Scene((hood,), box), QUICK)


def test_flow_through_the_opening_of_an_enclosure():
    hole = Hole((0.4, 0, 1), (0.3, 0.2))
    box = Plate.box("cabinet", (0, -0.2, 0.8), (0.4, 0.2, 1.2), (hole,))
    hood = Mouth("cabinet hood", (0, 0, 1), (1, 0, 0), (0.1, 0.1), body=0.1)
    air = solve(Scene((hood,), box), QUICK).field({"cabinet hood": 0.04})
    (wall,) = (plate for plate in box if plate.holes)
    assert air.flux_through(wall, hole) == pytest.approx(-0.04, rel=1e-4)
