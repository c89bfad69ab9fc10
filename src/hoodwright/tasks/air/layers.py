"""What is drawn over the picture of the air: streamlines, lines of equal speed, and speeds on a hood's axis."""

import math
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from hoodwright.flow import (
    Bases,
    Draught,
    Frame,
    Mouth,
    Plane,
    StreamLine,
    axis_speeds,
    in_solid,
    isolines,
    opening_starts,
    reach_of,
    speeds_on,
    streamlines,
)
from hoodwright.tasks.air.planes import part_of, plane_in_box
from hoodwright.tasks.hood_shapes import Xyz
from hoodwright.units import parse, show

LINES, OTHER_LINES = 32, 12  # to the chosen hood, to each of the others
LIFT = 0.1  # of an opening's shorter side: so far before it lines begin
FINE = 120  # places kept of a line: its way over this
SPEEDS = {
    "SI": tuple(parse(f"{n} m/s", "velocity") for n in (5, 2, 1, 0.5, 0.25, 0.1)),
    "US": tuple(parse(f"{n} fpm", "velocity") for n in (1000, 400, 200, 100, 50, 20)),
}
ABOVE_DRAUGHT = 1.3  # times the draught: a slower level would be a picture of the draught
RASTER, COARSE = 16_000, 2_500  # places of a plane
AXIS = (0.25, 0.5, 0.75, 1.0, 1.5, 2.0, 3.0)  # diameters of an opening of the same area
AXIS_PLACES = 240
TOLD = 3  # reaches in a sentence


@dataclass(frozen=True, eq=False)
class StreamLayer:
    """Lines along the air, each with its speeds; `top` is the greatest speed of all."""

    lines: tuple[StreamLine, ...]
    top: float  # m/s
    words: str


@dataclass(frozen=True, eq=False)
class Level:
    """One value and its lines on a plane."""

    value: float
    words: str
    lines: tuple[np.ndarray, ...]  # (n, 3) m each


@dataclass(frozen=True, eq=False)
class SpeedLayer:
    """Lines of equal speed on a plane; `reaches`: how far each speed reaches on the hood's axis [m]."""

    plane: Plane
    levels: tuple[Level, ...]
    reaches: Mapping[float, float]
    words: str


@dataclass(frozen=True)
class AxisSpeed:
    """Speed on a hood's axis, computed and by the handbook where an equation holds."""

    distance: float  # m
    velocity: float  # m/s
    handbook: float | None  # m/s


def streamlines_of(
    bases: Bases,
    mouths: Sequence[Mouth],
    flows: Mapping[str, float],
    draught: Draught,
    name: str,
    frame: Frame,
    source: str,
    points: Sequence[Xyz],
    system: str = "SI",
) -> StreamLayer:
    """Lines that end in the hoods, and lines from the source: the mean air, without its gusts and without a stream.

    `name` and `frame` are those of the chosen hood; `source` and `points` tell where the source lies.
    """
    longest = float(np.linalg.norm(bases.grid.high - bases.grid.low))
    args = (bases, mouths, flows, draught.mean)
    reach = {"longest": longest, "spacing": max(LIFT * min(frame.sides), longest / FINE / 2)}
    found: list[StreamLine] = []
    for mouth in (one for one in mouths if flows.get(one.name, 0.0) > 0):
        own = mouth.name == name
        figure = frame if own else mouth.frame
        starts = opening_starts(figure, LINES if own else OTHER_LINES, LIFT * min(figure.sides))
        starts = starts[~in_solid(bases, starts)]
        before = streamlines(*args, starts, **reach, against=True)
        found += [_joined(*pair) for pair in zip(before, streamlines(*args, starts, **reach), strict=True)]
    places = np.array(points, float).reshape(-1, 3)
    given = streamlines(*args, places[~in_solid(bases, places)], **reach)
    lines = (*found, *given)
    top = max((float(line.speeds.max()) for line in lines), default=0.0)
    return StreamLayer(lines, top, _of_source(source, given, system))


def _joined(before: StreamLine, after: StreamLine) -> StreamLine:
    """One line from where the air comes to where it goes."""
    places = np.concatenate([before.places[:0:-1], after.places])
    return StreamLine(places, np.concatenate([before.speeds[:0:-1], after.speeds]), after.end, after.hood)


