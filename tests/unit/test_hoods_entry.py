import numpy as np
import pytest

from hoodwright.errors import InputError, RangeError
from hoodwright.hoods import entry_coefficient, entry_loss_coefficient, flow_from_suction, hood_suction


@pytest.mark.parametrize(
    "function, arguments",
    [
        (entry_coefficient, (0.93,)),
        (hood_suction, (0.1, 0.01, 0.93, 1.2)),
        (flow_from_suction, (115.8, 0.01, 0.93, 1.2)),
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


def test_an_unknown_hood_is_told_the_rows():
    with pytest.raises(
        InputError, match="hood 'trumpet' is not in table hood_entry_loss; it has: plain, flanged, bell"
    ):
        entry_loss_coefficient("trumpet")


@pytest.mark.parametrize(
    "function, arguments, text",
    [
        (entry_coefficient, (-0.1,), r"entry loss coefficient -0\.1 is below 0; give it as a positive size"),
        (hood_suction, (-0.1, 0.01, 0.9, 1.2), r"flow -0\.1 m3/s is below 0 m3/s"),
        (hood_suction, (0.1, 0.0, 0.9, 1.2), "duct area 0 m2 is not above 0 m2"),
        (
            flow_from_suction,
            (-115, 0.01, 0.9, 1.2),
            "hood suction -115 Pa is below 0 Pa; give it as a positive size",
        ),
        (flow_from_suction, (115, 0.01, 0.9, 0), "density 0 kg/m3 is not above 0 kg/m3"),
    ],
)
def test_what_is_refused_and_in_which_words(function, arguments, text):
    with pytest.raises(RangeError, match=text):
        function(*arguments)
