"""[duct-loss-table]: rectangular elbows, cones that widen and cones that narrow, read from an online copy."""

import pytest

from hoodwright.ducts import contraction_loss, expansion_loss_share, rectangular_elbow_loss, smooth_elbow_loss

ELBOW = [
    (0.5, 0.5, 1.30),
    (0.5, 0.75, 0.47),
    (0.5, 1.0, 0.28),
    (0.5, 1.5, 0.18),
    (1, 0.5, 0.95),
    (2, 0.75, 0.33),
    (3, 1.0, 0.20),
    (1, 1.5, 0.13),
]
EXPANSION = [(5, 0.17), (10, 0.28), (20, 0.45), (30, 0.59), (40, 0.73)]
CONTRACTION = [(30, 0.02), (45, 0.04), (60, 0.07)]
ROUND = [(0.5, 0.73), (0.75, 0.38), (1.0, 0.26), (1.5, 0.17), (2.0, 0.15)]
TOL = 1e-12  # the printed numbers are the definition: typed here and in the table separately
ROUND_TOL = 0.05  # velocity pressures: what two tables of smooth round elbows may differ by, as these two do


@pytest.mark.read
@pytest.mark.parametrize("width_ratio, radius_ratio, printed", ELBOW)
def test_rectangular_elbow(width_ratio, radius_ratio, printed):
    assert rectangular_elbow_loss(width_ratio, radius_ratio) == pytest.approx(printed, rel=0, abs=TOL)


@pytest.mark.read
@pytest.mark.parametrize("angle, printed", EXPANSION)
def test_expansion(angle, printed):
    assert expansion_loss_share(angle) == pytest.approx(printed, rel=0, abs=TOL)


@pytest.mark.read
@pytest.mark.parametrize("angle, printed", CONTRACTION)
def test_contraction(angle, printed):
    assert contraction_loss(angle) == pytest.approx(printed, rel=0, abs=TOL)


@pytest.mark.parametrize("radius_ratio, printed", ROUND)
def test_its_round_elbows_are_near_those_of_the_fitting_table(radius_ratio, printed):
    assert smooth_elbow_loss(radius_ratio) == pytest.approx(printed, rel=0, abs=ROUND_TOL)
    assert smooth_elbow_loss(radius_ratio) < printed
