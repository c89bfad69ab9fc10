"""The computed air, whatever the scene: mass, tight plates, scaling, symmetry, sums, order of convergence."""

import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from hoodwright.flow import Hole, Mouth, Plate, Resolution, Scene, Surroundings, solve
from hoodwright.hoods import flanged_rectangle

TILTS = 12
QUICK = Resolution(5, 1.35, 0.35)
SIZE = 0.3  # m, of the cabinet


def turned(seed):
    """A random turn, as a function of points."""
    q = np.random.default_rng(seed).normal(size=4)
    w, x, y, z = q / np.linalg.norm(q)
    matrix = np.array(
        [
            [1 - 2 * (y * y + z * z), 2 * (x * y - w * z), 2 * (x * z + w * y)],
            [2 * (x * y + w * z), 1 - 2 * (x * x + z * z), 2 * (y * z - w * x)],
            [2 * (x * z - w * y), 2 * (y * z + w * x), 1 - 2 * (x * x + y * y)],
        ]
    )
    return lambda point: tuple(float(c) for c in matrix @ np.asarray(point, dtype=float))


def cabinet(turn, opening=(0.1, 0.15)):
    """A cabinet with one opening and a hood in the wall behind, turned in space."""
    hole = Hole(turn((SIZE / 2, 0, 0)), opening)
    low, high = (-SIZE / 2,) * 3, (SIZE / 2,) * 3
    walls = [
        Plate(p.name, turn(p.corner), turn(p.first), turn(p.second), (hole,) if p.name == "cabinet, east" else ())
        for p in Plate.box("cabinet", low, high)
    ]
    hood = Mouth("hood", turn((-SIZE / 2, 0, 0)), turn((1, 0, 0)), (0.08, 0.08), body=0.12)
    return Scene((hood,), tuple(walls)), walls[1], hole


@pytest.mark.parametrize("seed", range(TILTS))
def test_cabinet_is_tight_at_any_tilt(seed):
    scene, wall, hole = cabinet(turned(seed))
    air = solve(scene, QUICK).field({"hood": 0.02}, (0.2, -0.1, 0.1))
    assert -air.flux_through(wall, hole) / 0.02 == pytest.approx(1, abs=1e-4)
    rest = [air.flux_through(plate) for plate in scene.plates[1:]]  # the first holds the hood
    assert rest == pytest.approx([0.0] * 5, abs=1e-12)


@pytest.fixture(scope="module")
def pair():
    """Two hoods over a floor."""
    hoods = (Mouth("one", (0, 0, 0.3), (1, 0, 0), (0.1, 0.1)), Mouth("two", (0.3, 0.3, 0.4), (0, -1, 0), (0.1, 0.1)))
    return solve(Scene(hoods, surroundings=Surroundings.over_floor()), Resolution(5, 1.35, 0.4))


FLOWS = st.floats(0.001, 0.2)
SPEEDS = st.floats(-1, 1)
PLACES = np.random.default_rng(3).uniform((-0.2, -0.2, 0), (0.5, 0.5, 0.6), (40, 3))


@settings(max_examples=25, deadline=None)
@given(one=FLOWS, two=FLOWS, along=SPEEDS, factor=st.floats(0.1, 3))
def test_flows_and_draughts_add_up_and_scale(pair, one, two, along, factor):
    parts = [pair.field({"one": one}), pair.field({"two": two}), pair.field({"one": 1e-9}, (along, 0, 0))]
    whole = pair.field({"one": one, "two": two}, (along, 0, 0)).velocity(PLACES)
    assert sum(part.velocity(PLACES) for part in parts) == pytest.approx(whole, abs=2e-5 * (1 + np.abs(whole).max()))
    more = pair.field({"one": factor * one, "two": factor * two}, (factor * along, 0, 0)).velocity(PLACES)
    assert more == pytest.approx(factor * whole, abs=2e-5 * (1 + np.abs(more).max()))


def test_a_hood_twice_as_large_draws_the_same_air_twice_as_far():
    one, two = (
        solve(Scene((Mouth("hood", (0, 0, 0), (1, 0, 0), (d, d)),)), Resolution(6, 1.3, 4 * d)) for d in (0.1, 0.2)
    )
    near, far = one.field({"hood": 0.01}), two.field({"hood": 0.04})
    places = PLACES * 0.5
    assert far.velocity(2 * places) == pytest.approx(near.velocity(places), rel=1e-3, abs=1e-5)


def test_mirror_images_have_mirrored_air():
    """A hood over a floor is one of two hoods in free air."""
    over = solve(Scene((Mouth("hood", (0, 0, 0.3), (1, 0, 0), (0.1, 0.1)),), surroundings=Surroundings.over_floor()))
    both = [Mouth(name, (0, 0, z), (1, 0, 0), (0.1, 0.1)) for name, z in (("up", 0.3), ("down", -0.3))]
    free = solve(Scene(tuple(both)))
    places = PLACES[PLACES[:, 0] > 0.05]
    one = over.field({"hood": 0.05}).velocity(places)
    other = free.field({"up": 0.05, "down": 0.05}).velocity(places)
    assert np.percentile(np.linalg.norm(one - other, axis=1) / np.linalg.norm(one, axis=1), 90) < 0.03


def test_far_away_a_hood_is_a_point():
    air = solve(Scene((Mouth("hood", (0, 0, 0), (1, 0, 0), (0.05, 0.05), body=0.05),))).field({"hood": 0.01})
    ways = np.concatenate([np.eye(3), -np.eye(3)])
    inward = -np.sum(air.velocity(0.6 * ways) * ways, axis=1)
    assert inward.mean() == pytest.approx(0.01 / (4 * math.pi * 0.36), rel=0.04)  # cells of 0.12 m there
    assert inward == pytest.approx(np.full(6, inward.mean()), rel=0.1)


def test_an_undisturbed_draught_is_even():
    small = Mouth("hood", (0, 0, 0), (1, 0, 0), (0.05, 0.05), body=0.1)
    air = solve(Scene((small,))).field({"hood": 1e-9}, (0.1, 0.2, -0.05))
    assert air.velocity([(0.4, 0.4, 0.3), (-0.6, 0.2, 0.1)]) == pytest.approx(
        np.array([[0.1, 0.2, -0.05]] * 2), abs=2e-3
    )


def test_error_falls_with_the_square_of_the_cell():
    """Against the exact even rectangle in a wall; growth of cells less one falls with the cells."""
    mouth = Mouth("hood", (0, 0, 0), (1, 0, 0), (0.1, 0.1), "rectangle", profile=0.0)
    scene = Scene((mouth,), surroundings=Surroundings(west=0.0))
    x = np.linspace(0.04, 0.2, 60)
    exact = np.array([flanged_rectangle(d, 0.1, 0.1) for d in x])
    errors = []
    for cells, growth in ((4, 1.3), (8, 1.15), (12, 1.1)):
        speed = (
            -solve(scene, Resolution(cells, growth, 0.5)).field({"hood": 1.0}).velocity(x[:, None] * [1, 0, 0])[:, 0]
        )
        errors.append(np.sqrt(np.mean((speed / exact - 1) ** 2)))
    orders = [math.log(errors[0] / errors[1]) / math.log(2), math.log(errors[1] / errors[2]) / math.log(1.5)]
    assert all(1.6 < order < 2.4 for order in orders), (errors, orders)
