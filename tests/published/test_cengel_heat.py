"""[cengel-heat], example 9-2: a square plate of 0.6 m at 90 degC in air of 30 degC, worked solution read.

Air at the film temperature as printed: k 0.02808 W/(m K), Pr 0.7202, nu 1.896e-5 m2/s.
"""

import pytest

from hoodwright.hoods import (
    heat_of_face_up,
    heat_of_vertical_plate,
    nusselt_face_up,
    nusselt_vertical_plate,
    rayleigh_number,
)

HOT, AIR, NU, PRANDTL, CONDUCTIVITY = 363.0, 303.0, 1.896e-5, 0.7202, 0.02808
SIDE = 0.6
RAYLEIGH, TOL_RAYLEIGH = 7.649e8, 0.0005e8  # half the last digit
NUSSELT, TOL_NUSSELT = 113.34, 0.01  # half the last digit, and 1e-4 x 1/3 of it for the Rayleigh number as printed
UP, TOL_UP = 128.0, 0.5  # W, half the last digit
TOL_AIR = 0.02  # our air at 333 K: viscosity, conductivity and Prandtl number each within about 1 %


def rayleigh_of(length):
    return rayleigh_number(length, HOT, AIR, NU, PRANDTL)


@pytest.mark.read
def test_rayleigh_number_of_the_upright_plate():  # pl.plate.ra
    assert rayleigh_of(SIDE) == pytest.approx(RAYLEIGH, rel=0, abs=TOL_RAYLEIGH)


@pytest.mark.read
def test_nusselt_number_of_the_upright_plate():  # pl.plate.nu
    assert nusselt_vertical_plate(RAYLEIGH, PRANDTL) == pytest.approx(NUSSELT, rel=0, abs=TOL_NUSSELT)


# The online copy prints 2 W, from whole-number division; 128 W is remembered, by 0.54 Ra^(1/4).
@pytest.mark.memory
@pytest.mark.xfail(strict=True, reason="Ra is 1.2e7, where the source's own range asks 0.15 Ra^(1/3): 139 W")
def test_heat_of_the_face_that_looks_up():
    length = SIDE**2 / (4 * SIDE)
    watts = nusselt_face_up(rayleigh_of(length)) * CONDUCTIVITY / length * SIDE**2 * (HOT - AIR)
    assert watts == pytest.approx(UP, rel=0, abs=TOL_UP)


@pytest.mark.read
def test_our_own_air_gives_the_same_heat_of_the_upright_plate():
    printed = NUSSELT * CONDUCTIVITY / SIDE * SIDE**2 * (HOT - AIR)
    assert heat_of_vertical_plate(SIDE, SIDE**2, HOT, AIR) == pytest.approx(printed, rel=TOL_AIR)


@pytest.mark.memory
def test_the_laminar_form_gives_the_remembered_heat():  # pl.plate.up
    """The same plate, with the form of 1e4 to 1e7 taken at 1e7 and carried on."""
    length = SIDE**2 / (4 * SIDE)
    laminar = nusselt_face_up(0.9999e7) * (rayleigh_of(length) / 0.9999e7) ** 0.25
    assert laminar * CONDUCTIVITY / length * SIDE**2 * (HOT - AIR) == pytest.approx(UP, rel=0, abs=TOL_UP)


@pytest.mark.memory
def test_our_own_air_gives_the_same_heat_of_the_face():
    ours = heat_of_face_up(SIDE**2, 4 * SIDE, HOT, AIR)
    assert ours == pytest.approx(UP * 0.15 / 0.54 * rayleigh_of(SIDE / 4) ** (1 / 12), rel=TOL_AIR)


def test_tolerances_see_another_length_and_exponent():
    assert abs(rayleigh_of(0.601) - RAYLEIGH) > TOL_RAYLEIGH
    assert abs(nusselt_vertical_plate(1.01 * RAYLEIGH, PRANDTL) - NUSSELT) > TOL_NUSSELT
    side = SIDE / 4
    assert abs(0.15 * rayleigh_of(side) ** (1 / 3) * CONDUCTIVITY / side * SIDE**2 * 60 - UP) > TOL_UP
