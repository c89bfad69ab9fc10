"""The live air over its websocket: what comes and in which order, the latest request wins, and one clear fault each."""

import numpy as np
import pytest
from nicegui.testing import User
from starlette.websockets import WebSocketDisconnect

from hoodwright.tasks import warm_up
from hoodwright.tasks.air import live as live_air
from hoodwright.tasks.arrangements.arrange import arrangements_of
from hoodwright.tasks.capture.job import capture_of
from hoodwright.web.live import is_own_page
from hoodwright.workplace import parse_workplace
from live_wire import Line, kinds, line

pytestmark = pytest.mark.usefixtures("visitor")


async def test_air_then_stream_then_share(visitor: User):
    with line() as one:
        found = one.ask(n=1, field=True)
        assert kinds(found) == ["air", "stream", "share"]
        assert {message.n for message in found if hasattr(message, "n")} == {1}
        air, stream, share = found[-3:]
    assert air.whole and air.start % 8 == 0 and air.header["n"] == 1
    assert air.header["bases"] == ["bench nozzle", "rest", "draught x", "draught y", "draught z"]
    assert [len(each) for each in air.header["lines"]] == air.header["shape"]
    assert stream.form == "point" and stream.points == [[2.0, 1.8, 1.06]] and stream.path == []
    assert share.told and share.banner == "not validated for capture" and 0 < share.raw["low"] <= share.raw["captured"]


async def test_air_is_the_air_of_the_hood(visitor: User):
    with line() as one:
        air = one.ask(n=1, field=True)[-3]
    q, *rest = air.header["weights"]
    assert q == pytest.approx(320 / 3600, rel=1e-4) and rest == [1, pytest.approx(0.12), 0, 0]
    places = zip(air.header["lines"], (2, 1.8, 1.06), strict=True)
    towards = air.velocity[0][tuple(abs(np.array(lines) - place).argmin() for lines, place in places)] * q
    assert towards[1] > 0.3 and abs(towards[0]) < 0.1 * towards[1]  # the nozzle lies towards +y
    open_air = (air.solid == 0) & (air.calm == 255)
    assert np.mean(air.velocity[2][open_air][:, 0]) == pytest.approx(1.0, abs=0.1)  # a unit draught along x


async def test_what_stands_in_the_air_is_told(visitor: User):
    with line() as one:
        header = one.ask(n=1, field=True)[-3].header
        person = one.ask(n=2, hood="lacquer booth", source="spray gun")[-3].header
    assert [mouth["name"] for mouth in header["mouths"]] == ["bench nozzle"]
    assert header["mouths"][0]["sides"] == [0.1, 0.1] and header["mouths"][0]["facing"] == [0, -1, 0]
    assert header["mouths"][0]["flange"] == 0.1 and header["room"] == [[0, 0, 0], [12, 7, 3.6]]
    assert [plate["name"] for plate in header["plates"]] == ["solder bench"]
    assert {"turbulence", "eddy", "wander", "rising", "sway_time", "escape", "limit", "jet", "settling"} <= set(header)
    assert [hole["sides"] for plate in person["plates"] for hole in plate["holes"]] == [[1.2, 1.0]]
    assert len(person["blocks"]) == 1 and len(person["blocks"][0]["axes"]) == 3


async def test_second_request_needs_no_air_again(visitor: User):
    with line() as one:
        one.ask(n=1, field=True)
        found = one.ask(n=2, flow=0.01, draught=[0.8, 0, 0])
        assert kinds(found) == ["stream", "share"]
        assert found[0].weights == [0.01, 1, 0.8, 0, 0] and found[-1].flow.startswith("36")
        assert found[-1].raw["captured"] < 0.5
        assert kinds(one.ask(n=3, source_at=[2.0, 1.75, 1.06])) == ["stream", "share"]
        assert kinds(one.ask(n=4, hood_at=[2.0, 1.95, 1.06])) == ["air", "stream", "share"]


async def test_words_are_those_of_the_capture_job(visitor: User, folder):
    workplace = parse_workplace((folder / "demo.yaml").read_text(encoding="utf-8"))
    told = capture_of(workplace, "solder joint", "bench nozzle").answers[0]
    with line() as one:
        share = one.ask(n=1)[-1]
    assert (share.shown, share.interval, share.sentence) == (told.shown, told.shown_interval, told.sentence)
    assert share.raw["captured"] == pytest.approx(told.captured, rel=1e-4) and share.handbook == str(told.handbook)


async def test_layers_come_on_the_same_line(visitor: User):
    with line() as one:
        for n, layer in enumerate(("streamlines", "speed", "map")):
            found = one.ask(n=n, ask="layer", layer=layer, plane="upright")[-1]
            assert (found.kind, found.layer, found.n) == ("layer", layer, n) and found.words
        assert len(found.values) == found.shape[0] * found.shape[1]
        assert (
            "there is no capture map"
            in one.ask(n=9, ask="layer", layer="map", hood="glue cabinet", source="glue pot")[-1].words
        )
        assert one.ask(n=10, ask="layer", layer="rainbow")[-1].kind == "fault"


