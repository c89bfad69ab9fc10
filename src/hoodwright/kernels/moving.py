"""How a point moves through the cells: open faces let it pass, walls throw it back, mouths keep it."""

from hoodwright.kernels.lazy import kernel
from hoodwright.kernels.velocity import FLOW, cell_of

__all__ = ["BOX", "FAST", "OPEN", "WALL", "move"]

FAST = {"fastmath": True, "_nrt": False}  # no memory is taken, so no array is counted on every call

OPEN, WALL, BOX = 1, 0, 2  # a face; below zero: mouth number -(face) - 1. BOX: left through the outside of the grid


@kernel(
    "Tuple((float64, int64, float64, int64))"
    "(int8[:,:,::1], float64[::1], int64, int64, int64, int64, float64, float64)",
    **FAST,
)
def _along(face, lines, axis, i, j, k, place, step):
    """One axis: where a point comes to rest, in which cell, whether it flies back (-1) and what it met."""
    cell = i if axis == 0 else (j if axis == 1 else k)
    target, way = place + step, 1.0
    forward = step > 0
    while True:
        at = cell + 1 if forward else cell
        if (forward and target <= lines[at]) or (not forward and target >= lines[at]):
            return target, cell, way, OPEN
        kind = face[at, j, k] if axis == 0 else (face[i, at, k] if axis == 1 else face[i, j, at])
        if kind < 0:
            return lines[at], cell, way, int(kind)
        if kind == WALL:
            target, way, forward = 2 * lines[at] - target, -way, not forward
        elif at == 0 or at == len(lines) - 1:
            return lines[at], cell, way, BOX
        else:
            cell += 1 if forward else -1


@kernel(
    "Tuple((float64, float64, float64, float64, float64, float64, int64))"
    f"({FLOW}, float64, float64, float64, float64, float64, float64)",
    **FAST,
)
def move(arrays, px, py, pz, dx, dy, dz):
    """A point moved by a step: its place, which parts of its motion were turned round (-1), and what it met."""
    x, y, z, look_x, look_y, look_z = arrays[0], arrays[1], arrays[2], arrays[3], arrays[4], arrays[5]
    i, j, k = cell_of(x, look_x, px), cell_of(y, look_y, py), cell_of(z, look_z, pz)
    px, i, back_x, met = _along(arrays[12], x, 0, i, j, k, px, dx)
    if met != OPEN:
        return px, py, pz, back_x, 1.0, 1.0, met
    py, j, back_y, met = _along(arrays[13], y, 1, i, j, k, py, dy)
    if met != OPEN:
        return px, py, pz, back_x, back_y, 1.0, met
    pz, k, back_z, met = _along(arrays[14], z, 2, i, j, k, pz, dz)
    return px, py, pz, back_x, back_y, back_z, met
