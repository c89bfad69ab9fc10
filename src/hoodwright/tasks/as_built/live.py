"""What really flows, as a page shows it: every duct, hood and fan, and what is wrong there as a word.

Where a fan has no curve nothing can be told of what flows; there the same is told of the intended flows.
"""

from collections.abc import Iterator
from dataclasses import dataclass, field, replace

from hoodwright.tasks.as_built.answers import BuiltAnswer, BuiltDuct, BuiltFan, BuiltHood
from hoodwright.tasks.as_built.network import as_built, has_curve
from hoodwright.tasks.design import air_of, design_flow
from hoodwright.tasks.fan_answers import fan_sides, power_of
from hoodwright.tasks.sections import Section, keeps_moving, least_velocity
from hoodwright.tasks.walk import Walk
from hoodwright.workplace.model import Fan, Workplace

ENOUGH = 0.995  # of the intended flow: what rounds to all of it
STILL = 1e-6  # m3/s
SAME_POINT = 1e-4  # of a flow
OPEN_K, SHUT_K = 0.0, 1e6  # velocity pressures of a damper
TROUBLES = {
    "short": "short of its flow",
    "reversed": "flow reversed",
    "settles": "dust settles",
    "shut": "shut",
    "unstable": "not stable",
    "uncurved": "no curve",
}


@dataclass(frozen=True)
class Tried:
    """What is tried on the page and not in the file: load of the filters (0 clean, 1 dirty), gates shut (of hoods and
    ducts), dampers in velocity pressures of their duct, fans in shares of the speed of their curve."""

    load: float = 1.0
    closed: frozenset[str] = frozenset()
    dampers: dict[str, float] = field(default_factory=dict)
    speeds: dict[str, float] = field(default_factory=dict)

    def with_gate(self, name: str, *, shut: bool) -> "Tried":
        """The gate of a hood or duct shut or opened."""
        return replace(self, closed=self.closed | {name} if shut else self.closed - {name})

    def with_damper(self, duct: str, k: float | None) -> "Tried":
        """A damper at a loss; None: as in the file."""
        rest = {name: loss for name, loss in self.dampers.items() if name != duct}
        return replace(self, dampers=rest if k is None else rest | {duct: k})

    def with_speed(self, fan: str, share: float | None) -> "Tried":
        """A fan at a share of the speed of its curve; None: as in the file."""
        rest = {name: speed for name, speed in self.speeds.items() if name != fan}
        return replace(self, speeds=rest if share is None else rest | {fan: share})

    @property
    def any(self) -> bool:
        """Whether anything differs from the file, or from filters that are dirty."""
        return self != Tried()


@dataclass(frozen=True)
class DuctFlow:
    """One duct: flow with its sign, pressures at start and end, keys of TROUBLES; `built` or only intended."""

    name: str
    flow: float
    velocity: float
    static: tuple[float, float]
    total: tuple[float, float]
    least_velocity: float
    carries: str
    built: bool
    damper: float = 0.0
    troubles: tuple[str, ...] = ()


@dataclass(frozen=True)
class HoodFlow:
    """What a hood gets, what it was meant to get and what its sources need."""

    name: str
    flow: float
    intended: float
    built: bool
    troubles: tuple[str, ...] = ()

    @property
    def share(self) -> float:
        """Of what was intended."""
        return self.flow / self.intended if self.intended else 1.0


@dataclass(frozen=True)
class FanFlow:
    """A fan where it runs, or what it must do at the intended flows. Pressure is total."""

    name: str
    flow: float
    pressure: float
    power: float | None
    built: bool
    troubles: tuple[str, ...] = ()

    def like(self, other: "FanFlow") -> bool:
        """Whether both run at one point."""
        near = abs(self.flow - other.flow) <= SAME_POINT * max(abs(self.flow), abs(other.flow))
        return near and self.troubles == other.troubles


@dataclass(frozen=True)
class LiveDucts:
    """Everything by name. `uncurved` are fans without a curve, whose ducts are told at the intended flows; `curved`
    where anything can be told as built."""

    ducts: dict[str, DuctFlow]
    hoods: dict[str, HoodFlow]
    fans: dict[str, FanFlow]
    cleaners: dict[str, float]  # Pa
    uncurved: tuple[str, ...] = ()
    curved: bool = False
    answer: BuiltAnswer | None = None

    @property
    def flows(self) -> dict[str, float]:
        """Flow by duct."""
        return {name: duct.flow for name, duct in self.ducts.items()}

    @property
    def built(self) -> bool:
        """Whether anything is told as built."""
        return self.answer is not None


