"""The documentation is under test: generated pages are fresh, links lead somewhere, nothing is left out."""

import importlib
import inspect
import re
from pathlib import Path

import pytest
from tools.make_docs import GUIDE, PAGE, README, guide_page, readme, sources_page
from typer.main import get_command

from hoodwright.cli import app
from hoodwright.sources import all_sources
from hoodwright.tables import load_table
from hoodwright.tasks.assess import assess
from hoodwright.workplace import read_workplace
from hoodwright.workplace.hoods import AnyHood
from hoodwright.workplace.model import Part

ROOT = Path(__file__).parents[2]
FILE_PAGE = ROOT / "docs" / "workplace-file.md"
IN_COMMENTS = {  # one of several that may stand there
    *(("AirState", key) for key in ("wet_bulb", "dew_point", "pressure")),
    *(("TakeOff", key) for key in ("like", "loss")),
    ("Outlet", "round"),
}
PAGES = [*sorted((ROOT / "docs").glob("*.md")), *sorted(ROOT.glob("*.md"))]


def test_sources_page_is_fresh():
    assert PAGE.read_text(encoding="utf-8") == sources_page(), "run: make docs"


def test_guide_page_is_fresh():
    assert GUIDE.read_text(encoding="utf-8") == guide_page(), "run: make docs"


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


def keys_of(part: type[Part]):
    """Every part of the file that can stand within a part, with its keys as they are typed."""
    yield from ((owner(part, name), name, field.alias or name) for name, field in part.model_fields.items())


def owner(part: type[Part], name: str) -> str:
    """The part that a key belongs to: what all hoods have is told once."""
    common = issubclass(part, AnyHood) and name in AnyHood.model_fields
    return "hood" if common else part.__name__


def parts() -> list[type[Part]]:
    """The parts of the model that a file can hold."""

    def below(part: type[Part]) -> list[type[Part]]:
        return [part, *(kind for child in part.__subclasses__() for kind in below(child))]

    found = [kind for kind in below(Part) if kind.__module__.startswith("hoodwright.")]
    return [kind for kind in found if kind.model_fields and kind.__name__ not in ("Part", "Shaped", "AnyHood")]


def used(value) -> set[tuple[str, str]]:
    """Every part and key that a workplace states."""
    if isinstance(value, tuple):
        return {pair for entry in value for pair in used(entry)}
    if not isinstance(value, Part):
        return set()
    own = {(owner(type(value), name), name) for name in value.model_fields_set}
    return own.union(*(used(getattr(value, name)) for name in value.model_fields_set))


def file_of_the_page(folder: Path) -> Path:
    """The blocks of the page about the workplace file, one after the other."""
    blocks = re.findall(r"```yaml\n(.*?)```", FILE_PAGE.read_text(encoding="utf-8"), flags=re.DOTALL)
    path = folder / "page.yaml"
    path.write_text("".join(blocks), encoding="utf-8")
    return path


def test_every_key_of_the_file_is_explained():
    told = FILE_PAGE.read_text(encoding="utf-8")
    missing = [f"{part}.{key}" for kind in parts() for part, _, key in keys_of(kind) if f"`{key}`" not in told]
    assert missing == []


def test_the_example_of_the_page_is_read_and_uses_every_key(tmp_path):
    workplace = read_workplace(file_of_the_page(tmp_path))
    keys = {(part, name) for kind in parts() for part, name, _ in keys_of(kind)}
    assert keys - used(workplace) == IN_COMMENTS


def test_the_example_of_the_page_is_answered(tmp_path):
    answer = assess(read_workplace(file_of_the_page(tmp_path)))
    assert [hood.name for hood in answer.hoods if any(need.untold for need in hood.needs)] == []


@pytest.mark.parametrize(
    ("table", "column"), [("hood_forms", "form"), ("face_velocity", "form"), ("transport_velocity", "kind")]
)
def test_every_row_that_the_file_may_name_is_on_the_page(table, column):
    told = FILE_PAGE.read_text(encoding="utf-8")
    assert [row for row in load_table(table).columns[column] if f"`{row}`" not in told] == []


@pytest.mark.parametrize("package", ["air", "hoods", "ducts", "network", "particles"])
def test_every_argument_of_a_public_function_is_a_symbol(package):
    told = set(re.findall(r"`([a-z_]+)`", (ROOT / "docs" / "symbols.md").read_text(encoding="utf-8")))
    module = importlib.import_module(f"hoodwright.{package}")
    functions = (getattr(module, name) for name in module.__all__)
    arguments = [
        (f.__name__, name) for f in functions if inspect.isfunction(f) for name in inspect.signature(f).parameters
    ]
    assert [f"{function}({name})" for function, name in arguments if name not in told] == []
