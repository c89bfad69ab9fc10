"""The command line as people and scripts meet it."""

import json
import os
import re
import subprocess
import sys
from pathlib import Path

import pytest
from typer.testing import CliRunner

from hoodwright import __version__
from hoodwright.cli import app
from hoodwright.workplace.starters import starter_text
from two_hoods import TWO_HOODS

RUNNER = CliRunner()
COMMANDS = ("demo", "new", "guide", "check", "assess", "capture", "ducts", "open", "warm", "schema")
BROKEN = TWO_HOODS.replace("units: SI", "units: metric").replace("intended_flow: 320 m3/h", "intended_flow: 3 m")
FAULTS = """\
bench.yaml:5:8: units: got 'metric'; allowed: SI, US; choose one of these
bench.yaml:41:20: hoods[bench nozzle].intended_flow: 3 m is a length; a flow is needed, for example 300 m3/h or 180 cfm
"""


@pytest.fixture
def folder(tmp_path, monkeypatch) -> Path:
    """An empty folder to work in, with the demo workplace as bench.yaml."""
    monkeypatch.chdir(tmp_path)
    (tmp_path / "bench.yaml").write_text(TWO_HOODS, encoding="utf-8")
    return tmp_path


def run(*arguments: str, **environment: str) -> subprocess.CompletedProcess:
    """The command as a process of its own."""
    command = [sys.executable, "-m", "hoodwright.cli", *arguments]
    return subprocess.run(command, capture_output=True, env=os.environ | environment, timeout=60)


def inside(*arguments: str):
    """The command within this process; errors come out as exceptions."""
    return RUNNER.invoke(app, arguments)


def test_help_names_every_command():
    result = run("--help")
    text = result.stdout.decode()
    assert result.returncode == 0
    assert all(re.search(rf"\b{command}\b", text) for command in COMMANDS)
    assert [command.name or command.callback.__name__ for command in app.registered_commands] == list(COMMANDS)


@pytest.mark.parametrize("command", COMMANDS)
def test_each_command_has_help(command):
    result = inside(command, "--help")
    assert result.exit_code == 0
    assert "Usage" in result.stdout


def test_version():
    assert inside("--version").stdout == f"hoodwright {__version__}\n"


def test_assess_prints_the_answer(folder):
    result = run("assess", "bench.yaml")
    text = result.stdout.decode()
    assert (result.returncode, result.stderr) == (0, b"")
    assert text.startswith("Bell and instrument workshop - Invented for the demonstration.")
    assert "The table hood is 400\u2009mm from the open lacquer jar, too far for any equation" in text
    assert max(map(len, text.splitlines())) <= 100
    assert "\x1b" not in text


def test_assess_in_us_units(folder):
    text = inside("assess", "bench.yaml", "--units", "US").stdout
    assert "cfm" in text
    assert "m³/h" not in text


def test_json_goes_alone_to_stdout(folder):
    result = run("assess", "bench.yaml", "--json")
    data = json.loads(result.stdout)
    assert (result.returncode, result.stderr) == (0, b"")
    assert [hood["name"] for hood in data["hoods"]] == ["bench nozzle", "table hood"]
    assert data["hoods"][0]["flow_m3_s"] == pytest.approx(320 / 3600)


@pytest.mark.parametrize("command", [["assess"], ["assess", "--json"], ["check"]])
def test_all_faults_go_to_stderr_and_nothing_to_stdout(folder, command):
    (folder / "bench.yaml").write_text(BROKEN, encoding="utf-8")
    result = run(*command, "bench.yaml")
    assert (result.returncode, result.stdout, result.stderr.decode()) == (2, b"", FAULTS.replace("\n", os.linesep))


def test_check_finds_no_fault(folder):
    assert inside("check", "bench.yaml").stdout == (
        "bench.yaml: no faults found in 'Bell and instrument workshop' (2 hoods, 2 sources, 5 ducts).\n"
    )


def test_check_counts_one_as_one(folder):
    inside("new", "mine.yaml")
    assert inside("check", "mine.yaml").stdout == (
        "mine.yaml: no faults found in 'My workplace' (1 hood, 1 source, 2 ducts).\n"
    )


def test_new_writes_a_file_to_start_from(folder):
    assert inside("new").stdout == (
        "workplace.yaml written. Change its numbers, then: hoodwright assess workplace.yaml\n"
    )
    assert (folder / "workplace.yaml").read_text(encoding="utf-8") == starter_text("starter")
    assert inside("assess", "workplace.yaml").exit_code == 0


REFUSED = {
    "a file that is there": (
        ["new", "bench.yaml"],
        "bench.yaml exists already; nothing was written: choose another name",
    ),
    "a schema over a workplace": (
        ["schema", "bench.yaml"],
        "bench.yaml exists already; nothing was written: choose another name",
    ),
    "a file that is not there": (
        ["assess", "none.yaml"],
        "none.yaml: no such file or directory; check the path and your rights to it",
    ),
    "a folder for a file": (
        ["check", "."],
        ".: is a directory; check the path and your rights to it",
    ),
    "a folder that is not there": (
        ["open", "none"],
        "none does not exist; give a folder with workplace files, or one file",
    ),
    "other units": (
        ["assess", "bench.yaml", "--units", "imperial"],
        "--units: got 'imperial'; allowed: SI, US; choose one of these",
    ),
    "other paper": (
        ["assess", "bench.yaml", "--paper", "a5"],
        "--paper: got 'a5'; allowed: a4, letter; choose one of these",
    ),
    "a report over a workplace": (
        ["assess", "bench.yaml", "--report", "bench.yaml"],
        "--report: got 'bench.yaml'; a name that ends in .pdf is needed, for example answer.pdf",
    ),
    "a place that is not there": (
        ["schema", "none/schema.json"],
        "none/schema.json: no such file or directory; choose another place",
    ),
}


