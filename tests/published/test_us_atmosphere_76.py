"""[us-atmosphere-76]: viscosity at sea level, 15 degrees Celsius, from memory of the table."""

import pytest

from hoodwright.air import viscosity

TOL = 0.00005e-5  # Pa s: half the last digit


@pytest.mark.memory
def test_viscosity_at_sea_level():
    assert viscosity(288.15) == pytest.approx(1.7894e-5, rel=0, abs=TOL)


def test_tolerance_sees_one_kelvin():
    assert abs(viscosity(289.15) - 1.7894e-5) > TOL
