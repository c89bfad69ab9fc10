"""docs/checks.md tells where each row of the check list is checked, or why it is not yet: once, truly, all of them."""

import re
from collections import Counter
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
PAGE = (ROOT / "docs" / "checks.md").read_text(encoding="utf-8")
LIMITS = (ROOT / "docs" / "limits.md").read_text(encoding="utf-8")
ROW = re.compile(r"^\| `([^`]+)` \| (.+) \|$", re.MULTILINE)
ROWS = [found.groups() for found in ROW.finditer(PAGE)]
CHECKED = [(row, where.strip("`")) for row, where in ROWS if where.startswith("`")]
NOT_YET = [(row, where) for row, where in ROWS if not where.startswith("`")]
OF_THE_LIST = 281


def names(text: str, row: str) -> bool:
    """Whether the id stands in the text by itself, not as a part of a longer one."""
    return re.search(rf"(?<![\w.-]){re.escape(row)}(?![\w-]|\.\w)", text) is not None


def test_every_row_of_the_list_stands_here_once():
    assert [row for row, count in Counter(row for row, _ in ROWS).items() if count > 1] == []
    assert len(ROWS) == OF_THE_LIST


def test_the_counts_told_are_the_counts():
    assert f"**{OF_THE_LIST} rows: {len(CHECKED)} checked, {len(NOT_YET)} not yet.**" in PAGE
    for part in PAGE.split("\n## ")[1:]:
        rows = [where for _, where in ROW.findall(part)]
        checked = sum(where.startswith("`") for where in rows)
        assert f"\n{checked} of {len(rows)} checked.\n" in part, part.splitlines()[0]


@pytest.mark.parametrize("name", sorted({name for _, name in CHECKED}))
def test_a_row_stands_in_the_test_that_is_named(name):
    files = [ROOT / "tests" / folder / f"{name}.py" for folder in ("published", "observed")]
    text = "".join(path.read_text(encoding="utf-8") for path in files if path.is_file())
    assert text, f"{name}: there is no such test"
    assert [row for row, where in CHECKED if where == name and not names(text, row)] == []


def test_a_row_that_is_not_checked_has_a_reason():
    assert [row for row, where in NOT_YET if not re.fullmatch(r"not yet: [^|]{20,}", where)] == []


def test_the_limits_count_them_by_reason():
    reasons = Counter(where.removeprefix("not yet: ") for _, where in NOT_YET)
    told = LIMITS.split("## Rows of the check list without a test")[1].split("\n## ")[0]
    assert f"Of the {OF_THE_LIST} rows" in told and f"{len(NOT_YET)} have no test yet" in told
    assert {why: int(n) for n, why in re.findall(r"^\| (\d+) \| (.+) \|$", told, re.MULTILINE)} == dict(reasons)


def test_a_part_of_a_longer_id_is_not_the_id():
    assert names("# check rows: hl.Fh.plain, tv.heavy", "tv.heavy")
    assert not names("# check rows: tv.heavy.4500", "tv.heavy")
    assert not names("# check rows: air.hl.slot", "hl.slot")
