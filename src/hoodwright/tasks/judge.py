"""Outcomes and sentences of a hood: is what was intended enough, and is it met today?"""

from dataclasses import replace

from hoodwright.hoods.centreline import dallavalle_reach, equal_area_diameter
from hoodwright.results import Outcome, Quantity, Verdict
from hoodwright.tasks.assessment import SourceNeed
from hoodwright.tasks.laws import area_of
from hoodwright.tasks.need import looks_away
from hoodwright.tasks.people import person_between
from hoodwright.tasks.streams import clashes
from hoodwright.units import show
from hoodwright.workplace.model import FlowReading, Hood, Workplace

GRAVEST_FIRST = (Verdict.SHORT, Verdict.CANNOT_TELL, Verdict.MEETS)


def reading(read: FlowReading) -> Quantity:
    """A flow reading with its uncertainty in flow units."""
    spread = None if read.uncertainty is None else read.uncertainty * read.flow
    return Quantity(read.flow, "flow", spread, "read on site" + (f", {read.date}" if read.date else ""))


def is_enough(hood: Hood, needs: tuple[SourceNeed, ...], workplace: Workplace, system: str) -> Outcome:
    """Whether the intended flow is enough for every source; the gravest answer is given."""
    outcomes = [_enough_in_the_room(need, hood, workplace, system) for need in needs]
    worst = min(outcomes, key=lambda outcome: GRAVEST_FIRST.index(outcome.verdict))
    told = refusal(hood, workplace)
    thrown = any(workplace.source(name).dispersion == "thrown" for name in hood.serves)
    if told and worst.verdict is Verdict.SHORT and not thrown:
        return replace(worst, because=f"{worst.because}. Besides, {told}")
    return Outcome(Verdict.CANNOT_TELL, told) if told else worst


def hints_hold(hood: Hood, needs: tuple[SourceNeed, ...], workplace: Workplace) -> bool:
    """Whether a flow can be promised to be enough: nothing is refused, and no draught or body takes it away."""
    return refusal(hood, workplace) is None and all(_disturbed(need, hood, workplace, "SI") is None for need in needs)


def gravest(hood: Hood, needs: tuple[SourceNeed, ...], system: str) -> SourceNeed:
    """The source that decides the answer: the gravest outcome, then the greatest need."""
    verdicts = {need.source: _enough_for(need, hood.intended_flow, system).verdict for need in needs}
    return min(needs, key=lambda need: (GRAVEST_FIRST.index(verdicts[need.source]), -need.flow))


def is_met(hood: Hood, needs: tuple[SourceNeed, ...], workplace: Workplace, system: str) -> Outcome:
    """Whether today's flow reaches what was intended and what is needed, within the uncertainty of the reading."""
    if hood.today is None:
        return Outcome(Verdict.CANNOT_TELL, "no flow of today is given; read it on site and add 'today'")
    today, intended = hood.today.flow, hood.intended_flow
    spread = today * (hood.today.uncertainty or 0.0)
    read = shown_reading(reading(hood.today), system)
    floor = max((need.flow for need in needs if not looks_away(need.off_axis)), default=0.0)
    needed = f"{show(floor, 'flow', system)} {'is' if _all_in_range(needs) else 'or more is'} needed"
    if intended is not None and today + spread < intended:
        meant, less = show(intended, "flow", system), show(intended - today, "flow", system)
        because = f"{read} was read, {less} less than the {meant} intended"
        if floor > intended:
            because += f", and {needed}"
        missing = Quantity(max(intended, floor) - today, "flow", spread or None)
        return Outcome(Verdict.SHORT, because + _unsaid(hood.today), missing)
    if today + spread < floor:
        reached = "" if intended is None else f", which reaches the {show(intended, 'flow', system)} intended"
        because = f"{read} was read{reached}, but {needed}{_unsaid(hood.today)}"
        return Outcome(Verdict.SHORT, because, Quantity(floor - today, "flow", spread or None))
    disturbed = [_disturbed(need, hood, workplace, system) for need in needs] if intended is None else []
    told = next(filter(None, [refusal(hood, workplace), *disturbed]), None)
    if told:
        return Outcome(Verdict.CANNOT_TELL, f"{read} was read, but {told}")
    return _reached(hood.today, intended, needs, system)


def _reached(today: FlowReading, intended: float | None, needs: tuple[SourceNeed, ...], system: str) -> Outcome:
    read, spread = shown_reading(reading(today), system), today.flow * (today.uncertainty or 0.0)
    if intended is None and not _all_in_range(needs):
        return Outcome(Verdict.CANNOT_TELL, f"{read} was read; no intended flow is given to compare it with")
    goal = intended if intended is not None else max(need.flow for need in needs)
    meant = f"{show(goal, 'flow', system)} {'was intended' if intended is not None else 'is needed'}"
    if today.flow - spread >= goal:
        return Outcome(Verdict.MEETS, f"{read} was read, {meant}{_unsaid(today)}")
    return Outcome(Verdict.CANNOT_TELL, f"{read} was read, {meant}: that lies within the uncertainty of the reading")


def _all_in_range(needs: tuple[SourceNeed, ...]) -> bool:
    return all(need.in_range for need in needs)


