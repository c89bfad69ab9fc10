"""What may be claimed of a captured fraction, and why it may differ from the handbook's answer."""

from hoodwright.results import Outcome, Verdict
from hoodwright.tasks.capturing.refuse import SHROUDS
from hoodwright.tasks.people import in_the_draught, person_between
from hoodwright.workplace.model import CapturingHood, EnclosingHood, Hood, Source, Workplace

HEAVIEST = 1.1  # density of a gas over that of the air
LARGEST = 30e-6  # m
LOW_RISE = 1.0  # m, up to which a plume rises to a hood that is not high
CATCHES = 0.9  # above it a computed answer counts as good, for the comparison with the handbook only


def claim_of(hood: Hood, source: Source, workplace: Workplace) -> str | None:
    """Why no per cent may be claimed; None where one may."""
    if isinstance(hood, EnclosingHood):
        return "an enclosure is judged by the inward velocity of its openings, not by a per cent"
    return _of_people(hood, source, workplace) or _of_source(hood, source, workplace)


def _of_people(hood: Hood, source: Source, workplace: Workplace) -> str | None:
    person = person_between(hood, source, workplace)
    if person:
        return f"{person} stands between the {source.name} and the hood, and bodies leave wakes"
    behind = next((p.name for p in workplace.people if in_the_draught(p, source, workplace)), None)
    return f"{behind} has the draught from behind at the {source.name}: air flows back there" if behind else None


def _of_source(hood: Hood, source: Source, workplace: Workplace) -> str | None:
    heavy = workplace.contaminant(source.contaminant).relative_density
    if heavy is not None and heavy > HEAVIEST:
        return f"{source.contaminant} is {heavy:g} times as heavy as air and sinks"
    grain = max((part.grain for part in (source.throws, source.falls) if part is not None), default=0.0)
    if grain > LARGEST or source.dispersion == "thrown" or source.wheel is not None:
        return f"the {source.name} throws or drops particles, which above 30 um do not follow the air"
    if source.dispersion == "driven" and source.release is None:
        return f"the {source.name} is driven and the file does not tell its stream; give its 'release'"
    if source.heat is not None and hood.at[2] - source.centre[2] > LOW_RISE:
        return f"hot air rises more than 1 m from the {source.name} to the hood"
    if isinstance(hood, CapturingHood) and hood.push is not None:
        return "the jet of the push nozzle is not computed"
    if isinstance(hood, CapturingHood) and hood.form in SHROUDS:
        return "a shroud on a tool is narrower than the computed air can see"
    return None


def difference(low: float, high: float, handbook: Outcome, plume_limited: bool) -> str | None:
    """Why the computed answer and the handbook's differ; None where they do not."""
    if handbook.verdict is Verdict.MEETS and high < CATCHES:
        why = (
            "the stream brings more air than the hood takes"
            if plume_limited
            else ("the equations know neither the draught nor the stream of the source, nor what stands around it")
        )
        return f"the handbook is content, the computed air is not: {why}"
    if handbook.verdict is Verdict.SHORT and low >= CATCHES:
        return (
            "the handbook asks for more, as a margin for draughts that may come; "
            "the computed air knows only the draught of the file"
        )
    return None
