"""Layers over the picture of the air: planes, streamlines, speeds, the capture map, their words and their data."""

import json
import math

import numpy as np
import pytest

from capture_shop import CABINET as STILL_CABINET
from capture_shop import text
from hoodwright.errors import Cancelled, InputError
from hoodwright.flow import Frame, Plane, Plate
from hoodwright.jobs import Progress
from hoodwright.tasks.air import map_of_capture as air_map
from hoodwright.tasks.air.layers import centreline_of, speed_lines_of, streamlines_of
from hoodwright.tasks.air.live import LiveAir
from hoodwright.tasks.air.live_layers import layer_of, map_of_scene
from hoodwright.tasks.air.map_of_capture import smoothed
from hoodwright.tasks.air.planes import cut_of, opening_frame, part_of, plane_in_box
from hoodwright.tasks.capture.map import captured_map
from hoodwright.workplace import parse_workplace

GUSTS = ("speed: 0.05 m/s}", "speed: 0.1 m/s, wander: 0.05 m/s, turbulence: 0.05 m/s}")
SHOP, CABINET = text(GUSTS), text(GUSTS, of=STILL_CABINET)


@pytest.fixture(scope="module")
def scene():
    return LiveAir(parse_workplace(SHOP), "nozzle", "joint").air()


@pytest.fixture(scope="module")
def level_map(scene):
    return map_of_scene(scene, "level")


def speeds(scene, plane="level", system="SI"):
    args = (scene.bases, scene.flows, scene.draught, "nozzle", opening_frame(scene.hood), scene.source.centre)
    return speed_lines_of(*args, plane, system)


def along_axis(found, scene):
    """Captured shares of a level map on the raster's line nearest to the axis, from the opening outward."""
    places = found.plane.places(found.shape)
    line = int(np.argmin(np.abs(places[:, 0, 0] - scene.hood.at[0])))
    ahead = scene.hood.at[1] - places[line, :, 1]
    order = np.argsort(ahead)
    known = [n for n in order if ahead[n] > 0 and not math.isnan(found.values[line, n])]
    return ahead[known], found.values[line, known]


def test_planes_go_through_hood_and_source(scene):
    frame = opening_frame(scene.hood)
    for which in ("level", "upright"):
        plane = plane_in_box(scene.bases, frame, scene.source.centre, which)
        normal = np.cross(plane.first, plane.second)
        for place in (frame.centre, scene.source.centre):
            assert normal @ np.subtract(place, plane.corner) == pytest.approx(0, abs=1e-9)
        assert scene.bases.grid.holds(plane.places((9, 9))).all()


@pytest.mark.parametrize(
    ("source", "facing", "way"),
    [((1, 1, 0), (0, 0, -1), (1, 1)), ((0, 0, -0.5), (0, 0, -1), (1, 0)), ((0, 0, -0.5), (0, 1, 0), (0, 1))],
)
def test_an_upright_plane_takes_its_way_from_source_axis_or_opening(source, facing, way, scene):
    frame = Frame.facing(scene.hood.at, facing, (0.1, 0.1), "round")
    plane = plane_in_box(scene.bases, frame, tuple(np.add(scene.hood.at, source)), "upright")
    assert np.cross(plane.first, (*way, 0)) == pytest.approx((0, 0, 0), abs=1e-9)


def test_a_plate_cuts_a_plane_in_a_line_within_it():
    plane = Plane((0, 1, 0), (2, 0, 0), (0, 0, 2))
    through = cut_of(Plate("bench", (0.5, 0, 0.9), (1, 0, 0), (0, 2, 0)), plane)
    assert np.sort(through, axis=0) == pytest.approx(np.array([(0.5, 1, 0.9), (1.5, 1, 0.9)]))
    longer = cut_of(Plate("wall", (1, 0, -3), (0, 2, 0), (0, 0, 9)), plane)
    assert np.sort(longer, axis=0) == pytest.approx(np.array([(1, 1, 0), (1, 1, 2)]))
    tilted = cut_of(Plate("roof", (1, 0, 1), (3, 0, 3), (0, 2, 0)), plane)
    assert np.sort(tilted, axis=0) == pytest.approx(np.array([(1, 1, 1), (2, 1, 2)]))
    for away in ((0.5, 2, 0.9), (0.5, 0, 5), (5, 0, 0.9)):
        assert cut_of(Plate("bench", away, (1, 0, 0), (0, 1.5, 0)), plane) is None
    assert cut_of(Plate("screen", (0.5, 1, 0.5), (1, 0, 0), (0, 0, 1)), plane) is None  # it lies in the plane


