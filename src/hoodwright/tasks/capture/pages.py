"""What the report of the computed air shows of each pair: the answer as it stands, the curve, and the smoke."""

from collections.abc import Callable, Sequence
from contextlib import suppress
from dataclasses import dataclass, replace

from hoodwright.errors import InputError
from hoodwright.flow import Plan
from hoodwright.jobs import Progress
from hoodwright.tasks.air.smoke_still import SmokeStill, still_of
from hoodwright.tasks.along_axis import distances_for
from hoodwright.tasks.capture.answer import CaptureAnswer, CaptureReport
from hoodwright.tasks.capture.job import capture_of
from hoodwright.workplace.model import Workplace


@dataclass(frozen=True, eq=False)
class CapturePage:
    """One source before one hood."""

    now: CaptureAnswer
    curve: CaptureReport | None  # the source moved along the axis; None where no share may be told at all
    still: SmokeStill


def pages_of(report: CaptureReport, workplace: Workplace, progress: Progress | None = None) -> tuple[CapturePage, ...]:
    """A page for each pair of the report; what it lacks is computed with the same seed and plan."""
    progress = progress or Progress()
    pairs = list(dict.fromkeys((answer.hood, answer.source) for answer in report.answers))
    pages = []
    for number, pair in enumerate(pairs):
        part = progress.part(number / len(pairs), (number + 1) / len(pairs))
        pages.append(_page(report, workplace, *pair, part))
    return tuple(pages)


def _page(report: CaptureReport, workplace: Workplace, hood: str, source: str, progress: Progress) -> CapturePage:
    mine = [answer for answer in report.answers if (answer.hood, answer.source) == (hood, source)]
    moved, stands = tuple(a for a in mine if a.moved), [a for a in mine if not a.moved]
    given, today = mine[0].definition, report.flow == "today"
    plan = Plan(time_limit=given.time_limit, realisations=given.realisations, particles=given.particles)

    def asked(distances: Sequence[float] | None, part: Progress) -> tuple[CaptureAnswer, ...]:
        return capture_of(
            workplace, source, hood, distances, seed=given.seed, plan=plan, today=today, progress=part
        ).answers

    now = stands[0] if stands else asked(None, progress.part(0.0, 0.2))[0]
    if not moved and now.told:
        one = next(h for h in workplace.hoods if h.name == hood)
        chosen = distances_for(one, workplace.source(source), workplace, report.system)
        moved = _in_open_air(asked, chosen, progress.part(0.2, 0.9))
    curve = replace(report, answers=moved) if moved else None
    still = still_of(workplace, hood, source, seed=given.seed, today=today, progress=progress.part(0.9, 1.0))
    return CapturePage(now, curve, still)


def _in_open_air(asked: Callable, distances: Sequence[float], progress: Progress) -> tuple[CaptureAnswer, ...]:
    """Answers at distances that nobody asked for: those where something stands are left out."""
    if not distances:
        return ()
    try:
        return asked(distances, progress)
    except InputError:
        found: list[CaptureAnswer] = []
        for number, distance in enumerate(distances):
            part = progress.part(number / len(distances), (number + 1) / len(distances))
            with suppress(InputError):
                found += asked([distance], part)
        return tuple(found)
