"""A visitor without a browser: NiceGUI's simulated user on a copy of the demo file."""

import sys
from collections.abc import AsyncIterator, Iterator
from importlib.resources import files
from pathlib import Path

import pytest
from nicegui.testing import User
from nicegui.testing.user_simulation import user_simulation


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """A folder with the demo file."""
    demo = files("hoodwright") / "workplace" / "starters" / "demo.yaml"
    (tmp_path / "demo.yaml").write_text(demo.read_text(encoding="utf-8"), encoding="utf-8")
    return tmp_path


@pytest.fixture
def kept_modules() -> Iterator[None]:
    """NiceGUI's simulation forgets the modules of pages; other tests must not meet a second copy of them."""
    before = {name: module for name, module in sys.modules.items() if name.split(".")[0] == "hoodwright"}
    yield
    sys.modules.update(before)


@pytest.fixture
async def visitor(folder: Path, kept_modules: None) -> AsyncIterator[User]:
    """A visitor of the folder's pages."""
    from hoodwright.web import Desk, build

    async with user_simulation() as user:
        build(Desk(folder))
        yield user
