"""The capture job: scene, words, claims, and one clear error for each bad input."""

import json

import pytest
from typer.testing import CliRunner

from hoodwright.cli import app
from hoodwright.errors import Cancelled, InputError
from hoodwright.flow import Plan
from hoodwright.jobs import Progress
from hoodwright.reports.capture_figure import capture_png, capture_svg
from hoodwright.results import Outcome, Verdict
from hoodwright.tasks.air_scene import draught_of, group_of, release_of, scene_of
from hoodwright.tasks.capture import capture_of
from hoodwright.tasks.capture_claims import claim_of, difference
from hoodwright.tasks.capture_export import capture_as_json
from hoodwright.workplace import parse_workplace

FEW = Plan(realisations=78, particles=1)
SHOP = """\
hoodwright: 1
name: Test shop
room: {size: [3 m, 3 m, 2.5 m], draught: {towards: [1, 0, 0], speed: 0.05 m/s}}
contaminants: [{name: fume, kind: fume}]
surfaces: [{name: bench, corner: [1 m, 1 m, 0.9 m], sides: [[1 m, 0 m, 0 m], [0 m, 0.6 m, 0 m]]}]
sources: [{name: joint, contaminant: fume, at: [1.5 m, 1.3 m, 1.1 m], dispersion: gentle}]
hoods: [{name: nozzle, type: capturing, serves: [joint], opening: {round: 100 mm}, 
  at: [1.5 m, 1.4 m, 1.1 m], facing: [0, -1, 0], intended_flow: 300 m3/h}]
"""
CABINET = SHOP[: SHOP.index("hoods:")] + (
    "hoods: [{name: box, type: enclosing, form: cabinet, serves: [joint], opening: {rectangle: [600 mm, 300 mm]}, "
    "inside: [0.8 m, 0.6 m, 0.5 m], at: [1.5 m, 1.1 m, 1.2 m], facing: [0, -1, 0], intended_flow: 600 m3/h}]\n"
)


def shop(*changes):
    text = SHOP
    for old, new in changes:
        assert old in text
        text = text.replace(old, new)
    return parse_workplace(text)


@pytest.fixture(scope="module")
def near():
    return capture_of(shop(), plan=FEW, distances=[0.05, 0.4])


def test_scene_has_every_part_and_the_walls():
    workplace = shop()
    scene, notes = scene_of(group_of(workplace.hoods[0], workplace), workplace, ((1.5, 1.3, 1.1),))
    assert [m.name for m in scene.mouths] == ["nozzle"] and [p.name for p in scene.plates] == ["bench"]
    assert scene.surroundings.closed and notes == ()
    assert draught_of(workplace).mean == (0.05, 0.0, 0.0)
    assert release_of(workplace.sources[0], workplace, 1.2).jet is None


def test_a_near_source_is_caught_and_a_far_one_less(near):
    first, last = near.answers
    assert first.captured > 0.9 and first.captured >= last.captured
    assert all(0 <= a.low <= a.captured <= a.high <= 1 for a in near.answers)
    assert first.told and "captured, interval" in first.sentence
    assert first.shown.rstrip(" %").lstrip("<> ").isdigit()
    assert last.definition.escape_radius == pytest.approx(0.6)


def test_json_is_as_promised(near):
    told = json.loads(json.dumps(capture_as_json(near), allow_nan=False))
    assert list(told["series"][0]) == ["distance_m", "captured", "low", "high", "plume_limited", "claim"]
    assert {"escape_radius_m", "time_limit_s", "realisations", "particles", "seed"} <= set(told["definition"])
    assert told["banner"] == "not validated for capture"


def test_same_seed_same_number():
    assert capture_of(shop(), plan=FEW) == capture_of(shop(), plan=FEW)


def test_figure(near):
    assert "not validated" in capture_svg(near)
    assert capture_png(near)[:4] == b"\x89PNG"


def test_an_enclosure_gets_no_per_cent():
    answer = capture_of(parse_workplace(CABINET), plan=FEW).answers[0]
    assert answer.shown == "cannot tell" and answer.openings[0].velocity > 0
    assert 0 <= answer.captured <= 1


@pytest.mark.parametrize(
    "old, new, words",
    [
        ("kind: fume}", "kind: vapour, relative_density: 1.5}", "1.5 times as heavy"),
        ("gentle", "thrown", "do not follow the air"),
        ("gentle", "driven", "give its 'release'"),
        ("surfaces:", "people: [{name: Ann, at: [1.5 m, 1.35 m]}]\nsurfaces:", "Ann stands between"),
    ],
)
def test_what_cannot_be_claimed(old, new, words):
    workplace = shop((old, new))
    assert words in claim_of(workplace.hoods[0], workplace.sources[0], workplace)


def test_why_the_handbook_differs():
    assert "stream brings more" in difference(0.2, 0.4, Outcome(Verdict.MEETS, "x"), True)
    assert "margin" in difference(0.95, 1.0, Outcome(Verdict.SHORT, "x"), False)
    assert difference(0.95, 1.0, Outcome(Verdict.MEETS, "x"), False) is None


@pytest.mark.parametrize(
    "changes, words",
    [
        ([("1.3 m, 1.1 m]", "1.45 m, 1.1 m]")], "joint: .* lies in"),
        ([("facing: [0, -1, 0]", "facing: [0, 0, -1]"), ("1.4 m, 1.1 m]", "1.4 m, 0.905 m]")], "bench"),
        ([("0.05 m/s", "60 m/s")], "draught"),
        (
            [("intended_flow: 300 m3/h", "intended_flow: 300 m3/h, today: {flow: 0 m3/h}")],
            "draws no air",
        ),
    ],
)
def test_bad_input_is_one_clear_error(changes, words):
    with pytest.raises(InputError, match=words):
        capture_of(shop(*changes), plan=FEW, today=True)


def test_unknown_names_and_bad_distances():
    for arguments, words in (({"hood": "x"}, "there is nozzle"), ({"distances": [-1.0]}, "above 0")):
        with pytest.raises(InputError, match=words):
            capture_of(shop(), plan=FEW, **arguments)


def test_it_can_be_stopped():
    progress = Progress()
    progress.cancel()
    with pytest.raises(Cancelled):
        capture_of(shop(), plan=FEW, progress=progress)


def test_command_prints_sentence_interval_and_banner(tmp_path):
    file, figure = tmp_path / "shop.yaml", tmp_path / "curve.svg"
    file.write_text(SHOP, encoding="utf-8")
    result = CliRunner().invoke(app, ["capture", str(file), "--distances", "50mm,100mm", "--plot", str(figure)])
    assert result.exit_code == 0
    assert result.stdout.startswith("The nozzle, 50\u2009mm from the joint,") and figure.exists()
    assert " ".join(result.stdout.split()).count("not validated for capture") == 1


def test_sealed_enclosure_is_named():
    lid = "surfaces:\n  - {name: lid, corner: [1 m, 1.1 m, 0.8 m], sides: [[1 m, 0 m, 0 m], [0 m, 0 m, 0.8 m]]}\n  -"
    workplace = parse_workplace(CABINET.replace("surfaces: [", lid + " ").replace("0.6 m, 0 m]]}]", "0.6 m, 0 m]]}"))
    with pytest.raises(InputError, match=r"box: .*(sealed|no air)"):
        capture_of(workplace, plan=FEW)
