"""Pressure lost along a branch, with its slope: friction, a loss in velocity pressures, a power law, less a fan.

Columns of `laws`: 0 density, 1 viscosity, 2 area, 3 hydraulic diameter, 4 length, 5 roughness, 6 loss in velocity
pressures, 7 and 8 coefficient and exponent of a |Q|^n, 9 head (Pa, drives the flow on).
Fans: `fan` numbers each branch's curve, or -1; curve c is the cubics `first[c]` to `first[c + 1]`, each a row of
start (m3/s) and four coefficients (Pa); `ends[c]` is where its last cubic ends.
"""

import math

from hoodwright.kernels.lazy import kernel

__all__ = ["CURVES", "factor", "losses", "net_loss", "signed_square"]

FAST = {"_nrt": False}
CURVES = "int64[::1], int64[::1], float64[:,::1], float64[::1]"
LAMINAR_END, TURBULENT_START = 2000.0, 4000.0
CREEPING = 0.02  # m/s: below it a square of the flow is rounded off, so that its slope is not 0 at rest
LEAST_FLOW = 1e-4  # m3/s: the same for power laws
LN10 = math.log(10.0)


@kernel("UniTuple(float64, 2)(float64, float64)", **FAST)
def _turbulent(re, e):
    """Darcy's factor by Colebrook, and its slope times the Reynolds number."""
    x = -1.8 * math.log10((e / 3.7) ** 1.11 + 6.9 / re)
    for _ in range(3):
        wall = e / 3.7 + 2.51 * x / re
        x -= (x + 2 * math.log10(wall)) / (1 + 2 * 2.51 / (LN10 * re * wall))
    part = 2 * 2.51 / (LN10 * re * (e / 3.7 + 2.51 * x / re))
    return 1 / (x * x), -2 * part / (1 + part) / (x * x)


@kernel("UniTuple(float64, 2)(float64, float64)", **FAST)
def factor(re, e):
    """Darcy's factor and its slope times the Reynolds number; as hoodwright.ducts.friction_factor."""
    if re >= TURBULENT_START:
        return _turbulent(re, e)
    start, width = LAMINAR_END, TURBULENT_START - LAMINAR_END
    f0, s0 = 64 / start, -64 / start * width / start
    f1, s1 = _turbulent(TURBULENT_START, e)
    s1 *= width / TURBULENT_START
    t = (re - start) / width
    f = f0 + (f1 - f0) * (3 - 2 * t) * t * t + s0 * t * (1 - t) ** 2 + s1 * t * t * (t - 1)
    slope = (f1 - f0) * 6 * t * (1 - t) + s0 * (1 - t) * (1 - 3 * t) + s1 * t * (3 * t - 2)
    return f, slope * re / width


@kernel("UniTuple(float64, 2)(float64[:,::1], int64, float64)", **FAST)
def _friction(laws, i, m):
    mu, area, d = laws[i, 1], laws[i, 2], laws[i, 3]
    scale = laws[i, 4] / (d * 2 * laws[i, 0] * area * area)
    re = abs(m) * d / (mu * area)
    if re <= LAMINAR_END:
        lost = 64 * mu * area / d * scale
        return lost * m, lost
    f, slope = factor(re, laws[i, 5] / d)
    return scale * f * m * abs(m), scale * abs(m) * (2 * f + slope)


@kernel("UniTuple(float64, 2)(float64, float64)", **FAST)
def signed_square(m, small):
    """m |m| and its slope, rounded off below `small`."""
    root = math.sqrt(m * m + small * small)
    return m * root, root + m * m / root


@kernel("UniTuple(float64, 2)(float64[:,::1], int64, float64)", **FAST)
def _power(laws, i, m):
    """a Q |Q|^(n-1) and its slope by mass flow."""
    flow, n = m / laws[i, 0], laws[i, 8]
    root = math.sqrt(flow * flow + LEAST_FLOW * LEAST_FLOW)
    part = root ** (n - 1)
    return laws[i, 7] * flow * part, laws[i, 7] * (part + (n - 1) * flow * flow * root ** (n - 3)) / laws[i, 0]


@kernel(f"UniTuple(float64, 2)({CURVES}, int64, float64)", **FAST)
def _rise(first, _fan, cubics, ends, c, flow):
    """Pressure rise of a fan and its slope by flow; straight on beyond both ends of its curve."""
    row, last = first[c], first[c + 1] - 1
    while row < last and flow >= cubics[row + 1, 0]:
        row += 1
    t = min(max(flow, cubics[row, 0]), ends[c]) - cubics[row, 0]
    a, b, g, d = cubics[row, 1], cubics[row, 2], cubics[row, 3], cubics[row, 4]
    slope = b + t * (2 * g + t * 3 * d)
    return a + t * (b + t * (g + t * d)) + slope * (flow - cubics[row, 0] - t), slope


@kernel(f"UniTuple(float64, 2)(float64[:,::1], {CURVES}, int64, float64)", **FAST)
def net_loss(laws, first, fan, cubics, ends, i, m):
    """Total pressure lost from start to end of branch i at mass flow m (kg/s), and its slope, which is positive."""
    lost, slope = 0.0, 1e-9
    if laws[i, 4] > 0:
        lost, slope = _friction(laws, i, m)
    if laws[i, 6] != 0:
        square, steep = signed_square(m, CREEPING * laws[i, 0] * laws[i, 2])
        part = laws[i, 6] / (2 * laws[i, 0] * laws[i, 2] * laws[i, 2])
        lost, slope = lost + part * square, slope + part * steep
    if laws[i, 7] > 0:
        part, steep = _power(laws, i, m)
        lost, slope = lost + part, slope + steep
    lost -= laws[i, 9]
    if fan[i] >= 0:
        rise, steep = _rise(first, fan, cubics, ends, fan[i], m / laws[i, 0])
        lost, slope = lost - rise, max(slope - steep / laws[i, 0], 0.1 * slope)
    return lost, slope


@kernel(f"void(float64[:,::1], {CURVES}, float64[::1], float64[::1], float64[::1])", **FAST)
def losses(laws, first, fan, cubics, ends, m, lost, slope):
    """`net_loss` of every branch."""
    for i in range(len(m)):
        lost[i], slope[i] = net_loss(laws, first, fan, cubics, ends, i, m[i])
