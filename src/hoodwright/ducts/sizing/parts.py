"""What is to be sized, by which rules and prices, and what a choice of sizes comes to."""

import math
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from functools import cached_property

import numpy as np

from hoodwright.ducts.friction import friction_factor, reynolds_number
from hoodwright.ducts.run import CORRECT_FROM, LEAVE_ABOVE
from hoodwright.ducts.size_change import contraction_loss
from hoodwright.ducts.system import RoomAir
from hoodwright.errors import InputError

SLACK = 1e-9
ANY = 1e9  # m/s
CONE = 30.0  # deg: the contraction between the two sizes of a hood's duct


@dataclass(frozen=True)
class DuctAir:
    """The air in a duct, where it is not that of the room."""

    density: float  # kg/m3
    viscosity: float  # Pa s
    temperature: float  # K


@dataclass(frozen=True)
class SizedDuct:
    """A duct whose size is to be chosen. `before` are the numbers of the ducts that lead to it; none behind a hood.

    Losses are in velocity pressures of the duct: `loss` of its fittings, `hood` of a hood's entry, `entry` of its own
    entry into the next by the tabulated law; `angle` is that entry for the balance of momentum. `slots` is the area
    of the slots that make the air fast before the duct does. Each of `fixed` is (Pa, at m3/s, exponent) of a filter,
    cleaner or damper in it. `kept` is (hydraulic diameter, area) of a duct whose size stays.
    """

    name: str
    before: tuple[int, ...]
    length: float  # m
    loss: float
    least: float  # m/s
    greatest: float  # m/s
    flow: float = 0.0  # m3/s, of a duct behind a hood
    hood: float = 0.0
    slots: float = 0.0  # m2
    entry: float = 0.0
    angle: float = 0.0  # rad
    roughness: float = 1.5e-4  # m
    fixed: tuple[tuple[float, float, float], ...] = ()
    pieces: float = 0.0  # elbows and other fittings, for their price
    damper: bool = True  # may have one, where the price list has one
    settles: bool = True  # whether what it carries falls out below the least velocity
    kept: tuple[float, float] | None = None
    air: DuctAir | None = None

    @property
    def limits(self) -> tuple[float, float]:
        """Least and greatest velocity that a size may give [m/s]; a kept duct is as it is."""
        return (self.least, self.greatest) if self.kept is None else (0.0, ANY)


@dataclass(frozen=True)
class Size:
    """A diameter; or, behind a hood, two of them, the first along a `share` of the length."""

    diameter: float  # m
    then: float | None = None  # m
    share: float = 1.0

    @property
    def last(self) -> float:
        """Diameter at the end [m]."""
        return self.diameter if self.then is None else self.then


@dataclass(frozen=True)
class Prices:
    """What a duct of a diameter (m) costs per metre and per fitting, a damper, and a watt of air power for its life."""

    per_metre: Callable[[float], float]
    per_piece: Callable[[float], float]
    damper: float | None  # None: no dampers
    per_watt: float
    behind: float = 0.0  # Pa of total pressure that the fan must give at its outlet
    change: float = 0.0  # of a cone between the two sizes of a hood's duct


@dataclass(frozen=True)
class SizingRules:
    """Air, and what counts as agreeing at a junction. `most` is what any hood may get, over what is intended."""

    density: float  # kg/m3
    viscosity: float  # Pa s
    law: str = "tabulated"  # or "momentum"
    leave_above: float = LEAVE_ABOVE
    correct_from: float = CORRECT_FROM
    most: float = 1.09
    split: bool = False  # whether a hood's duct may have two diameters
    air: RoomAir | None = None  # of that density, for the check as built; else dry air at sea level

    def __post_init__(self):
        if self.law not in ("tabulated", "momentum"):
            raise InputError(f"the law of junctions {self.law!r} is not known; there are tabulated, momentum")
        if not 0 < self.correct_from <= self.leave_above <= 1 <= self.most:
            raise InputError(
                f"got ratios {self.correct_from:g} and {self.leave_above:g} and at most {self.most:g} times the flow; "
                "the ratios rise from above 0 to at most 1, and the flow is 1 or more"
            )

    def density_in(self, duct: SizedDuct) -> float:
        """Of the air in a duct [kg/m3]."""
        return self.density if duct.air is None else duct.air.density

    def standard(self, duct: SizedDuct, flow: float) -> float:
        """A flow in a duct as the flow of as much air of the room: such flows add up [m3/s]."""
        return flow * self.density_in(duct) / self.density

    def actual(self, duct: SizedDuct, flow):
        """The flow in a duct from that of as much air of the room [m3/s]."""
        return flow * self.density / self.density_in(duct)

    def velocity_pressure(self, duct: SizedDuct, flow, area):
        """Of a flow (of the room's air) through an area [Pa]."""
        return self.density_in(duct) * np.square(self.actual(duct, flow) / area) / 2

    def carried(self, duct: SizedDuct, flow: float, area: float, *, alone: bool) -> float:
        """What a duct brings into its junction: flow x VP, or momentum along the common duct."""
        if self.law == "momentum":
            return self.density * flow * self.actual(duct, flow) / area * (1.0 if alone else math.cos(duct.angle))
        return flow * float(self.velocity_pressure(duct, flow, area))

    def suction_into(self, duct: SizedDuct, flow: float, area: float, carried: float, *, alone: bool) -> float:
        """Suction that the start of a duct takes more than the place before it [Pa]; below 0 where it wins some back.

        A duct that follows another `alone` loses nothing where it is narrower.
        """
        pressure = float(self.velocity_pressure(duct, flow, area))
        if self.law == "tabulated":
            return max(pressure - carried / flow, 0.0)
        faster = pressure - self.density_in(duct) * (carried / (self.density * flow)) ** 2 / 2
        return faster if alone and faster > 0 else 2 * pressure - carried / area


