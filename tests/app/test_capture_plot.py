"""The plot of captured share against distance: its band, its marks, and what is not claimed."""

from types import SimpleNamespace

import pytest

from hoodwright.web.components.capture_plot import LIMITED, Now, options, sentence_of, state_of

WAKES = "cannot tell, because someone stands between"


def answer(
    distance: float, captured: float, low: float, high: float, *, limited: bool = False, claim: str = "captured"
):
    told = claim == "captured"
    return SimpleNamespace(
        distance=distance,
        captured=captured,
        low=low,
        high=high,
        told=told,
        plume_limited=limited,
        claim=claim,
        hood="nozzle",
        source="joint",
        shown=f"{100 * captured:.0f} %" if told else "cannot tell",
        shown_interval=f"{100 * low:.0f} % to {100 * high:.0f} %" if told else "-",
    )


@pytest.fixture
def report():
    answers = (
        answer(0.2, 0.6, 0.4, 0.8, limited=True),
        answer(0.1, 0.9, 0.8, 1.0),
        answer(0.3, 0.2, 0.1, 0.3, claim=WAKES),
    )
    return SimpleNamespace(answers=answers, system="SI")


def series(report, name: str, system: str = "SI") -> dict:
    return next(one for one in options(report, Now(0.1), system)["series"] if one["name"] == name)


def test_the_band_runs_from_low_to_high(report):
    low, gap = series(report, "low")["data"], series(report, "interval")["data"]
    assert low[:2] == [[100.0, 80.0], [200.0, 40.0]]
    assert [a[1] + b[1] for a, b in zip(low[:2], gap[:2], strict=True)] == pytest.approx([100, 80])


def test_what_cannot_be_told_has_no_share_and_no_band(report):
    assert series(report, "interval")["data"][2] == [300.0, None]
    assert series(report, "middle")["data"][2] == [300.0, None]
    mark = series(report, "cannot tell")["data"][0]
    assert (mark["value"], mark["name"]) == ([300.0, 0.0], WAKES)


def test_each_state_has_a_shape_and_a_word_of_its_own(report):
    states = [state_of(one) for one in report.answers]
    assert states == ["plume limited", "captured", "cannot tell"]
    assert len({series(report, state)["symbol"] for state in states}) == len(states)
    for state in ("plume limited", "cannot tell"):
        assert series(report, state)["label"]["show"]
        assert series(report, state)["label"]["formatter"] == state


def test_where_the_source_stands_now_is_marked_once(report):
    marked = [one["markLine"] for one in options(report, Now(0.1), "SI")["series"] if "markLine" in one]
    assert [line["data"] for line in marked] == [[{"xAxis": 100.0}]]


def test_axes_follow_the_units(report):
    drawn = options(report, Now(0.1), "US")
    assert drawn["xAxis"]["name"].endswith("(in)")
    assert series(report, "low", "US")["data"][0][0] == pytest.approx(3.937)


def test_the_sentence_tells_both_ends_of_what_can_be_told(report):
    said = sentence_of(report, "SI")
    assert "From 100\u2009mm to 200\u2009mm before the nozzle" in said
    assert "from 90 % to 60 %" in said


def test_where_nothing_can_be_told_the_reason_stands_alone(report):
    report.answers = report.answers[2:]
    assert sentence_of(report, "SI") == "The computed air cannot tell: someone stands between."


def test_plume_limited_is_told_in_words():
    assert LIMITED.startswith("plume limited: the stream brings more air")
