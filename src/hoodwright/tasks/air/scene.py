"""From a workplace to the scene of the computed air: hoods, plates, people, walls and the openings of the room."""

import math

import numpy as np

from hoodwright.flow import (
    Block,
    Draught,
    Extent,
    Hole,
    Plate,
    Release,
    Scene,
    Surroundings,
    Vent,
    heat_plume,
    nozzle_jet,
)
from hoodwright.tasks.air.hoods import mouth_of, walls_of
from hoodwright.tasks.air.supply_jets import with_supply_jets
from hoodwright.tasks.assess import design_flow
from hoodwright.tasks.hood_shapes import Xyz, frame_of
from hoodwright.tasks.receiving.canopy.hot import convective_heat
from hoodwright.tasks.shapes import area_of, half_size
from hoodwright.units import show
from hoodwright.workplace.model import EnclosingHood, Hood, Source, Workplace

NEIGHBOUR = 1.0  # m between the rims of two hoods, up to which both are in one scene
UNFELT = 0.01  # m/s: a hood that draws no more of the air than that at another one is left out
UNREST = 0.05  # m/s: swing and turbulence of a room without a stated draught
ON_PLANE = 1e-3  # m


def group_of(hood: Hood, workplace: Workplace) -> tuple[Hood, ...]:
    """A hood and those so near that they share its air, in the order of the file."""

    def near(other: Hood) -> bool:
        return math.dist(hood.at, other.at) < NEIGHBOUR + half_size(hood.opening) + half_size(other.opening)

    return tuple(other for other in workplace.hoods if other.name == hood.name or near(other))


def felt_from(hood: Hood, workplace: Workplace) -> tuple[Hood, ...]:
    """Hoods beyond its neighbours: all of them where one is felt or the room has openings, else none.

    One is felt where a sink of its design flow before a wall draws more than 0.01 m/s at the hood.
    """
    near = {other.name for other in group_of(hood, workplace)}
    beyond = [other for other in workplace.hoods if other.name not in near]
    drawn = (design_flow(o, workplace) / (2 * math.pi * math.dist(hood.at, o.at) ** 2) for o in beyond)
    return tuple(beyond) if workplace.room.openings or any(speed > UNFELT for speed in drawn) else ()


def scene_of(
    group: tuple[Hood, ...], workplace: Workplace, watch: tuple[Xyz, ...], beyond: tuple[Hood, ...] = ()
) -> tuple[Scene, tuple[str, ...]]:
    """The scene of neighbouring hoods and of those beyond them, and notes on what is left out of it."""
    given = {hood.name: hood for hood in (*group, *beyond)}
    inside = tuple(given[hood.name] for hood in workplace.hoods if hood.name in given)
    plates = [_surface(surface, inside) for surface in workplace.surfaces]
    for hood in inside:
        if isinstance(hood, EnclosingHood):
            plates += walls_of(hood)
    people = tuple(Block.person(p.name, (*p.at, 0.0), p.facing) for p in workplace.people)
    scene = Scene(
        tuple(mouth_of(hood, workplace) for hood in inside),
        tuple(plates),
        people,
        vents=_vents(workplace),
        surroundings=Surroundings.room(workplace.room.size),
        watch=watch,
    )
    return scene, _notes(inside, workplace)


def _vents(workplace: Workplace) -> tuple[Vent, ...]:
    size = workplace.room.size
    return tuple(
        Vent(one.name, one.centre(size), one.sides, one.wall, free=one.flow_in is None)
        for one in workplace.room.openings
    )


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


def draught_of(workplace: Workplace, at: Xyz | None = None) -> Draught:
    """The moving air of the room, with what supply terminals blow `at` a place; some unrest where the file has none."""
    told = workplace.room.draught
    if told is None:
        found = Draught(wander=UNREST, turbulence=UNREST)
    else:
        x, y, z = (told.speed * way for way in told.towards)
        found = Draught((x, y, z), told.wander, turbulence=told.turbulence, eddy=told.eddy)
    return found if at is None else with_supply_jets(found, workplace, at)


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


def _notes(inside: tuple[Hood, ...], workplace: Workplace) -> tuple[str, ...]:
    notes = []
    known = {hood.name for hood in inside}
    away = [hood.name for hood in workplace.hoods if hood.name not in known]
    if away:
        least = show(UNFELT, "velocity", workplace.units, 2)
        notes.append(f"Left out, as they draw {least} or less here: {', '.join(away)}.")
    for hood in inside:
        missing = [o.name for o in hood.other_openings if o.at is None] if isinstance(hood, EnclosingHood) else []
        if missing:
            notes.append(f"Left out of the {hood.name}, as the file gives no place: {', '.join(missing)}.")
    openings = workplace.room.openings
    if openings and all(one.flow is not None for one in openings):
        notes.append("The room has no door: air that the openings do not bring comes in evenly through its walls.")
    return tuple(notes)