def live_of(workplace: Workplace, tried: Tried, intended: LiveDucts, system: str | None = None) -> LiveDucts:
    """What flows as built in the state that is tried, and the intended flows where no fan has a curve.

    Other operating points are not looked for, which would take most of the time: see `fan_curves`, and `told_by`.
    """
    if not intended.curved:
        return intended
    answer = as_built(
        workplace,
        loaded=tried.load,
        closed=tried.closed,
        dampers=tried.dampers,
        speeds=tried.speeds,
        points=False,
        system=system,
    )
    return told_by(answer, tried, intended)


def told_by(answer: BuiltAnswer, tried: Tried, found: LiveDucts) -> LiveDucts:
    """The same from an answer that is there; `found` are the intended flows."""
    return LiveDucts(
        ducts=found.ducts | {duct.name: _duct(duct, tried) for duct in answer.ducts},
        hoods=found.hoods | {hood.name: _hood(hood, tried) for hood in answer.hoods},
        fans=found.fans | {fan.name: _fan(fan) for fan in answer.fans},
        cleaners={cleaner.name: cleaner.pressure for cleaner in answer.cleaners},
        uncurved=found.uncurved,
        curved=True,
        answer=answer,
    )


def _duct(duct: BuiltDuct, tried: Tried) -> DuctFlow:
    return DuctFlow(
        name=duct.name,
        flow=duct.flow,
        velocity=duct.velocity,
        static=(duct.static_pressure_start, duct.static_pressure),
        total=(duct.total_pressure_start, duct.total_pressure),
        least_velocity=duct.transport_velocity,
        carries=duct.carries,
        built=True,
        damper=duct.damper,
        troubles=tuple(_troubles(duct, tried)),
    )


def _troubles(duct: BuiltDuct, tried: Tried) -> Iterator[str]:
    if {duct.name, duct.start} & tried.closed:
        yield "shut"
    elif duct.flow < -STILL:
        yield "reversed"
    elif duct.settles:
        yield "settles"


def _hood(hood: BuiltHood, tried: Tried) -> HoodFlow:
    own = HoodFlow(hood.name, hood.flow, hood.intended, built=True)
    if {hood.name, hood.duct} & tried.closed:
        return replace(own, troubles=("shut",))
    if hood.blows_out:
        return replace(own, troubles=("reversed",))
    return replace(own, troubles=("short",) if own.share < ENOUGH else ())


def _fan(fan: BuiltFan) -> FanFlow:
    troubles = () if fan.stable else ("unstable",)
    return FanFlow(fan.name, fan.flow, fan.total_pressure, fan.shaft_power, built=True, troubles=troubles)


def intended_of(workplace: Workplace) -> LiveDucts:
    """The same of the intended flows, by the hand method with dirty filters."""
    design = {hood.name: design_flow(hood, workplace) for hood in workplace.hoods}
    hoods = {name: HoodFlow(name, flow, flow, built=False) for name, flow in design.items()}
    if not workplace.ducts:
        return LiveDucts({}, hoods, {}, {})
    walk = Walk(workplace, design, air_of(workplace.air), loaded=True)
    fans = {fan.name: _must_do(fan, walk) for fan in workplace.fans}
    ducts = {duct.name: _intended(walk.sections[duct.name], walk) for duct in workplace.ducts}
    uncurved = tuple(fan.name for fan in workplace.fans if fan.curve is None)
    return LiveDucts(ducts, hoods, fans, {}, uncurved, has_curve(workplace))


def _must_do(fan: Fan, walk: Walk) -> FanFlow:
    total_in, _, total_out, flow = fan_sides(fan, walk)
    rise = total_out - total_in
    return FanFlow(fan.name, flow, rise, power_of(fan, flow, rise), built=False, troubles=("uncurved",))


def _intended(section: Section, walk: Walk) -> DuctFlow:
    name, vp = section.duct.name, section.p_velocity
    static = walk.start[name], walk.end[name]
    return DuctFlow(
        name=name,
        flow=section.flow,
        velocity=section.velocity,
        static=static,
        total=(static[0] + vp, static[1] + vp),
        least_velocity=least_velocity(section.carries),
        carries=section.carries,
        built=False,
        troubles=() if keeps_moving(section.carries, section.velocity) else ("settles",),
    )
