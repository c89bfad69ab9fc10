"""From the ductwork of a workplace to runs and meetings of a duct system.

Every duct is one run of its own name. What is lost before it starts (hood, cone), behind its end (open air), through
its seams and in fans and cleaners are runs of their own, without length, so that the pressures at both ends of a duct
are those that a gauge would read there.
"""

import math
from collections.abc import Collection, Mapping
from dataclasses import dataclass, field
from typing import TypedDict

from hoodwright import ducts as d
from hoodwright.ducts.system import Meeting, Run
from hoodwright.tasks.fitting_losses import losses_of
from hoodwright.tasks.sections import Section
from hoodwright.tasks.shapes import area_of
from hoodwright.tasks.walk import GENTLEST_CONTRACTION, STEEPEST_EXPANSION, Walk
from hoodwright.workplace.check import OUTSIDE
from hoodwright.workplace.model import Duct, Fan, Resistance

ROOM = "room air"  # where leaks come from, and go to
SHUT = 1e6  # velocity pressures of a gate that is shut
LEAK_EXPONENT = 1 / 0.65  # of the flow: pressure that a seam takes
LEAST_EXPONENT = 0.1
TAPPED = 1e-6  # share by which areas may differ and count as one


@dataclass(frozen=True)
class State:
    """In which state a system is built: share of the load of its filters, gates, dampers, speeds, law."""

    load: float = 1.0
    closed: frozenset[str] = frozenset()
    dampers: Mapping[str, float] = field(default_factory=dict)
    speeds: Mapping[str, float] = field(default_factory=dict)  # over the speed of the curve
    law: str = "momentum"
    leaks: bool = True


class Asked(TypedDict, total=False):
    """What `system_of` and all that builds on it may be asked."""

    loaded: bool | float
    closed: Collection[str]
    dampers: Mapping[str, float] | None
    speeds: Mapping[str, float] | None
    law: str
    leaks: bool


