"""Geometry of the computed air: openings, plates, blocks, surroundings, and what is refused."""

import math

import numpy as np
import pytest

from hoodwright.errors import InputError, RangeError
from hoodwright.flow import Block, Hole, Mouth, Plate, Resolution, Scene, Surroundings, Vent

HOOD = Mouth("hood", (0, 0, 1), (0, -1, 0), (0.2, 0.1), "rectangle")


def test_sides_of_an_opening_lie_level_by_default():
    assert HOOD.frame.normal == pytest.approx([0, -1, 0])
    assert abs(HOOD.frame.along[2]) < 1e-12
    assert HOOD.frame.corners()[:, 2] == pytest.approx([0.95, 1.05, 0.95, 1.05])


def test_first_side_follows_along():
    turned = Mouth("hood", (0, 0, 0), (1, 0, 0), (0.2, 0.1), "slot", along=(0.3, 0, 1))
    assert turned.frame.along == pytest.approx([0, 0, 1])


@pytest.mark.parametrize("shape, sides", [("round", (0.1, 0.1)), ("rectangle", (0.3, 0.1)), ("slot", (0.05, 0.4))])
def test_face_profile_has_a_mean_of_one_and_peaks_on_the_axis(shape, sides):
    mouth = Mouth("hood", (0, 0, 0), (0, 0, 1), sides, shape, along=(1, 0, 0))
    a, b = np.meshgrid(*(np.linspace(-0.4995, 0.4995, 1000) * side for side in sides), indexing="ij")
    ratio = mouth.speed_ratio(np.stack([a, b, 0 * a], axis=-1))
    assert ratio[ratio > 0].mean() == pytest.approx(1, abs=2e-3)
    assert ratio.max() == pytest.approx(1.3, abs=1e-3)


def test_body_narrows_to_its_throat():
    mouth = Mouth("hood", (0, 0, 0), (1, 0, 0), (0.4, 0.4), "rectangle", body=1.0, throat=(0.2, 0.1))
    points = [(-0.01, 0.18, 0), (-0.19, 0.18, 0), (-0.5, 0.04, 0), (-0.5, 0.06, 0), (-1.1, 0, 0), (0.01, 0, 0)]
    assert mouth.fills(points).tolist() == [True, False, True, False, False, False]


def test_plate_leaves_its_holes_open():
    plate = Plate("wall", (0, 0, 0), (1, 0, 0), (0, 0, 1), (Hole((0.5, 0, 0.5), (0.2, 0.4)),))
    points = [(0.5, 0, 0.5), (0.59, 0, 0.69), (0.61, 0, 0.5), (1.01, 0, 0.5)]
    assert plate.holds(points).tolist() == [False, False, True, False]


def test_skewed_plate():
    plate = Plate("roof", (0, 0, 0), (1, 0, 0), (0.5, 1, 0))
    assert plate.holds([(1.2, 0.5, 0), (0.2, 0.5, 0), (0.3, 0.5, 0)]).tolist() == [True, False, True]


def test_box_gives_each_hole_to_its_wall():
    walls = Plate.box("booth", (0, 0, 0), (1, 2, 3), (Hole((1.0, 1.0, 1.5), (0.5, 0.5)),))
    assert [wall.name for wall in walls if wall.holes] == ["booth, east"]
    assert len(walls) == 6 and sum(np.linalg.norm(np.cross(w.first, w.second)) for w in walls) == pytest.approx(22)


def test_person_turns_with_the_facing():
    person = Block.person("worker", (0, 0, 0), (1, 0, 0))
    corners = person.corners()
    assert np.ptp(corners, axis=0) == pytest.approx([0.245, 0.4375, 1.75])
    assert person.fills([(0, 0.2, 1), (0.2, 0, 1), (0, 0, 1.8)]).tolist() == [True, False, False]


def test_surroundings_bound_only_where_there_are_walls():
    low, high = Surroundings.over_floor(0.5).bounds
    assert low[2] == 0.5 and high[2] > 1e5 and low[0] < -1e5
    assert Surroundings.room((4, 3, 2.5)).closed and not Surroundings().closed


def scene(**parts):
    return Scene(**({"mouths": (HOOD,)} | parts))


NAN = math.nan
FAULTS = [
    (lambda: Mouth("hood", (0, NAN, 0), (1, 0, 0), (0.1, 0.1)), "hood: centre .* not made of finite numbers; give num"),
    (lambda: Mouth("hood", (0, 0, 0), (0, 0, 0), (0.1, 0.1)), r"hood: facing \(0, 0, 0\) has no length; give a direct"),
    (lambda: Mouth("hood", (0, 0, 0), (1, 0, 0), (0.1, 0.0)), "hood: sides .* must be above zero; give its true size"),
    (lambda: Mouth("hood", (0, 0, 0), (1, 0, 0), (0.1, 0.2)), "hood: a round opening has one diameter, got sides"),
    (lambda: Mouth("hood", (0, 0, 0), (1, 0, 0), (0.1, 0.1), flange=-0.1), "hood: flange -0.1 m or profile 0.3 is out"),
    (lambda: Plate("bench", (0, 0, 0), (1, 0, 0), (2, 0, 0)), "bench: the sides .* span no plate; give two directions"),
    (lambda: Block("man", (0, 0, 0), (1, 0, 1)), "man: size .* must be above zero"),
    (lambda: Hole((0, 0, 0), (0.1, -1)), "opening: sides .* must be above zero"),
    (lambda: Vent("door", (0, 0, NAN), (1, 2), "west"), "door: centre .* not made of finite"),
    (lambda: Surroundings(floor=2.0, ceiling=1.0), "room: floor at 2 m is not below ceiling at 1 m; swap them"),
    (lambda: Scene(()), "scene: there is no hood opening, so nothing draws air; add one"),
    (lambda: scene(mouths=(HOOD, HOOD)), "scene: the name 'hood' is used twice"),
    (lambda: scene(surroundings=Surroundings(floor=1.2)), "hood: its centre .* lies outside the room; move it inside"),
    (
        lambda: scene(vents=(Vent("door", (0, 0, 1), (1, 2), "west"),)),
        "door: there is no wall 'west'; use one of west,",
    ),
    (lambda: scene(watch=((0, 0, NAN),)), "scene: the point .* is not made of finite numbers"),
    (lambda: Resolution(reach=0.0), "reach 0.0 m must be above zero; give metres, or leave it out"),
]


@pytest.mark.parametrize("make, text", FAULTS)
def test_bad_geometry_is_refused(make, text):
    with pytest.raises(InputError, match=text):
        make()


@pytest.mark.parametrize(
    "values, text", [((1,), "cells across an opening 1 is outside 2 to 64"), ((8, 3), "growth of")]
)
def test_bad_resolution_is_refused(values, text):
    with pytest.raises(RangeError, match=text):
        Resolution(*values)
