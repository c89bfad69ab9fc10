"""What a choice of sizes comes to: from the hoods to the last duct, two sides at a time at every junction."""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from enum import IntEnum

from hoodwright.ducts.sizing.parts import (
    SLACK,
    Prices,
    Size,
    Sized,
    SizedDuct,
    SizingRules,
    area_of,
    cost_of,
    hood_suction,
    own_loss,
)
from hoodwright.errors import NoSolution


class Way(IntEnum):
    """What is done to the side with less suction."""

    LEAVE = 0
    MORE_FLOW = 1
    DAMPER = 2


@dataclass(frozen=True)
class State:
    """What arrives at a place: suction, flow, how much the flow may still grow, what it carries, most a hood gets."""

    suction: float  # Pa
    flow: float  # m3/s, as air of the room
    spare: float  # times its flow
    carried: float
    over: float  # of the intended flow

    def damped(self, suction: float) -> "State":
        """With a damper that brings it to a suction."""
        return replace(self, suction=suction)

    def grown(self, more: float, rules: SizingRules) -> "State":
        """With more flow in all that leads to it."""
        power = 2 if rules.law == "momentum" else 3
        return State(
            self.suction * more**2, self.flow * more, self.spare / more, self.carried * more**power, self.over * more
        )


def behind_hood(duct: SizedDuct, size: Size, rules: SizingRules, *, alone: bool) -> State:
    """At the end of a duct that begins at a hood."""
    area, flow = float(area_of(duct, size.last)), rules.standard(duct, duct.flow)
    spare = duct.limits[1] * min(area, float(area_of(duct, size.diameter))) / duct.flow
    return State(hood_suction(duct, size, rules), flow, spare, rules.carried(duct, flow, area, alone=alone), 1.0)


def led(state: State, duct: SizedDuct, size: Size, rules: SizingRules, *, alone: bool, onward: bool) -> State:
    """Through a duct; `alone` tells that nothing joins at its start, `onward` that nothing joins at its end."""
    area, flow = float(area_of(duct, size.diameter)), state.flow
    suction = state.suction + rules.suction_into(duct, flow, area, state.carried, alone=alone)
    suction += float(own_loss(duct, size.diameter, flow, rules))
    carried = rules.carried(duct, flow, area, alone=onward)
    return State(suction, flow, min(state.spare, duct.limits[1] * area / rules.actual(duct, flow)), carried, state.over)


def joined(high: State, low: State, way: Way, rules: SizingRules) -> State:
    """Two sides together, the one with less suction as `way` says."""
    more = math.sqrt(high.suction / low.suction)
    if way is Way.MORE_FLOW:
        low = low.grown(more, rules)
    over = low.over * more if way is Way.LEAVE else low.over
    return State(
        high.suction,
        high.flow + low.flow,
        min(high.spare, low.spare),
        high.carried + low.carried,
        max(high.over, over),
    )


def without_damper(high: State, low: State, rules: SizingRules) -> Way | None:
    """What makes two sides agree without a damper, if anything does."""
    ratio = low.suction / high.suction
    more = math.sqrt(1 / ratio)
    if low.over * more > rules.most * (1 + SLACK) or ratio < rules.correct_from:
        return None
    if ratio >= rules.leave_above:
        return Way.LEAVE
    return Way.MORE_FLOW if more <= low.spare else None


Step = tuple[int, int]  # number of a duct, and which of those before it joins the ones that did


def counted(
    ducts: Sequence[SizedDuct],
    sizes: Sequence[Size],
    ways: Mapping[Step, Way],
    rules: SizingRules,
    prices: Prices,
    method: str = "least cost",
) -> Sized:
    """All that a choice comes to, duct by duct."""
    followed = {i: number for number, duct in enumerate(ducts) for i in duct.before}
    alone = [number not in followed or len(ducts[followed[number]].before) == 1 for number in range(len(ducts))]
    states: list[State] = []
    meetings = [_Meeting(duct.before) for duct in ducts]
    for number, (duct, size, meeting) in enumerate(zip(ducts, sizes, meetings, strict=True)):
        if not duct.before:
            states.append(behind_hood(duct, size, rules, alone=alone[number]))
            continue
        state = meeting.met(number, states, ways, rules)
        single = len(duct.before) == 1
        states.append(led(state, duct, size, rules, alone=single, onward=alone[number]))
        _fast_enough(duct, size, rules.actual(duct, state.flow))
    return _summed(ducts, sizes, states, meetings, rules, prices, method)


