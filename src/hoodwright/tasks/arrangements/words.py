"""The three arrangements in words: what each does, what the handbook says, and where the hood should go."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Protocol

from hoodwright.tasks.arrangements.places import Work
from hoodwright.tasks.assessment import HoodAnswer
from hoodwright.units import show
from hoodwright.workplace.model import Hood, Source, Surface, Workplace


@dataclass(frozen=True)
class Told:
    """What the computed air says of one arrangement; `claim` is why no per cent may be shown, where none may.

    Of a box: the velocity into its opening [m/s], and where it would spill first. `farthest` is the share of what
    leaves the farthest place of a source, where that is another.
    """

    told: bool
    shown: str
    interval: str
    claim: str
    inward: float | None = None
    spills: str | None = None
    farthest: str = ""


class Plan(Protocol):
    """What the words need to know of a plan."""

    @property
    def hood(self) -> Hood: ...
    @property
    def source(self) -> Source: ...
    @property
    def workplace(self) -> Workplace: ...
    @property
    def work(self) -> Work: ...
    @property
    def distance(self) -> float: ...
    @property
    def flow(self) -> float: ...
    @property
    def system(self) -> str: ...


class Placed(Protocol):
    """What the sentence of all three needs to know of each."""

    @property
    def key(self) -> str: ...
    @property
    def workplace(self) -> Workplace: ...
    @property
    def source(self) -> str: ...
    @property
    def flow(self) -> float: ...
    @property
    def distance(self) -> float | None: ...
    @property
    def inward(self) -> float | None: ...


def beside_words(plan: Plan) -> str:
    """What the hood beside the source does."""
    return f"The opening stands upright, {_far(plan)} beside {_edge(plan)}, and draws the air sideways."


def above_words(plan: Plan) -> str:
    """What the hood above the source does."""
    return f"The opening looks down from {_far(plan)} above the {plan.source.name} and draws the air up."


def around_words(plan: Plan, opening: tuple[float, float], inside: tuple[float, ...], *, own: bool) -> str:
    """What the box round the source does."""
    width, height = (show(side, "length", plan.system) for side in opening)
    box = " by ".join(show(side, "length", plan.system) for side in inside)
    what = f"The {plan.hood.name}, as it is in the file," if own else "A box"
    return f"{what} stands round the {plan.source.name}, {box} inside, open in front over {width} by {height}."


def handbook_words(answer: HoodAnswer, system: str) -> str:
    """The air velocity at the source or through the opening, by the handbook, and what is asked."""
    need = answer.needs[0]
    asked = f"{show(need.capture_velocity, 'velocity', system)} is asked"
    if need.untold:
        return f"The handbook cannot tell: {need.untold}."
    where = f"the far end of the {need.source}" if "far end" in need.place else f"the {need.source}"
    if need.velocity is not None:
        speed = show(need.velocity, "velocity", system)
        if answer.type == "enclosing":
            return f"By the handbook the air goes in through its opening at {speed}; {asked}."
        return f"By the handbook the air at {where} moves at {speed}; {asked}."
    if need.velocity_at_most is not None:
        speed = show(need.velocity_at_most, "velocity", system)
        return f"By the handbook the air at {where} moves at {speed} at most; {asked}."
    return f"The handbook tells no velocity here: {need.basis}."


def left_out_words(workplace: Workplace, kept: set[str]) -> str:
    """What of the file is not in the three, in one sentence."""
    counted = [
        (len(workplace.people), "person", "people"),
        (_gone(workplace.hoods, kept), "other hood", "other hoods"),
        (_gone(workplace.sources, kept), "other source", "other sources"),
        (_gone(workplace.surfaces, kept), "surface", "surfaces"),
    ]
    gone = [f"{count} {one if count == 1 else many}" for count, one, many in counted if count]
    return f"Left out of all three: {', '.join(gone)}." if gone else ""


def where_it_goes(three: Sequence[Placed], told: Mapping[str, Told], system: str) -> str:
    """Where should the hood go? What was found, in one sentence; nothing is judged that was not found."""
    flow = show(three[0].flow, "flow", system)
    return f"With {flow} in each: {'; '.join(_found(one, told.get(one.key), system) for one in three)}."


def computed_words(one: Placed, told: Told, system: str) -> str:
    """What the computed air says of one arrangement; of a box its inward velocity, and no per cent."""
    if one.key == "enclosed":
        inward = one.inward if told.inward is None else told.inward
        spills = f"; {told.spills}" if told.spills else ""
        return f"The computed air goes in through the opening at {show(inward or 0.0, 'velocity', system)}{spills}."
    if not told.told:
        return f"The computed air: {told.claim}."
    far = f"; of what leaves its farthest place {told.farthest}" if told.farthest else ""
    return f"The computed air: {_caught(one, told)}{far}."


def _found(one: Placed, told: Told | None, system: str) -> str:
    if one.key == "enclosed":
        inward = one.inward if told is None or told.inward is None else told.inward
        return f"around it, the air goes in through the opening at {show(inward or 0.0, 'velocity', system)}"
    where = f"{show(one.distance or 0.0, 'length', system)} {one.key} it"
    if told is None:
        return f"{where}, not computed yet"
    return f"{where}, {_caught(one, told) if told.told else told.claim}"


def _caught(one: Placed, told: Told) -> str:
    share = told.shown.replace("> ", "more than ").replace("< ", "less than ")
    share = share if share != told.shown else f"about {share}"
    spread = "" if told.interval == told.shown else f" ({told.interval})"
    return f"{share}{spread} of the {one.workplace.source(one.source).contaminant} is caught"


def _gone(parts: Sequence[Hood | Source | Surface], kept: set[str]) -> int:
    return sum(part.name not in kept for part in parts)


def _far(plan: Plan) -> str:
    return show(plan.distance, "length", plan.system)


def _edge(plan: Plan) -> str:
    return f"the edge of the {plan.source.name}" if plan.work.wide else f"the {plan.source.name}"
