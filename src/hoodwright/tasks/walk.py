"""The ductwork by the hand method: from every hood, duct by duct, to the fan and out.

The hand method balances static pressure. At a junction the side with the most suction governs; nothing is
regained where the air slows down. On the discharge side the same losses are added up from the open end back.
"""

import math
from dataclasses import dataclass

from hoodwright import ducts as d
from hoodwright.air import velocity_pressure
from hoodwright.hoods import entry
from hoodwright.tasks.assessment import AirAnswer, Line
from hoodwright.tasks.lines import digits
from hoodwright.tasks.need import has_full_flange
from hoodwright.workplace.check import OUTSIDE
from hoodwright.workplace.model import Cleaner, Duct, Fan, Fitting, Hood, Workplace

TRANSPORT_BY_KIND = {
    "gas": "vapour",
    "vapour": "vapour",
    "smoke": "fume",
    "fume": "fume",
    "mist": "vapour",
    "dust": "workshop dust",
}


@dataclass(frozen=True)
class Section:
    """A duct at its flow, before pressures are known along it."""

    duct: Duct
    flow: float
    carries: str
    velocity: float
    p_velocity: float
    loss: float
    lines: tuple[Line, ...]


def hood_loss(hood: Hood) -> tuple[float, str]:
    """Entry loss of a hood in velocity pressures of its duct, and the row of the table it comes from."""
    shape = "bell mouth" if hood.bell_mouth else "flanged" if has_full_flange(hood) else "plain"
    return entry.entry_loss_coefficient(shape), shape


def duct_area(duct: Duct) -> float:
    """Cross-section of a duct."""
    return math.pi / 4 * duct.round**2 if duct.round is not None else duct.rectangle[0] * duct.rectangle[1]


class Walk:
    """Walks the tree once: flows and losses of every section, then pressures up to and behind the fans."""

    def __init__(self, workplace: Workplace, flows: dict[str, float], air: AirAnswer, *, loaded: bool):
        self.workplace, self.air, self.loaded = workplace, air, loaded
        self.hoods = {hood.name: hood for hood in workplace.hoods}
        self.cleaners = {cleaner.name: cleaner for cleaner in workplace.cleaners}
        self.fans = {fan.name: fan for fan in workplace.fans}
        self.flows = flows
        self.sections: dict[str, Section] = {}
        self.start: dict[str, float] = {}
        self.end: dict[str, float] = {}
        order = _downstream(workplace)
        for duct in order:
            self.sections[duct.name] = self._section(duct)
        self.discharge = _behind_fans(order, self.fans)
        for duct in order:
            if duct.name not in self.discharge:
                self._towards_fan(self.sections[duct.name])
        for duct in reversed(order):
            if duct.name in self.discharge:
                self._back_from_outside(self.sections[duct.name])

    def arriving(self, node: str) -> list[Section]:
        """Sections that end at a node."""
        return [section for section in self.sections.values() if section.duct.to == node]

    def leaving(self, node: str) -> Section:
        """The section that starts at a node."""
        return next(section for section in self.sections.values() if section.duct.start == node)

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
    waiting, order, reached = list(workplace.ducts), [], {hood.name for hood in workplace.hoods}
    while waiting:
        ready = [duct for duct in waiting if duct.start in reached]
        done = {duct.name for duct in order + ready}
        waiting = [duct for duct in waiting if duct.name not in done]
        order += ready
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


def _section_at(duct: Duct, flow: float, carries: str, air: AirAnswer) -> Section:
    area = duct_area(duct)
    diameter = duct.round if duct.round is not None else float(d.hydraulic_diameter(*duct.rectangle))
    velocity = flow / area
    vp = float(velocity_pressure(velocity, air.density))
    reynolds = d.reynolds_number(velocity, diameter, air.density, air.viscosity)
    factor = float(d.friction_factor(reynolds, d.roughness(duct.material) / diameter))
    friction = float(d.pressure_loss(factor, duct.length, diameter, vp))
    lines = [
        Line("V = Q / A", f"{digits(flow)} / {digits(area)} = {digits(velocity)} m/s", "continuity"),
        Line(
            "VP = rho V² / 2",
            f"{digits(air.density)} x {digits(velocity)}² / 2 = {digits(vp)} Pa",
            "definition",
        ),
        Line(
            f"friction = f L / D x VP, f by Colebrook at Re {digits(float(reynolds), 4)}, {duct.material}",
            f"{digits(factor)} x {digits(duct.length)} / {digits(diameter)} x {digits(vp)} = {digits(friction)} Pa",
            "colebrook39, 3.7 and 2.51; roughness-table, absolute roughness",
        ),
    ]
    fittings = [_fitting(fitting) for fitting in duct.fittings]
    if duct.joins_at is not None:
        angle = math.degrees(duct.joins_at)
        fittings.append((float(d.branch_entry_loss(angle)), f"branch entry {angle:g} deg", "lev-elbows, branch entry"))
    for loss, name, source in fittings:
        lines.append(Line(f"{name} = K x VP", f"{digits(loss)} x {digits(vp)} = {digits(loss * vp)} Pa", source))
    total = float(d.duct_static_loss(vp, factor, duct.length, diameter, sum(loss for loss, *_ in fittings)))
    return Section(duct, flow, carries, velocity, vp, total, tuple(lines))


def _fitting(fitting: Fitting) -> tuple[float, str, str]:
    if fitting.loss is not None:
        return fitting.loss, fitting.name or "fitting", "stated by the user"
    angle = math.degrees(fitting.elbow)
    if fitting.pieces is not None:
        loss = d.gored_elbow_loss(fitting.pieces, fitting.radius) * float(d.elbow_angle_share(angle))
        return (
            loss,
            f"elbow {angle:g} deg, {fitting.pieces} pieces",
            "lev-elbows, elbow loss by number of pieces",
        )
    loss = float(d.smooth_elbow_loss(fitting.radius)) * float(d.elbow_angle_factor(angle))
    return loss, f"smooth elbow {angle:g} deg, R/D {fitting.radius:g}", "fitting-table, table A-7A"
