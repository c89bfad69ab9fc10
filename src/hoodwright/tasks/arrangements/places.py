"""Where a hood stands beside, above and around a source: places that leave the work itself free."""

import math
from dataclasses import dataclass

from hoodwright.errors import InputError
from hoodwright.tasks.enclosing.openings import holds as inside
from hoodwright.tasks.hood_shapes import Xyz, plus
from hoodwright.tasks.shapes import half_size
from hoodwright.units import show
from hoodwright.workplace.model import CapturingHood, EnclosingHood, Hood, Opening, Source, Surface, Workplace

USUAL = 0.15  # m, before a source whose hood is of another kind
NEAREST, FARTHEST = 0.01, 3.0  # m
LEVEL = 0.3  # most of a direction that may point up or down, where the opening stands upright
FLAT = 0.985  # of a surface's normal that points up, where the surface is level
BESIDE_TOO = 1.0  # m from the source, up to which a surface matters
ON_IT = 1e-3  # m
CLEARANCES = (0.25, 0.15, 0.1)  # m inside a box, from the work to its walls; the first for which there is space
GROUND_NEAR = 0.4  # m below the work, up to which a box stands on what is there
OPEN_SHARE = 0.6  # of the height of a box that is open in front
STEP = 0.01  # m, to which sizes of a box are rounded up
UP: Xyz = (0.0, 0.0, 1.0)


@dataclass(frozen=True)
class Work:
    """The work that must stay free: its middle, half its size in plan, and its highest and lowest place."""

    middle: Xyz
    half: tuple[float, float]
    top: float
    low: float

    def reach(self, way: Xyz) -> float:
        """From its middle to its edge, in a level direction."""
        return abs(way[0]) * self.half[0] + abs(way[1]) * self.half[1]

    @property
    def wide(self) -> bool:
        """Whether it is more than a point."""
        return max(self.half) > 0


@dataclass(frozen=True)
class Box:
    """An enclosure: the middle of its opening, width, height and depth inside, and the size of its opening."""

    at: Xyz
    inside: tuple[float, float, float]
    opening: tuple[float, float]


def work_of(source: Source) -> Work:
    """The source with what it stands on or turns: a hot body, a wheel."""
    points, middle = source.points, source.centre
    low, high = ([pick(p[i] for p in points) for i in range(3)] for pick in (min, max))
    half = [(high[i] - low[i]) / 2 for i in (0, 1)]
    top, bottom = high[2], low[2]
    if source.heat is not None:
        half = [max(own, side / 2) for own, side in zip(half, source.heat.sides, strict=True)]
        bottom = min(bottom, middle[2] - (source.heat.height or 0.0))
    if source.wheel is not None:
        radius = (source.wheel.diameter or source.wheel.width or 0.0) / 2
        half = [own + radius for own in half]
        top, bottom = top + radius, bottom - radius
    return Work(middle, (half[0], half[1]), top, max(0.0, bottom))


def benches_of(workplace: Workplace, work: Work) -> tuple[Surface, ...]:
    """Level surfaces under the work or close beside it, not higher than its lowest place."""
    return tuple(
        surface
        for surface in workplace.surfaces
        if _is_level(surface) and surface.corner[2] <= work.low + ON_IT and _aside(surface, work.middle) < BESIDE_TOO
    )


def ground_of(benches: tuple[Surface, ...], place: Xyz) -> float:
    """Height of the highest bench under a place, or of the floor."""
    return max((bench.corner[2] for bench in benches if _aside(bench, place) <= ON_IT), default=0.0)


def present_distance(hood: Hood, source: Source) -> float:
    """From the edge of the work to the opening as it stands; the usual one for a hood that does not capture."""
    if not isinstance(hood, CapturingHood):
        return USUAL
    work = work_of(source)
    away = tuple(h - m for h, m in zip(hood.at, work.middle, strict=True))
    far = math.hypot(*away)
    if far < ON_IT:
        return USUAL
    level = math.hypot(away[0], away[1])
    edge = work.reach((away[0] / level, away[1] / level, 0.0)) if level > abs(away[2]) else work.top - work.middle[2]
    return min(FARTHEST, max(NEAREST, round(far - edge, 6)))


