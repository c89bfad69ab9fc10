"""Algebraic multigrid as the preconditioner of conjugate gradients, for four right-hand sides at a time.

The coarse levels come from pyamg's classical set-up, once per matrix. A V-cycle runs in single precision, the
conjugate gradients in double. Rows are cut into a fixed number of blocks, so the answer does not depend on threads.
"""

import os
import warnings
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass
from itertools import pairwise

import numpy as np

from hoodwright.errors import NoSolution
from hoodwright.kernels.sparse import (
    advance,
    multiply,
    multiply_exact,
    products,
    residual,
    rest_after_down,
    sweep_down,
    sweep_up,
    turn,
)

COLUMNS = 4  # right-hand sides in one batch; the kernels are written for it
BLOCKS = 4  # of rows, on levels of more than SMALL rows
SMALL = 4000
COARSEST = 300
MOST_STEPS = 60
TWICE = 4  # the level whose correction is made twice: steps then hardly grow with the cells, at a twentieth more work


@dataclass(frozen=True)
class Settled:
    """Solutions as columns, the greatest relative residual, and the steps it took."""

    solutions: np.ndarray
    residual: float
    steps: int


class _Level:
    """One level: its matrix, the way down and up, and room for the cycle."""

    def __init__(self, level, last: bool):
        matrix = level.A.tocsr()
        matrix.sort_indices()
        self.rows = matrix.shape[0]
        self.lower, self.upper = _halves(matrix)
        self.inverse = (1 / matrix.diagonal()).astype(np.float32)
        self.up = None if last else _single(level.P.tocsr())
        self.down = None if last else _single(level.P.T.tocsr())
        self.exact = np.linalg.inv(matrix.toarray()).astype(np.float32) if last else None
        room = (self.rows, COLUMNS)
        self.x, self.before, self.rest, self.right = (np.zeros(room, np.float32) for _ in range(4))


class Multigrid:
    """The set-up for one symmetric positive definite matrix (compressed rows)."""

    def __init__(self, matrix):
        from pyamg import ruge_stuben_solver  # late: it takes half a second

        with warnings.catch_warnings():
            warnings.simplefilter("ignore")
            made = ruge_stuben_solver(matrix, max_coarse=COARSEST, CF="RS")
        self.levels = [_Level(level, last=level is made.levels[-1]) for level in made.levels]
        self.matrix = (matrix.indptr.astype(np.int32), matrix.indices.astype(np.int32), matrix.data.astype(float))
        self.rows = matrix.shape[0]

    def solve(self, right: np.ndarray, tolerance: float, each: Callable[[float], None] = lambda _: None) -> Settled:
        """Solve for every column of `right`; `each` is told the fraction done and may raise to stop."""
        columns = right.shape[1]
        batches = range(0, columns, COLUMNS)
        found = np.zeros(right.shape)
        worst, steps = 0.0, 0
        with ThreadPoolExecutor(max_workers=min(BLOCKS, _processors())) as pool:
            for first in batches:
                part = slice(first, min(first + COLUMNS, columns))
                padded = np.zeros((self.rows, COLUMNS))
                padded[:, : part.stop - first] = right[:, part]
                each(first / columns)
                solved = self._batch(padded, tolerance, pool, lambda: each(first / columns))  # noqa: B023
                found[:, part] = solved.solutions[:, : part.stop - first]
                worst, steps = max(worst, solved.residual), max(steps, solved.steps)
        return Settled(found, worst, steps)

    def _batch(self, right: np.ndarray, tolerance: float, pool: ThreadPoolExecutor, check: Callable[[], None]):
        size = np.linalg.norm(right, axis=0)
        size[size == 0] = 1.0
        rest = right / size
        single = rest.astype(np.float32)
        x, way, image = np.zeros_like(rest), np.zeros_like(rest), np.empty_like(rest)
        before = np.ones(COLUMNS)
        for step in range(1, MOST_STEPS + 1):
            check()
            better = self._cycle(0, single, pool)
            product = _sum(pool, products, self.rows, rest, better)
            _spread(pool, turn, self.rows, product / before, better, way)
            before = np.where(product == 0, 1.0, product)
            bent = _sum(pool, multiply_exact, self.rows, *self.matrix, way, image)
            length = product / np.where(bent == 0, 1.0, bent)
            squares = _sum(pool, advance, self.rows, length, way, image, x, rest, single)
            worst = float(np.sqrt(np.max(squares)))
            if worst < tolerance:
                return Settled(x * size, worst, step)
        raise NoSolution(
            f"the air flow did not settle: residual {worst:.1e} after {MOST_STEPS} steps, not {tolerance:g}"
        )

    def _cycle(self, depth: int, right: np.ndarray, pool: ThreadPoolExecutor) -> np.ndarray:
        level = self.levels[depth]
        if level.exact is not None:
            return level.exact @ right
        coarse, x = self.levels[depth + 1], level.x
        _spread(pool, sweep_down, level.rows, *level.lower, level.inverse, right, x)
        _spread(pool, rest_after_down, level.rows, *level.upper, x, level.rest)
        _spread(pool, multiply, coarse.rows, *level.down, level.rest, coarse.right, False)
        correction = self._correction(depth + 1, coarse.right, pool)
        _spread(pool, multiply, level.rows, *level.up, correction, x, True)
        level.before[:] = x
        _spread(pool, sweep_up, level.rows, *level.lower, *level.upper, level.inverse, right, level.before, x)
        return x

    def _correction(self, depth: int, right: np.ndarray, pool: ThreadPoolExecutor) -> np.ndarray:
        """One cycle from a level down; on the level TWICE a second one on what the first leaves over."""
        level = self.levels[depth]
        first = self._cycle(depth, right, pool)
        if depth != TWICE or level.exact is not None:
            return first
        first, rest = first.copy(), np.empty_like(first)
        _spread(pool, residual, level.rows, *level.lower, *level.upper, level.inverse, right, first, rest)
        return first + self._cycle(depth, rest, pool)


