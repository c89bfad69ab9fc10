"""Networks that only converge: every branch leads to one other, the last one out."""

from dataclasses import dataclass
from functools import cached_property

import numpy as np

from hoodwright.errors import InputError
from hoodwright.kernels.branch_loss import losses
from hoodwright.kernels.junction_loss import PLAIN, junction_losses
from hoodwright.kernels.tree_newton import tree_newton
from hoodwright.network.answer import NetworkAnswer
from hoodwright.network.junctions import LAWS
from hoodwright.network.settling import MOST_STEPS, SETTLED
from hoodwright.ranges import numbers


@dataclass(frozen=True, eq=False)
class Tree:
    """A converging network. `leads_to` is the number of the branch behind each; -1 at the root.

    `law` is that of the junction where a branch starts ("plain", "momentum", "tabulated"); `cosine`, `coefficient` and
    `leak` belong to a branch as an inlet of the junction at its end. `outside` is the total pressure before a branch
    that nothing leads to.
    """

    leads_to: np.ndarray  # (n,)
    law: tuple[str, ...]
    cosine: np.ndarray  # (n,)
    coefficient: np.ndarray  # (n,) velocity pressures
    leak: np.ndarray  # (n,) bool
    outside: np.ndarray  # (n,) Pa

    def __post_init__(self):
        roots = np.flatnonzero(np.asarray(self.leads_to) < 0)
        if len(roots) != 1:
            raise InputError(f"a tree has one branch that leads out, got {len(roots)}; use a graph for more")
        if len(self.order) != len(self.leads_to):
            raise InputError("some branches lead round in a ring and never out; use a graph for rings")

    @cached_property
    def order(self) -> np.ndarray:
        """Branch numbers, each before the one it leads to."""
        inlets: list[list[int]] = [[] for _ in self.leads_to]
        order: list[int] = []
        for i, behind in enumerate(self.leads_to):
            (inlets[behind] if behind >= 0 else order).append(i)
        for i in order:
            order.extend(inlets[i])
        return np.array(order[::-1], dtype=np.int64)

    @cached_property
    def arrays(self) -> tuple:
        """Children on end, outside pressure, law, own part and cosine of every branch, in solving order."""
        order, size = self.order, len(self.order)
        place = np.empty(size, dtype=np.int64)
        place[order] = np.arange(size)
        behind = np.asarray(self.leads_to)[order]
        behind = np.where(behind < 0, size, place[behind])
        first = np.concatenate([[0], np.cumsum(np.bincount(behind, minlength=size + 1)[:size])]).astype(np.int64)
        child = np.argsort(behind[:-1], kind="stable").astype(np.int64)
        kind = np.array([LAWS[word] for word in self.law], dtype=np.int64)[order]
        joins = np.append(kind, PLAIN)[behind]
        leak = np.asarray(self.leak, dtype=bool)[order]
        own = np.where(leak | (joins == PLAIN), 0.0, 1.0)
        own += np.where(~leak & (joins == LAWS["tabulated"]), np.asarray(self.coefficient, float)[order], 0.0)
        cosine = np.where(leak, 0.0, np.asarray(self.cosine, float)[order])
        return first, child, np.ascontiguousarray(np.asarray(self.outside, float)[order]), kind, own, cosine


def solve_tree(tree, branches, start=None, *, outlet=0.0, imposed=None):
    """Flows and pressures of a converging network, by Newton's method in as many operations as there are branches.

    Parameters
    ----------
    tree : Tree
    branches : Branches
        In any order, numbered as in `tree`.
    start : array (n,) [kg/s], optional
        Flows to start from, such as the design flows; without them a metre per second everywhere.
    outlet : float [Pa]
        Total pressure behind the branch that leads out.
    imposed : float [kg/s], optional
        A given flow of that branch, in place of the pressure.

    Returns
    -------
    answer : NetworkAnswer

    Valid: any losses that grow with the flow; NoSolution says where it did not settle.
    Source: [network-theory, closed elimination of a tree]
    """
    order, arrays, laws = tree.order, tree.arrays, branches.laws
    fan = branches.fan_arrays
    own_laws, own_fan = np.take(laws, order, axis=0), (fan[0], fan[1][order], *fan[2:])
    m = branches.starting_flows(start)[order]
    p, work, rows = np.zeros(len(m)), np.empty((len(m), 6)), np.empty((3, len(m)))
    root = float(numbers("pressure or flow at the outlet", outlet if imposed is None else imposed))
    steps = tree_newton(*arrays, own_laws, *own_fan, imposed is not None, root, SETTLED, MOST_STEPS, m, p, work, rows)
    answer = _answer(tree, own_laws, own_fan, m, p, abs(steps), outlet if imposed is None else None)
    if steps < 0:
        moved = np.zeros(len(m))
        moved[order] = np.abs(m - rows[1]) / (own_laws[:, 0] * own_laws[:, 2])
        branches.refuse(moved, -steps, answer.residual)
    return answer


def _answer(tree: Tree, laws, fan, m, p, steps: int, outlet: float | None) -> NetworkAnswer:
    """In the order of the branches, with the balances counted anew."""
    first, child, _, kind, own, cosine = tree.arrays
    order, size = tree.order, len(m)
    lost, slope, behind, steep, row = np.zeros((5, size))
    losses(laws, *fan, m, lost, slope)
    junction_losses(first, child, np.arange(size), kind, laws, own, cosine, m, behind, steep, row)
    parent = np.full(size, -1)
    parent[child] = np.repeat(np.arange(size), np.diff(first))
    end = np.where(parent < 0, 0.0 if outlet is None else outlet, p[parent])
    fault = p - lost - behind - end
    fault[-1] = 0.0 if outlet is None else fault[-1]
    gathered = np.bincount(parent[:-1], weights=m[:-1], minlength=size)
    missing = np.where(np.diff(first) > 0, gathered - m, 0.0)
    back = np.empty(size, dtype=np.int64)
    back[order] = np.arange(size)
    whole = (m[back], p[back], lost[back], behind[back])
    return NetworkAnswer(*whole, float(np.abs(fault).max()), float(np.abs(missing).max()), steps)
