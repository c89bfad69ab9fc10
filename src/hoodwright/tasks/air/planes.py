"""Planes on which the air is shown: level through the source, or upright through hood and source."""

import math

import numpy as np

from hoodwright.errors import InputError
from hoodwright.flow import Bases, Frame, Plane, Plate
from hoodwright.tasks.hood_shapes import Xyz, frame_of
from hoodwright.workplace.model import Hood

LEVEL, UPRIGHT = "level", "upright"
PLANES = (LEVEL, UPRIGHT)
INSET = 1e-3  # m inside the box
SIDE = 0.01  # m aside: a source nearer to the vertical through its hood gives no direction
SPARE = 1.5  # steps of the raster round what is kept


def opening_frame(hood: Hood) -> Frame:
    """The opening of a hood as a plane figure."""
    shape = "round" if hood.opening.is_round else "rectangle"
    return Frame.facing(hood.at, hood.facing, hood.opening.sides, shape, frame_of(hood)[0])


def plane_in_box(bases: Bases, frame: Frame, source_at: Xyz, which: str) -> Plane:
    """The whole of a plane in the box of the computed air."""
    if which not in PLANES:
        raise InputError(f"plane: got {which!r}; there are {' and '.join(PLANES)}")
    low, high = bases.grid.low + INSET, bases.grid.high - INSET
    if which == LEVEL:
        height = min(max(source_at[2], low[2]), high[2])
        return Plane((low[0], low[1], height), (high[0] - low[0], 0.0, 0.0), (0.0, high[1] - low[1], 0.0))
    x, y = _way(frame, source_at)
    start, end = _ends(frame.centre, (x, y), low, high)
    corner = (frame.centre[0] + start * x, frame.centre[1] + start * y, low[2])
    return Plane(_xyz(corner), _xyz(((end - start) * x, (end - start) * y, 0.0)), (0.0, 0.0, float(high[2] - low[2])))


def _way(frame: Frame, source_at: Xyz) -> tuple[float, float]:
    """The level direction of an upright plane: from hood to source, along the axis, or along the opening."""
    towards = np.subtract(source_at, frame.centre)
    for way, least in ((towards, SIDE), (frame.normal, 1e-3), (frame.along, 0.0)):
        size = math.hypot(way[0], way[1])
        if size > least:
            return float(way[0] / size), float(way[1] / size)
    return 1.0, 0.0


def _ends(centre, way: tuple[float, float], low, high) -> tuple[float, float]:
    """How far a level line runs in the box, backward (below zero) and forward."""
    start, end = -math.inf, math.inf
    for axis in (0, 1):
        if abs(way[axis]) > 1e-9:
            a, b = sorted(float((limit[axis] - centre[axis]) / way[axis]) for limit in (low, high))
            start, end = max(start, a), min(end, b)
    return start, end


def part_of(plane: Plane, wanted: np.ndarray, places: tuple[Xyz, ...]) -> Plane:
    """The part of a plane that holds the wanted places of its raster, and the nearest of some other places."""
    sides = np.array([plane.first, plane.second], float)
    lengths = np.linalg.norm(sides, axis=1)
    ends = np.array([part @ (sides / lengths[:, None] ** 2).T for part in np.subtract(places, plane.corner)])
    steps = 1.0 / (np.array(wanted.shape) - 1)
    marked = np.argwhere(wanted) * steps
    low = np.minimum(ends.min(axis=0), marked.min(axis=0, initial=1.0)) - SPARE * steps
    high = np.maximum(ends.max(axis=0), marked.max(axis=0, initial=0.0)) + SPARE * steps
    low, high = np.clip(low, 0.0, 1.0), np.clip(high, 0.0, 1.0)
    corner = np.asarray(plane.corner) + low @ sides
    first, second = (high - low)[:, None] * sides
    return Plane(_xyz(corner), _xyz(first), _xyz(second))


def _xyz(values) -> Xyz:
    x, y, z = (float(value) for value in values)
    return x, y, z


def cut_of(plate: Plate, plane: Plane) -> tuple[Xyz, Xyz] | None:
    """Both ends of the line in which a plate cuts a plane, within the plane; None where it does not."""
    corner, first, second = plate.spans
    corners = np.array([corner, corner + first, corner + first + second, corner + second])
    off = (corners - plane.corner) @ np.cross(plane.first, plane.second)
    found = []
    for n, m in ((0, 1), (1, 2), (2, 3), (3, 0)):
        if (off[n] < 0) != (off[m] < 0):
            found.append(corners[n] + off[n] / (off[n] - off[m]) * (corners[m] - corners[n]))
    return _within(plane, *found) if found else None


def _within(plane: Plane, start: np.ndarray, end: np.ndarray) -> tuple[Xyz, Xyz] | None:
    """The part of a line in a plane that lies between the plane's sides."""
    low, high = 0.0, 1.0
    for side in (np.asarray(plane.first), np.asarray(plane.second)):
        a, b = ((place - plane.corner) @ side / (side @ side) for place in (start, end))
        if abs(b - a) < 1e-9:
            high = high if 0 <= a <= 1 else -1.0
        else:
            one, other = sorted((-a / (b - a), (1 - a) / (b - a)))
            low, high = max(low, one), min(high, other)
    return (_xyz(start + low * (end - start)), _xyz(start + high * (end - start))) if low < high else None
