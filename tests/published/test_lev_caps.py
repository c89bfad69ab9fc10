"""[lev-caps], from memory: loss of a weather cap by its gap in diameters of the stack."""

import pytest

from hoodwright.ducts import weather_cap_loss

ROWS = [(0.45, 1.0), (0.50, 0.73), (0.55, 0.56), (0.60, 0.41), (0.65, 0.30), (0.70, 0.22), (0.75, 0.18), (1.0, 0.10)]
TOL = 1e-12  # the numbers are the definition: typed here and in the table separately


@pytest.mark.memory
@pytest.mark.parametrize("gap, remembered", ROWS)
def test_weather_cap(gap, remembered):
    assert weather_cap_loss(gap) == pytest.approx(remembered, rel=0, abs=TOL)
