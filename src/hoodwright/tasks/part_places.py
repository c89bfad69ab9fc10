"""Where a new source or hood stands, and how large it is: starting values that its owner changes.

Sizes and distances here are common practice, to start from.
"""

from typing import Any

from hoodwright import units
from hoodwright.errors import InputError
from hoodwright.workplace.model import Source, Workplace

Xyz = tuple[float, float, float]

BENCH = 0.9  # m above the floor
APART, STEP, AT_WALL = 1.5, 0.75, 0.8  # m, between sources
NEAR, ABOVE = 0.15, 0.6  # m from a source to a hood before it, and to a canopy
SLOT, SHORTEST_SLOT = "50 mm", 0.25  # m; for sources that stretch out before the hood
AROUND = 0.2  # m of an enclosure round a source
LEAST_INSIDE, LEAST_CANOPY = 0.6, 0.5  # m
WAYS: tuple[Xyz, ...] = ((0, 1, 0), (1, 0, 0), (-1, 0, 0), (0, -1, 0))


def free_place(workplace: Workplace) -> Xyz:
    """A place at bench height that is far from the sources that are there."""
    x, y, z = workplace.room.size
    there = [source.centre for source in workplace.sources]
    tries = [(a, b) for b in _steps(y) for a in _steps(x)]
    gaps = [min([APART, *(((a - p[0]) ** 2 + (b - p[1]) ** 2) ** 0.5 for p in there)]) for a, b in tries]
    a, b = tries[gaps.index(max(gaps))]
    return (a, b, min(BENCH, round(z / 2, 2)))


def source_at(place: Xyz, kind: str, room: Xyz) -> dict[str, Any]:
    """Keys of a source that say where it is and how it gives off."""
    x, y, z = place
    ends = (_inside(x - 0.3, room[0]), _inside(x + 0.3, room[0]))
    sides = (_inside(y - 0.2, room[1]), _inside(y + 0.2, room[1]))
    corners = [point((ends[0], sides[0], z)), point((ends[1], sides[1], z))]
    kinds: dict[str, dict[str, Any]] = {
        "point": {"at": point(place), "dispersion": "gentle"},
        "line": {"line": [point((ends[0], y, z)), point((ends[1], y, z))], "dispersion": "gentle"},
        "area": {"box": corners, "dispersion": "still"},
        "hot": {
            "at": point(place),
            "dispersion": "gentle",
            "heat": {"form": "face", "round": "300 mm", "temperature": "200 degC"},
        },
        "wheel": {
            "at": point(place),
            "dispersion": "thrown",
            "wheel": {"work": "grinding", "diameter": "200 mm", "width": "25 mm"},
        },
        "tank": {"box": corners, "dispersion": "gentle", "tank": {"hazard": "C", "evolution": 3}},
    }
    return kinds[kind]


def hood_at(source: Source, kind: str, workplace: Workplace) -> dict[str, Any]:
    """Keys of a hood that say its opening and where it stands to a source."""
    if kind == "receiving" and source.wheel is None and source.throws is None:
        return _canopy(source, workplace)
    if kind == "enclosing":
        return _enclosure(source, workplace)
    way = _away(source, workplace, NEAR)
    across = source.plan[0] if way[1] else source.plan[1]
    opening: dict[str, Any] = {"slot": [_metres(across), SLOT]} if across >= SHORTEST_SLOT else {"round": "150 mm"}
    return {"opening": opening, "at": point(_beside(source, way, NEAR)), "facing": _facing(way)}


def point(place: Xyz) -> list[str]:
    """A place as the file says it, to a millimetre."""
    return [_metres(part) for part in place]


