"""What the computed air says of three arrangements of one source."""

from collections.abc import Sequence

from hoodwright.jobs import Progress
from hoodwright.tasks import warm_up
from hoodwright.tasks.arrangements.arrange import Arrangement
from hoodwright.tasks.arrangements.words import Told
from hoodwright.tasks.capture.answer import CaptureAnswer
from hoodwright.tasks.capture.job import capture_of


def told_of(progress: Progress, three: Sequence[Arrangement]) -> dict[str, Told]:
    """The captured share of each, or the inward velocity of a box, by its key."""
    warm_up.wait(progress)
    found = {}
    for number, one in enumerate(three):
        part = progress.part(number / len(three), (number + 1) / len(three))
        found[one.key] = _told(capture_of(one.workplace, one.source, one.hood, progress=part).answers[0])
    return found


def _told(answer: CaptureAnswer) -> Told:
    far = answer.told_farthest
    return Told(
        told=answer.told,
        shown=answer.shown,
        interval=answer.shown_interval,
        claim=answer.claim,
        inward=next((opening.computed for opening in answer.openings), None),
        spills=answer.spills,
        farthest=f"{far.shown} ({far.shown_interval})" if far else "",
    )
