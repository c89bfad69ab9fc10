"""Lines for a calculator: they hold plain characters only and give the printed result."""

import math
import re
from importlib.resources import files

import pytest

from hoodwright.tasks.assess import assess
from hoodwright.tasks.recompute import recompute
from hoodwright.workplace import parse_workplace

HALF_A_DIGIT = 1e-3  # numbers are printed to 5 digits; a line of several may lose that much


def calculated(text: str) -> float:
    names = {name: getattr(math, name) for name in ("sqrt", "atan", "exp", "sin", "cos", "tan")}
    return eval(text.replace("^", "**"), {"__builtins__": {}}, names | {"ln": math.log, "min": min, "max": max})


@pytest.mark.parametrize(
    "filled, plain",
    [
        ("0.75 x 1 x (10 x 0.1² + 0.007854) = 0.08089 m3/s", "0.75 * 1 * (10 * 0.1^2 + 0.007854)"),
        ("2 pi x 0.15² x 0.5 = 0.070686 m3/s", "2 * 3.14159265 * 0.15^2 * 0.5"),
        ("b = 0.18, a = 1.2: 0.5 x 0.02 x (0.93 + 8.58 x 1.2²) = 0.13285 m3/s", "0.5 * 0.02 * (0.93 + 8.58 * 1.2^2)"),
        ("1 x pi x 0.02 / (2 atan(0.1 x 0.05)) = 1", "1 * 3.14159265 * 0.02 / (2 * atan(0.1 * 0.05))"),
        ("-(1 + 0.49) x 77.12 = -114.91 Pa", "-(1 + 0.49) * 77.12"),
        ("1500 m3/h from the table = 0.41667 m3/s", ""),
        ("-214.58 = -214.58 Pa", "-214.58"),
        ("read off the table", ""),
    ],
)
def test_a_line_becomes_what_one_types(filled, plain):
    assert recompute(filled) == plain


def test_every_line_of_the_demo_gives_its_printed_result():
    text = (files("hoodwright") / "workplace" / "starters" / "demo.yaml").read_text(encoding="utf-8")
    answer = assess(parse_workplace(text))
    lines = [law.line for hood in answer.hoods for need in hood.needs for law in need.laws]
    lines += [line for part in (*answer.ducts, *answer.fans) for line in part.lines]
    counted = 0
    for line in lines:
        typed = recompute(line.filled)
        printed = re.match(r"\s*([-+\d.e]+)", line.filled.rpartition(" = ")[2])
        if typed and printed and "," not in typed:
            counted += 1
            assert typed.isascii()
            assert calculated(typed) == pytest.approx(float(printed[1]), rel=HALF_A_DIGIT, abs=0.02), line.filled
    assert counted > 0.8 * len(lines)
