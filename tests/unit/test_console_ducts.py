"""The ducts command as people and scripts meet it."""

import json

import pytest
from typer.testing import CliRunner

from built_shop import LINE, hood, shop_text
from curved_demo import UNCURVED, demo
from hoodwright.cli import app
from hoodwright.errors import InputError

RUNNER = CliRunner()
DUCTS = """\
- {name: A, from: hood 1, to: J, round: 100 mm, length: 3 m, fittings: [{elbow: 90 deg, pieces: 5}]}
- {name: B, from: hood 2, to: J, round: 100 mm, length: 5 m, fittings: [{damper: 60 Pa}], joins_at: 30 deg}
- {name: main, from: J, to: filter, round: 140 mm, length: 5 m}
- {name: clean, from: filter, to: fan, round: 160 mm, length: 1 m}
- {name: stack, from: fan, to: outside, round: 160 mm, length: 3 m, rise: 3 m}"""
FAN = f"- {{name: fan, {LINE}, efficiency: 55 %, motor: 0.75 kW, hours: 2000 h}}"
REST = """\
cleaners: [{name: filter, resistance: {clean: 100 Pa, dirty: 400 Pa, at: 640 m3/h}}]
scenarios: [{name: one alone, closed: [hood 2]}]
prices: {energy: 0.25 per kWh, currency: crowns}
"""
TEXT = shop_text([hood(1, "400 m3/h"), hood(2, "400 m3/h")], DUCTS, FAN, REST)
BRANCH_KEYS = ("flow_m3_s", "velocity_m_s", "static_pressure_pa", "total_pressure_pa", "loss_pa")


@pytest.fixture
def folder(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    (tmp_path / "shop.yaml").write_text(TEXT, encoding="utf-8")
    return tmp_path


def told(*arguments: str) -> str:
    result = RUNNER.invoke(app, ["ducts", *arguments])
    assert result.exit_code == 0, result.exception
    return result.stdout


def answer(*arguments: str) -> dict:
    return json.loads(told(*arguments, "--json"))


def test_a_sentence_first_then_tables_no_wider_than_100(folder):
    text = told("shop.yaml")
    assert text.startswith("As built, with clean filters ")
    assert max(map(len, text.splitlines())) <= 100
    for words in (
        "hood 2 is served least",
        "SP end",
        "balances total pressure",
        "Fan fan: ",
        "stable; runs here",
        "one alone: hood 1",
        "Balancing: ",
        "Airflow indicators",
        "crowns",
    ):
        assert words in text


def test_machines_get_every_branch_junction_and_point(folder):
    found = answer("shop.yaml")
    assert [branch["name"] for branch in found["branches"]] == ["A", "B", "main", "clean", "stack"]
    assert all(isinstance(branch[key], float) for branch in found["branches"] for key in BRANCH_KEYS)
    (junction,) = found["junctions"]
    assert abs(junction["imbalance_kg_s"]) < 1e-9
    assert [side["branch"] for side in junction["sides"]] == ["A", "B"]
    (point,) = found["fans"][0]["operating_points"]
    assert (point["stable"], point["runs_here"]) == (True, True)
    assert found["fans"][0]["cost_per_year"] > 0
    assert found["scenarios"][0]["closed"] == ["hood 2"]
    assert found["sentence"].startswith("As built, ")
    main = found["branches"][2]
    assert main["flow_m3_s"] == pytest.approx(sum(side["flow_m3_s"] for side in junction["sides"]))
    velocity_pressure = main["total_pressure_pa"] - main["static_pressure_pa"]
    assert main["velocity_pressure_pa"] == pytest.approx(velocity_pressure)


def test_dirty_filters_take_flow(folder):
    clean, dirty = answer("shop.yaml"), answer("shop.yaml", "--dirty")
    assert dirty["filter_load_share"] == 1.0
    assert dirty["hoods"][0]["flow_m3_s"] < clean["hoods"][0]["flow_m3_s"]
    assert clean["filter_window"] == dirty["filter_window"]
    assert told("shop.yaml", "--dirty").startswith("As built, with dirty filters ")


def test_samples_and_files_are_told_too(folder):
    text = told("shop.yaml", "--samples", "50", "--xlsx", "list.xlsx", "--dxf", "plan.dxf")
    assert "How sure: 50 samples" in text
    assert (folder / "list.xlsx").read_bytes()[:2] == b"PK"
    assert b"SECTION" in (folder / "plan.dxf").read_bytes()
    assert answer("shop.yaml", "--samples", "50", "--xlsx", "list.csv")["spread"]["samples"] == 50
    assert (folder / "list.csv").read_text(encoding="utf-8").count("\n") == 6


def test_the_schedule_needs_no_curve(folder):
    (folder / "demo.yaml").write_text(demo(UNCURVED), encoding="utf-8")
    assert told("demo.yaml", "--xlsx", "list.csv").startswith("No fan has a curve, so no flow is computed as built.")
    assert answer("demo.yaml", "--xlsx", "list.csv") == {"workplace": "Bell and instrument workshop"}


def test_sizes_are_told(folder):
    found = answer("shop.yaml", "--size")["sizing"]
    assert found["fans"][0]["name"] == "fan"
    assert {change["branch"] for change in found["fans"][0]["changes"]} >= {"A", "B", "main"}
    assert "- A" in told("shop.yaml", "--size")


def test_us_units(folder):
    text = told("shop.yaml", "--units", "us")
    assert "cfm" in text
    assert "in wg" in text
    assert max(map(len, text.splitlines())) <= 100


def test_a_file_without_a_curve_says_what_to_add(folder):
    (folder / "demo.yaml").write_text(demo(UNCURVED), encoding="utf-8")
    result = RUNNER.invoke(app, ["ducts", "demo.yaml"])
    assert isinstance(result.exception, InputError)
    assert "no curve is given for roof fan, booth fan" in str(result.exception)


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        (("--xlsx", "list.txt"), "--xlsx: got 'list.txt'; a name that ends in .xlsx or .csv is needed"),
        (("--dxf", "plan.png"), "--dxf: got 'plan.png'; a name that ends in .dxf is needed"),
        (("--units", "metric"), "--units: got 'metric'; allowed: SI, US"),
    ],
)
def test_options_that_cannot_be(folder, arguments, words):
    result = RUNNER.invoke(app, ["ducts", "shop.yaml", *arguments])
    assert words in str(result.exception)
