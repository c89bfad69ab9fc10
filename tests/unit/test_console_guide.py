"""The guide on the command line: a table no wider than the page, one process in full, and files to start from."""

import json

import pytest
from typer.testing import CliRunner

from hoodwright.cli import app
from hoodwright.errors import InputError
from hoodwright.tasks.guide import guide_entries

WIDTH = 100


def inside(*arguments: str) -> str:
    result = CliRunner().invoke(app, arguments)
    if result.exception and not isinstance(result.exception, SystemExit):
        raise result.exception
    assert result.exit_code == 0, result.output
    return result.stdout


def test_a_sentence_then_a_table_then_where_to_look_next():
    told = inside("guide", "weld").splitlines()
    assert told[0].startswith("The process guide has 6 processes with the words 'weld'")
    assert any(line.startswith("Process ") for line in told)
    assert told[-1] == 'A file to start from: hoodwright new work.yaml --process "flux-cored welding"'


@pytest.mark.parametrize("arguments", [(), ("weld",), ("chromium", "plating"), ("dust", "--units", "US")])
def test_nothing_is_wider_than_the_page(arguments):
    assert max(len(line.rstrip()) for line in inside("guide", *arguments).splitlines()) <= WIDTH


def test_one_process_in_full_with_sources():
    told = " ".join(inside("guide", "removing", "asbestos").split()).replace("- ", "-")  # lines may break at a hyphen
    assert "Refused -UK: most work with asbestos is for licensed contractors only" in told
    assert "UK: examined at least every 6 months (asbestos)" in told and "[uk-asbestos-13, reg. 13]" in told
    assert "kept for 5 years [coshh-2002, reg. 9(4)]" in told


def test_sorting():
    told = inside("guide", "foundry", "--sort", "release").splitlines()
    rows = [line for line in told if " gentle " in line or " thrown " in line]
    assert " gentle " in rows[0] and " thrown " in rows[-1]


def test_as_data_for_machines():
    assert len(json.loads(inside("guide", "--json"))) == len(guide_entries())
    assert [one["process"] for one in json.loads(inside("guide", "TIG welding", "--json"))] == ["TIG welding"]


@pytest.mark.parametrize(
    "arguments, message",
    [
        (("guide", "soldring"), "no process of the guide is named 'soldring'; the nearest are: soldering with"),
        (("guide", "--sort", "colour"), "--sort: got 'colour'; allowed: process, trade, kind, release, hood"),
        (("guide", "--units", "UK"), "--units: got 'UK'; allowed: SI, US"),
        (("new", "x.yaml", "--process", "nail tabel"), "the nearest are: artificial nails"),
    ],
)
def test_one_clear_error(arguments, message, tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    with pytest.raises(InputError) as error:
        inside(*arguments)
    assert message in str(error.value)
    assert list(tmp_path.iterdir()) == []


def test_new_for_a_process_writes_a_file_that_is_not_there_yet(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    told = inside("new", "table.yaml", "--process", "artificial nails")
    assert told == "table.yaml written. Change its numbers, then: hoodwright assess table.yaml\n"
    assert "process: artificial nails" in (tmp_path / "table.yaml").read_text(encoding="utf-8")
    with pytest.raises(InputError, match="exists already"):
        inside("new", "table.yaml", "--process", "artificial nails")
