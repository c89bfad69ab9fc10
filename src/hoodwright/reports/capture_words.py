"""Words of the report of the computed air: what its numbers mean, and what it does not tell."""

from collections.abc import Sequence

from hoodwright.reports.words import Citations
from hoodwright.tasks.capture.answer import CaptureAnswer
from hoodwright.units import show

QUESTION = "What does the air do with what the sources give off?"
BESIDE = "It stands beside the handbook's answer, never in its place."
NOT_TOLD = (
    "What anyone breathes. The computed air makes no claim on breathing zones.",
    "A share where someone stands between source and hood, or has the draught from behind at the source: bodies leave "
    "wakes, and air flows back in them.",
    "A share for enclosures: they are judged by the inward velocity of every opening, and by a containment test.",
    "A share for gas more than 1.1 times as heavy as air, for thrown or falling particles and those over 30 µm, for "
    "hot air that rises more than 1 m (3.3 ft) to its hood, for shrouds on a tool, for the jet of a push nozzle, and "
    "for driven releases whose stream is not in the file.",
    "Wakes of benches, machines and hoods, air that parts from a lip, whirls in enclosures, streams that hit a plate.",
    "Machines and what else is not in the file; draughts that come and go; doors that open; a hand in the way.",
    "Whether it is right for this workplace. No measured set of captured fractions has been met yet. Numbers for the "
    "random motion were set by eye estimates of a teaching demonstration: a calibration, not a validation.",
    "Local codes and licensed professional practice: they come first wherever they differ from this report.",
)
NEAREST = 0.45  # m: the least escape radius


def listed(words: Sequence[str]) -> str:
    """One, two and three: "a", "a and b", "a, b and c"."""
    return f"{', '.join(words[:-1])} and {words[-1]}" if len(words) > 1 else words[0]


def definition(answer: CaptureAnswer, system: str, cited: Citations) -> list[dict]:
    """What the numbers mean, each part with where it comes from."""
    parts = (_followed(answer), _ends(answer, system), _interval(answer, system), _shown())
    return [{"text": words, "cites": cited.cite(source)} for words, source in parts]


def _followed(answer: CaptureAnswer) -> tuple[str, str]:
    told = answer.definition
    words = (
        "Particles leave the source and go with the computed air, its jet or plume, and random motions of both: "
        f"{told.realisations} moments with {told.particles} particles each, drawn from seed {told.seed}. All particles "
        "of one moment meet the same draught."
    )
    return words, "thomson87, well-mixed condition; plume-theory, definition"


def _ends(answer: CaptureAnswer, system: str) -> tuple[str, str]:
    nearest = show(NEAREST, "length", system)
    words = (
        "Caught is what crosses a hood's opening from outside. Lost is what gets farther than the escape radius from "
        f"every opening that draws, or is still in the air after {answer.definition.time_limit:g}\u2009s. The radius "
        f"stands beside each answer: 1.5 times the distance of the source, at least {nearest} and 1.5 half openings. "
        "Air without friction would catch everything in the end, so radius and time are part of the answer."
    )
    return words, "common-practice, definition of a captured fraction"


def _interval(answer: CaptureAnswer, system: str) -> tuple[str, str]:
    spreads = answer.definition.spreads
    place, gust = show(spreads.position, "length", system, 2), show(spreads.draught, "velocity", system, 2)
    words = (
        f"The interval of 95\u2009% covers together: flow ±\u00a0{100 * spreads.flow:g}\u2009%, place of the source "
        f"±\u00a0{place} each way, mean draught ±\u00a0{gust} each level way, speed of the release "
        f"±\u00a0{100 * spreads.release:g}\u2009%, the grid ±\u00a0{spreads.grid:g} of a share, and the number of "
        "particles. A wide one says that a small change decides."
    )
    return words, "david-nagaraja, order statistics of a sample; wilson27, score interval"


def _shown() -> tuple[str, str]:
    words = (
        "Shares are rounded to 5\u2009% and never shown beyond “> 95\u2009%” or “< 5\u2009%”: more is not known. Raw "
        "numbers are in the JSON, each with what may be claimed of it."
    )
    return words, "common-practice, what a computed per cent can carry"
