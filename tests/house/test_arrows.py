"""Imports go one way through the house (DESIGN: physics knows no units, the web computes nothing)."""

import ast
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2] / "src" / "hoodwright"
FOUNDATION = {"errors", "results", "ranges", "sources", "tables", "kernels"}
PHYSICS = FOUNDATION | {"air", "particles", "network"}
TASKS = PHYSICS | {"hoods", "ducts", "flow", "units", "workplace", "jobs", "tasks"}

ALLOWED = {
    "errors": set(),
    "results": set(),
    "jobs": {"errors"},
    "sources": {"errors"},
    "ranges": {"errors"},
    "units": {"errors"},
    "tables": {"errors", "sources"},
    "kernels": {"errors", "jobs"},
    "air": PHYSICS,
    "particles": {"errors", "ranges", "tables", "kernels"},
    "network": {"errors", "ranges", "kernels"},
    "hoods": PHYSICS,
    "ducts": PHYSICS,
    "flow": FOUNDATION - {"sources"} | {"air", "particles"},
    "workplace": {"errors", "units", "air", "tables"},
    "tasks": TASKS,
    "reports": TASKS - {"hoods", "ducts", "flow", "air", "particles", "kernels", "tables"},
    "web": {"errors", "results", "sources", "units", "jobs", "workplace", "tasks", "reports"},
    "console": {"errors", "results", "units", "workplace", "tasks", "reports"},
    "console_guide": {"console", "tasks"},
    "console_capture": {"console", "errors", "jobs", "tasks", "units", "workplace"},
    "console_capture_pdf": {"console", "console_capture", "errors", "reports", "tasks", "workplace"},
    "console_warm": {"console", "jobs", "tasks"},
    "console_files": {"errors"},
    "console_capture_files": {"console", "console_files", "errors", "reports", "tasks"},
    "console_capture_map": {"console", "console_capture", "errors", "tasks", "reports", "workplace"},
    "console_ducts": {"console", "results", "tasks", "units"},
    "console_sizing": {"console", "tasks", "workplace"},
    "console_ducts_command": {
        "console",
        "console_ducts",
        "console_files",
        "console_sizing",
        "errors",
        "reports",
        "tasks",
        "workplace",
    },
    "cli": {
        "errors",
        "units",
        "console",
        "console_capture",
        "console_capture_files",
        "console_capture_map",
        "console_capture_pdf",
        "console_ducts_command",
        "console_guide",
        "console_warm",
        "workplace",
        "tasks",
        "reports",
        "web",
        "jobs",
    },
}


def modules():
    return sorted(ROOT.rglob("*.py"))


def imported(path: Path) -> set[str]:
    """First words below `hoodwright` that a file imports, at any depth of the file."""
    found = set()
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        names = []
        if isinstance(node, ast.Import):
            names = [alias.name for alias in node.names]
        elif isinstance(node, ast.ImportFrom) and node.module:
            package = node.module == "hoodwright"
            names = [f"hoodwright.{alias.name}" for alias in node.names] if package else [node.module]
        found |= {name.split(".")[1] for name in names if name.startswith("hoodwright.")}
    return found - {"__version__"}


def package_of(path: Path) -> str:
    return path.relative_to(ROOT).parts[0].removesuffix(".py")


@pytest.mark.parametrize("path", modules(), ids=lambda path: str(path.relative_to(ROOT)))
def test_arrows_go_one_way(path):
    package = package_of(path)
    if package == "__init__":
        assert imported(path) == set()
        return
    assert package in ALLOWED, f"{package} has no place in the house yet: add it to ALLOWED and DESIGN"
    wrong = imported(path) - ALLOWED[package] - {package}
    assert not wrong, f"{path.name} imports {sorted(wrong)}; {package} may import {sorted(ALLOWED[package])}"


def test_a_wrong_arrow_would_be_seen(tmp_path):
    path = tmp_path / "wrong.py"
    path.write_text("def f():\n    from hoodwright.units import show\n    from hoodwright import web\n")
    assert imported(path) == {"units", "web"}


@pytest.mark.parametrize("package", ["air", "particles", "hoods", "ducts", "flow"])
def test_physics_opens_no_file_and_prints_nothing(package):
    for path in (ROOT / package).rglob("*.py"):
        called = {n.func.id for n in ast.walk(ast.parse(path.read_text())) if is_plain_call(n)}
        assert not called & {"open", "print", "input"}, path


def is_plain_call(node) -> bool:
    return isinstance(node, ast.Call) and isinstance(node.func, ast.Name)


def test_only_kernels_import_numba():
    for path in modules():
        if package_of(path) != "kernels":
            assert "numba" not in path.read_text(encoding="utf-8"), path
