"""The ductwork by the hand method: from every hood, duct by duct, to the fan and out.

The hand method balances static pressure. At a junction the side with the most suction governs; nothing is
regained where the air slows down. On the discharge side the same losses are added up from the open end back.
"""

import math
from dataclasses import dataclass
from functools import lru_cache

from hoodwright import ducts as d
from hoodwright.air import velocity_pressure
from hoodwright.hoods import entry
from hoodwright.tasks.assessment import AirAnswer
from hoodwright.tasks.laws import area_of, has_full_flange
from hoodwright.workplace.check import OUTSIDE
from hoodwright.workplace.model import Cleaner, Duct, Fan, Fitting, Hood, Workplace

# Our reading: the table has no row for mist, so the faster fume row is taken.
TRANSPORT_BY_KIND = {
    "gas": "vapour",
    "vapour": "vapour",
    "smoke": "fume",
    "fume": "fume",
    "mist": "fume",
    "dust": "workshop dust",
}


@dataclass(frozen=True)
class Loss:
    """Loss of one fitting in velocity pressures, in words, and where it comes from."""

    coefficient: float
    name: str
    source: str


@dataclass(frozen=True)
class Section:
    """A duct at its flow, before pressures are known along it."""

    duct: Duct
    flow: float
    carries: str
    velocity: float
    p_velocity: float
    diameter: float
    reynolds: float
    friction_factor: float
    friction: float
    fittings: tuple[Loss, ...]
    loss: float


def hood_loss(hood: Hood) -> tuple[float, str]:
    """Entry loss of a hood in velocity pressures of its duct, and the row of the table it comes from."""
    shape = "bell mouth" if hood.bell_mouth else "flanged" if has_full_flange(hood) else "plain"
    return entry.entry_loss_coefficient(shape), shape


class Walk:
    """Walks the tree once: flows and losses of every section, then pressures up to and behind the fans."""

    def __init__(self, workplace: Workplace, flows: dict[str, float], air: AirAnswer, *, loaded: bool):
        self.workplace, self.air, self.loaded = workplace, air, loaded
        self.hoods = {hood.name: hood for hood in workplace.hoods}
        self.cleaners = {cleaner.name: cleaner for cleaner in workplace.cleaners}
        self.fans = {fan.name: fan for fan in workplace.fans}
        self.flows = flows
        self.sections: dict[str, Section] = {}
        self._arriving: dict[str, list[Section]] = {}
        self._leaving: dict[str, Section] = {}
        self.start: dict[str, float] = {}
        self.end: dict[str, float] = {}
        order = _downstream(workplace)
        for duct in order:
            section = self._section(duct)
            self.sections[duct.name] = self._leaving[duct.start] = section
            self._arriving.setdefault(duct.to, []).append(section)
        self.discharge = _behind_fans(order, self.fans)
        for duct in order:
            if duct.name not in self.discharge:
                self._towards_fan(self.sections[duct.name])
        for duct in reversed(order):
            if duct.name in self.discharge:
                self._back_from_outside(self.sections[duct.name])

    def arriving(self, node: str) -> list[Section]:
        """Sections that end at a node."""
        return self._arriving.get(node, [])

    def leaving(self, node: str) -> Section:
        """The section that starts at a node."""
        return self._leaving[node]

    def cleaner_loss(self, node: str, flow: float) -> float:
        """Resistance of the cleaner at a node; 0 where there is none."""
        cleaner = self.cleaners.get(node)
        return cleaner_resistance(cleaner, flow, loaded=self.loaded) if cleaner else 0.0

    def _section(self, duct: Duct) -> Section:
        if duct.start in self.hoods:
            flow, carries = self.flows[duct.start], _carried(self.workplace, self.hoods[duct.start])
        else:
            inflow = self.arriving(duct.start)
            flow, carries = sum(s.flow for s in inflow), _fastest([s.carries for s in inflow])
        return _section_at(duct, flow, carries, self.air)

    def _towards_fan(self, section: Section) -> None:
        hood = self.hoods.get(section.duct.start)
        if hood:
            start = float(d.static_pressure_behind_hood(hood_loss(hood)[0], section.p_velocity))
        else:
            inflow = self.arriving(section.duct.start)
            start = min(self.end[s.duct.name] for s in inflow) - self._node_loss(section, inflow)
        self.start[section.duct.name] = start
        self.end[section.duct.name] = start - section.loss

    def _back_from_outside(self, section: Section) -> None:
        end = 0.0
        if section.duct.to != OUTSIDE:
            onward = self.leaving(section.duct.to)
            end = self.start[onward.duct.name] + self._node_loss(onward, self.arriving(section.duct.to))
        self.end[section.duct.name] = end
        self.start[section.duct.name] = end + section.loss

    def _node_loss(self, onward: Section, inflow: list[Section]) -> float:
        return acceleration_loss(onward, inflow) + self.cleaner_loss(onward.duct.start, onward.flow)


