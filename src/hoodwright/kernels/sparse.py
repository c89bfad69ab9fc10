"""Sparse matrices (compressed rows) on four columns at once, for the rows `first` to `last` of a block.

Blocks may run in threads side by side. Nothing depends on their timing: a sweep takes values of other blocks from
before the sweep. For sweeps a matrix is kept in two parts without its diagonal: what lies below it in the row's own
block, and the rest. So each part of a sweep reads from memory only what it needs.
"""

from hoodwright.kernels.lazy import kernel

__all__ = [
    "advance",
    "multiply",
    "multiply_exact",
    "products",
    "residual",
    "rest_after_down",
    "sweep_down",
    "sweep_up",
    "turn",
]

MATRIX = "int32[::1], int32[::1], float32[::1]"
TABLE = "float32[:,::1]"
EXACT = "float64[:,::1]"
SUMS = "UniTuple(float64, 4)"


@kernel(f"void(int64, int64, {MATRIX}, float32[::1], {TABLE}, {TABLE})", fastmath=True)
def sweep_down(first, last, starts, columns, values, inverse, right, out):
    """Gauss-Seidel from the first row to the last, from nothing, by the lower part; other blocks count as zero."""
    for i in range(first, last):
        s0, s1, s2, s3 = right[i, 0], right[i, 1], right[i, 2], right[i, 3]
        for p in range(starts[i], starts[i + 1]):
            j, w = columns[p], values[p]
            s0 -= w * out[j, 0]
            s1 -= w * out[j, 1]
            s2 -= w * out[j, 2]
            s3 -= w * out[j, 3]
        w = inverse[i]
        out[i, 0], out[i, 1], out[i, 2], out[i, 3] = s0 * w, s1 * w, s2 * w, s3 * w


@kernel(f"void(int64, int64, {MATRIX}, {TABLE}, {TABLE})", fastmath=True)
def rest_after_down(first, last, starts, columns, values, x, out):
    """What `sweep_down` leaves over: out = - (upper part) x, as the rows themselves were met."""
    for i in range(first, last):
        s0, s1, s2, s3 = x[0, 0] * 0, x[0, 0] * 0, x[0, 0] * 0, x[0, 0] * 0
        for p in range(starts[i], starts[i + 1]):
            j, w = columns[p], values[p]
            s0 -= w * x[j, 0]
            s1 -= w * x[j, 1]
            s2 -= w * x[j, 2]
            s3 -= w * x[j, 3]
        out[i, 0], out[i, 1], out[i, 2], out[i, 3] = s0, s1, s2, s3


@kernel(f"void(int64, int64, {MATRIX}, {MATRIX}, float32[::1], {TABLE}, {TABLE}, {TABLE})", fastmath=True)
def sweep_up(
    first, last, starts, columns, values, upper_starts, upper_columns, upper_values, inverse, right, before, out
):
    """Gauss-Seidel from the last row to the first; `before` is `out` before the sweep."""
    for back in range(last - first):
        i = last - 1 - back
        s0, s1, s2, s3 = right[i, 0], right[i, 1], right[i, 2], right[i, 3]
        for p in range(starts[i], starts[i + 1]):
            j, w = columns[p], values[p]
            s0 -= w * out[j, 0]
            s1 -= w * out[j, 1]
            s2 -= w * out[j, 2]
            s3 -= w * out[j, 3]
        for p in range(upper_starts[i], upper_starts[i + 1]):
            j, w = upper_columns[p], upper_values[p]
            if i < j < last:
                s0 -= w * out[j, 0]
                s1 -= w * out[j, 1]
                s2 -= w * out[j, 2]
                s3 -= w * out[j, 3]
            else:
                s0 -= w * before[j, 0]
                s1 -= w * before[j, 1]
                s2 -= w * before[j, 2]
                s3 -= w * before[j, 3]
        w = inverse[i]
        out[i, 0], out[i, 1], out[i, 2], out[i, 3] = s0 * w, s1 * w, s2 * w, s3 * w


