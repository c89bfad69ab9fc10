"""A choice of sizes solved as built: what every hood gets, and where the air is too slow once a gate is shut."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np
from scipy.optimize import brentq

from hoodwright.ducts.as_built import solve_system
from hoodwright.ducts.fan import STANDARD_DENSITY
from hoodwright.ducts.fan_curve import FASTEST, SLOWEST, at_speed
from hoodwright.ducts.size_change import contraction_loss
from hoodwright.ducts.sizing.parts import CONE, Prices, Sized, SizedDuct, SizingRules, area_of
from hoodwright.ducts.system import DuctSystem, Meeting, RoomAir, Run, SystemAnswer
from hoodwright.errors import NoSolution
from hoodwright.network import Curve, fan_curve

ROOM, OUTSIDE, FAN = "room", "outside", "fan"
SHUT = 1e6  # velocity pressures of a shut gate
SLOWER = 0.95  # of its speed: the fan at its worst
FAN_POINTS = ((0.0, 1.25), (0.5, 1.22), (0.8, 1.12), (1.0, 1.0), (1.3, 0.7), (1.6, 0.25))  # of design flow and pressure
SETTLED = 1e-4  # of the least share
STEP = 1.25  # of the speed, while one is looked for
TOO_SLOW = 1e-3  # m/s below the least velocity


@dataclass(frozen=True)
class Slow:
    """A duct that falls below its least velocity while the gate of one hood is shut."""

    duct: int
    shut: int  # the hood's duct
    velocity: float  # m/s


@dataclass(frozen=True)
class Checked:
    """A choice of sizes solved as built, at the fan speed that still serves every hood with the fan 5 % slower."""

    speed: float  # of the given fan curve
    shares: dict[int, float]  # of the intended flow at the fan's worst, by hood's duct
    too_slow: tuple[Slow, ...]
    outside: dict[int, float]  # the shares outside the band

    @property
    def holds(self) -> bool:
        """Whether every hood gets its flow and no duct falls too slow."""
        return not self.outside and not self.too_slow


def checked(
    ducts: Sequence[SizedDuct],
    sized: Sized,
    prices: Prices,
    rules: SizingRules,
    curve: Curve | None = None,
    *,
    most: float = 1.10,
    progress=None,
) -> Checked:
    """A choice of sizes solved as built: the fan as fast as it must be, then every gate shut in turn.

    Parameters
    ----------
    ducts : sequence of SizedDuct
        What is `fixed` in them is taken as it is, so give what filters and cleaners take dirty.
    sized : Sized
    prices : Prices
        Of them only `behind`.
    rules : SizingRules
    curve : network.Curve, optional
        Total pressure of the fan at standard density; without one a usual curve through the design point.
    most : float [1]
        Of its intended flow that a hood may get.
    progress : jobs.Progress, optional

    Returns
    -------
    check : Checked

    Valid: NoSolution where no speed of the fan serves every hood.
    Source: [network-theory, balances of mass and pressure]
    """
    curve = curve or usual_curve(sized, rules.density_in(ducts[-1]))
    system = built_system(ducts, sized, prices, rules, curve)
    speed, answer = _served(system, ducts)
    shares = _shares(answer, ducts)
    outside = {i: share for i, share in shares.items() if not 1 - 10 * SETTLED <= share <= most}
    running = _at_speed(system, speed)
    slow: list[Slow] = []
    flows = solve_system(running).flow
    for count, i in enumerate(shares):
        if progress is not None:
            progress.report(count / len(shares), f"shutting {ducts[i].name}")
        slow += _slow_when_shut(running, flows, ducts, i)
    return Checked(speed, shares, tuple(slow), outside)


def built_system(
    ducts: Sequence[SizedDuct], sized: Sized, prices: Prices, rules: SizingRules, curve: Curve
) -> DuctSystem:
    """The ducts of a tree with their sizes and dampers, and a fan behind the last."""
    followed = {i: number for number, duct in enumerate(ducts) for i in duct.before}
    runs: list[Run] = []
    for number, duct in enumerate(ducts):
        start = f"before {duct.name}" if duct.before else ROOM
        to = f"before {ducts[followed[number]].name}" if number in followed else FAN
        runs += _runs(duct, sized, number, start, to, rules)
    meetings = [_meeting(ducts, sized, number, rules) for number, duct in enumerate(ducts) if duct.before]
    last, flow = area_of(ducts[-1], sized.sizes[-1].last), sized.flow
    behind = {"coefficient": prices.behind / flow**2, "exponent": 2.0} if prices.behind > 0 else {}
    given = None if ducts[-1].air is None else ducts[-1].air.temperature
    runs.append(Run(FAN, FAN, OUTSIDE, float(last), sized.sizes[-1].last, temperature=given, fan=curve, **behind))  # type: ignore[arg-type]
    return DuctSystem(runs, {ROOM: 0.0, OUTSIDE: 0.0}, meetings, rules.air or RoomAir(_temperature(rules)))


def usual_curve(sized: Sized, density: float) -> Curve:
    """A fan of falling curve through the design point, at standard density."""
    pressure = sized.power / sized.flow * STANDARD_DENSITY / density
    flows, pressures = zip(*FAN_POINTS, strict=True)
    return fan_curve(np.array(flows) * sized.flow, np.array(pressures) * pressure)


def _temperature(rules: SizingRules) -> float:
    """Of dry air of sea level pressure that has the density [K]."""
    return 101325.0 / (287.042 * rules.density)


def _runs(duct: SizedDuct, sized: Sized, number: int, start: str, to: str, rules: SizingRules) -> list[Run]:
    """A duct as runs: its two sizes, and what stands in it one by one."""
    parts = _parts(duct, sized, number, rules)
    given = None if duct.air is None else duct.air.temperature
    names = [duct.name, *(f"{duct.name} part {n}" for n in range(2, len(parts) + 1))]
    nodes = [start, *(f"{duct.name} after part {n}" for n in range(1, len(parts))), to]
    return [
        Run(name, a, b, area=float(area_of(duct, diameter)), diameter=diameter, temperature=given, **own)
        for name, a, b, (diameter, own) in zip(names, nodes[:-1], nodes[1:], parts, strict=True)
    ]


def _parts(duct: SizedDuct, sized: Sized, number: int, rules: SizingRules) -> list[tuple[float, dict]]:
    """Diameter of every part of a duct, and what it loses."""
    size, flow = sized.sizes[number], rules.standard(duct, sized.flows[number])
    pressure, last = (float(rules.velocity_pressure(duct, flow, area_of(duct, x))) for x in (size.diameter, size.last))
    loss, damper = duct.loss + duct.hood, sized.dampers.get(number, 0.0) / last
    if duct.slots:
        loss += max(float(rules.velocity_pressure(duct, flow, duct.slots)) / pressure - 1, 0.0)
    first = {"roughness": duct.roughness, "length": duct.length * size.share, "loss": loss}
    parts = [(size.diameter, first)]
    if size.then is not None:
        cone = float(contraction_loss(CONE))
        parts.append((size.then, first | {"length": duct.length * (1 - size.share), "loss": cone}))
    parts[-1][1]["loss"] += damper
    return parts + [(size.last, {"coefficient": p / at**n, "exponent": n}) for p, at, n in duct.fixed]


def _meeting(ducts: Sequence[SizedDuct], sized: Sized, number: int, rules: SizingRules) -> Meeting:
    """Where ducts join, or one follows another; a narrower one loses nothing there."""
    node, before = f"before {ducts[number].name}", ducts[number].before
    here = area_of(ducts[number], sized.sizes[number].diameter)
    narrows = len(before) == 1 and here <= area_of(ducts[before[0]], sized.sizes[before[0]].last)
    law = "tabulated" if narrows else rules.law
    names = {i: _last_run(ducts[i], sized, i) for i in before}
    if law == "tabulated":
        entry = {names[i]: ducts[i].entry if rules.law == "tabulated" else 0.0 for i in before}
        return Meeting(node, law, coefficients=entry)
    return Meeting(node, law, angles={names[i]: 0.0 if len(before) == 1 else ducts[i].angle for i in before})


def _last_run(duct: SizedDuct, sized: Sized, number: int) -> str:
    parts = 1 + (sized.sizes[number].then is not None) + len(duct.fixed)
    return duct.name if parts == 1 else f"{duct.name} part {parts}"


def _at_speed(system: DuctSystem, speed: float) -> DuctSystem:
    runs = [run if run.fan is None else replace(run, fan=at_speed(run.fan, speed)) for run in system.runs]
    return replace(system, runs=runs)


def _shares(answer: SystemAnswer, ducts: Sequence[SizedDuct]) -> dict[int, float]:
    place = {name: n for n, name in enumerate(answer.names)}
    return {i: float(answer.flow[place[duct.name]]) / duct.flow for i, duct in enumerate(ducts) if not duct.before}


def _served(system: DuctSystem, ducts: Sequence[SizedDuct]) -> tuple[float, SystemAnswer]:
    """The speed at which the hood that gets least still gets its flow with the fan slower than that."""

    def solved(speed: float) -> SystemAnswer:
        return solve_system(_at_speed(system, speed * SLOWER))

    def spare(speed: float) -> float:
        return min(_shares(solved(speed), ducts).values()) - 1 - SETTLED / 2

    low, high = _between(spare)
    speed = float(brentq(spare, low, high, xtol=SETTLED / 20))
    return speed, solved(speed)


def _between(spare) -> tuple[float, float]:
    """Two speeds, at one of which too little flows, and enough at the other."""
    enough = 1.0
    while spare(enough) < 0:
        enough *= STEP
        if enough > FASTEST:
            raise NoSolution(
                f"no speed up to {FASTEST:g} times that of its curve serves every hood; choose a larger fan"
            )
    less = enough / STEP
    while spare(less) > 0:
        less, enough = less / STEP, less
        if less < SLOWEST:
            raise NoSolution(f"even at {SLOWEST:g} times the speed of its curve it gives more; choose a smaller fan")
    return less, enough


def _slow_when_shut(system: DuctSystem, flows, ducts: Sequence[SizedDuct], shut: int) -> list[Slow]:
    """The ducts on the way of a hood to the fan in which the air is too slow once its gate is shut."""
    name = ducts[shut].name
    runs = [replace(run, loss=run.loss + SHUT) if run.name == name else run for run in system.runs]
    answer = solve_system(replace(system, runs=runs), flows)
    place = {run: n for n, run in enumerate(answer.names)}
    found = []
    for number, duct in enumerate(ducts):
        velocity = float(answer.velocity[place[duct.name]])
        if duct.before and duct.settles and velocity < duct.least - TOO_SLOW:
            found.append(Slow(number, shut, velocity))
    return found
