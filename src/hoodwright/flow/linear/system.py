"""Finite volumes on a cut grid: the flow out of every air cell is nil.

Unknown is the potential at cell centres, velocity its slope. Flow over an open face is area / distance x difference.
At open sides of the box slope and potential are tied to known outer ones (see `outer`).
"""

from dataclasses import dataclass

import numpy as np
from scipy.sparse import csr_array

from hoodwright.flow.grids.cut import OPEN, Cut, Faces, areas_of, beside
from hoodwright.flow.grids.edges import edge_factors
from hoodwright.flow.grids.grid import above, below, end, inner


@dataclass(frozen=True, eq=False)
class Side:
    """The open faces of one side of the box: velocity outwards = given - pull x potential of the cell."""

    axis: int
    side: int  # 0 low, 1 high
    index: tuple[np.ndarray, np.ndarray, np.ndarray]
    given: np.ndarray  # (faces, bases)
    pull: np.ndarray  # (faces,)


@dataclass(frozen=True, eq=False)
class System:
    """The matrix over air cells and their numbers (-1: not an air cell)."""

    matrix: csr_array
    number: np.ndarray
    through: list[np.ndarray]  # area / distance of open inner faces, per axis


def assemble(made: Cut, sides: list[Side], parts: np.ndarray) -> System:
    """The matrix of a cut grid. With no open side one potential of each connected part is held: only slopes count."""
    number = np.full(made.grid.shape, -1, dtype=np.int32)
    air = ~made.solid
    number[air] = np.arange(np.count_nonzero(air), dtype=np.int32)
    through = [_conductance(made, axis) * factor for axis, factor in enumerate(edge_factors(made))]
    total = np.zeros(made.grid.shape)
    for axis, conductance in enumerate(through):
        total[below(axis)] += conductance
        total[above(axis)] += conductance
    for side in sides:
        total[beside(side.axis, side.index, 1 - side.side)] += side.pull * areas_of(made.grid, side.axis, side.index)
    diagonal = total[air]
    if not sides:
        diagonal[np.unique(parts[air], return_index=True)[1]] *= 2
    return System(_matrix(number, through, diagonal), number, through)


def _matrix(number: np.ndarray, through: list[np.ndarray], diagonal: np.ndarray) -> csr_array:
    """Every open face links the two cells beside it."""
    own = np.arange(len(diagonal), dtype=np.int32)
    rows, columns, values = [own], [own], [diagonal]
    for axis, conductance in enumerate(through):
        on = np.nonzero(conductance)
        a, b, c = number[below(axis)][on], number[above(axis)][on], -conductance[on]
        rows += [a, b]
        columns += [b, a]
        values += [c, c]
    places = np.concatenate(rows), np.concatenate(columns)
    return csr_array((np.concatenate(values), places), shape=(len(own), len(own)))


def right_hand_sides(made: Cut, system: System, prescribed: list[list[Faces]], sides: list[Side]) -> np.ndarray:
    """One column per basis: what prescribed faces and the outer flow bring."""
    grid = made.grid
    right = np.zeros((*grid.shape, len(prescribed)))
    for basis, parts in enumerate(prescribed):
        for part in parts:
            flow = part.velocity * areas_of(grid, part.axis, part.index)
            for side in (0, 1):
                _add(right[..., basis], part, side, flow if side == 0 else -flow, system.number)
    for outer in sides:
        cells = beside(outer.axis, outer.index, 1 - outer.side)
        np.add.at(right, cells, outer.given * areas_of(grid, outer.axis, outer.index)[:, None])
    return right[system.number >= 0]


def face_velocities(
    made: Cut, system: System, solutions: np.ndarray, prescribed: list[list[Faces]], sides: list[Side]
) -> list[np.ndarray]:
    """Velocities on all faces of each axis, (faces..., bases), single precision."""
    grid, bases = made.grid, solutions.shape[1]
    potential = np.zeros((*grid.shape, bases))
    potential[system.number >= 0] = solutions
    found = []
    for axis in range(3):
        velocity = np.zeros((*grid.faces_shape(axis), bases), dtype=np.float32)
        per_area = (system.through[axis] / grid.areas(axis))[..., None]
        velocity[inner(axis)] = (potential[above(axis)] - potential[below(axis)]) * per_area
        for side in (s for s in sides if s.axis == axis):
            cells = potential[beside(axis, side.index, 1 - side.side)]
            outward = side.given - side.pull[:, None] * cells
            velocity[side.index] = outward if side.side == 1 else -outward
        for basis, parts in enumerate(prescribed):
            for part in (p for p in parts if p.axis == axis):
                velocity[(*part.index, basis)] = part.velocity
        found.append(velocity)
    return found


def open_sides(made: Cut) -> list[tuple[int, int, tuple[np.ndarray, np.ndarray, np.ndarray]]]:
    """Axis, side and index of the open outer faces of air cells."""
    found = []
    for axis, code in enumerate(made.codes):
        for side in (0, 1):
            on = (code[end(axis, side)] == OPEN) & ~made.solid[end(axis, side)]
            index = list(np.nonzero(on))
            index[axis] = index[axis] + side * made.grid.shape[axis]
            if len(index[0]):
                found.append((axis, side, (index[0], index[1], index[2])))
    return found


def _conductance(made: Cut, axis: int) -> np.ndarray:
    grid = made.grid
    distance = grid.gaps(axis)[1:-1].reshape([-1 if a == axis else 1 for a in range(3)])
    return np.where(made.codes[axis][inner(axis)] == OPEN, grid.areas(axis) / distance, 0.0)


def _add(column: np.ndarray, part: Faces, side: int, flow: np.ndarray, number: np.ndarray) -> None:
    """Add the flow out of the cells on one side of faces, where there is an air cell."""
    inside = (part.index[part.axis] - 1 >= 0) if side == 0 else (part.index[part.axis] < column.shape[part.axis])
    cells = tuple(index[inside] for index in beside(part.axis, part.index, side))
    air = number[cells] >= 0
    np.add.at(column, tuple(index[air] for index in cells), flow[inside][air])
