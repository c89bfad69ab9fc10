"""[fan-density-sheet]: air density factors of a fan catalogue, and what it does with them; a second one agrees.

Factors against air of 70 degF at sea level; altitude in ft, temperature in degF.
"""

import pytest

from hoodwright.air import density, standard_pressure
from hoodwright.ducts import scaled_power, scaled_pressure

FOOT = 0.3048
FACTORS = [
    (0, 100, 0.946),
    (0, 200, 0.803),
    (0, 300, 0.697),
    (0, 600, 0.500),
    (0, 700, 0.457),
    (1000, 70, 0.964),
    (3000, 70, 0.896),
    (5000, 70, 0.832),
    (6000, 200, 0.643),
    (10000, 70, 0.688),
    (15000, 70, 0.564),
    (20000, 70, 0.460),
    (10000, 600, 0.344),
    (9000, 600, 0.352),
]
MISPRINT = "0.714 x 0.500 is 0.357; the sheet prints 0.352"
TOL = 0.0015  # the sheet takes whole-degree ratios and its own rounded altitude column: one and a half last digits
HALF_DIGIT = 0.005


def kelvin(fahrenheit):
    return (fahrenheit + 459.67) / 1.8


def factor(feet, fahrenheit):
    return density(kelvin(fahrenheit), standard_pressure(feet * FOOT)) / density(kelvin(70), standard_pressure(0.0))


def cases():
    for feet, fahrenheit, printed in FACTORS:
        marks = [pytest.mark.xfail(strict=True, reason=MISPRINT)] if printed == 0.352 else []
        yield pytest.param(feet, fahrenheit, printed, marks=[pytest.mark.read, *marks])


@pytest.mark.parametrize("feet, fahrenheit, printed", list(cases()))
def test_density_factor(feet, fahrenheit, printed):
    assert factor(feet, fahrenheit) == pytest.approx(printed, rel=0, abs=TOL)


@pytest.mark.read
def test_pressure_to_look_for_in_a_catalogue():
    """1.5 in wg at 6000 ft and 200 degF: 2.33 in wg at standard density."""
    assert scaled_pressure(1.5, 1.0, density_ratio=1 / 0.643) == pytest.approx(2.33, rel=0, abs=HALF_DIGIT)


@pytest.mark.read
def test_power_at_the_place():
    """3.53 bhp of the catalogue become 2.27 bhp."""
    assert scaled_power(3.53, 1.0, density_ratio=0.643) == pytest.approx(2.27, rel=0, abs=HALF_DIGIT)


@pytest.mark.read
def test_pressure_of_the_second_catalogue():
    """1.58 in wg at 120 degF and 4000 ft, factor 0.790: 2.0 in wg."""
    assert scaled_pressure(1.58, 1.0, density_ratio=1 / 0.790) == pytest.approx(2.0, rel=0, abs=HALF_DIGIT)


def test_tolerance_tells_neighbours_apart():
    assert abs(factor(1000, 70) - factor(0, 70)) > 10 * TOL
    assert abs(factor(0, 210) - 0.803) > TOL
