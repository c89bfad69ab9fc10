"""Surfaces near a hood: those alongside mirror its opening and help, one before it blocks what is certain."""

import math
from dataclasses import dataclass

import numpy as np

from hoodwright.workplace.model import Hood, Source, Surface, Workplace

REACH = 3.0  # distances to the source; a plane farther away helps less than half a per cent
MOST_PLANES = 4
ACROSS = 0.5  # cosine between a plane's normal and the hood's axis, from which it stands before the opening


@dataclass(frozen=True)
class Planes:
    """How far aside each mirror image of the opening lies [m], nearest first, and whether a plane stands before it."""

    image_offsets: tuple[float, ...]
    blocked: bool


def planes_about(hood: Hood, source: Source, workplace: Workplace) -> Planes:
    """Surfaces of the file and walls, floor and ceiling of the room, each taken as endless."""
    distance = math.dist(hood.at, source.at)
    offsets, blocked = [], False
    for corner, normal, away in _planes(workplace, hood, REACH * distance):
        across = abs(float(np.dot(normal, hood.facing))) > ACROSS
        gaps = [abs(float(np.dot(np.subtract(point, corner), normal))) for point in (hood.at, source.at)]
        if across:
            blocked = blocked or (away <= REACH * distance and gaps[1] <= distance)
        elif gaps[0] <= REACH * distance:
            offsets.append(gaps[1] + max(0.0, gaps[0] - half_size(hood)))
    return Planes(tuple(sorted(offsets)[:MOST_PLANES]), blocked)


def half_size(hood: Hood) -> float:
    """From the centre of the opening to its farthest point."""
    return hood.opening.sides[0] / 2 if hood.opening.is_round else math.hypot(*hood.opening.sides) / 2


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
