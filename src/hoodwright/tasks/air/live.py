"""The live air: one source before one hood, asked again and again while either is dragged. Not validated."""

import math
from dataclasses import dataclass

import numpy as np

from hoodwright.errors import InputError
from hoodwright.flow import Lattice, follow, lattice_of
from hoodwright.jobs import Progress
from hoodwright.tasks.air.live_scene import LiveScene
from hoodwright.tasks.air.scene import UNREST, draught_of, release_of
from hoodwright.tasks.air.solved import flows_of, plan_for, solved_air
from hoodwright.tasks.assess import air_of
from hoodwright.tasks.capture.answer import BANNER, CaptureAnswer
from hoodwright.tasks.capture.job import capture_of
from hoodwright.tasks.hood_shapes import Xyz
from hoodwright.units import show
from hoodwright.workplace.model import Draught, Hood, Source, Workplace

SEED = 1  # of every share: as that of the capture job
COLUMNS = ("x", "y", "z", "dx", "dy", "dz", "b", "peak", "ex", "ey", "ez", "flow", "inflow", "spread")
MOST_STATIONS = 400
BEYOND = 1.2  # of the escape radius: so far the path of a stream is told
WALL = 1e-9  # m


@dataclass(frozen=True, eq=False)
class LiveStream:
    """Where a source lies, the disc over which its smoke starts, and the mean path of its stream, if it has one."""

    form: str  # point, line, box or path
    points: tuple[Xyz, ...]
    radius: float  # m
    direction: Xyz
    path: np.ndarray  # (stations, columns)
    columns: tuple[str, ...] = COLUMNS


@dataclass(frozen=True)
class LiveShare:
    """The captured share in the words of the capture job, with the raw numbers beside them."""

    told: bool
    shown: str
    interval: str
    sentence: str
    claim: str
    banner: str
    distance: str
    flow: str
    captured: float
    low: float
    high: float
    by_hood: dict[str, float]
    handbook: str
    differs: str | None


class LiveAir:
    """One hood and one source of a workplace, asked with either moved, with another flow, or another draught."""

    def __init__(self, workplace: Workplace, hood: str, source: str):
        for what, name, known in (
            ("hood", hood, [one.name for one in workplace.hoods]),
            ("source", source, [one.name for one in workplace.sources]),
        ):
            if name not in known:
                raise InputError(f"there is no {what} {name!r}; there is: {', '.join(known) or 'none'}")
        self.workplace, self.hood, self.source = workplace, hood, source

    def air(
        self,
        source_at: Xyz | None = None,
        hood_at: Xyz | None = None,
        flow: float | None = None,
        draught: Xyz | None = None,
        progress: Progress | None = None,
    ) -> LiveScene:
        """The air with what was asked, None being as in the workplace.

        A new solution only where a hood stands elsewhere, or the source has left the box of the last one.
        `source_at` is the middle of the source [m], `draught` its mean [m/s].
        """
        hood, source, workplace = self._asked(source_at, hood_at, flow, draught)
        blowing = draught_of(workplace, source.centre)
        release = release_of(source, workplace, air_of(workplace.air).density)
        solved = solved_air(hood, workplace, source.points, flows_of(workplace), progress)
        solved.bases.weights(solved.flows, blowing.mean)
        solved.bases.refuse_solid(source.name, source.points)
        plan = plan_for(hood, source)
        return LiveScene(workplace, hood, source, solved.bases, solved.flows, release, blowing, plan)

    def lattice(self, scene: LiveScene) -> Lattice:
        """The air on the points of a lattice, for drawing."""
        args = (scene.bases, scene.hood.name, scene.others, scene.draught.eddy, scene.centres, scene.reach)
        return lattice_of(*args)

    def stream(self, scene: LiveScene) -> LiveStream:
        """Where smoke starts, and the mean path of the source's stream at these flows."""
        extent, jet = scene.release.extent, scene.release.jet
        if jet is None:
            return LiveStream(extent.form, extent.points, 0.0, (0.0, 0.0, 1.0), np.zeros((0, len(COLUMNS))))
        return LiveStream(extent.form, extent.points, jet.radius, jet.direction, _path(scene))

    def share(self, scene: LiveScene, progress: Progress | None = None) -> LiveShare:
        """The captured share, exactly as the capture job tells it."""
        names = scene.source.name, scene.hood.name
        found = capture_of(scene.workplace, *names, seed=SEED, progress=progress).answers[0]
        system = scene.workplace.units
        return LiveShare(
            told=found.told,
            shown=found.shown,
            interval=found.shown_interval,
            sentence=_sentence(found),
            claim=found.claim,
            banner=BANNER,
            distance=show(found.distance, "length", system),
            flow=show(found.flow, "flow", system),
            captured=found.captured,
            low=found.low,
            high=found.high,
            by_hood=found.by_hood,
            handbook=str(found.handbook),
            differs=found.differs,
        )

    def _asked(
        self, source_at: Xyz | None, hood_at: Xyz | None, flow: float | None, draught: Xyz | None
    ) -> tuple[Hood, Source, Workplace]:
        """Hood, source and workplace as they are asked for."""
        hood = next(one for one in self.workplace.hoods if one.name == self.hood)
        source = self.workplace.source(self.source)
        if hood_at is not None:
            hood = hood.model_copy(update={"at": _finite(hood.name, hood_at)})
        if flow is not None:
            hood = hood.model_copy(update={"intended_flow": _drawing(hood.name, flow)})
        if source_at is not None:
            source = placed(source, _finite(source.name, source_at))
        _in_the_room(source, self.workplace)
        parts: dict = {
            "hoods": tuple(hood if one.name == hood.name else one for one in self.workplace.hoods),
            "sources": tuple(source if one.name == source.name else one for one in self.workplace.sources),
        }
        if draught is not None:
            blown = _blown(self.workplace.room.draught, _finite("draught", draught))
            parts["room"] = self.workplace.room.model_copy(update={"draught": blown})
        return hood, source, self.workplace.model_copy(update=parts)


