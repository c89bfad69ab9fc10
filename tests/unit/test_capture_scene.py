"""From the file to the scene: other hoods, openings of the room and of enclosures, canopies and tapers."""

import numpy as np
import pytest

from hoodwright.tasks.air.hoods import throat_of, walls_of
from hoodwright.tasks.air.scene import draught_of, felt_from, group_of, release_of, scene_of
from hoodwright.tasks.air.solved import flows_of, plan_for, solved_air, vent_flows, watched
from hoodwright.workplace import parse_workplace

HEAD = """\
hoodwright: 1
name: Test shop
room: {size: [6 m, 5 m, 3 m], draught: {towards: [1, 0, 0], speed: 0.05 m/s}}
contaminants: [{name: fume, kind: fume}]
surfaces: [{name: bench, corner: [1 m, 1 m, 0.9 m], sides: [[1 m, 0 m, 0 m], [0 m, 0.6 m, 0 m]]}]
sources: [{name: joint, contaminant: fume, at: [1.5 m, 1.3 m, 1.1 m], dispersion: gentle}]
hoods:
  - {name: nozzle, type: capturing, serves: [joint], opening: {round: 100 mm},
     at: [1.5 m, 1.4 m, 1.1 m], facing: [0, -1, 0], intended_flow: 300 m3/h}
"""
FAN = """\
  - {name: big hood, type: capturing, serves: [joint], opening: {rectangle: [500 mm, 500 mm]},
     at: [3.9 m, 1.4 m, 1.1 m], facing: [-1, 0, 0], intended_flow: 3600 m3/h}
"""
BOX = """\
  - name: box
    type: enclosing
    form: cabinet
    serves: [joint]
    opening: {rectangle: [600 mm, 300 mm]}
    inside: [0.8 m, 0.6 m, 0.5 m]
    other_openings:
      - {name: hatch, rectangle: [100 mm, 50 mm], wall: right, at: [100 mm, 300 mm]}
      - {name: gap, round: 80 mm}
    at: [1.5 m, 1.1 m, 1.2 m]
    facing: [0, -1, 0]
    intended_flow: 360 m3/h
"""
VENTS = """openings: [{name: door, wall: west, at: [2 m, 1 m], size: [1 m, 2 m], kind: door},
  {name: terminal, wall: east, at: [2 m, 1 m], size: [200 mm, 200 mm], kind: supply, flow: 360 m3/h}], draught"""
TAPERED = """\
  - {name: canopy, type: receiving, serves: [joint], opening: {round: 600 mm}, at: [3 m, 3 m, 2 m], %s}
"""


def air_of_first(workplace, at=0):
    hood = workplace.hoods[at]
    return solved_air(hood, workplace, workplace.source("joint").points, flows_of(workplace))


def shop(more="", old="", new=""):
    assert old in HEAD
    return parse_workplace((HEAD.replace(old, new) if old else HEAD) + more)


def test_scene_has_every_part_and_the_walls():
    workplace = shop()
    scene, notes = scene_of(group_of(workplace.hoods[0], workplace), workplace, ((1.5, 1.3, 1.1),))
    assert [m.name for m in scene.mouths] == ["nozzle"] and [p.name for p in scene.plates] == ["bench"]
    assert scene.surroundings.closed and notes == ()
    assert draught_of(workplace).mean == (0.05, 0.0, 0.0)
    assert release_of(workplace.sources[0], workplace, 1.2).jet is None


def test_a_strong_hood_beyond_the_neighbours_is_felt_and_draws():
    workplace = shop(FAN)
    nozzle = workplace.hoods[0]
    assert [h.name for h in group_of(nozzle, workplace)] == ["nozzle"]
    assert [h.name for h in felt_from(nozzle, workplace)] == ["big hood"]
    air = air_of_first(workplace)
    place = (1.9, 0.9, 1.3)
    alone, both = (air.bases.field(f).velocity(place) for f in ({"nozzle": air.flows["nozzle"]}, air.flows))
    pulled = (both - alone)[0]
    sink = 1.0 / (4 * np.pi * (3.9 - 1.9) ** 2)  # 1 m3/s, without walls and bodies
    assert 0.7 * sink < pulled < 3 * sink
    assert any("big hood" in note for note in air.notes)


def test_a_weak_hood_far_away_is_left_out_and_told():
    workplace = shop(FAN.replace("3600 m3/h", "100 m3/h"))
    assert felt_from(workplace.hoods[0], workplace) == ()
    air = air_of_first(workplace)
    assert list(air.flows) == ["nozzle"] and "Left out" in air.notes[0] and "big hood" in air.notes[0]


def test_a_single_hood_keeps_its_own_box_and_its_cache():
    workplace = shop()
    first = air_of_first(workplace)
    moved = workplace.sources[0].model_copy(update={"at": (1.52, 1.28, 1.12)})
    again = workplace.model_copy(update={"sources": (moved,)})
    assert air_of_first(again).bases is first.bases and first.scene.vents == ()


def test_openings_of_the_room_bring_their_flow():
    workplace = shop("", "draught", VENTS)
    assert vent_flows(workplace) == {"terminal": pytest.approx(0.1)}
    air = air_of_first(workplace)
    assert air.flows == {"nozzle": pytest.approx(300 / 3600), "terminal": pytest.approx(0.1)}
    assert [(v.name, v.free) for v in air.scene.vents] == [("door", True), ("terminal", False)]
    blown = air.bases.field(air.flows).velocity((2.2, 1.4, 1.1)) - air.bases.field(
        air.flows | {"terminal": 0.0}
    ).velocity((2.2, 1.4, 1.1))
    assert blown[0] < 0  # from the east wall to the door in the west


