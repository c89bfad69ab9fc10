"""Results: a value with its kind, an outcome in words."""

import pytest

from hoodwright.results import Caution, Hint, Outcome, Quantity, Verdict


def test_an_outcome_uses_one_of_three_words():
    assert [verdict.value for verdict in Verdict] == ["meets the need", "falls short", "cannot tell"]


def test_an_outcome_says_why():
    assert str(Outcome(Verdict.SHORT, "by 20 m³/h")) == "falls short: by 20 m³/h"


def test_what_is_not_known_is_none():
    flow = Quantity(0.1, "flow")
    assert (flow.uncertainty, flow.source) == (None, None)
    assert Outcome(Verdict.MEETS, "enough").shortfall is None
    assert Hint("closer", "at 100 mm", flow).fan_power is None


@pytest.mark.parametrize(
    "result, field",
    [
        (Quantity(0.1, "flow"), "value"),
        (Outcome(Verdict.MEETS, "enough"), "because"),
        (Caution("fan", "mind", "practice"), "text"),
    ],
)
def test_a_result_is_never_changed(result, field):
    with pytest.raises(AttributeError):
        setattr(result, field, None)


def test_equal_cautions_are_one():
    assert len({Caution("fan", "mind", "practice"), Caution("fan", "mind", "practice")}) == 1
