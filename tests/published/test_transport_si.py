"""[transport-si], section 10.2.3, read from an online copy."""

from itertools import pairwise

import pytest

from hoodwright.ducts import student_manual_transport_velocity

# check rows: tv.si.10, tv.si.15, tv.si.25
ROWS = [("vapour or fume", 10), ("light dust", 15), ("heavy or damp dust", 25)]
TOL = 0.5  # m/s: half the last printed digit


@pytest.mark.read
@pytest.mark.parametrize("kind, printed", ROWS)
def test_velocity(kind, printed):
    assert student_manual_transport_velocity(kind) == pytest.approx(printed, rel=0, abs=TOL)


def test_tolerance_tells_rows_apart():
    printed = [velocity for _, velocity in ROWS]
    assert min(b - a for a, b in pairwise(printed)) > 2 * TOL