@pytest.mark.parametrize("command, message", REFUSED.values(), ids=REFUSED.keys())
def test_input_that_cannot_be_used_is_told_in_one_line(folder, command, message):
    result = run(*command)
    assert (result.returncode, result.stdout, result.stderr.decode().splitlines()) == (2, b"", [message])
    assert (folder / "bench.yaml").read_text(encoding="utf-8") == TWO_HOODS


@pytest.mark.parametrize("command", [["assess"], ["assess", "bench.yaml", "--nonsense"], ["nonsense"]])
def test_words_that_are_no_command(folder, command):
    result = run(*command)
    assert (result.returncode, result.stdout) == (2, b"")
    assert b"Traceback" not in result.stderr


def test_schema_is_printed_or_written(folder):
    printed = json.loads(inside("schema").stdout)
    assert inside("schema", "schema.json").stdout == "schema.json written.\n"
    assert json.loads((folder / "schema.json").read_text(encoding="utf-8")) == printed
    assert printed["title"] == "hoodwright workplace file, format 1"


ASCII = {"PYTHONIOENCODING": "ascii", "PYTHONUTF8": "0", "LC_ALL": "C"}


def test_a_terminal_without_signs_gets_plain_letters(folder):
    text = run("assess", "bench.yaml", **ASCII).stdout.decode("ascii")
    assert "needs 291 m3/h, is meant to get 320 m3/h" in text
    assert "  [*] Is what was intended enough? Meets the need" in text
    assert "(+/- 17 m3/h)" in text
    assert max(map(len, text.splitlines())) <= 100


def test_a_terminal_without_signs_gets_whole_json(folder):
    (folder / "bench.yaml").write_text(
        TWO_HOODS.replace("Bell and instrument workshop", "Glöckner 鐘"), encoding="utf-8"
    )
    plain = json.loads(run("assess", "bench.yaml", "--json", **ASCII).stdout.decode("ascii"))
    assert plain == json.loads(run("assess", "bench.yaml", "--json").stdout.decode("utf-8"))
    assert plain["workplace"] == "Glöckner 鐘"


def test_faults_can_be_told_without_signs(folder):
    (folder / "bench.yaml").write_text(BROKEN.replace("units: metric", "units: m³ 21 °"), encoding="utf-8")
    result = run("check", "bench.yaml", **ASCII)
    assert result.returncode == 2
    assert "bench.yaml:5:8: units: got 'm3 21 deg'; allowed: SI, US" in result.stderr.decode("ascii")


def test_the_c_locale_is_no_trouble(folder):
    result = run("assess", "bench.yaml", LC_ALL="C")
    assert (result.returncode, result.stderr) == (0, b"")


def test_the_demo_without_its_page(folder):
    pytest.importorskip("hoodwright.reports", exc_type=ImportError)
    assert run("demo", "--no-page").returncode == 0
    assert (folder / "hoodwright-demo" / "bell-workshop.pdf").read_bytes().startswith(b"%PDF")
    edited = folder / "hoodwright-demo" / "bell-workshop.yaml"
    edited.write_text(edited.read_text(encoding="utf-8") + "# mine\n", encoding="utf-8")
    assert run("demo", "--no-page").returncode == 0
    assert edited.read_text(encoding="utf-8").endswith("# mine\n")


@pytest.mark.parametrize("paper", ["a4", "letter"])
def test_a_report_is_written(folder, paper):
    pytest.importorskip("hoodwright.reports", exc_type=ImportError)
    result = run("assess", "bench.yaml", "--report", "answer.pdf", "--paper", paper)
    assert result.returncode == 0
    assert result.stdout.decode().endswith(f"Report written: answer.pdf{os.linesep}")
    assert (folder / "answer.pdf").read_bytes().startswith(b"%PDF")


def test_a_report_beside_json_keeps_stdout_clean(folder):
    pytest.importorskip("hoodwright.reports", exc_type=ImportError)
    json.loads(run("assess", "bench.yaml", "--json", "--report", "answer.pdf").stdout)
    assert (folder / "answer.pdf").exists()


def test_a_report_that_cannot_be_written(folder):
    pytest.importorskip("hoodwright.reports", exc_type=ImportError)
    result = run("assess", "bench.yaml", "--json", "--report", "none/answer.pdf")
    assert result.returncode == 2
    assert result.stderr.decode().strip() == "none/answer.pdf: no such file or directory; choose another place"


def test_a_port_that_cannot_be_is_one_clear_error():
    done = subprocess.run(
        [sys.executable, "-m", "hoodwright.cli", "open", ".", "--no-browser", "--port", "99999"],
        capture_output=True,
        text=True,
    )
    assert done.returncode == 2
    assert "65535" in done.stderr and "Traceback" not in done.stderr
