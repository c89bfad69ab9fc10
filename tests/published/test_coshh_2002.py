"""[coshh-2002]: how often extraction is thoroughly examined, and how long the record is kept.

Read in copies: an inspection firm's page has the regulation, an insurer's page has Schedule 4.
"""

import pytest

from hoodwright.tasks.guide import intervals, record_years

# Process group, months as printed, check id of the shared list (the row of dry grinding is in its notes).
PRINTED = [
    ("any other", 14, "ex.int.other"),
    ("blasting of metal castings", 1, "ex.int.blast"),
    ("dry grinding or polishing of metal", 6, "Schedule 4, grinding"),
    ("non-ferrous castings", 6, "ex.int.nonferrous"),
    ("jute cloth", 1, "ex.int.jute"),
]


def months(group: str, jurisdiction: str) -> int:
    return next(one.months for one in intervals(group) if one.jurisdiction == jurisdiction)


@pytest.mark.read
@pytest.mark.parametrize("group, printed, check", PRINTED, ids=[row[2] for row in PRINTED])
def test_interval(group, printed, check):
    assert months(group, "UK") == printed


@pytest.mark.read
def test_record_is_kept_five_years():  # ex.keep
    assert record_years("UK") == 5


@pytest.mark.read
def test_the_twelve_hours_of_grinding_are_told():
    condition = intervals("dry grinding or polishing of metal")[0].condition
    assert "12 hours a week" in condition and "gold, platinum or iridium" in condition


def test_a_row_in_the_wrong_place_would_be_seen():
    assert {printed for _, printed, _ in PRINTED} == {1, 6, 14}