class Builder:
    """Collects runs, meetings and the flows to start from."""

    def __init__(self, walk: Walk, ducts: tuple[Duct, ...], state: State):
        self.walk, self.ducts, self.state = walk, ducts, state
        self.runs: list[Run] = []
        self.meetings: list[Meeting] = []
        self.flows: list[float] = []
        self.leaking = {duct.name for duct in ducts if duct.leak is not None} if state.leaks else set()
        for duct in ducts:
            self._duct(walk.sections[duct.name])
        for node in dict.fromkeys(duct.start for duct in ducts if duct.start not in walk.hoods):
            self._node(node)

    def add(self, name: str, start: str, end: str, section: Section, area: float | None = None, **more) -> str:
        """One run in the air of a section; its size too, unless an area is given."""
        own = area_of(section.duct) if area is None else area
        width = section.diameter if area is None else math.sqrt(4 * own / math.pi)
        flow, given = more.pop("flow", section.flow), more.pop("temperature", section.duct.temperature)
        self.runs.append(Run(name, start, end, own, width, temperature=given, **more))
        self.flows.append(0.0 if more.get("leak") else flow)
        return name

    def _duct(self, section: Section) -> None:
        duct = section.duct
        here = self._behind_hood(section) if duct.start in self.walk.hoods else self._behind_node(section)
        end = f"{duct.name}, end" if duct.to == OUTSIDE else duct.to
        loss = self.coefficient(section)
        self.add(
            duct.name,
            here,
            end,
            section,
            length=duct.length,
            roughness=float(d.roughness(duct.material)),
            loss=loss,
            rise=duct.rise,
        )
        if duct.to == OUTSIDE:
            self.add(f"{duct.name}, exit", end, OUTSIDE, section, loss=d.STACK_EXIT_LOSS)

    def coefficient(self, section: Section) -> float:
        """All fittings of a duct in velocity pressures; its dampers as they stand in this state."""
        duct, state = section.duct, self.state
        plain = duct.model_copy(update={"joins_at": None})
        found = zip(duct.fittings, losses_of(plain, section.reynolds, section.friction_factor), strict=True)
        total, dampers = 0.0, 0.0
        for fitting, loss in found:
            if fitting.damper is not None:
                dampers += fitting.damper / section.p_velocity
            elif fitting.damper_loss is not None:
                dampers += fitting.damper_loss
            else:
                total += loss.coefficient
        alone = len(self.walk.arriving(duct.to)) == 1
        total += entry_of(duct) if alone else 0.0
        total += SHUT if {duct.name, duct.start} & state.closed else 0.0
        return total + state.dampers.get(duct.name, dampers)

    def _behind_hood(self, section: Section) -> str:
        hood = self.walk.hoods[section.duct.start]
        here = hood.name
        if hood.filter is not None:
            end = f"{hood.name}, behind the filter"
            self.add(f"{hood.name}, filter", here, end, section, **self.resistance(hood.filter))
            here = end
        end = f"{section.duct.name}, start"
        self.add(f"{hood.name}, entry", here, end, section, loss=self.walk.entry(section).coefficient)
        return end

    def resistance(self, resistance: Resistance) -> dict[str, float]:
        """Pressure by flow, at the load of this state."""
        rated = resistance.clean + self.state.load * (resistance.dirty - resistance.clean)
        exponent = max(resistance.exponent, LEAST_EXPONENT)
        return {"coefficient": rated / resistance.at**exponent, "exponent": exponent}

    def _behind_node(self, section: Section) -> str:
        """Where the duct itself begins: behind fan, cleaner, cone, and the leaks of a duct that is blown into."""
        duct = section.duct
        here = f"{duct.start}, outlet" if self.is_machine(duct.start) else duct.start
        loss = self._cone(section)
        if loss is not None:
            here = self._on(f"{duct.name}, cone", here, section, loss)
        if duct.name in self.leaking and duct.name in self.walk.discharge:
            here = self._on(f"{duct.name}, start", here, section, 0.0)
            self._leak(section, here)
            self.meetings.append(Meeting(here, "momentum"))
        return here

    def _on(self, name: str, start: str, section: Section, loss: float) -> str:
        self.add(name, start, f"{name} end", section, loss=loss)
        return f"{name} end"

    def is_machine(self, node: str) -> bool:
        """Whether a fan or an air cleaner stands there."""
        return node in self.walk.fans or node in self.walk.cleaners

    def _cone(self, section: Section) -> float | None:
        """Velocity pressures of the duct that a cone at its start takes; None where there is none."""
        duct, arriving = section.duct, self.walk.arriving(section.duct.start)
        angle = math.degrees(duct.taper or 0.0)
        before = sum(area_of(s.duct) for s in arriving) if arriving else area_of(duct)
        wider = area_of(duct) / before
        if not angle or (angle > STEEPEST_EXPANSION and wider > 1):
            return None
        if wider <= 1:
            return float(d.contraction_loss(max(angle, GENTLEST_CONTRACTION)))
        if len(arriving) > 1 or self.is_machine(duct.start):
            return None
        return float(d.expansion_loss_share(angle)) * (wider**2 - 1)

    def _leak(self, section: Section, node: str) -> None:
        leak = section.duct.leak
        assert leak is not None
        coefficient = leak.at / leak.flow**LEAK_EXPONENT
        law = {"coefficient": coefficient, "exponent": LEAK_EXPONENT}
        self.add(f"{section.duct.name}, leak", ROOM, node, section, leak=True, temperature=None, **law)

    def _node(self, node: str) -> None:
        arriving = self.walk.arriving(node)
        leaks = [s for s in arriving if s.duct.name in self.leaking and s.duct.name not in self.walk.discharge]
        for section in leaks:
            self._leak(section, node)
        onward = self.walk.leaving(node)
        if node in self.walk.cleaners:
            cleaner = self.walk.cleaners[node]
            self.add(node, node, f"{node}, outlet", onward, **self.resistance(cleaner.resistance))
            self._meet(node, arriving, "tabulated")
        elif node in self.walk.fans:
            self._fan(self.walk.fans[node], arriving, onward, meets=len(arriving) > 1 or bool(leaks))
        elif len(arriving) > 1 or leaks or self._widens(arriving[0], onward):
            self._meet(node, arriving, self.state.law)

    def _widens(self, before: Section, behind: Section) -> bool:
        """Whether the air slows down without a cone that the tables know."""
        wider = area_of(behind.duct) > area_of(before.duct) * (1 + TAPPED)
        return wider and self._cone(behind) is None

    def _meet(self, node: str, arriving: list[Section], law: str) -> None:
        angles = {s.duct.name: s.duct.joins_at or 0.0 for s in arriving}
        alone = len(arriving) == 1
        losses = {s.duct.name: 0.0 if alone else entry_of(s.duct) for s in arriving}
        self.meetings.append(Meeting(node, law, {} if alone else angles, losses))

    def _fan(self, fan: Fan, arriving: list[Section], onward: Section, *, meets: bool) -> None:
        here, air = fan.name, {"temperature": _own(arriving), "flow": _all(arriving)}
        if meets or fan.system_effect.inlet:
            area, end = sum(area_of(s.duct) for s in arriving), f"{fan.name}, inlet end"
            self.add(f"{fan.name}, inlet", here, end, onward, area, loss=fan.system_effect.inlet, **air)
            if meets:
                self._meet(here, arriving, "tabulated")
            here = end
        outlet = area_of(fan.outlet) if fan.outlet is not None else area_of(onward.duct)
        curve = curve_of(fan, outlet, self.state.speeds.get(fan.name))
        loss = fan.system_effect.outlet
        self.add(fan.name, here, f"{fan.name}, outlet", arriving[0], outlet, loss=loss, fan=curve, **air)


def curve_of(fan: Fan, outlet: float, speed: float | None = None):
    """Total pressure of a fan by flow at standard density, at a share of the speed of its curve."""
    flows, pressures = zip(*(fan.curve or ()), strict=True)
    rated = d.rated_curve(flows, pressures, static=fan.pressure == "static", outlet_area=outlet, density=fan.density)
    return d.at_speed(rated, fan.speed_ratio if speed is None else speed)


def entry_of(duct: Duct) -> float:
    """Loss of a duct where it joins another, in its own velocity pressures, as the hand method counts it."""
    return 0.0 if duct.joins_at is None else float(d.branch_entry_loss(math.degrees(duct.joins_at)))


def _own(arriving: list[Section]) -> float | None:
    return arriving[0].duct.temperature if len(arriving) == 1 else None


def _all(arriving: list[Section]) -> float:
    return sum(section.flow for section in arriving)
