"""Lines along the air: by the rule of the middle, in steps that are a share of the cell they lie in."""

import math

from hoodwright.kernels.lazy import kernel
from hoodwright.kernels.moving import BOX, FAST, OPEN, move
from hoodwright.kernels.velocity import FLOW, cell_of, velocity_at

__all__ = ["BOX", "LONG", "STILL", "WALL", "follow_lines"]

LONG, STILL, WALL = 0, 1, 3  # how a line ends, beside BOX; below zero: at a mouth, -number - 1
MOST_TURNS = 8  # steps in a row that a wall throws back: the line has come to its end


@kernel(f"float64({FLOW}, float64, float64, float64)", **FAST)
def _narrowest(arrays, px, py, pz):
    """The shortest side of the cell that holds a point."""
    x, y, z = arrays[0], arrays[1], arrays[2]
    i, j, k = cell_of(x, arrays[3], px), cell_of(y, arrays[4], py), cell_of(z, arrays[5], pz)
    return min(x[i + 1] - x[i], y[j + 1] - y[j], z[k + 1] - z[k])


@kernel(
    f"Tuple((float64, float64, float64, int64, boolean))({FLOW}, float32[::1], float64, float64, float64, float64, "
    "float64)",
    **FAST,
)
def _step(arrays, weights, px, py, pz, step, slowest):
    """One step along the air (against it: below zero): where it leads, what it met, whether a wall threw it back."""
    u, v, w = velocity_at(arrays, weights, px, py, pz)
    speed = math.sqrt(u * u + v * v + w * w)
    if speed < slowest:
        return px, py, pz, STILL, False
    half = 0.5 * step / speed
    mx, my, mz, bx, by, bz, met = move(arrays, px, py, pz, half * u, half * v, half * w)
    if met == OPEN:
        u, v, w = velocity_at(arrays, weights, mx, my, mz)
        speed = math.sqrt(u * u + v * v + w * w)
        if speed < slowest:
            return mx, my, mz, STILL, False
    whole = step / speed
    px, py, pz, bx, by, bz, met = move(arrays, px, py, pz, whole * u, whole * v, whole * w)
    return px, py, pz, LONG if met == OPEN else met, bx < 0 or by < 0 or bz < 0


@kernel(f"void({FLOW}, float32[::1], float64[:,:,::1], int64, float64, float64, float64, int64)", **FAST)
def _keep(arrays, weights, lines, n, px, py, pz, at):
    """Note a point of line n and the speed there."""
    u, v, w = velocity_at(arrays, weights, px, py, pz)
    lines[n, at, 0], lines[n, at, 1], lines[n, at, 2] = px, py, pz
    lines[n, at, 3] = math.sqrt(u * u + v * v + w * w)


@kernel(f"void({FLOW}, float32[::1], float64[:,::1], float64[::1], float64[:,:,::1], int64[:,::1])", **FAST)
def follow_lines(arrays, weights, starts, laws, lines, ends):
    """Fill `lines` (n, most, 4: place and speed) from each start; `ends` (n, 2): how many points, how it ended.

    laws: 0 step over the cell, below zero against the air, 1 slowest speed, 2 longest way, 3 way between kept points.
    """
    for n in range(len(starts)):
        px, py, pz = starts[n, 0], starts[n, 1], starts[n, 2]
        _keep(arrays, weights, lines, n, px, py, pz, 0)
        count, turns, end = 1, 0, LONG
        run, kept = 0.0, 0.0
        while end == LONG and run < laws[2] and count < lines.shape[1] - 1:
            step = laws[0] * _narrowest(arrays, px, py, pz)
            px, py, pz, end, back = _step(arrays, weights, px, py, pz, step, laws[1])
            run += abs(step)
            turns = turns + 1 if back else 0
            if turns >= MOST_TURNS:
                end = WALL
            if run - kept >= laws[3]:
                _keep(arrays, weights, lines, n, px, py, pz, count)
                count, kept = count + 1, run
        if kept < run:
            _keep(arrays, weights, lines, n, px, py, pz, count)
            count += 1
        ends[n, 0], ends[n, 1] = count, end
