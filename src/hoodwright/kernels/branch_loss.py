"""Pressure lost along a branch, with its slope: friction, a loss in velocity pressures, a power law, less a fan.

Columns of `laws`: 0 density, 1 viscosity, 2 area, 3 hydraulic diameter, 4 length, 5 roughness, 6 loss in velocity
pressures, 7 and 8 coefficient and exponent of a |Q|^n, 9 head (Pa, drives the flow on). `prepare` fills what follows
from them: 10 Reynolds number, 11 friction over the factor, 12 velocity pressure, all of a flow of 1 kg/s, 13 a flow at
a crawl, 14 roughness as Colebrook has it.
Fans: `fan` numbers each branch's curve, or -1; curve c is the cubics `first[c]` to `first[c + 1]`, each a row of
start (m3/s) and four coefficients (Pa); `ends[c]` is where its last cubic ends.
"""

import math

from hoodwright.kernels.lazy import kernel

__all__ = ["CURVES", "factor", "losses", "net_loss", "prepare", "signed_square"]

FAST = {"_nrt": False}
CURVES = "int64[::1], int64[::1], float64[:,::1], float64[::1]"
LAMINAR_END, TURBULENT_START = 2000.0, 4000.0
CREEPING = 0.02  # m/s: below it a square of the flow is rounded off, so that its slope is not 0 at rest
LEAST_FLOW = 1e-4  # m3/s: the same for power laws
TWO_LOGS = 2 / math.log(10.0)
USUAL = 7.0  # 1/sqrt(f) to start from


@kernel("void(float64[:,::1])", **FAST)
def prepare(laws):
    """Fill the columns that follow from the others."""
    for i in range(len(laws)):
        rho, area, d = laws[i, 0], laws[i, 2], laws[i, 3]
        laws[i, 10] = d / (laws[i, 1] * area)
        laws[i, 12] = 1 / (2 * rho * area * area)
        laws[i, 11] = laws[i, 4] / d * laws[i, 12]
        laws[i, 13] = CREEPING * rho * area
        laws[i, 14] = laws[i, 5] / (3.7 * d)


@kernel("float64(float64, float64, float64)", **FAST)
def _nearer(thin, wall, x):
    """One step of Halley's method for x = 1/sqrt(f) by Colebrook."""
    inner = wall + thin * x
    miss, share = x + TWO_LOGS * math.log(inner), thin / inner
    slope, bend = 1 + TWO_LOGS * share, -TWO_LOGS * share * share
    return x - 2 * miss * slope / (2 * slope * slope - miss * bend)


@kernel("UniTuple(float64, 3)(float64, float64, float64)", **FAST)
def _turbulent(re, wall, near):
    """Darcy's factor by Colebrook, its slope times the Reynolds number, and x = 1/sqrt(f).

    One step from an x that is `near`; where that is 0, as many as it takes.
    """
    thin, x = 2.51 / re, near
    if near == 0:
        x = _nearer(thin, wall, -TWO_LOGS * math.log(wall + thin * USUAL))
    x = _nearer(thin, wall, x)
    part, f = TWO_LOGS * thin / (wall + thin * x), 1 / (x * x)
    return f, -2 * part / (1 + part) * f, x


@kernel("UniTuple(float64, 2)(float64, float64)", **FAST)
def _between(re, wall):
    """Darcy's factor and its slope times the Reynolds number, where the flow is neither laminar nor turbulent."""
    start, width = LAMINAR_END, TURBULENT_START - LAMINAR_END
    f0, s0 = 64 / start, -64 / start * width / start
    f1, s1, _ = _turbulent(TURBULENT_START, wall, 0.0)
    s1 *= width / TURBULENT_START
    t = (re - start) / width
    f = f0 + (f1 - f0) * (3 - 2 * t) * t * t + s0 * t * (1 - t) ** 2 + s1 * t * t * (t - 1)
    slope = (f1 - f0) * 6 * t * (1 - t) + s0 * (1 - t) * (1 - 3 * t) + s1 * t * (3 * t - 2)
    return f, slope * re / width


@kernel("UniTuple(float64, 2)(float64, float64)", **FAST)
def factor(re, e):
    """Darcy's factor and its slope times the Reynolds number; as hoodwright.ducts.friction_factor."""
    if re >= TURBULENT_START:
        f, slope, _ = _turbulent(re, e / 3.7, 0.0)
        return f, slope
    return _between(re, e / 3.7)


@kernel("UniTuple(float64, 3)(float64[:,::1], int64, float64, float64)", **FAST)
def _friction(laws, i, m, near):
    size, scale = abs(m), laws[i, 11]
    re = size * laws[i, 10]
    if re >= TURBULENT_START:
        f, slope, x = _turbulent(re, laws[i, 14], near)
        return scale * f * m * size, scale * size * (2 * f + slope), x
    if re <= LAMINAR_END:
        lost = 64 / laws[i, 10] * scale
        return lost * m, lost, 0.0
    f, slope = _between(re, laws[i, 14])
    return scale * f * m * size, scale * size * (2 * f + slope), 0.0


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


@kernel(f"UniTuple(float64, 3)(float64[:,::1], {CURVES}, int64, float64, float64)", **FAST)
def net_loss(laws, first, fan, cubics, ends, i, m, near):
    """Total pressure lost from start to end of branch i at mass flow m (kg/s), its slope, which is positive, and x.

    x = 1/sqrt(f) of its friction is found from the `near` one of a flow not far off; 0 where there is none.
    """
    lost, slope, x = 0.0, 1e-9, 0.0
    if laws[i, 4] > 0:
        lost, slope, x = _friction(laws, i, m, near)
    if laws[i, 6] != 0:
        square, steep = signed_square(m, laws[i, 13])
        part = laws[i, 6] * laws[i, 12]
        lost, slope = lost + part * square, slope + part * steep
    if laws[i, 7] > 0:
        part, steep = _power(laws, i, m)
        lost, slope = lost + part, slope + steep
    lost -= laws[i, 9]
    if fan[i] >= 0:
        rise, steep = _rise(first, fan, cubics, ends, fan[i], m / laws[i, 0])
        lost, slope = lost - rise, max(slope - steep / laws[i, 0], 0.1 * slope)
    return lost, slope, x


@kernel(f"void(float64[:,::1], {CURVES}, float64[::1], float64[::1], float64[::1])", **FAST)
def losses(laws, first, fan, cubics, ends, m, lost, slope):
    """`net_loss` of every branch."""
    for i in range(len(m)):
        lost[i], slope[i], _ = net_loss(laws, first, fan, cubics, ends, i, m[i], 0.0)
