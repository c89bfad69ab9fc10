"""How sure the flows as built are, for a whole workplace."""

import json
from pathlib import Path

import pytest

from hoodwright.ducts import DuctSpreads
from hoodwright.errors import Cancelled, InputError
from hoodwright.jobs import Progress
from hoodwright.sources import all_sources
from hoodwright.tasks.as_built.network import as_built
from hoodwright.tasks.as_built.spread import _wilson, spread_as_json, spread_of
from hoodwright.workplace import parse_workplace

DUCTS = """
ducts:
  - {name: A1, from: bench nozzle, to: J1, round: 100 mm, length: 3 m}
  - {name: B1, from: table hood, to: J1, round: 90 mm, length: 5 m, fittings: [{elbow: 90 deg}], joins_at: 30 deg}
  - {name: main, from: J1, to: roof fan, round: 125 mm, length: 4 m}
  - {name: stack, from: roof fan, to: outside, round: 125 mm, length: 3 m}
fans:
  - name: roof fan
    pressure: total
    curve: [[0 m3/h, 700 Pa], [300 m3/h, 750 Pa], [600 m3/h, 600 Pa], [900 m3/h, 100 Pa]]
"""


@pytest.fixture(scope="module")
def shop():
    top = (Path(__file__).parents[1] / "two-hoods.yaml").read_text(encoding="utf-8").split("\nducts:")[0]
    return parse_workplace(top + DUCTS)


@pytest.fixture(scope="module")
def answer(shop):
    return spread_of(shop, 1000, seed=3)


def test_every_hood_with_a_fan_curve_is_told(answer):
    assert [hood.hood for hood in answer.hoods] == ["bench nozzle", "table hood"]


def test_computed_flows_are_those_as_built(shop, answer):
    built = {hood.name: hood.flow for hood in as_built(shop, points=False).hoods}
    for hood in answer.hoods:
        assert hood.computed == pytest.approx(built[hood.hood], rel=1e-6)


def test_low_median_and_high_are_in_order_about_what_is_computed(answer):
    for hood in answer.hoods:
        assert hood.low < hood.median < hood.high
        assert hood.low < hood.computed < hood.high
        assert list(hood.deciles) == sorted(hood.deciles) and hood.deciles[4] == hood.median
        assert 0 <= hood.share_low <= hood.share <= hood.share_high <= 1


def test_all_together_is_rarer_than_the_rarest(answer):
    assert answer.together <= min(hood.share for hood in answer.hoods)


def test_half_the_samples_give_what_is_computed(shop):
    """A hood meant to get just what is computed gets it in about half of them."""
    hood = next(h for h in shop.hoods if h.name == "table hood")
    flow = next(h.flow for h in as_built(shop, points=False).hoods if h.name == "table hood")
    meant = hood.model_copy(update={"intended_flow": flow})
    changed = shop.model_copy(update={"hoods": tuple(meant if h is hood else h for h in shop.hoods)})
    half = next(h for h in spread_of(changed, 2000).hoods if h.hood == "table hood")
    assert 0.3 < half.share < 0.7


def test_the_same_seed_gives_the_same_answer(shop, answer):
    assert spread_of(shop, 1000, seed=3) == answer
    assert spread_of(shop, 1000, seed=4) != answer


def test_a_shut_hood_is_left_out(shop):
    found = spread_of(shop, 100, closed=["table hood"])
    assert "table hood" not in {hood.hood for hood in found.hoods}


def test_all_shut_is_refused(shop, answer):
    with pytest.raises(InputError, match="every hood is shut off, so none has a flow; open one"):
        spread_of(shop, 100, closed=[hood.hood for hood in answer.hoods])


def test_it_states_its_spreads_and_where_they_are_from(shop, answer):
    assert [spread.what for spread in answer.spreads] == ["roughness", "losses", "fan"]  # the file gives no leaks
    assert {spread.source for spread in answer.spreads} == {"common-practice"} < set(all_sources())
    own = spread_of(shop, 50, spreads=DuctSpreads(fan=1.10)).spreads
    assert [s.source for s in own] == ["common-practice", "common-practice", "stated by the user"]


def test_machines_get_flows_in_si_by_name(answer):
    told = json.loads(json.dumps(spread_as_json(answer)))
    first = told["hoods"][0]
    assert first["low_flow_m3_s"] < first["flow_m3_s"] < first["high_flow_m3_s"]
    assert told["samples"] == 1000 and told["seed"] == 3
    assert told["spreads"][0]["factor"] == 2.0


def test_words_never_say_none_or_all_of_a_few(answer):
    for hood in answer.hoods:
        assert " in 95 of 100 samples; " in hood.sentence
        assert ("all of them" in hood.sentence) == (hood.share == 1.0)


def test_it_can_be_stopped(shop):
    stopped = Progress()
    stopped.cancel()
    with pytest.raises(Cancelled):
        spread_of(shop, 100, progress=stopped)


@pytest.mark.parametrize(("share", "low", "high"), [(0.5, 0.4038, 0.5962), (0.0, 0.0, 0.0370), (1.0, 0.9630, 1.0)])
def test_interval_of_a_share_by_hand(share, low, high):
    # Wilson's score interval of 100 samples: (p + z2/2n -+ z sqrt(p(1-p)/n + z2/4n2)) / (1 + z2/n), z = 1.96
    assert _wilson(share, 100) == pytest.approx((low, high), abs=6e-5)
