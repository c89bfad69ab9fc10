"""What goes in through each opening of an enclosure, and how the air gets from a hood into its duct."""

from hoodwright.hoods import opening_velocity
from hoodwright.tasks.assessment import Line, OpeningAnswer
from hoodwright.tasks.enclosing.need import falls_air
from hoodwright.tasks.enclosing.openings import open_area
from hoodwright.tasks.hood_entry import duct_of, entry_loss, resistance_line
from hoodwright.tasks.shapes import area_of
from hoodwright.units import show
from hoodwright.workplace.model import EnclosingHood, Hood, Shaped, Workplace

MAIN = "main opening"


def openings_of(hood: Hood, workplace: Workplace, design_flow: float, system: str) -> tuple[OpeningAnswer, ...]:
    """Every opening of an enclosure with its mean inward velocity, the same for all; none for other hoods."""
    if not isinstance(hood, EnclosingHood):
        return ()
    falls, area = falls_air(hood, workplace), open_area(hood)

    def inward(flow: float) -> float:
        return float(opening_velocity(max(0.0, flow - falls), area))

    designed, today = inward(design_flow), inward(hood.today.flow) if hood.today else None
    main = OpeningAnswer(MAIN, _size(hood.opening, system), 1, area_of(hood.opening), designed, today)
    others = (
        OpeningAnswer(other.name, _size(other, system), other.count, area_of(other), designed, today)
        for other in hood.other_openings
    )
    return (main, *others)


def entry_lines_of(hood: Hood, workplace: Workplace, flow: float) -> tuple[Line, ...]:
    """What leads to the entry loss of a hood: slots, plenum, and a filter in the hood; none without a duct."""
    duct = duct_of(hood, workplace)
    if duct is None:
        return ()
    lines = entry_loss(hood, duct, workplace).lines
    if hood.filter is None:
        return lines
    return (*lines, resistance_line(f"filter in {hood.name}", hood.filter, flow))


def _size(section: Shaped, system: str) -> str:
    width, height = (show(side, "length", system) for side in section.sides)
    return f"round {width}" if section.is_round else f"{width} by {height}"
