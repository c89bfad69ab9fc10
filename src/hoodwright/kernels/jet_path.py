"""The path of a jet or plume through moving air, by even (top-hat) fluxes of volume, momentum and buoyancy.

Its cross-section is a disc of radius b, perhaps drawn out to a sheet, with one speed w along the path: volume flow
Q = area w, momentum flow Q w. Particles see a round bell of the same area.
"""

import math

from hoodwright.kernels.lazy import kernel
from hoodwright.kernels.moving import FAST, OPEN, move
from hoodwright.kernels.velocity import FLOW, velocity_at

__all__ = ["COLUMNS", "follow_jet"]

# Of a station: 0-2 place, 3 radius of the bell, 4-6 excess on the axis, 7 flow, 8-10 tangent, 11 inflow, 12 spread.
COLUMNS = 13
STEP, SHORTEST, LONGEST = 0.25, 4e-4, 0.05  # in radii; m; m
WEAKEST = 0.02  # m/s: a jet without heat that is no faster than this has ended


@kernel(f"void({FLOW}, float32[::1], float64[::1], float64[::1], boolean, boolean, float64[::1])", **FAST)
def _change(arrays, weights, state, laws, in_core, pressed, out):
    """How place, flow and momentum change along the path.

    out: 0-2 tangent, 3 flow, 4-6 momentum, and what is kept: 7 radius, 8-10 excess, 11 inflow, 12 length over which the
    air around changes, 13-15 the push of its pressure.
    laws: 0-2 entrainment of a jet, of a plume, by side wind, 3 share of the heat's width, 4 buoyancy, 5 whether
    pressure acts, 6 longest path, 7 width by which the disc is drawn out.
    """
    px, py, pz, flow = state[0], state[1], state[2], state[3]
    u, v, w = velocity_at(arrays, weights, px, py, pz)
    mx, my, mz = state[4] / flow, state[5] / flow, state[6] / flow
    speed = math.sqrt(mx * mx + my * my + mz * mz) + 1e-12
    tx, ty, tz = mx / speed, my / speed, mz / speed
    area = flow / speed
    radius = math.sqrt(area / math.pi)
    rim = 2 * (math.sqrt(laws[7] * laws[7] + math.pi * area))  # of a disc drawn out by the width: 2 pi b + 2 width
    ex, ey, ez = mx - u, my - v, mz - w
    along = ex * tx + ey * ty + ez * tz
    square = ex * ex + ey * ey + ez * ez
    across = math.sqrt(max(square - along * along, 0.0))
    plume = 1.6 * math.sqrt(2.0) * laws[1] / laws[3]  # Richardson number at which heat alone keeps a plume going
    richardson = abs(laws[4]) / flow * 2 * area / rim / (square + 1e-12)
    taken = laws[0] + (laws[1] - laws[0]) * min(1.0, richardson / plume)
    if in_core:  # only its rim mixes: half the inflow keeps the axis at the speed of the mouth until the core ends
        taken *= 0.5
    grown = rim * (math.sqrt(2.0) * taken * abs(along) + laws[2] * across)
    out[0], out[1], out[2], out[3] = tx, ty, tz, grown
    out[4], out[5], out[6] = grown * u, grown * v, grown * w + laws[4] * laws[3] / speed
    out[7], out[8], out[9], out[10], out[11], out[12] = radius, ex, ey, ez, taken * rim / (2 * math.pi * radius), 1e9
    out[13], out[14], out[15] = 0.0, 0.0, 0.0
    ambient = math.sqrt(u * u + v * v + w * w)
    if pressed and ambient > 1e-6:  # pressure of the air around: (u . grad) u, along the stream line through here
        h = max(0.5 * radius, 1e-3)
        sx, sy, sz = u / ambient * h, v / ambient * h, w / ambient * h
        u1, v1, w1 = velocity_at(arrays, weights, px + sx, py + sy, pz + sz)
        u0, v0, w0 = velocity_at(arrays, weights, px - sx, py - sy, pz - sz)
        gx, gy, gz = (u1 - u0) / (2 * h), (v1 - v0) / (2 * h), (w1 - w0) / (2 * h)
        push = area * ambient
        out[13], out[14], out[15] = push * gx, push * gy, push * gz
        out[12] = ambient / (math.sqrt(gx * gx + gy * gy + gz * gz) + 1e-12)


@kernel("void(float64[:,::1], int64, float64[::1], float64[::1], float64, float64)", **FAST)
def _note(path, n, state, change, way, core):
    """Write one station: the bell-shaped profile that carries the same momentum; flat in the core at the mouth."""
    peak = 1.0 + (min(1.0, way / core) if core > 0 else 1.0)
    path[n, 0], path[n, 1], path[n, 2] = state[0], state[1], state[2]
    path[n, 3] = math.sqrt(2.0) * change[7] / peak
    path[n, 4], path[n, 5], path[n, 6] = peak * change[8], peak * change[9], peak * change[10]
    path[n, 7] = state[3]
    path[n, 8], path[n, 9], path[n, 10] = change[0], change[1], change[2]
    path[n, 11] = change[11]
    path[n, 12] = 0.0


@kernel(
    f"int64({FLOW}, float32[::1], float64[::1], float64[::1], float64, float64, float64[:,::1], float64[:,::1])", **FAST
)
def follow_jet(arrays, weights, start, laws, core, longest, work, path):
    """Fill `path` with stations and return how many; the path ends at a wall, a mouth, the box or when it is spent.

    start: place, flow, momentum (7 numbers). `core`: length of the core, 0 for a plume. `longest`: of the path.
    `work` (4, 16): room to count in.
    """
    state, middle, change, there = work[0], work[1], work[2], work[3]
    for c in range(7):
        state[c] = start[c]
    pressed = laws[5] > 0
    way, n = 0.0, 0
    while n < len(path) and way < longest:
        _change(arrays, weights, state, laws, way < core, pressed, change)
        _note(path, n, state, change, way, core)
        n += 1
        excess = change[8] * change[8] + change[9] * change[9] + change[10] * change[10]
        if laws[4] == 0.0 and 4 * excess < WEAKEST * WEAKEST:
            break
        step = min(max(min(STEP * change[7], 0.2 * change[12]), SHORTEST), LONGEST)
        for c in range(7):
            middle[c] = state[c] + 0.5 * step * (change[c] + (change[c + 9] if c > 3 else 0.0))
        _change(arrays, weights, middle, laws, way + 0.5 * step < core, False, there)
        moved = move(arrays, state[0], state[1], state[2], step * there[0], step * there[1], step * there[2])
        if moved[6] != OPEN or moved[3] < 0 or moved[4] < 0 or moved[5] < 0:
            break
        state[0], state[1], state[2] = moved[0], moved[1], moved[2]
        for c in range(3, 7):
            state[c] += step * (there[c] + (change[c + 9] if c > 3 else 0.0))
        way += step
    for m in range(1, n):  # how fast the bell widens
        apart = math.sqrt(
            (path[m, 0] - path[m - 1, 0]) ** 2 + (path[m, 1] - path[m - 1, 1]) ** 2 + (path[m, 2] - path[m - 1, 2]) ** 2
        )
        path[m, 12] = max(0.0, min(0.25, (path[m, 3] - path[m - 1, 3]) / (apart + 1e-12)))
    return n
