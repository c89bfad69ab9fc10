"""Outcomes and sentences of a hood: is what was intended enough, and is it met today?"""

from dataclasses import replace

from hoodwright.results import Outcome, Quantity, Verdict
from hoodwright.tasks.assessment import SourceNeed
from hoodwright.tasks.guide_cautions import ON_TOOL, guide_refusal, unreviewed
from hoodwright.tasks.hood_types import of
from hoodwright.tasks.shapes import within
from hoodwright.tasks.streams import clashes
from hoodwright.tasks.today import ComputedFlow
from hoodwright.units import show
from hoodwright.workplace.model import CapturingHood, FlowReading, Hood, Source, Workplace

GRAVEST_FIRST = (Verdict.SHORT, Verdict.CANNOT_TELL, Verdict.MEETS)


def reading(read: FlowReading | ComputedFlow) -> Quantity:
    """A flow reading, or a flow computed in its place, with its uncertainty in flow units."""
    spread = None if read.uncertainty is None else read.uncertainty * read.flow
    how = read.how if isinstance(read, ComputedFlow) else "read on site" + (f", {read.date}" if read.date else "")
    return Quantity(read.flow, "flow", spread, how)


def is_enough(hood: Hood, needs: tuple[SourceNeed, ...], workplace: Workplace, system: str) -> Outcome:
    """Whether the intended flow is enough for every source; the gravest answer is given."""
    outcomes = [_enough_in_the_room(need, hood, workplace, system) for need in needs]
    worst = min(outcomes, key=lambda outcome: GRAVEST_FIRST.index(outcome.verdict))
    told = refusal(hood, workplace)
    if told and worst.verdict is Verdict.SHORT and not _throws_past(hood, workplace):
        return replace(worst, because=f"{worst.because}. Besides, {told}")
    return Outcome(Verdict.CANNOT_TELL, told) if told else worst


def hints_hold(hood: Hood, needs: tuple[SourceNeed, ...], workplace: Workplace) -> bool:
    """Whether a flow can be promised to be enough: nothing is refused, and no draught or body takes it away."""
    return refusal(hood, workplace) is None and all(
        of(hood).disturbance(need, hood, workplace, "SI") is None for need in needs
    )


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
    read = f"{shown_reading(reading(hood.today), system)} {_was_read(hood.today)}"
    floor = max((need.flow for need in needs if not need.untold), default=0.0)
    needed = f"{show(floor, 'flow', system)} {'is' if _all_in_range(needs) else 'or more is'} needed"
    if intended is not None and today + spread < intended:
        meant, less = show(intended, "flow", system), show(intended - today, "flow", system)
        because = f"{read}, {less} less than the {meant} intended"
        if floor > intended:
            because += f", and {needed}"
        missing = Quantity(max(intended, floor) - today, "flow", spread or None)
        return Outcome(Verdict.SHORT, because + _unsaid(hood.today), missing)
    if today + spread < floor:
        reached = "" if intended is None else f", which reaches the {show(intended, 'flow', system)} intended"
        because = f"{read}{reached}, but {needed}{_unsaid(hood.today)}"
        return Outcome(Verdict.SHORT, because, Quantity(floor - today, "flow", spread or None))
    disturbed = [of(hood).disturbance(need, hood, workplace, system) for need in needs] if intended is None else []
    told = next(filter(None, [refusal(hood, workplace), *disturbed]), None)
    if told:
        return Outcome(Verdict.CANNOT_TELL, f"{read}, but {told}")
    return _reached(hood.today, intended, needs, system)


def _was_read(today: FlowReading | ComputedFlow) -> str:
    return f"is {today.how}" if isinstance(today, ComputedFlow) else "was read"


def _reached(
    today: FlowReading | ComputedFlow, intended: float | None, needs: tuple[SourceNeed, ...], system: str
) -> Outcome:
    read, spread = shown_reading(reading(today), system), today.flow * (today.uncertainty or 0.0)
    read = f"{read} {_was_read(today)}"
    if intended is None and not _all_in_range(needs):
        return Outcome(Verdict.CANNOT_TELL, f"{read}; no intended flow is given to compare it with")
    goal = intended if intended is not None else max(need.flow for need in needs)
    meant = f"{show(goal, 'flow', system)} {'was intended' if intended is not None else 'is needed'}"
    if within(goal, today.flow - spread):
        return Outcome(Verdict.MEETS, f"{read}, {meant}{_unsaid(today)}")
    of_what = "what is computed" if isinstance(today, ComputedFlow) else "the reading"
    return Outcome(Verdict.CANNOT_TELL, f"{read}, {meant}: that lies within the uncertainty of {of_what}")


