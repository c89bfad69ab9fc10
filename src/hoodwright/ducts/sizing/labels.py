"""The labels of a whole tree: every way to build it that is worth keeping, from the hoods to the last duct."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from hoodwright.ducts.sizing.counting import Step, Way, behind_hood
from hoodwright.ducts.sizing.label_merge import CLASSES, lead_labels, meet_labels
from hoodwright.ducts.sizing.parts import (
    SLACK,
    Prices,
    Size,
    SizedDuct,
    SizingRules,
    area_of,
    cost_of,
    design_flows,
    own_loss,
)

BUCKET = 0.02  # of the suction, within which labels compete
KEPT = 3  # labels in a bucket
POINTS = 9  # flows at which the loss of a duct is tabulated
GREATEST_GROWTH = 1.6  # of a duct's design flow, where the rules set no less
SHARES = tuple(n / 10 for n in range(1, 10))  # of a hood's duct that has the first of two sizes
SUCTION, FLOW, COST, SPARE, CARRIED, OVER = range(6)


@dataclass(frozen=True, eq=False)
class Known:
    """Labels at a place by suction, where each comes from, and the number of its size."""

    labels: np.ndarray  # (n, 6)
    origin: np.ndarray  # (n, 3) label of the first, of the second side, and the way; or label before the duct
    size: np.ndarray  # (n,)

    @classmethod
    def by_suction(cls, labels, origin, size) -> "Known":
        """Sorted, as the kernels need them."""
        order = np.argsort(labels[:, SUCTION], kind="stable")
        return cls(np.ascontiguousarray(labels[order]), origin[order], size[order])


@dataclass(frozen=True)
class Price:
    """Of a m3/s, and of a Pa at the fan: by these labels compete."""

    flow: float
    pressure: float


class Tree:
    """What does not depend on prices of flow and pressure: the sizes of every duct and what each loses."""

    def __init__(self, ducts: Sequence[SizedDuct], series, prices: Prices, rules: SizingRules):
        self.ducts, self.prices, self.rules = ducts, prices, rules
        followed = {i: number for number, duct in enumerate(ducts) for i in duct.before}
        self.alone = [i not in followed or len(ducts[followed[i]].before) == 1 for i in range(len(ducts))]
        self.flows = design_flows(ducts, rules)
        self.growth = min(rules.most, GREATEST_GROWTH)
        self.sizes = [self._sizes(number, np.asarray(series, dtype=float)) for number in range(len(ducts))]
        self.hoods = {n: self._behind_hood(n) for n, duct in enumerate(ducts) if not duct.before}
        self.owns = {n: self._owns(n) for n, duct in enumerate(ducts) if duct.before}

    def _sizes(self, number: int, series) -> list[Size]:
        """Those at which a duct is neither too slow nor too fast, with what corrections may add to its flow."""
        duct = self.ducts[number]
        flow = self.rules.actual(duct, float(self.flows[number]))
        if duct.kept is not None:
            return [Size(duct.kept[0])]
        area = area_of(duct, series)
        most = flow if not duct.before else flow * self.growth
        fits = (most / area >= duct.least * (1 - SLACK)) & (flow / area <= duct.greatest * (1 + SLACK))
        single = [Size(float(diameter)) for diameter in series[fits]]
        if duct.before or not self.rules.split:
            return single
        pairs = [(a.diameter, b.diameter) for a in single for b in single if b.diameter < a.diameter]
        return single + [Size(a, b, share) for a, b in pairs for share in SHARES]

    def _behind_hood(self, number: int) -> Known:
        duct = self.ducts[number]
        rows = []
        for size in self.sizes[number]:
            state = behind_hood(duct, size, self.rules, alone=self.alone[number])
            cost = cost_of(duct, size, self.prices)
            rows.append((state.suction, state.flow, cost, state.spare, state.carried, state.over))
        labels = np.array(rows).reshape(-1, 6)
        return Known.by_suction(labels, np.full((len(rows), 3), -1), np.arange(len(rows)))

    def _owns(self, number: int) -> list[tuple[np.ndarray, np.ndarray]]:
        """Of every size: its row for the kernel, and its loss over the square of the flow at some flows."""
        duct, sizes, first = self.ducts[number], self.sizes[number], self.flows[number]
        step = first * max(self.growth - 1, 1e-6) / (POINTS - 1)
        flows = first + step * np.arange(POINTS)
        diameters = np.array([size.diameter for size in sizes])[:, None]
        lost = own_loss(duct, diameters, flows, self.rules) / flows**2 if len(sizes) else []
        return [
            (self._row(number, size, step), np.ascontiguousarray(one)) for size, one in zip(sizes, lost, strict=True)
        ]

    def _row(self, number: int, size: Size, step: float) -> np.ndarray:
        """A size of a duct as the kernel takes it."""
        duct, area = self.ducts[number], float(area_of(self.ducts[number], size.diameter))
        density = self.rules.density_in(duct)
        cosine = 1.0 if self.alone[number] else math.cos(duct.angle)
        cost, limits = cost_of(duct, size, self.prices), duct.limits
        return np.array([area, cost, *limits, cosine, self.flows[number], step, density])


class Labels:
    """The labels of a tree at one price of flow and pressure."""

    def __init__(self, tree: Tree, price: Price, *, bucket: float = BUCKET, kept: int = KEPT):
        self.tree, self.price, self.bucket, self.kept = tree, price, bucket, kept
        self.ends: list[Known] = []  # at the end of every duct
        self.joints: list[list[Known]] = []  # at its start, after each side that joined

    def add(self) -> Known:
        """The labels at the end of the next duct."""
        number, tree = len(self.ends), self.tree
        before = tree.ducts[number].before
        joints: list[Known] = []
        for k, other in enumerate(before[1:], 1):
            here = joints[-1] if joints else self.ends[before[0]]
            joints.append(self._met(here, self.ends[other], before[:k], other))
        self.joints.append(joints)
        if not before:
            self.ends.append(tree.hoods[number])
        else:
            self.ends.append(self._led(number, joints[-1] if joints else self.ends[before[0]]))
        return self.ends[-1]

    def _rules(self, least: float, speeds=(0.0, 0.0), dampers=(-1.0, -1.0)) -> np.ndarray:
        r, width = self.tree.rules, max(speeds[1] - speeds[0], 1e-9) / CLASSES
        own = (r.leave_above, r.correct_from, r.density, self.price.flow, self.price.pressure, self.bucket, r.most)
        return np.array([*own, float(r.law == "momentum"), least, speeds[0], 1 / width, *dampers])

    def _met(self, first: Known, second: Known, group, other: int) -> Known:
        a, b = first.labels, second.labels
        if not len(a) or not len(b):
            return _none()
        speeds = [np.log(np.maximum(x[:, CARRIED] / x[:, FLOW], 1e-9)) for x in (a, b)]
        span = (min(float(x.min()) for x in speeds), max(float(x.max()) for x in speeds))
        lowest, highest = max(a[0, SUCTION], b[0, SUCTION]), max(a[-1, SUCTION], b[-1, SUCTION])
        rules = self._rules(math.log(lowest), span, (self._damper(group), self._damper((other,))))
        tables = self._tables(lowest, highest, CLASSES)
        best = [np.empty((len(x), CLASSES), dtype=np.int64) for x in (a, b)]
        meet_labels(a, b, rules, *best, *tables)
        return _kept(*tables)

    def _led(self, number: int, before: Known) -> Known:
        found = []
        alone = len(self.tree.ducts[number].before) == 1
        if len(before.labels):
            lowest, highest = self._range(number, before.labels)
            rules = self._rules(math.log(lowest))
            for n, (own, following) in enumerate(self.tree.owns[number]):
                tables = self._tables(lowest, highest, 1)
                lead_labels(before.labels, own, following, rules, alone, *tables)
                known = _kept(*tables)
                found.append((known.labels, known.origin, np.full(len(known.labels), n)))
        return Known.by_suction(*(np.concatenate(x) for x in zip(*found, strict=True))) if found else _none()

    def _range(self, number: int, labels) -> tuple[float, float]:
        """Between which suctions the labels behind a duct lie, roughly."""
        flow, density = float(labels[:, FLOW].max()), self.tree.rules.density
        most = 0.0
        for own, following in self.tree.owns[number]:
            twice = (flow * density / own[0]) ** 2 / own[7]  # velocity pressures
            most = max(most, float(following.max()) * flow**2 + twice)
        return max(labels[0, SUCTION] / 2, 1.0), labels[-1, SUCTION] + most + 1.0

    def _tables(self, lowest: float, highest: float, classes: int):
        places = (math.ceil(math.log(max(highest / lowest, 1.0)) / self.bucket) + 1) * classes
        shape = (places, self.kept)
        return np.empty((*shape, 6)), np.full(shape, np.inf), np.empty((*shape, 3), dtype=np.int64)

    def _damper(self, group) -> float:
        """What dampers in all ducts of a side cost; -1 where one may have none."""
        price = self.tree.prices.damper
        allowed = price is not None and all(self.tree.ducts[i].damper for i in group)
        return (price or 0.0) * len(group) if allowed else -1.0

    def chosen(self, label: int) -> tuple[list[Size], dict[Step, Way]]:
        """The sizes, and the ways at junctions, that a label of the last duct stands for."""
        sizes: list[Size] = [Size(0.0)] * len(self.ends)
        ways: dict[Step, Way] = {}
        waiting = [(len(self.ends) - 1, label)]
        while waiting:
            number, at = waiting.pop()
            known, before = self.ends[number], self.tree.ducts[number].before
            sizes[number] = self.tree.sizes[number][known.size[at]]
            at = int(known.origin[at, 0])
            for k in range(len(before) - 1, 0, -1):
                at, second, way = (int(x) for x in self.joints[number][k - 1].origin[at])
                ways[number, k] = Way(way)
                waiting.append((before[k], second))
            if before:
                waiting.append((before[0], at))
        return sizes, ways


def _kept(labels, scores, origin) -> Known:
    used = np.isfinite(scores)
    return Known.by_suction(labels[used], origin[used], np.zeros(int(used.sum()), dtype=np.int64))


def _none() -> Known:
    return Known(np.zeros((0, 6)), np.zeros((0, 3), dtype=np.int64), np.zeros(0, dtype=np.int64))
