"""Where each fan of a duct system can run: every crossing of its curve with what the system asks."""

from dataclasses import replace

import numpy as np

from hoodwright.ducts.fan import STANDARD_DENSITY
from hoodwright.errors import InputError
from hoodwright.network import operating_points, solve_graph

SAMPLES = 32
BEYOND = 1.2  # of the end of a curve, or of the flow found: how far is looked


def asked_of_fan(system, answer, name):
    """What a duct system asks of one of its fans, as a function of flow.

    The other fans stay on their curves, and temperatures as they are.

    Parameters
    ----------
    system : DuctSystem [SI]
    answer : SystemAnswer [SI]
        The system solved.
    name : str
        The run that the fan is in. It must take no part in a meeting: give the fan an inlet run of its own.

    Returns
    -------
    asked : function of a flow [m3/s] to a rise of total pressure [Pa]

    Valid: flows from 0 up; InputError where the run is no fan or part of a meeting.
    Source: [network-theory, balances of mass and pressure]
    """
    at = answer.at(name)
    run = system.runs[at]
    if run.fan is None or any(meeting.node in (run.start, run.end) for meeting in system.meetings):
        raise InputError(f"{name} is no fan, or part of a meeting; give the fan an inlet run of its own")
    rest = replace(system, runs=[one for i, one in enumerate(system.runs) if i != at])
    others = np.delete(np.arange(len(system.runs)), at)
    graph = rest.graph(frozenset(answer.turned_back))
    branches = rest.branches(answer.temperature[others])
    inlet, outlet = rest.nodes[run.start], rest.nodes[run.end]
    before, behind = int(np.flatnonzero(graph.end == inlet)[0]), int(np.flatnonzero(graph.start == outlet)[0])
    rho, own = answer.density[at], run.loss * answer.density[at] / (2 * run.area**2)
    flows = (answer.flow * answer.density)[others]
    injected = np.zeros(len(graph.pressure))

    def asked(flow: float) -> float:
        nonlocal flows
        injected[inlet], injected[outlet] = -rho * flow, rho * flow
        found = solve_graph(graph, branches, flows, injected=injected)
        flows = found.mass_flow
        low = found.start_pressure[before] - found.loss[before] - found.junction_loss[before]
        return float(found.start_pressure[behind] - low + own * flow * abs(flow))

    return asked


def fan_points(system, answer, name, samples=SAMPLES):
    """Every operating point of a fan in a duct system, from flow 0 up.

    Parameters
    ----------
    system : DuctSystem [SI]
    answer : SystemAnswer [SI]
        The system solved.
    name : str
        The run that the fan is in.
    samples : int
        How many flows are tried; two crossings between two of them are missed.

    Returns
    -------
    points : tuple of OperatingPoint [m3/s, Pa]
        None where the fan never gives what is asked, or always more.

    Valid: as `asked_of_fan`.
    Source: [cengel-fm, ch. 14, operating point]
    """
    at = answer.at(name)
    curve = system.runs[at].fan.scaled(pressure=answer.density[at] / STANDARD_DENSITY)
    greatest = BEYOND * max(curve.end, float(answer.flow[at]))
    return operating_points(curve, asked_of_fan(system, answer, name), greatest, samples)
