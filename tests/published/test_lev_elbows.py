"""[lev-elbows], from memory: to be confirmed against a printed copy. Two rows are read in [lev-worksheet]."""

from itertools import pairwise

import pytest

from hoodwright.ducts import branch_entry_loss

# check rows: duct.branch.10, duct.branch.15, duct.branch.20, duct.branch.25, duct.branch.30, duct.branch.35,
# duct.branch.40, duct.branch.50, duct.branch.60, duct.branch.90
BRANCH = [
    (10, 0.06),
    (15, 0.09),
    (20, 0.12),
    (25, 0.15),
    (30, 0.18),
    (35, 0.21),
    (40, 0.25),
    (45, 0.28),
    (50, 0.32),
    (60, 0.44),
    (90, 1.00),
]
TOL = 1e-12  # the numbers are the definition: typed here and in the table separately


@pytest.mark.memory
@pytest.mark.parametrize("angle, remembered", BRANCH)
def test_branch_entry(angle, remembered):
    assert branch_entry_loss(angle) == pytest.approx(remembered, rel=0, abs=TOL)


def test_tolerance_tells_rows_apart():
    losses = [loss for _, loss in BRANCH]
    assert min(b - a for a, b in pairwise(losses)) > 1000 * TOL
