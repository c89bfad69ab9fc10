"""The workplace as simple shapes in room coordinates (metres), for the page's scene and the report's figure.

Duct routes are not in the file: they are drawn in a plain way (back from the hood, up, along, to the fan) and both
pictures say so.
"""

import math
from dataclasses import dataclass

from hoodwright.workplace.model import Duct, Hood, Workplace

Xyz = tuple[float, float, float]

CLEAR_OF_CEILING = 0.35
CLEANER_SIZE = 0.6
FAN_SIZE = 0.45
OUT_OF_ROOM = 0.6


@dataclass(frozen=True)
class RoomShape:
    """Inner size of the room, and the draught through it."""

    size: Xyz
    draught: Xyz | None


@dataclass(frozen=True)
class PlateShape:
    """A flat surface such as a bench top, by its four corners in order."""

    name: str
    corners: tuple[Xyz, Xyz, Xyz, Xyz]


@dataclass(frozen=True)
class PersonShape:
    """Someone standing: feet, direction of view, and breathing height."""

    name: str
    at: Xyz
    facing: Xyz
    breathing_height: float


@dataclass(frozen=True)
class SourceShape:
    """What gives off contaminant."""

    name: str
    at: Xyz


@dataclass(frozen=True)
class HoodShape:
    """A hood's opening: centre, direction it looks, half sides along `across` and `up`, flange width."""

    name: str
    at: Xyz
    facing: Xyz
    across: Xyz
    up: Xyz
    half_width: float
    half_height: float
    is_round: bool
    flange: float
    serves: tuple[str, ...]


@dataclass(frozen=True)
class DuctShape:
    """A duct as a line of points with one thickness."""

    name: str
    points: tuple[Xyz, ...]
    diameter: float


@dataclass(frozen=True)
class BoxShape:
    """A cleaner or a fan."""

    name: str
    kind: str
    centre: Xyz
    size: float


@dataclass(frozen=True)
class Picture:
    """All shapes of one workplace."""

    room: RoomShape
    plates: tuple[PlateShape, ...]
    people: tuple[PersonShape, ...]
    sources: tuple[SourceShape, ...]
    hoods: tuple[HoodShape, ...]
    ducts: tuple[DuctShape, ...]
    boxes: tuple[BoxShape, ...]


def picture(workplace: Workplace) -> Picture:
    """Shapes of the workplace, in its own coordinates."""
    hoods = tuple(_hood(hood) for hood in workplace.hoods)
    nodes = _nodes(workplace, hoods)
    return Picture(
        room=RoomShape(workplace.room.size, _draught(workplace)),
        plates=tuple(PlateShape(s.name, _corners(s.corner, *s.sides)) for s in workplace.surfaces),
        people=tuple(PersonShape(p.name, (*p.at, 0.0), p.facing, p.breathing_height) for p in workplace.people),
        sources=tuple(SourceShape(s.name, s.at) for s in workplace.sources),
        hoods=hoods,
        ducts=tuple(_duct(duct, nodes, hoods) for duct in workplace.ducts),
        boxes=tuple(
            BoxShape(part.name, kind, nodes[part.name], size)
            for parts, kind, size in (
                (workplace.cleaners, "cleaner", CLEANER_SIZE),
                (workplace.fans, "fan", FAN_SIZE),
            )
            for part in parts
            if part.name in nodes
        ),
    )


def _draught(workplace: Workplace) -> Xyz | None:
    draught = workplace.room.draught
    return _scaled(draught.towards, draught.speed) if draught else None


def _corners(corner: Xyz, a: Xyz, b: Xyz) -> tuple[Xyz, Xyz, Xyz, Xyz]:
    return corner, _plus(corner, a), _plus(_plus(corner, a), b), _plus(corner, b)


def _hood(hood: Hood) -> HoodShape:
    across, up = _frame(hood.facing)
    width, height = hood.opening.sides
    return HoodShape(
        hood.name,
        hood.at,
        hood.facing,
        across,
        up,
        width / 2,
        height / 2,
        hood.opening.is_round,
        hood.flange,
        hood.serves,
    )


def _frame(facing: Xyz) -> tuple[Xyz, Xyz]:
    """Unit vectors across and up in the plane of an opening; `across` is level."""
    level = math.hypot(facing[0], facing[1])
    across = (-facing[1] / level, facing[0] / level, 0.0) if level > 1e-6 else (1.0, 0.0, 0.0)
    up = (
        facing[1] * across[2] - facing[2] * across[1],
        facing[2] * across[0] - facing[0] * across[2],
        facing[0] * across[1] - facing[1] * across[0],
    )
    return across, _scaled(up, -1.0) if up[2] < 0 else up


def _nodes(workplace: Workplace, hoods: tuple[HoodShape, ...]) -> dict[str, Xyz]:
    """A place for every junction, cleaner, fan and discharge, spread along the room's high back corner."""
    order = _downstream_order(workplace)
    size = workplace.room.size
    high = size[2] - CLEAR_OF_CEILING
    back = size[1] - CLEAR_OF_CEILING
    first = max((hood.at[0] for hood in hoods), default=size[0] / 2)
    step = max(0.0, size[0] - CLEAR_OF_CEILING - first) / max(1, len(order))
    return {name: (first + step * (i + 1), back, high) for i, name in enumerate(order)}


def _downstream_order(workplace: Workplace) -> list[str]:
    """Junctions, cleaners and fans, each after everything that leads to it."""
    hoods = {hood.name for hood in workplace.hoods}
    follow = {duct.start: duct.to for duct in workplace.ducts}
    depth: dict[str, int] = {}
    for hood in hoods:
        here, steps = follow.get(hood), 1
        while here is not None and here != "outside":
            depth[here] = max(depth.get(here, 0), steps)
            here, steps = follow.get(here), steps + 1
    return sorted(depth, key=lambda name: depth[name])


def _duct(duct: Duct, nodes: dict[str, Xyz], hoods: tuple[HoodShape, ...]) -> DuctShape:
    diameter = math.sqrt(duct.sides[0] * duct.sides[1])
    hood = next((h for h in hoods if h.name == duct.start), None)
    start = hood.at if hood else nodes[duct.start]
    end = nodes.get(duct.to) or (start[0], start[1], start[2] + CLEAR_OF_CEILING + OUT_OF_ROOM)
    return DuctShape(duct.name, _route(start, end, hood, diameter), diameter)


def _route(start: Xyz, end: Xyz, hood: HoodShape | None, diameter: float) -> tuple[Xyz, ...]:
    if hood is None:
        return (start, end)
    behind = _plus(start, _scaled(hood.facing, -max(0.3, 2 * diameter)))
    above = (behind[0], behind[1], end[2])
    turn = (behind[0], end[1], end[2])
    points = [start, behind, above, turn, end]
    return tuple(p for i, p in enumerate(points) if i == 0 or math.dist(p, points[i - 1]) > 1e-9)


def _plus(a: Xyz, b: Xyz) -> Xyz:
    return (a[0] + b[0], a[1] + b[1], a[2] + b[2])


def _scaled(a: Xyz, factor: float) -> Xyz:
    return (a[0] * factor, a[1] * factor, a[2] * factor)
