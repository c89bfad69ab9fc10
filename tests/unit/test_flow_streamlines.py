"""Streamlines and lines of equal speed: against a sink in a stream and a sink in still air, which are exact."""

import math

import numpy as np
import pytest

from analytic_air import analytic_air, lines, point_sink
from hoodwright.errors import InputError, RangeError
from hoodwright.flow import (
    Frame,
    Mouth,
    Plane,
    Scene,
    axis_speeds,
    in_solid,
    isolines,
    opening_starts,
    reach_of,
    solve,
    speeds_on,
    streamlines,
)

# A sink in a wall, 0.2 m3/s, in a stream of 0.25 m/s along it, is a sink of 0.4 m3/s in free air (rank.axis, rank.far).
SINK, STREAM = {"hood": 0.4}, (0.0, 0.25, 0.0)
AXIS, FAR = 0.5046, 0.7136  # m, of the check list: what is caught abreast of the sink, and far upstream
TOL = 0.01  # grid and steps; the list has 0.2 % and 0.1 %
WAY, APART = 8.0, 0.01
STILL = (0.0, 0.0, 0.0)
SIDE = 0.04  # m: half of the cube that catches


def graded(count=60, end=2.5):
    """Lines that lie close together in the middle."""
    return end * np.sinh(4 * np.linspace(-1, 1, count + 1)) / math.sinh(4)


@pytest.fixture(scope="module")
def air():
    """A sink of unit strength in free air."""
    return analytic_air((graded(),) * 3, {"hood": (point_sink, SIDE)})


@pytest.fixture(scope="module")
def hood():
    """A round hood over a bench, solved."""
    return solve(Scene((Mouth("hood", (0, 0, 0.3), (1, 0, 0), (0.1, 0.1)),), watch=((0.4, 0, 0.3),)))


def along(air, starts, draught=STREAM, **more):
    return streamlines(air, air.mouths, SINK, draught, starts, WAY, APART, **more)


def ring(radius, y=0.0, turns=6):
    angle = np.linspace(0, 2 * np.pi, turns, endpoint=False) + 0.3
    return np.stack([radius * np.cos(angle), np.full(turns, y), radius * np.sin(angle)], axis=1)


def surface(places):
    """Stream function of sink and stream over the flow of the sink: constant on each stream surface."""
    x, y, z = places.T
    return STREAM[1] * np.pi * (x * x + z * z) / SINK["hood"] + y / np.sqrt(x * x + y * y + z * z) / 2


def test_what_starts_within_the_stagnation_surface_is_caught(air):
    inside, outside = (along(air, ring(AXIS * share)) for share in (1 - TOL, 1 + TOL))
    assert {line.end for line in inside} == {"hood"} and {line.hood for line in inside} == {"hood"}
    assert {line.end for line in outside} == {"edge"} and {line.hood for line in outside} == {None}


def test_the_caught_tube_upstream(air):
    """Lines that come from the sink keep within the tube of the list, and the widest of them nearly fills it."""
    starts = opening_starts(Frame.facing((0, 0.06, 0), (0, 1, 0), (0.1, 0.1), "round"), 200, 0.0)
    places = np.array([line.places[-1] for line in along(air, starts, against=True)])
    upstream = places[places[:, 1] < -2.4]
    radius = np.hypot(upstream[:, 0], upstream[:, 2]).max()
    assert len(upstream) > 150
    gone = 1 - 2.5 / math.hypot(2.5, FAR)  # share of the sink that comes from farther up than the ring at the edge
    assert 0.95 * FAR * math.sqrt(1 - gone / 2) < radius < FAR * (1 + TOL)


def test_a_line_stays_on_its_stream_surface(air):
    for line in along(air, ring(0.45, -0.5)):
        kept = surface(line.places[np.linalg.norm(line.places, axis=1) > 0.15])
        assert np.ptp(kept) < 2 * TOL


