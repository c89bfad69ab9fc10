import numpy as np
import pytest

from hoodwright.ducts import (
    BalanceAdvice,
    balance_advice,
    balance_ratio,
    corrected_flow,
    duct_static_loss,
    junction_acceleration_loss,
    resultant_velocity_pressure,
    static_pressure_along_run,
    static_pressure_behind_hood,
)
from hoodwright.errors import InputError, RangeError


def test_static_pressure_behind_a_hood_is_suction():
    assert static_pressure_behind_hood(0.5, 100.0) == -150.0


def test_run_from_hood_to_fan_adds_up():
    start = static_pressure_behind_hood(0.5, 100.0)
    losses = [duct_static_loss(100.0, 0.02, 5.0, 0.1, 0.3), 20.0]
    np.testing.assert_allclose(static_pressure_along_run(start, losses), [-280.0, -300.0])


def test_run_without_ducts_has_no_stations():
    assert static_pressure_along_run(-150.0, []).shape == (0,)


def test_joining_streams_of_different_size_may_be_arrays():
    flows, pressures = np.ones((2, 0)), np.ones((2, 0))
    assert resultant_velocity_pressure(flows, pressures).shape == (0,)
    assert resultant_velocity_pressure([3.0, 1.0], [100.0, 200.0]) == 125.0


def test_main_that_is_slower_gives_no_regain():
    np.testing.assert_array_equal(junction_acceleration_loss([250.0, 150.0], 200.0), [50.0, 0.0])


def test_positive_static_pressure_at_a_junction_is_refused():
    text = "^p_static_b 400.0 Pa is not suction \\(below 0\\), .* upstream of a fan; check its sign$"
    with pytest.raises(RangeError, match=text):
        balance_ratio(-500.0, 400.0)


def test_exchanged_sides_are_refused():
    text = "^p_static_governing -400.0 Pa has less suction than p_static_low -500.0 Pa; .*exchange them$"
    with pytest.raises(InputError, match=text):
        corrected_flow(0.2, -400.0, -500.0)


def test_ratio_above_one_is_refused():
    with pytest.raises(RangeError, match=r"^balance ratio 1.2 is above 1; divide the lesser suction by the greater$"):
        balance_advice(1.2)


def test_streams_without_flow_are_refused():
    with pytest.raises(RangeError, match=r"^sum of flows 0 m3/s is not above 0 m3/s"):
        resultant_velocity_pressure([0.0, 0.0], [100.0, 100.0])


def test_negative_losses_are_refused():
    with pytest.raises(RangeError, match=r"^loss -5 Pa is below 0 Pa"):
        static_pressure_along_run(-100.0, [10.0, -5.0])
    with pytest.raises(RangeError, match=r"^fitting loss -1 is below 0"):
        duct_static_loss(100.0, 0.02, 5.0, 0.1, -1.0)
    with pytest.raises(RangeError, match=r"^entry loss -0.5 is below 0"):
        static_pressure_behind_hood(-0.5, 100.0)
    with pytest.raises(RangeError, match=r"^velocity pressure of the main -1 Pa is below 0 Pa"):
        junction_acceleration_loss(-1.0, 100.0)


def test_advice_speaks_plain_words():
    assert str(BalanceAdvice.CORRECT) == "correct the flow of the side with less suction"
