"""Solve a duct system as built: pressures, flows, and the temperatures that mix on the way, until all agree."""

import numpy as np

from hoodwright.ducts.mixing import first_temperatures, mixed_temperatures
from hoodwright.ducts.system import DuctSystem, SystemAnswer
from hoodwright.errors import NoSolution
from hoodwright.network import Network, NetworkAnswer

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
    flows = None if start is None else np.asarray(start, float) * system.densities(temperature)
    tabulated = frozenset(meeting.node for meeting in system.meetings if meeting.law == "tabulated")
    turned, first = tabulated, True  # the first round goes by momentum, which settles from any start
    moved = np.inf
    for _ in range(MOST_ROUNDS):
        found = Network(system.graph(turned)).solved(system.branches(temperature), flows)
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


def _turned_back(system: DuctSystem, flows: np.ndarray, tabulated: frozenset[str]) -> frozenset[str]:
    """Meetings of the tabulated law where something flows out of an inlet."""
    return frozenset(node for node in tabulated if any(flows[i] < -AT_REST for i in system.arriving(node)))


def _answer(system: DuctSystem, found: NetworkAnswer, temperature: np.ndarray, turned: frozenset[str]) -> SystemAnswer:
    branches = system.branches(temperature)
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
