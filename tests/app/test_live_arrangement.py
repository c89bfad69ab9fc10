"""The live air of an arrangement, which lies in no file; and the GIF that the browser's frames become."""

import base64
import io

import pytest
from nicegui import app
from nicegui.testing import User
from PIL import Image
from starlette.testclient import TestClient

from hoodwright.jobs import Progress
from hoodwright.tasks.arrangements.air import told_of
from hoodwright.tasks.arrangements.arrange import arrangements_of
from hoodwright.workplace import parse_workplace
from live_wire import kinds, line

pytestmark = pytest.mark.usefixtures("visitor")
PAIR = {"hood": "bench nozzle", "source": "solder joint"}


async def test_each_arrangement_has_its_own_air_and_the_words_of_the_page(visitor: User, folder):
    workplace = parse_workplace((folder / "demo.yaml").read_text(encoding="utf-8"))
    three = arrangements_of(workplace, "bench nozzle", "solder joint", 0.2)
    told = told_of(Progress(), three)
    for one in three:
        with line(arrangement=one.key, distance="0.2", **PAIR) as socket:
            found = socket.ask(n=1, field=True, hood=one.hood, source=one.source)
        assert kinds(found) == ["air", "stream", "share"]
        assert [mouth["name"] for mouth in found[-3].header["mouths"]] == [one.hood]
        assert found[-2].points == [[2.0, 1.8, 1.06]]
        assert (found[-1].told, found[-1].shown) == (told[one.key].told, told[one.key].shown)


@pytest.mark.parametrize(
    ("asked", "told"),
    [
        ({**PAIR, "arrangement": "under"}, "no arrangement is named 'under'"),
        ({**PAIR, "arrangement": "above", "hood": "nobody"}, "no hood is named 'nobody'"),
        ({**PAIR, "arrangement": "above", "distance": "far"}, "metres are needed"),
        ({**PAIR, "arrangement": "above", "distance": "inf"}, "got a distance of inf m"),
    ],
)
async def test_what_cannot_be_made_is_one_clear_fault(visitor: User, asked: dict, told: str):
    with line(**asked) as socket:
        found = socket.ask(n=7, hood="hood above")[-1]
    assert (found.kind, found.n) == ("fault", 7) and told in found.words


def frames(count: int) -> list[str]:
    made = []
    for number in range(count):
        written = io.BytesIO()
        Image.new("RGB", (64, 48), (4 * number, 80, 120)).save(written, "PNG")
        made.append("data:image/png;base64," + base64.b64encode(written.getvalue()).decode())
    return made


async def test_frames_of_the_browser_become_a_gif(visitor: User):
    answer = TestClient(app).post("/animation", json={"frames": frames(5), "every_s": 0.1})
    assert (answer.status_code, answer.headers["content-type"]) == (200, "image/gif")
    found = Image.open(io.BytesIO(answer.content))
    assert (found.n_frames, found.info["duration"]) == (5, 100)


@pytest.mark.parametrize(
    ("sent", "told"),
    [
        (b'{"frames": [], "every_s": 0.1}', "got no frame"),
        (b'{"frames": "x", "every_s": 0.1}', '"frames" is a list of data URLs'),
        (b'{"every_s": 0.1}', 'an object with "frames"'),
        (b"[1]", 'an object with "frames"'),
        (b"not json", 'an object with "frames"'),
        (b'{"frames": ["data:image/png;base64,AAAA"], "every_s": 0.1}', "frame 1 cannot be read as a picture"),
    ],
)
async def test_what_is_no_series_of_frames_is_refused(visitor: User, sent: bytes, told: str):
    answer = TestClient(app).post("/animation", content=sent)
    assert answer.status_code == 422 and told in answer.json()["error"]
