import numpy as np
import pytest

from hoodwright.errors import RangeError
from hoodwright.particles import (
    aerodynamic_diameter,
    drag_coefficient,
    intermediate_settling_velocity,
    mean_free_path,
    mercer_stopping_distance,
    newton_settling_velocity,
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

# A function of the diameter alone, in room air, and its value by hand.
OF_DIAMETER = {
    "slip": (lambda d: slip_factor(d, 0.066e-6), 1.00166),
    "aerodynamic": (lambda d: aerodynamic_diameter(d, 4000.0), 2e-4),
    "reynolds": (lambda d: particle_reynolds_number(d, 3.0, AIR, VISCOSITY), 20.0),
    "criterion": (lambda d: settling_criterion(d, 2600.0, AIR, VISCOSITY), 4.5538),
    "stokes": (lambda d: stokes_settling_velocity(d, 2600.0, VISCOSITY), 0.78695),
    "intermediate": (lambda d: intermediate_settling_velocity(d, 2600.0, AIR, VISCOSITY), None),
    "newton": (lambda d: newton_settling_velocity(d, 2600.0, AIR), None),
    "by criterion": (lambda d: settling_velocity_by_criterion(d, 2600.0, AIR, VISCOSITY), None),
    "by drag": (lambda d: settling_velocity(d, 2600.0, AIR, VISCOSITY), None),
    "relaxation": (lambda d: relaxation_time(d, 2600.0, VISCOSITY), 0.080247),
    "stopping": (lambda d: stopping_distance(d, 2600.0, 10.0, AIR, VISCOSITY), None),
    "mercer": (lambda d: mercer_stopping_distance(d, 2600.0, 10.0, AIR, VISCOSITY), None),
}


@pytest.mark.parametrize(("function", "by_hand"), OF_DIAMETER.values(), ids=OF_DIAMETER)
def test_scalar_array_and_empty_array(function, by_hand):
    one = function(1e-4)
    assert np.ndim(one) == 0
    if by_hand is not None:
        assert one == pytest.approx(by_hand, rel=1e-5)
    assert function(np.array([1e-4, 1.2e-4])).tolist() == pytest.approx([one, function(1.2e-4)])
    assert function(np.array([])).shape == (0,)


@pytest.mark.parametrize(("function", "by_hand"), OF_DIAMETER.values(), ids=OF_DIAMETER)
def test_a_diameter_of_zero_is_refused(function, by_hand):
    with pytest.raises(RangeError, match="diameter of the particle 0 m is not above 0 m; give its true size"):
        function(0.0)


def test_drag_of_scalar_array_and_empty_array():
    assert drag_coefficient(1e-6) == pytest.approx(24 / 1e-6, rel=6e-4)
    assert drag_coefficient(np.array([1.0, 1e5])).tolist() == pytest.approx([26.5, 0.48], rel=0.05)
    assert drag_coefficient(np.array([])).shape == (0,)


def test_drag_beyond_the_fit_is_refused():
    text = r"Reynolds number 300000 is above 200000, the limit of \[barati14\]; give a slower or smaller one"
    with pytest.raises(RangeError, match=text):
        drag_coefficient(3e5)


def test_a_throw_beyond_the_fit_is_refused():
    with pytest.raises(RangeError, match=r"Reynolds number 333333 is above 200000, the limit of \[barati14\]"):
        stopping_distance(0.05, 7800.0, 100.0, AIR, VISCOSITY)


def test_a_boulder_does_not_settle_by_these_laws():
    with pytest.raises(RangeError, match=r"settling criterion \S+ is above 2360, the limit of Newton's law"):
        settling_velocity_by_criterion(0.1, 2600.0, AIR, VISCOSITY)
    with pytest.raises(RangeError, match=r"number squared \S+ is above \S+, the limit of \[barati14\]"):
        settling_velocity(0.1, 2600.0, AIR, VISCOSITY)


def test_mercer_says_its_range():
    with pytest.raises(RangeError, match="Reynolds number 2000 is above 400, the limit of Mercer's formula"):
        mercer_stopping_distance(1e-3, 2600.0, 30.0, AIR, VISCOSITY)


def test_slip_below_one_is_refused():
    with pytest.raises(RangeError, match=r"slip factor 0\.9 is below 1; give 1 where slip does not matter"):
        stopping_distance(1e-6, 1000.0, 1.0, AIR, VISCOSITY, 0.9)


def test_mean_free_path_of_scalar_array_and_empty_array():
    assert mean_free_path(293.15, 101325.0, 1.81e-5) == pytest.approx(6.5e-8, rel=0.01)
    assert mean_free_path(np.array([293.15, 293.15]), 101325.0, 1.81e-5).shape == (2,)
    assert mean_free_path(np.array([]), 101325.0, 1.81e-5).shape == (0,)
    with pytest.raises(RangeError, match="temperature 20 K is below 150 K"):
        mean_free_path(20.0, 101325.0, 1.81e-5)


def test_stokes_stopping_distance_of_scalar_array_and_empty_array():
    assert stokes_stopping_distance(10.0, 0.03) == pytest.approx(0.3)
    assert stokes_stopping_distance(np.array([1.0, 0.0]), 0.03).tolist() == pytest.approx([0.03, 0.0])
    assert stokes_stopping_distance(np.array([]), 0.03).shape == (0,)
    with pytest.raises(RangeError, match="speed -1 m/s is below 0 m/s"):
        stokes_stopping_distance(-1.0, 0.03)


def test_a_particle_that_is_not_thrown_stays():
    assert stopping_distance(1e-4, 1000.0, 0.0, AIR, VISCOSITY) == 0.0
