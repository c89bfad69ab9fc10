"""A real Chromium against a server of its own, on a copy of the demo file."""

import time
from collections.abc import Iterator
from dataclasses import dataclass
from importlib.resources import files
from pathlib import Path

import pytest
from tools.shop_window import CHROMIUM, SOFTWARE_DRAWING, served

PATIENCE_MS = 15_000


@dataclass(frozen=True)
class Shop:
    """A running server and the folder that it shows."""

    url: str
    folder: Path
    answered_after_s: float

    @property
    def file(self) -> Path:
        """The workplace file."""
        return self.folder / "demo.yaml"


@pytest.fixture(scope="session")
def browser_type_launch_args(browser_type_launch_args: dict) -> dict:
    """The machine's own Chromium where there is one, drawing in software."""
    own = {"executable_path": CHROMIUM} if CHROMIUM else {}
    return {**browser_type_launch_args, **own, "args": SOFTWARE_DRAWING}


@pytest.fixture
def shop(tmp_path: Path) -> Iterator[Shop]:
    """A server on a copy of the demo file."""
    demo = files("hoodwright") / "workplace" / "starters" / "demo.yaml"
    (tmp_path / "demo.yaml").write_text(demo.read_text(encoding="utf-8"), encoding="utf-8")
    begin = time.monotonic()
    with served(tmp_path) as url:
        yield Shop(url, tmp_path, time.monotonic() - begin)


@pytest.fixture
def page(page, shop: Shop):
    """A page that refuses to speak to anyone but the shop, and reports faults of its scripts."""
    strangers, faults = [], []

    def watch(request) -> None:
        if not request.url.startswith((shop.url, "data:", "blob:")):
            strangers.append(request.url)

    page.on("request", watch)
    page.on("websocket", lambda ws: strangers.append(ws.url) if shop.url[5:] not in ws.url else None)
    page.on("pageerror", lambda error: faults.append(str(error)))
    page.set_default_timeout(PATIENCE_MS)
    page.set_viewport_size({"width": 1024, "height": 768})
    yield page
    assert not strangers, f"requests left the machine: {strangers}"
    assert not faults, f"scripts failed: {faults}"
