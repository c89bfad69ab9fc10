"""Words that must not stand in what users read, and things no commit may hold."""

import re
import subprocess
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
TEXTS = (".py", ".toml", ".yaml", ".md", ".csv", ".typ", ".js", ".css", ".txt", ".cfg")


def tracked() -> list[Path]:
    """Files of the project: what git knows or would add; without git, what lies there."""
    try:
        command = ["git", "ls-files", "--cached", "--others", "--exclude-standard"]
        listed = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, check=True).stdout.split("\n")
    except (OSError, subprocess.CalledProcessError):
        pytest.skip("no git here")
    return [ROOT / name for name in listed if name and (ROOT / name).is_file()]


def texts():
    return [path for path in tracked() if path.suffix in TEXTS]


def test_no_host_of_a_package_registry_and_no_lock_file():
    hosts = re.compile("|".join(("files.python" + "hosted", "pypi" + r"\.org", "registry" + r"\.npmjs")))
    assert [p for p in texts() if hosts.search(p.read_text(encoding="utf-8"))] == []
    assert [p for p in tracked() if p.name in ("uv.lock", "poetry.lock", "pdm.lock", "pylock.toml")] == []


def test_no_path_of_a_machine():
    places = re.compile(r"(?<![\w.])/(?:work|home|Users)/[a-z]")
    assert [p for p in texts() if places.search(p.read_text(encoding="utf-8"))] == []


def test_sources_are_small_files():
    long = [p for p in tracked() if "src" in p.parts and p.suffix in (".py", ".js")]
    assert [p.name for p in long if len(p.read_text(encoding="utf-8").splitlines()) > 400] == []
