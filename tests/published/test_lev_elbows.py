"""[lev-elbows], from memory: to be confirmed against a printed copy."""

from itertools import pairwise

import pytest

from hoodwright.ducts import branch_entry_loss, elbow_angle_share, gored_elbow_loss

GORED = [(4, 0.27), (5, 0.24)]  # at a radius ratio of 1.5
SHARE = [(30, 1 / 3), (45, 1 / 2), (60, 2 / 3)]
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
@pytest.mark.parametrize("pieces, remembered", GORED)
def test_gored_elbow(pieces, remembered):
    assert gored_elbow_loss(pieces, 1.5) == pytest.approx(remembered, rel=0, abs=TOL)


@pytest.mark.memory
@pytest.mark.parametrize("angle, remembered", SHARE)
def test_share_of_a_90_degree_elbow(angle, remembered):
    assert elbow_angle_share(angle) == pytest.approx(remembered, rel=0, abs=TOL)


@pytest.mark.memory
@pytest.mark.parametrize("angle, remembered", BRANCH)
def test_branch_entry(angle, remembered):
    assert branch_entry_loss(angle) == pytest.approx(remembered, rel=0, abs=TOL)


def test_tolerance_tells_rows_apart():
    losses = [loss for _, loss in BRANCH]
    assert min(b - a for a, b in pairwise(losses)) > 1000 * TOL
