"""[fitting-table], tables A-7A to A-7C, read from two online copies."""

from itertools import pairwise

import pytest

from hoodwright.ducts import elbow_angle_factor, gored_elbow_loss, mitred_elbow_loss, smooth_elbow_loss

# check rows: duct.elbow.0.5, duct.elbow.0.75, duct.elbow.1.0, duct.elbow.1.5, duct.elbow.2.0, duct.elbow.2.5
SMOOTH = [(0.5, 0.71), (0.75, 0.33), (1.0, 0.22), (1.5, 0.15), (2.0, 0.13), (2.5, 0.12)]
# check rows: duct.elbowK.20, duct.elbowK.30, duct.elbowK.45, duct.elbowK.75, duct.elbowK.90
ANGLE = [(20, 0.31), (30, 0.45), (45, 0.60), (60, 0.78), (75, 0.90), (90, 1.00)]
GORED = [
    (5, 0.75, 0.46),
    (5, 1.0, 0.33),
    (5, 1.5, 0.24),
    (5, 2.0, 0.19),
    (4, 0.75, 0.50),
    (4, 1.0, 0.37),
    (4, 1.5, 0.27),
    (4, 2.0, 0.24),
    (3, 0.5, 0.98),
    (3, 0.75, 0.54),
    (3, 1.0, 0.42),
    (3, 1.5, 0.34),
    (3, 2.0, 0.33),
]
# check rows: duct.miter.45, duct.miter.90
MITRED = [(20, 0.08), (30, 0.16), (45, 0.34), (60, 0.55), (75, 0.81), (90, 1.2)]
TOL = 1e-12  # the printed numbers are the definition: typed here and in the table separately


@pytest.mark.read
@pytest.mark.parametrize("radius_ratio, printed", SMOOTH)
def test_smooth_elbow(radius_ratio, printed):
    assert smooth_elbow_loss(radius_ratio) == pytest.approx(printed, rel=0, abs=TOL)


@pytest.mark.read
@pytest.mark.parametrize("angle, printed", ANGLE)
def test_angle_factor(angle, printed):
    assert elbow_angle_factor(angle) == pytest.approx(printed, rel=0, abs=TOL)


@pytest.mark.read
@pytest.mark.parametrize("pieces, radius_ratio, printed", GORED)
def test_gored_elbow(pieces, radius_ratio, printed):
    assert gored_elbow_loss(pieces, radius_ratio) == pytest.approx(printed, rel=0, abs=TOL)


@pytest.mark.read
@pytest.mark.parametrize("angle, printed", MITRED)
def test_mitred_elbow(angle, printed):
    assert mitred_elbow_loss(angle) == pytest.approx(printed, rel=0, abs=TOL)


def test_tolerance_tells_rows_apart():
    losses = sorted(loss for _, loss in SMOOTH)
    assert min(b - a for a, b in pairwise(losses)) > 1000 * TOL


def test_angle_factor_is_not_the_angle_over_90():
    assert all(abs(factor - angle / 90) > 1000 * TOL for angle, factor in ANGLE[:-1])
