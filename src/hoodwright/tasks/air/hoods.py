"""Hoods as the computed air sees them: the opening with the body behind it, and the walls of an enclosure."""

import math
from typing import get_args

import numpy as np

from hoodwright.flow import Hole, Mouth, Plate
from hoodwright.tasks.hood_entry import duct_of
from hoodwright.tasks.hood_shapes import body_of, frame_of
from hoodwright.tasks.shapes import area_of
from hoodwright.workplace.hoods import EnclosureWall
from hoodwright.workplace.model import CapturingHood, EnclosingHood, Hood, OtherOpening, ReceivingHood, Workplace

MAIN = "main opening"
OUTLET = 0.3  # diameter of an unknown duct over the root of the opening's area
INSIDE = 0.25  # of its diameter that the outlet of an enclosure stands inside
SHORTEST_TAPER = 0.1  # of the longer side: a flatter one is drawn so deep


def mouth_of(hood: Hood, workplace: Workplace) -> Mouth:
    """The opening through which the air leaves: the hood's own, or the outlet of an enclosure."""
    if isinstance(hood, EnclosingHood):
        return _outlet(hood, workplace)
    shape = "round" if hood.opening.is_round else "slot" if hood.opening.is_slot else "rectangle"
    flange = hood.flange if isinstance(hood, CapturingHood) else 0.0
    sides, along, throat = hood.opening.sides, frame_of(hood)[0], throat_of(hood, workplace)
    return Mouth(hood.name, hood.at, hood.facing, sides, shape, along, flange=flange, throat=throat)  # type: ignore[arg-type]


def throat_of(hood: Hood, workplace: Workplace) -> tuple[float, float] | None:
    """How a hood narrows to its duct: over which length, to which diameter. None where it goes straight back."""
    canopy = isinstance(hood, ReceivingHood) and hood.is_canopy
    taper = None if hood.entry is None else hood.entry.taper
    if isinstance(hood, EnclosingHood) or not (canopy or taper):
        return None
    longest, duct = max(hood.opening.sides), duct_of(hood, workplace)
    diameter = OUTLET * math.sqrt(area_of(hood.opening)) if duct is None else math.sqrt(4 / math.pi * area_of(duct))
    if diameter >= longest:
        return None
    length = math.dist(hood.at, body_of(hood)[1])
    if taper:
        length = (longest - diameter) / 2 / math.tan(taper / 2)
    return max(length, SHORTEST_TAPER * longest), diameter


def walls_of(hood: EnclosingHood) -> tuple[Plate, ...]:
    """Five walls and the front, with the main opening and every other one that has a place."""
    panels, _ = body_of(hood)
    depth = np.asarray(hood.facing) * hood.box[2]
    front = tuple(tuple(float(c) for c in np.add(point, depth)) for point in panels[0])
    sides = ("right", "left") if _right(hood) @ np.asarray(frame_of(hood)[0]) > 0 else ("left", "right")
    names = ("back", "floor", sides[0], "top", sides[1], "front")
    shape = "round" if hood.opening.is_round else "rectangle"
    holes: dict[str | None, list[Hole]] = {name: [] for name in names}
    holes["front"].append(Hole(hood.at, hood.opening.sides, shape, MAIN))  # type: ignore[arg-type]
    for other in hood.other_openings:
        if other.at is not None:
            holes[other.wall].append(_hole(hood, other))
    return tuple(_plate(hood, name, panel, holes[name]) for name, panel in zip(names, (*panels, front), strict=True))


def wall_names(hood: EnclosingHood) -> tuple[str, ...]:
    """The names of its plates in the scene."""
    return tuple(f"{hood.name}, {wall}" for wall in get_args(EnclosureWall))


def _hole(hood: EnclosingHood, other: OtherOpening) -> Hole:
    """An opening in its wall; the first side of a plate on left and right runs up."""
    assert other.at is not None
    width, height, depth = hood.box
    low = -height / 2 if hood.below is None else -hood.below
    first, second = other.at
    left, front, up = {
        "left": (0.0, first, second),
        "right": (width, first, second),
        "back": (first, depth, second),
        "front": (first, 0.0, second),
        "top": (first, second, height),
        "floor": (first, second, 0.0),
    }[other.wall or "front"]
    steps = (_right(hood) * (left - width / 2), -front * np.asarray(hood.facing), (low + up) * _up(hood))
    x, y, z = (float(c) for c in np.asarray(hood.at) + np.sum(steps, axis=0))
    sides = other.sides[::-1] if other.wall in ("left", "right") else other.sides
    return Hole((x, y, z), sides, "round" if other.is_round else "rectangle", other.name)


def _up(hood: EnclosingHood) -> np.ndarray:
    return np.asarray(frame_of(hood)[1])


def _right(hood: EnclosingHood) -> np.ndarray:
    """To the right of one who looks into the main opening."""
    return np.cross(-np.asarray(hood.facing), _up(hood))


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


def _plate(hood: EnclosingHood, name: str, panel, holes: list[Hole]) -> Plate:
    first, second = (tuple(float(c) for c in np.subtract(panel[n], panel[0])) for n in (1, 3))
    return Plate(f"{hood.name}, {name}", tuple(panel[0]), first, second, tuple(holes))  # type: ignore[arg-type]
