import pytest

from hoodwright.ducts import (
    STACK_EXIT_LOSS,
    branch_entry_loss,
    elbow_angle_factor,
    elbow_angle_share,
    gored_elbow_loss,
    mitred_elbow_loss,
    smooth_elbow_loss,
)
from hoodwright.errors import RangeError


def test_between_two_rows_a_straight_line():
    assert smooth_elbow_loss(1.25) == pytest.approx((0.22 + 0.15) / 2)
    assert branch_entry_loss(55.0) == pytest.approx((0.32 + 0.44) / 2)


@pytest.mark.parametrize("ratio", [0.49, 2.51])
def test_elbow_outside_the_table_is_refused(ratio):
    text = f"^radius_ratio_r_d {ratio} is outside 0.5 to 2.5, the rows of \\[fitting-table, table A-7A\\]"
    with pytest.raises(RangeError, match=text):
        smooth_elbow_loss(ratio)


@pytest.mark.parametrize(
    "function, angle, text",
    [
        (elbow_angle_factor, 19.0, "^angle_deg 19.0 is outside 20 to 90, .*A-7A, note"),
        (mitred_elbow_loss, 30.0, "^angle_deg 30.0 is outside 45 to 90, .*A-7C"),
        (branch_entry_loss, 5.0, "^angle_deg 5.0 is outside 10 to 90, .*branch-entry loss"),
        (
            elbow_angle_share,
            91.0,
            r"^angle 91 deg is above 90 deg, the limit of \[lev-elbows\]; give the turn in degrees$",
        ),
    ],
)
def test_angle_outside_the_table_is_refused(function, angle, text):
    with pytest.raises(RangeError, match=text):
        function(angle)


def test_gored_elbow_that_no_table_holds_is_answered_with_what_there_is():
    text = (
        r"^gored elbow of 3 pieces at radius ratio 1.5 is not in \[lev-elbows, .*\]; "
        r"it has: 4 pieces at 1.5, 5 pieces at 1.5; choose one of these or give the loss yourself$"
    )
    with pytest.raises(RangeError, match=text):
        gored_elbow_loss(3, 1.5)
    with pytest.raises(RangeError, match=r"^gored elbow of 5 pieces at radius ratio 2 is not in"):
        gored_elbow_loss(5, 2.0)


def test_gored_elbow_loses_more_than_a_smooth_one():
    assert gored_elbow_loss(4, 1.5) > gored_elbow_loss(5, 1.5) > smooth_elbow_loss(1.5)


def test_the_two_rules_for_small_angles_differ():
    assert elbow_angle_factor(45.0) > elbow_angle_share(45.0) == 0.5


def test_free_jet_loses_one_velocity_pressure():
    assert STACK_EXIT_LOSS == 1.0
