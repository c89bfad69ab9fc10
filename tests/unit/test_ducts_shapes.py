"""Every duct formula takes a scalar, an array and an empty array."""

import numpy as np
import pytest

from hoodwright import ducts

CASES = [
    (ducts.reynolds_number, (10.0, 0.2, 1.2, 1.8e-5)),
    (ducts.friction_factor, (1e5, 1e-3)),
    (ducts.friction_factor, (3e3, 1e-3)),
    (ducts.friction_factor, (5e2, 1e-3)),
    (ducts.haaland_1983, (1e5, 1e-3)),
    (ducts.swamee_jain_1976, (1e5, 1e-3)),
    (ducts.fanning_from_darcy, (0.02,)),
    (ducts.pressure_loss, (0.02, 10.0, 0.2, 60.0)),
    (ducts.wright_1945, (20.0, 0.2)),
    (ducts.hydraulic_diameter, (0.4, 0.2)),
    (ducts.equivalent_diameter_at_equal_flow, (0.4, 0.2)),
    (ducts.smooth_elbow_loss, (1.2,)),
    (ducts.elbow_angle_factor, (50.0,)),
    (ducts.elbow_angle_share, (50.0,)),
    (ducts.mitred_elbow_loss, (50.0,)),
    (ducts.branch_entry_loss, (33.0,)),
    (ducts.older_lev_elbow_loss, (1.6,)),
    (ducts.mitred_elbow_reynolds_factor, (5e4,)),
    (ducts.rounded_bend_loss, (40.0, 3.0, 0.02)),
    (ducts.weather_cap_loss, (0.7,)),
    (ducts.rectangular_elbow_loss, (0.8, 1.2)),
    (ducts.rectangular_mitred_elbow_loss, (50.0, 1.7)),
    (ducts.contraction_loss, (40.0,)),
    (ducts.expansion_loss_share, (15.0,)),
    (ducts.static_regain, (15.0, 200.0, 100.0)),
    (ducts.loeffler_1980, (20.0, 0.7, "galvanised")),
    (ducts.damper_loss, (-500.0, -400.0)),
    (ducts.motor_power, (900.0, 0.05)),
    (ducts.static_pressure_behind_hood, (0.49, 60.0)),
    (ducts.duct_static_loss, (60.0, 0.02, 10.0, 0.2, 0.5)),
    (ducts.balance_ratio, (-400.0, -500.0)),
    (ducts.corrected_flow, (0.2, -500.0, -400.0)),
    (ducts.junction_acceleration_loss, (250.0, 200.0)),
    (ducts.fan_total_pressure, (100.0, -500.0)),
    (ducts.fan_static_pressure, (100.0, -500.0)),
    (ducts.air_power, (1.0, 800.0)),
    (ducts.shaft_power, (1.0, 800.0, 0.6)),
    (ducts.scaled_flow, (1.0, 1.1, 1.2)),
    (ducts.scaled_pressure, (800.0, 1.1, 1.2, 0.9)),
    (ducts.scaled_power, (800.0, 1.1, 1.2, 0.9)),
]


def name(value):
    return getattr(value, "__name__", None)


@pytest.mark.parametrize("function, arguments", CASES, ids=name)
def test_scalar_gives_a_float(function, arguments):
    assert isinstance(function(*arguments), float)


@pytest.mark.parametrize("function, arguments", CASES, ids=name)
def test_array_gives_the_scalar_answers(function, arguments):
    first = np.array([[0.9], [1.0]]) * arguments[0]
    expected = [[function(value, *arguments[1:])] for value in first[:, 0]]
    found = function(first, *arguments[1:])
    assert found.shape == (2, 1)
    np.testing.assert_allclose(found, expected, rtol=1e-14)


@pytest.mark.parametrize("function, arguments", CASES, ids=name)
def test_empty_array_gives_an_empty_array(function, arguments):
    assert function(np.array([]), *arguments[1:]).shape == (0,)


@pytest.mark.parametrize("function, arguments", CASES, ids=name)
def test_input_array_is_left_alone(function, arguments):
    first = np.array([0.95, 1.0]) * arguments[0]
    before = first.copy()
    function(first, *arguments[1:])
    np.testing.assert_array_equal(first, before)


def test_public_names_exist_and_are_listed_once():
    assert len(set(ducts.__all__)) == len(ducts.__all__)
    assert all(hasattr(ducts, listed) for listed in ducts.__all__)