def _sentence(found: CaptureAnswer) -> str:
    """The sentence of the capture job; of an enclosure also what goes in, and where it would spill first."""
    tail = found.spills or ""
    return f"{found.sentence} {tail[:1].upper()}{tail[1:]}." if tail else found.sentence


def placed(source: Source, middle: Xyz) -> Source:
    """The source with its middle elsewhere; a line, box or path is moved whole."""
    x, y, z = (a - b for a, b in zip(middle, source.centre, strict=True))

    def moved(point: Xyz) -> Xyz:
        return (point[0] + x, point[1] + y, point[2] + z)

    key = source.place_key
    if key == "at":
        return source.model_copy(update={"at": middle})
    return source.model_copy(update={key: tuple(moved(point) for point in getattr(source, key))})


def _finite(name: str, place: Xyz) -> Xyz:
    if not all(math.isfinite(part) for part in place):
        raise InputError(f"{name}: got {tuple(place)}; three finite numbers are needed")
    return place


def _drawing(name: str, flow: float) -> float:
    if not math.isfinite(flow):
        raise InputError(f"{name}: got the flow {flow}; a finite number of m3/s is needed")
    if flow <= 0:
        raise InputError(f"{name}: it draws no air, its flow is {flow:g} m3/s; give a flow above 0")
    return flow


def _in_the_room(source: Source, workplace: Workplace) -> None:
    for point in source.points:
        for place, limit in zip(point, workplace.room.size, strict=True):
            if not -WALL <= place <= limit + WALL:
                at = ", ".join(f"{c:.4g}" for c in point)
                raise InputError(f"{source.name}: ({at}) m lies outside the room; move it inside")


def _blown(told: Draught | None, mean: Xyz) -> Draught:
    """The draught of the room with another mean; a little unrest where the file tells of none."""
    speed = math.hypot(*mean)
    way = (1.0, 0.0, 0.0) if speed == 0 else (mean[0] / speed, mean[1] / speed, mean[2] / speed)
    if told is not None:
        return told.model_copy(update={"towards": way, "speed": speed})
    return Draught.model_construct(towards=way, speed=speed, wander=UNREST, turbulence=UNREST)


def _path(scene: LiveScene) -> np.ndarray:
    """The stations of a stream's mean path, as far as the escape radius and a little beyond."""
    found = follow(scene.bases.arrays, scene.bases.weights(scene.flows, scene.draught.mean), scene.release.jet)
    away = np.linalg.norm(found.places[:, None] - np.array(scene.centres)[None], axis=2).min(axis=1)
    beyond = np.flatnonzero(away > BEYOND * scene.plan.escape_radius)
    last = int(beyond[0]) + 1 if len(beyond) else len(found.places)
    sizes = np.stack([found.radius, found.axis_speed], axis=1)
    rest = np.stack([found.flow, found.inflow, found.spread], axis=1)
    columns = [found.places, found.direction, sizes, found.excess, rest]
    step = -(-last // MOST_STATIONS)
    return np.concatenate(columns, axis=1)[:last:step]


__all__ = ["COLUMNS", "LiveAir", "LiveScene", "LiveShare", "LiveStream", "placed"]
