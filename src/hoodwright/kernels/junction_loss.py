"""Total pressure lost from each inlet of a junction to its common duct, with slopes.

It is `own_i VP_i + shared`, where `shared` depends on all flows: so its slopes are a diagonal and one row.
Momentum law:   own = 1,     shared = VPc - sum of m_j^2 cos / (rho_j A_j A_c) over what flows in
Tabulated law:  own = 1 + K, shared = -min(VPc, VPr), VPr the mean velocity pressure of what flows in: no regain
A leak brings no velocity pressure: own = 0, cos = 0.
"""

from hoodwright.kernels.branch_loss import FAST, signed_square
from hoodwright.kernels.lazy import kernel

__all__ = ["MOMENTUM", "PLAIN", "TABULATED", "junction_losses", "own_loss", "shared_loss"]

PLAIN, MOMENTUM, TABULATED = 0, 1, 2
NOTHING = 1e-12  # kg/s


@kernel("UniTuple(float64, 2)(float64[:,::1], int64, float64)", **FAST)
def _velocity_pressure(laws, i, m):
    """With the sign of the flow, and its slope."""
    square, steep = signed_square(m, laws[i, 13])
    return laws[i, 12] * square, laws[i, 12] * steep


@kernel("UniTuple(float64, 2)(float64[:,::1], float64[::1], int64, float64)", **FAST)
def own_loss(laws, own, i, m):
    """The part of the loss that depends on the inlet's own flow, and its slope."""
    if own[i] == 0:
        return 0.0, 0.0
    pressure, steep = _velocity_pressure(laws, i, m)
    return own[i] * pressure, own[i] * steep


@kernel(
    "float64(int64, float64[:,::1], float64[::1], int64, int64[::1], int64, int64, float64[::1], float64[::1])", **FAST
)
def shared_loss(kind, laws, cosine, common, inlets, start, stop, m, row):
    """The part common to all inlets; `row` takes its slope by the flow of each inlet."""
    for q in range(start, stop):
        row[inlets[q]] = 0.0
    if kind == PLAIN:
        return 0.0
    total, coming = 0.0, NOTHING
    for q in range(start, stop):
        total += m[inlets[q]]
        coming += max(m[inlets[q]], 0.0)
    pressure, steep = _velocity_pressure(laws, common, total)
    if kind == MOMENTUM:
        wider = 2 / laws[common, 2]
        for q in range(start, stop):
            i = inlets[q]
            part = cosine[i] * max(m[i], 0.0) * laws[i, 12] * laws[i, 2] * wider
            pressure -= part * max(m[i], 0.0)
            row[i] = steep - 2 * part
        return pressure
    mean = 0.0
    for q in range(start, stop):
        i = inlets[q]
        mean += max(m[i], 0.0) ** 3 * laws[i, 12] / coming
    for q in range(start, stop):
        i = inlets[q]
        if pressure < mean:
            row[i] = -steep
        elif m[i] > 0:
            row[i] = -(3 * m[i] ** 2 * laws[i, 12] - mean) / coming
    return -min(pressure, mean)


@kernel(
    "void(int64[::1], int64[::1], int64[::1], int64[::1], float64[:,::1], float64[::1], float64[::1], float64[::1], "
    "float64[::1], float64[::1], float64[::1])",
    **FAST,
)
def junction_losses(first, inlet, common, kind, laws, own, cosine, m, lost, steep, row):
    """Loss behind every branch that enters a junction; its own slope, and its part in the row of its junction."""
    for j in range(len(common)):
        shared = shared_loss(kind[j], laws, cosine, common[j], inlet, first[j], first[j + 1], m, row)
        for q in range(first[j], first[j + 1]):
            i = inlet[q]
            part, steep[i] = own_loss(laws, own, i, m[i])
            lost[i] = part + shared