async def test_each_of_three_arrangements_has_its_own_air(visitor: User, folder):
    workplace = parse_workplace((folder / "demo.yaml").read_text(encoding="utf-8"))
    for one in arrangements_of(workplace, "bench nozzle", "solder joint", 0.15):
        query = {"arrangement": one.key, "hood": "bench nozzle", "source": "solder joint", "distance": "0.15"}
        with line(**query) as open_line:
            air, stream, share = open_line.ask(n=1, hood=one.hood, source=one.source, field=True)[-3:]
        assert stream.points == [list(one.workplace.source(one.source).centre)]
        assert air.header["mouths"][0]["name"] == one.hood and share.told == (one.key != "enclosed")
    with line(arrangement="upside down", hood="bench nozzle", source="solder joint") as open_line:
        assert "no arrangement" in open_line.ask(n=1)[-1].words
    with line(arrangement="above", hood="bench nozzle", source="solder joint", distance="nan") as open_line:
        assert open_line.ask(n=1)[-1].kind == "fault"


async def test_first_run_on_a_machine_says_that_it_compiles(visitor: User, monkeypatch):
    states = iter([warm_up.Ready(False, warm_up.PREPARING, 0.4)] * 4)
    monkeypatch.setattr(warm_up, "state", lambda: next(states, warm_up.Ready(True, "ready", 1.0)))
    with line() as one:
        found = one.ask(n=1)
    assert found[0].kind == "doing" and found[0].fraction == 0.4
    assert found[0].words.startswith("preparing") and found[0].words.endswith("the page works meanwhile")
    assert found[-1].kind == "share"


async def test_latest_request_wins(visitor: User):
    with line() as one:
        one.ask(n=1)
        for n in range(2, 12):
            one.send(n=n, ask="air", hood="bench nozzle", source="solder joint", source_at=[2, 1.8 - n / 1000, 1.06])
        answered = []
        while not answered or answered[-1] != 11:
            answered.append(one.answers()[-1].n)
    assert answered == sorted(answered) and len(answered) <= 10


async def test_leaving_in_the_midst_of_an_answer_is_no_fault(visitor: User, caplog):
    with line() as one:
        one.send(n=1, ask="air", hood="bench nozzle", source="solder joint", hood_at=[2.0, 1.97, 1.06], field=True)
    with line() as one:
        assert one.ask(n=1)[-1].kind == "share"
    assert not [record for record in caplog.records if record.levelname in ("ERROR", "CRITICAL")]


BAD = [
    ({"hood": "no hood"}, "no hood 'no hood'"),
    ({"source": "no source"}, "no source 'no source'"),
    ({"hood": None}, "'hood'"),
    ({"flow": 0}, "draws no air"),
    ({"flow": "much"}, "'flow'"),
    ({"draught": [99, 0, 0]}, "draught"),
    ({"draught": [1, 2]}, "three numbers"),
    ({"source_at": [2.0, 1.95, 1.06]}, "body of bench nozzle"),
    ({"source_at": [2.0, 99, 1.06]}, "outside the room"),
    ({"hood_at": [2.0, 1.95, -3]}, "outside the room"),
    ({"source_at": [True, 1, 1]}, "finite number"),
    ({"surprise": 1}, "unknown key"),
    ({"ask": "money"}, "'ask'"),
]


@pytest.mark.parametrize(("request_", "words"), BAD, ids=[next(iter(bad)) + str(n) for n, (bad, _) in enumerate(BAD)])
async def test_one_clear_fault_for_each_bad_request(visitor: User, request_, words):
    with line() as one:
        found = one.ask(n=7, **request_)
        assert kinds(found)[-1] == "fault" and found[-1].n == 7 and words in found[-1].words
        assert "Traceback" not in found[-1].words and "\n" not in found[-1].words
        assert kinds(one.ask(n=8))[-1] == "share"  # and it goes on


@pytest.mark.parametrize(
    ("text", "n", "words"),
    [
        ("{", None, "not JSON"),
        ("[]", None, "no record"),
        ('{"n": 3, "hood": "bench nozzle", "source": "solder joint", "flow": NaN}', 3, "NaN"),
        ('{"n": 3, "hood": "bench nozzle", "source": "solder joint", "flow": 1e999}', 3, "finite"),
        ("[" * 900, None, "no plain record"),
        ('{"n": 1, "hood": "' + "x" * 5000 + '"}', None, "characters"),
    ],
    ids=["broken", "list", "NaN", "endless", "deep", "long"],
)
async def test_broken_text_is_a_fault(visitor: User, text, n, words):
    with line() as one:
        one.socket.send_text(text)
        found = one.answers()[-1]
        assert (found.kind, found.n) == ("fault", n) and words in found.words
        one.socket.send_bytes(b"\0\1")
        assert "binary" in one.answers()[-1].words


async def test_unknown_file_and_file_with_faults(visitor: User, folder):
    (folder / "broken.yaml").write_text("hoodwright: 1\nname: Broken\n", encoding="utf-8")
    for file, words in (("nothing.yaml", "no workplace file"), ("broken.yaml", "fault to mend first")):
        with line(file) as one:
            assert words in one.ask(n=1)[-1].words


async def test_a_fault_of_our_own_is_told_without_a_traceback(visitor: User, monkeypatch):
    monkeypatch.setattr(live_air, "lattice_of", lambda *_: 1 / 0)
    with line() as one:
        found = one.ask(n=1, field=True)[-1]
    assert found.kind == "fault" and "of its own" in found.words and "division" not in found.words


async def test_foreign_page_is_refused(visitor: User):
    for origin in ("http://evil.example", "http://testserver.evil.example", "null"):
        with pytest.raises(WebSocketDisconnect), line(origin=origin):
            pass
    with line(origin="http://testserver") as one:
        assert isinstance(one, Line)


def test_own_page():
    assert is_own_page("http://127.0.0.1:8088", "127.0.0.1:8088") and is_own_page(None, "127.0.0.1:8088")
    assert not is_own_page("http://127.0.0.1:9999", "127.0.0.1:8088") and not is_own_page("", "")