def _canopy(source: Source, workplace: Workplace) -> dict[str, Any]:
    """Over the source, wider by 0.4 of its height above on each side."""
    x, y, _ = source.centre
    top, ceiling = max(p[2] for p in source.points), workplace.room.size[2]
    height = min(ABOVE, (ceiling - top) / 2)
    if height < 0.05:
        raise InputError(f"no canopy fits above the {source.name}: it is at the ceiling; move it down, or take another")
    hot = source.heat.sides if source.heat else (0.0, 0.0)
    sides = [_size(max(a, b) + 0.8 * height, LEAST_CANOPY) for a, b in zip(source.plan, hot, strict=True)]
    return {"opening": {"rectangle": sides}, "at": point((x, y, top + height))}


def _enclosure(source: Source, workplace: Workplace) -> dict[str, Any]:
    """A cabinet round the source, open to the side away from the wall."""
    hot = max(source.heat.sides) if source.heat else 0.0
    wheel = (source.wheel.diameter or 0.0) if source.wheel else 0.0
    low, high = (tuple(pick(p[i] for p in source.points) for i in range(3)) for pick in (min, max))
    extent = [max(b - a, hot, wheel) + 2 * AROUND for a, b in zip(low, high, strict=True)]
    gap = max(extent[0], extent[1], LEAST_INSIDE) / 2
    way = _away(source, workplace, 0.0)
    front = (-way[0], -way[1], 0.0)
    side, depth = (extent[0], extent[1]) if way[1] else (extent[1], extent[0])
    wide, high_inside, deep = (_size(one, LEAST_INSIDE) for one in (side, extent[2], depth))
    centre = source.centre
    reach = min(gap, max(depth, LEAST_INSIDE) / 2)
    at = tuple(_inside(c + f * reach, s) for c, f, s in zip(centre, front, workplace.room.size, strict=True))
    return {
        "form": "cabinet",
        "opening": {"rectangle": [wide, "400 mm"]},
        "inside": [wide, high_inside, deep],
        "at": point((at[0], at[1], centre[2])),
        "facing": _facing(way),
    }


def _away(source: Source, workplace: Workplace, gap: float) -> Xyz:
    """The way from a source to its hood: away from whoever stands near it, and inside the room."""
    size, centre = workplace.room.size, source.centre
    near = min(
        ((p.at[0] - centre[0], p.at[1] - centre[1]) for p in workplace.people),
        key=lambda step: step[0] ** 2 + step[1] ** 2,
        default=(0.0, -1.0),
    )
    for way in sorted(WAYS, key=lambda way: way[0] * near[0] + way[1] * near[1]):
        place = _beside(source, way, gap)
        if all(0 <= part <= limit for part, limit in zip(place, size, strict=True)):
            return way
    raise InputError(f"no hood fits beside the {source.name}; make the room larger, or the source smaller")


def _beside(source: Source, way: Xyz, gap: float) -> Xyz:
    """Ahead of the source's own extent, and of the wheel or the hot body that it is."""
    own = [source.heat.sides[0] / 2 if source.heat else 0.0]
    own += [(source.wheel.diameter or 0.0) / 2 if source.wheel else 0.0]
    reach = max(abs(way[0]) * source.plan[0] / 2, abs(way[1]) * source.plan[1] / 2, *own) + gap
    x, y, z = source.centre
    return (x + way[0] * reach, y + way[1] * reach, z)


def _facing(way: Xyz) -> list[int]:
    return [int(-part) for part in way]


def _steps(limit: float) -> list[float]:
    """Places along a side of the room, a step from each other."""
    if limit < 2 * AT_WALL:
        return [round(limit / 2, 2)]
    count = int((limit - 2 * AT_WALL) / STEP + 1e-9) + 1
    return [round(AT_WALL + i * STEP, 2) for i in range(count)]


def _inside(place: float, limit: float) -> float:
    return min(max(place, 0.0), limit)


def _size(side: float, least: float) -> str:
    """A side to the next 50 mm."""
    return _metres(max(round(side * 20 + 0.499) / 20, least))


def _metres(length: float) -> str:
    return units.write(round(length, 3), "length", "m")
