"""The same ductwork with other filters, gates and dampers: window, scenarios, balancing, indicators."""

import math

import pytest

from built_shop import LINE, ONE_DUCTS, TWO_DUCTS, hood, one_hood, shop, two_hoods
from hoodwright.tasks.as_built.balancing import balancing_order
from hoodwright.tasks.as_built.indicator import indicator
from hoodwright.tasks.as_built.network import as_built
from hoodwright.tasks.as_built.report import duct_report, sentence_of
from hoodwright.tasks.as_built.states import cleaner_window, gates_shut, scenarios

RHO, AREA = 1.204152, 0.02
WITH_FILTER = ONE_DUCTS.replace("A, from: hood 1, to: fan", "A, from: hood 1, to: filter").replace(
    "- {name: stack",
    "- {name: clean, from: filter, to: fan, rectangle: [100 mm, 200 mm], length: 0 m}\n- {name: stack",
)


def filtered(clean: int, dirty: int, flow: str = "320 m3/h"):
    rest = f"cleaners: [{{name: filter, resistance: {{clean: {clean} Pa, dirty: {dirty} Pa, at: 720 m3/h}}}}]"
    return shop([hood(1, flow)], WITH_FILTER, f"- {{name: fan, {LINE}}}", rest)


def test_the_pressure_at_which_a_hood_falls_short():
    # at 900 m3/h: 1000 - 2000 Q - 3 VP is what the filter may take
    flow = 900 / 3600
    window = cleaner_window(filtered(50, 1000, "900 m3/h"))
    left = 1000 - 2000 * flow - 3 * RHO / 2 * (flow / AREA) ** 2
    assert window.first.hood == "hood 1"
    assert window.first.cleaner == "filter"
    assert window.first.pressure == pytest.approx(left, rel=1e-3)
    assert window.first.load == pytest.approx((left * 0.2 / flow - 50) / 950, rel=1e-3)
    assert window.words.startswith("As the filters load, hood 1 falls short first, once filter takes ")


def test_a_hood_that_never_or_always_falls_short():
    never, always = cleaner_window(filtered(50, 60)), cleaner_window(filtered(50, 1000, "1100 m3/h"))
    assert never.first is None
    assert never.words == "From clean to dirty filters every hood gets what was intended"
    assert always.first.load == 0
    assert always.words == "Even with clean filters hood 1 gets less than intended"
    assert cleaner_window(one_hood()).words.startswith("There is no filter")


SCENARIOS = "scenarios: [{name: one alone, closed: [hood 2]}, {name: throttled, dampers: {B: 20}}]"


def test_scenarios_give_hoods_and_mains():
    both = as_built(two_hoods())
    alone, throttled = scenarios(two_hoods(rest=SCENARIOS))
    assert (alone.name, alone.closed) == ("one alone", ("hood 2",))
    assert [duct.name for duct in alone.mains] == ["main", "stack"]
    assert alone.mains[0].velocity < both.duct("main").velocity
    assert alone.answer.hood("hood 1").flow > both.hood("hood 1").flow
    assert throttled.answer.hood("hood 2").flow < both.hood("hood 2").flow
    shut = gates_shut(two_hoods())
    assert [one.name for one in shut] == ["hood 1 shut", "hood 2 shut"]
    assert shut[1].answer.hood("hood 1").flow == pytest.approx(alone.answer.hood("hood 1").flow)


def test_nothing_settles_where_everything_before_is_shut():
    (alone, _) = gates_shut(two_hoods())
    assert not alone.answer.duct("A").settles
    both = as_built(two_hoods(), closed=["hood 1", "B"])
    assert [duct.name for duct in both.ducts if duct.settles] == []
    assert gates_shut(one_hood()) == ()


UNEVEN = TWO_DUCTS.replace(
    "B, from: hood 2, to: J, rectangle: [100 mm, 200 mm], length: 0 m, fittings: [{loss: 1.5}]",
    "B, from: hood 2, to: J, rectangle: [100 mm, 200 mm], length: 0 m, fittings: [{loss: 0.5}, {damper_loss: 3}]",
)