def check_distance(distance: float) -> float:
    """The distance, if a hood can stand there."""
    if not (math.isfinite(distance) and NEAREST <= distance <= FARTHEST):
        least, most = (show(d, "length", "SI") for d in (NEAREST, FARTHEST))
        raise InputError(f"got a distance of {distance:g} m; allowed: {least} to {most}; choose one there")
    return distance


def ways_of(hood: Hood, source: Source, workplace: Workplace) -> tuple[Xyz, ...]:
    """Level ways from the source to its hood, the present one first; else square to the draught, which favours none."""
    ways: list[Xyz] = []
    away = tuple(h - m for h, m in zip(hood.at, source.centre, strict=True))
    for x, y in ((-hood.facing[0], -hood.facing[1]), (away[0], away[1])):
        upright = abs(hood.facing[2]) < LEVEL
        if math.hypot(x, y) > 0.05 and upright:
            ways.append(_unit(x, y))
    draught = workplace.room.draught
    x, y = draught.towards[:2] if draught and math.hypot(*draught.towards[:2]) > 0.1 else (1.0, 0.0)
    return (*ways, _unit(-y, x), _unit(y, -x), _unit(x, y), _unit(-x, -y))


def beside(work: Work, way: Xyz, distance: float, half_height: float, ground: float) -> Xyz:
    """The middle of an upright opening, as high as the source, or resting on what is below it."""
    at = plus(work.middle, (way, work.reach(way) + distance))
    return _placed((at[0], at[1], max(work.middle[2], ground + half_height)))


def above(work: Work, distance: float) -> Xyz:
    """The middle of an opening that looks down on the work."""
    return _placed((work.middle[0], work.middle[1], work.top + distance))


def around(work: Work, way: Xyz, ground: float, clearance: float) -> Box:
    """A box with the work inside, its back where `way` leads; it stands on what is below, else hangs round the work."""
    aside = (-way[1], way[0], 0.0)
    floor = ground if work.low - ground <= GROUND_NEAR else work.low - clearance
    width, depth = (_rounded(2 * (work.reach(w) + clearance)) for w in (aside, way))
    height = _rounded(work.top - floor + clearance)
    opening = (width, _rounded(OPEN_SHARE * height))
    front = plus(work.middle, (way, -depth / 2))
    return Box(_placed((front[0], front[1], floor + opening[1] / 2)), (width, height, depth), opening)


def fits(way: Xyz, at: Xyz, opening: Opening, box: Box, size: Xyz) -> bool:
    """Whether an upright opening and a box are inside the room."""
    aside = (-way[1], way[0], 0.0)
    far = half_size(opening)
    corners = [plus(at, (aside, far)), plus(at, (aside, -far))]
    width, height, depth = box.inside
    floor = box.at[2] - box.opening[1] / 2
    for side in (-width / 2, width / 2):
        for back in (0.0, depth):
            x, y, _ = plus(box.at, (aside, side), (way, back))
            corners += [(x, y, floor), (x, y, floor + height)]
    return all(-ON_IT <= c <= limit + ON_IT for corner in corners for c, limit in zip(corner, size, strict=True))


def holds(hood: Hood, source: Source) -> bool:
    """Whether an enclosure has the whole source inside."""
    return isinstance(hood, EnclosingHood) and all(inside(hood, point) for point in source.points)


def _is_level(surface: Surface) -> bool:
    a, b = surface.sides
    normal = (a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0])
    return abs(normal[2]) > FLAT * math.hypot(*normal)


def _aside(surface: Surface, place: Xyz) -> float:
    """Level distance from a place to the plan of a surface, taken as upright to the axes; 0 above it."""
    corners = [tuple(surface.corner[i] + sum(side[i] for side in some) for i in (0, 1)) for some in _edges(surface)]
    off = (max(min(c[i] for c in corners) - place[i], place[i] - max(c[i] for c in corners), 0.0) for i in (0, 1))
    return math.hypot(*off)


def _edges(surface: Surface):
    a, b = surface.sides
    return (), (a,), (b,), (a, b)


def _unit(x: float, y: float) -> Xyz:
    size = math.hypot(x, y)
    return x / size, y / size, 0.0


def _rounded(length: float) -> float:
    return round(math.ceil(length / STEP - 1e-6) * STEP, 6)


def _placed(at: Xyz) -> Xyz:
    return round(at[0], 6), round(at[1], 6), round(at[2], 6)
