"""One tree of branches solved many times, each time with other losses, roughness, leaks and fan curves.

Sample s multiplies the roughness of every branch by `rough[s]`, its loss (and what it loses as an inlet by the
tabulated law) by `loss[s, i]`, what leaks in at a pressure by `leak[s]`, and the pressures of curve c by `rise[s, c]`.
"""

from hoodwright.kernels.branch_loss import CURVES, FAST
from hoodwright.kernels.lazy import kernel
from hoodwright.kernels.tree_newton import TREE, tree_newton

__all__ = ["tree_samples"]

ROW, TABLE = "float64[::1]", "float64[:,::1]"


@kernel(f"void({TABLE}, {ROW}, int64[::1], int64, {ROW}, {TABLE}, {ROW}, {TABLE}, {ROW})", **FAST)
def _vary(laws, own, leaking, s, rough, loss, leak, laws_now, own_now):
    """The laws of sample s."""
    for i in range(len(laws)):
        for column in range(laws.shape[1]):
            laws_now[i, column] = laws[i, column]
        for column in (5, 14):
            laws_now[i, column] = laws[i, column] * rough[s]
        laws_now[i, 6] = laws[i, 6] * loss[s, i]
        own_now[i] = own[i] if own[i] == 0 else 1 + (own[i] - 1) * loss[s, i]
        if leaking[i]:
            laws_now[i, 7] = laws[i, 7] * leak[s] ** -laws[i, 8]


@kernel(f"void(int64[::1], {TABLE}, int64, {TABLE}, {TABLE})", **FAST)
def _vary_fans(first, cubics, s, rise, cubics_now):
    """The fan curves of sample s."""
    for c in range(len(first) - 1):
        for row in range(first[c], first[c + 1]):
            cubics_now[row, 0] = cubics[row, 0]
            for column in range(1, 5):
                cubics_now[row, column] = cubics[row, column] * rise[s, c]


@kernel(
    f"int64({TREE}, {CURVES}, float64, float64, int64, int64[::1], {ROW}, {TABLE}, {ROW}, {TABLE}, {ROW}, int64[::1], "
    f"{TABLE}, {TABLE}, {ROW}, {ROW}, {ROW}, {TABLE}, {TABLE}, {TABLE})",
    **FAST,
)
def tree_samples(
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
    root,
    settled,
    most,
    leaking,
    rough,
    loss,
    leak,
    rise,
    start,
    wanted,
    laws_now,
    cubics_now,
    own_now,
    m,
    p,
    work,
    rows,
    found,
):
    """Flow (kg/s) of the `wanted` branches in every sample, into `found`; returns how many samples did not settle.

    Every sample begins at the flows `start`. A sample that did not settle in `most` steps leaves NaN.
    What ends in `now`, m, p, work and rows are room to work in.
    """
    failed = 0
    for s in range(len(rough)):
        _vary(laws, own, leaking, s, rough, loss, leak, laws_now, own_now)
        _vary_fans(first, cubics, s, rise, cubics_now)
        for i in range(len(m)):
            m[i] = start[i]
        steps = tree_newton(
            first_child, child, leaf, kind, own_now, cosine, laws_now, first, fan, cubics_now, ends,
            False, root, settled, most, m, p, work, rows,
        )  # fmt: skip
        failed += steps < 0
        for q in range(len(wanted)):
            found[s, q] = m[wanted[q]] if steps > 0 else float("nan")
    return failed
