"""The ductwork by the hand method: from every hood, duct by duct, to the fan and out.

The hand method balances static pressure. At a junction the side with the most suction governs; where the air slows down
something is regained only in a cone of known angle. On the discharge side the same losses are added up from the open
end back.
"""

import math
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, replace

from hoodwright import ducts as d
from hoodwright.tasks.assessment import AirAnswer, Line
from hoodwright.tasks.hood_entry import EntryLoss, entry_loss, filter_loss, resistance_at, resistance_line
from hoodwright.tasks.lines import digits
from hoodwright.tasks.sections import Section, carried, first_section, next_section
from hoodwright.workplace.check import OUTSIDE
from hoodwright.workplace.model import Duct, Fan, Workplace

GENTLEST_CONTRACTION, STEEPEST_EXPANSION = 30.0, 40.0  # deg: ends of the two tables
ACCELERATION = "balance-rule, acceleration behind a junction"


@dataclass(frozen=True)
class Step:
    """Static pressure spent between the ducts that arrive at a node and the one that leaves.

    `brought` is the velocity pressure of what arrives, by flow.
    """

    brought: float
    acceleration: float = 0.0
    contraction: float = 0.0
    regain: float = 0.0
    cleaner: float = 0.0

    @property
    def total(self) -> float:
        """All together [Pa]."""
        return self.acceleration + self.contraction - self.regain + self.cleaner


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

    def entry(self, section: Section) -> EntryLoss:
        """Entry loss of the hood that a section begins at."""
        return entry_loss(self.hoods[section.duct.start], section.duct, self.workplace)

    def in_hood(self, section: Section) -> float:
        """Pressure that the filter in a hood takes."""
        return filter_loss(self.hoods[section.duct.start], section.flow, loaded=self.loaded)

    def step_into(self, onward: Section) -> Step:
        """What the air spends at the node where a section begins."""
        inflow = self.arriving(onward.duct.start)
        brought = inflow[0].p_velocity
        if len(inflow) > 1:
            brought = float(d.resultant_velocity_pressure([s.flow for s in inflow], [s.p_velocity for s in inflow]))
        step = _change_of_speed(onward, brought, housed=onward.duct.start in self.cleaners)
        cleaner = self.cleaners.get(onward.duct.start)
        if cleaner is None:
            return step
        return replace(step, cleaner=resistance_at(cleaner.resistance, onward.flow, loaded=self.loaded))

    def _section(self, duct: Duct) -> Section:
        if duct.start not in self.hoods:
            return next_section(duct, self.arriving(duct.start), self.air, cleaned=duct.start in self.cleaners)
        hood = self.hoods[duct.start]
        return first_section(duct, self.flows[duct.start], carried(self.workplace, hood), self.air)

    def _towards_fan(self, section: Section) -> None:
        name, inflow = section.duct.name, self.arriving(section.duct.start)
        if section.duct.start in self.hoods:
            loss = self.entry(section).coefficient
            start = float(d.static_pressure_behind_hood(loss, section.p_velocity)) - self.in_hood(section)
        else:
            start = min(self.end[s.duct.name] for s in inflow) - self.step_into(section).total
        self.start[name], self.end[name] = start, start - section.loss

    def _back_from_outside(self, section: Section) -> None:
        name, end = section.duct.name, 0.0
        if section.duct.to != OUTSIDE:
            onward = self.leaving(section.duct.to)
            end = self.start[onward.duct.name] + self.step_into(onward).total
        self.end[name], self.start[name] = end, end + section.loss


def _change_of_speed(onward: Section, brought: float, *, housed: bool) -> Step:
    """Acceleration always; loss or regain of a cone where the file gives its angle. A housing gives nothing back."""
    vp, angle = onward.p_velocity, math.degrees(onward.duct.taper or 0.0)
    acceleration = float(d.junction_acceleration_loss(vp, brought))
    if acceleration:
        return Step(brought, acceleration, contraction=_contraction(angle) * vp if angle else 0.0)
    if not angle or housed or angle > STEEPEST_EXPANSION or brought <= vp:
        return Step(brought)
    return Step(brought, regain=float(d.static_regain(angle, brought, vp)))


def _contraction(angle: float) -> float:
    return float(d.contraction_loss(max(angle, GENTLEST_CONTRACTION)))


def step_lines(step: Step, onward: Section, walk: Walk) -> Iterator[Line]:
    """The lines to recompute what is spent at the node where a section begins."""
    vp, angle = onward.p_velocity, math.degrees(onward.duct.taper or 0.0)
    if step.acceleration:
        filled = f"{digits(vp)} - {digits(step.brought)} = {digits(step.acceleration)} Pa"
        yield Line("acceleration = VP - VP of what arrives, by flow", filled, ACCELERATION)
    if step.contraction:
        filled = f"{digits(_contraction(angle))} x {digits(vp)} = {digits(step.contraction)} Pa"
        yield Line(f"contraction, cone of {angle:.4g} deg = K x VP", filled, "duct-loss-table, contraction")
    if step.regain:
        share = digits(float(d.expansion_loss_share(angle)))
        filled = f"(1 - {share}) x ({digits(step.brought)} - {digits(vp)}) = {digits(step.regain)} Pa"
        formula = f"regain = (1 - share lost) x (VP before - VP), cone of {angle:.4g} deg"
        yield Line(formula, filled, "duct-loss-table, expansion")
    if step.cleaner:
        cleaner = walk.cleaners[onward.duct.start]
        yield resistance_line(cleaner.name, cleaner.resistance, onward.flow)


def _downstream(workplace: Workplace) -> list[Duct]:
    """Ducts in the order of the flow: each after all that lead to its start; else in that of the file."""
    ducts, hoods = workplace.ducts, {hood.name for hood in workplace.hoods}
    awaited = Counter(duct.to for duct in ducts)
    leaving: dict[str, list[int]] = {}
    for number, duct in enumerate(ducts):
        leaving.setdefault(duct.start, []).append(number)
    order: list[Duct] = []
    wave = [number for number, duct in enumerate(ducts) if duct.start in hoods]
    while wave:
        order += [ducts[number] for number in wave]
        awaited.subtract(ducts[number].to for number in wave)
        ready = dict.fromkeys(ducts[number].to for number in wave if not awaited[ducts[number].to])
        wave = sorted(number for node in ready for number in leaving.get(node, ()))
    return order


def _behind_fans(order: list[Duct], fans: dict[str, Fan]) -> set[str]:
    blown: set[str] = set()
    nodes = set(fans)
    for duct in order:
        if duct.start in nodes:
            blown.add(duct.name)
            nodes.add(duct.to)
    return blown
