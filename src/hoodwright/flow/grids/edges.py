"""The flow round sharp edges, which cells are too coarse to see.

At the end of a thin plate the potential goes as r^(1/2), at an outer corner of a body as r^(2/3). Differences between
cell centres then give too little flow: .64 and .79 of it on square cells, so that every edge acts as if it reached
farther. The faces that meet at an edge get the conductance that makes the flow of that solution exact.
"""

from itertools import combinations

import numpy as np

from hoodwright.flow.grids.cut import OPEN, Cut
from hoodwright.flow.grids.grid import inner

MOST = 3.0  # a face between two edges: no greater than this


def edge_factors(made: Cut) -> list[np.ndarray]:
    """Factors on the conductance of the inner faces of each axis; one away from edges."""
    factors = [np.ones(code[inner(axis)].shape) for axis, code in enumerate(made.codes)]
    for a, b in combinations(range(3), 2):
        _of_edges(made, a, b, factors)
    return [np.minimum(factor, MOST) for factor in factors]


def _of_edges(made: Cut, a: int, b: int, factors: list[np.ndarray]) -> None:
    """All inner edges square to axes a and b, where two faces of each axis meet."""
    faces = {}
    for axis, other in ((a, b), (b, a)):
        closed = made.codes[axis][inner(axis)] != OPEN
        for side in (0, 1):
            part = [slice(None)] * 3
            part[other] = slice(side, made.grid.shape[other] - 1 + side)
            faces[axis, side] = (closed[tuple(part)], other)
    count = sum(closed.astype(np.int8) for closed, _ in faces.values())
    for plate in ((axis, side) for axis in (a, b) for side in (0, 1)):
        _plate_end(made, np.nonzero((count == 1) & faces[plate][0]), plate, a, b, factors)
    corner = (count == 2) & (faces[a, 0][0] != faces[a, 1][0])
    for side_a in (0, 1):
        for side_b in (0, 1):
            at = np.nonzero(corner & faces[a, side_a][0] & faces[b, side_b][0])
            _outer_corner(made, at, (side_a, side_b), a, b, factors)


def _plate_end(made: Cut, at, plate: tuple[int, int], a: int, b: int, factors: list[np.ndarray]) -> None:
    """A plate made of a face of one axis ends: correct the face ahead, and one on either side."""
    axis, side = plate
    along = b if axis == a else a
    width = made.grid.widths
    ahead, behind = width[along][at[along] + 1 - side], width[along][at[along] + side]
    heights = [width[axis][at[axis] + s] for s in (0, 1)]
    rise = sum(_half_power(ahead / 2, height / 2) for height in heights)
    ratio = np.sqrt(ahead) * (heights[0] + heights[1]) / 2 / (ahead * rise)
    _raise(factors[axis], at, along, 1 - side, ratio)
    for s, height in enumerate(heights):
        fall = _half_power(-behind / 2, height / 2) - _half_power(ahead / 2, height / 2)
        ratio = np.sqrt(height / 2) * (ahead + behind) / 2 / (height * fall)
        _raise(factors[along], at, axis, s, ratio)


def _outer_corner(made: Cut, at, sides: tuple[int, int], a: int, b: int, factors: list[np.ndarray]) -> None:
    """Two faces form a corner; the air round its outside has three quarters of a turn."""
    for axis, other, own, across in ((a, b, sides[0], sides[1]), (b, a, sides[1], sides[0])):
        near = made.grid.widths[axis][at[axis] + across]  # over the body's side
        far = made.grid.widths[axis][at[axis] + 1 - across]  # past the corner
        height = made.grid.widths[other][at[other] + 1 - own]
        first = _two_thirds(np.hypot(near, height) / 2, np.arctan2(height, near))
        second = _two_thirds(np.hypot(far, height) / 2, np.pi - np.arctan2(height, far))
        ratio = (height ** (2 / 3) * np.sin(np.pi / 3)) * (near + far) / 2 / (height * (first - second))
        _raise(factors[axis], at, other, 1 - own, ratio)


def _raise(factor: np.ndarray, at, across: int, side: int, ratio: np.ndarray) -> None:
    """Multiply the factor of the face on one side of each edge."""
    index = list(at)
    index[across] = index[across] + side
    factor[tuple(index)] *= ratio


def _half_power(x: np.ndarray, y: np.ndarray) -> np.ndarray:
    """r^(1/2) sin(angle / 2) round the end of a plate that lies on the negative axis."""
    return np.sqrt((np.hypot(x, y) - x) / 2)


def _two_thirds(r: np.ndarray, angle: np.ndarray) -> np.ndarray:
    """r^(2/3) cos(2 angle / 3) round a corner, the angle counted from its side."""
    return r ** (2 / 3) * np.cos(2 * angle / 3)
