"""What may be claimed of a captured fraction: why no per cent is told."""

from hoodwright.tasks.capturing.refuse import SHROUDS
from hoodwright.tasks.people import in_the_draught, person_between
from hoodwright.tasks.shapes import area_of
from hoodwright.units import show
from hoodwright.workplace.model import CapturingHood, EnclosingHood, Hood, Source, Workplace

HEAVIEST = 1.1  # density of a gas over that of the air
LARGEST = 30e-6  # m
LOW_RISE = 1.0  # m, up to which a plume rises to a hood that is not high
STRONG = 0.5  # m/s: a draught that sheds wakes from benches, hoods and bodies; common practice


def claim_of(hood: Hood, source: Source, workplace: Workplace, flow: float | None = None) -> str | None:
    """Why no per cent may be claimed; None where one may. `flow` [m3/s] is that of the hood, where it is known."""
    if isinstance(hood, EnclosingHood):
        return "an enclosure is judged by the inward velocity of its openings, not by a per cent"
    return (
        _of_people(hood, source, workplace) or _of_source(hood, source, workplace) or _of_draught(hood, workplace, flow)
    )


def _of_draught(hood: Hood, workplace: Workplace, flow: float | None) -> str | None:
    """A draught so strong that wakes decide, which air without friction does not have."""
    told, system = workplace.room.draught, workplace.units
    gust = told.speed + told.wander if told else 0.0
    if gust >= STRONG:
        limit = show(STRONG, "velocity", system)
        return (
            f"draughts reach {show(gust, 'velocity', system)}: from {limit} on, by common practice, wakes of benches, "
            "hoods and bodies decide, which the computed air does not have"
        )
    face = None if flow is None else flow / area_of(hood.opening)
    if face is not None and 0 < face <= gust:
        fast, enters = show(gust, "velocity", system), show(face, "velocity", system)
        return f"draughts reach {fast} and air enters the hood at {enters}: what its rim does to them is not computed"
    return None


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
        return f"particles are thrown or dropped at the {source.name}, and above 30 um they do not follow the air"
    if source.dispersion == "driven" and source.release is None:
        return f"the {source.name} is driven and the file does not tell its stream; give its 'release'"
    if source.heat is not None and hood.at[2] - source.centre[2] > LOW_RISE:
        rise = show(LOW_RISE, "length", workplace.units, 2)
        return f"hot air rises more than {rise} from the {source.name} to the hood"
    if isinstance(hood, CapturingHood) and hood.push is not None:
        return "the jet of the push nozzle is not computed"
    if isinstance(hood, CapturingHood) and hood.form in SHROUDS:
        return "a shroud on a tool is narrower than the computed air can see"
    return None
