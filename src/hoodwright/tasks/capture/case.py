"""One hood and one source: solve for the air, follow the particles, and put the answer together."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from hoodwright.errors import InputError
from hoodwright.flow import Extent, FullInterval, Plan, Release, Spreads, full_interval, moved_to
from hoodwright.jobs import Progress
from hoodwright.tasks.air.scene import draught_of, release_of
from hoodwright.tasks.air.solved import SolvedAir, plan_for, solved_air
from hoodwright.tasks.air.supply_jets import supply_notes
from hoodwright.tasks.assess import air_of
from hoodwright.tasks.capture.answer import CAPTURED, CaptureAnswer, Definition, Farthest
from hoodwright.tasks.capture.centreline import centreline_before
from hoodwright.tasks.capture.claims import claim_of
from hoodwright.tasks.capture.handbook import Handbook, handbook_at
from hoodwright.tasks.capture.openings import openings_inward, spills_first
from hoodwright.tasks.capture.reasons import at_source, difference
from hoodwright.tasks.opening_answers import openings_of
from hoodwright.units import show
from hoodwright.workplace.model import Hood, Source, Workplace


@dataclass(frozen=True)
class Case:
    """One hood and one source, with all that is asked of them."""

    hood: Hood
    source: Source
    workplace: Workplace
    flows: dict[str, float]
    seed: int
    plan: Plan
    today: bool = False

    def answers(self, distances: Sequence[float] | None, progress: Progress) -> Iterator[CaptureAnswer]:
        """One answer for each distance, or one where the source stands."""
        if self.flows[self.hood.name] <= 0:
            raise InputError(f"{self.hood.name}: it draws no air, its flow is 0; give a flow above 0")
        placed = [self.source] if distances is None else [self._moved(d) for d in distances]
        points = tuple(point for one in placed for point in one.points)
        air = solved_air(self.hood, self.workplace, points, self.flows, progress.part(0.0, 0.6))
        line = centreline_before(self.hood, self.source, self.workplace, air, self.flows[self.hood.name])
        for number, one in enumerate(placed):
            progress.report(0.6 + 0.4 * number / len(placed), f"following particles from the {self.source.name}")
            self._in_open_air(one, air)
            yield replace(self._answer(one, air), centreline=line)

    def _moved(self, distance: float) -> Source:
        """The source on the axis of its hood."""
        if not (math.isfinite(distance) and distance > 0):
            raise InputError(f"--distances: got {distance:g} m; each must be above 0")
        place = tuple(a + distance * f for a, f in zip(self.hood.at, self.hood.facing, strict=True))
        if any(not 0 <= x <= size for x, size in zip(place, self.workplace.room.size, strict=True)):
            far = show(distance, "length", self.workplace.units)
            raise InputError(f"--distances: {far} from the {self.hood.name} is outside the room; give a shorter one")
        return self.source.model_copy(update={"at": place} | dict.fromkeys(("line", "box", "path", "tank")))

    def _in_open_air(self, source: Source, air: SolvedAir) -> None:
        """Refuse a source that stands in something solid; one that was moved there is told by its distance."""
        try:
            air.bases.refuse_solid(source.name, source.points)
        except InputError as error:
            if source is self.source:
                raise
            distance = show(math.dist(self.hood.at, source.centre), "length", self.workplace.units)
            raise InputError(f"--distances: {distance} from the {self.hood.name}: {error}") from None

    def _follow(self, release: Release, source: Source, air: SolvedAir) -> FullInterval:
        draught = draught_of(self.workplace, source.centre)
        plan, known = plan_for(self.hood, source, self.plan), spreads_of(self.workplace)
        return full_interval(air.bases, air.scene.mouths, air.flows, release, draught, plan, self.seed, known)

    def _farthest(self, release: Release, source: Source, air: SolvedAir) -> Farthest | None:
        """The same source, all of it at its farthest place; None for a point."""
        if len(source.points) == 1:
            return None
        place = source.farthest_from(self.hood.at)
        there = moved_to(replace(release, extent=Extent("point", (release.extent.centre,))), place)
        found = self._follow(there, source, air)
        return Farthest(place, found.captured.fraction, found.low, found.high)

    def _answer(self, source: Source, air: SolvedAir) -> CaptureAnswer:
        release = release_of(source, self.workplace, air_of(self.workplace.air).density)
        found, farthest = self._follow(release, source, air), self._farthest(release, source, air)
        flow = self.flows[self.hood.name]
        cannot = claim_of(self.hood, source, self.workplace, flow)
        handbook = handbook_at(self.hood, source, self.workplace, flow, today=self.today)
        by_area = openings_of(self.hood, self.workplace, flow, self.workplace.units)
        openings = openings_inward(self.hood, source, self.workplace, air, by_area)
        answer = CaptureAnswer(
            source=source.name,
            hood=self.hood.name,
            distance=math.dist(self.hood.at, source.farthest_from(self.hood.at)),
            flow=flow,
            captured=found.captured.fraction,
            low=found.low,
            high=found.high,
            by_hood=self._by_hood(found, air),
            plume_limited=found.captured.plume_limited,
            claim=f"cannot tell, because {cannot}" if cannot else CAPTURED,
            definition=self._definition(found, air),
            handbook=handbook.outcome,
            differs=None if cannot else self._differs(found, source, air, handbook),
            openings=openings,
            notes=(*air.notes, *self._flow_notes(air), *supply_notes(self.workplace, source.centre, source.name)),
            sentence="",
            moved=source is not self.source,
            farthest=farthest,
            spills=spills_first(openings, self.workplace.units),
        )
        return replace(answer, sentence=sentence_of(answer, self.workplace.units, today=self.today))

    def _differs(self, found: FullInterval, source: Source, air: SolvedAir, handbook: Handbook) -> str | None:
        there = at_source(self.hood, source, self.workplace, air, handbook.need)
        return difference(found.low, found.high, handbook.outcome, found.captured.plume_limited, there)

    def _by_hood(self, found: FullInterval, air: SolvedAir) -> dict[str, float]:
        """What each neighbour caught, and any other hood that caught something."""
        near = {one.name for one in air.group}
        return {name: share for name, share in found.captured.by_mouth.items() if name in near or share > 0}

    def _definition(self, found: FullInterval, air: SolvedAir) -> Definition:
        plan, report = found.captured.plan, air.bases.report
        size = (plan.escape_radius, plan.time_limit, plan.realisations, plan.particles)
        return Definition(*size, self.seed, report.cells, report.smallest, found.spreads)

    def _flow_notes(self, air: SolvedAir) -> tuple[str, ...]:
        """Hoods of which no flow of today was read."""
        unread = [one.name for one in air.group if one.today is None] if self.today else []
        return (f"No flow of today is in the file for: {', '.join(unread)}; the design flow stands in.",) * bool(unread)


def spreads_of(workplace: Workplace) -> Spreads:
    """How well the file says that its inputs are known."""
    told = workplace.uncertainty
    return Spreads(flow=told.flow, position=told.position, draught=told.draught, release=told.release)


def sentence_of(answer: CaptureAnswer, system: str, *, today: bool = False) -> str:
    """The answer in one sentence."""
    where, flow = show(answer.distance, "length", system), show(answer.flow, "flow", system)
    head = f"The {answer.hood}, {where} from the {answer.source}, at {flow}{' today' if today else ''}:"
    if not answer.told:
        return f"{head} {answer.claim}."
    words, far = f"{answer.shown} captured, interval {answer.shown_interval}", answer.told_farthest
    if far is not None:
        words += f"; of its farthest place {far.shown}, interval {far.shown_interval}"
    return f"{head} {words}."
