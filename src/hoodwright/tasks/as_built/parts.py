"""From a solved duct system back to hoods, ducts, junctions and cleaners."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from hoodwright.ducts.system import SystemAnswer
from hoodwright.tasks.as_built.answers import BuiltCleaner, BuiltDuct, BuiltHood, BuiltJunction, BuiltSide
from hoodwright.tasks.sections import NEVER_SETTLES, Section, least_velocity
from hoodwright.workplace.model import Workplace

if TYPE_CHECKING:
    from hoodwright.tasks.as_built.network import BuiltSystem

STILL = 1e-6  # m3/s: less than that does not blow out


def hoods_of(workplace: Workplace, built: BuiltSystem, solved: SystemAnswer) -> tuple[BuiltHood, ...]:
    """What every hood gets. The suction is the static pressure at the start of its duct."""
    found = []
    for hood in workplace.hoods:
        if hood.name not in built.hood_runs:
            continue
        duct = built.walk.leaving(hood.name).duct.name
        flow = float(solved.flow[solved.at(built.hood_runs[hood.name])])
        suction = -float(solved.p_static_start[solved.at(duct)])
        flow = 0.0 if -STILL < flow < 0 else flow
        found.append(BuiltHood(hood.name, duct, flow, built.design[hood.name], hood.intended_flow is not None, suction))
    return tuple(found)


def ducts_of(built: BuiltSystem, solved: SystemAnswer) -> tuple[BuiltDuct, ...]:
    """Every duct, in the order of the file. Nothing settles where every hood before it is shut."""
    idle = _idle(built)
    return tuple(_duct(duct.name, built, solved, idle=duct.name in idle) for duct in built.ducts)


def _idle(built: BuiltSystem) -> set[str]:
    """Ducts that are shut, or whose hoods are all shut off before them."""
    shut, idle = built.state.closed, set[str]()
    for section in built.walk.sections.values():  # in the order of the flow
        before = built.walk.arriving(section.duct.start)
        name, start = section.duct.name, section.duct.start
        if {name, start} & shut or (before and all(s.duct.name in idle for s in before)):
            idle.add(name)
    return idle


def _duct(name: str, built: BuiltSystem, solved: SystemAnswer, *, idle: bool) -> BuiltDuct:
    at, section = solved.at(name), built.walk.sections[name]
    leak = built.leak_runs.get(name)
    velocity, asked = float(solved.velocity[at]), least_velocity(section.carries)
    return BuiltDuct(
        name=name,
        start=section.duct.start,
        to=section.duct.to,
        flow=float(solved.flow[at]),
        velocity=velocity,
        velocity_pressure=float(solved.p_velocity[at]),
        static_pressure_start=float(solved.p_static_start[at]),
        static_pressure=float(solved.p_static_end[at]),
        total_pressure_start=float(solved.p_total_start[at]),
        total_pressure=float(solved.p_total_end[at]),
        loss=float(solved.loss[at]),
        buoyancy=float(solved.head[at]),
        damper=built.state.dampers.get(name, _stated(section)),
        leak=float(solved.flow[solved.at(leak)]) if leak else 0.0,
        transport_velocity=asked,
        carries=section.carries,
        settles=not idle and section.carries not in NEVER_SETTLES and velocity < asked,
        temperature=float(solved.temperature[at]),
        density=float(solved.density[at]),
    )


def _stated(section: Section) -> float:
    """Where the dampers of a duct stand by the file, in its velocity pressures."""
    return sum(f.damper_loss or 0.0 for f in section.duct.fittings) + section.fixed / section.p_velocity


def junctions_of(built: BuiltSystem, solved: SystemAnswer) -> tuple[BuiltJunction, ...]:
    """Every node where two ducts or more meet."""
    system, mass = built.system, solved.flow * solved.density
    found = []
    for node in dict.fromkeys(duct.start for duct in built.ducts):
        sides = built.walk.arriving(node)
        if len(sides) > 1:
            missing = float(np.sum(mass[list(system.arriving(node))]) - np.sum(mass[list(system.leaving(node))]))
            to = built.walk.leaving(node).duct.name
            found.append(BuiltJunction(node, to, tuple(_side(s.duct.name, solved) for s in sides), missing))
    return tuple(found)


def _side(name: str, solved: SystemAnswer) -> BuiltSide:
    at = solved.at(name)
    values = (solved.flow, solved.p_static_end, solved.p_total_end, solved.meeting_loss)
    return BuiltSide(name, *(float(value[at]) for value in values))


def cleaners_of(built: BuiltSystem, solved: SystemAnswer) -> tuple[BuiltCleaner, ...]:
    """Every air cleaner and every filter in a hood."""
    runs = {name: solved.at(run) for name, run in built.cleaner_runs.items()}
    return tuple(BuiltCleaner(name, float(solved.flow[at]), float(solved.loss[at])) for name, at in runs.items())
