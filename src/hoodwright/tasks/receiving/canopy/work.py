"""The work under a canopy: its plan, how far below the rim it lies, and how far the canopy reaches past it."""

import math
from dataclasses import dataclass

from hoodwright.tasks.hood_shapes import frame_of
from hoodwright.workplace.model import ReceivingHood, Source

Xyz = tuple[float, float, float]


@dataclass(frozen=True)
class Work:
    """Plan of the work in metres; `edges` are its outermost points, at the height from which it is judged."""

    long_side: float
    short_side: float
    is_round: bool
    centre: Xyz
    edges: tuple[Xyz, ...]

    @property
    def is_point(self) -> bool:
        """Whether it has no extent in plan."""
        return self.long_side == 0

    @property
    def area(self) -> float:
        """Of its plan."""
        return math.pi / 4 * self.long_side**2 if self.is_round else self.long_side * self.short_side

    @property
    def perimeter(self) -> float:
        """Of its plan; a line counts on both sides."""
        return math.pi * self.long_side if self.is_round else 2 * (self.long_side + self.short_side)


def work_of(source: Source) -> Work:
    """The plan of a source: of its hot face where it has one, else of its extent. The lowest point sets the height."""
    if source.heat is not None:
        return _hot_work(source)
    low, high = (tuple(pick(p[i] for p in source.points) for i in range(3)) for pick in (min, max))
    sides = sorted((high[0] - low[0], high[1] - low[1]))
    x, y, _ = source.centre
    edges = tuple((p[0], p[1], low[2]) for p in source.points)
    return Work(sides[1], sides[0], False, (x, y, low[2]), edges)


def work_together(sources: list[Source]) -> Work:
    """The plan that holds all cold work below one canopy; a single source's own."""
    if len(sources) == 1:
        return work_of(sources[0])
    points = [point for source in sources for point in source.points]
    low, high = (tuple(pick(p[i] for p in points) for i in range(3)) for pick in (min, max))
    sides = sorted((high[0] - low[0], high[1] - low[1]))
    centre = ((low[0] + high[0]) / 2, (low[1] + high[1]) / 2, low[2])
    return Work(sides[1], sides[0], False, centre, tuple((p[0], p[1], low[2]) for p in points))


def _hot_work(source: Source) -> Work:
    heat, (x, y, z) = source.heat, source.centre
    assert heat is not None
    a, b = (side / 2 for side in heat.sides)
    turns = [math.pi / 4 * i for i in range(8)]
    ring = [(math.cos(t), math.sin(t)) for t in turns] if heat.is_round else [(1, 1), (-1, 1), (-1, -1), (1, -1)]
    edges = tuple((x + i * a, y + j * b, z) for i, j in ring) + tuple((p[0], p[1], z) for p in source.points)
    return Work(max(heat.sides), min(heat.sides), heat.is_round, (x, y, z), edges)


def height_above(hood: ReceivingHood, work: Work) -> float:
    """From the work up to the rim."""
    return hood.at[2] - work.centre[2]


def rim_perimeter(hood: ReceivingHood) -> float:
    """Of the canopy's opening."""
    w, h = hood.opening.sides
    return math.pi * w if hood.opening.is_round else 2 * (w + h)


def overhang(hood: ReceivingHood, points: tuple[Xyz, ...], grown: float = 0.0) -> float:
    """How far the canopy reaches past the outermost of the points, each `grown` by a width; below 0 it falls short."""
    across, up = frame_of(hood)
    found = []
    for point in points:
        away = tuple(p - h for p, h in zip(point, hood.at, strict=True))
        a, b = (abs(sum(i * j for i, j in zip(away, way, strict=True))) for way in (across, up))
        w, h = (side / 2 for side in hood.opening.sides)
        found.append(w - math.hypot(a, b) if hood.opening.is_round else min(w - a, h - b))
    return min(found) - grown
