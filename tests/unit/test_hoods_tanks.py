import pytest

from hoodwright.errors import InputError, RangeError
from hoodwright.hoods import lateral_exhaust_flow, tank_control_velocity
from hoodwright.tables import load_table

CLASSES = load_table("tank_control_velocity").columns["class"]


@pytest.mark.parametrize("tank_class", CLASSES)
@pytest.mark.parametrize("against_wall", [True, False])
@pytest.mark.parametrize("ratio", [0.02, 0.1, 0.3, 0.9, 1.0, 2.0])
def test_every_class_has_a_rate_at_every_shape(tank_class, against_wall, ratio):
    flow = lateral_exhaust_flow(tank_class, 2.0, 2.0 * ratio, against_wall=against_wall)
    assert flow / (4 * ratio) >= tank_control_velocity(tank_class)


def test_a_tank_as_wide_as_twice_its_length_is_the_last():
    with pytest.raises(RangeError, match=r"width over length 2.5 is above 2, .*; draw from both sides or push"):
        lateral_exhaust_flow("A-1", 1.0, 2.5, against_wall=True)
    with pytest.raises(RangeError, match="length 0 m is not above 0 m"):
        lateral_exhaust_flow("A-1", 0.0, 1.0, against_wall=True)


def test_an_unknown_class_is_told_the_rows():
    with pytest.raises(InputError, match="class 'D-4' is not in table tank_control_velocity; it has: A-1, A-2"):
        tank_control_velocity("D-4")
