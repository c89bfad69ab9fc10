"""Beginning of the sentence about a capturing hood."""

from hoodwright.hoods.centreline import dallavalle_reach, equal_area_diameter
from hoodwright.tasks.assessment import SourceNeed
from hoodwright.tasks.shapes import area_of
from hoodwright.units import show
from hoodwright.workplace.model import CapturingHood


def head(hood: CapturingHood, need: SourceNeed, system: str) -> str:
    """The sentence up to its verb: 'The bench nozzle, 100 mm from the joint,'."""
    if need.untold:
        return f"The {hood.name} does not look at the {need.source}, {show(need.distance, 'length', system)} away: it"
    if need.in_range:
        return f"The {hood.name}, {need.place} the {need.source},"
    reach = dallavalle_reach(equal_area_diameter(area_of(hood.opening)))
    why = "too far for any equation" if need.distance > reach else "where no equation holds"
    return f"The {hood.name} is {need.place} the {need.source}, {why}: it"
