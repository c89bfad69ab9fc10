import numpy as np
import pytest

from hoodwright.errors import InputError, RangeError
from hoodwright.hoods import (
    entry_coefficient,
    flow_from_suction,
    flow_from_tap,
    flow_through_filter_from_suction,
    friction_to_tap,
    hood_filter_loss,
    hood_suction,
    suction_at_tap,
    tap_distance_range,
)


@pytest.mark.parametrize(
    "function, arguments",
    [
        (entry_coefficient, (0.93,)),
        (hood_suction, (0.1, 0.01, 0.93, 1.2)),
        (flow_from_suction, (115.8, 0.01, 0.93, 1.2)),
        (friction_to_tap, (0.02, 0.5, 0.1)),
        (suction_at_tap, (0.1, 0.01, 0.93, 0.1, 1.2)),
        (flow_from_tap, (121.8, 0.01, 0.93, 0.1, 1.2)),
        (hood_filter_loss, (0.1, 80.0, 0.2, 1.0)),
        (flow_through_filter_from_suction, (155.8, 0.01, 0.93, 1.2, 80.0, 0.2, 1.0)),
    ],
)
def test_scalar_array_and_empty_array(function, arguments):
    scalar = function(*arguments)
    assert isinstance(scalar, float)
    for shape in ((3,), (2, 1), (0,)):
        found = function(np.full(shape, arguments[0]), *arguments[1:])
        assert found.shape == shape
        assert np.all(found == scalar)


def test_suction_of_a_plain_pipe_end_at_ten_metres_a_second():
    assert hood_suction(0.1, 0.01, 0.93, 1.2) == pytest.approx(1.93 * 60)  # Pa: velocity pressure is 60
    assert flow_from_suction(1.93 * 60, 0.01, 0.93, 1.2) == pytest.approx(0.1)


def test_without_loss_the_suction_is_the_acceleration_alone():
    assert entry_coefficient(0.0) == 1.0
    assert hood_suction(0.1, 0.01, 0.0, 1.2) == pytest.approx(60.0)


def test_a_tap_five_diameters_on_reads_the_friction_too():
    friction = friction_to_tap(0.02, 0.5, 0.1)
    assert friction == pytest.approx(0.1)
    assert suction_at_tap(0.1, 0.01, 0.93, friction, 1.2) == pytest.approx(2.03 * 60)
    assert flow_from_tap(2.03 * 60, 0.01, 0.93, friction, 1.2) == pytest.approx(0.1)


def test_forgotten_friction_at_five_diameters_reads_a_few_per_cent_too_much_flow():
    read = suction_at_tap(0.1, 0.01, 0.49, friction_to_tap(0.02, 0.5, 0.1), 1.2)
    assert flow_from_suction(read, 0.01, 0.49, 1.2) / 0.1 == pytest.approx(1.033, abs=0.001)


def test_places_of_a_tap():
    assert tap_distance_range("tapered", 0.1) == pytest.approx((0.2, 0.4))
    assert tap_distance_range("flat", 0.1) == pytest.approx((0.4, 0.6))
    near, far = tap_distance_range("flat", np.array([]))
    assert near.shape == far.shape == (0,)


def test_a_filter_at_half_its_rated_flow():
    assert hood_filter_loss(0.1, 80.0, 0.2, 1.0) == pytest.approx(40)
    assert hood_filter_loss(0.1, 80.0, 0.2, 2.0) == pytest.approx(20)


def test_flow_through_a_filter_comes_back():
    suction = hood_suction(0.1, 0.01, 0.93, 1.2) + hood_filter_loss(0.1, 80.0, 0.2, 1.0)
    assert flow_through_filter_from_suction(suction, 0.01, 0.93, 1.2, 80.0, 0.2, 1.0) == pytest.approx(0.1, rel=1e-9)


@pytest.mark.parametrize(
    "function, arguments, text",
    [
        (entry_coefficient, (-0.1,), r"entry loss coefficient -0\.1 is below 0; give it as a positive size"),
        (hood_suction, (-0.1, 0.01, 0.9, 1.2), r"flow -0\.1 m3/s is below 0 m3/s"),
        (hood_suction, (0.1, 0.0, 0.9, 1.2), "duct area 0 m2 is not above 0 m2"),
        (flow_from_suction, (-115, 0.01, 0.9, 1.2), "hood suction -115 Pa is below 0 Pa; give it as a positive size"),
        (flow_from_suction, (115, 0.01, 0.9, 0), "density 0 kg/m3 is not above 0 kg/m3"),
        (friction_to_tap, (0.02, -0.5, 0.1), r"tap distance -0\.5 m is below 0 m"),
        (friction_to_tap, (0.02, 0.5, 0), "duct diameter 0 m is not above 0 m"),
        (suction_at_tap, (0.1, 0.01, 0.9, -0.1, 1.2), r"friction up to the tap -0\.1 is below 0"),
        (flow_from_tap, (-9, 0.01, 0.9, 0.1, 1.2), "hood suction -9 Pa is below 0 Pa"),
        (hood_filter_loss, (0.1, 80, 0, 1), "rated flow 0 m3/s is not above 0 m3/s"),
        (hood_filter_loss, (0.1, 80, 0.2, 4), "exponent 4 is above 3; a filter has about 1, a screen 2"),
        (flow_through_filter_from_suction, (100, 0.01, 0.9, 1.2, -80, 0.2, 1), "rated loss -80 Pa is below 0 Pa"),
        (tap_distance_range, ("flat", 0), "duct diameter 0 m is not above 0 m"),
    ],
)
def test_what_is_refused_and_in_which_words(function, arguments, text):
    with pytest.raises(RangeError, match=text):
        function(*arguments)


def test_an_unknown_entry_is_told_the_two():
    with pytest.raises(InputError, match="entry 'round' is not in the rule of the tap; choose one of: tapered, flat"):
        tap_distance_range("round", 0.1)
