import pytest

from hoodwright.ducts import rectangular_elbow_loss, rectangular_mitred_elbow_loss
from hoodwright.errors import RangeError


def test_between_the_rows_straight_lines_in_both_directions():
    assert rectangular_elbow_loss(0.75, 1.25) == pytest.approx((0.28 + 0.18 + 0.20 + 0.13) / 4)
    assert rectangular_mitred_elbow_loss(82.5, 3.0) == pytest.approx((0.73 + 0.63 + 1.1 + 0.92) / 4)


@pytest.mark.parametrize(
    "function, arguments, text",
    [
        (rectangular_elbow_loss, (0.4, 1.0), r"^width ratio 0.4 is below 0.5, the rows of \[duct-loss-table, "),
        (rectangular_elbow_loss, (1.0, 2.0), r"^radius ratio 2 is above 1.5, the rows of .* give the loss yourself$"),
        (rectangular_mitred_elbow_loss, (10.0, 1.0), r"^angle 10 is below 20, the rows of \[fitting-table, table A-7D"),
        (rectangular_mitred_elbow_loss, (90.0, 9.0), r"^height ratio 9 is above 8, the rows of"),
    ],
)
def test_outside_the_table_is_refused(function, arguments, text):
    with pytest.raises(RangeError, match=text):
        function(*arguments)
