"""Streamlines of the computed air: with it from a source, against it from a hood's opening."""

from dataclasses import dataclass

import numpy as np

from hoodwright.errors import InputError
from hoodwright.kernels.stream_line import BOX, LONG, STILL, WALL, follow_lines
from hoodwright.ranges import numbers, positive

STEP = 0.35  # of the narrowest side of a cell
SLOWEST = 1e-3  # m/s: slower air stands still, for a line
ENDS = {LONG: "long", STILL: "still air", WALL: "wall", BOX: "edge"}
GOLDEN = np.pi * (3 - np.sqrt(5))  # turn from one start to the next on a round opening


@dataclass(frozen=True, eq=False)
class StreamLine:
    """Places along a line and the speed there. `end`: hood, edge (of the computed box), wall, still air or long."""

    places: np.ndarray  # (n, 3) m
    speeds: np.ndarray  # (n,) m/s
    end: str
    hood: str | None = None  # which one, where it ends at one


def streamlines(air, mouths, flows, draught, starts, longest, spacing, *, against=False):
    """Lines along the mean air from each of many places, until a hood, a wall, the edge, still air or the longest way.

    No line crosses a plate or a wall.

    Parameters
    ----------
    air : Bases
        Of the scene.
    mouths : sequence of Mouth
        Of the scene, in its order.
    flows : dict of name to float [m3/s]
    draught : three floats [m/s]
    starts : array (n, 3) [m]
        In open air, all of them.
    longest : float [m]
        Way after which a line ends.
    spacing : float [m]
        Between the places that are kept, about.
    against : bool
        Whether to go against the air: where it comes from.

    Returns
    -------
    lines : tuple of StreamLine [m, m/s]

    Valid: starts in open air, longest and spacing above 0; else InputError or RangeError.
    Source: [potential-flow, finite volumes; limits in docs/limits.md]
    """
    starts = np.ascontiguousarray(numbers("starts of streamlines", starts), float).reshape(-1, 3)
    way, apart = float(positive("longest way", longest, "m")), float(positive("spacing", spacing, "m"))
    if np.any(in_solid(air, starts)):
        air.refuse_solid("a streamline", starts)
    room = np.zeros((len(starts), int(way / apart) + 3, 4))
    ends = np.zeros((len(starts), 2), np.int64)
    laws = np.array([-STEP if against else STEP, SLOWEST, way, apart])
    weights = np.ascontiguousarray(air.weights(flows, draught), np.float32)
    follow_lines(air.arrays, weights, starts, laws, room, ends)
    return tuple(_line(points[:count], int(end), mouths) for points, (count, end) in zip(room, ends, strict=True))


def _line(points, end, mouths) -> StreamLine:
    hood = mouths[-end - 1].name if end < 0 else None
    return StreamLine(points[:, :3].copy(), points[:, 3].copy(), "hood" if hood else ENDS[end], hood)


def opening_starts(frame, count, lift):
    """Places spread evenly before an opening, for lines that end in it.

    Parameters
    ----------
    frame : Frame
        The opening as a plane figure.
    count : int
        About so many; a rectangle takes as many as fill its rows.
    lift : float [m]
        So far before its plane.

    Returns
    -------
    starts : array (n, 3) [m]

    Valid: one place or more, lift of 0 or more; else InputError is raised.
    Source: [potential-flow, each line stands for an even share of the opening]
    """
    if count < 1 or not lift >= 0:
        raise InputError(
            f"lines before an opening: got {count} at {lift:g} m; give 1 or more, at 0 m or more before it"
        )
    if frame.shape == "round":
        number = np.arange(count) + 0.5
        out, turn = np.sqrt(number / count), GOLDEN * number
        a, b = out * np.cos(turn), out * np.sin(turn)
    else:
        wide, high = frame.sides
        across = int(np.clip(round(np.sqrt(count * wide / high)), 1, count))
        rows = max(round(count / across), 1)
        a, b = (2 * (np.arange(n) + 0.5) / n - 1 for n in (across, rows))
        a, b = (part.ravel() for part in np.meshgrid(a, b, indexing="ij"))
    sides = a[:, None] * frame.along * frame.sides[0] / 2 + b[:, None] * frame.across * frame.sides[1] / 2
    return frame.centre + sides + lift * frame.normal


def in_solid(air, places):
    """Whether places lie outside the box of the computed air, or in a wall or a body.

    Parameters
    ----------
    air : Bases
    places : array (..., 3) [m]

    Returns
    -------
    solid : array (...) of bool

    Valid: finite places; else RangeError is raised.
    Source: [potential-flow, finite volumes]
    """
    places = numbers("places", places)
    lines, solid = air.arrays[:3], air.arrays[15]
    outside = np.zeros(places.shape[:-1], bool)
    cell = []
    for axis, line in enumerate(lines):
        c = places[..., axis]
        outside |= (c < line[0]) | (c > line[-1])
        cell.append(np.clip(np.searchsorted(line, c, side="right") - 1, 0, len(line) - 2))
    return outside | (solid[tuple(cell)] > 0)
