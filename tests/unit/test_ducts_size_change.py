import pytest

from hoodwright.ducts import contraction_loss, expansion_loss_share, static_regain
from hoodwright.errors import InputError, RangeError


def test_regain_is_what_the_cone_does_not_lose():
    assert static_regain(10.0, 200.0, 100.0) == pytest.approx(0.72 * 100.0)


def test_a_steeper_cone_wins_back_less():
    assert static_regain(30.0, 200.0, 100.0) < static_regain(7.0, 200.0, 100.0) < 100.0


@pytest.mark.parametrize(
    "function, angle, text",
    [
        (contraction_loss, 20.0, "^angle_deg 20.0 is outside 30 to 60, .*contraction"),
        (expansion_loss_share, 45.0, "^angle_deg 45.0 is outside 5 to 40, .*expansion"),
    ],
)
def test_angle_outside_the_table_is_refused(function, angle, text):
    with pytest.raises(RangeError, match=text):
        function(angle)


def test_a_cone_that_narrows_wins_nothing_back():
    text = "^velocity pressure behind 200.0 Pa is above that before, 100.0 Pa: the duct narrows there"
    with pytest.raises(InputError, match=text):
        static_regain(10.0, 100.0, 200.0)
