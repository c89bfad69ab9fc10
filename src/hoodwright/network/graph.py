"""Networks of any shape: rings, several fans, rooms with cracks. Sparse Newton for flows and pressures together."""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise

import numpy as np
from scipy.sparse import csc_matrix
from scipy.sparse.linalg import splu

from hoodwright.errors import InputError
from hoodwright.kernels.branch_loss import losses
from hoodwright.kernels.junction_loss import junction_losses
from hoodwright.network.answer import NetworkAnswer
from hoodwright.network.junctions import LAWS, Junction
from hoodwright.network.settling import MOST_STEPS, SETTLED

GROWING, HALF, SHORTEST = 0.9, 0.5, 0.25


@dataclass(frozen=True, eq=False)
class Graph:
    """Branches between nodes. `pressure` is the fixed total pressure of a node, NaN where it is to be found."""

    start: np.ndarray  # (n,) node
    end: np.ndarray  # (n,) node
    pressure: np.ndarray  # (nodes,) Pa or NaN
    junctions: Sequence[Junction] = ()

    def __post_init__(self):
        nodes = np.concatenate([self.start, self.end])
        if nodes.min(initial=0) < 0 or nodes.max(initial=-1) >= len(self.pressure):
            raise InputError(f"nodes are numbered 0 to {len(self.pressure) - 1}, got {nodes.min()} to {nodes.max()}")
        if not np.isfinite(self.pressure).any():
            raise InputError(
                "a part of the network is joined to no node of given pressure, so its own is not determined; join it "
                "to the room, or leave it out"
            )
        for junction in self.junctions:
            if any(self.end[i] != self.start[junction.common] for i in junction.inlets):
                raise InputError(f"junction before branch {junction.common}: an inlet ends at another node")

    @cached_property
    def free(self) -> np.ndarray:
        """(nodes,) the number of each unknown pressure, or -1."""
        unknown = np.isnan(self.pressure)
        return np.where(unknown, np.cumsum(unknown) - 1, -1)

    @cached_property
    def junction_arrays(self) -> tuple:
        """First inlet, inlets on end, common branch, law; own part and cosine of every branch."""
        own, cosine = np.zeros((2, len(self.start)))
        for junction in self.junctions:
            for place, i in enumerate(junction.inlets):
                leak, value = bool(junction.leak and junction.leak[place]), junction.values[place]
                own[i] = 0.0 if leak or junction.law == "plain" else 1.0 + value * (junction.law == "tabulated")
                cosine[i] = value if junction.law == "momentum" and not leak else 0.0
        sizes = [len(junction.inlets) for junction in self.junctions]
        first = np.concatenate([[0], np.cumsum(sizes)]).astype(np.int64)
        inlet = np.array([i for junction in self.junctions for i in junction.inlets], dtype=np.int64)
        common = np.array([junction.common for junction in self.junctions], dtype=np.int64)
        kind = np.array([LAWS[junction.law] for junction in self.junctions], dtype=np.int64)
        return first, inlet, common, kind, own, cosine

    @cached_property
    def pattern(self) -> "_Pattern":
        """Where the slopes stand in the sparse matrix; it does not change from step to step."""
        return _Pattern(self)


