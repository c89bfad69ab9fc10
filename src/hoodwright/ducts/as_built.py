"""Solve a duct system as built: pressures, flows, and the temperatures that mix on the way, until all agree."""

import numpy as np

from hoodwright.air import density, viscosity
from hoodwright.ducts.fan import STANDARD_DENSITY
from hoodwright.ducts.mixing import first_temperatures, mixed_temperatures
from hoodwright.ducts.system import DuctSystem, Meeting, SystemAnswer
from hoodwright.errors import NoSolution
from hoodwright.network import Branches, Graph, Junction, Network, NetworkAnswer

GRAVITY = 9.80665  # m/s2
SAME_TEMPERATURE = 1e-6  # K
MOST_ROUNDS = 40
AT_REST = 1e-9  # kg/s: what flows back less than that does not flow back


def solve_system(system, start=None):
    """Flows and pressures of a duct system as built.

    Densities follow the temperatures that mix at the nodes; hot air in a rising duct drives the flow. Where the flow
    turns back at a meeting of the tabulated law, which knows no such flow, the balance of momentum takes over.

    Parameters
    ----------
    system : DuctSystem [SI]
    start : array (runs,) [m3/s], optional
        Flows to start from, such as the design flows.

    Returns
    -------
    answer : SystemAnswer [SI]

    Valid: speeds at which air is incompressible; NoSolution says where it did not settle.
    Source: [network-theory, balances of mass and pressure]
    """
    temperature = first_temperatures(system)
    flows = None if start is None else np.asarray(start, float) * _densities(system, temperature)
    tabulated = frozenset(meeting.node for meeting in system.meetings if meeting.law == "tabulated")
    turned, first = tabulated, True  # the first round goes by momentum, which settles from any start
    moved = np.inf
    for _ in range(MOST_ROUNDS):
        found = Network(_graph_of(system, turned)).solved(_branches_of(system, temperature), flows)
        flows = found.mass_flow
        back = _turned_back(system, flows, tabulated) | (frozenset() if first else turned)
        mixed = mixed_temperatures(system, flows)
        moved = float(np.max(np.abs(mixed - temperature), initial=0.0))
        if back == turned and moved < SAME_TEMPERATURE:
            return _answer(system, found, temperature, turned)
        turned, temperature, first = back, mixed, False
    raise NoSolution(
        f"temperatures and flows did not agree in {MOST_ROUNDS} rounds: a temperature still moves by {moved:.3g} K; "
        "check the given temperatures"
    )


def _graph_of(system: DuctSystem, by_momentum: frozenset[str] = frozenset()) -> Graph:
    """Nodes and meetings of a system by number; at the meetings named, momentum in place of the law they ask for."""
    nodes = system.nodes
    start, end = (np.array([nodes[getattr(run, side)] for run in system.runs]) for side in ("start", "end"))
    pressure = np.array([system.pressures.get(node, np.nan) for node in nodes])
    found = [_junction(system, meeting, by_momentum) for meeting in system.meetings]
    return Graph(start, end, pressure, found)


def _branches_of(system: DuctSystem, temperature: np.ndarray) -> Branches:
    """What every run does to the pressure, at its temperature."""
    runs, rho = system.runs, _densities(system, temperature)
    outside = float(density(system.air.temperature, system.air.p_abs, system.air.humidity_ratio))
    fans = [number for number, run in enumerate(runs) if run.fan is not None]
    curves = tuple(runs[i].fan.scaled(pressure=rho[i] / STANDARD_DENSITY) for i in fans)  # type: ignore[union-attr]
    numbers = np.full(len(runs), -1)
    numbers[fans] = np.arange(len(fans))
    each = {
        name: np.array([getattr(run, name) for run in runs], dtype=float)
        for name in ("area", "diameter", "length", "roughness", "loss", "coefficient", "exponent", "rise")
    }
    head = (outside - rho) * GRAVITY * each.pop("rise")
    return Branches(
        names=system.names, density=rho, viscosity=viscosity(temperature), head=head, fan=numbers, curves=curves, **each
    )


def _junction(system: DuctSystem, meeting: Meeting, by_momentum: frozenset[str]) -> Junction:
    arriving, leaving = system.arriving(meeting.node), system.leaving(meeting.node)
    law = "momentum" if meeting.node in by_momentum else meeting.law
    angles = [float(np.cos(meeting.angles.get(system.runs[i].name, 0.0))) for i in arriving]
    losses = [meeting.coefficients.get(system.runs[i].name, 0.0) for i in arriving]
    leak = tuple(system.runs[i].leak for i in arriving)
    return Junction(law, arriving, leaving[0], tuple(angles if law == "momentum" else losses), leak)  # type: ignore[arg-type]


def _turned_back(system: DuctSystem, flows: np.ndarray, tabulated: frozenset[str]) -> frozenset[str]:
    """Meetings of the tabulated law where something flows out of an inlet."""
    return frozenset(node for node in tabulated if any(flows[i] < -AT_REST for i in system.arriving(node)))


def _densities(system: DuctSystem, temperature: np.ndarray) -> np.ndarray:
    return np.asarray(density(temperature, system.air.p_abs, system.air.humidity_ratio), dtype=float)


def _answer(system: DuctSystem, found: NetworkAnswer, temperature: np.ndarray, turned: frozenset[str]) -> SystemAnswer:
    branches = _branches_of(system, temperature)
    rho = np.asarray(branches.density)
    flow = found.mass_flow / rho
    rise = np.zeros(len(flow))
    for i, curve in zip(np.flatnonzero(branches.fan_numbers >= 0), branches.curves, strict=True):
        rise[i] = curve.rise(flow[i])
    return SystemAnswer(
        names=system.names,
        flow=flow,
        velocity=flow / np.asarray(branches.area),
        density=rho,
        temperature=temperature,
        p_total_start=found.start_pressure,
        p_total_end=found.end_pressure,
        loss=found.loss + branches.head + rise,
        head=np.asarray(branches.head),
        rise=rise,
        meeting_loss=found.junction_loss,
        turned_back=tuple(sorted(turned)),
        residual=found.residual,
        steps=found.steps,
    )
