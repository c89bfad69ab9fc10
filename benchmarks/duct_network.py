"""Run with `python -m benchmarks.duct_network`: how fast duct networks are solved, beside pandapipes, in one run.

Needs the extra `bench`. Every solver is warm: compiled, and its network built. Writes last_ducts.md beside it.
"""

import math
import os
import statistics
import sys
import time
from collections.abc import Callable
from importlib.metadata import version
from pathlib import Path

import numpy as np

from benchmarks.__main__ import machine
from hoodwright import __version__
from hoodwright.ducts import DuctSpreads
from hoodwright.ducts.spread import BLOCK, _Draws, _TreeSamples
from hoodwright.network import Network, solve_graph

sys.path.insert(0, str(Path(__file__).parents[1] / "tests"))
from pandapipes_twin import plain_tree, solve_twin, twin, with_rings
from random_networks import random_network

PAGE = Path(__file__).with_name("last_ducts.md")
TREES = (5, 500, 5_000, 50_000)  # hoods
RINGS = (30, 500, 5_000)
PLANTS = (10, 30, 100, 500)
ON_END = 3
ASKED_TREE, ASKED_RING, ASKED_SAMPLES = 60, 5, 8000
ENOUGH = {"max_iter_hyd": 100}  # its usual 10 steps are too few here; its own tolerances


def main() -> None:
    """Every case in turn, then the page."""
    lines = [f"# Duct networks: last timings, hoodwright {__version__}", "", machine(), ""]
    lines += [
        f"pandapipes {version('pandapipes')} with numba. Load of the machine before: {os.getloadavg()[0]:.1f}.",
        "",
    ]
    for case in (trees, rings, samples):
        lines += [f"## {case.__doc__.strip()}", "", *case(), ""]
        print("\n".join(lines[-12:]), flush=True)
    PAGE.write_text("\n".join(lines), encoding="utf-8")


def trees() -> list[str]:
    """Converging trees against pandapipes"""
    rows = ["| branches | tree ms | from rest ms | sparse ms | pandapipes ms | ratio | flows differ by |"]
    rows += ["|---|---|---|---|---|---|---|"]
    sizes, taken, ratios = [], [], []
    for hoods in TREES:
        case = plain_tree(hoods)
        network, net = Network(case.graph), twin(case)
        own, rest, sparse, theirs = in_turn(
            lambda network=network, case=case: network.solved(case.branches, case.design),
            lambda network=network, case=case: network.solved(case.branches),
            lambda case=case: solve_graph(case.graph, case.branches, case.design),
            lambda net=net: solve_twin(net, **ENOUGH),
            runs=runs_for(hoods),
        )
        apart = difference(network.solved(case.branches, case.design).mass_flow, solve_twin(net, **ENOUGH))
        sizes, taken, ratios = [*sizes, len(case.branches)], [*taken, own], [*ratios, theirs / own]
        cells = [f"{t:.3g}" for t in (own, rest, sparse, theirs)]
        rows.append(f"| {len(case.branches):,} | {' | '.join(cells)} | {theirs / own:.0f} | {apart:.1e} |")
    return [
        *rows,
        "",
        f"{reached(ASKED_TREE, sizes, ratios)} The first column starts from the design flows, as the program does.",
        growth(sizes, taken, "branches"),
    ]


def rings() -> list[str]:
    """Networks with rings against pandapipes: a tenth of the branches are cross ducts"""
    rows = ["| branches | sparse ms | pandapipes ms | ratio | flows differ by |", "|---|---|---|---|---|"]
    sizes, taken, ratios = [], [], []
    for hoods in RINGS:
        case = with_rings(plain_tree(hoods))
        net = twin(case)
        own, theirs = in_turn(
            lambda case=case: solve_graph(case.graph, case.branches, case.design),
            lambda net=net: solve_twin(net, **ENOUGH),
            runs=runs_for(hoods),
        )
        found, wanted = solve_graph(case.graph, case.branches, case.design).mass_flow, solve_twin(net, **ENOUGH)
        fast = np.abs(wanted) * case.branches.diameter / case.branches.area / case.branches.viscosity > 4000
        sizes, taken, ratios = [*sizes, len(case.branches)], [*taken, own], [*ratios, theirs / own]
        apart = difference(found[fast], wanted[fast])
        rows.append(f"| {len(case.branches):,} | {own:.3g} | {theirs:.3g} | {theirs / own:.1f} | {apart:.1e} |")
    return [*rows, "", reached(ASKED_RING, sizes, ratios), growth(sizes, taken, "branches")]


def samples() -> list[str]:
    """Samples of what is not known (roughness, losses, fan, leaks), one core"""
    rows = ["| branches | samples/s, drawn and solved | ms a sample |", "|---|---|---|"]
    sizes, taken = [], []
    for hoods in PLANTS:
        case = random_network(hoods, 1)
        network = Network(case.graph)
        draws = _Draws(np.zeros(len(case.branches)), 1, DuctSpreads(), np.random.default_rng(1))
        nominal = network.solved(case.branches, case.design).mass_flow
        solver = _TreeSamples(network.parts[0], case.branches, draws, nominal, np.arange(hoods))
        found = np.empty((BLOCK, hoods))
        (milliseconds,) = in_turn(lambda s=solver, d=draws, f=found: s.solve(d.next(BLOCK), f), runs=15)
        each = milliseconds / BLOCK
        sizes, taken = [*sizes, len(case.branches)], [*taken, each]
        rows.append(f"| {len(case.branches):,} | {1000 / each:,.0f} | {each:.3g} |")
    return [*rows, "", f"Asked: {ASKED_SAMPLES:,} a second at 59 branches.", growth(sizes, taken, "branches")]


def in_turn(*works: Callable[[], object], runs: int) -> list[float]:
    """Time of each [ms]: once for warmth, then by turns, so that a slow moment touches all alike.

    In its turn each runs some times on end, and the fastest counts; of all turns the median.
    """
    for work in works:
        work()
    times: list[list[float]] = [[] for _ in works]
    for _ in range(runs):
        for work, own in zip(works, times, strict=True):
            own.append(min(1000 * seconds(work) for _ in range(ON_END)))
    return [statistics.median(own) for own in times]


def seconds(work: Callable[[], object]) -> float:
    """How long it takes once."""
    began = time.perf_counter()
    work()
    return time.perf_counter() - began


def runs_for(hoods: int) -> int:
    """Fewer where one run takes seconds."""
    return 25 if hoods <= 500 else 5 if hoods <= 5_000 else 2


def difference(found: np.ndarray, wanted: np.ndarray) -> float:
    """Greatest share by which any flow differs."""
    return float(np.abs(found / wanted - 1).max())


def reached(asked: int, sizes: list[int], ratios: list[float]) -> str:
    """What was asked, and where it was missed."""
    missed = [f"{size:,}" for size, ratio in zip(sizes, ratios, strict=True) if ratio < asked]
    return f"Asked: {asked} times. " + (f"**Missed at {', '.join(missed)} branches.**" if missed else "Reached.")


def growth(sizes: list[int], taken: list[float], what: str) -> str:
    """How time grows from each size to the next, as a power."""
    pairs = zip(sizes, sizes[1:], taken, taken[1:], strict=False)
    powers = [f"{math.log(t1 / t0) / math.log(n1 / n0):.2f}" for n0, n1, t0, t1 in pairs]
    return f"Time grows as the number of {what} to the power of {', '.join(powers)} from row to row."


if __name__ == "__main__":
    main()
