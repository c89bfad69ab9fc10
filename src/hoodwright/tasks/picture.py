"""The workplace as simple shapes in room coordinates (metres), for the page's scene and the report's figure.

Duct routes are not in the file: they are drawn in a plain way (see `routes.py`) and both pictures say so.
"""

import math
from dataclasses import dataclass

from hoodwright.tasks.hood_shapes import Panel, Sight, body_of, frame_of, lines_of_hood, lines_of_source, sights_of
from hoodwright.tasks.routes import CLEANER_SIZE, FAN_SIZE, places_of_nodes, route_of
from hoodwright.workplace.model import CapturingHood, EnclosingHood, Hood, Workplace

Xyz = tuple[float, float, float]
SLOT_SHARE = 0.2  # an opening at most so wide for its length is a slot


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
    """What gives off contaminant: its middle, its farthest places, and lines that show its extent."""

    name: str
    at: Xyz
    lines: tuple[Panel, ...] = ()
    extent: tuple[Xyz, ...] = ()

    def farthest_from(self, point: Xyz) -> Xyz:
        """The place of the source that lies farthest from a point."""
        return max(self.extent or (self.at,), key=lambda place: math.dist(place, point))

    def is_thrown(self, drawn: Panel) -> bool:
        """Whether a line shows a stream that leaves the middle of the source."""
        return len(drawn) == 2 and drawn[0] == self.at


@dataclass(frozen=True)
class HoodShape:
    """A hood: centre of its opening, direction it looks, half sides along `across` and `up`, flange width.

    `panels` are the flat faces of its body behind the opening, `lines` what belongs to it besides; its duct begins at
    `duct_at`. Sources of an enclosing hood lie inside its panels; `also_open` names its other openings, which are
    not drawn. `sights` are the lines along which the answer judges its sources.
    """

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
    type: str = "capturing"
    panels: tuple[Panel, ...] = ()
    lines: tuple[Panel, ...] = ()
    duct_at: Xyz = (0.0, 0.0, 0.0)
    sights: tuple[Sight, ...] = ()
    also_open: tuple[str, ...] = ()

    @property
    def is_slot(self) -> bool:
        """Whether the opening is so long and narrow that it draws like a line."""
        short, long = sorted((self.half_width, self.half_height))
        return not self.is_round and short <= SLOT_SHARE * long

    def sight_of(self, source: SourceShape) -> Sight:
        """The line along which a source is judged: given, or from the middle of the opening to its farthest place."""
        usual = Sight(source.name, self.at, source.farthest_from(self.at))
        return next((sight for sight in self.sights if sight.source == source.name), usual)


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
    hoods = tuple(_hood(hood, workplace) for hood in workplace.hoods)
    nodes = places_of_nodes(workplace)
    ducts_at = {hood.name: shape.duct_at for hood, shape in zip(workplace.hoods, hoods, strict=True)}
    return Picture(
        room=RoomShape(workplace.room.size, _draught(workplace)),
        plates=tuple(PlateShape(s.name, _corners(s.corner, *s.sides)) for s in workplace.surfaces),
        people=tuple(PersonShape(p.name, (*p.at, 0.0), p.facing, p.breathing_height) for p in workplace.people),
        sources=tuple(
            SourceShape(s.name, s.centre, lines_of_source(s, workplace.hoods), s.points) for s in workplace.sources
        ),
        hoods=hoods,
        ducts=tuple(
            DuctShape(duct.name, route_of(duct, workplace, nodes, ducts_at), math.sqrt(duct.sides[0] * duct.sides[1]))
            for duct in workplace.ducts
        ),
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


def _hood(hood: Hood, workplace: Workplace) -> HoodShape:
    across, up = frame_of(hood)
    width, height = hood.opening.sides
    panels, duct_at = body_of(hood)
    return HoodShape(
        name=hood.name,
        at=hood.at,
        facing=hood.facing,
        across=across,
        up=up,
        half_width=width / 2,
        half_height=height / 2,
        is_round=hood.opening.is_round,
        flange=hood.flange if isinstance(hood, CapturingHood) else 0.0,
        serves=hood.serves,
        type=hood.type,
        panels=panels,
        lines=lines_of_hood(hood),
        duct_at=duct_at,
        sights=sights_of(hood, workplace),
        also_open=_also_open(hood),
    )


def _also_open(hood: Hood) -> tuple[str, ...]:
    others = hood.other_openings if isinstance(hood, EnclosingHood) else ()
    return tuple(other.name if other.count == 1 else f"{other.count} x {other.name}" for other in others)


def _plus(a: Xyz, b: Xyz) -> Xyz:
    return (a[0] + b[0], a[1] + b[1], a[2] + b[2])


def _scaled(a: Xyz, factor: float) -> Xyz:
    return (a[0] * factor, a[1] * factor, a[2] * factor)
