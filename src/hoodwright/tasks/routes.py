"""Plain ways for ducts, which the file does not give: away from the hood, up, to the back wall and along it."""

import math

from hoodwright.tasks.hood_shapes import Xyz, frame_of, plus
from hoodwright.workplace.model import CapturingHood, Duct, EnclosingHood, Hood, Workplace

CLEAR_OF_CEILING = 0.35
CLEAR_OF_FLOOR = 0.1
CLEANER_SIZE = 0.6
FAN_SIZE = 0.45
OUT_OF_ROOM = 0.6
LEAST_STUB = 0.3
STEP = 0.75  # m between two boxes on one line
LANES, LANE = 3, 0.7  # systems beside each other, and how far apart
UP: Xyz = (0.0, 0.0, 1.0)
LEVEL = 0.3  # a hood that looks up by more than this has its duct led round it


def places_of_nodes(workplace: Workplace) -> dict[str, Xyz]:
    """A place for every junction, cleaner and fan: high at the back wall, each behind the hoods that lead to it."""
    size = workplace.room.size
    high, places = size[2] - CLEAR_OF_CEILING, {}
    for i, order in enumerate(_systems(workplace)):
        back = max(size[1] / 2, size[1] - CLEAR_OF_CEILING - LANE * (i % LANES))
        for (name, _), x in zip(order, _spread([x for _, x in order], size[0]), strict=True):
            places[name] = (x, back, high)
    return places


def _systems(workplace: Workplace) -> list[list[tuple[str, float]]]:
    """For each discharge its nodes in the order of the flow, each with the place of the last hood that leads there."""
    follow = {duct.start: duct.to for duct in workplace.ducts}
    found: dict[str, dict[str, tuple[int, float]]] = {}
    for hood in workplace.hoods:
        way = _way(hood.name, follow)
        nodes = found.setdefault(way[-1], {}) if way else {}
        for depth, name in enumerate(way):
            before = nodes.get(name, (0, -math.inf))
            nodes[name] = max(before[0], depth), max(before[1], hood.at[0])
    return [[(name, x) for name, (_, x) in sorted(nodes.items(), key=lambda n: n[1][0])] for nodes in found.values()]


def _way(start: str, follow: dict[str, str]) -> list[str]:
    """Names after a hood, up to the last before the open air."""
    way: list[str] = []
    here = follow.get(start)
    while here is not None and here != "outside" and here not in way:
        way.append(here)
        here = follow.get(here)
    return way


def _spread(wished: list[float], wide: float) -> list[float]:
    """Places along a wall, in order, none closer than a step to the next while there is room."""
    last = wide - CLEAR_OF_CEILING
    step = min(STEP, max(0.0, last - CLEAR_OF_CEILING) / max(1, len(wished)))
    placed: list[float] = []
    for i, x in enumerate(wished):
        most = last - step * (len(wished) - 1 - i)
        least = placed[-1] + step if placed else CLEAR_OF_CEILING
        placed.append(min(most, max(least, x)))
    return placed


def route_of(duct: Duct, workplace: Workplace, nodes: dict[str, Xyz], ducts_at: dict[str, Xyz]) -> tuple[Xyz, ...]:
    """Points of one duct. `ducts_at` is where the duct of each hood begins."""
    hood = next((hood for hood in workplace.hoods if hood.name == duct.start), None)
    start = ducts_at[hood.name] if hood else nodes[duct.start]
    high = (start[0], start[1], max(workplace.room.size[2], start[2]) + OUT_OF_ROOM)
    end = nodes.get(duct.to) or high
    if hood is None:
        return _without_repeats([start, end])
    away = _away(hood, start, math.sqrt(duct.sides[0] * duct.sides[1]))
    last = away[-1]
    if duct.to not in nodes:
        return _without_repeats([start, *away, (last[0], last[1], high[2])])
    return _without_repeats([start, *away, (last[0], last[1], end[2]), (last[0], end[1], end[2]), end])


def _away(hood: Hood, start: Xyz, diameter: float) -> list[Xyz]:
    """The first points behind a hood, clear of its body and of what lies before it."""
    stub = max(LEAST_STUB, 2 * diameter)
    out = _out_of(hood)
    if out[2] > -LEVEL:
        return [plus(start, (out, stub))]
    across, up = frame_of(hood)
    aside = (hood.facing[0], hood.facing[1], 0.0)
    flat = math.hypot(aside[0], aside[1])
    way = (-aside[0] / flat, -aside[1] / flat, 0.0) if flat > LEVEL else (0.0, 1.0, 0.0)
    half = [side / 2 + (hood.flange if isinstance(hood, CapturingHood) else 0.0) for side in hood.opening.sides]
    reach = sum(
        abs(sum(w * d for w, d in zip(way, side, strict=True))) * h for side, h in zip((across, up), half, strict=True)
    )
    below = plus(start, (out, min(stub, max(0.0, start[2] - CLEAR_OF_FLOOR - diameter / 2) / -out[2])))
    return [below, plus(below, (way, reach + diameter + LEAST_STUB / 2))]


def _out_of(hood: Hood) -> Xyz:
    """Which way the duct leaves: from the top or the back of an enclosure, else against the way the hood looks."""
    if not isinstance(hood, EnclosingHood):
        return -hood.facing[0], -hood.facing[1], -hood.facing[2]
    _, up = frame_of(hood)
    return up if hood.facing[2] > 0.7 else UP


def _without_repeats(points: list[Xyz]) -> tuple[Xyz, ...]:
    return tuple(p for i, p in enumerate(points) if i == 0 or math.dist(p, points[i - 1]) > 1e-9)
