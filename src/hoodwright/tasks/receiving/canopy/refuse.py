"""When a canopy cannot be called enough, and what takes away the still air that its equations suppose."""

import math

from hoodwright.errors import RangeError
from hoodwright.hoods import draught_offset
from hoodwright.tasks.assessment import SourceNeed
from hoodwright.tasks.guide_cautions import guide_refusal
from hoodwright.tasks.people import BODY
from hoodwright.tasks.receiving.canopy.hot import Plume, plume_of
from hoodwright.tasks.receiving.canopy.work import Work, height_above, overhang, work_of
from hoodwright.units import show
from hoodwright.workplace.model import ReceivingHood, Source, Workplace

REFUSED = {
    "carcinogen": "a carcinogen",
    "asthmagen": "an asthmagen",
    "asbestos": "asbestos",
    "isocyanate": "isocyanates",
}


def refusal(hood: ReceivingHood, source: Source, workplace: Workplace) -> str | None:
    """Why no flow of a canopy can be called enough: grave hazards, a head in the stream, a thrown stream."""
    hazards = workplace.contaminant(source.contaminant).hazards
    grave = next((hazard for hazard in hazards if hazard in REFUSED), None)
    if grave:
        return (
            f"the {source.name} gives off {REFUSED[grave]}: a canopy draws it past the face of whoever bends over the "
            "work; enclose it, or draw it off at the work"
        )
    told = guide_refusal(hood, source, workplace)
    if told:
        return told
    person = leaning(hood, source, workplace)
    if person:
        return f"{person} works between the {source.name} and the canopy, in the air that rises to it"
    if source.tank is not None and source.tank.hazard == "A":
        name = source.name
        return f"the {name} is a tank of hazard A, for which a canopy is not used; draw along its sides, or cover it"
    if source.falls is not None:
        return (
            f"material falls at the {source.name} and drags air along, which no equation of a canopy knows: enclose it"
        )
    if source.dispersion == "thrown" or source.throws is not None:
        return f"the {source.name} throws its stream out: a canopy does not hold it, receive or enclose it"
    return None


def disturbance(need: SourceNeed, hood: ReceivingHood, workplace: Workplace, system: str) -> str | None:
    """What takes away what the equations suppose: a canopy too small, or a draught; None where nothing does."""
    source = workplace.source(need.source)
    work = work_of(source)
    if need.untold:
        return None
    short = overhang(hood, work.edges)
    if short < -1e-9:
        return f"the {source.name} reaches {show(-short, 'length', system)} past the rim of the canopy: make it larger"
    plume = hot_plume(hood, source, workplace)
    if plume is None:
        return _draught_at_cold_work(need, workplace, system)
    return _plume_misses(hood, source, work, plume, workplace, system)


def hot_plume(hood: ReceivingHood, source: Source, workplace: Workplace) -> Plume | None:
    """The plume of hot work at the canopy; None where the work is cold or nothing can be told."""
    work = work_of(source)
    height = height_above(hood, work)
    if source.heat is None or height <= 0:
        return None
    try:
        return plume_of(source.heat, work, height, workplace)
    except RangeError:
        return None


def plume_overhang(hood: ReceivingHood, work: Work, plume: Plume) -> float:
    """How far the canopy reaches past the plume where they meet."""
    return overhang(hood, work.edges, (plume.width - work.short_side) / 2)


def drift(plume: Plume, workplace: Workplace) -> float:
    """How far draughts carry the plume aside before it meets the canopy."""
    draught = workplace.room.draught
    gust = draught.speed + draught.wander if draught else 0.0
    return float(draught_offset(gust, plume.height, plume.velocity))


def leaning(hood: ReceivingHood, source: Source, workplace: Workplace) -> str | None:
    """Name of a person whose head is between the work and its canopy; None where nobody's is."""
    work = work_of(source)
    xs, ys = ([point[i] for point in work.edges] for i in (0, 1))
    for person in workplace.people:
        x, y = person.at[0], person.at[1]
        aside = math.hypot(max(min(xs) - x, 0, x - max(xs)), max(min(ys) - y, 0, y - max(ys)))
        if aside < BODY and work.centre[2] < person.breathing_height:
            return person.name
    return None


def _draught_at_cold_work(need: SourceNeed, workplace: Workplace, system: str) -> str | None:
    draught = workplace.room.draught
    gust = draught.speed + draught.wander if draught else 0.0
    if gust < need.capture_velocity:
        return None
    air, asked = show(gust, "velocity", system), show(need.capture_velocity, "velocity", system)
    return f"draughts reach {air}, the {asked} asked at the open sides of the canopy or more: close sides, or shield it"


def _plume_misses(
    hood: ReceivingHood, source: Source, work: Work, plume: Plume, workplace: Workplace, system: str
) -> str | None:
    spare = plume_overhang(hood, work, plume)
    if spare < -1e-9:
        wide, short = (show(length, "length", system) for length in (plume.width, -spare))
        return (
            f"the plume of the {source.name} is {wide} wide where it meets the canopy and reaches {short} past its "
            "rim: make it larger, or hang it lower"
        )
    aside = drift(plume, workplace)
    if aside > spare:
        moved, left = show(aside, "length", system, 2), show(spare, "length", system, 2)
        return (
            f"draughts carry the plume of the {source.name} {moved} aside, and the canopy reaches {left} past it: "
            "shield it, or make it larger"
        )
    return None
