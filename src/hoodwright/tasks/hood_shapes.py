"""Bodies of hoods and sources as flat panels and lines in room coordinates (metres), for page and report."""

import math
from dataclasses import dataclass

from hoodwright.workplace.model import CapturingHood, EnclosingHood, Hood, ReceivingHood, Source, Workplace

Xyz = tuple[float, float, float]
Panel = tuple[Xyz, ...]

CIRCLE = 24
CANOPY_RISE = 0.7  # height of a canopy over its half width: a gentle taper
CANOPY_NECK = 0.12  # m, half width where the duct leaves
ARROW, LEAST_ARROW = 0.5, 0.05  # m


@dataclass(frozen=True)
class Sight:
    """The straight line along which the answer judges a source: from the hood to the place that asks most of it."""

    source: str
    start: Xyz
    end: Xyz


def plus(a: Xyz, *steps: tuple[Xyz, float]) -> Xyz:
    """A point some way along each direction from another."""
    x, y, z = (a[i] + sum(way[i] * far for way, far in steps) for i in range(3))
    return x, y, z


def frame_of(hood: Hood) -> tuple[Xyz, Xyz]:
    """Unit vectors across and up in the plane of an opening; `across` is level unless the file says `along`."""
    facing = hood.facing
    level = math.hypot(facing[0], facing[1])
    across = (-facing[1] / level, facing[0] / level, 0.0) if level > 1e-6 else (1.0, 0.0, 0.0)
    if hood.along is not None:
        across = _square_to(hood.along, facing)
    up = (
        facing[1] * across[2] - facing[2] * across[1],
        facing[2] * across[0] - facing[0] * across[2],
        facing[0] * across[1] - facing[1] * across[0],
    )
    return across, (-up[0], -up[1], -up[2]) if up[2] < 0 else up


def _square_to(way: Xyz, facing: Xyz) -> Xyz:
    """The direction made exactly square to the axis."""
    lean = sum(a * f for a, f in zip(way, facing, strict=True))
    left = plus(way, (facing, -lean))
    size = math.hypot(*left)
    return left[0] / size, left[1] / size, left[2] / size


def body_of(hood: Hood) -> tuple[tuple[Panel, ...], Xyz]:
    """Panels of the hood's body behind its opening, and where its duct begins."""
    if isinstance(hood, EnclosingHood):
        return _box(hood)
    if isinstance(hood, ReceivingHood) and hood.is_canopy:
        return _canopy(hood)
    return (), hood.at


def _box(hood: EnclosingHood) -> tuple[tuple[Panel, ...], Xyz]:
    """The front stands with its floor below the sill, or with the opening in its middle where the file does not say."""
    across, up = frame_of(hood)
    width, height, d = hood.box
    low = -height / 2 if hood.below is None else -hood.below
    ends = ((-1, low), (1, low), (1, low + height), (-1, low + height))
    front = [plus(hood.at, (across, a * width / 2), (up, b)) for a, b in ends]
    back = [plus(p, (hood.facing, -d)) for p in front]
    sides = tuple((front[i], front[(i + 1) % 4], back[(i + 1) % 4], back[i]) for i in range(4))
    looks_down = hood.facing[2] < -0.7
    steps = ((hood.facing, -d),) if looks_down else ((up, low + height), (hood.facing, -0.7 * d))
    duct_at = plus(hood.at, *steps)
    return (tuple(back), *sides), duct_at


def _canopy(hood: ReceivingHood) -> tuple[tuple[Panel, ...], Xyz]:
    across, up = frame_of(hood)
    w, h = (side / 2 for side in hood.opening.sides)
    rise = CANOPY_RISE * min(w, h)
    neck = min(CANOPY_NECK, 0.5 * w, 0.5 * h)
    if hood.opening.is_round:
        turns = [2 * math.pi * i / CIRCLE for i in range(CIRCLE)]
        ring = [(math.cos(t), math.sin(t)) for t in turns]
    else:
        ring = [(1.0, 1.0), (-1.0, 1.0), (-1.0, -1.0), (1.0, -1.0)]
    low = [plus(hood.at, (across, a * w), (up, b * h)) for a, b in ring]
    high = [plus(hood.at, (across, a * neck), (up, b * neck), (hood.facing, -rise)) for a, b in ring]
    count = len(ring)
    panels = tuple((low[i], low[(i + 1) % count], high[(i + 1) % count], high[i]) for i in range(count))
    return panels, plus(hood.at, (hood.facing, -rise))


def lines_of_hood(hood: Hood) -> tuple[Panel, ...]:
    """A push nozzle: its slot, and the way it blows."""
    if not isinstance(hood, CapturingHood) or hood.push is None:
        return ()
    across, _ = frame_of(hood)
    half, at = hood.push.slot[0] / 2, hood.push.at
    return (plus(at, (across, -half)), plus(at, (across, half))), (at, plus(at, (hood.facing, -ARROW)))


