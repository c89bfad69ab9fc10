"""What lies outside the box: open air round the hoods, or a coarse answer for the whole room.

In open air the outer potential of a hood is that of a sink, Q / (4 pi r), with its images in the walls. What the scene
adds to it dies away as 1 / r, and the box side lets it: slope = slope* - (potential - potential*) x (r.n) / r^2.
"""

import itertools
from collections.abc import Callable

import numpy as np

from hoodwright.flow.grids.cut import Cut, beside
from hoodwright.flow.linear.system import Side, open_sides
from hoodwright.flow.scene import ENDLESS, Scene

REFLECTIONS = 2  # of hoods in two walls that face each other
LEAST_PULL = 1e-6  # 1/m, keeps the matrix positive

Outer = Callable[[np.ndarray], tuple[np.ndarray, np.ndarray]]  # points -> potential (n, bases), slope (n, bases, 3)


def open_air(scene: Scene, made: Cut) -> list[Side]:
    """Open sides of a box in open air; a room without one has only its free vents, at one pressure."""
    outer, centre = _sinks_and_draught(scene), np.mean([m.centre for m in scene.mouths], axis=0)
    sides = []
    for axis, side, index in open_sides(made):
        half = _half(made, axis, side)
        points = made.grid.face_centres(axis, index)
        if _is_wall(scene, axis, side, points):
            sides.append(Side(axis, side, index, np.zeros((len(points), bases_of(scene))), _even(points, half)))
            continue
        offset = points - centre
        pull = np.maximum((2 * side - 1) * offset[:, axis] / np.sum(offset**2, axis=1), LEAST_PULL)
        potential, slope = outer(points)
        given = (2 * side - 1) * slope[:, :, axis] + pull[:, None] * potential
        sides.append(Side(axis, side, index, given / (1 + pull * half)[:, None], pull / (1 + pull * half)))
    return sides


def prescribed_sides(scene: Scene, made: Cut, potential: Callable[[np.ndarray, np.ndarray], np.ndarray]) -> list[Side]:
    """Open sides whose potential is known for every basis, from the places of faces and of the cells inside them."""
    sides = []
    for axis, side, index in open_sides(made):
        half = _half(made, axis, side)
        points = made.grid.face_centres(axis, index)
        inward = points.copy()
        inward[:, axis] = made.grid.centres[axis][beside(axis, index, 1 - side)[axis]]
        wall = _is_wall(scene, axis, side, points)
        known = np.zeros((len(points), bases_of(scene))) if wall else potential(points, inward)
        sides.append(Side(axis, side, index, known / half, _even(points, half)))
    return sides


def bases_of(scene: Scene) -> int:
    """One basis per mouth and per vent that is not free, and three draughts."""
    return len(scene.mouths) + sum(not vent.free for vent in scene.vents) + 3


def draughts(scene: Scene, points: np.ndarray) -> np.ndarray:
    """Potential of three unit draughts at points."""
    return points - np.mean([mouth.centre for mouth in scene.mouths], axis=0)


def _half(made: Cut, axis: int, side: int) -> float:
    return float(made.grid.gaps(axis)[-1 if side else 0])


def _even(points: np.ndarray, half: float) -> np.ndarray:
    return np.full(len(points), 1 / half)


def _is_wall(scene: Scene, axis: int, side: int, points: np.ndarray) -> bool:
    """Whether a side of the box is a wall of the room: its open faces are then free vents."""
    return bool(abs(scene.surroundings.bounds[side][axis] - points[0, axis]) < 1e-9)


def _images(scene: Scene, place: np.ndarray) -> np.ndarray:
    """A point and its images in the walls."""
    low, high = scene.surroundings.bounds
    per_axis = []
    for axis in range(3):
        found = [place[axis]]
        if low[axis] > -ENDLESS and high[axis] < ENDLESS:
            period = 2 * (high[axis] - low[axis])
            mirrored = 2 * low[axis] - place[axis]
            shifts = [n * period for n in range(-REFLECTIONS, REFLECTIONS + 1)]
            found = [p + shift for p in (place[axis], mirrored) for shift in shifts]
        elif low[axis] > -ENDLESS:
            found.append(2 * low[axis] - place[axis])
        elif high[axis] < ENDLESS:
            found.append(2 * high[axis] - place[axis])
        per_axis.append(found)
    return np.array(list(itertools.product(*per_axis)))


def _sinks_and_draught(scene: Scene) -> Callable[[np.ndarray], tuple[np.ndarray, np.ndarray]]:
    """Potential and slope of a unit sink per mouth, a unit source per vent, and three unit draughts."""
    strengths = [(mouth.centre, 1.0) for mouth in scene.mouths]
    strengths += [(vent.centre, -1.0) for vent in scene.vents if not vent.free]

    def outer(points: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
        potentials, slopes = [], []
        for place, strength in strengths:
            potential, slope = _sinks(points, _images(scene, np.asarray(place, dtype=float)))
            potentials.append(strength * potential / (4 * np.pi))
            slopes.append(strength * slope / (4 * np.pi))
        for axis in range(3):
            potentials.append(draughts(scene, points)[:, axis])
            slopes.append(np.broadcast_to(np.eye(3)[axis], points.shape))
        return np.stack(potentials, axis=1), np.stack(slopes, axis=1)

    return outer


def _sinks(points: np.ndarray, places: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
    """Sum of 1 / r from many places, and its slope (n, 3). One place at a time: all at once fills the memory."""
    columns = np.ascontiguousarray(points.T)
    potential, slope = np.zeros(len(points)), np.zeros(columns.shape)
    for place in places:
        away = columns - place[:, None]
        per_metre = 1 / np.sqrt(np.einsum("cn,cn->n", away, away))
        potential += per_metre
        slope -= away * per_metre**3
    return potential, slope.T
