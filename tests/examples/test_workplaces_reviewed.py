"""docs/workplaces.md names the flow that every hood of its examples needs now."""

import re
from pathlib import Path

import pytest

from hoodwright.tasks.assess import assess
from hoodwright.units import show_number
from hoodwright.workplace import parse_workplace, read_workplace
from hoodwright.workplace.starters import starter_text

ROOT = Path(__file__).parents[2]
PAGE = (ROOT / "docs" / "workplaces.md").read_text(encoding="utf-8")
SECTIONS = {re.search(r"`([^`]+)`", part)[1]: part for part in PAGE.split("\n## ")[1:]}  # type: ignore[index]


def digits(text: str) -> str:
    """The text without the spaces that group digits."""
    return re.sub(r"(?<=\d)[\u2009\u202f ](?=\d{3}\b)", "", text)


def test_eleven_workplaces_are_reviewed():
    assert len(SECTIONS) == 11


@pytest.mark.parametrize("name", SECTIONS)
def test_flows_that_the_hoods_need_are_those_told(name):
    demo = name == "hoodwright demo"
    workplace = parse_workplace(starter_text("demo")) if demo else read_workplace(ROOT / name)
    told = digits(SECTIONS[name])
    for hood in assess(workplace).hoods:
        if hood.worst.laws:
            flow = digits(show_number(hood.worst.flow, "flow", workplace.units))
            assert re.search(rf"(?<!\d){re.escape(flow)}(?!\d)", told), f"{hood.name} needs {flow}"
