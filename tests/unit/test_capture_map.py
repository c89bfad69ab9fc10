"""`hoodwright capture --map`: the picture, the numbers for machines, and one clear error for each bad wish."""

import json
import re
from xml.etree import ElementTree

import numpy as np
import pytest
from typer.testing import CliRunner

from hoodwright.cli import app
from hoodwright.errors import InputError
from hoodwright.flow import Field
from hoodwright.reports.capture_map_figure import Sheet, capture_map_png, capture_map_svg
from hoodwright.tasks.air import map_of_capture as air_map
from hoodwright.tasks.air.scene import draught_of
from hoodwright.tasks.air.solved import flows_of, solved_air
from hoodwright.tasks.capture.job import capture_of
from hoodwright.tasks.capture.map import captured_map, pair_of
from hoodwright.workplace import parse_workplace

SHOP = """\
hoodwright: 1
name: Test shop
room: {size: [3 m, 3 m, 2.5 m], draught: {towards: [1, 0, 0], speed: 0.1 m/s, wander: 0.05 m/s}}
contaminants: [{name: fume, kind: fume}]
surfaces: [{name: bench, corner: [1 m, 1 m, 0.9 m], sides: [[1 m, 0 m, 0 m], [0 m, 0.6 m, 0 m]]}]
sources: [{name: joint, contaminant: fume, at: [1.5 m, 1.3 m, 1.1 m], dispersion: gentle}]
hoods:
  - {name: nozzle, type: capturing, serves: [joint], opening: {round: 100 mm}, at: [1.5 m, 1.4 m, 1.1 m],
     facing: [0, -1, 0], intended_flow: 300 m3/h, today: {flow: 150 m3/h}}
"""
SECOND = """\
  - {name: spare, type: capturing, serves: [joint], opening: {round: 100 mm}, at: [1.5 m, 0.8 m, 1.1 m],
     facing: [0, 1, 0], intended_flow: 300 m3/h}
"""
CABINET = SHOP[: SHOP.index("hoods:")] + (
    "hoods: [{name: box, type: enclosing, form: cabinet, serves: [joint], opening: {rectangle: [600 mm, 300 mm]}, "
    "inside: [0.8 m, 0.6 m, 0.5 m], at: [1.5 m, 1.1 m, 1.2 m], facing: [0, -1, 0], intended_flow: 600 m3/h}]\n"
)


