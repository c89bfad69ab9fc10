import numpy as np
import pytest

from hoodwright.errors import InputError, RangeError
from hoodwright.hoods import (
    RELEASES,
    capture_velocity,
    capture_velocity_range,
    form_flow_range,
    form_source,
    required_flow,
    welding_hood_flow,
)
from hoodwright.sources import find_source
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


def test_flow_of_a_form_by_area_length_and_diameter():
    """200 cfm/ft2 is 1.016 m/s; 350 cfm/ft is 0.5419 m2/s; 25 cfm/in is 0.4645 m2/s."""
    assert form_flow_range("downdraught bench", 0.5, 1.0) == pytest.approx((0.508, 1.016), rel=1e-4)
    assert form_flow_range("side-draught bench", 0.5, 1.2) == pytest.approx((0.65032, 0.65032), rel=1e-4)
    assert form_flow_range("on-tool grinder", 0.01, 0.125)[0] == pytest.approx(0.058064, rel=1e-4)


def test_form_names_its_source():
    assert form_source("on-tool grinder").startswith("us-1926-1153, ")


def test_each_form_is_trusted_no_more_than_its_source():
    rows = zip(*(load_table("hood_forms").columns[name] for name in ("row_source", "trust")), strict=True)
    assert all(trust.startswith(find_source(key).trust) for key, trust in rows)


def test_unknown_form_is_answered_with_the_known_ones():
    with pytest.raises(InputError, match=r"^form 'table' is not in table hood_forms; it has: downdraught bench, "):
        form_flow_range("table", 0.5, 1.0)


def test_welding_hood_beyond_its_last_zone_is_refused():
    assert welding_hood_flow([0.05, 0.16]).shape == (2,)
    assert welding_hood_flow([]).shape == (0,)
    with pytest.raises(RangeError, match=r"^distance 0\.4 m is above 0\.3048 m, the last zone of \[us-1910-252"):
        welding_hood_flow(0.4)
