"""Networks meant to break the solvers: shut dampers, gusts that turn flows back, leaks, starts from anywhere."""

import numpy as np
import pytest

from hoodwright.network import Network, solve_graph
from random_networks import random_network

SYSTEMS, MOST_STEPS = 1400, 25
RESIDUAL = 1e-6  # Pa, asked


def start_of(case, rng):
    kind = int(rng.integers(4))
    return [None, case.design, np.zeros(len(case.design)), rng.normal(0, 1, len(case.design))][kind]


@pytest.mark.parametrize("block", range(7))
def test_every_network_settles(block):
    turned = 0
    for seed in range(SYSTEMS // 7 * block, SYSTEMS // 7 * (block + 1)):
        rng = np.random.default_rng(seed)
        case = random_network(int(rng.integers(3, 40)), seed, dampers=0.1, leaks=0.4 * (seed % 3 == 0), gusts=0.15)
        found = Network(case.graph).solved(case.branches, start_of(case, rng))
        assert found.steps <= MOST_STEPS
        assert found.residual < RESIDUAL
        assert found.imbalance < 1e-9
        turned += int(np.sum(found.mass_flow[: case.hoods] < -1e-6))
    assert turned > 50  # the gusts do turn flows back


@pytest.mark.parametrize("seed", range(20))
def test_tree_and_sparse_solver_agree(seed):
    case = random_network(12, seed, dampers=0.1, leaks=0.3, gusts=0.15)
    assert Network(case.graph).parts[0].tree is not None
    by_tree, sparse = Network(case.graph).solved(case.branches), solve_graph(case.graph, case.branches)
    assert by_tree.mass_flow == pytest.approx(sparse.mass_flow, abs=1e-9)
    assert by_tree.start_pressure == pytest.approx(sparse.start_pressure, abs=1e-6)
