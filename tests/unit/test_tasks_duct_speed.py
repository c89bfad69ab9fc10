"""A fan that holds a pressure: its speed by hand, and what happens as gates shut."""

import math

import pytest

from built_shop import one_hood, two_hoods
from hoodwright.errors import InputError, NoSolution
from hoodwright.tasks.as_built.network import as_built
from hoodwright.tasks.as_built.speed import speed_to_hold


def test_suction_goes_with_the_square_of_the_speed():
    full = -as_built(one_hood()).duct("A").static_pressure
    speed, found = speed_to_hold(one_hood(), "fan", "A", full / 2)
    assert speed == pytest.approx(math.sqrt(0.5), rel=1e-4)
    assert found.duct("A").static_pressure == pytest.approx(-full / 2, rel=1e-4)
    assert found.fan("fan").speed == pytest.approx(speed)


def test_a_shut_gate_slows_the_fan_and_leaves_the_other_hood_alone():
    held = 150.0
    both, before = speed_to_hold(two_hoods(), "fan", "A", held)
    one, after = speed_to_hold(two_hoods(), "fan", "A", held, closed=["hood 2"])
    assert one < both
    assert after.hood("hood 1").flow == pytest.approx(before.hood("hood 1").flow, rel=1e-3)


def test_what_cannot_be_held():
    with pytest.raises(NoSolution, match=r"no speed of fan from 0\.2 to 1\.5 times that of its curve holds"):
        speed_to_hold(one_hood(), "fan", "A", 50000.0)
    with pytest.raises(InputError, match="suction 0 Pa is not above 0"):
        speed_to_hold(one_hood(), "fan", "A", 0.0)
