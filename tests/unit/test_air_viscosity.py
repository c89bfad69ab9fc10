import numpy as np
import pytest

from hoodwright.air import viscosity
from hoodwright.errors import RangeError


def test_scalar_array_and_empty_array():
    assert isinstance(viscosity(293.15), float)
    assert viscosity(np.array([[280.0, 300.0]])).shape == (1, 2)
    assert viscosity([]).shape == (0,)


def test_about_18_micropascal_seconds_at_room_temperature():
    assert viscosity(293.15) == pytest.approx(1.81e-5, abs=0.01e-5)


def test_outside_its_range():
    with pytest.raises(RangeError, match=r"temperature 20 K is below 170 K, the limit of \[us-atmosphere-76"):
        viscosity(20.0)
    with pytest.raises(RangeError, match="temperature 2000 K is above 1900 K"):
        viscosity(2000.0)
