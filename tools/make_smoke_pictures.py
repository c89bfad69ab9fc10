"""Draw the smoke of three arrangements for the README, in a real browser: python -m tools.make_smoke_pictures.

The server shows a file; the browser, told to keep still, draws smoke that has developed for a fixed time.
"""

import base64
import io
import os
import shutil
import socket
import subprocess
import sys
import tempfile
import time
import urllib.request
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from urllib.parse import urlencode

from PIL import Image
from playwright.sync_api import Page, sync_playwright

from hoodwright.workplace import Document
from hoodwright.workplace.starters import starter_text

ROOT = Path(__file__).parents[1]
PICTURES = ROOT / "docs" / "pictures"
ASKED = {"file": "demo.yaml", "hood": "bench nozzle", "source": "solder joint", "distance": "0.25"}
# The demo with a thin stream of fog at the joint, and a flow so small that the place of the hood tells.
STREAM = {"opening": {"round": "10 mm"}, "towards": [0, 0, 1], "speed": "2 m/s", "temperature": "21 degC"}
FLOW = "150 m3/h"
KEYS = ("beside", "above", "enclosed")
SIZE = (640, 480)
COLOURS, MOST_BYTES = 256, 200_000
PATIENCE_MS = 600_000  # drawing in software, and the first run compiles
SERVER = "import sys, pathlib, hoodwright.web as w; w.run(pathlib.Path(sys.argv[1]), port=int(sys.argv[2]))"
SOFTWARE_DRAWING = [
    "--no-sandbox",
    "--disable-dev-shm-usage",
    "--use-gl=angle",
    "--use-angle=swiftshader",
    "--enable-unsafe-swiftshader",
]
# Only pictures are wanted: each scene as large as its picture, one below the other.
LOOK = f"""
.three {{ display: block; }} .three .scene {{ width: {SIZE[0]}px; height: {SIZE[1]}px; }} .head {{ display: none; }}
"""


READY = f"""() => {{
  const scenes = [...document.querySelectorAll(".scene")], sized = (c) => c.width == {SIZE[0]} && c.height == {SIZE[1]};
  const told = (one) => one.querySelector(".scene-answer:not(.old)") && !one.querySelector(".scene-doing");
  return scenes.length == 3 && scenes.every((one) => told(one) && sized(one.querySelector("canvas")));
}}"""


def main() -> None:
    """Write one PNG an arrangement into docs/pictures."""
    with tempfile.TemporaryDirectory() as folder, _server(Path(folder)) as url, sync_playwright() as playwright:
        own = next(filter(None, map(shutil.which, ("chromium", "chromium-browser", "google-chrome"))), None)
        browser = playwright.chromium.launch(executable_path=own, args=SOFTWARE_DRAWING)
        page = browser.new_page(viewport={"width": 800, "height": 600}, reduced_motion="reduce")
        page.set_default_timeout(PATIENCE_MS)
        for key, picture in zip(KEYS, _drawn(page, url), strict=True):
            size = _write(picture, PICTURES / f"smoke-{key}.png")
            print(f"smoke-{key}.png: {size / 1000:.0f} kB")
        browser.close()


def _drawn(page: Page, url: str) -> list[bytes]:
    """The three scenes with their smoke, as PNG."""
    page.goto(f"{url}/three?{urlencode(ASKED)}")
    page.add_style_tag(content=LOOK)
    page.wait_for_function(READY)
    ids = page.eval_on_selector_all(".scene", "all => all.map(one => Number(one.id.slice(1)))")
    urls = [page.evaluate("id => getElement(id).still()", one) for one in ids]
    return [base64.b64decode(one.partition(",")[2]) for one in urls]


def _write(picture: bytes, path: Path) -> int:
    """A PNG of few colours; gives its size in bytes."""
    drawn = Image.open(io.BytesIO(picture)).convert("RGB").resize(SIZE, Image.Resampling.LANCZOS)
    drawn.quantize(COLOURS, dither=Image.Dither.FLOYDSTEINBERG).save(path, optimize=True)
    size = path.stat().st_size
    if size > MOST_BYTES:
        raise SystemExit(f"{path.name} has {size} bytes, more than {MOST_BYTES}")
    return size


@contextmanager
def _server(folder: Path) -> Iterator[str]:
    """A server of its own on the changed demo."""
    document = Document(starter_text("demo")).set(("sources", 0, "release"), STREAM)
    (folder / "demo.yaml").write_text(document.set(("hoods", 0, "intended_flow"), FLOW).text, encoding="utf-8")
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        port = probe.getsockname()[1]
    plain = {k: v for k, v in os.environ.items() if not k.startswith(("NICEGUI", "PYTEST"))}
    server = subprocess.Popen([sys.executable, "-c", SERVER, str(folder), str(port)], env=plain, cwd=folder)
    try:
        url = f"http://127.0.0.1:{port}"
        _wait_for(f"{url}/health", server)
        yield url
    finally:
        server.terminate()
        server.wait(10)


def _wait_for(url: str, server: subprocess.Popen) -> None:
    for _ in range(600):
        if server.poll() is not None:
            raise SystemExit("the server stopped by itself")
        try:
            with urllib.request.urlopen(url, timeout=5):
                return
        except OSError:
            time.sleep(0.1)
    raise SystemExit(f"no answer from {url}")


if __name__ == "__main__":
    main()
