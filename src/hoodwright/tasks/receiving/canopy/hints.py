"""What would help a canopy most: lower, fewer open sides, larger, a booth or a hood at the side, or more flow.

A hint about the canopy is given only where the changed canopy is refused and disturbed by nothing, and holds for every
source it serves. The other two say what another hood would take.
"""

import math
from typing import cast

from hoodwright import hoods
from hoodwright.results import Hint
from hoodwright.tasks.hint_tools import Case, down, flow_needed, hint, rounded
from hoodwright.tasks.need import needs_of
from hoodwright.tasks.receiving.canopy.cautions import COLD_OVERHANG
from hoodwright.tasks.receiving.canopy.hot import is_low
from hoodwright.tasks.receiving.canopy.refuse import disturbance, hot_plume, refusal
from hoodwright.tasks.receiving.canopy.work import Work, height_above, overhang, work_of
from hoodwright.tasks.release import capture_velocity_of
from hoodwright.units import show
from hoodwright.workplace.model import ReceivingHood, Source

LOWEST = 0.2  # m above the work, below which nobody can work
BOOTH_VELOCITY = 0.51  # m/s (100 fpm) through the open side, at least
GAP = 0.05  # m, from a hood at the side to the work


def hints(case: Case) -> tuple[Hint, ...]:
    """Hints for the source that asks most of a canopy."""
    found = (_larger(case), _lower(case), _fewer_sides(case), _booth(case), _at_the_side(case), _more_flow(case))
    return tuple(one for one in found if one is not None)


def _canopy(case: Case) -> ReceivingHood:
    return cast(ReceivingHood, case.hood)


def _source(case: Case) -> Source:
    return case.workplace.source(case.worst.source)


def _flow_of(case: Case, hood: ReceivingHood) -> float | None:
    """Flow that is enough for every source of a changed canopy; None where nothing can be promised."""
    sources = [case.workplace.source(name) for name in hood.serves]
    if any(source.wheel is not None or refusal(hood, source, case.workplace) for source in sources):
        return None
    needs = needs_of(hood, case.workplace)
    if any(disturbance(need, hood, case.workplace, case.system) for need in needs):
        return None
    return flow_needed(hood, case.workplace)


def _stands(case: Case) -> bool:
    """Whether the canopy as it is can be called enough at some flow."""
    return _flow_of(case, _canopy(case)) is not None


def _less(case: Case, changed: ReceivingHood) -> float | None:
    """The flow of a changed canopy, to the digits shown, where it helps."""
    flow = _flow_of(case, changed)
    if flow is None or (_stands(case) and flow >= case.worst.flow):
        return None
    return rounded(flow, "flow", case.system, math.ceil)


def _lower(case: Case) -> Hint | None:
    """Half the height; over hot work as low as a low canopy may hang, and then of the size that it needs there."""
    if case.worst.untold:
        return None
    work, height = work_of(_source(case)), case.worst.distance
    hot = _source(case).heat is not None
    low = float(hoods.low_canopy_reach(work.short_side)) if hot and not is_low(work, height) else height / 2
    low = rounded(low, "length", case.system, down)
    if not LOWEST <= low < height:
        return None
    x, y, z = _canopy(case).at
    changed = _canopy(case).model_copy(update={"at": (x, y, z - height + low)})
    smaller = _low_opening(case, changed, work) if hot else changed
    flow = _less(case, smaller)
    if flow is None:
        return None
    where, there = show(low, "length", case.system), show(flow, "flow", case.system)
    size = f" and {_size_of(smaller, case.system)}" if hot else ""
    return hint(case, "lower", f"{where} above the {case.worst.source}{size}, {there} would be enough", flow, smaller)


def _low_opening(case: Case, hood: ReceivingHood, work: Work) -> ReceivingHood:
    """The canopy with the published size of a low one, placed over the middle of the work."""
    low, high = (tuple(pick(p[i] for p in work.edges) for i in (0, 1)) for pick in (min, max))
    sides = [b - a for a, b in zip(low, high, strict=True)]
    if hood.opening.is_round:
        sides = [work.long_side if work.is_round else math.hypot(*sides)]
    grown = [rounded(side + hoods.receiving.LOW_LARGER, "length", case.system, math.ceil) for side in sides]
    at = (work.centre[0], work.centre[1], hood.at[2])
    return _resized(hood, grown).model_copy(update={"at": at, "along": None})


def _resized(hood: ReceivingHood, sides: list[float]) -> ReceivingHood:
    shape = {"round": sides[0]} if hood.opening.is_round else {"rectangle": tuple(sides), "slot": None}
    return hood.model_copy(update={"opening": hood.opening.model_copy(update=shape)})


