"""A Chromium that draws in software, and a server for it to look at: for the browser tests and the pictures."""

import os
import shutil
import socket
import subprocess
import sys
import time
import urllib.request
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

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


@contextmanager
def served(folder: Path) -> Iterator[str]:
    """The address of a server on a free port that shows a folder; it does not know that it is under test."""
    port = _free_port()
    plain = {k: v for k, v in os.environ.items() if not k.startswith(("NICEGUI", "PYTEST"))}
    server = subprocess.Popen([sys.executable, "-c", SERVER, str(folder), str(port)], env=plain, cwd=folder)
    try:
        url = f"http://127.0.0.1:{port}"
        _wait_for(f"{url}/", server)
        yield url
    finally:
        server.terminate()
        server.wait(10)


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
