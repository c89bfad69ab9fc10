"""examples/foundry.yaml: the told numbers, by hand."""

from pathlib import Path

import pytest

from hoodwright.results import Verdict
from hoodwright.tasks.assess import assess
from hoodwright.workplace import read_workplace

FOUNDRY = Path(__file__).parents[2] / "examples" / "foundry.yaml"


@pytest.fixture(scope="module")
def answer():
    return assess(read_workplace(FOUNDRY))


def test_the_booth_was_enough_and_is_not_met_today(answer):
    """1.0 x 0.7 m at 200 fpm = 1.016 m/s, the upper end for a carcinogen: 0.7112 m3/s = 2560 m3/h; 2280 are read."""
    booth = next(hood for hood in answer.hoods if hood.name == "fettling booth")
    assert booth.worst.flow == pytest.approx(0.7112, rel=1e-4)
    assert (booth.enough.verdict, booth.met.verdict) == (Verdict.MEETS, Verdict.SHORT)


def test_the_damper_balances_the_junction(answer):
    (junction,) = answer.junctions
    assert junction.ratio > 0.95
    assert junction.advice == "leave both sides as they are"


def test_castings_dust_moves_and_the_filter_cleans(answer):
    """Heavy dust asks for 4000 fpm = 20.32 m/s; 2700 m3/h in 200 mm run at 23.87 m/s, 5200 m3/h in 280 mm at 23.46."""
    found = {duct.name: (duct.carries, duct.velocity, duct.transport.verdict) for duct in answer.ducts}
    assert found["F1"] == ("heavy dust", pytest.approx(23.87, rel=1e-3), Verdict.MEETS)
    assert found["main"] == ("heavy dust", pytest.approx(23.46, rel=1e-3), Verdict.MEETS)
    assert found["stack"][0] == "cleaned air"


def test_sparks_and_the_damper_are_told(answer):
    told = [f"{caution.about}: {caution.text}" for caution in answer.cautions]
    assert any(words.startswith("P1: its damper: lock it") for words in told)
    assert any("sparks" in words and "filter" in words for words in told)
