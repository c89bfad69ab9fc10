"""Flat oval sections: a circle where both sides agree, nearly a rectangle where they do not."""

import math

import numpy as np
import pytest

from hoodwright.ducts import oval_area, oval_hydraulic_diameter, oval_perimeter
from hoodwright.errors import InputError, RangeError


def test_a_circle_is_an_oval_of_equal_sides():
    assert oval_area(0.2, 0.2) == pytest.approx(math.pi * 0.01)
    assert oval_perimeter(0.2, 0.2) == pytest.approx(math.pi * 0.2)
    assert oval_hydraulic_diameter(0.2, 0.2) == pytest.approx(0.2)


def test_by_hand():
    # 500 x 200 mm: a rectangle of 300 x 200 and a circle of 200
    assert oval_area(0.5, 0.2) == pytest.approx(0.06 + 0.0314159, abs=1e-6)
    assert oval_perimeter(0.5, 0.2) == pytest.approx(0.6 + 0.6283185, abs=1e-6)
    assert oval_hydraulic_diameter(0.5, 0.2) == pytest.approx(4 * 0.0914159 / 1.2283185, abs=1e-6)


def test_arrays():
    assert oval_area(np.array([0.2, 0.5]), 0.2).shape == (2,)
    assert oval_perimeter(np.zeros(0), 0.2).shape == (0,)
    assert oval_hydraulic_diameter(np.array([1.0, 2.0]), 0.2)[1] > oval_hydraulic_diameter(1.0, 0.2)


def test_what_is_no_oval():
    with pytest.raises(InputError, match="the longer side comes first"):
        oval_area(0.1, 0.2)
    with pytest.raises(RangeError, match="shorter side 0 m is not above 0 m"):
        oval_perimeter(0.1, 0.0)
