import numpy as np
import pytest

from hoodwright.errors import RangeError
from hoodwright.hoods import (
    half_jet_flow,
    plane_jet_flow,
    plane_jet_force,
    plane_jet_velocity,
    push_flow_of_figure,
    push_pull_exhaust,
    push_pull_hood_height,
    push_pull_tank_exhaust,
    push_reach,
    tank_push_flow,
)

# function, arguments, value worked by hand
CASES = [
    (plane_jet_velocity, (0.9, 0.01), 2.28 / 90**0.5),
    (plane_jet_flow, (0.9, 0.01), 0.62 * 90**0.5),
    (half_jet_flow, (0.9, 0.005), 0.62 * 90**0.5),
    (plane_jet_force, (0.1, 0.02, 1.2), 0.6),
    (push_reach, (1.5,), 9.0),
    (push_pull_hood_height, (2.0,), 0.352654),
    (push_flow_of_figure, (1.0, 1.0), 0.1524),  # 1 / (3.28084 x 2.0)
    (tank_push_flow, (0.01, 1.0), 0.06815182),  # 243 sqrt(0.0328084 ft2) = 44.0146 cfm a foot
]


@pytest.mark.parametrize("function, values, expected", CASES, ids=lambda v: getattr(v, "__name__", None))
def test_scalar_array_and_empty_array(function, values, expected):
    assert function(*values) == pytest.approx(expected, rel=1e-5)
    first, *rest = values
    assert function(np.array([first, first]), *rest).tolist() == pytest.approx([expected] * 2, rel=1e-5)
    assert function(np.array([]), *rest).shape == (0,)


@pytest.mark.parametrize("function", [push_pull_exhaust, push_pull_tank_exhaust])
def test_ranges_of_scalar_array_and_empty_array(function):
    low, high = function(1.0)
    assert 0 < low < high
    assert function(np.array([1.0, 2.0]))[1].tolist() == pytest.approx([high, 2 * high])
    assert function(np.array([]))[0].shape == (0,)


REFUSED = [
    (plane_jet_velocity, (-1.0, 0.01), "distance -1 m is below 0 m"),
    (plane_jet_flow, (1.0, 0.0), "slot width 0 m is not above 0 m"),
    (half_jet_flow, (1.0, -0.1), "slot width -0.1 m is not above 0 m"),
    (plane_jet_force, (1.0, 0.0, 1.2), "slot area 0 m2 is not above 0 m2"),
    (push_pull_exhaust, (0.0,), "jet flow 0 m3/s is not above 0 m3/s; give its true size"),
    (push_reach, (0.0,), "slot length 0 m is not above 0 m"),
    (push_pull_hood_height, (0.0,), "distance 0 m is not above 0 m"),
    (push_flow_of_figure, (1.0, 0.0), "distance 0 m is not above 0 m"),
    (push_pull_tank_exhaust, (0.0,), "tank area 0 m2 is not above 0 m2"),
    (tank_push_flow, (0.0, 1.0), "nozzle area 0 m2 is not above 0 m2"),
]


@pytest.mark.parametrize("function, values, text", REFUSED)
def test_refusals_say_what_got_allowed_and_what_to_do(function, values, text):
    with pytest.raises(RangeError, match=text):
        function(*values)


def test_the_jet_begins_with_the_flow_and_speed_of_its_slot():
    assert plane_jet_flow(0.0, 0.01) == 1.0 == plane_jet_velocity(0.0, 0.01)


def test_core_and_jet_meet_within_the_rounding_of_their_constants():
    inside, beyond = plane_jet_flow(5.2 - 1e-9, 1.0), plane_jet_flow(5.2 + 1e-9, 1.0)
    assert inside == pytest.approx(beyond, rel=0.005 / 0.62)
