"""What no flow of a capturing hood makes good, and what takes away the still air that its equations suppose."""

from hoodwright.tasks.assessment import SourceNeed
from hoodwright.tasks.capturing.planes import screen_between
from hoodwright.tasks.people import in_the_draught, person_between
from hoodwright.units import show
from hoodwright.workplace.model import CapturingHood, Source, Workplace

SHROUDS = ("on-tool grinder", "on-tool sander")  # they enclose what the tool throws


def refusal(hood: CapturingHood, source: Source, workplace: Workplace) -> str | None:
    """Why no flow of this hood can be called enough for a source; None where one can."""
    if source.dispersion == "thrown" and hood.form not in SHROUDS:
        return f"the {source.name} throws its stream out: receive or enclose it, a capturing hood does not hold it"
    if "asbestos" in workplace.contaminant(source.contaminant).hazards:
        return "asbestos is licensed work in an enclosure of its own: an open hood is not enough for it"
    return None


def disturbance(need: SourceNeed, hood: CapturingHood, workplace: Workplace, system: str) -> str | None:
    """What takes away the still, open air that the equations suppose; None where nothing does."""
    draught = workplace.room.draught
    gust = draught.speed + draught.wander if draught else 0.0
    if gust >= need.capture_velocity:
        air, asked = show(gust, "velocity", system), show(need.capture_velocity, "velocity", system)
        return f"draughts reach {air}, the {asked} asked at the {need.source} or more: shield it or enclose it"
    source = workplace.source(need.source)
    person = person_between(hood, source, workplace)
    if person:
        return f"{person} stands between the {need.source} and the hood, in the air that is drawn past"
    return _in_the_way(hood, source, workplace)


def _in_the_way(hood: CapturingHood, source: Source, workplace: Workplace) -> str | None:
    """A plate between source and hood, hot air that rises past it, or someone whose back is in the draught."""
    screen = screen_between(hood, source.farthest_from(hood.at), workplace)
    if screen:
        return f"the {screen} stands between the {source.name} and the hood"
    if source.heat is not None:
        return f"hot air rises from the {source.name} past the hood, whose equations suppose still air: enclose it"
    behind = next((person.name for person in workplace.people if in_the_draught(person, source, workplace)), None)
    if behind:
        return f"{behind} has the draught from behind at the {source.name}: air flows back towards their face there"
    return None
