"""A rectilinear grid: three sets of lines, and the cells and faces between them."""

from dataclasses import dataclass
from functools import cached_property

import numpy as np


@dataclass(frozen=True, eq=False)
class Grid:
    """Cells between three sets of lines. Faces of axis a lie on its lines; there is one more than cells."""

    lines: tuple[np.ndarray, np.ndarray, np.ndarray]

    @cached_property
    def shape(self) -> tuple[int, int, int]:
        """Cells along each axis."""
        x, y, z = (len(line) - 1 for line in self.lines)
        return x, y, z

    @property
    def cells(self) -> int:
        """Number of cells."""
        return int(np.prod(self.shape))

    @cached_property
    def widths(self) -> list[np.ndarray]:
        """Cell widths along each axis."""
        return [np.diff(line) for line in self.lines]

    @cached_property
    def centres(self) -> list[np.ndarray]:
        """Cell centres along each axis."""
        return [(line[1:] + line[:-1]) / 2 for line in self.lines]

    @property
    def low(self) -> np.ndarray:
        """Low corner."""
        return np.array([line[0] for line in self.lines])

    @property
    def high(self) -> np.ndarray:
        """High corner."""
        return np.array([line[-1] for line in self.lines])

    @property
    def smallest(self) -> float:
        """Narrowest cell width."""
        return min(float(width.min()) for width in self.widths)

    def faces_shape(self, axis: int) -> tuple[int, ...]:
        """Shape of an array over the faces of an axis."""
        return tuple(n + (a == axis) for a, n in enumerate(self.shape))

    def gaps(self, axis: int) -> np.ndarray:
        """Distance over each face between cell centres; half a cell at both ends."""
        c, line = self.centres[axis], self.lines[axis]
        return np.concatenate([[c[0] - line[0]], np.diff(c), [line[-1] - c[-1]]])

    def areas(self, axis: int) -> np.ndarray:
        """Face areas of an axis, in a shape that broadcasts over its faces."""
        others = [self._along(self.widths[a], a) for a in range(3) if a != axis]
        return others[0] * others[1]

    def face_centres(self, axis: int, where: tuple[np.ndarray, ...]) -> np.ndarray:
        """Centres of the faces at the index arrays `where`, shape (n, 3)."""
        parts = [self.lines[a] if a == axis else self.centres[a] for a in range(3)]
        return np.stack([part[index] for part, index in zip(parts, where, strict=True)], axis=-1)

    def cell_centres(self, window: tuple[slice, slice, slice] = (slice(None),) * 3) -> np.ndarray:
        """Centres of the cells of a window, shape (nx, ny, nz, 3)."""
        parts = [c[s] for c, s in zip(self.centres, window, strict=True)]
        return np.stack(np.meshgrid(*parts, indexing="ij"), axis=-1)

    def window(self, corners: np.ndarray) -> tuple[slice, slice, slice]:
        """The cells round a set of points, with two cells to spare."""
        slices = []
        for line, low, high in zip(self.lines, corners.min(axis=0), corners.max(axis=0), strict=True):
            start = max(int(np.searchsorted(line, low)) - 3, 0)
            slices.append(slice(start, min(int(np.searchsorted(line, high)) + 2, len(line) - 1)))
        return slices[0], slices[1], slices[2]

    def cell_at(self, points) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
        """Index arrays of the cells that hold points; those outside go to the nearest cell."""
        points = np.atleast_2d(points)
        found = [
            np.clip(np.searchsorted(line, points[:, a], side="right") - 1, 0, len(line) - 2)
            for a, line in enumerate(self.lines)
        ]
        return found[0], found[1], found[2]

    def holds(self, points) -> np.ndarray:
        """Whether points lie in the box of the grid."""
        points = np.asarray(points, dtype=float)
        return np.all((points >= self.low) & (points <= self.high), axis=-1)

    @staticmethod
    def _along(values: np.ndarray, axis: int) -> np.ndarray:
        return values.reshape([-1 if a == axis else 1 for a in range(3)])


def below(axis: int) -> tuple[slice, ...]:
    """All but the last along an axis: the cells on the low side of inner faces."""
    return tuple(slice(0, -1) if a == axis else slice(None) for a in range(3))


def above(axis: int) -> tuple[slice, ...]:
    """All but the first along an axis: the cells on the high side of inner faces."""
    return tuple(slice(1, None) if a == axis else slice(None) for a in range(3))


def inner(axis: int) -> tuple[slice, ...]:
    """The faces between two cells."""
    return tuple(slice(1, -1) if a == axis else slice(None) for a in range(3))


def end(axis: int, side: int) -> tuple[slice, ...]:
    """The outer faces (or the cells beside them) at the low (0) or high (1) end."""
    return tuple((slice(0, 1), slice(-1, None))[side] if a == axis else slice(None) for a in range(3))
