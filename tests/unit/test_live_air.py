"""The live air: what needs a new solution and what does not, the words of the capture job, one clear error each."""

import math
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import numpy as np
import pytest

from capture_shop import CABINET as STILL_CABINET
from capture_shop import text
from hoodwright.errors import Cancelled, HoodwrightError, InputError, RangeError
from hoodwright.jobs import Progress
from hoodwright.tasks.air.live import COLUMNS, LiveAir, placed
from hoodwright.tasks.air.live_picture import blocks_of, mouths_of, plates_of
from hoodwright.tasks.capture.job import capture_of
from hoodwright.workplace import parse_workplace

SOMEONE = "people: [{name: someone, at: [0.5 m, 0.5 m], facing: [0, 1, 0]}]\n"
UNREST = (("speed: 0.05 m/s}", "speed: 0.05 m/s, wander: 0.03 m/s}"), ("surfaces:", f"{SOMEONE}surfaces:"))
SHOP, CABINET = text(*UNREST), text(*UNREST, of=STILL_CABINET)
HERE = (1.5, 1.3, 1.1)
BESIDE = Path(__file__).parents[1] / "observed" / "beside.yaml"


def shop(*changes: tuple[str, str], of: str = SHOP):
    return parse_workplace(text(*changes, of=of))


@pytest.fixture(scope="module")
def live():
    return LiveAir(shop(), "nozzle", "joint")


@pytest.fixture(scope="module")
def still(live):
    return live.air()


class Solved:
    """A listener that notes whether anything was solved."""

    def __init__(self):
        self.doing: list[str] = []
        self.progress = Progress(lambda now: self.doing.append(now.doing))

    @property
    def solved(self) -> bool:
        return any("solving" in words for words in self.doing)


def test_a_dragged_source_needs_no_new_solution(live, still):
    listener = Solved()
    for step in range(1, 12):
        moved = live.air(source_at=(1.5 - 0.02 * step, 1.3 - 0.01 * step, 1.1), progress=listener.progress)
        assert moved.bases is still.bases
        assert moved.source.at == (1.5 - 0.02 * step, 1.3 - 0.01 * step, 1.1)
    assert not listener.solved
    assert live.air(source_at=(1.45, 1.3, 1.1)).lattice_key == still.lattice_key  # nor another lattice


def test_nor_does_one_in_an_enclosure():
    box = LiveAir(shop(of=CABINET), "box", "joint")
    first = box.air().bases
    assert all(box.air(source_at=(1.5 + x, y, 1.2)).bases is first for x in (-0.38, 0.38) for y in (1.12, 1.55))


def test_flow_and_draught_need_no_new_solution(live, still):
    listener = Solved()
    other = live.air(flow=0.01, draught=(0.0, -0.5, 0.0), progress=listener.progress)
    assert other.bases is still.bases and not listener.solved
    assert other.lattice_key == still.lattice_key
    assert still.weights == pytest.approx((300 / 3600, 1.0, 0.05, 0.0, 0.0))
    assert other.weights == pytest.approx((0.01, 1.0, 0.0, -0.5, 0.0))
    assert (other.draught.wander, other.draught.turbulence) == (still.draught.wander, still.draught.turbulence)
    assert live.share(other).captured < live.share(still).captured


def test_a_moved_hood_is_solved_anew(live, still):
    listener = Solved()
    moved = live.air(hood_at=(1.5, 1.45, 1.1), progress=listener.progress)
    assert listener.solved and moved.bases is not still.bases
    assert moved.near[0].centre == (1.5, 1.45, 1.1) and moved.lattice_key != still.lattice_key
    assert live.share(moved).distance.startswith("150")