@dataclass(frozen=True)
class Sized:
    """A choice of sizes, and what it comes to by the rules it was made with. One value per duct where not said."""

    sizes: tuple[Size, ...]
    more_flow: tuple[int, ...]  # ducts whose side takes more flow to agree
    dampers: Mapping[int, float]  # Pa that the damper at a duct's end takes, by duct
    flows: tuple[float, ...]  # m3/s, corrections in them
    suctions: tuple[float, ...]  # Pa of static pressure at the end, dampers and entry in them
    over: tuple[float, ...]  # of the intended flow that a duct gets where sides are left as they are
    duct_cost: float  # of ducts and dampers
    power: float  # W of air power
    total: float  # with the energy
    method: str = "least cost"
    notes: tuple[str, ...] = field(default=())

    @property
    def suction(self) -> float:
        """At the end of the last duct [Pa]."""
        return self.suctions[-1]

    @property
    def flow(self) -> float:
        """Of the last duct [m3/s]."""
        return self.flows[-1]

    @cached_property
    def diameters(self) -> tuple[float, ...]:
        """Of every duct at its end [m]."""
        return tuple(size.last for size in self.sizes)


def design_flows(ducts: Sequence[SizedDuct], rules: SizingRules) -> np.ndarray:
    """Flow of every duct as air of the room [m3/s], the sum of the hoods before it."""
    flows = np.zeros(len(ducts))
    for number, duct in enumerate(ducts):
        flows[number] = sum(flows[i] for i in duct.before) if duct.before else rules.standard(duct, duct.flow)
    return flows


def check_ducts(ducts: Sequence[SizedDuct]) -> None:
    """Each after those that lead to it, all of them to the last."""
    if not ducts:
        raise InputError("there is no duct to size; give one or more")
    used: set[int] = set()
    for number, duct in enumerate(ducts):
        if any(not 0 <= i < number for i in duct.before):
            raise InputError(f"{duct.name}: it comes before a duct that leads to it; order them downstream")
        if used & set(duct.before):
            raise InputError(f"{duct.name}: a duct that leads to it leads to another one too; ducts only join")
        if not duct.before and not duct.flow > 0:
            raise InputError(f"{duct.name}: got {duct.flow:g} m3/s behind its hood; give a flow above 0")
        if not duct.length >= 0:
            raise InputError(f"{duct.name}: got a length of {duct.length:g} m; give 0 or more")
        used |= set(duct.before)
    loose = [duct.name for number, duct in enumerate(ducts[:-1]) if number not in used]
    if loose:
        raise InputError(f"{loose[0]}: it does not lead to the last duct, {ducts[-1].name}; size each tree by itself")


def area_of(duct: SizedDuct, diameter):
    """Cross-section at a diameter; that of a kept duct [m2]."""
    return math.pi / 4 * np.square(diameter) if duct.kept is None else np.full(np.shape(diameter), duct.kept[1])[()]


def cost_of(duct: SizedDuct, size: Size, prices: Prices) -> float:
    """Of a duct and its fittings; the fittings have the first size."""
    if duct.kept is not None:
        return 0.0
    cost = prices.per_metre(size.diameter) * duct.length * size.share + prices.per_piece(size.diameter) * duct.pieces
    if size.then is None:
        return cost
    return cost + prices.per_metre(size.then) * duct.length * (1 - size.share) + prices.change


def fixed_loss(duct: SizedDuct, flow):
    """What stands in a duct takes at its flow [Pa]."""
    return sum(pressure * (flow / at) ** exponent for pressure, at, exponent in duct.fixed)


def friction(duct: SizedDuct, diameter, flow, rules: SizingRules):
    """Velocity pressures lost along the whole length at a diameter and its flow."""
    velocity, viscosity = flow / area_of(duct, diameter), rules.viscosity if duct.air is None else duct.air.viscosity
    re = reynolds_number(velocity, diameter, rules.density_in(duct), viscosity)
    return friction_factor(re, np.minimum(duct.roughness / diameter, 0.1)) * duct.length / diameter


def own_loss(duct: SizedDuct, diameter, standard, rules: SizingRules):
    """What a duct of one size takes from its start to its end at a flow as air of the room, without its start [Pa]."""
    entry, flow = duct.entry if rules.law == "tabulated" else 0.0, rules.actual(duct, standard)
    pressure = rules.velocity_pressure(duct, standard, area_of(duct, diameter))
    return (friction(duct, diameter, flow, rules) + duct.loss + entry) * pressure + fixed_loss(duct, flow)


def hood_suction(duct: SizedDuct, size: Size, rules: SizingRules) -> float:
    """Static suction at the end of the duct behind a hood, at its flow [Pa]."""
    flow, standard = duct.flow, rules.standard(duct, duct.flow)
    first = float(rules.velocity_pressure(duct, standard, area_of(duct, size.diameter)))
    slots = float(rules.velocity_pressure(duct, standard, duct.slots)) if duct.slots else 0.0
    start = max(first, slots) + duct.hood * first
    if size.then is None:
        return start + float(own_loss(duct, size.diameter, standard, rules))
    last = float(rules.velocity_pressure(duct, standard, area_of(duct, size.then)))
    lost = (float(friction(duct, size.diameter, flow, rules)) * size.share + duct.loss) * first
    entry = duct.entry if rules.law == "tabulated" else 0.0
    more = float(friction(duct, size.then, flow, rules)) * (1 - size.share) + float(contraction_loss(CONE)) + entry
    return start + lost + (last - first) + more * last + float(fixed_loss(duct, flow))
