"""A real Chromium against a server of its own, on a copy of the demo file."""

import os
import shutil
import socket
import subprocess
import sys
import time
import urllib.request
from collections.abc import Iterator
from dataclasses import dataclass
from importlib.resources import files
from pathlib import Path

import pytest

CHROMIUM = next(filter(None, map(shutil.which, ("chromium", "chromium-browser", "google-chrome"))), None)
SOFTWARE_DRAWING = [
    "--no-sandbox",
    "--disable-dev-shm-usage",
    "--use-gl=angle",
    "--use-angle=swiftshader",
    "--enable-unsafe-swiftshader",
]
LONGEST_START_S = 30
SERVER = "import sys, pathlib, hoodwright.web as w; w.run(pathlib.Path(sys.argv[1]), port=int(sys.argv[2]))"
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
    """A server on a free port, without the variables that would make it think it is under test."""
    demo = files("hoodwright") / "workplace" / "starters" / "demo.yaml"
    (tmp_path / "demo.yaml").write_text(demo.read_text(encoding="utf-8"), encoding="utf-8")
    port = _free_port()
    plain = {k: v for k, v in os.environ.items() if not k.startswith(("NICEGUI", "PYTEST"))}
    begin = time.monotonic()
    server = subprocess.Popen([sys.executable, "-c", SERVER, str(tmp_path), str(port)], env=plain, cwd=tmp_path)
    try:
        url = f"http://127.0.0.1:{port}"
        _wait_for(f"{url}/", server)
        yield Shop(url, tmp_path, time.monotonic() - begin)
    finally:
        server.terminate()
        server.wait(10)


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


def _free_port() -> int:
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        return probe.getsockname()[1]


def _wait_for(url: str, server: subprocess.Popen) -> None:
    last = time.monotonic() + LONGEST_START_S
    while time.monotonic() < last:
        assert server.poll() is None, "the server stopped by itself"
        try:
            with urllib.request.urlopen(url, timeout=5):
                return
        except OSError:
            time.sleep(0.05)
    raise AssertionError(f"no answer from {url} within {LONGEST_START_S} s")
