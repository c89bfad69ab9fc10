"""Today's flow where nobody read one: as built, said so; a reading wins."""

import pytest

from built_shop import LINE, ONE_DUCTS, hood, one_hood, shop
from curved_demo import UNCURVED, demo
from hoodwright.console import print_answer
from hoodwright.results import Verdict
from hoodwright.tasks.air.solved import flows_of
from hoodwright.tasks.as_built.network import as_built
from hoodwright.tasks.assess import assess
from hoodwright.tasks.export import as_json
from hoodwright.tasks.today import COMPUTED, is_computed, with_today
from hoodwright.workplace import parse_workplace

READ = ", today: {flow: 300 m3/h, uncertainty: 5 %, date: 2026-10-01}"
FAN = f"- {{name: fan, {LINE}}}"


def meant(flow: str, rest: str = ""):
    return shop([hood(1, flow)], ONE_DUCTS, FAN, rest)


def test_without_a_curve_nothing_changes():
    workplace = parse_workplace(demo(UNCURVED))
    assert with_today(workplace) is workplace


def test_the_flow_as_built_stands_as_today():
    workplace = one_hood()
    built = as_built(workplace, loaded=True).hood("hood 1").flow
    (answer,) = assess(workplace).hoods
    assert answer.today.value == pytest.approx(built)
    assert answer.today.uncertainty == pytest.approx(0.1 * built)  # what the file says of its flows
    assert answer.today.source == COMPUTED
    assert flows_of(with_today(workplace), today=True) == {"hood 1": pytest.approx(built)}


def test_a_flow_that_was_read_wins():
    workplace = one_hood(more=READ)
    assert with_today(workplace) is workplace
    (answer,) = assess(workplace).hoods
    assert answer.today.value == pytest.approx(300 / 3600)
    assert answer.today.source == "read on site, 2026-10-01"
    assert "was read" in answer.met.because
    assert "how" not in as_json(assess(workplace))["hoods"][0]["today"]


@pytest.mark.parametrize(
    ("flow", "verdict", "words"),
    [
        ("700 m3/h", Verdict.MEETS, "is computed as built, 700\u2009m³/h was intended"),
        ("1050 m3/h", Verdict.CANNOT_TELL, "was intended: that lies within the uncertainty of what is computed"),
        ("2000 m3/h", Verdict.SHORT, "is computed as built, "),
    ],
)
def test_outcomes_say_that_it_is_computed(flow, verdict, words):
    (answer,) = assess(meant(flow)).hoods
    assert answer.met.verdict is verdict
    assert words in answer.met.because
    assert " read" not in answer.met.because
    assert "as built" in answer.sentence


def test_machines_and_readers_are_told_how(capsys, tmp_path):
    answer = assess(one_hood())
    assert as_json(answer)["hoods"][0]["today"]["how"] == COMPUTED
    assert is_computed(answer.hoods[0].today)
    print_answer(answer, tmp_path / "shop.yaml")
    text = capsys.readouterr().out
    assert "* computed as built; a flow read on site would stand instead" in text


def test_filters_count_as_dirty():
    rest = "cleaners: [{name: filter, resistance: {clean: 100 Pa, dirty: 500 Pa, at: 720 m3/h}}]"
    ducts = ONE_DUCTS.replace("A, from: hood 1, to: fan", "A, from: hood 1, to: filter").replace(
        "- {name: stack", "- {name: B, from: filter, to: fan, round: 160 mm, length: 0 m}\n- {name: stack"
    )
    workplace = one_hood(ducts=ducts, rest=rest)
    (answer,) = assess(workplace).hoods
    assert answer.today.value == pytest.approx(as_built(workplace, loaded=True).hood("hood 1").flow)
    assert answer.today.source == "computed as built, with dirty filters"


def test_hoods_of_another_fan_stay_unread():
    curve = "pressure: static, curve: [[0 m3/h, 2600 Pa], [3000 m3/h, 2700 Pa], [6000 m3/h, 2000 Pa]]"
    text = demo(UNCURVED).replace("roof fan, efficiency: 60 %", f"roof fan, efficiency: 60 %, {curve}")
    answers = {one.name: one for one in assess(parse_workplace(text)).hoods}
    assert answers["lacquer booth"].today is None
    assert answers["bench nozzle"].today.source.startswith("read on site")
    assert answers["glue cabinet"].today.source.startswith(COMPUTED)
    assert answers["glue cabinet"].openings[0].velocity_today is not None
