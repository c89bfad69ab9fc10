import numpy as np
import pytest

from hoodwright.errors import RangeError
from hoodwright.hoods import (
    EVEN_FLOW_RATIO,
    SLOT_LOSS,
    compound_entry_loss,
    compound_hood_suction,
    even_flow_ratio,
    hood_suction,
)


@pytest.mark.parametrize(
    "function, arguments",
    [
        (compound_hood_suction, (0.3, 0.03, 0.02, 0.25, 1.2)),
        (compound_entry_loss, (0.03, 0.02, 0.25)),
        (even_flow_ratio, (0.02, 0.06)),
    ],
)
def test_scalar_array_and_empty_array(function, arguments):
    scalar = function(*arguments)
    assert isinstance(scalar, float)
    for shape in ((3,), (2, 1), (0,)):
        found = function(np.full(shape, arguments[0]), *arguments[1:])
        assert found.shape == shape
        assert np.all(found == scalar)


def test_slots_of_ten_metres_a_second_before_a_duct_of_fifteen():
    found = compound_hood_suction(0.3, 0.03, 0.02, 0.25, 1.2)  # velocity pressures 60 and 135 Pa
    assert found == pytest.approx(1.78 * 60 + 0.25 * 135 + 135)


def test_where_the_slots_are_faster_the_air_is_accelerated_for_them():
    found = compound_hood_suction(0.3, 0.02, 0.03, 0.25, 1.2)
    assert found == pytest.approx(1.78 * 135 + 0.25 * 60 + 135)


def test_the_one_coefficient_gives_the_same_suction():
    for slot_area in (0.01, 0.02, 0.05):
        one = hood_suction(0.3, 0.02, compound_entry_loss(slot_area, 0.02, 0.25), 1.2)
        assert one == pytest.approx(compound_hood_suction(0.3, slot_area, 0.02, 0.25, 1.2))


def test_a_slot_as_wide_as_the_world_leaves_the_duct_entry_alone():
    assert compound_entry_loss(1e9, 0.02, 0.25) == pytest.approx(0.25)


def test_a_plenum_of_twice_the_slots_is_just_even():
    assert even_flow_ratio(0.03, 0.06) == EVEN_FLOW_RATIO
    assert SLOT_LOSS == 1.78


@pytest.mark.parametrize(
    "function, arguments, text",
    [
        (compound_hood_suction, (-0.3, 0.03, 0.02, 0.25, 1.2), r"flow -0\.3 m3/s is below 0 m3/s"),
        (compound_hood_suction, (0.3, 0, 0.02, 0.25, 1.2), "slot area 0 m2 is not above 0 m2"),
        (compound_hood_suction, (0.3, 0.03, 0, 0.25, 1.2), "duct area 0 m2 is not above 0 m2"),
        (compound_hood_suction, (0.3, 0.03, 0.02, -0.25, 1.2), r"duct loss -0\.25 is below 0"),
        (compound_hood_suction, (0.3, 0.03, 0.02, 0.25, 0), "density 0 kg/m3 is not above 0 kg/m3"),
        (compound_entry_loss, (0.03, 0.02, 0.25, -1), "slot loss -1 is below 0"),
        (even_flow_ratio, (0.03, 0), "plenum area 0 m2 is not above 0 m2"),
    ],
)
def test_what_is_refused_and_in_which_words(function, arguments, text):
    with pytest.raises(RangeError, match=text):
        function(*arguments)
