"""Cautions that hoods of every type share: draughts, and equations that differ."""

from collections.abc import Iterator

from hoodwright.results import Caution
from hoodwright.tasks.assessment import HoodAnswer
from hoodwright.units import show
from hoodwright.workplace.model import Workplace

PRACTICE = "common-practice"
WIDE_SPREAD = 0.25


def draughts(answer: HoodAnswer, workplace: Workplace, system: str) -> Iterator[Caution]:
    """Draughts that come near the air speed asked for at a source."""
    draught = workplace.room.draught
    if draught is None:
        return
    gust = draught.speed + draught.wander
    for need in answer.needs:
        if gust > need.capture_velocity / 2:
            than = "half " if gust < need.capture_velocity else ""
            air, velocity = show(gust, "velocity", system), show(need.capture_velocity, "velocity", system)
            text = f"draughts reach {air}, more than {than}the {need.velocity_kind} of {velocity}"
            yield Caution(answer.name, f"{text}: shield the {need.source} or enclose it", PRACTICE)


def spreads(answer: HoodAnswer) -> Iterator[Caution]:
    """Equations for one source that differ widely."""
    for need in answer.needs:
        if need.spread > WIDE_SPREAD:
            text = (
                f"the equations differ by {100 * need.spread:.0f} % for the {need.source}; the most demanding one rules"
            )
            yield Caution(answer.name, text, PRACTICE)
