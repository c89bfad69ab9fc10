"""The sizing job: from a file to changes, what they save, and back into the file."""

import pytest

from built_shop import hood, shop_text
from hoodwright.errors import Cancelled, InputError, NoSolution
from hoodwright.jobs import Progress
from hoodwright.tasks.as_built.network import as_built
from hoodwright.tasks.sizing.job import SizingAsk, size_ducts, with_sizes
from hoodwright.workplace import Document

FAN = (
    "- {name: fan, pressure: total, curve: [[0 m3/h, 4000 Pa], [1500 m3/h, 3900 Pa], [3000 m3/h, 3000 Pa], "
    "[5000 m3/h, 500 Pa]], speed: 2900 rpm, runs_at: 2900 rpm, hours: 2000 h, efficiency: 60 %, motor_efficiency: 90 %}"
)
DUCTS = """\
- {name: A, from: hood 1, to: J1, round: 100 mm, length: 4 m, fittings: [{elbow: 90 deg, pieces: 5}]}   # the far one
- {name: B, from: hood 2, to: J1, round: 4 in, length: 2 m, joins_at: 30 deg}
- {name: C, from: hood 3, to: J2, round: 125 mm, length: 7 m, fittings: [{damper: 50 Pa}], joins_at: 30 deg}
- {name: main 1, from: J1, to: J2, round: 150 mm, length: 5 m}
- {name: main 2, from: J2, to: filter, round: 200 mm, length: 3 m}
- {name: link, from: filter, to: fan, round: 200 mm, length: 1 m}
- {name: stack, from: fan, to: outside, round: 200 mm, length: 4 m}"""
REST = """\
cleaners: [{name: filter, resistance: {at: 1700 m3/h, clean: 300 Pa, dirty: 900 Pa}}]
prices: {energy: 0.30 per kWh, sheet: 50 per m2, years: 5, currency: EUR}
"""
SIZES = {"A", "B", "C", "main 1", "main 2", "link"}


def document(ducts=DUCTS, fan=FAN, rest=REST):
    hoods = [
        hood(1, "400 m3/h"),
        hood(2, "350 m3/h"),
        hood(3, "800 m3/h", more=", filter: {at: 800 m3/h, clean: 40 Pa, dirty: 120 Pa}"),
    ]
    return Document(shop_text(hoods, ducts, fan, rest))


@pytest.fixture(scope="module")
def answer():
    return size_ducts(None, document().workplace())


def test_every_duct_before_the_fan_is_told(answer):
    assert {change.duct for change in answer.changes} == SIZES
    assert [fan.fan for fan in answer.fans] == ["fan"]
    assert all(10.1 < change.velocity <= 25 for change in answer.changes if change.duct != "link")


def test_it_saves_against_the_hand_method(answer):
    fan = answer.fans[0]
    assert fan.new.total <= fan.by_hand.total
    per_watt = 0.30 * 2000 * 5 / 1000 / (0.6 * 0.9)
    assert fan.new.total == pytest.approx(fan.new.ducts + per_watt * fan.new.power)
    assert fan.new.electric == pytest.approx(fan.new.power / 0.54)
    assert any(words.startswith("Against sizes chosen by hand the air needs ") for words in fan.words)
    assert "EUR" in fan.words[1]


@pytest.mark.parametrize("law", ["momentum", "tabulated"])
def test_written_into_the_file_every_hood_gets_its_flow(law):
    """Read back and solved as built by its own way, with dirty filters and the fan 5 % slower."""
    before = document()
    found = size_ducts(None, before.workplace(), SizingAsk(law=law))
    after = with_sizes(before, found)
    workplace = after.workplace()
    built = as_built(workplace, loaded=True, speeds={"fan": 0.95 * workplace.fans[0].speed_ratio}, law=law)
    for one in built.hoods:
        assert 0.995 <= one.share <= 1.105, one.name
    settles = [duct.name for duct in built.ducts if duct.settles]
    assert settles == []


@pytest.mark.parametrize("inline", [False, True])
def test_a_duct_of_two_sizes_becomes_two_in_the_file(inline):
    lines = [line.split("   #")[0].removeprefix("- ") for line in DUCTS.splitlines()]
    ducts = f"  [{', '.join(lines)}]" if inline else DUCTS
    before = document(ducts.replace("length: 7 m", "length: 1 m, rise: 0.5 m").replace("length: 4 m,", "length: 9 m,"))
    found = size_ducts(
        None,
        before.workplace(),
        SizingAsk(split=True, dampers=False, series=(0.09, 0.1, 0.112, 0.125, 0.14, 0.16, 0.18, 0.2, 0.224)),
    )
    two = [change for change in found.changes if change.then is not None]
    assert two and any("behind a cone of 30°" in change.words for change in two)
    after = with_sizes(before, found)
    workplace = after.workplace()
    assert len(workplace.ducts) == len(before.workplace().ducts) + len(two)
    wide, narrow = (next(d for d in workplace.ducts if d.name == f"{two[0].duct}{w}") for w in ("", " narrow"))
    assert (wide.round, narrow.round) == (pytest.approx(two[0].new), pytest.approx(two[0].then))
    assert wide.length + narrow.length == pytest.approx(two[0].length)
    assert wide.joins_at is None and wide.to == narrow.start
    built = as_built(workplace, loaded=True, speeds={"fan": 0.95 * workplace.fans[0].speed_ratio})
    for one in built.hoods:
        assert 0.995 <= one.share <= 1.105, one.name


