"""Run with `python -m benchmarks.duct_sizing`: how long sizing takes by number of ducts, and how good it is.

The gaps need the extra `bench` (ortools); without it they are left out, and the page says so. Writes last_sizing.md.
"""

import math
import os
import statistics
import sys
import time
from dataclasses import replace
from importlib.util import find_spec
from pathlib import Path

from benchmarks.__main__ import machine
from hoodwright import __version__
from hoodwright.ducts.sizing import hand_sizes, least_cost_sizes

sys.path.insert(0, str(Path(__file__).parents[1] / "tests"))
sys.path.insert(0, str(Path(__file__).parents[1] / "tests" / "unit"))
from sizing_shops import PRICES, RULES, SERIES, shop

PAGE = Path(__file__).with_name("last_sizing.md")
HOODS = (5, 15, 30, 125, 250, 500)
ASKED = {59: 0.5, 999: 5.0}  # s
LABELS = 3
RUNS = 3
LARGEST_PROVED = 20  # hoods


def main() -> None:
    """Every case in turn, then the page."""
    lines = [f"# Duct sizes: last timings, hoodwright {__version__}", "", machine(), ""]
    lines += [f"Load of the machine before: {os.getloadavg()[0]:.1f}. Times are the least of {RUNS}, compiled.", ""]
    for case in (growth, savings, gaps):
        lines += [f"## {(case.__doc__ or '').strip()}", "", *case(), ""]
        print("\n".join(lines[-14:]), flush=True)
    PAGE.write_text("\n".join(lines), encoding="utf-8")


def plant(hoods: int, seed: int = 1):
    """A shop whose fan stays within the series, however many hoods."""
    return shop(hoods, seed, least=0.04, most=max(0.1, min(0.8, 20 / hoods)))


def growth() -> list[str]:
    """Time by number of ducts, three labels in a bucket"""
    rows = ["| ducts | by hand s | least cost s | of the processor s | in buckets of 2 % s | asked s |"]
    rows += ["|---|---|---|---|---|---|"]
    sizes, taken = [], []
    for hoods in HOODS:
        ducts = plant(hoods)
        hand, _ = timed(lambda ducts=ducts: hand_sizes(ducts, SERIES, PRICES, RULES))
        wall, cpu = timed(lambda ducts=ducts: least_cost_sizes(ducts, SERIES, PRICES, RULES, kept=LABELS))
        _, plain = timed(lambda ducts=ducts: least_cost_sizes(ducts, SERIES, PRICES, RULES, kept=LABELS, bucket=0.02))
        asked = ASKED.get(len(ducts), "")
        rows.append(f"| {len(ducts)} | {hand:.3f} | {wall:.2f} | {cpu:.2f} | {plain:.2f} | {asked} |")
        sizes.append(len(ducts))
        taken.append(plain)
    power = math.log(taken[-1] / taken[-3]) / math.log(sizes[-1] / sizes[-3])
    return [
        *rows,
        "",
        f"From {sizes[-3]} to {sizes[-1]} ducts the time in buckets of 2 % grows with the power "
        f"{power:.2f} of their number.",
    ]


def savings() -> list[str]:
    """Against the hand method: 20 random shops of each size, dampers allowed"""
    rows = ["| ducts | fan power, mean | with two sizes in a hood's duct | dampers: hand, least cost, two sizes |"]
    rows += ["|---|---|---|---|"]
    for hoods in (5, 8, 15):
        shops = [shop(hoods, seed) for seed in range(20)]
        hand = [hand_sizes(ducts, SERIES, PRICES, RULES) for ducts in shops]
        least, split = (
            [least_cost_sizes(ducts, SERIES, PRICES, replace(RULES, split=two)) for ducts in shops]
            for two in (False, True)
        )
        less = [
            statistics.mean(a.power / b.power - 1 for a, b in zip(found, hand, strict=True)) for found in (least, split)
        ]
        dampers = ", ".join(
            f"{statistics.mean(len(one.dampers) for one in found):.1f}" for found in (hand, least, split)
        )
        rows.append(f"| {2 * hoods - 1} | {less[0]:+.1%} | {less[1]:+.1%} | {dampers} |")
    return rows


def gaps() -> list[str]:
    """Against the proved optimum of an integer programme, at fixed flows"""
    if find_spec("ortools") is None:
        return ["Left out: ortools is not installed."]
    from test_ducts_sizing_optimum import proved

    rules = replace(RULES, correct_from=RULES.leave_above, most=10.0)
    found = []
    for hoods in range(4, LARGEST_PROVED + 1, 2):
        for seed in (100, 101, 102):
            ducts = shop(hoods, seed)
            found.append(least_cost_sizes(ducts, SERIES, PRICES, rules).total / proved(ducts)[1] - 1)
    within = sum(gap < 1e-4 for gap in found)
    gap = f"mean {statistics.mean(found):.1e}, worst {max(found):.1e}"
    return [f"{len(found)} shops of 7 to {2 * LARGEST_PROVED - 1} ducts: {within} within 1e-4, {gap}."]


def timed(work) -> tuple[float, float]:
    """Least wall clock and processor time of some runs [s]."""
    work()
    walls, cpus = [], []
    for _ in range(RUNS):
        wall, cpu = time.perf_counter(), time.process_time()
        work()
        walls.append(time.perf_counter() - wall)
        cpus.append(time.process_time() - cpu)
    return min(walls), min(cpus)


if __name__ == "__main__":
    main()
