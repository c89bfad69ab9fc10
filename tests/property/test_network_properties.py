"""What must hold in any network."""

import numpy as np
from hypothesis import given, settings
from hypothesis import strategies as st

from hoodwright.network import Branches, Graph, Network, solve_graph
from random_networks import random_network

SEEDS, FEW = st.integers(0, 10**6), settings(max_examples=40, deadline=None)


def solved(case, branches=None):
    return Network(case.graph).solved(branches or case.branches)


@FEW
@given(SEEDS, st.sampled_from(["momentum", "tabulated", "plain"]))
def test_mass_is_conserved_at_every_node(seed, law):
    case = random_network(8, seed, law=law, leaks=0.3)
    found, nodes = solved(case), len(case.graph.pressure)
    arriving, leaving = (np.bincount(side, found.mass_flow, nodes) for side in (case.graph.end, case.graph.start))
    gathered = arriving - leaving
    assert np.abs(gathered[np.isnan(case.graph.pressure)]).max() < 1e-9


@FEW
@given(SEEDS)
def test_flow_times_total_pressure_falls_over_every_junction(seed):
    case = random_network(8, seed, dampers=0.2)
    found = solved(case)
    for junction in case.graph.junctions:
        inlets = list(junction.inlets)
        brought = found.mass_flow[inlets] @ found.end_pressure[inlets]
        taken = found.mass_flow[junction.common] * found.start_pressure[junction.common]
        assert brought >= taken - 1e-9


@FEW
@given(SEEDS, st.floats(0.1, 1e5), st.integers(0, 7))
def test_closing_a_damper_never_raises_its_own_flow(seed, more, hood):
    case = random_network(8, seed, leaks=0.2)
    loss = np.array(case.branches.loss)
    loss[hood] += more
    closed = solved(case, case.branches.changed(loss=loss))
    assert closed.mass_flow[hood] <= solved(case).mass_flow[hood] + 1e-12


@FEW
@given(SEEDS)
def test_all_pressures_fourfold_where_losses_are_squares_give_twice_the_flow(seed):
    case = random_network(6, seed)
    still = {"length": np.zeros(len(case.branches)), "coefficient": np.zeros(len(case.branches))}
    one = case.branches.changed(**still, loss=np.array(case.branches.loss) + 0.5)
    curve = one.curves[0].scaled(flow=2.0, pressure=4.0)
    first, second = solved(case, one), solved(case, one.changed(curves=(curve,)))
    assert np.allclose(second.mass_flow, 2 * first.mass_flow, rtol=1e-4)


@FEW
@given(SEEDS, st.floats(0.5, 2.0))
def test_a_ring_of_two_equal_ways_halves_the_flow(seed, length):
    rng = np.random.default_rng(seed)
    ways = {
        "density": [1.2] * 3,
        "viscosity": [1.8e-5] * 3,
        "area": [0.02] * 3,
        "diameter": [0.16] * 3,
        "length": [length] * 3,
        "roughness": [1e-4] * 3,
        "loss": rng.uniform(0.1, 3, 3)[[0, 1, 1]],
        "coefficient": [0.0] * 3,
        "exponent": [1.0] * 3,
        "head": [0.0] * 3,
    }
    branches = Branches(["in", "one way", "other way"], **{name: np.array(values) for name, values in ways.items()})
    graph = Graph(np.array([0, 1, 1]), np.array([1, 2, 2]), np.array([0.0, np.nan, -500.0]))
    flow = solve_graph(graph, branches).mass_flow
    assert np.allclose(flow[1:], flow[0] / 2)
