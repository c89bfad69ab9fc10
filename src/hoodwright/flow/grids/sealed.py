"""Flood fill: which cells air can reach from outside, and which hoods are sealed off."""

import numpy as np
from scipy.sparse import coo_array
from scipy.sparse.csgraph import connected_components

from hoodwright.errors import InputError
from hoodwright.flow.grids.cut import OPEN, WALL, Cut, mouth_code
from hoodwright.flow.grids.grid import above, below, end, inner
from hoodwright.flow.scene import Scene


def close_still_air(scene: Scene, made: Cut) -> np.ndarray:
    """Make cells solid that no air can reach, and number the connected parts of the rest.

    Air comes from open sides and free vents; where there are none, through the walls of a room that leak evenly.
    Raises InputError with the name of a hood that is sealed off.
    """
    labels = _labels(made)
    fronts = [_fronts(made, labels, number) for number in range(len(scene.mouths))]
    reached = np.zeros(labels.max() + 1, dtype=bool)
    reached[_beside_outer(made, labels, OPEN)] = True
    if not reached.any():
        walls = np.zeros_like(reached)
        walls[_beside_outer(made, labels, WALL)] = True
        drawn = np.concatenate(fronts)
        reached[drawn] = walls[drawn]
    for mouth, front in zip(scene.mouths, fronts, strict=True):
        if not np.all(reached[front]):
            raise InputError(
                f"{mouth.name}: it is sealed off: no opening lets air come to it; "
                "give its enclosure an opening, or move what closes it"
            )
    still = (labels >= 0) & ~reached[labels]
    made.solid |= still
    for axis, code in enumerate(made.codes):
        closed = made.solid[below(axis)] & made.solid[above(axis)]
        code[inner(axis)][closed & (code[inner(axis)] == OPEN)] = WALL
    return np.where(still, -1, labels)


def _beside_outer(made: Cut, labels: np.ndarray, kind: int) -> np.ndarray:
    """Labels of the air cells beside outer faces of one kind."""
    ends = [(end(axis, side), code) for axis, code in enumerate(made.codes) for side in (0, 1)]
    found = np.unique(np.concatenate([labels[at][code[at] == kind] for at, code in ends]))
    return found[found >= 0]


def _labels(made: Cut) -> np.ndarray:
    """A number for each set of connected air cells; -1 in solids."""
    number = np.arange(made.grid.cells).reshape(made.grid.shape)
    low, high = [], []
    for axis, code in enumerate(made.codes):
        through = code[inner(axis)] == OPEN
        low.append(number[below(axis)][through])
        high.append(number[above(axis)][through])
    rows, columns = np.concatenate(low), np.concatenate(high)
    graph = coo_array((np.ones(len(rows), dtype=np.int8), (rows, columns)), shape=(made.grid.cells,) * 2)
    labels = connected_components(graph.tocsr(), directed=False)[1].reshape(made.grid.shape)
    return np.where(made.solid, -1, labels)


def _fronts(made: Cut, labels: np.ndarray, number: int) -> np.ndarray:
    """Labels of the cells before a hood's opening."""
    found = []
    for axis, code in enumerate(made.codes):
        mine = code == mouth_code(number)  # its cells, on either side of the faces of each axis
        found += [labels[mine[above(axis)]], labels[mine[below(axis)]]]
    labels_found = np.unique(np.concatenate(found))
    return labels_found[labels_found >= 0]