def _all_in_range(needs: tuple[SourceNeed, ...]) -> bool:
    return all(need.in_range for need in needs)


def shown_reading(read: Quantity, system: str) -> str:
    """A reading with its uncertainty as people say it: 338 m3/h (± 17)."""
    text = show(read.value, "flow", system)
    return text if read.uncertainty is None else f"{text} (±\u2009{show(read.uncertainty, 'flow', system, 2)})"


def sentence(hood: Hood, need: SourceNeed, system: str) -> str:
    """The answer for one hood in a sentence."""
    if need.untold:
        parts = ["has no equation to tell its need"]
    else:
        parts = [f"needs {'' if need.in_range else 'at least '}{show(need.flow, 'flow', system)}"]
    if hood.intended_flow is not None:
        parts.append(f"is meant to get {show(hood.intended_flow, 'flow', system)}")
    if hood.today is not None:
        got = shown_reading(reading(hood.today), system)
        computed = isinstance(hood.today, ComputedFlow)
        parts.append(f"gets {got} as built" if computed else f"got {got} when last read")
    told = " and ".join([", ".join(parts[:-1]), parts[-1]]) if len(parts) > 1 else parts[0]
    return f"{of(hood).head(hood, need, system)} {told}."


def _unsaid(read: FlowReading | ComputedFlow) -> str:
    return "" if read.uncertainty is not None else "; no uncertainty was given with the reading"


def refusal(hood: Hood, workplace: Workplace) -> str | None:
    """Why no flow of this hood can be called enough, whatever the equations say; None where one can."""
    by_stream = refused_stream(hood, workplace)
    if by_stream:
        return by_stream
    for name in hood.serves:
        source = workplace.source(name)
        told = of(hood).refusal(hood, source, workplace) or _flung(hood, source)
        told = told or guide_refusal(hood, source, workplace)
        if told:
            return told
    return None


def refused_stream(hood: Hood, workplace: Workplace) -> str | None:
    """Why no hood at all can be called enough for what it takes: a clash in its ducts, explosible dust unreviewed."""
    for clash in clashes(workplace):
        if hood.name in clash.hoods:
            return f"{clash.words} would share a duct: give each a system of its own"
    for name in hood.serves:
        source = workplace.source(name)
        contaminant = workplace.contaminant(source.contaminant)
        if "explosible dust" in contaminant.hazards and contaminant.reviewed_by is None:
            return f"{contaminant.name} is an explosible dust without a named review ('reviewed_by')"
        told = unreviewed(source, workplace)
        if told:
            return told
    return None


def _enough_in_the_room(need: SourceNeed, hood: Hood, workplace: Workplace, system: str) -> Outcome:
    """The answer of the equations, unless a draught or a person takes away what they suppose."""
    outcome = _enough_for(need, hood.intended_flow, system)
    disturbed = of(hood).disturbance(need, hood, workplace, system)
    if disturbed is None or outcome.verdict is not Verdict.MEETS:
        return outcome
    return Outcome(Verdict.CANNOT_TELL, disturbed)


def _flung(hood: Hood, source: Source) -> str | None:
    """Why a hood that draws does not hold what the file says is flung or falls, whatever release class it names."""
    if not isinstance(hood, CapturingHood) or (hood.form or "").startswith(ON_TOOL):
        return None
    if source.throws is not None or source.wheel is not None:
        return f"the {source.name} throws its stream out: receive or enclose it, a capturing hood does not hold it"
    if source.falls is not None:
        return (
            f"material falls at the {source.name} and drags air along, which no equation of this hood knows: enclose it"
        )
    return None


def _throws_past(hood: Hood, workplace: Workplace) -> bool:
    """Whether a stream is thrown at a hood that draws, where a shortage of flow is beside the point."""
    return hood.type == "capturing" and any(workplace.source(name).dispersion == "thrown" for name in hood.serves)


def _enough_for(need: SourceNeed, intended: float | None, system: str) -> Outcome:
    needed = show(need.flow, "flow", system)
    if need.untold:
        return Outcome(Verdict.CANNOT_TELL, f"{need.source}: {need.untold}")
    if intended is None:
        at_least = "" if need.in_range else "at least "
        return Outcome(Verdict.CANNOT_TELL, f"no intended flow is given; the {need.source} needs {at_least}{needed}")
    if not need.in_range:
        return _enough_by_bound(need, intended, system)
    count = len(need.laws)
    ruling = f"the most demanding of {count} equations" if count > 1 else f"'{need.laws[0].equation}'"
    asked = f"{ruling} asks {needed} for the {need.source}; {show(intended, 'flow', system)} is intended"
    if within(need.flow, intended):
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
