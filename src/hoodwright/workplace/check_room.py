"""Faults of openings in the walls of the room and of enclosures: over the edge of a wall, or over one another."""

from itertools import combinations

from hoodwright.errors import Fault
from hoodwright.workplace.model import EnclosingHood, Workplace
from hoodwright.workplace.quantities import plain
from hoodwright.workplace.room import RoomOpening
from hoodwright.workplace.tree import Tree

SLACK = 1e-9  # m
PLACES = {
    "left": "from the front and up",
    "right": "from the front and up",
    "back": "from the left and up",
    "front": "from the left and up",
    "top": "from the left and from the front",
    "floor": "from the left and from the front",
}


def check_openings(workplace: Workplace, data: dict, tree: Tree) -> list[Fault]:
    """Doors, supply terminals, grilles and openings of enclosures that do not fit into their walls."""
    return _in_the_room(workplace, tree) + _in_enclosures(workplace, data, tree)


def _in_the_room(workplace: Workplace, tree: Tree) -> list[Fault]:
    openings, size, faults = workplace.room.openings, workplace.room.size, []
    names = {one.name: number for number, one in enumerate(openings)}
    for one in openings:
        room = tuple(side for axis, side in enumerate(size) if axis != one.axis)
        if not _fits(one.at, one.sides, room):
            message = _over_the_edge(one.wall, room, one.sides, "along the wall and up")
            faults.append(tree.fault(("room", "openings", names[one.name], "at"), message))
    for first, second in combinations(openings, 2):
        if first.wall == second.wall and _overlap(first, second):
            message = f"it lies over the {first.name}; move one of the two"
            faults.append(tree.fault(("room", "openings", names[second.name], "at"), message))
    return faults


def _in_enclosures(workplace: Workplace, data: dict, tree: Tree) -> list[Fault]:
    faults = []
    told = [part.get("name") if isinstance(part, dict) else None for part in data.get("hoods") or []]
    for hood in (one for one in workplace.hoods if isinstance(one, EnclosingHood)):
        for number, other in enumerate(hood.other_openings):
            if other.at is None or other.wall is None or _fits(other.at, other.sides, hood.wall_size(other.wall)):
                continue
            message = _over_the_edge(other.wall, hood.wall_size(other.wall), other.sides, PLACES[other.wall])
            index = next(i for i, name in enumerate(told) if str(name).strip() == hood.name)
            faults.append(tree.fault(("hoods", index, "other_openings", number, "at"), message))
    return faults


def _fits(at: tuple[float, float], sides: tuple[float, float], wall: tuple[float, ...]) -> bool:
    ends = zip(at, sides, wall, strict=True)
    return all(place - side / 2 >= -SLACK and place + side / 2 <= whole + SLACK for place, side, whole in ends)


def _over_the_edge(wall: str, whole: tuple[float, ...], sides: tuple[float, float], order: str) -> str:
    name = wall if wall in ("floor", "ceiling", "top") else f"{wall} wall"
    own, room = (" by ".join(plain(side, "length") for side in pair) for pair in (sides, whole))
    return f"its {own} reach over the edge of the {name} of {room}; 'at' is its middle, {order}: mend it or the size"


def _overlap(first: RoomOpening, second: RoomOpening) -> bool:
    apart = (abs(a - b) for a, b in zip(first.at, second.at, strict=True))
    reach = ((a + b) / 2 for a, b in zip(first.sides, second.sides, strict=True))
    return all(a < r - SLACK for a, r in zip(apart, reach, strict=True))
