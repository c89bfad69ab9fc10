"""The documentation is under test: generated pages are fresh, links lead somewhere, commands are told."""

import re
from pathlib import Path

import pytest
from tools.make_docs import PAGE, README, readme, sources_page
from typer.main import get_command

from hoodwright.cli import app
from hoodwright.sources import all_sources

ROOT = Path(__file__).parents[2]
PAGES = [*sorted((ROOT / "docs").glob("*.md")), *sorted(ROOT.glob("*.md"))]


def test_sources_page_is_fresh():
    assert PAGE.read_text(encoding="utf-8") == sources_page(), "run: make docs"


@pytest.mark.parametrize("path", PAGES, ids=lambda path: path.name)
def test_links_lead_somewhere(path):
    for target in re.findall(r"\]\(([^)#]+)(?:#[^)]*)?\)", path.read_text(encoding="utf-8")):
        assert target.startswith("http") or (path.parent / target).exists(), f"{path.name}: {target}"


@pytest.mark.parametrize("path", PAGES, ids=lambda path: path.name)
def test_citations_are_in_the_list(path):
    text = re.sub(r"```.*?```|`[^`]*`", "", path.read_text(encoding="utf-8"), flags=re.DOTALL)
    for key in re.findall(r"\[([a-z][a-z0-9-]*\d*)(?:, [^\]]*)?\](?!\()", text):
        assert key in all_sources(), f"{path.name}: [{key}] is not in sources.toml"


def test_the_answer_in_the_readme_is_the_one_given_now():
    assert README.read_text(encoding="utf-8") == readme(), "run: make docs"


def test_every_command_is_in_the_readme():
    told = (ROOT / "README.md").read_text(encoding="utf-8")
    for name in get_command(app).commands:
        assert f"hoodwright {name}" in told, f"README does not tell 'hoodwright {name}'"


def test_readme_begins_with_the_job_and_the_two_commands():
    told = (ROOT / "README.md").read_text(encoding="utf-8")
    first = told.split("##")[0]
    assert "captured before anyone breathes them" in first
    assert told.index("make demo") < told.index("make test") < 2500
