"""Small rules that every traverse leans on, without a published number of their own. Values worked by hand."""

import numpy as np
import pytest

from hoodwright.air import density, velocity_from_pressure
from hoodwright.ducts import hydraulic_diameter

FPM, FOOT = 0.00508, 0.3048
IN_WG_68_F, MM_WG, IN_HG = 248.6, 9.80665, 3386.389  # Pa
US_DENSITY = 0.075 * 0.45359237 / FOOT**3


def test_roots_are_averaged_not_pressures():
    """tr.root: 0.16, 0.25 and 0.36 in wg: 4005 x (0.4 + 0.5 + 0.6) / 3 = 2002.5 fpm; 4005 is rounded to 1."""
    pressures = np.array([0.16, 0.25, 0.36]) * IN_WG_68_F
    found = np.mean(velocity_from_pressure(pressures, US_DENSITY)) / FPM
    assert found == pytest.approx(2002.5, rel=0, abs=2002.5 * 0.5 / 4005)
    assert velocity_from_pressure(np.mean(pressures), US_DENSITY) / FPM > 2002.5 * 1.01


def test_a_velocity_pressure_read_4_per_cent_high_makes_the_velocity_2_per_cent_high():
    """un.sqrt: sqrt(1.04) = 1.0198."""
    share = velocity_from_pressure(104, 1.2) / velocity_from_pressure(100, 1.2) - 1
    assert 100 * share == pytest.approx(1.98, rel=0, abs=0.005)


def test_the_constant_of_a_stack_test_in_metric_units():
    """tr.m2.si: 34.97 sqrt(293 / (760 x 28.97)) = 4.034 m/s for 1 mm of water; 1e-3 is its rounding and that of M."""
    found = velocity_from_pressure(MM_WG, density(293.0, 101325, 0.0))
    assert found == pytest.approx(4.034, rel=1e-3)


def test_the_constant_of_a_stack_test_in_us_units():
    """tr.m2.kp: 85.49 sqrt(530 / (29.92 x 28.97)) x 60 = 4011 fpm for 1 in wg, not 4005: 70 degF, and another inch."""
    found = velocity_from_pressure(249.089, density(530 / 1.8, 29.92 * IN_HG, 0.0)) / FPM
    assert found == pytest.approx(4011, rel=1e-3)
    assert abs(found - 4005) > 4


def test_equivalent_diameter_of_two_by_one():
    """tr.m1.de: 2 L W / (L + W) = 4/3."""
    assert hydraulic_diameter(2, 1) == pytest.approx(1.3333, rel=0, abs=0.00005)
