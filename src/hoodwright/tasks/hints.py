"""What would help a hood most: closer, turned, flanged, or more flow, each with the flow and fan power it takes.

A hint is true for every source that the hood serves, and its numbers are rounded to the side that keeps it true.
"""

import math
from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from hoodwright import units
from hoodwright.hoods.centreline import full_flange_width
from hoodwright.results import Hint, Quantity
from hoodwright.tasks.assessment import SourceNeed
from hoodwright.tasks.laws import area_of, has_full_flange
from hoodwright.tasks.need import looks_away, needs_of
from hoodwright.tasks.run import FASTEST_USUAL, Effect
from hoodwright.units import show
from hoodwright.workplace.model import Hood, Workplace

EffectAt = Callable[[Hood, float], Effect]
NEAREST = 0.02
HALVINGS = 40
SHOWN_DIGITS = 3


@dataclass(frozen=True)
class _Case:
    """A hood, the source that asks most of it, and what its ducts do at another flow."""

    hood: Hood
    worst: SourceNeed
    workplace: Workplace
    effect_at: EffectAt
    system: str


def hints_for(
    hood: Hood, worst: SourceNeed, workplace: Workplace, effect_at: EffectAt, system: str
) -> tuple[Hint, ...]:
    """Hints for the source that asks most; `effect_at` tells what the ducts do when the hood takes a flow."""
    case = _Case(hood, worst, workplace, effect_at, system)
    found = [_turned(case), _closer(case), _flanged(case), _more_flow(case)]
    return tuple(hint for hint in found if hint is not None)


def moved_hood(hood: Hood, target: tuple[float, float, float], distance: float) -> Hood:
    """The hood moved along the line to a source until it is `distance` away."""
    line = np.subtract(hood.at, target)
    length = float(np.linalg.norm(line))
    unit = line / length if length > 1e-9 else -np.asarray(hood.facing)
    at = tuple(float(x) for x in np.asarray(target) + unit * distance)
    return hood.model_copy(update={"at": at})


def _needed(hood: Hood, workplace: Workplace) -> float | None:
    """Flow that is enough for every source of the hood; None where an equation is lacking for one."""
    needs = needs_of(hood, workplace)
    return max(need.flow for need in needs) if all(need.in_range for need in needs) else None


def _closer(case: _Case) -> Hint | None:
    if looks_away(case.worst.off_axis) or case.worst.distance <= NEAREST:
        return None
    target = case.workplace.source(case.worst.source).at

    def flow_at(distance: float) -> float | None:
        return _needed(moved_hood(case.hood, target, distance), case.workplace)

    intended, needed = case.hood.intended_flow, _needed(case.hood, case.workplace)
    if intended is None or (needed is not None and intended >= needed):
        return _half_way(case, flow_at)
    return _near_enough(case, flow_at, intended)


def _half_way(case: _Case, flow_at: Callable[[float], float | None]) -> Hint | None:
    """What half the distance would save, where the flow is enough or not yet chosen."""
    distance = _rounded(case.worst.distance / 2, "length", case.system, _down)
    flow = flow_at(distance)
    if flow is None or flow >= case.worst.flow:
        return None
    flow = _rounded(flow, "flow", case.system, math.ceil)
    where, there = show(distance, "length", case.system), show(flow, "flow", case.system)
    return _hint(case, "closer", f"at {where} from the {case.worst.source}, {there} would be enough", flow)


def _near_enough(case: _Case, flow_at: Callable[[float], float | None], intended: float) -> Hint | None:
    """How close the hood must come for the intended flow to be enough."""
    distance = _farthest_enough(flow_at, intended, case.worst.distance)
    if distance is None:
        return None
    where = show(_rounded(distance, "length", case.system, _down), "length", case.system)
    there = f"the intended {show(intended, 'flow', case.system)}"
    return _hint(case, "closer", f"at {where} from the {case.worst.source}, {there} would be enough", intended)


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


def _flanged(case: _Case) -> Hint | None:
    if has_full_flange(case.hood) or not case.worst.in_range:
        return None
    width = _rounded(float(full_flange_width(area_of(case.hood.opening))), "length", case.system, math.ceil)
    changed = case.hood.model_copy(update={"flange": width})
    flow = _needed(changed, case.workplace)
    if flow is None or flow >= case.worst.flow:
        return None
    flow = _rounded(flow, "flow", case.system, math.ceil)
    wide, needed = show(width, "length", case.system), show(flow, "flow", case.system)
    text = f"with a flange {wide} wide all round, {needed} would be enough at the same place"
    return _hint(case, "flange", text, flow, changed)


def _turned(case: _Case) -> Hint | None:
    if not looks_away(case.worst.off_axis):
        return None
    line = np.subtract(case.workplace.source(case.worst.source).at, case.hood.at)
    facing = tuple(float(x) for x in line / np.linalg.norm(line))
    flow = _needed(case.hood.model_copy(update={"facing": facing}), case.workplace)
    if flow is None:
        return None
    flow = _rounded(flow, "flow", case.system, math.ceil)
    text = f"turned to look at the {case.worst.source}, {show(flow, 'flow', case.system)} would be enough"
    return _hint(case, "turn", text, flow)


def _more_flow(case: _Case) -> Hint | None:
    needs = needs_of(case.hood, case.workplace)
    bounds = [need.flow if need.in_range else need.bound.most for need in needs]
    asked = [flow for flow in bounds if flow is not None]
    if any(looks_away(need.off_axis) for need in needs) or len(asked) < len(needs):
        return None
    flow = max(asked)
    if case.hood.intended_flow is not None and case.hood.intended_flow >= flow:
        return None
    flow = _rounded(flow, "flow", case.system, math.ceil)
    certain = all(need.in_range for need in needs)
    enough = "is enough" if certain else "is enough in still, open air, and far more than a closer hood needs"
    return _hint(case, "more flow", f"{show(flow, 'flow', case.system)} where it is now {enough}", flow)


def _down(number: float) -> int:
    return math.floor(number + 1e-6)  # 50 mm halved from 100 mm is 50, not 49.9


def _rounded(value: float, kind: str, system: str, rounding: Callable[[float], int]) -> float:
    """The value rounded up or down to the digits that are shown, so that the words stay true."""
    unit = units.KINDS[kind].show[system]
    number = units.to_unit(value, kind, unit)
    step = 10.0 ** (math.floor(math.log10(number)) - SHOWN_DIGITS + 1)
    return units.parse(f"{rounding(number / step) * step:.9g} {unit}", kind)


def _hint(case: _Case, change: str, text: str, flow: float, changed: Hood | None = None) -> Hint:
    """The hint with what the ducts and the fan then do; `changed` is the hood where its entry loss changes too."""
    effect = case.effect_at(changed or case.hood, flow)
    if effect.fan_power is not None:
        text += f"; through the same ducts the fan then takes {show(effect.fan_power, 'power', case.system, 2)}"
    if effect.too_slow is not None:
        text += f"; {effect.too_slow} would then be too wide to keep the stream moving"
    if effect.fastest is not None and effect.fastest[1] > FASTEST_USUAL:
        name, velocity = effect.fastest
        text += f"; {name} would then run at {show(velocity, 'velocity', case.system, 2)}, too fast for its size"
    power = None if effect.fan_power is None else Quantity(effect.fan_power, "power")
    return Hint(change, text, Quantity(flow, "flow"), power)