def test_a_part_of_a_plane_holds_what_is_wanted(scene):
    whole = plane_in_box(scene.bases, opening_frame(scene.hood), scene.source.centre, "level")
    wanted = np.zeros((20, 20), bool)
    wanted[3:6, 10:12] = True
    part = part_of(whole, wanted, (scene.source.centre,))
    kept = np.array([whole.places((20, 20))[wanted].min(axis=0), whole.places((20, 20))[wanted].max(axis=0)])
    low, high = np.array(part.corner), np.add(part.corner, np.add(part.first, part.second))
    for place in (*kept, scene.source.centre):
        assert np.all(place >= low - 1e-9) and np.all(place <= high + 1e-9)
    assert np.linalg.norm(part.first) < np.linalg.norm(whole.first)


def test_streamlines_end_in_the_hood_and_run_with_the_air(scene):
    data = layer_of(scene, "streamlines")
    assert {"lines", "speeds", "top", "words"} <= set(data)
    assert data["ends"].count("nozzle") > 30 and data["top"] == pytest.approx(max(map(max, data["speeds"])), abs=1e-3)
    mouth = np.array(scene.hood.at)
    for line, speed, end in zip(data["lines"], data["speeds"], data["ends"], strict=True):
        assert len(line) == len(speed)
        if end == "nozzle":
            assert np.linalg.norm(np.subtract(line[-1], mouth)) < 0.07
    assert data["words"].startswith("The mean air flows from the joint into the nozzle in ")


def test_words_of_streamlines_tell_where_the_source_goes(scene):
    frame = opening_frame(scene.hood)
    args = (scene.bases, scene.mouths, scene.flows, scene.draught, "nozzle", frame, "joint")
    assert "past the hoods" in streamlines_of(*args, [(2.2, 0.7, 1.1)]).words
    assert "a part of the joint into the nozzle" in streamlines_of(*args, [(2.2, 0.7, 1.1), (1.5, 1.3, 1.1)]).words
    assert streamlines_of(*args, []).words.startswith("Lines of the mean air alone")


def test_speeds_are_round_faster_than_the_draught_and_fall_with_the_distance(scene):
    found = speeds(scene)
    values = [level.value for level in found.levels]
    assert values == sorted(values, reverse=True) and min(values) > 0.1 and 0.5 in values
    reaches = list(found.reaches.values())
    assert reaches == sorted(reaches) and "0.5\u2009m/s at" in found.words and "draught of 0.1\u2009m/s" in found.words
    speed = scene.bases.field(scene.flows, scene.draught.mean).velocity(
        np.subtract(scene.hood.at, (0, found.reaches[0.5], 0))
    )
    assert np.linalg.norm(speed) == pytest.approx(0.5, rel=0.02)
    us = speeds(scene, system="US").levels[-1]
    assert us.words.endswith("fpm") and us.value == pytest.approx(50 * 0.00508)


def test_every_line_of_equal_speed_has_that_speed(scene):
    for level in speeds(scene, "upright").levels:
        places = np.concatenate(level.lines)
        found = np.linalg.norm(scene.bases.field(scene.flows, scene.draught.mean).velocity(places), axis=1)
        assert np.median(np.abs(found / level.value - 1)) < 0.03


def test_the_centreline_is_the_field_without_draught(scene):
    frame = opening_frame(scene.hood)
    line = centreline_of(scene.bases, scene.flows, frame, lambda x: 2 * x, [0.1, 0.2, 99.0])
    places = [np.subtract(scene.hood.at, (0, x, 0)) for x in (0.1, 0.2)]
    exact = np.linalg.norm(scene.bases.field(scene.flows).velocity(places), axis=1)
    assert [s.velocity for s in line] == pytest.approx(exact, rel=1e-5)
    assert [(s.distance, s.handbook) for s in line] == [(0.1, 0.2), (0.2, 0.4)]
    assert centreline_of(scene.bases, scene.flows, frame)[0].handbook is None


