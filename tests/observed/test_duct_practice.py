"""Ducts and fans by common practice, without a published source."""

import math

import pytest

from hoodwright.ducts import Side, mixed_temperature, motor_power, roughness, suction_at_diameter


def test_belts_take_about_a_twentieth_of_the_motor():
    """A fan of 5.7 kW at its shaft is driven by 6 kW."""
    assert motor_power(5700.0, 0.05) == pytest.approx(6000.0)


def test_equal_masses_of_hot_and_cold_air_meet_half_way():
    assert mixed_temperature([1.0, 1.0], [293.15, 353.15]) == pytest.approx(323.15)


def test_one_coarse_size_narrower_takes_about_two_and_a_half_times_the_suction():
    """The area falls by 36 to 39 % from one preferred size to the next: the velocity pressure rises 2.4 to 2.7-fold."""
    side = Side(0.2, 0.0, 1.49, 0.0, 1.2, 1.81e-5)
    ratio = suction_at_diameter(side, 0.125) / suction_at_diameter(side, 0.160)
    assert ratio == pytest.approx((160 / 125) ** 4) and 2.3 < ratio < 2.8


def test_a_hose_is_the_roughest_duct():
    assert roughness("flexible") > 10 * roughness("galvanised")
    assert math.isclose(roughness("stainless"), roughness("black iron"))
