"""What every hint needs: the case it is about, and numbers rounded to the side that keeps its words true."""

import math
from collections.abc import Callable
from dataclasses import dataclass

from hoodwright import units
from hoodwright.results import Hint, Quantity
from hoodwright.tasks.assessment import SourceNeed
from hoodwright.tasks.need import needs_of
from hoodwright.tasks.run import FASTEST_USUAL, Effect
from hoodwright.units import show
from hoodwright.workplace.model import Hood, Workplace

EffectAt = Callable[[Hood, float], Effect]
SHOWN_DIGITS = 3
TOO_FAST = 60.0  # m/s in a duct, twice what is usual: what fan and ducts would take is not told


@dataclass(frozen=True)
class Case:
    """A hood, the source that asks most of it, and what its ducts do at another flow."""

    hood: Hood
    worst: SourceNeed
    workplace: Workplace
    effect_at: EffectAt
    system: str


def flow_needed(hood: Hood, workplace: Workplace) -> float | None:
    """Flow that is enough for every source of the hood; None where an equation is lacking for one."""
    needs = needs_of(hood, workplace)
    return max(need.flow for need in needs) if all(need.in_range for need in needs) else None


def down(number: float) -> int:
    return math.floor(number + 1e-6)  # 50 mm halved from 100 mm is 50, not 49.9


def rounded(value: float, kind: str, system: str, rounding: Callable[[float], int]) -> float:
    """The value rounded up or down to the digits that are shown, so that the words stay true."""
    unit = units.KINDS[kind].show[system]
    number = units.to_unit(value, kind, unit)
    if number == 0:
        return 0.0
    step = 10.0 ** (math.floor(math.log10(number)) - SHOWN_DIGITS + 1)
    return units.parse(f"{rounding(number / step) * step:.9g} {unit}", kind)


def hint(case: Case, change: str, text: str, flow: float, changed: Hood | None = None) -> Hint:
    """The hint with what the ducts and the fan then do; `changed` is the hood where its entry loss changes too."""
    effect = case.effect_at(changed or case.hood, flow)
    if effect.fastest is not None and effect.fastest[1] > TOO_FAST:
        text += f"; {effect.fastest[0]} is far too narrow for that"
        return Hint(change, text, Quantity(flow, "flow"), None, Quantity(flow, "flow"))
    if effect.fan_power is not None:
        text += f"; through the same ducts the fan then takes {show(effect.fan_power, 'power', case.system, 2)}"
    if effect.too_slow is not None:
        text += f"; {effect.too_slow} would then be too wide to keep the stream moving"
    if effect.fastest is not None and effect.fastest[1] > FASTEST_USUAL:
        name, velocity = effect.fastest
        text += f"; {name} would then run at {show(velocity, 'velocity', case.system, 2)}, too fast for its size"
    power = None if effect.fan_power is None else Quantity(effect.fan_power, "power")
    return Hint(change, text, Quantity(flow, "flow"), power, Quantity(flow, "flow"))


def target_of(case: Case) -> tuple[float, float, float]:
    """The farthest place of the source that asks most."""
    return case.workplace.source(case.worst.source).farthest_from(case.hood.at)
