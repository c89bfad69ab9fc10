"""Every package lists its public names, and every public physics function says unit, range and source."""

import importlib
import inspect
import pkgutil
import re

import pytest

import hoodwright
from hoodwright.sources import all_sources

PHYSICS = ("air", "particles", "network", "hoods", "ducts", "flow")
LISTED = (*PHYSICS, "workplace", "tables", "reports")


def public_functions():
    for package in PHYSICS:
        module = importlib.import_module(f"hoodwright.{package}")
        for name in module.__all__:
            found = getattr(module, name)
            if inspect.isfunction(found):
                yield pytest.param(found, id=f"{package}.{name}")


FUNCTIONS = list(public_functions())


@pytest.mark.parametrize("package", LISTED)
def test_listed_names_exist_once(package):
    module = importlib.import_module(f"hoodwright.{package}")
    assert len(module.__all__) == len(set(module.__all__))
    assert [name for name in module.__all__ if not hasattr(module, name)] == []


@pytest.mark.parametrize("package", PHYSICS)
def test_every_public_function_of_a_physics_module_is_listed(package):
    module = importlib.import_module(f"hoodwright.{package}")
    for info in pkgutil.iter_modules(module.__path__):
        part = importlib.import_module(f"hoodwright.{package}.{info.name}")
        own = [n for n, f in vars(part).items() if inspect.isfunction(f) and f.__module__ == part.__name__]
        missing = [name for name in own if not name.startswith("_") and name not in module.__all__]
        assert missing == [], f"{part.__name__}: list these in {package}/__init__.py or begin them with _"


@pytest.mark.parametrize("function", FUNCTIONS)
def test_docstring_tells_parameters_units_range_and_source(function):
    text = inspect.getdoc(function) or ""
    for heading in ("Returns", "Valid:", "Source:"):
        assert heading in text, f"{function.__name__}: no {heading!r} in its docstring"
    for name in inspect.signature(function).parameters:
        assert re.search(rf"^(.*, )?{name}(, .*)? :", text, re.MULTILINE), f"{function.__name__}: {name} is not told"
    units = re.findall(r"\[[^\]]+\]", text.split("Valid:")[0])
    has_words_only = "str" in text or "BalanceAdvice" in text
    assert units or has_words_only, f"{function.__name__}: no unit in square brackets"


@pytest.mark.parametrize("function", FUNCTIONS)
def test_source_is_in_the_list(function):
    line = re.search(r"^Source: \[(.+)\]", inspect.getdoc(function), re.MULTILINE)
    assert line, f"{function.__name__}: write 'Source: [key, place]'"
    keys = re.findall(r"(?:^|\[|; )([a-z0-9-]+)", line.group(1))
    assert keys and keys[0] in all_sources(), f"{function.__name__}: {keys} not in sources.toml"


def test_every_source_says_how_it_was_read():
    for key, source in all_sources().items():
        assert source.trust in ("read", "derived", "memory"), key
        assert all((source.title, source.edition, source.how)), key


def test_every_citation_of_an_answer_is_a_source_or_stated():
    from hoodwright.sources import find_source
    from hoodwright.tasks.assess import assess
    from hoodwright.workplace import parse_workplace
    from hoodwright.workplace.starters import starter_text

    for name in ("demo", "starter"):
        answer = assess(parse_workplace(starter_text(name)))
        lines = [line for part in (*answer.ducts, *answer.fans) for line in part.lines]
        lines += [law.line for hood in answer.hoods for need in hood.needs for law in need.laws]
        for citation in {line.source for line in lines} | {caution.source for caution in answer.cautions}:
            for piece in citation.split(";"):
                if piece.strip() not in ("definition", "continuity", "stated by the user"):
                    find_source(piece)


def test_version_is_told_once():
    assert re.fullmatch(r"\d+\.\d+\.\d+", hoodwright.__version__)
