"""Which neighbour faces lie in the same air as a face: velocities are drawn together only with these."""

import numpy as np

from hoodwright.flow.grids.cut import OPEN, Cut
from hoodwright.flow.grids.grid import above, below, inner


def reaches(made: Cut) -> list[np.ndarray]:
    """Bits per face of each axis: 1, 2 low and high neighbour along the first other axis, 4, 8 along the second,
    16 to 128 the four diagonal ones. A neighbour counts when the faces between them are open on both sides."""
    return [_of_axis(made, axis) for axis in range(3)]


def _of_axis(made: Cut, axis: int) -> np.ndarray:
    first, second = (a for a in range(3) if a != axis)
    straight = [_along(made, axis, first), _along(made, axis, second)]
    bits = np.zeros(made.grid.faces_shape(axis), dtype=np.uint8)
    steps = {}
    for number, (other, clear) in enumerate(zip((first, second), straight, strict=True)):
        for side in (0, 1):
            near = np.zeros(bits.shape, dtype=bool)
            near[above(other) if side == 0 else below(other)] = clear
            steps[number, side] = near
            bits |= near.astype(np.uint8) << (2 * number + side)
    for f in (0, 1):
        for s in (0, 1):
            both = steps[0, f] & _from(steps[1, s], first, f) & steps[1, s] & _from(steps[0, f], second, s)
            bits |= both.astype(np.uint8) << (4 + 2 * f + s)
    return bits


def _along(made: Cut, axis: int, other: int) -> np.ndarray:
    """Whether faces of `axis` and their next along `other` lie in the same air: one fewer along `other`."""
    clear = made.codes[other][inner(other)] == OPEN
    clear |= made.solid[below(other)] & made.solid[above(other)]
    shape = list(clear.shape)
    shape[axis] += 1
    found = np.ones(shape, dtype=bool)
    found[above(axis)] &= clear
    found[below(axis)] &= clear
    return found


def _from(near: np.ndarray, axis: int, side: int) -> np.ndarray:
    """The same question asked from the neighbour along `axis`."""
    moved = np.zeros_like(near)
    if side == 0:
        moved[above(axis)] = near[below(axis)]
    else:
        moved[below(axis)] = near[above(axis)]
    return moved
