"""The air on a plane: speeds on a raster, lines of equal value, and how far a speed reaches along an axis."""

from dataclasses import dataclass

import numpy as np

from hoodwright.errors import InputError
from hoodwright.flow.shapes import Vector
from hoodwright.flow.streamlines import in_solid
from hoodwright.kernels.velocity import velocities
from hoodwright.ranges import not_negative, numbers, positive

SHORTEST_LINE = 3  # places; a shorter one is a speck of the raster


@dataclass(frozen=True)
class Plane:
    """A piece of a plane: corner + u first + v second, with u and v from 0 to 1."""

    corner: Vector
    first: Vector
    second: Vector

    def __post_init__(self):
        sides = np.array([self.first, self.second], float)
        if not np.all(np.isfinite([self.corner, *sides])) or np.any(np.linalg.norm(sides, axis=1) <= 0):
            raise InputError(f"plane: corner {self.corner}, sides {self.first}, {self.second}: give finite sides")

    def shape_for(self, most: int) -> tuple[int, int]:
        """Places along each side, about evenly far apart, so that there are about so many in all."""
        a, b = (float(np.linalg.norm(side)) for side in (self.first, self.second))
        along = max(round((most * a / b) ** 0.5), 2)
        return along, max(round(most / along), 2)

    def places(self, shape: tuple[int, int]) -> np.ndarray:
        """A raster of places from corner to corner (a, b, 3)."""
        u, v = (np.linspace(0.0, 1.0, n) for n in shape)
        first, second = np.asarray(self.first, float), np.asarray(self.second, float)
        return np.asarray(self.corner, float) + u[:, None, None] * first + v[None, :, None] * second


def speeds_on(air, flows, draught, plane, shape):
    """Speed of the air on a raster of a plane.

    Parameters
    ----------
    air : Bases
    flows : dict of name to float [m3/s]
    draught : three floats [m/s]
    plane : Plane
    shape : two ints
        Places along its sides.

    Returns
    -------
    speeds : array of that shape [m/s]
        NaN in solid bodies and outside the box.

    Valid: as the flows and draught of the bases.
    Source: [potential-flow, finite volumes; limits in docs/limits.md]
    """
    places = plane.places(shape)
    speeds = np.linalg.norm(_velocity(air, flows, draught, places), axis=-1)
    return np.where(in_solid(air, places), np.nan, speeds)


def isolines(values, plane, levels):
    """Lines of equal value on a plane. Where the value is not known there is no line.

    Parameters
    ----------
    values : array (a, b)
        On the raster of the plane; NaN where it is not known. In the unit of the levels.
    plane : Plane
    levels : sequence of float [as the values]

    Returns
    -------
    lines : tuple of tuples of arrays (n, 3) [m]
        For each level its lines, the longest first.

    Valid: at least two places along each side; else InputError is raised.
    Source: [potential-flow, between the places of the raster the value is linear]
    """
    from contourpy import contour_generator  # late: only layers need it

    values = np.asarray(values, float)
    if values.ndim != 2 or min(values.shape) < 2:
        raise InputError(f"lines of equal value: got a raster of {values.shape}; give two places or more on each side")
    u, v = (np.linspace(0.0, 1.0, n) for n in values.shape)
    made = contour_generator(u, v, np.ma.masked_invalid(values).T, corner_mask=True)
    corner, first, second = (np.asarray(part, float) for part in (plane.corner, plane.first, plane.second))
    found = []
    for level in levels:
        lines = [np.asarray(line) for line in made.lines(float(level)) if len(line) >= SHORTEST_LINE]
        lines.sort(key=len, reverse=True)
        found.append(tuple(corner + line[:, :1] * first + line[:, 1:] * second for line in lines))
    return tuple(found)


def axis_speeds(air, flows, draught, frame, distances):
    """Speed of the air on a hood's axis.

    Parameters
    ----------
    air : Bases
    flows : dict of name to float [m3/s]
    draught : three floats [m/s]
    frame : Frame
        Of the opening; the axis leaves its middle square to it.
    distances : array (n,) [m]
        From its plane.

    Returns
    -------
    speeds : array (n,) [m/s]
        NaN where the axis is outside the box or in a body.

    Valid: distances of 0 or more; else RangeError is raised.
    Source: [potential-flow, finite volumes; limits in docs/limits.md]
    """
    distances = not_negative("distance", distances, "m")
    places = frame.centre + np.asarray(distances, float)[..., None] * frame.normal
    return np.where(in_solid(air, places), np.nan, np.linalg.norm(_velocity(air, flows, draught, places), axis=-1))


def reach_of(distances, speeds, velocity):
    """Distance at which a speed has fallen to a given one for the first time.

    Parameters
    ----------
    distances : array (n,) [m]
        Rising.
    speeds : array (n,) [m/s]
        There; NaN where it is not known.
    velocity : float [m/s]

    Returns
    -------
    reach : float [m]
        0 where the first speed is below it, NaN where none is so slow or none is known.

    Valid: velocity above 0; else RangeError is raised.
    Source: [potential-flow, linear between two distances]
    """
    wanted = float(positive("velocity", velocity, "m/s"))
    distances, speeds = np.asarray(distances, float), np.asarray(speeds, float)
    known = ~np.isnan(speeds)
    distances, speeds = distances[known], speeds[known]
    slow = np.flatnonzero(speeds < wanted)
    if not len(slow):
        return float("nan")
    n = int(slow[0])
    if n == 0:
        return 0.0
    share = (speeds[n - 1] - wanted) / (speeds[n - 1] - speeds[n])
    return float(distances[n - 1] + share * (distances[n] - distances[n - 1]))


def _velocity(air, flows, draught, places):
    """Velocity at places (..., 3)."""
    flat = np.ascontiguousarray(numbers("places", places), float).reshape(-1, 3)
    found = np.empty_like(flat)
    velocities(air.arrays, np.ascontiguousarray(air.weights(flows, draught), np.float32), flat, found)
    return found.reshape(np.shape(places))