def test_words_are_those_of_the_capture_job(live):
    asked = live.air(source_at=(1.5, 1.25, 1.1), flow=0.06, draught=(0.0, -0.2, 0.0))
    share = live.share(asked)
    typed = shop(
        ("at: [1.5 m, 1.3 m, 1.1 m]", "at: [1.5 m, 1.25 m, 1.1 m]"),
        ("300 m3/h", "0.06 m3/s"),
        ("towards: [1, 0, 0], speed: 0.05 m/s", "towards: [0, -1, 0], speed: 0.2 m/s"),
    )
    told = capture_of(typed, "joint", "nozzle").answers[0]
    assert share.sentence == told.sentence and share.claim == told.claim
    assert (share.shown, share.interval) == (told.shown, told.shown_interval)
    assert (share.captured, share.low, share.high) == pytest.approx((told.captured, told.low, told.high), abs=1e-9)
    assert share.by_hood == pytest.approx(told.by_hood) and share.handbook == str(told.handbook)
    assert share.banner == "not validated for capture"


def test_units_are_those_of_the_workplace():
    share = LiveAir(shop().model_copy(update={"units": "US"}), "nozzle", "joint")
    told = share.share(share.air())
    assert told.distance.endswith("in") and told.flow.endswith("cfm")


def test_an_enclosure_gets_no_per_cent():
    box = LiveAir(shop(of=CABINET), "box", "joint")
    scene = box.air()
    share = box.share(scene)
    assert not share.told and share.shown == "cannot tell" and "%" not in share.sentence
    assert "main opening" in share.sentence and "m/s inward against" in share.sentence
    assert any(hole.name == "main opening" for plate in scene.plates() for hole in plate.holes)


def test_lattice_holds_the_escape_sphere_and_all_bases(live, still):
    lattice = live.lattice(still)
    for lines, middle in zip(lattice.lines, still.near[0].centre, strict=True):
        assert lines[0] < middle - still.plan.escape_radius and lines[-1] > middle + still.plan.escape_radius
    assert lattice.names[0] == "nozzle" and len(still.weights) == len(lattice.velocity)


def test_what_stands_nearby_is_told_plainly(still):
    (bench,), (mouth,) = plates_of(still), mouths_of(still)
    assert (bench["name"], bench["corner"], bench["first"], bench["holes"]) == ("bench", [1, 1, 0.9], [1, 0, 0], [])
    assert (mouth["name"], mouth["centre"], mouth["facing"]) == ("nozzle", [1.5, 1.4, 1.1], [0, -1, 0])
    assert (mouth["sides"], mouth["shape"], mouth["flange"]) == ([0.1, 0.1], "round", 0.0)
    assert np.dot(mouth["first"], mouth["second"]) == np.dot(mouth["first"], mouth["facing"]) == 0
    assert still.room == ((0.0, 0.0, 0.0), (3.0, 3.0, 2.5))


def test_people_are_blocks_when_they_stand_nearby(still):
    assert still.blocks() == ()
    near = LiveAir(shop(("at: [0.5 m, 0.5 m]", "at: [1.5 m, 0.9 m]")), "nozzle", "joint").air()
    (person,) = blocks_of(near)
    assert person["name"] == "someone" and person["centre"][:2] == pytest.approx([1.5, 0.9])
    assert np.array(person["axes"]) @ np.array(person["axes"]).T == pytest.approx(np.eye(3))
    assert near.blocks()[0].fills(np.add(person["centre"], 0.99 * np.dot(person["half"], person["axes"])))


def test_a_source_without_a_stream_has_no_path(live, still):
    stream = live.stream(still)
    assert (stream.form, stream.points, stream.radius) == ("point", (HERE,), 0.0) and len(stream.path) == 0


def test_path_of_a_stream_bends_towards_the_hood():
    teaching = LiveAir(parse_workplace(BESIDE.read_text(encoding="utf-8")), "pipe end", "fog stream")
    weak, strong = (teaching.stream(teaching.air(flow=flow)) for flow in (0.001, 0.05))
    x, z = COLUMNS.index("x"), COLUMNS.index("z")
    for stream in (weak, strong):
        assert stream.path.shape[1] == len(COLUMNS) and np.all(np.isfinite(stream.path))
        assert stream.path[0, :3] == pytest.approx(stream.points[0])
        assert stream.radius == pytest.approx(0.0045) and stream.direction == (0.0, 0.0, 1.0)
        directions = stream.path[:, COLUMNS.index("dx") : COLUMNS.index("dz") + 1]
        assert np.linalg.norm(directions, axis=1) == pytest.approx(1.0)
        excess = stream.path[:, COLUMNS.index("ex") : COLUMNS.index("ez") + 1]
        assert np.linalg.norm(excess, axis=1) == pytest.approx(stream.path[:, COLUMNS.index("peak")])
    # its hood stands on the side of smaller x: at one height the stronger suction has drawn the stream nearer to it
    height = min(weak.path[-1, z], strong.path[-1, z])
    at = [np.interp(height, s.path[:, z], s.path[:, x]) for s in (weak, strong)]
    assert at[1] < at[0]


