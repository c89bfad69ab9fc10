"""Frames of the browser as one GIF: read back, it has the frames, the time and the size that were asked for."""

import base64
import io

import pytest
from PIL import Image, ImageDraw

from hoodwright.errors import InputError
from hoodwright.web.animation import MOST_FRAMES, WIDEST, gif_of


def frame(place: int, size: tuple[int, int] = (320, 240), form: str = "png") -> str:
    """A dark picture with one white spot, as a browser hands it over."""
    picture = Image.new("RGB", size, (30, 42, 49))
    ImageDraw.Draw(picture).ellipse((place, 40, place + 30, 70), fill=(250, 250, 250))
    written = io.BytesIO()
    picture.save(written, form)
    return f"data:image/{form};base64,{base64.b64encode(written.getvalue()).decode()}"


def read(gif: bytes) -> tuple[Image.Image, list[Image.Image], list[int]]:
    found = Image.open(io.BytesIO(gif))
    pictures, times = [], []
    for number in range(found.n_frames):
        found.seek(number)
        pictures.append(found.convert("RGB"))
        times.append(found.info["duration"])
    return found, pictures, times


def test_the_gif_has_the_frames_and_the_time_that_were_asked_for():
    found, pictures, times = read(gif_of([frame(20 * n) for n in range(8)], 0.1))
    assert found.format == "GIF"
    assert len(pictures) == 8
    assert times == [100] * 8  # ms
    assert found.size == (320, 240)
    assert found.info["loop"] == 0  # for ever


def test_each_frame_shows_its_own_picture():
    _, pictures, _ = read(gif_of([frame(20 * n) for n in range(8)], 0.1))
    for number, picture in enumerate(pictures):
        x = 20 * number + 15
        assert min(picture.getpixel((x, 55))) > 230
        assert max(picture.getpixel(((x + 120) % 320, 200))) < 80


def test_frames_that_are_alike_keep_their_time():
    _, pictures, times = read(gif_of([frame(0), frame(0), frame(0), frame(40)], 0.2))
    assert sum(times) == 4 * 200
    assert len(pictures) >= 2


def test_wide_frames_are_made_smaller_in_proportion():
    found, _, _ = read(gif_of([frame(0, (1600, 900)), frame(40, (1600, 900))], 0.05))
    assert found.size == (WIDEST, 360)


def test_a_frame_of_another_size_is_fitted_to_the_first():
    found, pictures, _ = read(gif_of([frame(0), frame(40, (160, 120))], 0.1))
    assert {picture.size for picture in pictures} == {(320, 240)} == {found.size}


def test_other_forms_of_pictures_are_read():
    _, pictures, _ = read(gif_of([frame(0, form="jpeg"), frame(40, form="webp")], 0.1))
    assert len(pictures) == 2


def test_no_frame_is_refused():
    with pytest.raises(InputError, match="got no frame; an animation needs 1 or more"):
        gif_of([], 0.1)


def test_too_many_frames_are_refused():
    with pytest.raises(InputError, match=f"got {MOST_FRAMES + 1} frames; at most {MOST_FRAMES} make one animation"):
        gif_of(["data:image/png;base64,"] * (MOST_FRAMES + 1), 0.1)


@pytest.mark.parametrize("every_s", [0.0, -1.0, 60.0, float("nan")])
def test_a_time_that_no_eye_can_follow_is_refused(every_s):
    with pytest.raises(InputError, match=r"s between two frames; allowed: 0.02 to 5 s"):
        gif_of([frame(0)], every_s)


@pytest.mark.parametrize("text", ["", "hello", "data:text/html;base64,PGI+", "data:image/svg+xml;base64,PHN2Zz4="])
def test_what_is_no_picture_is_refused(text):
    with pytest.raises(InputError, match="frame 2 is not a picture; a data URL of PNG, JPEG or WebP is needed"):
        gif_of([frame(0), text], 0.1)


@pytest.mark.parametrize("inside", ["%%%", "aGVsbG8=", ""])
def test_a_broken_picture_is_refused(inside):
    with pytest.raises(InputError, match="frame 1 cannot be read as a picture"):
        gif_of([f"data:image/png;base64,{inside}"], 0.1)


def test_a_huge_frame_is_refused():
    with pytest.raises(InputError, match="frame 1 is 5000 x 4000 pixels, too large"):
        gif_of([frame(0, (5000, 4000))], 0.1)
