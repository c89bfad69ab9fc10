import numpy as np
import pytest

from hoodwright.errors import InputError, RangeError
from hoodwright.hoods import RELEASES, capture_velocity, capture_velocity_range, required_flow
from hoodwright.tables import load_table


def test_every_release_class_has_a_row_and_every_row_a_class():
    assert load_table("capture_velocity").columns["release"] == RELEASES


@pytest.mark.parametrize("release", RELEASES)
def test_a_high_hazard_takes_the_upper_end(release):
    low, high = capture_velocity_range(release)
    assert (capture_velocity(release, high_hazard=False), capture_velocity(release, high_hazard=True)) == (
        low,
        high,
    )


def test_an_unknown_release_is_told_the_four_classes():
    text = "release 'wild' is not in table capture_velocity; it has: still, gentle, driven, thrown"
    with pytest.raises(InputError, match=text):
        capture_velocity_range("wild")


def test_required_flow_of_scalar_array_and_empty_array():
    assert required_flow(0.5, 5.0) == pytest.approx(0.1)
    assert required_flow(np.array([0.5, 1.0]), 5.0).tolist() == pytest.approx([0.1, 0.2])
    assert required_flow(np.array([]), 5.0).shape == (0,)


def test_required_flow_refuses_no_velocity():
    with pytest.raises(RangeError, match="capture velocity 0 m/s is not above 0 m/s; give its true size"):
        required_flow(0.0, 5.0)
    with pytest.raises(RangeError, match="velocity per flow -1 1/m2 is not above 0 1/m2"):
        required_flow(0.5, -1.0)
