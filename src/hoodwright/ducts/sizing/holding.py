"""Sizes of least cost that hold when they are solved as built; where a hood gets too much, with less of corrections."""

from dataclasses import replace

from hoodwright.ducts.sizing.built import Checked, checked
from hoodwright.ducts.sizing.least_cost import least_cost_sizes
from hoodwright.ducts.sizing.parts import Sized
from hoodwright.errors import NoSolution

TIGHTER = (1.0, 0.6, 0.3, 0.1)  # of the excess of flow that the rules allow a hood, turn by turn
PARTS = (0.0, 0.8, 0.9, 0.95)  # of the progress at which each begins: mostly the first is enough


def sizes_that_hold(ducts, series, prices, rules, curve=None, progress=None) -> tuple[Sized, Checked]:
    """Size, solve as built, and where a hood gets more than it may, size again with smaller corrections.

    The rule that flow goes with the root of the suction is coarse where a filter takes most of it.

    Parameters
    ----------
    ducts : sequence of SizedDuct
        Each after those that lead to it; the last leads to the fan.
    series : array (n,) [m]
        Diameters that are made.
    prices : Prices
    rules : SizingRules
    curve : network.Curve, optional
        Total pressure of the fan at standard density; without one a usual curve is taken.
    progress : jobs.Progress, optional

    Returns
    -------
    sized : Sized
    check : Checked
        `outside` tells which hoods get too much where no sizes hold; then those are given that come nearest.

    Valid: as `least_cost_sizes` and `checked`.
    Source: [network-theory, dynamic programme over a tree]
    """
    found: list[tuple[Sized, Checked]] = []
    for share, start, stop in zip(TIGHTER, PARTS, (*PARTS[1:], 1.0), strict=True):
        part = None if progress is None else progress.part(start, stop)
        held = replace(rules, most=1 + (rules.most - 1) * share)
        try:
            sized = least_cost_sizes(ducts, series, prices, held, None if part is None else part.part(0.0, 0.7))
        except NoSolution:
            if not found:
                raise
            break
        check = checked(ducts, sized, prices, rules, curve, progress=None if part is None else part.part(0.7, 1.0))
        found.append((sized, check))
        if not check.outside:
            break
    return min(found, key=lambda one: max((abs(share - 1.05) for share in one[1].outside.values()), default=0.0))