@kernel(f"void(int64, int64, {MATRIX}, {MATRIX}, float32[::1], {TABLE}, {TABLE}, {TABLE})", fastmath=True)
def residual(first, last, starts, columns, values, upper_starts, upper_columns, upper_values, inverse, right, x, out):
    """out = right - A x."""
    for i in range(first, last):
        w = 1 / inverse[i]
        s0, s1, s2, s3 = right[i, 0], right[i, 1], right[i, 2], right[i, 3]
        s0, s1, s2, s3 = s0 - w * x[i, 0], s1 - w * x[i, 1], s2 - w * x[i, 2], s3 - w * x[i, 3]
        for p in range(starts[i], starts[i + 1]):
            j, w = columns[p], values[p]
            s0 -= w * x[j, 0]
            s1 -= w * x[j, 1]
            s2 -= w * x[j, 2]
            s3 -= w * x[j, 3]
        for p in range(upper_starts[i], upper_starts[i + 1]):
            j, w = upper_columns[p], upper_values[p]
            s0 -= w * x[j, 0]
            s1 -= w * x[j, 1]
            s2 -= w * x[j, 2]
            s3 -= w * x[j, 3]
        out[i, 0], out[i, 1], out[i, 2], out[i, 3] = s0, s1, s2, s3


@kernel(f"void(int64, int64, {MATRIX}, {TABLE}, {TABLE}, boolean)", fastmath=True)
def multiply(first, last, starts, columns, values, x, out, adding):
    """out = A x, or out + A x."""
    for i in range(first, last):
        s0, s1, s2, s3 = x[0, 0] * 0, x[0, 0] * 0, x[0, 0] * 0, x[0, 0] * 0
        if adding:
            s0, s1, s2, s3 = out[i, 0], out[i, 1], out[i, 2], out[i, 3]
        for p in range(starts[i], starts[i + 1]):
            j, w = columns[p], values[p]
            s0 += w * x[j, 0]
            s1 += w * x[j, 1]
            s2 += w * x[j, 2]
            s3 += w * x[j, 3]
        out[i, 0], out[i, 1], out[i, 2], out[i, 3] = s0, s1, s2, s3


@kernel(f"{SUMS}(int64, int64, int32[::1], int32[::1], float64[::1], {EXACT}, {EXACT})", fastmath=True)
def multiply_exact(first, last, starts, columns, values, x, out):
    """out = A x in double precision; gives x . out of the block."""
    t0, t1, t2, t3 = 0.0, 0.0, 0.0, 0.0
    for i in range(first, last):
        s0, s1, s2, s3 = 0.0, 0.0, 0.0, 0.0
        for p in range(starts[i], starts[i + 1]):
            j, w = columns[p], values[p]
            s0 += w * x[j, 0]
            s1 += w * x[j, 1]
            s2 += w * x[j, 2]
            s3 += w * x[j, 3]
        out[i, 0], out[i, 1], out[i, 2], out[i, 3] = s0, s1, s2, s3
        t0 += s0 * x[i, 0]
        t1 += s1 * x[i, 1]
        t2 += s2 * x[i, 2]
        t3 += s3 * x[i, 3]
    return t0, t1, t2, t3


@kernel(f"{SUMS}(int64, int64, {EXACT}, {TABLE})", fastmath=True)
def products(first, last, x, y):
    """x . y of the block."""
    t0, t1, t2, t3 = 0.0, 0.0, 0.0, 0.0
    for i in range(first, last):
        t0 += x[i, 0] * y[i, 0]
        t1 += x[i, 1] * y[i, 1]
        t2 += x[i, 2] * y[i, 2]
        t3 += x[i, 3] * y[i, 3]
    return t0, t1, t2, t3


@kernel(f"void(int64, int64, float64[::1], {TABLE}, {EXACT})", fastmath=True)
def turn(first, last, share, better, way):
    """way = share x way + better."""
    for i in range(first, last):
        for c in range(4):
            way[i, c] = share[c] * way[i, c] + better[i, c]


@kernel(f"{SUMS}(int64, int64, float64[::1], {EXACT}, {EXACT}, {EXACT}, {EXACT}, {TABLE})", fastmath=True)
def advance(first, last, length, way, image, x, rest, single):
    """x + length x way, rest - length x image, and the rest in single precision; gives rest . rest of the block."""
    t0, t1, t2, t3 = 0.0, 0.0, 0.0, 0.0
    for i in range(first, last):
        for c in range(4):
            x[i, c] += length[c] * way[i, c]
            rest[i, c] -= length[c] * image[i, c]
            single[i, c] = rest[i, c]
        t0 += rest[i, 0] ** 2
        t1 += rest[i, 1] ** 2
        t2 += rest[i, 2] ** 2
        t3 += rest[i, 3] ** 2
    return t0, t1, t2, t3
