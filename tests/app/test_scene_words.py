"""Dimension lines: what they measure, and where they begin and end."""

from importlib.resources import files
from pathlib import Path

import pytest

from hoodwright.tasks.assess import assess
from hoodwright.web.components.scene import dimensions
from hoodwright.workplace import parse_workplace

ALL_TYPES = (Path(__file__).parent / "all-types.yaml").read_text(encoding="utf-8")
DEMO = (files("hoodwright") / "workplace" / "starters" / "demo.yaml").read_text(encoding="utf-8")


def lines(text: str, chosen: str):
    workplace = parse_workplace(text)
    return dimensions(workplace, assess(workplace), chosen)


@pytest.mark.parametrize(
    "text, chosen, words",
    [
        (DEMO, "bench nozzle", "100\u2009mm"),
        (DEMO, "solder joint", "100\u2009mm"),
        (DEMO, "crucible canopy", "1100\u2009mm above"),
        (ALL_TYPES, "bath slots", "608\u2009mm, far end"),
    ],
)
def test_a_dimension_line_says_the_place_of_the_hood(text, chosen, words):
    assert [line.words for line in lines(text, chosen)] == [words]


@pytest.mark.parametrize("chosen", ["booth", "hopper box", "slot hood"])
def test_what_is_around_its_work_or_blows_over_it_has_no_line(chosen):
    assert lines(ALL_TYPES, chosen) == []


def test_under_a_canopy_the_line_goes_straight_up():
    (line,) = lines(DEMO, "crucible canopy")
    assert line.start[:2] == line.end[:2]
    assert line.end[2] - line.start[2] == pytest.approx(1.1)


def test_from_a_wheel_the_line_begins_at_its_rim():
    (line,) = lines(DEMO, "buff hood")
    length = sum((a - b) ** 2 for a, b in zip(line.start, line.end, strict=True)) ** 0.5
    assert length < 0.05 < 0.18  # the wheel's middle lies 187 mm away
