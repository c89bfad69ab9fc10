"""Draw the smoke of three arrangements for the README, in a real browser: python -m tools.make_smoke_pictures.

The server shows a file; the browser, told to keep still, draws smoke that has developed for a fixed time.
"""

import base64
import io
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from urllib.parse import urlencode

from PIL import Image
from playwright.sync_api import Page, sync_playwright

from hoodwright.workplace import Document
from hoodwright.workplace.starters import starter_text
from tools.shop_window import CHROMIUM, SOFTWARE_DRAWING, served

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
    with tempfile.TemporaryDirectory() as folder, _shown(Path(folder)) as url, sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=CHROMIUM, args=SOFTWARE_DRAWING)
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
def _shown(folder: Path) -> Iterator[str]:
    """A server on the changed demo."""
    document = Document(starter_text("demo")).set(("sources", 0, "release"), STREAM)
    (folder / "demo.yaml").write_text(document.set(("hoods", 0, "intended_flow"), FLOW).text, encoding="utf-8")
    with served(folder) as url:
        yield url


if __name__ == "__main__":
    main()
