import numpy as np
import pytest

from hoodwright.errors import RangeError
from hoodwright.hoods import (
    heat_of_body,
    heat_of_face_up,
    heat_of_level_cylinder,
    heat_of_steam,
    heat_of_vertical_plate,
    nusselt_face_up,
    nusselt_level_cylinder,
    nusselt_vertical_plate,
    rayleigh_number,
)

HOT, AIR = 500.0, 293.15
TEMPERATURES = np.array([400.0, 500.0, 900.0])

OF_TEMPERATURE = [
    lambda t: heat_of_vertical_plate(0.5, 1.0, t, AIR),
    lambda t: heat_of_face_up(0.25, 2.0, t, AIR),
    lambda t: heat_of_level_cylinder(2.0, 0.1, t, AIR),
    lambda t: heat_of_body(0.25, 2.0, 0.5, t, AIR),
    lambda t: rayleigh_number(0.5, t, AIR, 2e-5),
]
OF_NUMBER = [nusselt_vertical_plate, nusselt_level_cylinder, nusselt_face_up, heat_of_steam]


@pytest.mark.parametrize("function", OF_TEMPERATURE)
def test_scalar_array_and_empty_array_of_temperatures(function):
    assert np.ndim(function(HOT)) == 0
    assert function(TEMPERATURES)[1] == pytest.approx(function(HOT))
    assert function(np.array([])).shape == (0,)


@pytest.mark.parametrize("function", OF_NUMBER)
def test_scalar_array_and_empty_array_of_numbers(function):
    assert np.ndim(function(1e6)) == 0
    assert function(np.array([1e5, 1e6]))[1] == pytest.approx(function(1e6))
    assert function(np.array([])).shape == (0,)


def test_a_body_is_its_face_and_its_sides():
    parts = heat_of_face_up(0.25, 2.0, HOT, AIR) + heat_of_vertical_plate(0.5, 1.0, HOT, AIR)
    assert heat_of_body(0.25, 2.0, 0.5, HOT, AIR) == pytest.approx(parts)


def test_a_level_face_becomes_turbulent_at_ten_million():
    assert nusselt_face_up(0.9999e7) == pytest.approx(0.54 * 0.9999e7**0.25)
    assert nusselt_face_up(1e7) == pytest.approx(0.15 * 1e7 ** (1 / 3))


@pytest.mark.parametrize(
    "call, text",
    [
        (lambda: rayleigh_number(0.5, AIR, AIR, 2e-5), "surface temperature 293.15 K is not above 293.15 K, the air"),
        (lambda: rayleigh_number(0.5, HOT, 20.0, 2e-5), "air temperature 20 K is below 150 K"),
        (lambda: rayleigh_number(0.0, HOT, AIR, 2e-5), "length 0 m is not above 0 m"),
        (lambda: rayleigh_number(0.5, HOT, AIR, 0.0), "kinematic viscosity 0 m2/s is not above 0 m2/s"),
        (lambda: nusselt_vertical_plate(2e12), r"Rayleigh number 2e\+12 is above 1e\+12.*state the convective heat"),
        (lambda: nusselt_level_cylinder(-1.0), "Rayleigh number -1 is not above 0"),
        (
            lambda: nusselt_face_up(9e3),
            "Rayleigh number of a level face 9000 is below 10000.*state the convective heat",
        ),
        (lambda: heat_of_face_up(0.0, 2.0, HOT, AIR), "area 0 m2 is not above 0 m2"),
        (lambda: heat_of_vertical_plate(0.5, -1.0, HOT, AIR), "area -1 m2 is not above 0 m2"),
        (lambda: heat_of_level_cylinder(0.0, 0.1, HOT, AIR), "length 0 m is not above 0 m"),
        (lambda: heat_of_body(0.25, 2.0, 0.0, HOT, AIR), "height 0 m is not above 0 m"),
        (lambda: heat_of_steam(0.0), "steam 0 kg/s is not above 0 kg/s"),
    ],
)
def test_outside_the_range_is_refused_in_words(call, text):
    with pytest.raises(RangeError, match=text):
        call()