@pytest.fixture(scope="module", autouse=True)
def coarse():
    """A map of few places and draws, which is quick."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(air_map, "PLACES", 200)
        patch.setattr(air_map, "DRAWS", 8)
        yield


@pytest.fixture(scope="module")
def found(coarse):
    return captured_map(parse_workplace(SHOP), "joint", "nozzle", "upright")


def run(tmp_path, text, *options):
    file = tmp_path / "shop.yaml"
    file.write_text(text, encoding="utf-8")
    return CliRunner().invoke(app, ["capture", str(file), *options])


def test_the_picture_tells_what_it_shows_and_what_it_is_worth(found):
    svg = capture_map_svg(found)
    ElementTree.fromstring(svg)
    for words in ("Where would the nozzle still catch what the joint gives off?", "not validated for capture", "90 %"):
        assert words in svg
    for words in ("50 %", "solid", "8 particles from each place, no interval", "Lost: farther"):
        assert words in svg
    assert capture_map_svg(found) == svg
    assert capture_map_png(found)[:4] == b"\x89PNG"


def test_hood_and_source_stand_at_their_distance_in_the_picture(found):
    sheet = Sheet(found)
    (x, y), (a, b) = sheet.of(found.frame.centre), sheet.of(found.source_at)
    assert abs(a - x) == pytest.approx(0.1 * sheet.scale, rel=1e-6) and b == pytest.approx(y)
    low, high = sheet.of((1.5, 1.3, 1.0)), sheet.of((1.5, 1.3, 1.2))
    assert low[1] > high[1]  # up is up


def test_the_bench_below_stands_in_the_picture(found):
    ((start, end),) = found.plates
    assert {start[2], end[2]} == {0.9} and abs(start[1] - end[1]) == pytest.approx(0.6)
    (_, y), (_, middle) = Sheet(found).of(start), Sheet(found).of(found.frame.centre)
    assert y - middle == pytest.approx(0.2 * Sheet(found).scale)


def test_todays_smaller_flow_catches_less(found):
    today = captured_map(parse_workplace(SHOP), "joint", "nozzle", "upright", today=True)
    assert today.flow == pytest.approx(150 / 3600)

    def area(one):
        plane = one.layer.plane
        cell = np.linalg.norm(plane.first) * np.linalg.norm(plane.second) / one.layer.values.size
        return np.sum(np.nan_to_num(one.layer.values) >= 0.9) * cell

    assert area(today) < 0.8 * area(found)


def test_command_draws_the_map_and_says_what_it_shows(tmp_path):
    result = run(tmp_path, SHOP, "--map", str(tmp_path / "map.svg"))
    assert result.exit_code == 0, result.output
    assert "level, through the joint" in (tmp_path / "map.svg").read_text(encoding="utf-8")
    assert "Inside the 90 % line the nozzle still catches nine tenths" in " ".join(result.stdout.split())


def test_json_has_map_and_centreline(tmp_path):
    told = json.loads(run(tmp_path, SHOP, "--json", "--plane", "Upright").stdout)
    assert told["map"]["plane"] == "upright" and told["map"]["banner"] == told["banner"]
    a, b = told["map"]["shape"]
    assert len(told["map"]["captured"]) == a * b and None in told["map"]["captured"]
    assert {"escape_radius_m", "time_limit_s", "realisations", "particles"} == set(told["map"]["definition"])
    line = told["results"][0]["centreline"]
    assert [set(row) for row in line] == [{"distance_m", "velocity_m_s", "handbook_m_s"}] * len(line)
    speeds = [row["velocity_m_s"] for row in line]
    assert speeds == sorted(speeds, reverse=True) and len(line) > 4
    assert "map" not in json.loads(run(tmp_path, SHOP, "--json").stdout)


def test_the_centreline_is_the_field_and_stands_beside_the_handbook():
    workplace = parse_workplace(SHOP)
    line = capture_of(workplace).answers[0].centreline
    air = solved_air(workplace.hoods[0], workplace, workplace.sources[0].points, flows_of(workplace))
    assert draught_of(workplace).mean != (0, 0, 0)  # which the line leaves out
    field: Field = air.bases.field(air.flows)
    for row in line:
        exact = np.linalg.norm(field.velocity((1.5, 1.4 - row.distance, 1.1)))
        assert row.velocity == pytest.approx(exact, rel=1e-5)
        if row.handbook is not None:
            assert 0.5 < row.velocity / row.handbook < 2
    assert any(row.handbook is not None for row in line) and line[-1].handbook is None  # beyond every range


@pytest.mark.parametrize(
    ("text", "options", "words"),
    [
        (SHOP, ["--map", "map.jpg"], "--map: got 'map.jpg'; a name that ends in .png or .svg is needed"),
        (SHOP, ["--map", "nowhere/map.png"], "--map: there is no folder 'nowhere'; make it, or choose another"),
        (SHOP, ["--plot", "nowhere/curve.png"], "--plot: there is no folder 'nowhere'; make it, or choose another"),
        (SHOP, ["--pdf", "air.txt"], "--pdf: got 'air.txt'; a name that ends in .pdf is needed, for example air.pdf"),
        (SHOP, ["--paper", "a4"], "--paper: it is the paper of the PDF; name the PDF with --pdf"),
        (SHOP, ["--map", "map.png", "--plane", "tilted"], "--plane: got 'tilted'; allowed: level, upright"),
        (SHOP, ["--plane", "level"], "name its picture with --map, or ask --json"),
        (SHOP + SECOND, ["--map", "map.png"], "joint before nozzle; joint before spare; name --source and --hood"),
        (CABINET, ["--map", "map.png"], "there is no capture map: an enclosure is judged by the inward velocity"),
    ],
)
def test_bad_wishes_are_one_clear_error(tmp_path, monkeypatch, text, options, words):
    monkeypatch.chdir(tmp_path)
    result = run(tmp_path, text, *options)
    assert result.exit_code != 0 and isinstance(result.exception, InputError)
    assert re.search(re.escape(words), str(result.exception))
    assert not (tmp_path / "map.png").exists()


def test_a_map_is_of_one_pair():
    workplace = parse_workplace(SHOP + SECOND)
    assert pair_of(workplace, None, "spare") == ("joint", "spare")
    with pytest.raises(InputError, match="--source: got 'x'"):
        pair_of(workplace, "x", None)


def test_a_hood_without_flow_has_no_map():
    workplace = parse_workplace(SHOP.replace("today: {flow: 150 m3/h}", "today: {flow: 0 m3/h}"))
    with pytest.raises(InputError, match="nozzle: it draws no air"):
        captured_map(workplace, "joint", "nozzle", today=True)
