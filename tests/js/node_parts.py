"""Node, and the page's modules where it takes them as modules."""

import shutil
import subprocess
from pathlib import Path

import pytest

HERE = Path(__file__).parent
PARTS = HERE.parents[1] / "src" / "hoodwright" / "web" / "components" / "scene_parts"
NODE = shutil.which("node")
PATIENCE_S = 300


def modules_in(folder: Path, pattern: str) -> Path:
    """Copy modules of the scene to a folder that says that they are modules."""
    (folder / "package.json").write_text('{"type": "module"}')
    for part in PARTS.glob(pattern):
        shutil.copy(part, folder)
    return folder


def run_node(script: str, *words: object) -> str:
    """What a script beside this file prints; the test is skipped where there is no node."""
    if NODE is None:
        pytest.skip("node is not installed here: the page's JavaScript cannot be run outside a browser")
    command = [NODE, str(HERE / script), *map(str, words)]
    done = subprocess.run(command, capture_output=True, text=True, timeout=PATIENCE_S, check=False)
    assert done.returncode == 0, done.stderr
    return done.stdout
