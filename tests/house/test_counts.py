"""The README tells how many checks were read in a source, derived, or are from memory: counted here."""

import re
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
LEAST_READ = 60


def collected(mark: str) -> int:
    words = [sys.executable, "-m", "pytest", "tests/published", "-m", mark, "--collect-only"]
    told = subprocess.run(words, cwd=ROOT, capture_output=True, text=True).stdout
    return len(re.findall(r"^tests/published/\S+::", told, re.MULTILINE))


def test_readme_tells_what_is_reproduced_and_what_is_not():
    words = [sys.executable, "-m", "pytest", "tests/published", "-m", "read"]
    told = subprocess.run(words, cwd=ROOT, capture_output=True, text=True).stdout
    met, missed = re.search(r"(\d+) passed.* (\d+) xfailed", told).groups()
    readme = " ".join((ROOT / "README.md").read_text(encoding="utf-8").split())
    assert f"{met} are reproduced" in readme
    assert f"{missed} are not reproduced" in readme


@pytest.mark.parametrize(
    ("mark", "words"),
    [("read", "Of {} values read"), ("derived", "{} checks are exact"), ("memory", "{} are from memory")],
)
def test_readme_counts_the_checks(mark, words):
    told = " ".join((ROOT / "README.md").read_text(encoding="utf-8").split())
    assert words.format(collected(mark)) in told


def test_enough_values_were_read():
    assert collected("read") >= LEAST_READ


def test_every_file_marks_its_checks():
    files = (ROOT / "tests" / "published").glob("test_*.py")
    unmarked = [path.name for path in files if not re.search(r"mark\.(read|derived|memory)", path.read_text("utf-8"))]
    assert unmarked == []
