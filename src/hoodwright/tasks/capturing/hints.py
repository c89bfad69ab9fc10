"""What would help a hood most: closer, turned, flanged, a plate, another hood, or more flow, each with what it takes.

A hint is true for every source that the hood serves, and its numbers are rounded to the side that keeps it true.
"""

import math
from collections.abc import Callable

import numpy as np

from hoodwright.hoods.centreline import full_flange_width
from hoodwright.results import Hint
from hoodwright.tasks.capturing.need import farthest_place, looks_away, slot_axis
from hoodwright.tasks.capturing.other_hoods import cabinet, on_the_tool, plate
from hoodwright.tasks.capturing.planes import rests_on
from hoodwright.tasks.capturing.tank_advice import at_a_tank, tank_hints
from hoodwright.tasks.hint_tools import TOO_FAST, Case, down, flow_needed, hint, rounded, target_of
from hoodwright.tasks.hood_shapes import plus
from hoodwright.tasks.need import needs_of
from hoodwright.tasks.shapes import area_of, has_full_flange
from hoodwright.units import show
from hoodwright.workplace.model import CapturingHood, Hood, Source

NEAREST = 0.02
HALVINGS = 40


def hints(case: Case) -> tuple[Hint, ...]:
    """Hints for the source that asks most of a capturing hood."""
    found = [
        *([] if at_a_tank(case.worst) else [_turned(case), _closer(case), plate(case)]),
        *tank_hints(case),
        _flanged(case),
        cabinet(case),
        on_the_tool(case),
        _more_flow(case),
    ]
    return tuple(one for one in found if one is not None)


def moved_hood(hood: Hood, target: tuple[float, float, float], distance: float) -> Hood:
    """The hood moved along the line to a source until it is `distance` away."""
    line = np.subtract(hood.at, target)
    length = float(np.linalg.norm(line))
    unit = line / length if length > 1e-9 else -np.asarray(hood.facing)
    at = tuple(float(x) for x in np.asarray(target) + unit * distance)
    return hood.model_copy(update={"at": at})


def advanced_hood(hood: Hood, source: Source, distance: float) -> Hood | None:
    """The hood moved along its axis until the source is `distance` away, so that a slot or a bench keeps its line."""
    _, place = farthest_place(hood, source)
    ahead, aside = place.distance * math.cos(place.off_axis), place.distance * math.sin(place.off_axis)
    if distance < aside:
        return None
    step = ahead - math.sqrt(distance**2 - aside**2)
    return hood.model_copy(update={"at": plus(hood.at, (hood.facing, step))})


def _closer(case: Case) -> Hint | None:
    if looks_away(case.worst.off_axis) or case.worst.distance <= NEAREST:
        return None
    target, source = target_of(case), case.workplace.source(case.worst.source)
    on_its_axis = slot_axis(case.hood) is not None or bool(rests_on(case.hood, source.points, case.workplace))

    def flow_at(distance: float) -> float | None:
        if not on_its_axis:
            return flow_needed(moved_hood(case.hood, target, distance), case.workplace)
        moved = advanced_hood(case.hood, source, distance)
        return None if moved is None else flow_needed(moved, case.workplace)

    intended, needed = case.hood.intended_flow, flow_needed(case.hood, case.workplace)
    if intended is None or (needed is not None and intended >= needed):
        return _half_way(case, flow_at)
    return _near_enough(case, flow_at, intended)


def _half_way(case: Case, flow_at: Callable[[float], float | None]) -> Hint | None:
    """What half the distance would save, where the flow is enough or not yet chosen."""
    distance = rounded(case.worst.distance / 2, "length", case.system, down)
    flow = flow_at(distance)
    if flow is None or flow >= case.worst.flow:
        return None
    flow = rounded(flow, "flow", case.system, math.ceil)
    where, there = show(distance, "length", case.system), show(flow, "flow", case.system)
    return hint(case, "closer", f"at {where} from the {case.worst.source}, {there} would be enough", flow)


def _near_enough(case: Case, flow_at: Callable[[float], float | None], intended: float) -> Hint | None:
    """How close the hood must come for the intended flow to be enough."""
    distance = _farthest_enough(flow_at, intended, case.worst.distance)
    if distance is None:
        return None
    where = show(rounded(distance, "length", case.system, down), "length", case.system)
    there = f"the intended {show(intended, 'flow', case.system)}"
    return hint(case, "closer", f"at {where} from the {case.worst.source}, {there} would be enough", intended)


def _farthest_enough(flow_at: Callable[[float], float | None], flow: float, distance: float) -> float | None:
    """Greatest distance at which the flow is enough, to the millimetre below."""
    near, far = NEAREST, distance
    needed = flow_at(near)
    if needed is None or needed > flow:
        return None
    for _ in range(HALVINGS):
        middle = (near + far) / 2
        needed = flow_at(middle)
        near, far = (middle, far) if needed is not None and needed <= flow else (near, middle)
    return math.floor(near * 1000) / 1000


def _flanged(case: Case) -> Hint | None:
    if not isinstance(case.hood, CapturingHood) or has_full_flange(case.hood) or not case.worst.in_range:
        return None
    width = rounded(float(full_flange_width(area_of(case.hood.opening))), "length", case.system, math.ceil)
    changed = case.hood.model_copy(update={"flange": width})
    flow = flow_needed(changed, case.workplace)
    if flow is None or flow >= case.worst.flow:
        return None
    flow = rounded(flow, "flow", case.system, math.ceil)
    wide, needed = show(width, "length", case.system), show(flow, "flow", case.system)
    text = f"with a flange {wide} wide all round, {needed} would be enough at the same place"
    return hint(case, "flange", text, flow, changed)


def _turned(case: Case) -> Hint | None:
    has_table = isinstance(case.hood, CapturingHood) and case.hood.form is not None
    if has_table or not looks_away(case.worst.off_axis) or not case.worst.untold:
        return None
    line = np.subtract(target_of(case), case.hood.at)
    facing = tuple(float(x) for x in line / np.linalg.norm(line))
    flow = flow_needed(case.hood.model_copy(update={"facing": facing}), case.workplace)
    if flow is None:
        return None
    flow = rounded(flow, "flow", case.system, math.ceil)
    text = f"turned to look at the {case.worst.source}, {show(flow, 'flow', case.system)} would be enough"
    return hint(case, "turn", text, flow)


def _more_flow(case: Case) -> Hint | None:
    needs = needs_of(case.hood, case.workplace)
    bounds = [need.flow if need.in_range else need.bound.most for need in needs]
    asked = [flow for flow in bounds if flow is not None]
    if any(need.untold for need in needs) or len(asked) < len(needs):
        return None
    flow = max(asked)
    if case.hood.intended_flow is not None and case.hood.intended_flow >= flow:
        return None
    flow = rounded(flow, "flow", case.system, math.ceil)
    fastest = case.effect_at(case.hood, flow).fastest
    if fastest is not None and fastest[1] > TOO_FAST:
        return None
    certain = all(need.in_range for need in needs)
    enough = "is enough" if certain else "is enough in still, open air, and far more than a closer hood needs"
    return hint(case, "more flow", f"{show(flow, 'flow', case.system)} where it is now {enough}", flow)