def lines_of_source(source: Source, hoods: tuple[Hood, ...]) -> tuple[Panel, ...]:
    """Its extent, the outline of what is hot, the wheel, and the way that particles are thrown."""
    lines: list[Panel] = []
    if source.line or source.path:
        lines.append(source.points)
    if source.box:
        lines += _edges(source.points)
    if source.heat:
        lines += _hot(source)
    if source.wheel:
        hood = next((hood for hood in hoods if source.name in hood.serves), None)
        lines.append(_wheel(source, hood))
    if source.throws:
        lines.append((source.centre, plus(source.centre, (source.throws.towards, _flight(source, hoods)))))
    return tuple(lines)


def _flight(source: Source, hoods: tuple[Hood, ...]) -> float:
    """Length of the arrow of a thrown stream: to its hood, but no longer than usual."""
    hood = next((hood for hood in hoods if source.name in hood.serves), None)
    if not isinstance(hood, ReceivingHood) or hood.is_canopy:
        return ARROW
    return min(ARROW, max(LEAST_ARROW, math.dist(source.centre, _end_of_stream(hood, source))))


def _edges(corners: tuple[Xyz, ...]) -> list[Panel]:
    """The twelve edges of a box: pairs of corners that differ in one coordinate."""
    pairs = ((a, b) for i, a in enumerate(corners) for b in corners[i + 1 :])
    return [pair for pair in pairs if sum(p != q for p, q in zip(*pair, strict=True)) == 1]


def _hot(source: Source) -> list[Panel]:
    heat, centre = source.heat, source.centre
    assert heat is not None
    w, h = (side / 2 for side in heat.sides)
    if heat.is_round:
        turns = [2 * math.pi * i / CIRCLE for i in range(CIRCLE + 1)]
        top = [plus(centre, ((1, 0, 0), w * math.cos(t)), ((0, 1, 0), w * math.sin(t))) for t in turns]
    else:
        top = [plus(centre, ((1, 0, 0), a * w), ((0, 1, 0), b * h)) for a, b in ((1, 1), (-1, 1), (-1, -1), (1, -1))]
        top.append(top[0])
    if heat.height is None:
        return [tuple(top)]
    bottom = [plus(p, ((0, 0, 1), -heat.height)) for p in top]
    posts = [(top[i], bottom[i]) for i in range(0, len(top) - 1, max(1, len(top) // 4))]
    return [tuple(top), tuple(bottom), *posts]


def _wheel(source: Source, hood: Hood | None) -> Panel:
    """A circle in the upright plane that holds the hood."""
    assert source.wheel is not None
    radius, centre = (source.wheel.diameter or 0.2) / 2, source.centre
    to_hood = (hood.at[0] - centre[0], hood.at[1] - centre[1]) if hood else (1.0, 0.0)
    far = math.hypot(*to_hood)
    level = (to_hood[0] / far, to_hood[1] / far, 0.0) if far > 1e-6 else (1.0, 0.0, 0.0)
    turns = [2 * math.pi * i / CIRCLE for i in range(CIRCLE + 1)]
    return tuple(plus(centre, (level, radius * math.cos(t)), ((0, 0, 1), radius * math.sin(t))) for t in turns)


def sights_of(hood: Hood, workplace: Workplace) -> tuple[Sight, ...]:
    """The lines from a hood to what it serves, as its equations measure them; an enclosure has none."""
    if isinstance(hood, EnclosingHood):
        return ()
    return tuple(_sight(hood, workplace.source(name)) for name in hood.serves)


def _sight(hood: CapturingHood | ReceivingHood, source: Source) -> Sight:
    if isinstance(hood, CapturingHood):
        return _captured(hood, source)
    if source.throws is not None and not hood.is_canopy:
        return Sight(source.name, _end_of_stream(hood, source), source.centre)
    if hood.is_canopy:
        x, y, z = source.centre
        low = z if source.heat else min(point[2] for point in source.points)
        return Sight(source.name, (x, y, hood.at[2]), (x, y, low))
    return Sight(source.name, hood.at, source.farthest_from(hood.at))


def _captured(hood: CapturingHood, source: Source) -> Sight:
    """To the farthest place; square to the long side of a slot."""
    from hoodwright.tasks.capturing.need import farthest_place, slot_axis  # late: it needs the frame of a hood

    point, _ = farthest_place(hood, source)
    axis = slot_axis(hood)
    if axis is None:
        return Sight(source.name, hood.at, point)
    aside = sum((p - h) * a for p, h, a in zip(point, hood.at, axis, strict=True))
    return Sight(source.name, plus(hood.at, (axis, aside)), point)


def _end_of_stream(hood: ReceivingHood, source: Source) -> Xyz:
    """Where the thrown stream meets the plane of the opening; the middle of the opening where it never does."""
    assert source.throws is not None
    slant = sum(t * f for t, f in zip(source.throws.towards, hood.facing, strict=True))
    ahead = sum((h - c) * f for h, c, f in zip(hood.at, source.centre, hood.facing, strict=True))
    if slant > -1e-6 or ahead > 0:
        return hood.at
    return plus(source.centre, (source.throws.towards, ahead / slant))
