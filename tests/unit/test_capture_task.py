"""The capture job: numbers and words, the farthest place, today's flows, the user's own spreads, stopping."""

import json
from dataclasses import replace

import pytest

from capture_shop import FEW, SHOP, shop
from hoodwright.errors import Cancelled, InputError
from hoodwright.jobs import Progress
from hoodwright.reports.capture_figure import capture_png, capture_svg
from hoodwright.tasks.capture.export import capture_as_json
from hoodwright.tasks.capture.handbook import handbook_at
from hoodwright.tasks.capture.job import capture_of, sentence_of

LINE = ("at: [1.5 m, 1.3 m, 1.1 m]", "line: [[1.5 m, 1.33 m, 1.1 m], [1.5 m, 0.9 m, 1.1 m]]")
READ = ("intended_flow: 300 m3/h", "intended_flow: 300 m3/h, today: {flow: 120 m3/h}")


@pytest.fixture(scope="module")
def near():
    return capture_of(shop(), plan=FEW, distances=[0.05, 0.4])


def test_a_near_source_is_caught_and_a_far_one_less(near):
    first, last = near.answers
    assert first.captured > 0.9 and first.captured >= last.captured
    assert all(0 <= a.low <= a.captured <= a.high <= 1 for a in near.answers)
    assert first.told and "captured, interval" in first.sentence
    assert first.shown.rstrip(" %").lstrip("<> ").isdigit()
    assert last.definition.escape_radius == pytest.approx(0.6)


def test_json_is_as_promised(near):
    told = json.loads(json.dumps(capture_as_json(near), allow_nan=False))
    assert [list(row) for row in told["series"]] == [
        ["distance_m", "captured", "low", "high", "plume_limited", "claim"]
    ] * 2
    assert [row["distance_m"] for row in told["series"]] == pytest.approx([0.05, 0.4])
    assert {"escape_radius_m", "time_limit_s", "realisations", "particles", "seed"} <= set(told["definition"])
    radii = [result["definition"]["escape_radius_m"] for result in told["results"]]
    assert radii == pytest.approx([0.45, 0.6])  # 1.5 times the distance, at least 450 mm
    assert told["definition"]["escape_radii_m"] == radii
    (pair,) = told["pairs"]
    assert pair == {k: told[k] for k in ("series", "definition")} | {"source": "joint", "hood": "nozzle"}
    assert told["banner"] == "not validated for capture" and told["results"][0]["farthest"] is None


def test_same_seed_same_number():
    assert capture_of(shop(), plan=FEW) == capture_of(shop(), plan=FEW)


def test_figure(near):
    assert "not validated" in capture_svg(near)
    assert capture_png(near)[:4] == b"\x89PNG"


def test_a_long_source_is_also_judged_at_its_farthest_place():
    answer = capture_of(shop(LINE, ("300 m3/h", "60 m3/h")), plan=FEW).answers[0]
    far = answer.farthest
    assert far.place == (1.5, 0.9, 1.1) and answer.distance == pytest.approx(0.5)
    assert far.captured < answer.captured - 0.05 and 0 <= far.low <= far.captured <= far.high
    assert f"of its farthest place {far.shown}, interval" in answer.sentence
    told = capture_as_json(replace_answers(answer))["results"][0]["farthest"]
    assert told["at_m"] == [1.5, 0.9, 1.1] and told["captured"] == far.captured and told["shown"] == far.shown
    same = replace(answer, farthest=replace(far, captured=answer.captured))
    assert "farthest" not in sentence_of(same, "SI")


def replace_answers(answer):
    report = capture_of(shop(), plan=FEW)
    return replace(report, answers=(answer,))


def test_today_takes_the_flow_that_was_read():
    designed, today = (capture_of(shop(READ), plan=FEW, today=flag) for flag in (False, True))
    assert (designed.answers[0].flow, today.answers[0].flow) == pytest.approx((300 / 3600, 120 / 3600))
    assert today.answers[0].captured <= designed.answers[0].captured
    assert "m³/h today:" in today.answers[0].sentence and today.flow == "today"
    assert "was read" in today.answers[0].handbook.because and "is intended" in designed.answers[0].handbook.because


def test_today_without_a_reading_is_told():
    answer = capture_of(shop(), plan=FEW, today=True).answers[0]
    assert answer.flow == pytest.approx(300 / 3600)
    assert any("No flow of today" in note and "nozzle" in note for note in answer.notes)


def test_the_interval_takes_what_the_file_says_of_its_inputs():
    well, badly = (
        capture_of(
            shop(("contaminants:", f"uncertainty: {{position: {place}, flow: {flow}}}\ncontaminants:")),
            plan=FEW,
            distances=[0.3],
        ).answers[0]
        for place, flow in (("2 mm", "1 %"), ("250 mm", "50 %"))
    )
    assert (well.definition.spreads.position, well.definition.spreads.flow) == (0.002, 0.01)
    assert well.definition.spreads.draught == 0.05
    assert badly.high - badly.low > well.high - well.low


def test_the_handbook_is_asked_at_the_place_itself(near):
    first, last = (answer.handbook for answer in near.answers)
    assert first.verdict == "meets the need" and last.verdict == "falls short"
    workplace = shop()
    here = handbook_at(workplace.hoods[0], workplace.sources[0], workplace, 300 / 3600)
    assert here.need.distance == pytest.approx(0.1) and here.outcome.verdict == "meets the need"


def test_unknown_names_and_bad_distances():
    for arguments, words in (({"hood": "x"}, "there is nozzle"), ({"distances": [-1.0]}, "above 0")):
        with pytest.raises(InputError, match=words):
            capture_of(shop(), plan=FEW, **arguments)


def test_distances_are_for_one_pair():
    both = SHOP.replace(
        "sources: [", "sources: [{name: other, contaminant: fume, at: [1 m, 1 m, 1 m], dispersion: still},"
    )
    with pytest.raises(InputError, match=r"^--distances: one source and one hood are needed, got 2 pairs"):
        capture_of(shop(("serves: [joint]", "serves: [joint, other]"), of=both), plan=FEW, distances=[0.1])


def test_it_can_be_stopped():
    progress = Progress()
    progress.cancel()
    with pytest.raises(Cancelled):
        capture_of(shop(), plan=FEW, progress=progress)
