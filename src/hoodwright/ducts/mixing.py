"""Temperatures in a duct system: what flows in at a node mixes, and goes on."""

import numpy as np
from scipy.sparse import coo_matrix, eye
from scipy.sparse.linalg import spsolve

from hoodwright.ducts.system import DuctSystem

NOTHING = 1e-12  # kg/s: a node at rest keeps the temperature of the room


def first_temperatures(system: DuctSystem) -> np.ndarray:
    """Temperature of every run before anything has mixed: its own where it is given, else that of the room.

    Parameters
    ----------
    system : DuctSystem [SI]

    Returns
    -------
    temperature : array (runs,) [K]

    Valid: always.
    Source: [network-theory, balance of heat]
    """
    room = system.air.temperature
    return np.array([room if run.temperature is None else run.temperature for run in system.runs])


def mixed_temperatures(system: DuctSystem, mass_flow: np.ndarray) -> np.ndarray:
    """Temperature of every run at given flows: what flows in at a node mixes. Runs lose no heat on their way.

    Parameters
    ----------
    system : DuctSystem [SI]
    mass_flow : array (runs,) [kg/s]

    Returns
    -------
    temperature : array (runs,) [K]

    Valid: always; heat capacity is taken as the same everywhere, and a node at rest keeps the temperature of the room.
    Source: [network-theory, balance of heat]
    """
    given = first_temperatures(system)
    if all(run.temperature is None for run in system.runs):
        return given
    nodes = system.nodes
    ends = np.array([[nodes[run.start], nodes[run.end]] for run in system.runs])
    forward = mass_flow >= 0
    before, behind = np.where(forward, ends[:, 0], ends[:, 1]), np.where(forward, ends[:, 1], ends[:, 0])
    size, count, flow = len(given), len(nodes), np.abs(mass_flow)
    own = np.array([run.temperature is not None for run in system.runs])
    inner = ~np.isin(np.arange(count), [nodes[node] for node in system.pressures if node in nodes])
    total = np.bincount(behind, flow, count)
    fed = inner & (total > NOTHING)
    takes = np.flatnonzero(~own & fed[before])
    mixes = np.flatnonzero(fed[behind])
    rows = np.concatenate([takes, size + behind[mixes]])
    columns = np.concatenate([size + before[takes], mixes])
    share = np.concatenate([np.ones(len(takes)), flow[mixes] / total[behind[mixes]]])
    known = np.concatenate([np.where(own | ~fed[before], given, 0.0), np.where(fed, 0.0, system.air.temperature)])
    matrix = eye(size + count, format="csc") - coo_matrix((share, (rows, columns)), (size + count,) * 2).tocsc()
    return spsolve(matrix, known)[:size]
