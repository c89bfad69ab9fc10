"""[aerosol-notes], table 4: Cunningham factor for a mean free path of 0.07 um."""

import pytest

from hoodwright.particles import slip_factor

PATH = 0.07
# diameter in um, factor, one unit of its last digit: the table cuts some figures and rounds others
ROWS = [(10, 1.018, 0.001), (1, 1.17, 0.01), (0.1, 3.01, 0.01), (0.01, 23.77, 0.01), (0.001, 232.5, 0.1)]


@pytest.mark.read
@pytest.mark.parametrize(("diameter", "printed", "digit"), ROWS)
def test_slip_factor(diameter, printed, digit):
    assert slip_factor(diameter, PATH) == pytest.approx(printed, rel=0, abs=digit)


def test_a_path_of_066_would_fail():
    assert abs(slip_factor(0.1, 0.066) - 3.01) > 10 * 0.01
