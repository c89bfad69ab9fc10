"""Solve a network part by part: what does not hang together, each as a tree where it is one."""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise

import numpy as np
from scipy.sparse import coo_matrix
from scipy.sparse.csgraph import connected_components

from hoodwright.network.answer import NetworkAnswer
from hoodwright.network.branches import Branches
from hoodwright.network.graph import Graph, solve_graph
from hoodwright.network.junctions import Junction
from hoodwright.network.tree import Tree, solve_tree

JOINED = ("mass_flow", "start_pressure", "loss", "junction_loss")


@dataclass(frozen=True, eq=False)
class Part:
    """Branches that hang together, as a graph of their own, and as a tree where they are one."""

    branches: np.ndarray  # their numbers in the whole network
    graph: Graph
    tree: Tree | None
    outlet: float  # Pa, at the end of a tree

    def solved(self, branches: Branches, start) -> NetworkAnswer:
        """Flows and pressures of this part."""
        own = branches.only(self.branches)
        first = None if start is None else np.asarray(start)[self.branches]
        if self.tree is None:
            return solve_graph(self.graph, own, first)
        return solve_tree(self.tree, own, first, outlet=self.outlet)


@dataclass(frozen=True, eq=False)
class Network:
    """A graph, taken apart once and solved as often as its branches change."""

    graph: Graph

    @cached_property
    def parts(self) -> tuple[Part, ...]:
        """What hangs together: joined by nodes whose pressure is to be found."""
        graph, nodes = self.graph, len(self.graph.pressure)
        size, free = len(graph.start), np.isnan(graph.pressure)
        branch = np.concatenate([np.flatnonzero(free[graph.start]), np.flatnonzero(free[graph.end])])
        node = np.concatenate([graph.start[free[graph.start]], graph.end[free[graph.end]]])
        joined = coo_matrix((np.ones(len(branch)), (branch, size + node)), shape=(size + nodes, size + nodes))
        count, label = connected_components(joined, directed=False)
        order = np.argsort(label[:size], kind="stable")
        cuts = np.searchsorted(label[:size][order], np.arange(count + 1))
        return tuple(_part(graph, order[a:b]) for a, b in pairwise(cuts) if b > a)

    def solved(self, branches: Branches, start=None) -> NetworkAnswer:
        """Flows and pressures of all parts [kg/s, Pa]; `start` are flows to start from."""
        found = [(part.branches, part.solved(branches, start)) for part in self.parts]
        if len(found) == 1:
            return found[0][1]
        whole = {name: np.zeros(len(branches)) for name in JOINED}
        for numbers, answer in found:
            for name in JOINED:
                whole[name][numbers] = getattr(answer, name)
        answers = [answer for _, answer in found]
        residual, imbalance = max(a.residual for a in answers), max(a.imbalance for a in answers)
        steps = max(a.steps for a in answers)
        return NetworkAnswer(**whole, residual=residual, imbalance=imbalance, steps=steps)  # type: ignore[arg-type]


def _part(graph: Graph, branches: np.ndarray) -> Part:
    nodes, places = np.unique(np.concatenate([graph.start[branches], graph.end[branches]]), return_inverse=True)
    start, end = np.split(places, 2)
    own = np.full(len(graph.start), -1)
    own[branches] = np.arange(len(branches))
    junctions = [
        Junction(j.law, tuple(int(own[i]) for i in j.inlets), int(own[j.common]), j.values, j.leak)
        for j in graph.junctions
        if own[j.common] >= 0
    ]
    small = Graph(start, end, graph.pressure[nodes], junctions)
    tree, root = _tree_of(small)
    return Part(branches, small, tree, float(small.pressure[end[root]]) if tree is not None else 0.0)


def _tree_of(graph: Graph) -> tuple[Tree | None, int]:
    """A converging network as a tree, and the number of its last branch; None where it is no tree."""
    free, size = np.isnan(graph.pressure), len(graph.start)
    leaving = np.full(len(graph.pressure), -1)
    leaving[graph.start] = np.arange(size)
    out = np.flatnonzero(~free[graph.end])
    several = np.bincount(graph.start, minlength=len(free))[free] != 1
    fed = np.bincount(graph.end, minlength=len(free))[free] > 0
    if len(out) != 1 or several.any() or not fed.all():
        return None, -1
    leads_to = np.where(free[graph.end], leaving[graph.end], -1)
    law, cosine, coefficient, leak = _inlets(graph.junctions, size)
    outside = np.where(free[graph.start], 0.0, np.nan_to_num(graph.pressure[graph.start]))
    return Tree(leads_to, law, cosine, coefficient, leak, outside), int(out[0])


def _inlets(junctions: Sequence[Junction], size: int):
    """Law before each branch; cosine, coefficient and leak of each branch as an inlet."""
    law, cosine, coefficient, leak = ["plain"] * size, np.zeros(size), np.zeros(size), np.zeros(size, dtype=bool)
    for junction in junctions:
        law[junction.common] = junction.law
        inlets = list(junction.inlets)
        (cosine if junction.law == "momentum" else coefficient)[inlets] = junction.values
        leak[inlets] = junction.leak or False
    return tuple(law), cosine, coefficient, leak