def test_a_room_without_a_door_is_told():
    supply = VENTS.replace("{name: door, wall: west, at: [2 m, 1 m], size: [1 m, 2 m], kind: door},\n", "")
    workplace = shop("", "draught", supply)
    assert any("no door" in note for note in scene_of(workplace.hoods, workplace, ())[1])


def test_an_opening_with_a_place_is_a_hole_in_its_wall():
    workplace = shop(BOX)
    walls = {plate.name: plate for plate in walls_of(workplace.hoods[1])}
    assert [hole.name for hole in walls["box, front"].holes] == ["main opening"]
    holed = [plate for plate in walls.values() for hole in plate.holes if hole.name == "hatch"]
    frame = holed[0].hole_frame(holed[0].holes[0])
    level = 0 if abs(frame.along[1]) > 0.9 else 1
    assert frame.sides[level] == 0.1 and frame.centre == pytest.approx((1.9, 1.2, 1.2))
    assert "gap" in scene_of(workplace.hoods, workplace, ())[1][0]


def test_what_the_box_draws_comes_through_its_openings():
    workplace = shop(BOX.replace("      - {name: gap, round: 80 mm}\n", ""))
    air = air_of_first(workplace, 1)
    field = air.bases.field({"box": 0.1})
    middle = np.array((1.5, 1.35, 1.2))
    flux = 0.0
    for plate in walls_of(workplace.hoods[1]):
        for hole in plate.holes:
            flux += np.sign(plate.normal @ (middle - hole.centre)) * field.flux_through(plate, hole)
    assert flux == pytest.approx(0.1, rel=1e-4)


@pytest.mark.parametrize(
    "wall, at, place",
    [
        ("right", "[100 mm, 250 mm]", (1.9, 1.2, 1.15)),
        ("left", "[100 mm, 250 mm]", (1.1, 1.2, 1.15)),
        ("back", "[700 mm, 250 mm]", (1.8, 1.6, 1.15)),
        ("front", "[700 mm, 550 mm]", (1.8, 1.1, 1.45)),
        ("top", "[700 mm, 400 mm]", (1.8, 1.5, 1.5)),
        ("floor", "[100 mm, 400 mm]", (1.2, 1.5, 0.9)),
    ],
)
def test_places_on_walls_are_told_as_one_looks_in(wall, at, place):
    hood = shop(BOX.replace("wall: right, at: [100 mm, 300 mm]", f"wall: {wall}, at: {at}")).hoods[1]
    wall_of = next(plate for plate in walls_of(hood) if any(hole.name == "hatch" for hole in plate.holes))
    hatch = next(hole for hole in wall_of.holes if hole.name == "hatch")
    assert wall_of.name == f"box, {wall}" and hatch.centre == pytest.approx(place)
    assert float(wall_of.height(hatch.centre)) == pytest.approx(0, abs=1e-9)
    corners = wall_of.hole_frame(hatch).corners()
    level = 1 if wall in ("left", "right") else 0
    assert np.ptp(corners[:, level]) == pytest.approx(0.1) and np.ptp(corners, axis=0).sum() == pytest.approx(0.15)


def test_openings_move_and_turn_with_their_hood():
    hood = shop(BOX).hoods[1]
    turned = hood.model_copy(update={"at": (3.0, 3.0, 1.2), "facing": (1.0, 0.0, 0.0)})
    hatch = next(hole for plate in walls_of(turned) for hole in plate.holes if hole.name == "hatch")
    assert hatch.centre == pytest.approx((2.9, 3.4, 1.2))  # to the right of one who looks along -x


def test_canopies_and_tapers_narrow_to_their_duct():
    skirt, told = (shop(TAPERED % words).hoods[1] for words in ("intended_flow: 900 m3/h", "entry: {taper: 90 deg}"))
    length, diameter = throat_of(skirt, shop())
    assert length == pytest.approx(0.21)  # 0.7 of half its width, as it is drawn
    assert diameter == pytest.approx(0.3 * np.sqrt(np.pi / 4 * 0.36))
    assert throat_of(told, shop())[0] == pytest.approx((0.6 - diameter) / 2)  # 45 degrees to each side
    assert throat_of(shop().hoods[0], shop()) is None


def test_a_draught_is_not_shut_out_of_the_box_of_a_large_hood():
    workplace = shop(FAN.replace("[3.9 m, 1.4 m", "[2.2 m, 1.4 m"))
    air = air_of_first(workplace, 1)
    still, blown = (air.bases.field(air.flows, d).velocity((1.8, 2.0, 2.0))[0] for d in ((0, 0, 0), (0.1, 0, 0)))
    assert blown - still > 0.05


def test_plan_and_watched_places():
    workplace = shop()
    hood, source = workplace.hoods[0], workplace.sources[0]
    assert plan_for(hood, source).escape_radius == 0.45
    far = source.model_copy(update={"at": (1.5, 0.6, 1.1)})
    assert plan_for(hood, far).escape_radius == pytest.approx(1.2)
    assert watched(hood, source.points) == () and len(watched(hood, far.points)) == 1


def test_the_escape_radius_takes_in_the_whole_enclosure():
    workplace = shop(BOX)
    box, source = workplace.hoods[1], workplace.sources[0]
    corner, outlet = np.array((1.1, 1.1, 0.9)), np.array((1.5, 1.45, 1.5))  # its duct leaves the top, 0.7 deep
    assert plan_for(box, source).escape_radius == pytest.approx(1.5 * np.linalg.norm(corner - outlet))