def test_one_damper_evens_two_hoods():
    # the sides agree where both have the same loss: 0.5 + 1 = 1.5 velocity pressures
    order = balancing_order(two_hoods(UNEVEN))
    (step,) = order.steps
    assert (step.duct, step.hood) == ("B", "hood 2")
    assert step.loss == pytest.approx(1.0, abs=2e-3)
    after = as_built(two_hoods(UNEVEN), loaded=False, dampers={"B": 1.0})
    assert after.hood("hood 1").flow == pytest.approx(after.hood("hood 2").flow, rel=1e-4)
    assert step.final_flow == pytest.approx(after.hood("hood 2").flow, rel=1e-3)
    assert step.suction == pytest.approx(after.hood("hood 2").suction, rel=3e-3)
    assert "throttle until the hood suction of hood 2 is" in step.words


def test_each_damper_is_set_once():
    # three sides, two dampers: read at their turn with the later one still open, they end at the same share
    hoods = [hood(1), hood(2), hood(3)]
    lines = [
        f"- {{name: {name}, from: hood {i}, to: J, rectangle: [100 mm, 200 mm], length: 0 m, fittings: [{more}]}}"
        for i, (name, more) in enumerate([("A", "{loss: 4}"), ("B", "{damper: 10 Pa}"), ("C", "{damper: 10 Pa}")], 1)
    ]
    lines += TWO_DUCTS.splitlines()[2:]
    found = shop(hoods, "\n".join(lines), f"- {{name: fan, {LINE}}}")
    order = balancing_order(found)
    first, second = order.steps
    assert first.flow < first.final_flow  # closing the second gives more to the first
    assert second.flow == pytest.approx(second.final_flow, rel=1e-6)
    dampers = {step.duct: step.loss for step in order.steps}
    shares = [one.share for one in as_built(found, loaded=False, dampers=dampers).hoods]
    assert max(shares) / min(shares) == pytest.approx(1.0, abs=1e-3)
    assert order.index == min(as_built(found, loaded=False, dampers=dampers).hoods, key=lambda h: h.share).name


def test_the_speed_that_gives_just_what_is_intended():
    # every loss goes with the square, so flow goes with speed
    found = shop([hood(1, "900 m3/h")], ONE_DUCTS, f"- {{name: fan, {LINE}}}")
    order, share = balancing_order(found), as_built(found).hood("hood 1").share
    assert order.speed == pytest.approx(1 / share, rel=1e-3)
    assert order.words.startswith("No duct has a damper, so nothing can be set; hood 1 is served least")


def test_an_indicator_knows_its_place_and_when_to_warn():
    # by hand: flat entry, so 5 diameters of 100 mm; 1.5 VP behind the hood, no friction in this test but the tap's own
    found = filtered(50, 500)
    (one,) = indicator(found)
    vp = RHO / 2 * (320 / 3600 / AREA) ** 2
    assert one.tap == pytest.approx(0.4)  # the duct has no length of its own: the nearest good place
    assert not one.fits
    assert one.set_point == pytest.approx(1.5 * vp, rel=0.1)
    assert one.set_point > 1.5 * vp  # friction up to the tap comes on top
    clean, dirty = (as_built(found, loaded=load).hood("hood 1").suction for load in (False, True))
    assert one.clean == pytest.approx(clean, rel=0.1)
    assert one.dead_band == pytest.approx(clean - dirty, rel=0.1)
    assert one.dirty > one.set_point


def test_a_filter_in_the_hood_makes_its_suction_useless():
    (one,) = indicator(one_hood(more=", filter: {clean: 20 Pa, dirty: 200 Pa, at: 720 m3/h}"))
    assert one.set_point is None
    assert "suction rises as the flow falls" in one.words


def test_an_indicator_that_warns_too_early_says_so():
    (one,) = indicator(filtered(50, 1000, "900 m3/h"))
    assert one.words.endswith("it warns before the filters are as dirty as the file says")
    (one,) = indicator(filtered(50, 1000, "1100 m3/h"))
    assert one.words.endswith("which it does even with clean filters: mend that first")


def test_the_sentence_counts_hoods_and_names_the_worst():
    report = duct_report(two_hoods(UNEVEN))
    worst = min(report.answer.hoods, key=lambda one: one.share)
    assert report.sentence.startswith("As built, 2 of 2 hoods get what is intended; ")
    assert f"{worst.name} is served least" in report.sentence
    assert sentence_of(as_built(filtered(50, 1000, "1100 m3/h"), loaded=True)).startswith(
        "As built, with dirty filters the hood gets less than what is intended"
    )
    assert math.isclose(report.window.clean.hood("hood 1").flow, report.answer.hood("hood 1").flow)
