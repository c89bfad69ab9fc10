"""[seinfeld-pandis], equation 9.6 and table 9.3: mean free path, and slip of small particles in air at 298 K."""

from itertools import pairwise

import pytest

from hoodwright.particles import mean_free_path, slip_factor

PATH = 0.0651  # um, as printed
# diameter in um, slip factor, half its last digit
ROWS = [
    (0.001, 216, 0.5),
    (0.002, 108, 0.5),
    (0.01, 22.2, 0.05),
    (0.02, 11.4, 0.05),
    (1, 1.164, 0.0005),
    (2, 1.082, 0.0005),
    (10, 1.016, 0.0005),
    (20, 1.008, 0.0005),
    (50, 1.003, 0.0005),
    (100, 1.0016, 0.00005),
]
OFF = [(0.005, 43.6, 0.05), (0.05, 4.95, 0.005), (0.1, 2.85, 0.005), (0.2, 1.865, 0.0005), (0.5, 1.326, 0.0005)]
OFF += [(5, 1.032, 0.0005)]


@pytest.mark.read
def test_mean_free_path_of_room_air():
    assert mean_free_path(298.15, 101325, 1.8e-5) * 1e6 == pytest.approx(PATH, rel=0, abs=0.00005)


@pytest.mark.read
@pytest.mark.parametrize(("diameter", "printed", "half"), ROWS)
def test_slip_factor(diameter, printed, half):
    assert slip_factor(diameter, PATH) == pytest.approx(printed, rel=0, abs=half)


@pytest.mark.read
@pytest.mark.xfail(strict=True, reason="does not follow from the table's own formula and path; up to 0.4 % apart")
@pytest.mark.parametrize(("diameter", "printed", "half"), OFF)
def test_slip_factor_that_does_not_follow(diameter, printed, half):
    assert slip_factor(diameter, PATH) == pytest.approx(printed, rel=0, abs=half)


def test_tolerance_tells_the_rows_apart():
    assert all(abs(a[1] - b[1]) > 2 * min(a[2], b[2]) for a, b in pairwise(ROWS))