def _cuts(rows: int) -> list[int]:
    """Where rows are cut into blocks; few rows are one block."""
    return [0, rows] if rows <= SMALL else [rows * part // BLOCKS for part in range(BLOCKS + 1)]


def _halves(matrix) -> tuple[tuple, tuple]:
    """What lies below the diagonal within the block of each row, and the rest without the diagonal."""
    cuts = np.array(_cuts(matrix.shape[0]))
    start = np.repeat(cuts[:-1], np.diff(cuts)).astype(matrix.indices.dtype)  # of the block of each row
    row = np.repeat(np.arange(matrix.shape[0], dtype=matrix.indices.dtype), np.diff(matrix.indptr))
    below = (matrix.indices < row) & (matrix.indices >= start[row])
    return _kept(matrix, row, below), _kept(matrix, row, ~below & (matrix.indices != row))


def _kept(matrix, row: np.ndarray, on: np.ndarray) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    """Some entries of a matrix, as compressed rows in single precision."""
    starts = np.zeros(matrix.shape[0] + 1, np.int32)
    np.cumsum(np.bincount(row[on], minlength=matrix.shape[0]), out=starts[1:])
    return starts, matrix.indices[on].astype(np.int32), matrix.data[on].astype(np.float32)


def _spread(pool: ThreadPoolExecutor, kernel, rows: int, *arguments) -> list:
    """A kernel over all rows, in blocks side by side when there are many; what it gives for each block."""
    cuts = _cuts(rows)
    if len(cuts) == 2:
        return [kernel(0, rows, *arguments)]
    waiting = [pool.submit(kernel, a, b, *arguments) for a, b in pairwise(cuts)]
    return [done.result() for done in waiting]


def _sum(pool: ThreadPoolExecutor, kernel, rows: int, *arguments) -> np.ndarray:
    """The sums of a kernel over all blocks."""
    return np.sum(_spread(pool, kernel, rows, *arguments), axis=0)


def _single(matrix) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    return matrix.indptr.astype(np.int32), matrix.indices.astype(np.int32), matrix.data.astype(np.float32)


def _processors() -> int:
    return len(os.sched_getaffinity(0)) if hasattr(os, "sched_getaffinity") else os.cpu_count() or 1


__all__ = ["Multigrid", "Settled"]