def test_only_sizes_dampers_and_speed_change_in_the_file(answer):
    before = document()
    after = with_sizes(before, answer)
    assert "# the far one" in after.text
    old, new = before.workplace(), after.workplace()
    sizes = {change.duct: change.new for change in answer.changes}
    for one, other in zip(old.ducts, new.ducts, strict=True):
        assert other.round == pytest.approx(sizes.get(one.name, one.round))
        assert other.length == one.length and other.joins_at == one.joins_at
    assert new.fans[0].speed_ratio == pytest.approx(answer.fans[0].speed, rel=1e-3)
    assert new.hoods == old.hoods
    assert before.text == document().text  # discarded: the document itself never changes


def test_sized_again_nothing_changes(answer):
    after = with_sizes(document(), answer)
    again = size_ducts(None, after.workplace())
    assert not any(change.changed for change in again.changes)


def test_a_user_series_and_ducts_that_stay():
    ask = SizingAsk(series=(0.09, 0.1, 0.11, 0.12, 0.14, 0.16, 0.18, 0.2, 0.22), keep=frozenset({"A"}))
    found = {change.duct: change for change in size_ducts(None, document().workplace(), ask).changes}
    assert found["A"].new == 0.1 and not found["A"].changed
    assert all(min(abs(change.new - size) for size in ask.series) < 1e-9 for change in found.values())


def test_what_is_not_in_the_file_is_told():
    found = size_ducts(None, document(fan=FAN.replace(", hours: 2000 h", ""), rest=REST.split("prices")[0]).workplace())
    assert "0.25 per kWh is taken, as the file does not say" in found.notes
    assert "2000 h a year for the fan is taken, as the file does not say" in found.notes


def test_without_a_curve_a_usual_one_is_taken():
    found = size_ducts(None, document(fan="- {name: fan}").workplace())
    assert found.fans[0].speed is None
    assert any("a usual curve for the fan, as the file has none" in words for words in found.fans[0].words)
    with_sizes(document(fan="- {name: fan}"), found).workplace()


def test_every_duct_has_a_sentence(answer):
    for change in answer.changes:
        assert change.words.startswith(f"{change.duct}: ") and change.words.endswith(".")
        assert ("keeps its size" in change.words) == (not change.changed)
        assert ("lock it and mark its position" in change.words) == (change.damper is not None)


def test_a_gate_that_starves_a_main_is_told_with_the_reason(answer):
    told = [words for words in answer.fans[0].words if "shut, which brings" in words]
    assert told and all("it needs 10.2" in words for words in told)


ASKED = [
    (SizingAsk(series="inches"), "no series is named 'inches'; there is fine, EN 1506, half inch, inch"),
    (SizingAsk(series=()), "got the series []; give one diameter or more, each above 0 m"),
    (SizingAsk(keep=frozenset({"Z"})), "keep: no duct is named 'Z'; name ducts of the file"),
    (
        SizingAsk(fastest=9.0),
        "C carries fume, which asks for 10.2\u2009m/s, and at most 9\u2009m/s is allowed; allow more",
    ),
]


@pytest.mark.parametrize(("ask", "words"), ASKED)
def test_what_cannot_be_asked(ask, words):
    with pytest.raises(InputError) as error:
        size_ducts(None, document().workplace(), ask)
    assert str(error.value).startswith(words)


def test_a_file_that_has_changed_since(answer):
    with pytest.raises(InputError, match="the file has no duct 'A' any more; size it again"):
        with_sizes(document(DUCTS.replace("name: A,", "name: A2,")), answer)


def test_a_coarse_series_says_where():
    with pytest.raises(NoSolution, match=r"no size of the series gives 10.2 to 25 m/s"):
        size_ducts(None, document().workplace(), SizingAsk(series=(0.05, 0.5)))


def test_it_tells_how_far_it_is_and_may_be_stopped():
    told = []
    progress = Progress(told.append)
    size_ducts(progress, document().workplace())
    assert told[-1].fraction == 1.0 and any(report.doing == "sizing main 2" for report in told)
    progress.cancel()
    with pytest.raises(Cancelled):
        size_ducts(progress, document().workplace())


def test_dampers_where_a_hazard_forbids_them_are_told():
    kind = "contaminants: [{name: fume, kind: fume}]"
    text = document().text.replace(
        kind, "contaminants: [{name: fume, kind: fume, hazards: [asbestos, explosible dust]}]"
    )
    found = size_ducts(None, Document(text).workplace())
    told = "dampers where asbestos passes: many rules forbid them; ask for sizes without, or for two sizes"
    assert (told in found.notes) == any(change.damper is not None for change in found.changes)
    assert "explosible dust: a named person must review the whole system before any size is taken" in found.notes


def test_what_is_not_counted_is_told():
    found = size_ducts(None, document(DUCTS.replace("length: 5 m", "length: 5 m, taper: 10 deg")).workplace())
    assert "cones at the start of ducts are left out: they change with the sizes" in found.notes
