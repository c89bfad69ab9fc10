"""Flows of the network solvers against pandapipes, an open library for pipe networks, where it can represent them.

It is asked for by the extra `bench` only: pip install -c constraints.txt '.[bench]'.
"""

import numpy as np
import pytest

from hoodwright.network import Network, solve_graph

pytest.importorskip("pandapipes", reason="pandapipes is not installed: pip install -c constraints.txt '.[bench]'")

from pandapipes_twin import EXACT, SAME_FRICTION, plain_tree, solve_twin, twin, with_rings

SAME = 1e-5  # of every flow, as asked; what differs is the rounding off of squares below 0.02 m/s


@pytest.mark.parametrize("hoods", [2, 5, 30, 200])
def test_trees(hoods):
    case = plain_tree(hoods)
    assert Network(case.graph).parts[0].tree is not None
    found = Network(case.graph).solved(case.branches).mass_flow
    assert found == pytest.approx(solve_twin(twin(case), **EXACT), rel=SAME)


@pytest.mark.parametrize("seed", range(4))
def test_rings(seed):
    case = with_rings(plain_tree(20, seed), 0.1, seed)
    found = solve_graph(case.graph, case.branches).mass_flow
    wanted = solve_twin(twin(case), **EXACT)
    turbulent = np.abs(wanted) * case.branches.diameter / case.branches.area / case.branches.viscosity > 4000
    assert turbulent.sum() > 38  # below Reynolds number 4000 the two have other laws
    assert found[turbulent] == pytest.approx(wanted[turbulent], rel=SAME)


def test_tolerance_tells_3_71_from_3_7():
    case = plain_tree(5)
    rougher = case.branches.changed(roughness=SAME_FRICTION * case.branches.roughness)
    found = Network(case.graph).solved(rougher).mass_flow
    assert np.abs(found / solve_twin(twin(case), **EXACT) - 1).max() > 2 * SAME
