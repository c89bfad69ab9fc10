"""Every line of ducts, junctions and fans is recomputed as a calculator would, for every example and the demo."""

import math
import re
from pathlib import Path

import pytest

from hoodwright.tasks.assess import assess
from hoodwright.workplace import parse_workplace
from hoodwright.workplace.starters import starter_text

EXAMPLES = {path.stem: path for path in (Path(__file__).parents[2] / "examples").glob("*.yaml")}
TEXTS = {name: path.read_text(encoding="utf-8") for name, path in EXAMPLES.items()} | {"demo": starter_text("demo")}
WITHIN = 2e-4  # five digits are shown of every number; a product of four may be off by twice their rounding
UNITS = re.compile(r" (?:Pa|m/s|m3/s|kg/m3|K|W|VP)$")


def recomputed(filled: str) -> tuple[float, float, float] | None:
    """What the left side gives, what stands behind the equals sign, and the greatest number met; None without one."""
    if " = " not in filled:
        return None
    left, right = filled.split(" = ", 1)
    told = UNITS.sub("", right.split(", ")[0])
    spoken = left.replace(" x ", " * ").replace("²", "**2").replace("^", "**").replace("(pi *", "(math.pi *")
    spoken = spoken.replace("sqrt(", "math.sqrt(")
    if re.search(r"[^\d\s.()+\-*/a-z]", spoken):
        return None
    largest = max((abs(float(n)) for n in re.findall(r"\d+\.?\d*", spoken)), default=0.0)
    found = eval(spoken, {"math": math})  # the text is our own
    return found, float(told), largest if " - " in left or "-" in left[1:] else 0.0


def lines_of(name: str):
    answer = assess(parse_workplace(TEXTS[name]))
    for duct in answer.ducts:
        yield from (line for line in duct.lines)
    for fan in answer.fans:
        yield from fan.lines
    for junction in answer.junctions:
        for side in junction.sides:
            yield from side.lines


@pytest.mark.parametrize("name", TEXTS)
def test_every_line_gives_what_it_tells(name):
    lines = list(lines_of(name))
    done = [(line, recomputed(line.filled)) for line in lines]
    for line, numbers in done:
        if numbers is not None:
            found, told, largest = numbers
            assert found == pytest.approx(told, rel=WITHIN, abs=WITHIN * largest), f"{line.formula}: {line.filled}"
    assert sum(numbers is not None for _, numbers in done) >= 0.9 * len(lines)


def test_a_slip_would_be_seen():
    assert recomputed("1.2 x 11.3² / 2 = 76.6 Pa")[0] == pytest.approx(76.614)
    assert recomputed("-114.92 - 130.94 = -245.86 Pa")[0] == pytest.approx(-245.86)
    assert recomputed("30 Pa") is None
