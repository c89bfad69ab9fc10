"""What must hold for any particle in air. Diameters in metres, 0.1 um to 5 mm."""

from itertools import pairwise

import numpy as np
from hypothesis import given
from hypothesis import strategies as st
from pytest import approx
from scipy.integrate import quad

from hoodwright.particles import (
    drag_coefficient,
    mercer_stopping_distance,
    particle_reynolds_number,
    relaxation_time,
    settling_criterion,
    settling_velocity,
    settling_velocity_by_criterion,
    slip_factor,
    stokes_settling_velocity,
    stokes_stopping_distance,
    stopping_distance,
)

AIR, VISCOSITY = 1.2, 1.8e-5
diameters = st.floats(-7, -2.3).map(lambda x: 10**x)
densities = st.floats(100, 12000)
speeds = st.floats(0.01, 100)
more = st.floats(1.01, 3)
reynolds = st.floats(-6, 5).map(lambda x: 10**x)


def stops(d, rho, v):
    return stopping_distance(d, rho, v, AIR, VISCOSITY)


@given(diameters, densities, speeds)
def test_stokes_bounds_the_stopping_distance(d, rho, v):
    bound = stokes_stopping_distance(v, relaxation_time(d, rho, VISCOSITY))
    assert 0 < stops(d, rho, v) < bound


@given(diameters, densities, speeds, more)
def test_stopping_distance_grows_with_speed_grain_and_density(d, rho, v, k):
    one = stops(d, rho, v)
    assert stops(d, rho, k * v) > one
    assert stops(k * d, rho, v) > one
    assert stops(d, k * rho, v) == approx(k * one)


@given(st.floats(-7, -5.5).map(lambda x: 10**x), densities)
def test_slow_fine_dust_stops_as_stokes_says(d, rho):
    v = 0.01 * VISCOSITY / (AIR * d)  # a Reynolds number of 0.01
    assert stops(d, rho, v) == approx(stokes_stopping_distance(v, relaxation_time(d, rho, VISCOSITY)), rel=2e-3)


@given(diameters, densities, speeds)
def test_stopping_distance_is_the_integral(d, rho, v):
    """By adaptive quadrature over the speed, a way of its own: S = integral of m dv / (drag / v)."""

    def slowed(speed):
        re = particle_reynolds_number(d, speed, AIR, VISCOSITY)
        return 4 * rho * d / (3 * AIR * drag_coefficient(re) * speed)

    parts = np.concatenate([[1e-9], np.geomspace(1e-4, 1, 9)]) * v
    found = sum(quad(slowed, a, b)[0] for a, b in pairwise(parts))
    assert stops(d, rho, v) == approx(found, rel=1e-6)


@given(st.floats(1, 400), densities)
def test_mercer_is_near_the_integral(re, rho):
    d = 1e-4
    v = re * VISCOSITY / (AIR * d)
    assert mercer_stopping_distance(d, rho, v, AIR, VISCOSITY) == approx(stops(d, rho, v), rel=0.06)


@given(reynolds, more)
def test_drag_coefficient_falls_and_drag_rises(re, k):
    """Up to 2000; above, the coefficient goes through its known shallow minimum."""
    if k * re < 2000:
        assert drag_coefficient(k * re) < drag_coefficient(re)
    if k * re < 2e5:
        assert drag_coefficient(k * re) * k * re > drag_coefficient(re) * re


@given(diameters, densities, more)
def test_settling_grows_with_size_and_density(d, rho, k):
    one = settling_velocity(d, rho, AIR, VISCOSITY)
    assert settling_velocity(k * d, rho, AIR, VISCOSITY) > one
    assert settling_velocity(d, k * rho, AIR, VISCOSITY) > one
    assert one < stokes_settling_velocity(d, rho, VISCOSITY)


@given(diameters, densities)
def test_drag_balances_the_weight(d, rho):
    v = settling_velocity(d, rho, AIR, VISCOSITY)
    drag = drag_coefficient(particle_reynolds_number(d, v, AIR, VISCOSITY)) * AIR * v**2 / 2 * np.pi * d**2 / 4
    assert drag == approx(rho * 9.80665 * np.pi * d**3 / 6)


@given(diameters, densities)
def test_the_laws_by_criterion_are_near_the_drag_of_a_sphere(d, rho):
    """Within 30 %: worst where Stokes' law ends, and where the laws are joined."""
    if settling_criterion(d, rho, AIR, VISCOSITY) < 500:
        ours = settling_velocity(d, rho, AIR, VISCOSITY)
        assert settling_velocity_by_criterion(d, rho, AIR, VISCOSITY) == approx(ours, rel=0.3)


@given(diameters, more)
def test_slip_falls_with_size_to_one(d, k):
    assert slip_factor(d, 6.6e-8) > slip_factor(k * d, 6.6e-8) > 1
    assert slip_factor(1e-2, 6.6e-8) == approx(1, abs=1e-4)
