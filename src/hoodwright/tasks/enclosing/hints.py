"""What would help an enclosure most: a smaller opening, shut doors, deeper work, or more flow."""

import math

from hoodwright.results import Hint
from hoodwright.tasks.enclosing.need import falls_air
from hoodwright.tasks.enclosing.openings import open_area, seen_from
from hoodwright.tasks.hint_tools import Case, down, flow_needed, hint, rounded
from hoodwright.tasks.shapes import area_of
from hoodwright.units import show
from hoodwright.workplace.model import EnclosingHood

DEEP_ENOUGH = 0.15  # m behind the opening (6 in), common practice
SWEPT = ("spray room", "blast room")  # the air must cross the whole section
SMALLEST_SHARE = 0.2  # of the main opening that must stay open for work


def hints(case: Case) -> tuple[Hint, ...]:
    """Hints for the source that asks most of an enclosure."""
    if not isinstance(case.hood, EnclosingHood) or not case.worst.in_range:
        return ()
    found = [_smaller(case, case.hood), _shut(case, case.hood), _deeper(case, case.hood), _more_flow(case)]
    return tuple(one for one in found if one is not None)


def _smaller(case: Case, hood: EnclosingHood) -> Hint | None:
    """How far to lower the main opening for the intended flow to be enough; half, where it is enough already."""
    lower = _lowered(case, hood)
    if lower is None or lower < SMALLEST_SHARE * hood.opening.sides[1]:
        return None
    lower = rounded(lower, "length", case.system, down)
    flow = _with_height(case, hood, lower)
    if flow is None or flow >= case.worst.flow:
        return None
    flow = rounded(flow, "flow", case.system, math.ceil)
    low, high = (show(side, "length", case.system) for side in (lower, hood.opening.sides[1]))
    text = f"with its opening {low} instead of {high} high, {show(flow, 'flow', case.system)} would be enough"
    return hint(case, "smaller opening", text, flow)


def _lowered(case: Case, hood: EnclosingHood) -> float | None:
    """Height of the main opening to try; None where it cannot be lowered."""
    needed, intended = flow_needed(hood, case.workplace), hood.intended_flow
    if needed is None or hood.opening.is_round or hood.form in SWEPT:
        return None
    width, height = hood.opening.sides
    if intended is None or intended >= needed:
        return height / 2
    others = open_area(hood) - area_of(hood.opening)
    enough = (intended - falls_air(hood, case.workplace)) / case.worst.capture_velocity - others
    return enough / width * (1 - 1e-9)


def _with_height(case: Case, hood: EnclosingHood, height: float) -> float | None:
    """Flow needed with the main opening so high; the inside and a stated sill stay as they are."""
    key = "slot" if hood.opening.is_slot else "rectangle"
    opening = hood.opening.model_copy(update={key: (hood.opening.sides[0], height)})
    x, y, z = hood.at
    at = hood.at if hood.sill is None else (x, y, z - (hood.opening.sides[1] - height) / 2)
    changed = hood.model_copy(update={"opening": opening, "inside": hood.box, "at": at})
    return flow_needed(changed, case.workplace)


def _shut(case: Case, hood: EnclosingHood) -> Hint | None:
    """What closing the other openings would save."""
    if not hood.other_openings:
        return None
    flow = flow_needed(hood.model_copy(update={"other_openings": ()}), case.workplace)
    if flow is None or flow >= case.worst.flow:
        return None
    flow = rounded(flow, "flow", case.system, math.ceil)
    names = " and the ".join(other.name for other in hood.other_openings)
    text = f"with the {names} shut or covered, {show(flow, 'flow', case.system)} would be enough"
    return hint(case, "doors shut", text, flow)


def _deeper(case: Case, hood: EnclosingHood) -> Hint | None:
    """Work that is done close behind the opening belongs farther in; the flow stays the same."""
    behind = min(seen_from(hood, point).behind for point in case.workplace.source(case.worst.source).points)
    if behind >= DEEP_ENOUGH * (1 - 1e-9) or hood.box[2] < 2 * DEEP_ENOUGH:
        return None
    flow = rounded(case.worst.flow, "flow", case.system, math.ceil)
    far = show(DEEP_ENOUGH, "length", case.system)
    text = f"work {far} or more behind the opening; the same {show(flow, 'flow', case.system)} then holds it better"
    return hint(case, "deeper", text, flow)


def _more_flow(case: Case) -> Hint | None:
    flow = flow_needed(case.hood, case.workplace)
    if flow is None or (case.hood.intended_flow is not None and case.hood.intended_flow >= flow):
        return None
    flow = rounded(flow, "flow", case.system, math.ceil)
    return hint(
        case, "more flow", f"{show(flow, 'flow', case.system)} through the openings as they are is enough", flow
    )