def test_lines_boxes_and_paths_are_moved_whole():
    forms = ("line: [[1 m, 1 m, 1.2 m], [1.2 m, 1 m, 1.2 m]]", "box: [[1 m, 1 m, 1 m], [1.2 m, 1.1 m, 1.3 m]]")
    path = "path: [[1 m, 1 m, 1 m], [1.1 m, 1.2 m, 1 m], [1.2 m, 1 m, 1 m]]"
    for form in (*forms, path):
        source = shop(("at: [1.5 m, 1.3 m, 1.1 m]", form)).sources[0]
        moved = placed(source, (1.6, 1.2, 1.4))
        assert moved.centre == pytest.approx((1.6, 1.2, 1.4)) and moved.place_key == source.place_key
        shifts = {tuple(np.round(np.subtract(b, a), 9)) for a, b in zip(source.points, moved.points, strict=True)}
        assert len(shifts) == 1


BAD = [
    ({"source_at": (1.5, 1.45, 1.1)}, InputError, "body of nozzle"),
    ({"source_at": (1.5, 1.3, -0.1)}, InputError, "outside the room"),
    ({"source_at": (0.5, 0.5, 1.0)}, InputError, "someone|body"),
    ({"source_at": (1.5, math.nan, 1.1)}, InputError, "finite"),
    ({"hood_at": (1.5, math.inf, 1.1)}, InputError, "finite"),
    ({"hood_at": (1.5, 1.4, 9.0)}, InputError, "outside the room"),
    ({"flow": 0.0}, InputError, "draws no air"),
    ({"flow": -1.0}, InputError, "draws no air"),
    ({"flow": math.nan}, InputError, "finite"),
    ({"flow": 50.0}, RangeError, "face velocity"),
    ({"draught": (50.0, 0.0, 0.0)}, RangeError, "10 m/s"),
    ({"draught": (0.0, math.nan, 0.0)}, InputError, "finite"),
]


@pytest.mark.parametrize(("asked", "kind", "words"), BAD, ids=[f"{n} {next(iter(b[0]))}" for n, b in enumerate(BAD)])
def test_one_clear_error_each(live, asked, kind, words):
    with pytest.raises(kind, match=words) as caught:
        live.air(**asked)
    assert isinstance(caught.value, HoodwrightError) and "\n" not in str(caught.value)


def test_a_hood_that_faces_its_own_bench_and_unknown_names():
    down = shop(("at: [1.5 m, 1.4 m, 1.1 m], facing: [0, -1, 0]", "at: [1.5 m, 1.4 m, 0.905 m], facing: [0, 0, -1]"))
    with pytest.raises(InputError, match="nozzle: its opening faces bench"):
        LiveAir(down, "nozzle", "joint").air()
    with pytest.raises(InputError, match="no hood 'tube'"):
        LiveAir(shop(), "tube", "joint")
    with pytest.raises(InputError, match="no source 'spark'"):
        LiveAir(shop(), "nozzle", "spark")


def test_it_can_be_stopped(live):
    progress = Progress()
    progress.cancel()
    with pytest.raises(Cancelled):
        live.air(hood_at=(1.5, 1.47, 1.1), progress=progress)


def test_two_who_ask_at_once_solve_once():
    live = LiveAir(shop(("1.4 m, 1.1 m], facing", "1.43 m, 1.1 m], facing")), "nozzle", "joint")
    listeners = [Solved(), Solved()]
    with ThreadPoolExecutor(2) as pool:
        found = list(pool.map(lambda one: live.air(progress=one.progress), listeners))
    assert found[0].bases is found[1].bases
    assert sum(listener.solved for listener in listeners) == 1
