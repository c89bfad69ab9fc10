"""The potential of a coarse answer, where a fine box takes it up."""

from collections.abc import Callable

import numpy as np
from scipy.ndimage import distance_transform_edt

from hoodwright.flow.grids.grid import above, below
from hoodwright.flow.linear.outer import draughts
from hoodwright.flow.scene import Scene


def potential_of_room(scene: Scene, room) -> Callable[[np.ndarray, np.ndarray], np.ndarray]:
    """A function of places and of cells beside them (which tell the side of a plate): potential (n, bases).

    Within a coarse cell the potential is a parabola along each axis, from the velocities of its faces. Draughts pass
    the room's box undisturbed.
    """
    nearest = distance_transform_edt(room.cut.solid, return_distances=False, return_indices=True)

    def potential(places: np.ndarray, cells: np.ndarray) -> np.ndarray:
        found = room.grid.cell_at(cells)
        i, j, k = (part[found] for part in nearest)
        total = room.potential[i, j, k]
        for axis in range(3):
            n = (i, j, k)[axis]
            offset = (places[:, axis] - room.grid.centres[axis][n])[:, None]
            width = room.grid.widths[axis][n][:, None]
            low = room.faces[axis][below(axis)][i, j, k]
            high = room.faces[axis][above(axis)][i, j, k]
            total = total + (low + high) / 2 * offset + (high - low) / (2 * width) * offset**2
        return np.concatenate([total[:, :-3], draughts(scene, places)], axis=1)

    return potential
