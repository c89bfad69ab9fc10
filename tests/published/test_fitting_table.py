"""[fitting-table], tables A-7A and A-7C, read from an online copy."""

from itertools import pairwise

import pytest

from hoodwright.ducts import elbow_angle_factor, mitred_elbow_loss, smooth_elbow_loss

SMOOTH = [(0.5, 0.71), (0.75, 0.33), (1.0, 0.22), (1.5, 0.15), (2.0, 0.13), (2.5, 0.12)]
ANGLE = [(20, 0.31), (30, 0.45), (45, 0.60), (75, 0.90), (90, 1.00)]
ANGLE_TO_CONFIRM = [(60, 0.78)]  # from memory, to be confirmed
MITRED = [(45, 0.34), (90, 1.2)]
TOL = 1e-12  # the printed numbers are the definition: typed here and in the table separately


@pytest.mark.read
@pytest.mark.parametrize("radius_ratio, printed", SMOOTH)
def test_smooth_elbow(radius_ratio, printed):
    assert smooth_elbow_loss(radius_ratio) == pytest.approx(printed, rel=0, abs=TOL)


@pytest.mark.read
@pytest.mark.parametrize("angle, printed", ANGLE)
def test_angle_factor(angle, printed):
    assert elbow_angle_factor(angle) == pytest.approx(printed, rel=0, abs=TOL)


@pytest.mark.memory
@pytest.mark.parametrize("angle, printed", ANGLE_TO_CONFIRM)
def test_angle_factor_to_be_confirmed(angle, printed):
    assert elbow_angle_factor(angle) == pytest.approx(printed, rel=0, abs=TOL)


@pytest.mark.read
@pytest.mark.parametrize("angle, printed", MITRED)
def test_mitred_elbow(angle, printed):
    assert mitred_elbow_loss(angle) == pytest.approx(printed, rel=0, abs=TOL)


def test_tolerance_tells_rows_apart():
    losses = sorted(loss for _, loss in SMOOTH)
    assert min(b - a for a, b in pairwise(losses)) > 1000 * TOL


def test_angle_factor_is_not_the_angle_over_90():
    assert all(abs(factor - angle / 90) > 1000 * TOL for angle, factor in ANGLE[:-1])
