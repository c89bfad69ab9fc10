"""A short animation for a toolbox talk: pictures that the browser drew, made into one GIF that runs in a loop."""

import base64
import binascii
import io
import json
import re

from fastapi import Request
from fastapi.responses import JSONResponse, Response
from nicegui import app, run, ui
from PIL import Image, UnidentifiedImageError

from hoodwright.errors import InputError
from hoodwright.web.desk import Desk

MOST_FRAMES = 240
WIDEST = 640  # pixels
FASTEST, SLOWEST = 0.02, 5.0  # s between two frames
MOST_BYTES = 8_000_000  # of one frame
MOST_PIXELS = 4096 * 4096
MOST_BODY = 64_000_000  # bytes of all frames together
COLOURS = 128
FORMS = ("PNG", "JPEG", "WEBP")
HUNDREDTH = 0.01  # s, the unit of time in a GIF
PATIENCE = 60.0  # s: drawing in software is slow
SAVE = """
try {
  const frames = await getElement(%(id)d).frames(%(count)d, %(every)r);
  const body = JSON.stringify({ frames, every_s: %(every)r });
  const answer = await fetch("/animation", { method: "POST", headers: { "Content-Type": "application/json" }, body });
  if (!answer.ok) return (await answer.json()).error;
  const link = document.createElement("a");
  link.href = URL.createObjectURL(await answer.blob());
  link.download = %(name)s;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 10000);
  return "";
} catch (fault) {
  return `the animation could not be saved: ${fault}`;
}
"""
DATA_URL = re.compile(r"data:image/(?:png|jpeg|webp);base64,")


def gif_of(frames: list[str], every_s: float) -> bytes:
    """A GIF of frames given as data URLs of PNG, JPEG or WebP, each shown for `every_s` seconds, at most 640 px wide.

    All frames share the colours of the whole series, so that nothing flickers.
    """
    _check(len(frames), every_s)
    pictures = [_small(_picture(frame, number)) for number, frame in enumerate(frames, 1)]
    size = pictures[0].size
    pictures = [one if one.size == size else one.resize(size, Image.Resampling.LANCZOS) for one in pictures]
    colours = _common_colours(pictures)
    drawn = [one.quantize(palette=colours, dither=Image.Dither.NONE) for one in pictures]
    written = io.BytesIO()
    # Equal frames stay apart: the time of the animation is the time of the air.
    drawn[0].save(
        written,
        "GIF",
        save_all=True,
        append_images=drawn[1:],
        duration=round(every_s / HUNDREDTH) * 10,
        loop=0,
        disposal=1,
        optimize=False,
    )
    return written.getvalue()


def _check(count: int, every_s: float) -> None:
    if not count:
        raise InputError("got no frame; an animation needs 1 or more: let the smoke run, then save again")
    if count > MOST_FRAMES:
        raise InputError(f"got {count} frames; at most {MOST_FRAMES} make one animation: save a shorter time")
    if not FASTEST <= every_s <= SLOWEST:
        raise InputError(f"got {every_s:g} s between two frames; allowed: {FASTEST:g} to {SLOWEST:g} s")


def _picture(frame: str, number: int) -> Image.Image:
    """One frame as a picture without transparency."""
    head = DATA_URL.match(frame) if isinstance(frame, str) else None
    if head is None:
        raise InputError(f"frame {number} is not a picture; a data URL of PNG, JPEG or WebP is needed")
    try:
        raw = base64.b64decode(frame[head.end() :], validate=True)
        if len(raw) > MOST_BYTES:
            raise InputError(
                f"frame {number} has {len(raw) / 1e6:.1f} MB; at most {MOST_BYTES / 1e6:g} MB: draw smaller"
            )
        picture = Image.open(io.BytesIO(raw), formats=FORMS)
        if picture.width * picture.height > MOST_PIXELS:
            raise InputError(f"frame {number} is {picture.width} x {picture.height} pixels, too large: draw it smaller")
        return picture.convert("RGB")
    except (binascii.Error, ValueError, OSError, UnidentifiedImageError, Image.DecompressionBombError):
        raise InputError(f"frame {number} cannot be read as a picture; take it again") from None


def _small(picture: Image.Image) -> Image.Image:
    if picture.width <= WIDEST:
        return picture
    return picture.resize((WIDEST, max(1, round(picture.height * WIDEST / picture.width))), Image.Resampling.LANCZOS)


def _common_colours(pictures: list[Image.Image]) -> Image.Image:
    """One palette for the whole series, from a few of its frames side by side."""
    step = max(1, len(pictures) // 4)
    chosen = [*pictures[::step][:4], pictures[-1]]
    width, height = pictures[0].size
    sheet = Image.new("RGB", (width, height * len(chosen)))
    for row, one in enumerate(chosen):
        sheet.paste(one, (0, row * height))
    return sheet.quantize(COLOURS, method=Image.Quantize.MEDIANCUT)


def register(desk: Desk) -> None:
    """POST /animation: frames of the browser in, a GIF out. They are too large for the page's own messages."""

    @app.post("/animation")
    async def animation(request: Request) -> Response:
        try:
            frames, every_s = await _asked(request)
            gif = await run.io_bound(gif_of, frames, every_s)
        except InputError as error:
            return JSONResponse({"error": str(error)}, 422)
        return Response(gif, media_type="image/gif")


async def save_animation(scene: ui.element, name: str, count: int, every_s: float) -> str:
    """Have the browser draw frames of a scene and save them as one GIF; gives words of what went wrong, or none."""
    script = SAVE % {"id": scene.id, "count": count, "every": every_s, "name": json.dumps(name)}
    return str(await ui.run_javascript(script, timeout=PATIENCE + count) or "")


async def _asked(request: Request) -> tuple[list[str], float]:
    """Frames and time of a request, no more than can be wanted."""
    raw = bytearray()
    async for part in request.stream():
        raw += part
        if len(raw) > MOST_BODY:
            raise InputError(f"the frames have more than {MOST_BODY / 1e6:g} MB together: save a shorter time")
    try:
        asked = json.loads(bytes(raw))
        frames, every_s = asked["frames"], float(asked["every_s"])
    except (ValueError, KeyError, TypeError):
        raise InputError('an object with "frames" (data URLs) and "every_s" (seconds) is needed') from None
    if not isinstance(frames, list):
        raise InputError('"frames" is a list of data URLs; send one')
    return frames, every_s
