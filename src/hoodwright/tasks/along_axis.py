"""At which distances along a hood's axis the captured share is worth asking for, in round lengths."""

import math

from hoodwright import units
from hoodwright.tasks.edits import distance_along_axis
from hoodwright.tasks.shapes import area_of
from hoodwright.workplace.model import Hood, Source, Workplace

ROUND = {
    "SI": ("mm", (10, 15, 25, 50, 75, 100, 150, 200, 250, 300, 400, 500, 600, 800, 1000, 1250, 1500, 2000, 2500, 3000)),
    "US": ("in", (0.5, 1, 2, 3, 4, 6, 8, 10, 12, 16, 20, 24, 30, 36, 48, 60, 72, 96, 120)),
}
NEAREST, FARTHEST = 0.2, 5.0  # diameters of an opening of the same area
BEYOND = 1.6  # times the distance where the source stands now
MOST = 11
SAME = 0.05  # of a distance: a round length so near to the present one is left out
OFF_AXIS = 0.1  # of its distance: so far beside the axis is worth a word


def distances_for(hood: Hood, source: Source, workplace: Workplace, system: str) -> tuple[float, ...]:
    """Round distances [m] from near the opening to well beyond the source, its present one among them."""
    now = distance_along_axis(hood, source)
    size = math.sqrt(4 * area_of(hood.opening) / math.pi)
    last = min(max(FARTHEST * size, BEYOND * now), _room_ahead(hood, workplace))
    unit, numbers = ROUND[system]
    lengths = [units.parse(f"{number} {unit}", "length") for number in numbers]
    fit = [length for length in lengths if NEAREST * size <= length <= last]
    if not 0 < now <= last:
        return tuple(_thinned(fit, MOST))
    others = [length for length in fit if abs(length - now) > SAME * now]
    return tuple(sorted([*_thinned(others, MOST - 1), now]))


def beside_axis(hood: Hood, source: Source) -> float:
    """How far the source lies beside the hood's axis [m]."""
    point = source.farthest_from(hood.at)
    ahead = distance_along_axis(hood, source)
    return math.sqrt(max(math.dist(hood.at, point) ** 2 - ahead**2, 0.0))


def is_off_axis(hood: Hood, source: Source) -> bool:
    """Whether the source lies so far beside the axis that the curve along the axis is not its own."""
    return beside_axis(hood, source) > OFF_AXIS * abs(distance_along_axis(hood, source))


def _room_ahead(hood: Hood, workplace: Workplace) -> float:
    """How far the axis runs until it meets a wall, floor or ceiling."""
    found = [math.inf]
    for place, way, limit in zip(hood.at, hood.facing, workplace.room.size, strict=True):
        if abs(way) > 1e-9:
            found.append(((limit if way > 0 else 0.0) - place) / way)
    return 0.98 * min(found)


def _thinned(lengths: list[float], most: int) -> list[float]:
    """At most so many of them, the first and the last among them."""
    if len(lengths) <= most:
        return lengths
    picked = {round(number * (len(lengths) - 1) / (most - 1)) for number in range(most)}
    return [length for number, length in enumerate(lengths) if number in picked]