def shown_reading(read: Quantity, system: str) -> str:
    """A reading with its uncertainty as people say it: 338 m3/h (± 17)."""
    text = show(read.value, "flow", system)
    return text if read.uncertainty is None else f"{text} (±\u2009{show(read.uncertainty, 'flow', system, 2)})"


def sentence(hood: Hood, need: SourceNeed, system: str) -> str:
    """The answer for one hood in a sentence."""
    distance = show(need.distance, "length", system)
    if looks_away(need.off_axis):
        head = f"The {hood.name} does not look at the {need.source}, {distance} away: it"
        parts = ["has no equation to tell its need"]
    elif need.in_range:
        head = f"The {hood.name}, {distance} from the {need.source},"
        parts = [f"needs {show(need.flow, 'flow', system)}"]
    else:
        reach = dallavalle_reach(equal_area_diameter(area_of(hood.opening)))
        why = "too far for any equation" if need.distance > reach else "where no equation holds"
        head = f"The {hood.name} is {distance} from the {need.source}, {why}: it"
        parts = [f"needs at least {show(need.flow, 'flow', system)}"]
    if hood.intended_flow is not None:
        parts.append(f"is meant to get {show(hood.intended_flow, 'flow', system)}")
    if hood.today is not None:
        parts.append(f"got {shown_reading(reading(hood.today), system)} when last read")
    told = " and ".join([", ".join(parts[:-1]), parts[-1]]) if len(parts) > 1 else parts[0]
    return f"{head} {told}."


def _unsaid(read: FlowReading) -> str:
    return "" if read.uncertainty is not None else "; no uncertainty was given with the reading"


def refusal(hood: Hood, workplace: Workplace) -> str | None:
    """Why no flow of this hood can be called enough, whatever the equations say; None where one can."""
    for clash in clashes(workplace):
        if hood.name in clash.hoods:
            return f"{clash.words} would share a duct: give each a system of its own"
    for name in hood.serves:
        source = workplace.source(name)
        contaminant = workplace.contaminant(source.contaminant)
        if source.dispersion == "thrown":
            return f"the {name} throws its stream out: receive or enclose it, a capturing hood does not hold it"
        if "explosible dust" in contaminant.hazards and contaminant.reviewed_by is None:
            return f"{contaminant.name} is an explosible dust without a named review ('reviewed_by')"
    return None


def _enough_in_the_room(need: SourceNeed, hood: Hood, workplace: Workplace, system: str) -> Outcome:
    """The answer of the equations, unless a draught or a person takes away what they suppose."""
    outcome = _enough_for(need, hood.intended_flow, system)
    disturbed = _disturbed(need, hood, workplace, system)
    if disturbed is None or outcome.verdict is not Verdict.MEETS:
        return outcome
    return Outcome(Verdict.CANNOT_TELL, disturbed)


def _disturbed(need: SourceNeed, hood: Hood, workplace: Workplace, system: str) -> str | None:
    """What takes away the still, open air that the equations suppose; None where nothing does."""
    draught = workplace.room.draught
    gust = draught.speed + draught.wander if draught else 0.0
    if gust >= need.capture_velocity:
        air, asked = show(gust, "velocity", system), show(need.capture_velocity, "velocity", system)
        return f"draughts reach {air}, the {asked} asked at the {need.source} or more: shield it or enclose it"
    person = person_between(hood, workplace.source(need.source), workplace)
    if person:
        return f"{person} stands between the {need.source} and the hood, in the air that is drawn past"
    return None


def _enough_for(need: SourceNeed, intended: float | None, system: str) -> Outcome:
    needed = show(need.flow, "flow", system)
    if looks_away(need.off_axis):
        return Outcome(Verdict.CANNOT_TELL, f"{need.source}: {need.bound.why}")
    if intended is None:
        at_least = "" if need.in_range else "at least "
        return Outcome(Verdict.CANNOT_TELL, f"no intended flow is given; the {need.source} needs {at_least}{needed}")
    if not need.in_range:
        return _enough_by_bound(need, intended, system)
    count = len(need.laws)
    ruling = f"the most demanding of {count} equations" if count > 1 else f"the equation {need.laws[0].equation}"
    asked = f"{ruling} asks {needed} for the {need.source}; {show(intended, 'flow', system)} is intended"
    if intended >= need.flow:
        return Outcome(Verdict.MEETS, asked)
    short = need.flow - intended
    return Outcome(Verdict.SHORT, f"by {show(short, 'flow', system)}: {asked}", Quantity(short, "flow"))


def _enough_by_bound(need: SourceNeed, intended: float, system: str) -> Outcome:
    bound, meant = need.bound, show(intended, "flow", system)
    least = show(bound.least, "flow", system)
    if intended < bound.least:
        short = bound.least - intended
        because = (
            f"by at least {show(short, 'flow', system)}: the {need.source} lies outside the equations' range, "
            f"where {least} is needed at least; {meant} is intended"
        )
        return Outcome(Verdict.SHORT, because, Quantity(short, "flow"))
    outside = f"the {need.source} lies outside the equations' range"
    most = "an unknown flow" if bound.most is None else show(bound.most, "flow", system)
    if bound.most is not None and intended >= bound.most:
        because = f"{outside}, but {most} is enough there in still, open air; {meant} is intended"
        return Outcome(Verdict.MEETS, because)
    return Outcome(Verdict.CANNOT_TELL, f"{outside}; it needs between {least} and {most}, {meant} is intended")
