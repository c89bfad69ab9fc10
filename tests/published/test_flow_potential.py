"""[potential-flow]: the computed air against exact potential flow.

Flanged rectangles with an even face (solid angle), and a sink in a stream along a wall (half Rankine body).
"""

import math

import numpy as np
import pytest

from hoodwright.flow import Mouth, Resolution, Scene, Surroundings, solve

RECTANGLE_TOL = 0.02  # issue 4, acceptance 1
STAGNATION_TOL = 0.03  # the same
TUBE_TOL = 0.01  # the same
WALL = Surroundings(west=0.0)
AREA = 0.01  # m2
DISTANCES = np.array([0.25, 0.5, 1.0, 2.0])  # in square roots of the area

FACES = [(1, Resolution()), (4, Resolution(cells_across=8)), (20, Resolution(6, 1.25, 0.6))]
STREAM, STAGNATION = 0.2, 0.25  # m/s, m
FLOW = 2 * math.pi * STREAM * STAGNATION**2  # a sink in a wall stands for twice its flow in free air


def exact_rectangle(long, short, distance):
    a, b = long / 2, short / 2
    return 2 / math.pi * np.arctan(a * b / (distance * np.sqrt(a * a + b * b + distance * distance)))


def axis_ratio(aspect, resolution):
    """Computed velocity over the exact one on the axis of an even rectangle in a wall."""
    short = math.sqrt(AREA / aspect)
    mouth = Mouth("hood", (0, 0, 0), (1, 0, 0), (aspect * short, short), "rectangle", profile=0.0)
    air = solve(Scene((mouth,), surroundings=WALL), resolution).field({"hood": AREA})
    distance = DISTANCES * math.sqrt(AREA)
    return -air.velocity(distance[:, None] * [1, 0, 0])[:, 0] / exact_rectangle(aspect * short, short, distance)


@pytest.mark.derived
@pytest.mark.parametrize(("aspect", "resolution"), FACES)
def test_flanged_rectangle(aspect, resolution):
    assert axis_ratio(aspect, resolution) == pytest.approx(np.ones(4), abs=RECTANGLE_TOL)


def test_the_tolerance_tells_neighbouring_distances_and_shapes_apart():
    near, far = exact_rectangle(0.1, 0.1, 0.1), exact_rectangle(0.1, 0.1, 0.105)
    assert abs(far / near - 1) > 3 * RECTANGLE_TOL
    assert abs(exact_rectangle(0.2, 0.05, 0.1) / near - 1) > 3 * RECTANGLE_TOL


@pytest.fixture(scope="module")
def stream():
    """A small hood in a wall, in a stream along the wall."""
    mouth = Mouth("hood", (0, 0, 0), (1, 0, 0), (0.08, 0.08))
    bases = solve(Scene((mouth,), surroundings=WALL), Resolution(cells_across=8, reach=1.4))
    return bases.field({"hood": FLOW}, (0, STREAM, 0))


@pytest.mark.derived
def test_stagnation_downstream(stream):
    y = np.linspace(0.15, 0.4, 2001)
    speed = stream.velocity(np.stack([np.full_like(y, 1e-4), y, 0 * y], axis=1))[:, 1]
    assert y[np.argmax(speed > 0)] == pytest.approx(STAGNATION, rel=STAGNATION_TOL)


def exact_tube(upstream):
    """Radius at which the flow through a disc upstream is all that the hood takes (with its image)."""
    low, high = 0.0, 2.0
    for _ in range(60):
        r = (low + high) / 2
        caught = STREAM * math.pi * r * r + FLOW * (1 - upstream / math.hypot(upstream, r))
        low, high = (r, high) if caught < 2 * FLOW else (low, r)
    return low


def caught_share(air, radius, upstream):
    """Which of some points on a half ring upstream end in the hood."""
    angle = np.radians([-80, -40, 0, 40, 80])
    points = np.stack([radius * np.cos(angle), np.full(5, -upstream), radius * np.sin(angle)], axis=1)
    caught = np.zeros(5, dtype=bool)
    for _ in range(1500):
        step = np.minimum(0.02, 0.15 * np.linalg.norm(points, axis=1))[:, None]
        half = points + step / 2 * unit(air.velocity(points))
        points = points + step * unit(air.velocity(half))
        caught |= np.linalg.norm(points, axis=1) < 0.08
        points[caught] = (0.1, 0, 0)
        if np.all(caught | (points[:, 1] > 0.8)):
            return caught.mean()
    raise AssertionError("a streamline did not end")


def unit(vectors):
    return vectors / np.linalg.norm(vectors, axis=1)[:, None]


@pytest.mark.derived
def test_tube_that_the_hood_takes(stream):
    radius = exact_tube(1.2)
    assert caught_share(stream, (1 - TUBE_TOL) * radius, 1.2) == 1
    assert caught_share(stream, (1 + TUBE_TOL) * radius, 1.2) == 0
