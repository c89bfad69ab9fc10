"""Curves of a fan and of its ducts: they cross where it runs, and the words say whether it stays there."""

import itertools

import pytest

from curved_demo import demo
from hoodwright.jobs import Progress
from hoodwright.tasks.as_built.fan_curves import fan_curves
from hoodwright.tasks.as_built.live import Tried, intended_of, live_of, told_by
from hoodwright.web.components.fan_plot import kind_of, options, words_of
from hoodwright.workplace import Document

SMOOTH = "[0 m3/h, 2600 Pa], [1500 m3/h, 2750 Pa], [3000 m3/h, 2600 Pa]"
DIP = "[0 m3/h, 1400 Pa], [1500 m3/h, 1000 Pa], [3000 m3/h, 2600 Pa]"
FLAT_FILTER = "clean: 400 Pa, dirty: 1500 Pa, at: 4750 m3/h, exponent: 0.5"


def curves_of(text: str, tried: Tried | None = None):
    workplace = Document(text).workplace()
    return workplace, fan_curves(Progress(), workplace, tried or Tried())


def height(pairs, flow):
    """A polyline at a flow."""
    for (q0, p0), (q1, p1) in itertools.pairwise(pairs):
        if q0 <= flow <= q1:
            return p0 + (p1 - p0) * (flow - q0) / (q1 - q0)
    raise AssertionError("beyond the curve")


def test_the_curves_cross_where_the_fan_runs():
    _, curved = curves_of(demo())
    for one in curved.fans:
        point = next(point for point in one.points if point.runs)
        for pairs in (one.gives, one.asked):
            assert height(pairs, point.flow) == pytest.approx(point.total_pressure, rel=0.01)


def test_the_quick_answer_and_the_one_with_all_points_agree():
    workplace, curved = curves_of(demo())
    intended = intended_of(workplace)
    quick, whole = live_of(workplace, Tried(), intended), told_by(curved.answer, Tried(), intended)
    assert whole.flows == pytest.approx(quick.flows, rel=1e-6)


def test_a_slower_fan_gives_less_by_the_square_of_its_speed():
    _, full = curves_of(demo())
    _, slow = curves_of(demo(), Tried(speeds={"roof fan": 0.5}))
    (_, at_rest), (_, at_half) = full.fans[0].gives[0], slow.fans[0].gives[0]
    assert at_half == pytest.approx(at_rest / 4)


def test_a_curve_with_a_dip_has_points_that_are_stable_and_one_that_is_not():
    text = demo().replace(SMOOTH, DIP).replace("clean: 400 Pa, dirty: 900 Pa, at: 4750 m3/h", FLAT_FILTER)
    _, curved = curves_of(text)
    words = [kind_of(point) for point in curved.fans[0].points]
    assert words == ["can also run here", "not stable", "runs here"]
    assert "the flow runs away from it" in words_of(curved.fans[0].points[1], "SI")
    symbols = [mark["symbol"] for mark in options(curved.fans[0], "SI")["series"][-1]["data"]]
    assert symbols == ["circle", "triangle", "circle"]


def test_us_units_stand_on_the_axes():
    _, curved = curves_of(demo())
    drawn = options(curved.fans[0], "US")
    assert "cfm" in drawn["xAxis"]["name"]
    assert "in wg" in drawn["yAxis"]["name"]
