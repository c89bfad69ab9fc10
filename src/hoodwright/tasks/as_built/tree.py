"""The ducts of a workplace as trees that converge: what arrives where, how much, and what may stay folded."""

import heapq
from collections import Counter
from dataclasses import dataclass, field

from hoodwright.workplace.check import OUTSIDE
from hoodwright.workplace.model import Duct, Workplace

LEAST_WEIGHT = 1e-6  # m3/s, of a hood without an intended flow


@dataclass
class Branching:
    """Ducts by the node they end at, and what stands behind every node: hoods, and the flow they are meant to get."""

    workplace: Workplace
    arriving: dict[str, list[Duct]] = field(default_factory=dict)
    leaving: dict[str, Duct] = field(default_factory=dict)
    hoods: Counter = field(default_factory=Counter)
    weight: dict[str, float] = field(default_factory=dict)

    def __post_init__(self):
        for duct in self.workplace.ducts:
            self.arriving.setdefault(duct.to, []).append(duct)
            self.leaving[duct.start] = duct
        for hood in self.workplace.hoods:
            self.hoods[hood.name], self.weight[hood.name] = 1, hood.intended_flow or LEAST_WEIGHT
        for duct in reversed(self._from_outside()):
            self.hoods[duct.to] += self.hoods[duct.start]
            self.weight[duct.to] = self.weight.get(duct.to, 0.0) + self.weight.get(duct.start, 0.0)

    def _from_outside(self) -> list[Duct]:
        """Every duct, each after the one it leads to."""
        order = list(self.roots())
        for duct in order:
            order += self.before(duct)
        return order

    def roots(self) -> list[Duct]:
        """The ducts that lead outside."""
        return self.arriving.get(OUTSIDE, [])

    def before(self, duct: Duct) -> list[Duct]:
        """The ducts that arrive where a duct begins."""
        return self.before_node(duct.start)

    def hoods_before(self, node: str) -> tuple[str, ...]:
        """Names of the hoods whose air comes through a node."""
        found, todo = [], [node]
        while todo:
            here = todo.pop()
            into = self.before_node(here)
            found += [] if into else [here]
            todo += [duct.start for duct in reversed(into)]
        return tuple(found)

    def before_node(self, node: str) -> list[Duct]:
        """The ducts that arrive at a node."""
        return self.arriving.get(node, [])

    def opened(self, roots: list[Duct], most_rows: int) -> set[str]:
        """Nodes to draw with all that arrives there, the greatest first, while there are rows for it."""
        found: set[str] = set()
        rows, waiting = len(roots), [self._ranked(duct.start) for duct in roots]
        heapq.heapify(waiting)
        while waiting:
            _, node = heapq.heappop(waiting)
            into = self.before_node(node)
            if not into or (rows + len(into) - 1 > most_rows and rows > len(roots)):
                continue
            found.add(node)
            rows += len(into) - 1
            for duct in into:
                heapq.heappush(waiting, self._ranked(duct.start))
        return found

    def _ranked(self, node: str) -> tuple[int, str]:
        return -self.hoods[node], node
