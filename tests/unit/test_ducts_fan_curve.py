"""Fan curves: what is rated, other speeds, and what a year costs."""

import numpy as np
import pytest

from hoodwright.ducts.fan_curve import at_speed, motor_margin, rated_curve, speed_for, system_effect_loss, yearly_energy
from hoodwright.errors import NoSolution, RangeError

FLOWS, PRESSURES = [0.0, 0.2, 0.4, 0.6], [1000.0, 1100.0, 900.0, 300.0]


def test_static_pressure_gains_the_velocity_pressure_of_the_outlet():
    # 0.4 m3/s through 0.04 m2 is 10 m/s, 60 Pa at 1.2 kg/m3
    curve = rated_curve(FLOWS, PRESSURES, static=True, outlet_area=0.04)
    assert curve.rise(0.4) == pytest.approx(960.0)


def test_total_pressure_is_taken_as_it_is():
    assert rated_curve(FLOWS, PRESSURES, static=False).rise(FLOWS) == pytest.approx(PRESSURES)


def test_a_rating_in_thin_air_is_brought_to_standard_density():
    assert rated_curve(FLOWS, PRESSURES, static=False, density=1.0).rise(0.2) == pytest.approx(1320.0)


def test_half_the_speed_gives_half_the_flow_and_a_quarter_of_the_pressure():
    assert at_speed(rated_curve(FLOWS, PRESSURES, static=False), 0.5).rise(0.2) == pytest.approx(225.0)


@pytest.mark.parametrize("ratio", [0.5, 1.0, 1.4])
def test_speed_for_finds_the_speed_again(ratio):
    curve = rated_curve(FLOWS, PRESSURES, static=False)
    pressure = float(at_speed(curve, ratio).rise(0.3))
    assert speed_for(curve, 0.3, pressure) == pytest.approx(ratio, rel=1e-9)


def test_speed_for_says_when_no_speed_does():
    with pytest.raises(NoSolution, match=r"no speed from 0.05 to 3 times the rated one gives 5e\+04 Pa at 0.3 m3/s"):
        speed_for(rated_curve(FLOWS, PRESSURES, static=False), 0.3, 50_000.0)


def test_static_without_an_outlet_is_refused():
    with pytest.raises(RangeError, match="area of the fan's outlet nan is not a finite number"):
        rated_curve(FLOWS, PRESSURES, static=True)


def test_scalars_arrays_and_nothing():
    assert system_effect_loss(0.5, 100.0) == pytest.approx(50.0)
    assert motor_margin(4000.0, [3000.0, 5000.0]) == pytest.approx([0.25, -0.25])
    assert yearly_energy(3000.0, 2000.0, 0.9) == pytest.approx(6666.667, rel=1e-6)
    for function in (system_effect_loss, motor_margin, yearly_energy):
        assert function(np.ones(0), np.ones(0)).shape == (0,)


def test_more_hours_than_a_year_has_are_refused():
    with pytest.raises(RangeError, match="running time 9000 h is above 8784 h, the hours of a leap year"):
        yearly_energy(1.0, 9000.0)
