"""The capture job: which share of what a source gives off is caught, by the computed air. Not validated."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from hoodwright import __version__
from hoodwright.errors import InputError
from hoodwright.flow import (
    FullInterval,
    Plan,
    Resolution,
    Spreads,
    escape_radius_for,
    full_interval,
    shown_share,
    solve,
)
from hoodwright.jobs import Progress
from hoodwright.results import Outcome
from hoodwright.tasks.air_scene import draught_of, group_of, release_of, scene_of
from hoodwright.tasks.assess import air_of, assess, design_flow
from hoodwright.tasks.assessment import HoodAnswer, OpeningAnswer
from hoodwright.tasks.capture_claims import claim_of, difference
from hoodwright.tasks.shapes import half_size
from hoodwright.units import show
from hoodwright.workplace.model import Hood, Source, Workplace

BANNER = "not validated for capture"
CAPTURED = "captured"
CELLS_ACROSS = 8
ALWAYS_IN = 0.4  # m from an opening: such a source, and its escape radius, lie in every box
PLAN = Plan()


@dataclass(frozen=True)
class Definition:
    """What a captured fraction means here."""

    escape_radius: float  # m
    time_limit: float  # s
    realisations: int
    particles: int
    seed: int
    cells: int
    smallest_cell: float  # m
    spreads: Spreads


@dataclass(frozen=True)
class CaptureAnswer:
    """One source before one hood: the captured fraction with its interval, and what may be claimed of it."""

    source: str
    hood: str
    distance: float  # m
    flow: float  # m3/s
    captured: float
    low: float
    high: float
    by_hood: dict[str, float]
    plume_limited: bool
    claim: str
    definition: Definition
    handbook: Outcome
    differs: str | None
    openings: tuple[OpeningAnswer, ...]
    notes: tuple[str, ...]
    sentence: str
    moved: bool = False  # whether it stands elsewhere than in the file, where the handbook is asked

    @property
    def told(self) -> bool:
        """Whether a per cent may be shown."""
        return self.claim == CAPTURED

    @property
    def shown(self) -> str:
        """The captured fraction as it is shown."""
        return shown_share(self.captured) if self.told else "cannot tell"

    @property
    def shown_interval(self) -> str:
        """Its interval as it is shown."""
        low, high = shown_share(self.low), shown_share(self.high)
        return "-" if not self.told else low if low == high else f"{low} to {high}"


@dataclass(frozen=True)
class CaptureReport:
    """The answer of the capture job."""

    workplace: str
    system: str
    version: str
    flow: str  # design or today
    answers: tuple[CaptureAnswer, ...]


def capture_of(
    workplace: Workplace,
    source: str | None = None,
    hood: str | None = None,
    distances: Sequence[float] | None = None,
    *,
    seed: int = 1,
    plan: Plan = PLAN,
    today: bool = False,
    progress: Progress | None = None,
) -> CaptureReport:
    """The captured fraction of every source before its hood, or of one source moved along a hood's axis.

    `today` takes the flow that was read last in place of the design flow. `progress` may stop the work.
    """
    progress = progress or Progress()
    pairs = _pairs(workplace, source, hood)
    if distances is not None and len(pairs) != 1:
        raise InputError(f"distances are for one source and one hood, got {len(pairs)} pairs; name --source and --hood")
    flows = {one.name: _flow(one, workplace, today) for one in workplace.hoods}
    handbook = {answer.name: answer for answer in assess(workplace).hoods}
    found: list[CaptureAnswer] = []
    for number, (one, served) in enumerate(pairs):
        part = progress.part(number / len(pairs), (number + 1) / len(pairs))
        case = _Case(one, served, workplace, flows, handbook[one.name], seed, plan)
        found += case.answers(distances, part)
    progress.report(1.0, "done")
    return CaptureReport(workplace.name, workplace.units, __version__, "today" if today else "design", tuple(found))


def _pairs(workplace: Workplace, source: str | None, hood: str | None) -> list[tuple[Hood, Source]]:
    for what, name, known in (
        ("source", source, [s.name for s in workplace.sources]),
        ("hood", hood, [h.name for h in workplace.hoods]),
    ):
        if name is not None and name not in known:
            raise InputError(f"--{what}: got {name!r}; there is {', '.join(known)}; name one of these")
    hoods = [h for h in workplace.hoods if hood in (None, h.name)]
    if source is not None and hood is not None:
        return [(hoods[0], workplace.source(source))]
    pairs = [(h, workplace.source(name)) for h in hoods for name in h.serves if source in (None, name)]
    if not pairs:
        raise InputError(f"no hood serves {source!r}; name a hood with --hood")
    return pairs


def _flow(hood: Hood, workplace: Workplace, today: bool) -> float:
    return hood.today.flow if today and hood.today is not None else design_flow(hood, workplace)


@dataclass(frozen=True)
class _Case:
    """One hood and one source, with all that is asked of them."""

    hood: Hood
    source: Source
    workplace: Workplace
    flows: dict[str, float]
    handbook: HoodAnswer
    seed: int
    plan: Plan

    def answers(self, distances: Sequence[float] | None, progress: Progress) -> Iterator[CaptureAnswer]:
        """One answer for each distance, or one where the source stands."""
        if self.flows[self.hood.name] <= 0:
            raise InputError(f"{self.hood.name}: it draws no air, its flow is 0; give a flow above 0")
        placed = [self.source] if distances is None else [self._moved(d) for d in distances]
        group = group_of(self.hood, self.workplace)
        watch = _watched(self.hood, tuple(point for one in placed for point in one.points))
        scene, notes = scene_of(group, self.workplace, watch)
        bases = solve(scene, Resolution(cells_across=CELLS_ACROSS), progress.part(0.0, 0.6))
        flows = {one.name: self.flows[one.name] for one in group}
        density = air_of(self.workplace.air).density
        for number, one in enumerate(placed):
            progress.report(0.6 + 0.4 * number / len(placed), f"following particles from the {self.source.name}")
            bases.refuse_solid(one.name, one.points)
            release = release_of(one, self.workplace, density)
            far = max(math.dist(self.hood.at, point) for point in one.points)
            reach = float(escape_radius_for(max(far, half_size(self.hood.opening))))
            own = replace(self.plan, escape_radius=max(self.plan.escape_radius, reach))
            draught = draught_of(self.workplace)
            args = (bases, scene.mouths, flows, release, draught, own, self.seed, Spreads())
            yield self._answer(one, full_interval(*args), bases.report, (*notes, *bases.report.notes))

    def _moved(self, distance: float) -> Source:
        """The source on the axis of its hood."""
        if not (math.isfinite(distance) and distance > 0):
            raise InputError(f"--distances: got {distance:g} m; each must be above 0")
        place = tuple(a + distance * f for a, f in zip(self.hood.at, self.hood.facing, strict=True))
        return self.source.model_copy(update={"at": place, "line": None, "box": None, "path": None})

    def _answer(self, source: Source, found: FullInterval, report, notes: tuple[str, ...]) -> CaptureAnswer:
        stated, system = found.captured, self.workplace.units
        plan = stated.plan
        size = (plan.escape_radius, plan.time_limit, plan.realisations, plan.particles)
        cannot = claim_of(self.hood, source, self.workplace)
        answer = CaptureAnswer(
            source=source.name,
            hood=self.hood.name,
            distance=math.dist(self.hood.at, source.farthest_from(self.hood.at)),
            flow=self.flows[self.hood.name],
            captured=stated.fraction,
            low=found.low,
            high=found.high,
            by_hood=dict(stated.by_mouth),
            plume_limited=stated.plume_limited,
            claim=f"cannot tell, because {cannot}" if cannot else CAPTURED,
            definition=Definition(*size, self.seed, report.cells, report.smallest, found.spreads),
            handbook=self.handbook.enough,
            differs=None,
            openings=self.handbook.openings,
            notes=notes,
            sentence="",
            moved=source is not self.source,
        )
        differs = (
            difference(answer.low, answer.high, self.handbook.enough, stated.plume_limited)
            if not (cannot or answer.moved)
            else None
        )
        return replace(answer, differs=differs, sentence=_sentence(answer, system))


def _watched(hood: Hood, points: tuple[tuple[float, float, float], ...]) -> tuple[tuple[float, float, float], ...]:
    """Points that widen the box, on a coarse raster: a source that is dragged a little asks no new box."""
    far = (point for point in points if math.dist(hood.at, point) > ALWAYS_IN)
    return tuple(sorted({(round(x, 1), round(y, 1), round(z, 1)) for x, y, z in far}))


def _sentence(answer: CaptureAnswer, system: str) -> str:
    where, flow = show(answer.distance, "length", system), show(answer.flow, "flow", system)
    head = f"The {answer.hood}, {where} from the {answer.source}, at {flow}:"
    if not answer.told:
        return f"{head} {answer.claim}."
    return f"{head} {answer.shown} captured, interval {answer.shown_interval}."
