"""Sizes that balance themselves: of all series sizes of all ducts, those of least cost whose sides agree.

A dynamic programme over the tree. A label is one way to build all before a place; labels whose suctions are alike
compete by cost. Suctions are static, as the hand method counts them.
"""

from dataclasses import replace

import numpy as np

from hoodwright.ducts.sizing.counting import counted
from hoodwright.ducts.sizing.hand import hand_sizes, no_size
from hoodwright.ducts.sizing.labels import BUCKET, COST, FLOW, KEPT, SUCTION, Labels, Price, Tree
from hoodwright.ducts.sizing.parts import Sized, SizedDuct, area_of, check_ducts
from hoodwright.errors import NoSolution

USUAL = 1000.0  # Pa: suction by which flow is priced at first, where the hand method has no answer
TURNS = (0.5, 0.75)  # share of the price of a pascal that counts while labels compete: not every side governs
EFFORT = ((40, 0.005, 6), (100, 0.01, 4), (300, 0.01, 3))  # up to so many ducts: width of a bucket, labels kept in each
SPLIT = 5  # times the work where hoods' ducts may have two sizes


def least_cost_sizes(ducts, series, prices, rules, progress=None, *, bucket=None, kept=None):
    """The sizes of least cost, of ducts and energy together, whose sides agree at every junction.

    The answer is never worse than that of the hand method by the same rules, where that has one.

    Parameters
    ----------
    ducts : sequence of SizedDuct
        Each after those that lead to it; the last leads to the fan.
    series : array (n,) [m]
        Diameters that are made.
    prices : Prices
    rules : SizingRules
    progress : jobs.Progress, optional
        Told how far the work is; may stop it.
    bucket : float, optional [1]
        Of the suction, within which labels compete; the fewer ducts, the finer.
    kept : int, optional
        Labels kept in each.

    Returns
    -------
    sized : Sized

    Valid: least velocity below the greatest; NoSolution names the duct for which no size fits. Where more than two
    ducts join at a place, they are taken two at a time, in their order.
    Source: [network-theory, dynamic programme over a tree]
    """
    check_ducts(ducts)
    by_hand = _by_hand(ducts, series, prices, rules)
    tree = Tree(ducts, series, prices, rules)
    designs = []
    guess = USUAL if by_hand is None else by_hand.power / by_hand.flow
    work = len(ducts) * (SPLIT if rules.split else 1)
    width, most = next((effort for upto, *effort in EFFORT if work <= upto), (BUCKET, KEPT))
    for turn, share in enumerate(TURNS):
        price = Price(prices.per_watt * guess, prices.per_watt * float(tree.flows[-1]) * share)
        labels = Labels(tree, price, bucket=bucket or width, kept=kept or most)
        found = _least_cost(labels, series, progress, turn / len(TURNS))
        designs.append(found)
        guess = found.power / found.flow
    best = min(designs, key=lambda design: design.total)
    if by_hand is None or best.total <= by_hand.total:
        return best
    return replace(by_hand, notes=("no sizes were found that cost less than those of the hand method",))


def _by_hand(ducts, series, prices, rules) -> Sized | None:
    try:
        return hand_sizes(ducts, series, prices, rules)
    except NoSolution:
        return None


def _least_cost(labels: Labels, series, progress, done: float) -> Sized:
    tree, ducts = labels.tree, labels.tree.ducts
    for number, duct in enumerate(ducts):
        if progress is not None:
            progress.report(done + number / len(ducts) / len(TURNS), f"sizing {duct.name}")
        if not len(labels.add().labels):
            raise _nothing(duct, tree, number, series)
    last = labels.ends[-1].labels
    areas = np.array([float(area_of(ducts[-1], size.last)) for size in tree.sizes[-1]])[labels.ends[-1].size]
    fan = last[:, SUCTION] - tree.rules.velocity_pressure(ducts[-1], last[:, FLOW], areas) + tree.prices.behind
    total = last[:, COST] + tree.prices.per_watt * tree.rules.actual(ducts[-1], last[:, FLOW]) * fan
    sizes, ways = labels.chosen(int(np.argmin(total)))
    return counted(ducts, sizes, ways, tree.rules, tree.prices)


def _nothing(duct: SizedDuct, tree: Tree, number: int, series) -> NoSolution:
    if not tree.sizes[number]:
        return no_size(duct, tree.rules.actual(duct, float(tree.flows[number])), series)
    return NoSolution(
        f"{duct.name}: no sizes of the series make the sides before it agree at {duct.least:.3g} to "
        f"{duct.greatest:.3g} m/s; allow a damper or two sizes in a hood's duct, or use a finer series"
    )