class _Pattern:
    """Rows: balances of pressure of all branches, then of mass at free nodes. Columns: flows, then pressures."""

    def __init__(self, graph: Graph):
        size, free = len(graph.start), graph.free
        self.starts, self.ends = (np.flatnonzero(free[nodes] >= 0) for nodes in (graph.start, graph.end))
        before, behind = size + free[graph.start[self.starts]], size + free[graph.end[self.ends]]
        first, inlet, *_ = graph.junction_arrays
        self.crossed = np.concatenate([np.zeros((0, 2), np.int64), *(_pairs(inlet[a:b]) for a, b in pairwise(first))])
        own = np.arange(size)
        rows = np.concatenate([own, self.starts, self.ends, before, behind, self.crossed[:, 0]])
        columns = np.concatenate([own, before, behind, self.starts, self.ends, self.crossed[:, 1]])
        self.size = size + int(free.max(initial=-1)) + 1
        self.key, self.place = np.unique(columns * self.size + rows, return_inverse=True)
        self.indices = (self.key % self.size).astype(np.int32)
        self.columns = np.searchsorted(self.key // self.size, np.arange(self.size + 1)).astype(np.int32)
        signs = (np.ones(len(self.starts)), -np.ones(len(self.ends)))
        self.fixed = np.concatenate([*signs, *signs])

    def matrix(self, slope: np.ndarray, row: np.ndarray) -> csc_matrix:
        """The slopes of all balances."""
        values = np.concatenate([-slope, self.fixed, -row[self.crossed[:, 1]]])
        data = np.bincount(self.place, weights=values, minlength=len(self.key))
        return csc_matrix((data, self.indices, self.columns), shape=(self.size, self.size))


def _pairs(inlets: np.ndarray) -> np.ndarray:
    return np.stack(np.meshgrid(inlets, inlets, indexing="ij"), axis=-1).reshape(-1, 2)


def solve_graph(graph, branches, start=None, *, injected=None):
    """Flows and pressures of a network of any shape, by Newton's method with a sparse direct solver.

    Parameters
    ----------
    graph : Graph
    branches : Branches
    start : array (n,) [kg/s], optional
        Flows to start from, such as the design flows; without them a metre per second everywhere.
    injected : array (nodes,) [kg/s], optional
        What is blown in at each node; taken out where negative.

    Returns
    -------
    answer : NetworkAnswer

    Valid: any losses that grow with the flow, every part of it joined to a node of given pressure; else NoSolution.
    Source: [network-theory, flows and pressures together]
    """
    laws, fan = branches.laws, branches.fan_arrays
    m = branches.starting_flows(start)
    p = np.where(np.isnan(graph.pressure), 0.0, graph.pressure)
    speeds, share, before, moved = laws[:, 0] * laws[:, 2], 1.0, np.inf, np.inf
    for step in range(MOST_STEPS + 1):
        state = _State.at(graph, laws, fan, m, p, injected)
        if moved < SETTLED:
            return state.answer(m, p[graph.start], step)
        if step == MOST_STEPS:
            break
        change = _step(graph, state)
        moved = float(np.max(np.abs(change[: len(m)]) / speeds))
        share = max(SHORTEST, HALF * share) if moved > GROWING * before else min(1.0, 2 * share)
        before = moved
        m += share * change[: len(m)]
        p[graph.free >= 0] += share * change[len(m) :]
    return branches.refuse(np.abs(change[: len(m)]) / speeds, MOST_STEPS, state.residual)


@dataclass(frozen=True, eq=False)
class _State:
    """Losses, slopes and faults of all balances at given flows and pressures."""

    loss: np.ndarray
    behind: np.ndarray
    slope: np.ndarray
    row: np.ndarray
    fault: np.ndarray
    missing: np.ndarray

    @classmethod
    def at(cls, graph: Graph, laws, fan, m, p, injected) -> "_State":
        loss, slope, behind, steep, row = np.zeros((5, len(m)))
        losses(laws, *fan, m, loss, slope)
        first, inlet, common, kind, own, cosine = graph.junction_arrays
        junction_losses(first, inlet, common, kind, laws, own, cosine, m, behind, steep, row)
        fault = p[graph.start] - p[graph.end] - loss - behind
        nodes = len(graph.pressure)
        missing = np.bincount(graph.start, m, nodes) - np.bincount(graph.end, m, nodes)
        missing = missing if injected is None else missing - injected
        return cls(loss, behind, slope + steep, row, fault, missing[graph.free >= 0])

    @property
    def residual(self) -> float:
        return float(np.abs(self.fault).max())

    def answer(self, m, start_pressure, steps: int) -> NetworkAnswer:
        imbalance = float(np.abs(self.missing).max(initial=0.0))
        return NetworkAnswer(m, start_pressure, self.loss, self.behind, self.residual, imbalance, steps)


def _step(graph: Graph, state: _State) -> np.ndarray:
    return splu(graph.pattern.matrix(state.slope, state.row)).solve(-np.concatenate([state.fault, state.missing]))
