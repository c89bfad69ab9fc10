"""[mitred-89]: mitred rectangular elbows, read from the companion disc of a handbook; they are in [fitting-table] too.

The columns 3 and 5 stand in this copy only: our table has straight lines there.
"""

import pytest

from hoodwright.ducts import mitred_elbow_reynolds_factor, rectangular_mitred_elbow_loss

HEIGHTS = (0.25, 0.5, 0.75, 1.0, 1.5, 2.0, 3.0, 4.0, 5.0, 6.0, 8.0)
PRINTED = """
20 0.08 0.08 0.08 0.07 0.07 0.07 0.06 0.06 0.05 0.05 0.05
30 0.18 0.17 0.17 0.16 0.15 0.15 0.23 0.13 0.12 0.12 0.11
45 0.38 0.37 0.36 0.34 0.33 0.31 0.28 0.27 0.26 0.25 0.24
60 0.60 0.59 0.57 0.55 0.52 0.49 0.46 0.43 0.41 0.39 0.38
75 0.89 0.87 0.84 0.81 0.77 0.73 0.67 0.63 0.61 0.58 0.57
90 1.3 1.3 1.2 1.2 1.1 1.1 0.98 0.92 0.89 0.85 0.83
"""
BETWEEN = (3.0, 5.0)
REYNOLDS = [(1e4, 1.40), (2e4, 1.26), (3e4, 1.19), (4e4, 1.14), (6e4, 1.09), (8e4, 1.06), (1e5, 1.04), (2e5, 1.0)]
TOL = 1e-12  # the printed numbers are the definition: typed here and in the table separately
# VP: bend of the printed curve, (1.1 - 0.98 - (0.98 - 0.92)) / 2, and half the last digit of 1.1
BETWEEN_TOL = 0.03 + 0.005
MISPRINT = {(30, 3.0): "0.23 between 0.15 and 0.13: a misprint for 0.13 or 0.14"}


def cells(wanted):
    for line in PRINTED.strip().splitlines():
        angle, *losses = map(float, line.split())
        for height, loss in zip(HEIGHTS, losses, strict=True):
            if wanted(height):
                reason = MISPRINT.get((angle, height))
                marks = [pytest.mark.xfail(strict=True, reason=reason)] if reason else []
                yield pytest.param(angle, height, loss, marks=[pytest.mark.read, *marks])


@pytest.mark.parametrize("angle, height, printed", list(cells(lambda height: height not in BETWEEN)))
def test_cell_of_both_tables(angle, height, printed):
    assert rectangular_mitred_elbow_loss(angle, height) == pytest.approx(printed, rel=0, abs=TOL)


@pytest.mark.parametrize("angle, height, printed", list(cells(lambda height: height in BETWEEN)))
def test_cell_between_our_columns(angle, height, printed):
    assert rectangular_mitred_elbow_loss(angle, height) == pytest.approx(printed, rel=0, abs=BETWEEN_TOL)


@pytest.mark.read
@pytest.mark.parametrize("reynolds, printed", REYNOLDS)
def test_factor_at_lower_reynolds_numbers(reynolds, printed):
    assert mitred_elbow_reynolds_factor(reynolds) == pytest.approx(printed, rel=0, abs=TOL)


def test_tolerance_tells_columns_apart():
    assert rectangular_mitred_elbow_loss(90, 2.0) - rectangular_mitred_elbow_loss(90, 4.0) > 2 * BETWEEN_TOL