def _size_of(hood: ReceivingHood, system: str) -> str:
    sides = [show(side, "length", system) for side in hood.opening.sides]
    return f"{sides[0]} across" if hood.opening.is_round else " by ".join(sides)


def _fewer_sides(case: Case) -> Hint | None:
    if _canopy(case).open_sides == 2 or _source(case).heat is not None:
        return None
    flow = _less(case, _canopy(case).model_copy(update={"open_sides": 2}))
    if flow is None:
        return None
    text = f"with curtains or walls on all but two sides, {show(flow, 'flow', case.system)} would be enough"
    return hint(case, "close sides", text, flow)


def _larger(case: Case) -> Hint | None:
    """A canopy of the published size, where the present one does not cover the work, its plume or its drift."""
    if _stands(case) or case.worst.untold:
        return None
    changed = _enlarged(case)
    flow = None if changed is None else _flow_of(case, changed)
    if changed is None or flow is None:
        return None
    flow = rounded(flow, "flow", case.system, math.ceil)
    text = f"made larger, {_size_of(changed, case.system)}, {show(flow, 'flow', case.system)} would be enough"
    return hint(case, "larger", text, flow, changed)


def _enlarged(case: Case) -> ReceivingHood | None:
    hood, source = _canopy(case), _source(case)
    work = work_of(source)
    missing = _wanted_overhang(case, source, work) - overhang(hood, work.edges)
    if missing <= 0:
        return None
    grown = [rounded(side + 2 * missing, "length", case.system, math.ceil) for side in hood.opening.sides]
    return _resized(hood, grown)


def _wanted_overhang(case: Case, source: Source, work: Work) -> float:
    """Past the work, on every side."""
    height = height_above(_canopy(case), work)
    plume = hot_plume(_canopy(case), source, case.workplace)
    if plume is None:
        return COLD_OVERHANG * height
    if is_low(work, height):
        return hoods.receiving.LOW_LARGER / 2
    return (plume.width - work.short_side + hoods.receiving.HIGH_GROWTH * height) / 2


def _booth(case: Case) -> Hint | None:
    """Three sides closed down to the work: air then comes in through one side only, and a hot plume still fits in."""
    if _source(case).dispersion == "thrown" or case.worst.untold:
        return None
    width = max(_canopy(case).opening.sides)
    velocity = max(BOOTH_VELOCITY, case.worst.capture_velocity)
    asked = width * case.worst.distance * velocity
    if _source(case).heat is not None:
        asked, velocity = max(asked, case.worst.flow), BOOTH_VELOCITY
    flow = rounded(asked, "flow", case.system, math.ceil)
    if _stands(case) and flow >= case.worst.flow:
        return None
    size = f"{show(width, 'length', case.system)} by {show(case.worst.distance, 'length', case.system)}"
    text = (
        f"closed on three sides down to the work, as a booth with the source inside, {show(flow, 'flow', case.system)} "
        f"brings {show(velocity, 'velocity', case.system)} or more through its open side of {size}"
    )
    return hint(case, "enclose", text, flow)


def _at_the_side(case: Case) -> Hint | None:
    """A flanged hood beside the work, as long as the work and half as high, judged at the far edge."""
    source = _source(case)
    work = work_of(source)
    if len(case.hood.serves) > 1:
        return None
    if source.heat is not None or source.dispersion == "thrown" or work.is_point or case.worst.untold:
        return None
    distance, long_side = work.short_side + GAP, work.long_side
    area = long_side**2 / 2
    if distance > hoods.dallavalle_reach(hoods.equal_area_diameter(area)):
        return None
    velocity = capture_velocity_of(source, case.workplace, case.system)[0]
    flow = float(hoods.required_flow(velocity, hoods.dallavalle_flanged(distance, area)))
    if _stands(case) and flow >= case.worst.flow:
        return None
    flow = rounded(flow, "flow", case.system, math.ceil)
    size = f"{show(long_side, 'length', case.system)} by {show(long_side / 2, 'length', case.system)}"
    far, asked = show(distance, "length", case.system), show(flow, "flow", case.system)
    text = f"a flanged hood of {size} at the side instead, {far} from the far edge of the work, takes {asked}"
    return hint(case, "hood at the side", text, flow)


def _more_flow(case: Case) -> Hint | None:
    flow, intended = _flow_of(case, _canopy(case)), case.hood.intended_flow
    if flow is None or (intended is not None and intended >= flow):
        return None
    flow = rounded(flow, "flow", case.system, math.ceil)
    return hint(case, "more flow", f"{show(flow, 'flow', case.system)} where it is now is enough", flow)