def _of_source(source: str, lines: Sequence[StreamLine], system: str) -> str:
    tail = "Lines of the mean air alone: no gusts, no stream or heat of the source."
    if not lines:
        return tail
    hoods = sorted({line.hood for line in lines if line.hood})
    lost = any(line.hood is None for line in lines)
    if not hoods:
        return f"The mean air carries off what starts at the {source}, past the hoods. {tail}"
    where = " and ".join(f"the {hood}" for hood in hoods)
    if lost:
        return f"The mean air takes a part of the {source} into {where}, a part past it. {tail}"
    time = show(max(_time(line) for line in lines), "time", system, 2)
    return f"The mean air flows from the {source} into {where} in {time}. {tail}"


def _time(line: StreamLine) -> float:
    """Seconds from its start to its end."""
    steps = np.linalg.norm(np.diff(line.places, axis=0), axis=1)
    return float(np.sum(2 * steps / (line.speeds[1:] + line.speeds[:-1])))


def speed_lines_of(
    bases: Bases,
    flows: Mapping[str, float],
    draught: Draught,
    name: str,
    frame: Frame,
    source_at: Xyz,
    plane: str,
    system: str = "SI",
) -> SpeedLayer:
    """Lines of equal speed on a plane, in round speeds, and how far each reaches on the hood's axis."""
    mean, blown = draught.mean, math.hypot(*draught.mean)
    levels = tuple(level for level in SPEEDS[system] if level > ABOVE_DRAUGHT * blown)
    whole = plane_in_box(bases, frame, source_at, plane)
    first = speeds_on(bases, flows, mean, whole, whole.shape_for(COARSE))
    near = np.nan_to_num(first) >= levels[-1] if levels else np.zeros(first.shape, bool)
    part = part_of(whole, near, (tuple(frame.centre), source_at))
    lines = isolines(speeds_on(bases, flows, mean, part, part.shape_for(RASTER)), part, levels)
    shown = [Level(v, show(v, "velocity", system), own) for v, own in zip(levels, lines, strict=True) if own]
    reaches = _reaches(bases, flows, mean, frame, levels)
    return SpeedLayer(part, tuple(shown), reaches, _of_speeds(name, reaches, blown, system))


def _reaches(bases: Bases, flows, mean: Xyz, frame: Frame, levels: Sequence[float]) -> dict[float, float]:
    """Where the speed on the axis falls to each of some speeds; those that it starts below, or never falls to, miss."""
    farthest = float(np.linalg.norm(bases.grid.high - bases.grid.low))
    distances = np.linspace(LIFT * min(frame.sides), farthest, AXIS_PLACES)
    speeds = axis_speeds(bases, flows, mean, frame, distances)
    out = np.flatnonzero(np.isnan(speeds))
    end = int(out[0]) if len(out) else len(speeds)
    found = {level: reach_of(distances[:end], speeds[:end], level) for level in levels}
    return {level: reach for level, reach in found.items() if reach > 0}


def _of_speeds(name: str, reaches: Mapping[float, float], blown: float, system: str) -> str:
    tail = f" The draught of {show(blown, 'velocity', system)} is in it." if blown > 0 else ""
    if not reaches:
        return f"On the axis of the {name} no round speed is passed.{tail}"
    told = list(reaches.items())[-TOLD:]
    parts = [f"{show(v, 'velocity', system)} at {show(x, 'length', system, 2)}" for v, x in told]
    return f"On the axis of the {name} the air falls to {', to '.join(parts)} from the opening.{tail}"


def centreline_of(
    bases: Bases,
    flows: Mapping[str, float],
    frame: Frame,
    handbook: Callable[[float], float | None] | None = None,
    distances: Sequence[float] | None = None,
) -> tuple[AxisSpeed, ...]:
    """Speeds on the axis of an opening without any draught, beside those of the handbook.

    Without `distances` [m] some shares of the opening's size are taken. What lies in a body or outside is left out.
    """
    if distances is None:
        distances = [share * math.sqrt(4 * frame.area / math.pi) for share in AXIS]
    speeds = axis_speeds(bases, flows, (0.0, 0.0, 0.0), frame, np.array(distances, float))
    pairs = [(float(x), float(v)) for x, v in zip(distances, speeds, strict=True) if not math.isnan(v)]
    return tuple(AxisSpeed(x, v, None if handbook is None else handbook(x)) for x, v in pairs)
