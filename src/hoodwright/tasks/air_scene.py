"""From a workplace to the scene of the computed air: one hood with its neighbours, plates, people and walls."""

import math

import numpy as np

from hoodwright.flow import (
    Block,
    Draught,
    Extent,
    Hole,
    Mouth,
    Plate,
    Release,
    Scene,
    Surroundings,
    heat_plume,
    nozzle_jet,
)
from hoodwright.tasks.hood_entry import duct_of
from hoodwright.tasks.hood_shapes import Xyz, body_of, frame_of
from hoodwright.tasks.receiving.canopy.hot import convective_heat
from hoodwright.tasks.shapes import area_of, half_size
from hoodwright.workplace.model import CapturingHood, EnclosingHood, Hood, ReceivingHood, Source, Workplace

NEIGHBOUR = 1.0  # m between the rims of two hoods, up to which both are in one scene
OUTLET = 0.3  # diameter of an unknown duct over the root of the opening's area
INSIDE = 0.25  # of its diameter that the outlet of an enclosure stands inside
UNREST = 0.05  # m/s: swing and turbulence of a room without a stated draught
ON_PLANE = 1e-3  # m


def group_of(hood: Hood, workplace: Workplace) -> tuple[Hood, ...]:
    """A hood and those so near that they share its air, in the order of the file."""

    def near(other: Hood) -> bool:
        return math.dist(hood.at, other.at) < NEIGHBOUR + half_size(hood.opening) + half_size(other.opening)

    return tuple(other for other in workplace.hoods if other.name == hood.name or near(other))


def scene_of(group: tuple[Hood, ...], workplace: Workplace, watch: tuple[Xyz, ...]) -> tuple[Scene, tuple[str, ...]]:
    """The scene of neighbouring hoods, and notes on what is left out of it."""
    plates = [_surface(surface, group) for surface in workplace.surfaces]
    for hood in group:
        if isinstance(hood, EnclosingHood):
            plates += _walls(hood)
    people = tuple(Block.person(p.name, (*p.at, 0.0), p.facing) for p in workplace.people)
    scene = Scene(
        tuple(_mouth(hood, workplace) for hood in group),
        tuple(plates),
        people,
        surroundings=Surroundings.room(workplace.room.size),
        watch=watch,
    )
    return scene, _notes(group, workplace)


def release_of(source: Source, workplace: Workplace, density: float) -> Release:
    """What the source does: its plume or its stream, or nothing but what the air carries off."""
    forms = {"at": "point", "line": "line", "box": "box", "path": "path"}
    points = source.box or source.points
    extent = Extent(forms[source.place_key], tuple(points))  # type: ignore[arg-type]
    air = workplace.air.temperature
    if source.heat is not None:
        area = area_of(source.heat)
        return Release(extent, heat_plume(extent.centre, area, convective_heat(source.heat, workplace), air, density))
    stream = source.release
    if stream is None:
        return Release(extent)
    warm = air if stream.temperature is None else stream.temperature
    return Release(extent, nozzle_jet(extent.centre, stream.towards, area_of(stream.opening), stream.speed, warm, air))


def draught_of(workplace: Workplace) -> Draught:
    """The moving air of the room; a little unrest where the file tells of none."""
    told = workplace.room.draught
    if told is None:
        return Draught(wander=UNREST, turbulence=UNREST)
    x, y, z = (told.speed * way for way in told.towards)
    return Draught((x, y, z), told.wander, turbulence=told.turbulence, eddy=told.eddy)


def _mouth(hood: Hood, workplace: Workplace) -> Mouth:
    if isinstance(hood, EnclosingHood):
        return _outlet(hood, workplace)
    shape = "round" if hood.opening.is_round else "slot" if hood.opening.is_slot else "rectangle"
    flange = hood.flange if isinstance(hood, CapturingHood) else 0.0
    return Mouth(hood.name, hood.at, hood.facing, hood.opening.sides, shape, frame_of(hood)[0], flange=flange)  # type: ignore[arg-type]


def _outlet(hood: EnclosingHood, workplace: Workplace) -> Mouth:
    """Where the duct leaves an enclosure, a little inside its wall."""
    duct = duct_of(hood, workplace)
    size = OUTLET * math.sqrt(area_of(hood.opening))
    if duct is not None and duct.round is not None:
        size = min(duct.round, 0.8 * min(hood.box))
    _, at = body_of(hood)
    back = np.subtract(at, hood.at) @ np.asarray(hood.facing) < -0.99 * hood.box[2]
    inward = hood.facing if back else tuple(-c for c in frame_of(hood)[1])
    x, y, z = (float(c) for c in np.add(at, INSIDE * size * np.asarray(inward)))
    return Mouth(hood.name, (x, y, z), inward, (size, size))  # type: ignore[arg-type]


def _walls(hood: EnclosingHood) -> list[Plate]:
    """Five closed walls, and the front with the main opening."""
    panels, _ = body_of(hood)
    named = zip(("back", "floor", "side", "top", "other side"), panels, strict=True)
    walls = [_plate(f"{hood.name}, {name}", panel) for name, panel in named]
    depth = np.asarray(hood.facing) * hood.box[2]
    front = tuple(tuple(float(c) for c in np.add(point, depth)) for point in panels[0])
    shape = "round" if hood.opening.is_round else "rectangle"
    hole = Hole(hood.at, hood.opening.sides, shape, "main opening")  # type: ignore[arg-type]
    return [*walls, _plate(f"{hood.name}, front", front, (hole,))]


def _plate(name, panel, holes=()) -> Plate:
    first, second = (tuple(float(c) for c in np.subtract(panel[n], panel[0])) for n in (1, 3))
    return Plate(name, tuple(panel[0]), first, second, holes)  # type: ignore[arg-type]


def _surface(surface, group: tuple[Hood, ...]) -> Plate:
    """A surface of the file; an opening that lies in its plane goes through it."""
    plate = Plate(surface.name, surface.corner, *surface.sides)
    holes = []
    for hood in (one for one in group if not isinstance(one, EnclosingHood)):
        inlaid = abs(float(plate.height(hood.at))) < ON_PLANE and abs(plate.normal @ np.asarray(hood.facing)) > 0.99
        if inlaid and bool(plate.holds(hood.at)):
            turned = abs(np.asarray(frame_of(hood)[0]) @ plate.spans[1]) < 0.7 * np.linalg.norm(plate.spans[1])
            sides = hood.opening.sides[::-1] if turned else hood.opening.sides
            holes.append(Hole(hood.at, sides, "round" if hood.opening.is_round else "rectangle", hood.name))
    return Plate(surface.name, surface.corner, surface.sides[0], surface.sides[1], tuple(holes))


def _notes(group: tuple[Hood, ...], workplace: Workplace) -> tuple[str, ...]:
    notes = []
    away = [hood.name for hood in workplace.hoods if hood not in group]
    if away:
        notes.append(f"left out, too far away to matter much: {', '.join(away)}")
    for hood in group:
        if isinstance(hood, EnclosingHood) and hood.other_openings:
            notes.append(f"{hood.name}: its other openings are left out, their places are not in the file")
        if isinstance(hood, ReceivingHood):
            notes.append(f"{hood.name}: drawn as its opening with a straight body behind")
    return tuple(notes)
