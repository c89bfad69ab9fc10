import numpy as np
import pytest

from hoodwright.air import total_pressure, velocity_from_pressure, velocity_pressure
from hoodwright.errors import RangeError


@pytest.mark.parametrize(
    "function, first, second",
    [(velocity_pressure, 10.0, 1.2), (velocity_from_pressure, 60.0, 1.2), (total_pressure, -200.0, 60.0)],
)
def test_scalar_array_and_empty_array(function, first, second):
    scalar = function(first, second)
    assert isinstance(scalar, float)
    for shape in ((3,), (2, 1), (0,)):
        found = function(np.full(shape, first), second)
        assert found.shape == shape
        assert np.all(found == scalar)


def test_ten_metres_a_second_in_air_of_1_2():
    assert velocity_pressure(10.0, 1.2) == pytest.approx(60.0)
    assert velocity_from_pressure(60.0, 1.2) == pytest.approx(10.0)


def test_suction_is_negative_and_velocity_pressure_adds_to_it():
    assert total_pressure(-200.0, 60.0) == -140.0


def test_the_input_is_not_changed():
    readings = np.array([1.0, 4.0])
    velocity_from_pressure(readings, 1.2)
    assert readings.tolist() == [1.0, 4.0]


@pytest.mark.parametrize(
    "function, arguments, text",
    [
        (
            velocity_from_pressure,
            (-3.0, 1.2),
            "velocity pressure -3 Pa is below 0 Pa; check whether the two tubes",
        ),
        (total_pressure, (-200.0, -3.0), "velocity pressure -3 Pa is below 0 Pa"),
        (velocity_pressure, (10.0, 0.0), "density 0 kg/m3 is not above 0 kg/m3; give its true size"),
        (velocity_pressure, (float("nan"), 1.2), "velocity nan is not a finite number"),
    ],
)
def test_what_is_refused_and_in_which_words(function, arguments, text):
    with pytest.raises(RangeError, match=text):
        function(*arguments)
