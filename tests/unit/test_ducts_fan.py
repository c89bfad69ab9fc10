import pytest

from hoodwright.ducts import (
    air_power,
    fan_static_pressure,
    fan_total_pressure,
    motor_power,
    scaled_flow,
    scaled_power,
    scaled_pressure,
    shaft_power,
)
from hoodwright.errors import RangeError


def test_fan_pressures_of_one_fan():
    p_static_in, p_velocity, p_static_out = -800.0, 150.0, 100.0
    p_total_in, p_total_out = p_static_in + p_velocity, p_static_out + p_velocity
    assert fan_total_pressure(p_total_out, p_total_in) == 900.0
    assert fan_static_pressure(p_static_out, p_total_in) == 750.0


def test_fan_static_is_fan_total_less_outlet_velocity_pressure():
    assert fan_total_pressure(250.0, -650.0) - fan_static_pressure(100.0, -650.0) == 150.0


def test_half_efficiency_takes_twice_the_air_power():
    assert shaft_power(1.5, 800.0, 0.5) == 2 * air_power(1.5, 800.0) == 2400.0


def test_efficiency_in_percent_is_refused():
    with pytest.raises(RangeError, match=r"^efficiency 60 is above 1; give a share, such as 0.6$"):
        shaft_power(1.0, 800.0, 60.0)
    with pytest.raises(RangeError, match=r"^efficiency 0 is not above 0"):
        shaft_power(1.0, 800.0, 0.0)


def test_suction_in_place_of_fan_pressure_is_refused():
    with pytest.raises(RangeError, match=r"^fan total pressure -800 Pa is below 0 Pa; give it as a positive size$"):
        air_power(1.0, -800.0)


@pytest.mark.parametrize("law", [scaled_flow, scaled_pressure, scaled_power])
def test_speed_ratio_of_zero_is_refused(law):
    with pytest.raises(RangeError, match=r"^speed ratio 0 is not above 0"):
        law(1.0, 0.0)


def test_thinner_air_lowers_pressure_and_power_alike():
    assert scaled_pressure(1000.0, 1.0, density_ratio=0.8) == pytest.approx(800.0)
    assert scaled_power(1000.0, 1.0, density_ratio=0.8) == pytest.approx(800.0)


def test_belts_ask_more_of_the_motor():
    assert motor_power(950.0, 0.05) == pytest.approx(1000.0)
    assert motor_power(950.0, 0.0) == 950.0
    with pytest.raises(RangeError, match=r"^drive loss 5 is above 0.5; give a share, such as 0.05$"):
        motor_power(950.0, 5.0)
    with pytest.raises(RangeError, match=r"^shaft power -1 W is below 0 W"):
        motor_power(-1.0, 0.0)
