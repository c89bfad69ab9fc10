"""Cautions about one thing stand together, and junctions are told in one sentence."""

from hoodwright.results import Caution
from hoodwright.tasks.caution_groups import grouped


def governs(about, junction):
    text = f"its side of {junction} governs: until that is balanced it gets less than its intended flow"
    return Caution(about, text, "balance-rule")


def test_junctions_are_told_once():
    found = grouped([Caution("a", "first", "x"), governs("a", "J1"), Caution("b", "other", "x"), governs("a", "J2"), governs("a", "J3")])  # fmt: skip  # noqa: E501
    assert list(found) == ["a", "b"]
    assert [caution.text for caution in found["a"]] == [
        "first",
        "its side of J1, J2 and J3 governs: until they are balanced it gets less than its intended flow",
    ]


def test_one_junction_keeps_its_words():
    assert grouped([governs("a", "J1")])["a"] == [governs("a", "J1")]


def test_the_same_caution_is_told_once_and_nothing_else_is_lost():
    one, other = Caution("a", "mind this", "x"), Caution("a", "mind this", "y")
    assert grouped([one, one, other]) == {"a": [one, other]}
    assert grouped([]) == {}
