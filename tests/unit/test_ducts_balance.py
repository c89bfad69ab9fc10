import numpy as np
import pytest

from hoodwright.ducts import (
    BalanceAdvice,
    Side,
    balance_advice_1_2,
    balancing_diameter,
    damper_loss,
    duct_static_loss,
    friction_factor,
    mixed_temperature,
    resultant_velocity_pressure_by_area,
    reynolds_number,
    suction_at_diameter,
)
from hoodwright.errors import InputError, NoSolution, RangeError

HOOD_SIDE = Side(flow=0.1, length=5.0, loss_coefficient=1.49 + 0.24, roughness=0.15e-3, density=1.2, viscosity=1.81e-5)


def test_suction_of_a_duct_behind_a_hood_is_hood_suction_and_loss():
    d = 0.1
    velocity = 0.1 / (np.pi * d**2 / 4)
    vp = 1.2 * velocity**2 / 2
    f = friction_factor(reynolds_number(velocity, d, 1.2, 1.81e-5), 0.15e-3 / d)
    assert suction_at_diameter(HOOD_SIDE, d) == pytest.approx(1.49 * vp + duct_static_loss(vp, f, 5.0, d, 0.24))


def test_duct_further_on_counts_acceleration_only_where_it_is_faster():
    side = Side(0.1, 0.0, 0.0, 0.0, 1.2, 1.81e-5, suction_before=300.0, p_velocity_before=50.0, p_fixed=20.0)
    fast = 1.2 * (0.1 / (np.pi * 0.1**2 / 4)) ** 2 / 2
    assert suction_at_diameter(side, 0.1) == pytest.approx(320.0 + fast - 50.0)
    assert suction_at_diameter(side, 0.5) == pytest.approx(320.0)


def test_balancing_diameter_brings_the_wanted_suction():
    d = balancing_diameter(HOOD_SIDE, 400.0)
    assert suction_at_diameter(HOOD_SIDE, d) == pytest.approx(400.0, rel=1e-9)


def test_diameters_may_be_an_array_or_empty():
    assert suction_at_diameter(HOOD_SIDE, np.array([[0.1], [0.2]])).shape == (2, 1)
    assert suction_at_diameter(HOOD_SIDE, np.array([])).shape == (0,)


def test_no_diameter_reaches_less_than_what_comes_before():
    side = Side(0.1, 5.0, 0.2, 0.15e-3, 1.2, 1.81e-5, suction_before=300.0, p_velocity_before=50.0)
    text = (
        r"^no diameter from 0.01 m to 10 m arrives with 200 Pa of suction: at the same flow it lies between 300 and "
        r".* Pa; change the flow, or use a damper$"
    )
    with pytest.raises(NoSolution, match=text):
        balancing_diameter(side, 200.0)


def test_damper_takes_the_difference():
    assert damper_loss(-500.0, -420.0) == 80.0
    with pytest.raises(InputError, match=r"^p_static_governing -400.0 Pa has less suction than p_static_low -500.0 Pa"):
        damper_loss(-400.0, -500.0)


def test_later_editions_use_the_ratio_the_other_way_round():
    assert balance_advice_1_2(1.1) is BalanceAdvice.CORRECT
    text = r"^balance ratio 0.8 is below 1; divide the greater suction by the lesser$"
    with pytest.raises(RangeError, match=text):
        balance_advice_1_2(0.8)


def test_streams_mix_by_mass():
    assert mixed_temperature([3.0, 1.0], [300.0, 340.0]) == 310.0
    assert mixed_temperature(np.ones((2, 0)), np.ones((2, 0))).shape == (0,)
    with pytest.raises(RangeError, match=r"^sum of mass flows 0 kg/s is not above 0 kg/s"):
        mixed_temperature([0.0, 0.0], [300.0, 300.0])


def test_resultant_by_area():
    assert resultant_velocity_pressure_by_area([1.0, 1.0], [0.1, 0.1], 1.2) == pytest.approx(60.0)
    assert resultant_velocity_pressure_by_area(np.ones((2, 0)), np.ones((2, 0)), 1.2).shape == (0,)
    with pytest.raises(RangeError, match=r"^area 0 m2 is not above 0 m2"):
        resultant_velocity_pressure_by_area([1.0, 1.0], [0.1, 0.0], 1.2)