def test_there_and_back_again(air):
    there = along(air, [(0.8, -0.8, 0.1)])[0]
    back = along(air, [there.places[len(there.places) // 2]], against=True)[0]
    assert np.linalg.norm(back.places - there.places[0], axis=1).min() < APART
    x, y, z = there.places.T
    exact = np.linalg.norm(SINK["hood"] * np.array(point_sink(x, y, z)).T + STREAM, axis=1)
    assert there.speeds == pytest.approx(exact, rel=0.05)


def test_a_line_ends_at_stagnation_in_still_air_and_after_its_way(air):
    stagnation = math.sqrt(SINK["hood"] / (4 * math.pi * STREAM[1]))
    [line] = along(air, [(0.0, stagnation * 0.6, 0.0)], against=True)
    assert line.places[-1] == pytest.approx((0, stagnation, 0), abs=0.03 * stagnation)
    assert line.end == "still air"
    [short] = streamlines(air, air.mouths, SINK, STREAM, [(1, 0, 0)], 0.3, APART)
    assert short.end == "long" and np.linalg.norm(np.diff(short.places, axis=0), axis=1).sum() == pytest.approx(
        0.3, 0.1
    )


def test_no_line_goes_through_a_wall():
    wall = analytic_air((lines(-1, 1, 40),) * 3, {"hood": (point_sink, SIDE)}, walls=((1, 30),))
    found = along(wall, ring(0.3, 0.7), against=False, draught=(0, -0.5, 0))
    assert all(line.places[:, 1].min() >= wall.arrays[1][30] - 1e-9 for line in found)


def test_no_starts_no_lines(air):
    assert along(air, np.zeros((0, 3))) == ()


def test_lines_of_equal_speed_before_a_sink_are_circles(air):
    plane = Plane((-1, -1, 0), (2, 0, 0), (0, 2, 0))
    shape = plane.shape_for(40_000)
    levels = (0.5, 0.2, 0.1)
    found = isolines(speeds_on(air, SINK, STILL, plane, shape), plane, levels)
    for level, (line, *rest) in zip(levels, found, strict=True):
        exact = math.sqrt(SINK["hood"] / (4 * math.pi * level))
        assert not rest and line[0] == pytest.approx(line[-1])
        assert np.linalg.norm(line, axis=1) == pytest.approx(np.full(len(line), exact), rel=0.03)


def test_a_raster_of_a_plane_goes_from_corner_to_corner():
    plane = Plane((1, 2, 3), (0.4, 0, 0), (0, 0, 0.1))
    places = plane.places(plane.shape_for(400))
    assert places.shape == (40, 10, 3)
    assert places[0, 0] == pytest.approx((1, 2, 3)) and places[-1, -1] == pytest.approx((1.4, 2, 3.1))


def test_there_is_no_speed_in_a_body_nor_outside_the_box(hood):
    plane = Plane((-0.2, 0, 0.3), (0.4, 0, 0), (0, 0, 0.2))
    speeds = speeds_on(hood, {"hood": 0.05}, STILL, plane, (41, 21))
    inside = in_solid(hood, plane.places((41, 21)))
    assert 0 < inside.sum() < inside.size and np.array_equal(np.isnan(speeds), inside)
    assert bool(in_solid(hood, (99.0, 0, 0)))
    assert all(np.isfinite(line).all() for line in isolines(speeds, plane, (0.5,))[0])


def test_speeds_on_the_axis_are_those_of_the_field(hood):
    flows, distances = {"hood": 0.05}, np.array([0.05, 0.1, 0.2])
    speeds = axis_speeds(hood, flows, (0, 0.1, 0), hood.scene.mouths[0].frame, distances)
    places = np.array([(x, 0, 0.3) for x in distances])
    exact = np.linalg.norm(hood.field(flows, (0, 0.1, 0)).velocity(places), axis=1)
    assert speeds == pytest.approx(exact, rel=1e-6)
    assert axis_speeds(hood, flows, STILL, hood.scene.mouths[0].frame, 0.1) == pytest.approx(0.46, rel=0.25)
    assert axis_speeds(hood, flows, STILL, hood.scene.mouths[0].frame, []).shape == (0,)


def test_reach_lies_between_two_distances():
    distances, speeds = [0.1, 0.2, 0.3], [4.0, 2.0, 1.0]
    assert reach_of(distances, speeds, 3.0) == pytest.approx(0.15)
    assert reach_of(distances, speeds, 5.0) == 0
    assert math.isnan(reach_of(distances, speeds, 0.5)) and math.isnan(reach_of([], [], 0.5))
    assert reach_of(distances, [4.0, math.nan, 1.0], 2.5) == pytest.approx(0.2)


def test_lines_before_an_opening_share_it_evenly():
    round_one = Frame.facing((0, 0, 0), (1, 0, 0), (0.2, 0.2), "round")
    starts = opening_starts(round_one, 400, 0.01)
    assert starts[:, 0] == pytest.approx(np.full(400, 0.01))
    out = np.hypot(starts[:, 1], starts[:, 2])
    assert (out < 0.1 / math.sqrt(2)).mean() == pytest.approx(0.5, abs=0.01)
    slot = opening_starts(Frame.facing((0, 0, 0), (1, 0, 0), (0.6, 0.05), "slot"), 24, 0.0)
    assert np.ptp(slot[:, 1]) == pytest.approx(0.6 * (1 - 1 / len(slot)), rel=0.1)


@pytest.mark.parametrize(
    "call, text",
    [
        (lambda a: along(a, [(math.nan, 0, 0)]), "starts of streamlines nan is not a finite number"),
        (lambda a: streamlines(a, a.mouths, SINK, STILL, [(1, 0, 0)], 0.0, 0.1), "longest way 0 m is not above 0 m"),
        (lambda a: streamlines(a, a.mouths, SINK, STILL, [(1, 0, 0)], 1.0, -1.0), "spacing -1 m is not above 0 m"),
        (lambda a: opening_starts(Frame.facing((0, 0, 0), (1, 0, 0), (1, 1), "round"), 0, 0.1), "got 0 at 0.1 m"),
        (lambda a: isolines(np.zeros((1, 5)), Plane((0, 0, 0), (1, 0, 0), (0, 1, 0)), (0.5,)), r"raster of \(1, 5\)"),
        (lambda a: Plane((0, 0, 0), (0, 0, 0), (0, 1, 0)), "give finite sides"),
        (lambda a: reach_of([0.1], [1.0], 0.0), "velocity 0 m/s is not above 0 m/s"),
        (
            lambda a: axis_speeds(a, SINK, STILL, Frame.facing((0, 0, 0), (1, 0, 0), (1, 1), "round"), [-0.1]),
            "distance -0.1 m is below 0 m",
        ),
    ],
)
def test_bad_input_is_told(air, call, text):
    with pytest.raises((InputError, RangeError), match=text):
        call(air)


def test_a_start_in_a_body_is_refused(hood):
    with pytest.raises(InputError, match=r"a streamline: .* lies in the body of hood"):
        streamlines(hood, hood.scene.mouths, {"hood": 0.05}, STILL, [(-0.1, 0, 0.3)], 1.0, 0.01)
