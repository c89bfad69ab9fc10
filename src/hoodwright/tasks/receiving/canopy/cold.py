"""Canopies over cold work: air must flow in through the open sides at the capture velocity."""

from hoodwright.hoods import cold_canopy_flow
from hoodwright.tasks.assessment import LawNeed, Line
from hoodwright.tasks.lines import digits
from hoodwright.tasks.receiving.canopy.work import Work, rim_perimeter
from hoodwright.workplace.model import ReceivingHood

SIDES = {
    4: ("canopy with four open sides", "Q = 1.4 P D V", "exam-equations, canopy hood"),
    3: ("canopy with three open sides", "Q = 1.4 (P - W) D V, a shorter side closed", "common-practice, our reading"),
    2: ("canopy with two open sides", "Q = (L + W) D V", "canopy-hot, sides closed, from memory"),
}


def cold_law(hood: ReceivingHood, work: Work, height: float, velocity: float) -> LawNeed:
    """The equation of a canopy over cold work, by its open sides."""
    equation, formula, source = SIDES[hood.open_sides]
    length, written = _open_length(hood, work)
    flow = float(cold_canopy_flow(velocity, length, height, open_sides=hood.open_sides))
    factor = "" if hood.open_sides == 2 else "1.4 x "
    filled = f"{written}: {factor}{digits(length)} x {digits(height)} x {digits(velocity)} = {digits(flow)} m3/s"
    reach = "cold work, no cross-draught; the height D is from the work to the rim"
    return LawNeed(equation, flow, Line(formula, filled, source), reach)


def _open_length(hood: ReceivingHood, work: Work) -> tuple[float, str]:
    """Length of the open sides together, and how it was found; round work with closed sides counts as square."""
    whose = "of the rim, since the work is a point" if work.is_point else "of the work"
    perimeter = rim_perimeter(hood) if work.is_point else work.perimeter
    if hood.open_sides == 4:
        return perimeter, f"P {whose} {digits(perimeter)} m"
    long_side, short_side = (work.long_side, work.short_side)
    if work.is_point:
        long_side, short_side = max(hood.opening.sides), min(hood.opening.sides)
    length = long_side + short_side + (long_side if hood.open_sides == 3 else 0.0)
    return length, f"open sides {whose} {digits(length)} m"