class _Meeting:
    """How the sides of one junction agree: flow factor, damper and left excess of each."""

    def __init__(self, before: tuple[int, ...]):
        self.before = before
        self.more = dict.fromkeys(before, 1.0)
        self.over = dict.fromkeys(before, 1.0)
        self.damper = dict.fromkeys(before, 0.0)
        self.corrected: set[int] = set()

    def met(self, number: int, states: Sequence[State], ways: Mapping[Step, Way], rules: SizingRules) -> State:
        here, so_far = states[self.before[0]], [self.before[0]]
        for k, other in enumerate(self.before[1:], 1):
            there, way = states[other], ways[number, k]
            high, low, lower = (here, there, [other]) if here.suction >= there.suction else (there, here, so_far)
            here = joined(high, low, way, rules)
            self._note(lower, way, high.suction, low.suction)
            so_far = [*so_far, other]
        return here

    def _note(self, lower: list[int], way: Way, high: float, low: float) -> None:
        more = math.sqrt(high / low)
        for i in lower:
            if way is Way.MORE_FLOW:
                self.more[i] *= more
                self.damper[i] *= more**2
                self.corrected.add(i)
            elif way is Way.DAMPER:
                self.damper[i] += high - low
            else:
                self.over[i] *= more


def _summed(ducts, sizes, states, meetings, rules: SizingRules, prices: Prices, method: str) -> Sized:
    """Corrections carried back to the hoods, and the costs."""
    more, over = [1.0] * len(ducts), [1.0] * len(ducts)
    dampers: dict[int, float] = {}
    for meeting, number in zip(reversed(meetings), reversed(range(len(ducts))), strict=True):
        for i in meeting.before:
            more[i], over[i] = more[number] * meeting.more[i], over[number] * meeting.over[i]
            if meeting.damper[i] > 0:
                dampers[i] = meeting.damper[i] * more[number] ** 2
    cost = sum(cost_of(duct, size, prices) for duct, size in zip(ducts, sizes, strict=True))
    cost += len(dampers) * (prices.damper or 0.0)
    power = _air_power(ducts[-1], sizes[-1], states[-1], rules, prices)
    return Sized(
        sizes=tuple(sizes),
        more_flow=tuple(sorted(i for meeting in meetings for i in meeting.corrected)),
        dampers=dict(sorted(dampers.items())),
        flows=tuple(rules.actual(d, s.flow) * factor for d, s, factor in zip(ducts, states, more, strict=True)),
        suctions=tuple(state.suction * factor**2 for state, factor in zip(states, more, strict=True)),
        over=tuple(over),
        duct_cost=cost,
        power=power,
        total=cost + prices.per_watt * power,
        method=method,
    )


def _air_power(duct: SizedDuct, size: Size, state: State, rules: SizingRules, prices: Prices) -> float:
    """What the fan gives the air, by total pressure [W]."""
    fast = float(rules.velocity_pressure(duct, state.flow, area_of(duct, size.last)))
    return rules.actual(duct, state.flow) * (state.suction - fast + prices.behind)


def _fast_enough(duct: SizedDuct, size: Size, flow: float) -> None:
    velocity = flow / float(area_of(duct, size.diameter))
    if not duct.limits[0] * (1 - 1e-6) <= velocity <= duct.limits[1] * (1 + 1e-6):
        raise NoSolution(
            f"{duct.name}: its size gives {velocity:.4g} m/s, outside {duct.least:.3g} to {duct.greatest:.3g} m/s; "
            "choose another size"
        )
