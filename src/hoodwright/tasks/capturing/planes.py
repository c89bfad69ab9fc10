"""Surfaces near a hood: those alongside mirror its opening and help, one before it blocks what is certain."""

import math
from dataclasses import dataclass

import numpy as np

from hoodwright.tasks.hood_shapes import frame_of
from hoodwright.tasks.shapes import half_size
from hoodwright.workplace.model import Hood, Surface, Workplace

Xyz = tuple[float, float, float]

REACH = 3.0  # distances to the source; a plane farther away helps less than half a per cent
MOST_PLANES = 4
FLAT, SKIN, EDGE = 1e-12, 1e-9, 0.02  # of a line along a surface, of its rim, and of a hood or source that touches it
RIM_GAP = 0.01  # m between rim and surface, up to which a hood rests on it
ALONG = 0.1  # cosine between a plane's normal and the axis, up to which the plane lies alongside
ACROSS = 0.5  # cosine between a plane's normal and the hood's axis, from which it stands before the opening


@dataclass(frozen=True)
class Planes:
    """How far aside each mirror image of the opening lies [m], nearest first, and whether a plane stands before it."""

    image_offsets: tuple[float, ...]
    blocked: bool


@dataclass(frozen=True)
class Rest:
    """A surface on which a rim rests: the way up from it, how high above it the opening's middle is, and its name."""

    up: np.ndarray
    height: float
    name: str


def planes_about(hood: Hood, point: Xyz, workplace: Workplace) -> Planes:
    """Surfaces of the file and walls, floor and ceiling of the room, each taken as endless."""
    distance = math.dist(hood.at, point)
    offsets, blocked = [], False
    for corner, normal, away in _planes(workplace, hood, REACH * distance):
        across = abs(float(np.dot(normal, hood.facing))) > ACROSS
        gaps = [abs(float(np.dot(np.subtract(place, corner), normal))) for place in (hood.at, point)]
        if across:
            blocked = blocked or (away <= REACH * distance and gaps[1] <= distance)
        elif gaps[0] <= REACH * distance:
            offsets.append(gaps[1] + max(0.0, gaps[0] - half_size(hood.opening)))
    return Planes(tuple(sorted(offsets)[:MOST_PLANES]), blocked)


def rests_on(hood: Hood, points: tuple[Xyz, ...], workplace: Workplace) -> tuple[Rest, ...]:
    """The surfaces, at most two and square to each other, on which a hood's rim rests and that reach to the source."""
    across, up = frame_of(hood)
    w, h = (side / 2 for side in hood.opening.sides)
    found: list[Rest] = []
    for corner, normal, away in _planes(workplace, hood, half_size(hood.opening) + RIM_GAP):
        lean = [abs(float(np.dot(normal, way))) for way in (across, up)]
        reach = w if hood.opening.is_round else w * lean[0] + h * lean[1]
        height = float(np.dot(np.subtract(hood.at, corner), normal))
        touches = away <= reach + RIM_GAP and abs(abs(height) - reach) <= max(RIM_GAP, 0.05 * reach)
        others = [np.asarray(hood.facing), *(rest.up for rest in found)]
        square = all(abs(float(np.dot(normal, other))) < ALONG for other in others)
        up_from = normal * math.copysign(1.0, height)
        if touches and square and all(_over(workplace, corner, up_from, point) for point in points):
            found.append(Rest(up_from, abs(height), _name_of(workplace, corner, up_from)))
    return tuple(found[:2])


def _name_of(workplace: Workplace, corner: Xyz, up_from: np.ndarray) -> str:
    """The surface's own name, or that of the room's part."""
    own = next((surface.name for surface in workplace.surfaces if surface.corner is corner), None)
    level = float(up_from[2])
    return own or ("floor" if level > 0.5 else "ceiling" if level < -0.5 else "wall")


def foot_of(hood: Hood, rests: tuple[Rest, ...]) -> Xyz:
    """The middle of the opening brought down to the surfaces it rests on: the middle of it with its images."""
    x, y, z = np.subtract(hood.at, sum((rest.height * rest.up for rest in rests), np.zeros(3)))
    return float(x), float(y), float(z)


def _over(workplace: Workplace, corner: Xyz, normal: np.ndarray, point: Xyz) -> bool:
    """Whether a point lies on the hood's side of a plane, and over it; a bench top ends, walls and floor do not."""
    height = float(np.dot(np.subtract(point, corner), normal))
    if height < -RIM_GAP:
        return False
    surface = next((s for s in workplace.surfaces if s.corner is corner), None)
    return surface is None or _distance_to(surface, point) <= abs(height) * (1 + 1e-6) + 1e-6


def screen_between(hood: Hood, point: Xyz, workplace: Workplace) -> str | None:
    """Name of a surface that the straight line from a hood to a point crosses; None where nothing is in the way."""
    start, line = np.asarray(hood.at, dtype=float), np.subtract(point, hood.at)
    for surface in workplace.surfaces:
        sides = np.column_stack([*surface.sides, -line])
        if abs(float(np.linalg.det(sides))) < FLAT:
            continue
        s, t, way = np.linalg.solve(sides, start - np.asarray(surface.corner))
        if -SKIN <= s <= 1 + SKIN and -SKIN <= t <= 1 + SKIN and EDGE < way < 1 - EDGE:
            return surface.name
    return None


def _planes(workplace: Workplace, hood: Hood, reach: float):
    """Corner, unit normal and distance to the hood, of every plane within reach."""
    for surface in workplace.surfaces:
        away = _distance_to(surface, hood.at)
        if away <= reach:
            normal = np.cross(*surface.sides)
            yield surface.corner, normal / np.linalg.norm(normal), away
    for axis, size in enumerate(workplace.room.size):
        for level in (0.0, size):
            normal = np.eye(3)[axis]
            yield level * normal, normal, abs(hood.at[axis] - level)


def _distance_to(surface: Surface, point: tuple[float, float, float]) -> float:
    """Distance from a point to the nearest point of a flat parallelogram."""
    a, b = (np.asarray(side) for side in surface.sides)
    offset = np.subtract(point, surface.corner)
    (s, t), *_ = np.linalg.lstsq(np.column_stack([a, b]), offset, rcond=None)
    nearest = np.clip(s, 0, 1) * a + np.clip(t, 0, 1) * b
    return float(np.linalg.norm(offset - nearest))
