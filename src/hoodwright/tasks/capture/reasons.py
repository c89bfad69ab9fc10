"""Why the computed answer and the handbook's differ: what the air does at the source, beside what was asked."""

import math
from dataclasses import dataclass

import numpy as np

from hoodwright.flow import Plate
from hoodwright.results import Outcome, Verdict
from hoodwright.tasks.air.solved import SolvedAir
from hoodwright.tasks.assessment import SourceNeed
from hoodwright.tasks.hood_shapes import Xyz
from hoodwright.units import show
from hoodwright.workplace.model import Hood, Source, Workplace

CATCHES = 0.9  # above it a computed answer counts as good, for the comparison with the handbook only
HELD_OFF = 0.7  # of the handbook's velocity at the source, below which what stands around it is the reason
WIDE = 0.4  # an interval that reaches over both answers


@dataclass(frozen=True)
class AtSource:
    """What moves the air at the farthest place of a source [m/s]."""

    drawn: float  # by the hoods
    draught: float
    stream: float
    expected: float | None  # by the handbook's equations
    asked: float | None  # the handbook's capture velocity
    between: str | None  # what stands in the line to the hood
    system: str

    def say(self, velocity: float | None) -> str:
        """A velocity with its unit."""
        return show(velocity or 0.0, "velocity", self.system)


def at_source(hood: Hood, source: Source, workplace: Workplace, air: SolvedAir, need: SourceNeed | None) -> AtSource:
    """Look at the air where the source stands."""
    place = source.farthest_from(hood.at)
    told = workplace.room.draught
    return AtSource(
        drawn=float(np.linalg.norm(air.bases.field(air.flows).velocity(place))),
        draught=told.speed + told.wander if told else 0.0,
        stream=source.release.speed if source.release else 0.0,
        expected=need.velocity if need else None,
        asked=need.capture_velocity if need else None,
        between=next((p.name for p in air.scene.plates if _crosses(p, place, hood.at)), None),
        system=workplace.units,
    )


def difference(
    low: float, high: float, handbook: Outcome, plume_limited: bool, there: AtSource | None = None
) -> str | None:
    """Why the computed answer and the handbook's differ; None where they do not."""
    if handbook.verdict is Verdict.MEETS and high < CATCHES:
        return f"the handbook is content, the computed air is not: {_why_less(plume_limited, there)}"
    if handbook.verdict is Verdict.MEETS and low < CATCHES - WIDE:
        return f"the two may differ, the interval reaches over both: {_why_less(plume_limited, there)}"
    if handbook.verdict is Verdict.SHORT and low >= CATCHES:
        numbers = ""
        if there is not None and there.asked:
            numbers = f"; the air moves {there.say(there.drawn)} at the source, {there.say(there.asked)} are asked"
        return (
            "the handbook asks for more, as a margin for draughts that may come; "
            f"the computed air knows only the draught of the file{numbers}"
        )
    return None


def _why_less(plume_limited: bool, there: AtSource | None) -> str:
    if plume_limited:
        return "the stream brings more air than the hood takes"
    if there is None:
        return "the equations know neither the draught nor the stream of the source, nor what stands around it"
    drawn = there.say(there.drawn)
    if there.between:
        return f"the {there.between} stands between source and hood, and the equations do not know it"
    if there.expected and there.drawn < HELD_OFF * there.expected:
        return (
            f"the air moves {drawn} at the source, where the equations, which do not know its surroundings, "
            f"say {there.say(there.expected)}"
        )
    if there.stream > max(there.drawn, there.draught):
        return (
            f"the source blows at {there.say(there.stream)}, the hood draws {drawn} there: no equation knows a stream"
        )
    if there.draught > there.drawn / 2:
        return f"draughts reach {there.say(there.draught)}, the hood draws {drawn} there: no equation knows a draught"
    return f"the hood draws {drawn} at the source; a change of its place or of the draught within the interval decides"


def _crosses(plate: Plate, start: Xyz, stop: Xyz) -> bool:
    """Whether the straight line between two places goes through a plate."""
    a, b = float(plate.height(start)), float(plate.height(stop))
    if a * b >= 0 or math.isclose(a, b):
        return False
    return bool(plate.holds(np.asarray(start) + a / (a - b) * (np.asarray(stop) - np.asarray(start))))
