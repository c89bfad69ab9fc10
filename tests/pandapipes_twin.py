"""The same network for pandapipes: ducts with friction and losses between given pressures, nothing else.

What it cannot represent is left out on our side too: laws of junctions, fans, filters, leaks. It has 3.71 in
Colebrook's formula where we have 3.7, so its roughness is made 3.71/3.7 times as great: the same friction.
"""

from dataclasses import dataclass

import numpy as np
import pandapipes as pp

from hoodwright.network import Branches, Graph
from hoodwright.network.branches import LAW
from random_networks import random_network

OUTLET = -2500.0  # Pa
ABSOLUTE, BAR = 1.0, 1e5  # bar: level of the room; Pa
SAME_FRICTION = 3.71 / 3.7
EXACT = {"tol_p": 1e-11, "tol_m": 1e-11, "max_iter_hyd": 100, "tolerance_colebrook": 1e-10, "max_iter_colebrook": 100}


@dataclass(frozen=True)
class Plain:
    """A network that both can represent, with the flows it was laid out for [kg/s]."""

    graph: Graph
    branches: Branches
    design: np.ndarray


def plain_tree(hoods, seed=1):
    """A converging network of 2 x `hoods` - 1 branches, sucked at by a given pressure."""
    case = random_network(hoods, seed, law="plain")
    size = len(case.branches)
    pressure = np.where(np.arange(size + 1) == size, OUTLET, case.graph.pressure)
    graph = Graph(case.graph.start, case.graph.end, pressure)
    return Plain(graph, case.branches.changed(fan=None, curves=(), coefficient=np.zeros(size)), case.design)


def with_rings(case, share=0.1, seed=1):
    """The same with cross ducts, a share of the branches more: each joins two sides of a junction, one farther up."""
    rng, size = np.random.default_rng(seed), len(case.branches)
    start, end = _cousins(case.graph)
    kept = rng.permutation(len(start))[: max(1, round(share * size))]
    graph = Graph(np.append(case.graph.start, start[kept]), np.append(case.graph.end, end[kept]), case.graph.pressure)
    names = [*case.branches.names, *(f"ring {n}" for n in range(len(kept)))]
    columns = {name: np.append(getattr(case.branches, name), getattr(case.branches, name)[start[kept]]) for name in LAW}
    return Plain(graph, Branches(names, **columns), np.append(case.design, np.zeros(len(kept))))


def _cousins(graph):
    """Pairs of inner nodes: one, and the node beside the one behind it. Branch i starts at node i."""
    size = len(graph.start)
    inlets = [[] for _ in range(size + 1)]
    for branch, node in enumerate(graph.end):
        inlets[node].append(branch)
    free = np.isnan(graph.pressure)
    pairs = [
        (node, beside)
        for node in range(size)
        if free[node] and graph.end[node] < size
        for beside in inlets[graph.end[graph.end[node]]]
        if beside != graph.end[node] and free[beside]
    ]
    return np.array(pairs).T


def twin(case):
    """The network in pandapipes, not yet solved."""
    branches, graph = case.branches, case.graph
    air = pp.create_constant_fluid(
        name="air", fluid_type="liquid", density=float(branches.density[0]), viscosity=float(branches.viscosity[0]),
        heat_capacity=1005.0, molar_mass=29.0,
    )  # fmt: skip
    net = pp.create_empty_network(fluid=air)
    nodes = pp.create_junctions(net, len(graph.pressure), pn_bar=ABSOLUTE, tfluid_k=293.15)
    fixed = np.flatnonzero(~np.isnan(graph.pressure))
    pp.create_ext_grids(net, nodes[fixed], p_bar=ABSOLUTE + graph.pressure[fixed] / BAR, t_k=np.nan, type="p")
    pp.create_pipes_from_parameters(
        net,
        nodes[graph.start],
        nodes[graph.end],
        length_km=branches.length / 1000,
        inner_diameter_mm=1000 * branches.diameter,
        k_mm=1000 * SAME_FRICTION * branches.roughness,
        loss_coefficient=branches.loss,
    )
    return net


def solve_twin(net, **options):
    """Mass flow of every branch [kg/s], by pandapipes with Colebrook's friction."""
    pp.pipeflow(net, friction_model="colebrook", mode="hydraulics", **options)
    return net.res_pipe["mdot_from_kg_per_s"].to_numpy()
