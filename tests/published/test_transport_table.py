"""[transport-table], annex 5, read from an online copy; its last row prints 45000 for 4500."""

import math
from itertools import pairwise

import pytest

from hoodwright.ducts import transport_velocity_range

FPM = 0.00508
# check rows: tv.vapours.1000, tv.fumes.2000, tv.very.2500, tv.dry.3000, tv.average.3500, tv.heavy.4500
ROWS = [
    ("vapour", 1000, 2000),
    ("fume", 2000, 2500),
    ("fine dust", 2500, 3000),
    ("dry dust", 3000, 4000),
    ("workshop dust", 3500, 4000),
    ("moist dust", 4500, math.inf),
]
# Heavy dust: annex 5 prints 4000 to 5000, a second reproduction of the same table 4000 to 4500.
# check rows: tv.heavy
HEAVY = ("heavy dust", 4000, 4500)
TOL = 0.5  # fpm: half the last printed digit


@pytest.mark.read
@pytest.mark.parametrize("kind, lowest, highest", ROWS)
def test_range(kind, lowest, highest):
    found = [velocity / FPM for velocity in transport_velocity_range(kind)]
    assert found == pytest.approx([lowest, highest], rel=0, abs=TOL)


@pytest.mark.read
def test_lowest_velocity_for_heavy_dust():
    assert transport_velocity_range(HEAVY[0])[0] / FPM == pytest.approx(HEAVY[1], rel=0, abs=TOL)


@pytest.mark.read
@pytest.mark.xfail(strict=True, reason="two reproductions disagree: 5000 fpm in annex 5, 4500 in the other")
def test_highest_velocity_for_heavy_dust_of_the_second_reproduction():
    assert transport_velocity_range(HEAVY[0])[1] / FPM == pytest.approx(HEAVY[2], rel=0, abs=TOL)


def test_tolerance_tells_rows_apart():
    lowest = sorted({row[1] for row in ROWS})
    assert min(b - a for a, b in pairwise(lowest)) > 100 * TOL