def acceleration_loss(onward: Section, inflow: list[Section]) -> float:
    """Static pressure spent where the air leaves a junction faster than it came."""
    brought = d.resultant_velocity_pressure([s.flow for s in inflow], [s.p_velocity for s in inflow])
    return float(d.junction_acceleration_loss(onward.p_velocity, brought))


def cleaner_resistance(cleaner: Cleaner, flow: float, *, loaded: bool) -> float:
    """Pressure a cleaner takes at a flow, clean or loaded."""
    resistance = cleaner.resistance
    rated = resistance.dirty if loaded else resistance.clean
    return rated * (flow / resistance.at) ** resistance.exponent


def _downstream(workplace: Workplace) -> list[Duct]:
    """Ducts in the order of the flow: each after all that lead to its start."""
    order: list[Duct] = []
    waiting, reached = list(workplace.ducts), {hood.name for hood in workplace.hoods}
    while waiting:
        order += [duct for duct in waiting if duct.start in reached]
        waiting = [duct for duct in waiting if duct.start not in reached]
        blocked = {duct.to for duct in waiting}
        reached |= {duct.to for duct in order if duct.to not in blocked}
    return order


def _behind_fans(order: list[Duct], fans: dict[str, Fan]) -> set[str]:
    blown: set[str] = set()
    nodes = set(fans)
    for duct in order:
        if duct.start in nodes:
            blown.add(duct.name)
            nodes.add(duct.to)
    return blown


def _carried(workplace: Workplace, hood: Hood) -> str:
    found = [workplace.contaminant(workplace.source(name).contaminant) for name in hood.serves]
    return _fastest([c.transport or TRANSPORT_BY_KIND[c.kind] for c in found])


def _fastest(kinds: list[str]) -> str:
    return max(kinds, key=lambda kind: d.transport_velocity_range(kind)[0])


@lru_cache(maxsize=4096)
def _section_at(duct: Duct, flow: float, carries: str, air: AirAnswer) -> Section:
    velocity = flow / area_of(duct)
    vp = float(velocity_pressure(velocity, air.density))
    diameter = duct.sides[0] if duct.is_round else float(d.hydraulic_diameter(*duct.sides))
    reynolds = float(d.reynolds_number(velocity, diameter, air.density, air.viscosity))
    factor = float(d.friction_factor(reynolds, d.roughness(duct.material) / diameter))
    fittings = tuple(_losses(duct))
    coefficients = sum(loss.coefficient for loss in fittings)
    return Section(
        duct=duct,
        flow=flow,
        carries=carries,
        velocity=velocity,
        p_velocity=vp,
        diameter=diameter,
        reynolds=reynolds,
        friction_factor=factor,
        friction=float(d.pressure_loss(factor, duct.length, diameter, vp)),
        fittings=fittings,
        loss=float(d.duct_static_loss(vp, factor, duct.length, diameter, coefficients)),
    )


def _losses(duct: Duct):
    yield from (_fitting(fitting) for fitting in duct.fittings)
    if duct.joins_at is not None:
        angle = math.degrees(duct.joins_at)
        yield Loss(float(d.branch_entry_loss(angle)), f"branch entry {angle:g} deg", "lev-elbows, branch entry")


def _fitting(fitting: Fitting) -> Loss:
    if fitting.elbow is None:
        return Loss(fitting.loss or 0.0, fitting.name or "fitting", "stated by the user")
    angle = math.degrees(fitting.elbow)
    if fitting.pieces is not None:
        loss = d.gored_elbow_loss(fitting.pieces, fitting.radius) * float(d.elbow_angle_share(angle))
        name = f"elbow {angle:g} deg, {fitting.pieces} pieces"
        return Loss(loss, name, "lev-elbows, elbow loss by number of pieces")
    loss = float(d.smooth_elbow_loss(fitting.radius)) * float(d.elbow_angle_factor(angle))
    return Loss(loss, f"smooth elbow {angle:g} deg, R/D {fitting.radius:g}", "fitting-table, table A-7A")
