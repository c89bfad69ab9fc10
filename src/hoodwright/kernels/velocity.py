"""Air velocity at a point, between the face velocities of a grid, without looking through plates."""

from hoodwright.kernels.lazy import kernel

__all__ = ["FLOW", "cell_of", "velocities", "velocity_at"]

LINES = "float64[::1], float64[::1], float64[::1], int32[::1], int32[::1], int32[::1]"
FACES = "float32[:,:,:,::1]"
FLOW = (
    f"Tuple(({LINES}, {FACES}, {FACES}, {FACES}, uint8[:,:,::1], uint8[:,:,::1], uint8[:,:,::1], "
    "int8[:,:,::1], int8[:,:,::1], int8[:,:,::1], uint8[:,:,::1]))"
)
FAST = {"fastmath": True, "_nrt": False}  # no counting of references: half of the time went there


@kernel("int64(float64[::1], int32[::1], float64)", **FAST)
def cell_of(lines, look, place):
    """The cell that holds a place; outside, the nearest one."""
    bins = len(look)
    t = int((place - lines[0]) / (lines[-1] - lines[0]) * bins)
    i = look[min(max(t, 0), bins - 1)]
    most = len(lines) - 2
    while i < most and place >= lines[i + 1]:
        i += 1
    while i > 0 and place < lines[i]:
        i -= 1
    return i


@kernel("Tuple((float64, int64, float64))(float64[::1], int64, float64)", **FAST)
def _towards(lines, i, place):
    """Where a place lies in its cell (0 to 1), on which side the neighbour is, and its share of the mean."""
    width = lines[i + 1] - lines[i]
    a = min(max((place - lines[i]) / width, 0.0), 1.0)
    side = 1 if a > 0.5 else -1
    j = i + side
    if j < 0 or j > len(lines) - 2:
        return a, 0, 0.0
    return a, side, abs(a - 0.5) * width / (0.5 * (width + lines[j + 1] - lines[j]))


@kernel("float64(float32[:,:,:,::1], float32[::1], int64, int64, int64)", **FAST)
def _sum(u, weights, i, j, k):
    total = 0.0
    for n in range(len(weights)):
        total += weights[n] * u[i, j, k, n]
    return total


@kernel(
    "float64(float32[:,:,:,::1], uint8[:,:,::1], float32[::1], int64, int64, int64, int64, int64, int64, "
    "float64, float64)",
    fastmath=True,
    _nrt=False,
)
def _on_face(u, reach, weights, axis, i, j, k, first, second, share, other):
    """Velocity in the plane of one face, drawn towards the neighbours that are not behind a plate."""
    bits = reach[i, j, k]
    f = 1 if first > 0 else 0
    s = 1 if second > 0 else 0
    near_first = first != 0 and share > 0 and (bits >> f) & 1
    near_second = second != 0 and other > 0 and (bits >> (2 + s)) & 1
    fi, fj, fk = (0, first, 0) if axis == 0 else (first, 0, 0)
    si, sj, sk = (0, second, 0) if axis == 2 else (0, 0, second)
    own = _sum(u, weights, i, j, k)
    by_first = _sum(u, weights, i + fi, j + fj, k + fk) if near_first else own
    by_second = _sum(u, weights, i + si, j + sj, k + sk) if near_second else own
    if near_first and near_second and (bits >> (4 + 2 * f + s)) & 1:
        both = _sum(u, weights, i + fi + si, j + fj + sj, k + fk + sk)
    else:
        both = by_first + by_second - own if not (near_first and near_second) else 0.5 * (by_first + by_second)
    return (1 - other) * ((1 - share) * own + share * by_first) + other * ((1 - share) * by_second + share * both)


@kernel(f"UniTuple(float64, 3)({FLOW}, float32[::1], float64, float64, float64)", **FAST)
def velocity_at(arrays, weights, px, py, pz):
    """Velocity at a point: along its own axis linear between the two faces of the cell, across by the neighbours."""
    x, y, z = arrays[0], arrays[1], arrays[2]
    i, j, k = cell_of(x, arrays[3], px), cell_of(y, arrays[4], py), cell_of(z, arrays[5], pz)
    a, di, wx = _towards(x, i, px)
    b, dj, wy = _towards(y, j, py)
    c, dk, wz = _towards(z, k, pz)
    u, v, w = arrays[6], arrays[7], arrays[8]
    ru, rv, rw = arrays[9], arrays[10], arrays[11]
    low = _on_face(u, ru, weights, 0, i, j, k, dj, dk, wy, wz)
    high = _on_face(u, ru, weights, 0, i + 1, j, k, dj, dk, wy, wz)
    along = (1 - a) * low + a * high
    low = _on_face(v, rv, weights, 1, i, j, k, di, dk, wx, wz)
    high = _on_face(v, rv, weights, 1, i, j + 1, k, di, dk, wx, wz)
    across = (1 - b) * low + b * high
    low = _on_face(w, rw, weights, 2, i, j, k, di, dj, wx, wy)
    high = _on_face(w, rw, weights, 2, i, j, k + 1, di, dj, wx, wy)
    return along, across, (1 - c) * low + c * high


@kernel(f"void({FLOW}, float32[::1], float64[:,::1], float64[:,::1])", **FAST)
def velocities(arrays, weights, points, out):
    """Velocity at every row of `points`."""
    for n in range(len(points)):
        out[n, 0], out[n, 1], out[n, 2] = velocity_at(arrays, weights, points[n, 0], points[n, 1], points[n, 2])
