"""What no flow of an enclosure makes good, and what takes away the inward flow at its openings."""

from hoodwright.errors import RangeError
from hoodwright.hoods import TOTAL_ENCLOSURE_SHARE, least_opening_distance
from hoodwright.tasks.assessment import SourceNeed
from hoodwright.tasks.enclosing.openings import holds, seen_from, share_open, stands_in
from hoodwright.tasks.hood_shapes import frame_of
from hoodwright.tasks.receiving.canopy.hot import plume_of
from hoodwright.tasks.receiving.canopy.hot_laws import rising_flow
from hoodwright.tasks.receiving.canopy.work import work_of
from hoodwright.tasks.shapes import area_of
from hoodwright.units import show
from hoodwright.workplace.model import EnclosingHood, Source, Workplace

WALK_IN = ("walk-in booth", "spray room", "blast room", "total enclosure")
TOTAL_ENCLOSURE = "total enclosure"
TOWARDS = 0.5  # cosine of 60 degrees


def refusal(hood: EnclosingHood, source: Source, workplace: Workplace) -> str | None:
    """Why no flow of this enclosure can be called enough for a source; None where one can."""
    share = share_open(hood)
    if hood.form == TOTAL_ENCLOSURE and share > TOTAL_ENCLOSURE_SHARE:
        return f"{100 * share:.1f} % of its surface is open, and a total enclosure may have 5 %: close openings first"
    near, least = _kept_away(hood, source), float(least_opening_distance(area_of(hood.opening)))
    if hood.form == TOTAL_ENCLOSURE and near < least * (1 - 1e-9):
        away, asked = (show(length, "length", workplace.units) for length in (max(near, 0.0), least))
        return (
            f"the {source.name} is {away} behind the opening, and a total enclosure keeps four diameters, here {asked}"
        )
    if _throws_out(hood, source):
        return f"the {source.name} throws its stream at the opening: turn it inward, or close that side"
    return None


def disturbance(need: SourceNeed, hood: EnclosingHood, workplace: Workplace, system: str) -> str | None:
    """What takes away the inward flow that face velocity stands for; None where nothing does."""
    if not any(holds(hood, point) for point in workplace.source(need.source).points):
        return None
    draught = workplace.room.draught
    gust = draught.speed + draught.wander if draught else 0.0
    if gust >= need.capture_velocity:
        air, asked = show(gust, "velocity", system), show(need.capture_velocity, "velocity", system)
        return f"draughts reach {air}, the {asked} asked at its openings or more: move it out of the draught"
    person = leaning_in(hood, workplace)
    if person:
        return f"{person} has their head inside: air eddies in front of a body, and brings what is inside to the face"
    return _spills(hood, workplace.source(need.source), workplace, system)


def leaning_in(hood: EnclosingHood, workplace: Workplace) -> str | None:
    """Name of a person whose head is inside an enclosure that nobody should enter; None where there is none."""
    if hood.form in WALK_IN:
        return None
    return next((person.name for person in workplace.people if stands_in(hood, person)), None)


def _kept_away(hood: EnclosingHood, source: Source) -> float:
    """How far behind its main opening the nearest part of a source lies."""
    return min(seen_from(hood, point).behind for point in source.points)


def _spills(hood: EnclosingHood, source: Source, workplace: Workplace, system: str) -> str | None:
    """Whether hot work sends up more than is drawn off, so that warm air fills the top down into the opening."""
    if source.heat is None or hood.intended_flow is None:
        return None
    work, ways = work_of(source), frame_of(hood)
    top = hood.at[2] + sum(side / 2 * abs(way[2]) for side, way in zip(hood.opening.sides, ways, strict=True))
    if top <= work.centre[2]:
        return None
    try:
        risen = rising_flow(source.heat, work, plume_of(source.heat, work, top - work.centre[2], workplace))
    except RangeError:
        return None
    if risen <= hood.intended_flow:
        return None
    much, drawn = show(risen, "flow", system), show(hood.intended_flow, "flow", system)
    return (
        f"{much} of hot air rise from the {source.name} up to the top of the opening and {drawn} are drawn off: the "
        "rest spills out there; draw off more, or lower the opening"
    )


def _throws_out(hood: EnclosingHood, source: Source) -> bool:
    if source.throws is None:
        return False
    return sum(a * b for a, b in zip(source.throws.towards, hood.facing, strict=True)) > TOWARDS