def test_a_map_falls_with_the_distance_and_is_empty_in_bodies(level_map, scene):
    ahead, shares = along_axis(level_map, scene)
    near, far = shares[ahead < 0.15], shares[ahead > 0.8]
    assert near.min() > 0.9 and far.max(initial=0.0) < 0.5
    assert np.diff(shares).max() < 0.1  # few draws may wobble
    behind = np.add(scene.hood.at, (0, 0.1, 0))
    places = level_map.plane.places(level_map.shape)
    nearest = np.unravel_index(np.linalg.norm(places - behind, axis=2).argmin(), level_map.shape)
    assert math.isnan(level_map.values[nearest])


def test_a_map_agrees_with_the_share_of_the_job(level_map, scene):
    there = (1.5, 1.4 - 0.3, 1.1)
    share = LiveAir(scene.workplace, "nozzle", "joint").share(
        LiveAir(scene.workplace, "nozzle", "joint").air(source_at=there)
    )
    places = level_map.plane.places(level_map.shape)
    nearest = np.unravel_index(np.linalg.norm(places - there, axis=2).argmin(), level_map.shape)
    assert share.low - 0.1 < level_map.values[nearest] < share.high + 0.1


def test_words_of_a_map_tell_how_far_its_line_reaches(level_map, scene):
    assert level_map.words.startswith("Inside the 90 % line the nozzle still catches nine tenths; it reaches ")
    told = float(level_map.words.split("reaches ")[1].split("\u2009mm")[0]) / 1000
    good = level_map.plane.places(level_map.shape)[np.nan_to_num(level_map.values) >= 0.9]
    assert told == pytest.approx((scene.hood.at[1] - good[:, 1]).max(), abs=0.006)
    assert level_map.escape_radius >= 1.5 * np.linalg.norm(good - scene.hood.at, axis=1).max()


@pytest.fixture
def few(monkeypatch):
    """A map of few places, which is quick."""
    monkeypatch.setattr(air_map, "PLACES", 120)


def test_layers_are_json_with_null_in_bodies(scene, few):
    for layer, plane in (("streamlines", "level"), ("speed", "upright"), ("map", "upright")):
        data = json.loads(json.dumps(layer_of(scene, layer, plane), allow_nan=False))
        assert data["words"]
    assert None in data["values"] and len(data["values"]) == math.prod(data["shape"])
    assert {level["share"] for level in data["levels"]} == {0.9, 0.5} and set(data["plane"]) == {
        "corner",
        "first",
        "second",
    }
    assert data["escape"] > 0.45 and data["limit"] == 15


def test_the_same_seed_gives_the_same_map(scene, few):
    one, two = (map_of_scene(scene, "level").values for _ in range(2))
    assert np.array_equal(one, two, equal_nan=True)


def test_smoothing_does_not_reach_through_a_plate_nor_into_a_body():
    values = np.array([[1.0, 1.0, 0.0, 0.0], [1.0, np.nan, 0.0, 0.0], [1.0, 1.0, 0.0, 0.0]])
    x, y = np.meshgrid([0.0, 1.0, 2.0], [0.0, 1.0, 2.0, 3.0], indexing="ij")
    places = np.stack([x, y, 0 * x], axis=-1)
    wall = Plate("wall", (-1, 1.5, -1), (5, 0, 0), (0, 0, 2))
    assert np.array_equal(smoothed(values, places, (wall,)), values, equal_nan=True)
    free = smoothed(values, places, ())
    assert free[0, 1] < 1 and free[0, 0] == 1 and math.isnan(free[1, 1])


def test_a_map_can_be_stopped(scene):
    progress = Progress()
    progress.cancel()
    with pytest.raises(Cancelled):
        map_of_scene(scene, "level", progress)


def test_no_map_where_no_per_cent_may_be_claimed():
    workplace = parse_workplace(CABINET)
    scene = LiveAir(workplace, "box", "joint").air()
    for ask in (lambda: layer_of(scene, "map"), lambda: captured_map(workplace, "joint", "box")):
        with pytest.raises(InputError, match="there is no capture map: an enclosure is judged by the inward velocity"):
            ask()
    assert layer_of(scene, "streamlines")["ends"].count("box") > 10


@pytest.mark.parametrize(
    ("layer", "plane", "words"), [("fog", "level", "fog"), ("speed", "tilted", "level and upright")]
)
def test_unknown_layers_and_planes(scene, layer, plane, words):
    with pytest.raises(InputError, match=words):
        layer_of(scene, layer, plane)
