import pytest

from hoodwright.ducts import (
    STACK_EXIT_LOSS,
    branch_entry_loss,
    elbow_angle_factor,
    elbow_angle_share,
    gored_elbow_loss,
    gored_elbow_rows,
    mitred_elbow_loss,
    mitred_elbow_reynolds_factor,
    older_lev_elbow_loss,
    rounded_bend_loss,
    smooth_elbow_loss,
    weather_cap_loss,
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
        (mitred_elbow_loss, 15.0, "^angle_deg 15.0 is outside 20 to 90, .*A-7C"),
        (weather_cap_loss, 0.4, "^gap_d 0.4 is outside 0.45 to 1, .*weather cap"),
        (older_lev_elbow_loss, 1.0, "^radius_ratio_r_d 1.0 is outside 1.25 to 2.5, .*older table"),
        (mitred_elbow_reynolds_factor, 5e3, "^reynolds_1e4 0.5 is outside 1 to 14, .*A-7C, note"),
        (branch_entry_loss, 5.0, "^angle_deg 5.0 is outside 10 to 90, .*branch-entry loss"),
        (
            elbow_angle_share,
            91.0,
            r"^angle 91 deg is above 90 deg, the limit of \[lev-worksheet\]; give the turn in degrees$",
        ),
    ],
)
def test_angle_outside_the_table_is_refused(function, angle, text):
    with pytest.raises(RangeError, match=text):
        function(angle)


def test_gored_elbow_that_no_table_holds_is_answered_with_what_there_is():
    text = (
        r"^a gored elbow of 6 pieces is not in \[fitting-table, table A-7B\]; it has 3, 4, 5 pieces; "
        "choose one of these or give the loss yourself$"
    )
    with pytest.raises(RangeError, match=text):
        gored_elbow_loss(6, 1.5)
    text = (
        r"^radius ratio 0.5 is below 0.75, the rows of \[fitting-table, table A-7B\] for 5 pieces; "
        "choose one inside or give the loss yourself$"
    )
    with pytest.raises(RangeError, match=text):
        gored_elbow_loss(5, 0.5)


def test_gored_elbow_between_two_rows():
    assert gored_elbow_loss(5, 1.25) == pytest.approx((0.33 + 0.24) / 2)
    ratios, losses = gored_elbow_rows(3)
    assert (list(ratios), list(losses)) == ([0.5, 0.75, 1.0, 1.5, 2.0], [0.98, 0.54, 0.42, 0.34, 0.33])


@pytest.mark.parametrize(
    "arguments, text",
    [
        ((190.0, 3.0, 0.02), r"^angle 190 deg is above 180 deg, the limit of our use of \[rennels-bend\]"),
        ((90.0, 0.5, 0.02), "^radius ratio 0.5 is below 1, the limit"),
        ((90.0, 3.0, -0.02), "^friction factor -0.02 is below 0"),
    ],
)
def test_bend_outside_our_limits_is_refused(arguments, text):
    with pytest.raises(RangeError, match=text):
        rounded_bend_loss(*arguments)


def test_a_bend_that_turns_nowhere_loses_nothing():
    assert rounded_bend_loss(0.0, 5.0, 0.02) == 0.0


def test_gored_elbow_loses_more_than_a_smooth_one():
    assert gored_elbow_loss(4, 1.5) > gored_elbow_loss(5, 1.5) > smooth_elbow_loss(1.5)


def test_the_two_rules_for_small_angles_differ():
    assert elbow_angle_factor(45.0) > elbow_angle_share(45.0) == 0.5


def test_free_jet_loses_one_velocity_pressure():
    assert STACK_EXIT_LOSS == 1.0
