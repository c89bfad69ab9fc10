"""Sizes by the hand method: each duct at its transport velocity, then side by side at every junction."""

import numpy as np

from hoodwright.ducts.sizing.counting import State, Step, Way, behind_hood, counted, joined, led, without_damper
from hoodwright.ducts.sizing.parts import (
    SLACK,
    Prices,
    Size,
    Sized,
    SizedDuct,
    SizingRules,
    area_of,
    check_ducts,
)
from hoodwright.errors import NoSolution


def hand_sizes(ducts, series, prices, rules):
    """Sizes of a tree of ducts as they are chosen by hand.

    Each duct takes the widest size that keeps its transport velocity; where nothing settles, and another duct goes
    before it alone, the size of that. At a junction the side with most suction
    governs. Where another side has less than 0.8 of that, its last duct takes the size that comes nearest; from 0.8
    its flow is corrected; above 0.95 it is left. What still does not agree takes a damper.

    Parameters
    ----------
    ducts : sequence of SizedDuct
        Each after those that lead to it; the last leads to the fan.
    series : array (n,) [m]
        Diameters that are made.
    prices : Prices
    rules : SizingRules

    Returns
    -------
    sized : Sized

    Valid: least velocity below the greatest; NoSolution names the duct for which no size fits, or the side that needs
    a damper where none is allowed.
    Source: [balance-rule, ratio 0.95 / 0.80]
    """
    check_ducts(ducts)
    return _ByHand(ducts, np.sort(np.asarray(series, dtype=float)), prices, rules).sized()


class _ByHand:
    """One walk from the hoods to the fan."""

    def __init__(self, ducts, series, prices: Prices, rules: SizingRules):
        self.ducts, self.series, self.prices, self.rules = ducts, series, prices, rules
        followed = {i: number for number, duct in enumerate(ducts) for i in duct.before}
        self.alone = [i not in followed or len(ducts[followed[i]].before) == 1 for i in range(len(ducts))]
        self.sizes: list[Size] = []
        self.into: list[State | None] = []
        self.states: list[State] = []
        self.ways: dict[Step, Way] = {}

    def sized(self) -> Sized:
        for number, duct in enumerate(self.ducts):
            self.into.append(self._met(number) if duct.before else None)
            self.sizes.append(self._widest(number))
            self.states.append(self._at_end(number, self.sizes[number]))
        return counted(self.ducts, self.sizes, self.ways, self.rules, self.prices, "by hand")

    def _at_end(self, number: int, size: Size) -> State:
        duct, into = self.ducts[number], self.into[number]
        if into is None:
            return behind_hood(duct, size, self.rules, alone=self.alone[number])
        return led(into, duct, size, self.rules, alone=len(duct.before) == 1, onward=self.alone[number])

    def _fitting(self, number: int) -> list[Size]:
        duct, into = self.ducts[number], self.into[number]
        if duct.kept is not None:
            return [Size(duct.kept[0])]
        velocity = (duct.flow if into is None else self.rules.actual(duct, into.flow)) / area_of(duct, self.series)
        fits = (velocity >= duct.least * (1 - SLACK)) & (velocity <= duct.greatest * (1 + SLACK))
        return [Size(float(diameter)) for diameter in self.series[fits]]

    def _widest(self, number: int) -> Size:
        fitting, duct, into = self._fitting(number), self.ducts[number], self.into[number]
        if not fitting:
            raise no_size(duct, duct.flow if into is None else self.rules.actual(duct, into.flow), self.series)
        before = [self.sizes[i].last for i in duct.before]
        if not duct.settles and len(before) == 1 and Size(before[0]) in fitting:
            return Size(before[0])
        return fitting[-1]

    def _met(self, number: int) -> State:
        """What arrives at a junction once its sides agree."""
        before = self.ducts[number].before
        for i in before:
            self._resized(i, max(self.states[j].suction for j in before))
        here = self.states[before[0]]
        for k, other in enumerate(before[1:], 1):
            there = self.states[other]
            high, low, lower = (here, there, (other,)) if here.suction >= there.suction else (there, here, before[:k])
            way = without_damper(high, low, self.rules)
            if way is None:
                way = self._damper(number, lower)
            self.ways[number, k] = way
            here = joined(high, low, way, self.rules)
        return here

    def _resized(self, i: int, governing: float) -> None:
        """Another size for a side with too little suction, if one comes nearer."""

        def apart(size: Size) -> float:
            reached = self._at_end(i, size).suction
            return max(reached, governing) / min(reached, governing)

        if self.states[i].suction < self.rules.correct_from * governing:
            best = min(self._fitting(i), key=apart)
            if apart(best) < apart(self.sizes[i]) - SLACK:
                self.sizes[i], self.states[i] = best, self._at_end(i, best)

    def _damper(self, number: int, lower) -> Way:
        if self.prices.damper is None or not all(self.ducts[i].damper for i in lower):
            names = " and ".join(self.ducts[i].name for i in lower)
            raise NoSolution(
                f"{names}: no size of the series makes it agree with the other side before {self.ducts[number].name}, "
                "by hand; allow a damper there, or a finer series"
            )
        return Way.DAMPER


def no_size(duct: SizedDuct, flow: float, series) -> NoSolution:
    """The error for a duct for which the series has no size."""
    fast, slow = (flow / float(area_of(duct, d)) for d in (np.min(series), np.max(series)))
    return NoSolution(
        f"{duct.name}: no size of the series gives {duct.least:.3g} to {duct.greatest:.3g} m/s at {flow:.4g} m3/s; its "
        f"sizes give {slow:.3g} to {fast:.3g} m/s. Use a finer or longer series"
    )
