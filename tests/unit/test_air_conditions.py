import numpy as np
import pytest

from hoodwright.air import actual_flow, standard_flow, standard_pressure
from hoodwright.errors import RangeError

STANDARD = (293.15, 101325.0)


def test_pressure_of_scalar_array_and_empty_array():
    assert isinstance(standard_pressure(0.0), float)
    assert standard_pressure([[0.0, 500.0]]).shape == (1, 2)
    assert standard_pressure([]).shape == (0,)


@pytest.mark.parametrize("function", [actual_flow, standard_flow])
def test_flow_of_scalar_array_and_empty_array(function):
    assert isinstance(function(0.1, 400.0, 95000.0, *STANDARD), float)
    assert function(0.1, np.array([300.0, 400.0]), 95000.0, *STANDARD).shape == (2,)
    assert function(np.array([]), 400.0, 95000.0, *STANDARD).shape == (0,)


@pytest.mark.parametrize("altitude", [-500.0, 11000.0])
def test_both_ends_of_the_altitudes_are_inside(altitude):
    assert standard_pressure(altitude) > 0


@pytest.mark.parametrize(
    "altitude, text",
    [
        (
            14000,
            r"altitude 14000 m is above 11000 m, the limit of \[ashrae-f17, ch\. 1, eq\. 3\]; give the",
        ),
        (-600, r"altitude -600 m is below -500 m, the limit of \[ashrae-f17, ch\. 1, eq\. 3\]"),
        ([0.0, float("inf")], "altitude inf is not a finite number"),
    ],
)
def test_altitude_outside(altitude, text):
    with pytest.raises(RangeError, match=text):
        standard_pressure(altitude)


def test_twice_the_temperature_doubles_and_half_the_pressure_doubles():
    assert actual_flow(0.1, 2 * 293.15, 101325.0, *STANDARD) == pytest.approx(0.2)
    assert actual_flow(0.1, 293.15, 101325.0 / 2, *STANDARD) == pytest.approx(0.2)


def test_the_faulty_condition_is_named():
    with pytest.raises(RangeError, match="reference temperature 20 K is below 150 K"):
        actual_flow(0.1, 293.15, 101325.0, 20.0, 101325.0)
    with pytest.raises(RangeError, match="reference pressure 1 Pa is below 10000 Pa"):
        standard_flow(0.1, 293.15, 101325.0, 293.15, 1.0)
