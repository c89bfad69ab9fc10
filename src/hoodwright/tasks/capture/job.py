"""The capture job: which share of what a source gives off is caught, by the computed air. Not validated."""

from collections.abc import Sequence

from hoodwright import __version__
from hoodwright.errors import InputError
from hoodwright.flow import Plan
from hoodwright.jobs import Progress
from hoodwright.tasks.air.solved import CELLS_ACROSS, PLAN, flows_of, plan_for, watched
from hoodwright.tasks.capture.answer import BANNER, CAPTURED, CaptureAnswer, CaptureReport, Definition, Farthest
from hoodwright.tasks.capture.case import Case, sentence_of, spreads_of
from hoodwright.tasks.today import with_today
from hoodwright.workplace.model import Hood, Source, Workplace

__all__ = [
    "BANNER",
    "CAPTURED",
    "CELLS_ACROSS",
    "PLAN",
    "CaptureAnswer",
    "CaptureReport",
    "Case",
    "Definition",
    "Farthest",
    "capture_of",
    "flows_of",
    "pairs_of",
    "plan_for",
    "sentence_of",
    "spreads_of",
    "watched",
]


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
    workplace = with_today(workplace) if today else workplace
    pairs = pairs_of(workplace, source, hood)
    if distances is not None and len(pairs) != 1:
        raise InputError(
            f"--distances: one source and one hood are needed, got {len(pairs)} pairs; name --source and --hood"
        )
    flows = flows_of(workplace, today=today)
    found: list[CaptureAnswer] = []
    for number, (one, served) in enumerate(pairs):
        part = progress.part(number / len(pairs), (number + 1) / len(pairs))
        found += Case(one, served, workplace, flows, seed, plan, today).answers(distances, part)
    progress.report(1.0, "done")
    return CaptureReport(workplace.name, workplace.units, __version__, "today" if today else "design", tuple(found))


def pairs_of(workplace: Workplace, source: str | None, hood: str | None) -> list[tuple[Hood, Source]]:
    """Which source is asked before which hood; both names narrow it down, and two names need not serve."""
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
