"""A model written as a file reads back as the same model."""

from pathlib import Path

import pytest

from hoodwright.workplace import parse_workplace, read_workplace
from hoodwright.workplace.model import Part, Workplace
from hoodwright.workplace.starters import starter_text
from hoodwright.workplace.write import as_text

ROOT = Path(__file__).parents[2]
FILES = [
    *sorted((ROOT / "examples").glob("*.yaml")),
    *sorted((ROOT / "tests").glob("*.yaml")),
    *sorted((ROOT / "tests" / "observed").glob("*.yaml")),
    ROOT / "tests" / "app" / "all-types.yaml",
]
TOL = 1e-8  # relative: what a written quantity may lose (1e-9), and m: half the last digit of a place


def alike(one, other) -> bool:
    """Whether two models say the same, to the digits that are written."""
    if isinstance(one, Part):
        names = type(one).model_fields
        return type(one) is type(other) and all(alike(getattr(one, n), getattr(other, n)) for n in names)
    if isinstance(one, tuple):
        return len(one) == len(other) and all(map(alike, one, other))
    if isinstance(one, float):
        return one == pytest.approx(other, rel=TOL, abs=TOL)
    return one == other


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_every_example_reads_back_the_same(path: Path):
    workplace = read_workplace(path)
    assert alike(parse_workplace(as_text(workplace)), workplace)


@pytest.mark.parametrize("name", ["demo", "starter"])
def test_the_starters_read_back_the_same(name: str):
    workplace = parse_workplace(starter_text(name))
    assert alike(parse_workplace(as_text(workplace)), workplace)


def test_what_was_never_said_stays_unsaid():
    told = as_text(parse_workplace(starter_text("starter")))
    assert "bell_mouth" not in told and "altitude" in told


def test_a_difference_would_be_seen():
    workplace = parse_workplace(starter_text("demo"))
    hood = workplace.hoods[0]
    moved = hood.model_copy(update={"at": (hood.at[0] + 1e-3, *hood.at[1:])})
    assert not alike(workplace.model_copy(update={"hoods": (moved, *workplace.hoods[1:])}), workplace)


def test_words_that_yaml_would_take_for_something_else_are_quoted():
    workplace: Workplace = parse_workplace(starter_text("demo").replace("flux fume", '"yes: 12"'))
    assert parse_workplace(as_text(workplace)).contaminants[0].name == "yes: 12"
