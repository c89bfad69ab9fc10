"""Newton's method on a tree of branches in one sweep up and one down: as many operations as there are branches.

Branch i leads from node i to the node `parent[i]`; a branch comes before the one it leads to, the last is the root.
Going up, all that lies before a node becomes p = alpha - beta m. A junction's slopes are a diagonal and one row, so
its small system has a closed answer. Going down, the flows follow.
"""

from hoodwright.kernels.branch_loss import CURVES, FAST, net_loss
from hoodwright.kernels.junction_loss import own_loss, shared_loss
from hoodwright.kernels.lazy import kernel

__all__ = ["tree_newton"]

LEAST_SLOPE, LEAST_PIVOT = 1e-9, 0.05
HALF, SHORTEST, GROWING = 0.5, 0.25, 0.9
TREE = "int64[::1], int64[::1], float64[::1], int64[::1], float64[::1], float64[::1], float64[:,::1]"
WORK = "float64[:,::1]"


@kernel(f"void({TREE}, int64, float64[::1], {WORK}, {WORK})", **FAST)
def _fold(first_child, child, leaf, kind, own, cosine, laws, k, m, work, rows):
    """All that lies before node k as p = alpha - beta m (work 2 and 3); flows of its children as u - w p (4 and 5)."""
    start, stop = first_child[k], first_child[k + 1]
    if start == stop:
        work[k, 2], work[k, 3] = leaf[k], 0.0
        return
    shared = shared_loss(kind[k], laws, cosine, k, child, start, stop, m, rows[0])
    held = 0.0
    for q in range(start, stop):
        held += rows[0, child[q]] * m[child[q]]
    row = 0.0
    for q in range(start, stop):
        c = child[q]
        lost, steep = own_loss(laws, own, c, m[c])
        work[c, 5] = 1 / max(work[c, 3] + work[c, 1] + steep, LEAST_SLOPE)
        work[c, 4] = work[c, 2] - work[c, 0] + work[c, 1] * m[c] - lost + steep * m[c] - shared + held
        row += rows[0, c] * work[c, 5]
    stiffer = max(row / (LEAST_PIVOT - 1), 1.0)  # where a step would run away: shorter, to the same end
    pivot, whole, drive, pull = 1 + row / stiffer, 0.0, 0.0, 0.0
    for q in range(start, stop):
        c = child[q]
        if stiffer > 1:
            work[c, 4] += (stiffer - 1) * m[c] / work[c, 5]
            work[c, 5] /= stiffer
        work[c, 4] *= work[c, 5]
        whole, drive, pull = whole + work[c, 5], drive + work[c, 4], pull + rows[0, c] * work[c, 4]
    less, share = pull / pivot, 1 / pivot
    for q in range(start, stop):
        c = child[q]
        work[c, 4], work[c, 5] = work[c, 4] - work[c, 5] * less, work[c, 5] * share
    work[k, 3] = pivot / whole
    work[k, 2] = (drive - whole * less) * work[k, 3]


@kernel(f"void(int64[::1], int64[::1], int64, float64[::1], float64[::1], {WORK})", **FAST)
def _unfold(first_child, child, k, m, p, work):
    """Pressure at node k, and the flows of the branches that lead to it."""
    p[k] = work[k, 2] - work[k, 3] * m[k]
    for q in range(first_child[k], first_child[k + 1]):
        c = child[q]
        m[c] = work[c, 4] - work[c, 5] * p[k]


@kernel("float64(float64[:,::1], float64[::1], float64[::1])", **FAST)
def _moved(laws, m, before):
    """Greatest change of a velocity."""
    most = 0.0
    for i in range(len(m)):
        most = max(most, abs(m[i] - before[i]) / (laws[i, 0] * laws[i, 2]))
    return most


@kernel(
    f"int64({TREE}, {CURVES}, boolean, float64, float64, int64, float64[::1], float64[::1], {WORK}, {WORK})", **FAST
)
def tree_newton(
    first_child,
    child,
    leaf,
    kind,
    own,
    cosine,
    laws,
    first,
    fan,
    cubics,
    ends,
    imposed,
    root,
    settled,
    most,
    m,
    p,
    work,
    rows,
):
    """Flows m (kg/s, in: start, out: answer) and total pressures p at the start of each branch.

    `root` is the pressure at the end of the last branch, or its flow where that is `imposed`. Stops when no velocity
    moves more than `settled` (m/s). Returns the steps, or minus the steps where `most` were not enough.
    work (branches, 6): loss, slope, alpha, beta, u, w. rows (3, branches): row, flows before, x of friction.
    """
    last, share, before = len(m) - 1, 1.0, 1e300
    for i in range(len(m)):
        rows[2, i] = 0.0
    for step in range(most):
        for i in range(len(m)):
            work[i, 0], work[i, 1], rows[2, i] = net_loss(laws, first, fan, cubics, ends, i, m[i], rows[2, i])
            rows[1, i] = m[i]
        for k in range(len(m)):
            _fold(first_child, child, leaf, kind, own, cosine, laws, k, m, work, rows)
        slope = work[last, 3] + work[last, 1]
        m[last] = root if imposed else (work[last, 2] - work[last, 0] + work[last, 1] * m[last] - root) / slope
        for k in range(last, -1, -1):
            _unfold(first_child, child, k, m, p, work)
        moved = _moved(laws, m, rows[1])
        if moved < settled:
            return step + 1
        share = max(SHORTEST, HALF * share) if step > 0 and moved > GROWING * before else min(1.0, 2 * share)
        before = moved
        if share < 1:
            for i in range(len(m)):
                m[i] = rows[1, i] + share * (m[i] - rows[1, i])
    return -most
