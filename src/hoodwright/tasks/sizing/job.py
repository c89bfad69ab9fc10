"""The sizing job: sizes of all ducts that balance themselves at the least cost, held against the hand method.

A workplace goes in; out comes a list of changes with what they save, which may be written into the document or not.
"""

import math
from collections.abc import Iterator
from dataclasses import dataclass, replace

import numpy as np

from hoodwright import __version__
from hoodwright import ducts as d
from hoodwright.ducts.sizing import Checked, Prices, Sized, SizingRules, hand_sizes, sizes_that_hold
from hoodwright.errors import InputError, NoSolution
from hoodwright.jobs import Progress
from hoodwright.tasks.as_built.edits import kept
from hoodwright.tasks.as_built.live import Tried
from hoodwright.tasks.as_built.runs import curve_of
from hoodwright.tasks.design import air_of, design_flow
from hoodwright.tasks.duct_cautions import NO_DAMPER
from hoodwright.tasks.edits import in_its_unit
from hoodwright.tasks.shapes import area_of
from hoodwright.tasks.sizing.prices import Bill, bill_of
from hoodwright.tasks.sizing.split import same, with_two_sizes
from hoodwright.tasks.sizing.tree import DuctTree, trees_of
from hoodwright.tasks.sizing.words import change_words, check_words, saved_words
from hoodwright.tasks.walk import Walk
from hoodwright.workplace import Document
from hoodwright.workplace.model import Workplace

MOST = 1.09  # of the intended flow that corrections may give a hood: the check allows 1.10


@dataclass(frozen=True)
class SizingAsk:
    """What may be chosen. `series` is a name of `SERIES` or diameters [m], by default fine, in US units half inch.

    `fastest` is the highest velocity [m/s], `law` that of junctions; `dampers` tells whether any are allowed, `split`
    whether a hood's duct may have two sizes, `keep` names ducts that keep their size.
    """

    series: str | tuple[float, ...] | None = None
    fastest: float = 25.0
    dampers: bool = True
    split: bool = False
    law: str = "momentum"
    keep: frozenset[str] = frozenset()


SERIES = {
    "fine": d.fine_diameters,
    "EN 1506": d.standard_diameters,
    "half inch": lambda: d.inch_diameters(halves=True),
    "inch": d.inch_diameters,
}


@dataclass(frozen=True)
class Change:
    """One duct: sizes in m (None where it is not round), the damper at its end in its velocity pressures.

    Where `then` is not None the size `new` has the first `share` of the length, and `then` the rest.
    """

    duct: str
    old: float | None
    by_hand: float | None
    new: float
    then: float | None
    share: float
    length: float
    damper: float | None
    velocity: float  # m/s
    words: str

    @property
    def changed(self) -> bool:
        """Whether the size differs from that of the file."""
        return self.then is not None or self.old is None or not same(self.old, self.new)


@dataclass(frozen=True)
class Totals:
    """What a choice of sizes takes: air power and what it draws [W], cost of ducts, and with energy."""

    power: float
    electric: float
    ducts: float
    total: float


@dataclass(frozen=True)
class FanSized:
    """The ducts before one fan. `speed` is that of the fan over its curve, None where the file has no curve."""

    fan: str
    changes: tuple[Change, ...]
    new: Totals
    by_hand: Totals | None
    power_now: float  # W of air power by the hand method, with the sizes of the file
    speed: float | None
    check: Checked
    words: tuple[str, ...]


@dataclass(frozen=True)
class SizingAnswer:
    """What the sizing job found, for every fan."""

    workplace: str
    system: str
    version: str
    law: str
    currency: str
    fans: tuple[FanSized, ...]
    notes: tuple[str, ...]  # what was taken where the file says nothing, and what is not counted

    @property
    def changes(self) -> tuple[Change, ...]:
        """Of all ducts."""
        return tuple(change for fan in self.fans for change in fan.changes)


def size_ducts(
    progress: Progress | None, workplace: Workplace, ask: SizingAsk | None = None, system: str | None = None
) -> SizingAnswer:
    """Size all round ducts before the fans of a workplace, with dirty filters, at the intended flows.

    `progress` may stop the work. NoSolution or InputError says which duct stands in the way.
    """
    ask, progress, units = ask or SizingAsk(), progress or Progress(), system or workplace.units
    unknown = ask.keep - {duct.name for duct in workplace.ducts}
    if unknown:
        raise InputError(f"keep: no duct is named {sorted(unknown)[0]!r}; name ducts of the file")
    walk = Walk(
        workplace, {h.name: design_flow(h, workplace) for h in workplace.hoods}, air_of(workplace.air), loaded=True
    )
    trees = trees_of(walk, ask.fastest, ask.keep)
    fans = []
    for n, tree in enumerate(trees):
        part = progress.part(n / len(trees), (n + 1) / len(trees))
        fans.append(_OneFan(tree, workplace, ask, units).sized(part))
    taken = dict.fromkeys(note for tree in trees for note in bill_of(workplace, tree.fan).notes)
    progress.report(1.0, "done")
    currency = workplace.prices.currency or ""
    answer = SizingAnswer(workplace.name, units, __version__, ask.law, currency, tuple(fans), tuple(taken))
    return replace(answer, notes=(*taken, *_notes(workplace, answer.changes)))


class _OneFan:
    """Sizes the ducts before one fan."""

    def __init__(self, tree: DuctTree, workplace: Workplace, ask: SizingAsk, units: str):
        self.tree, self.ask, self.units = tree, ask, units
        self.bill: Bill = bill_of(workplace, tree.fan)
        self.currency = workplace.prices.currency or ""
        air = air_of(workplace.air)
        room = d.RoomAir(air.temperature, air.p_abs, air.humidity_ratio)
        self.rules = SizingRules(air.density, air.viscosity, law=ask.law, most=MOST, split=ask.split, air=room)
        self.prices: Prices = self.bill.prices(tree.behind, dampers=ask.dampers)
        self.series = series_of(ask.series if ask.series is not None else "fine" if units == "SI" else "half inch")

    def sized(self, progress: Progress) -> FanSized:
        fan = self.tree.fan
        curve = None if fan.curve is None else curve_of(fan, self._outlet(), 1.0)
        found, check = sizes_that_hold(self.tree.ducts, self.series, self.prices, self.rules, curve, progress)
        hand = self._by_hand()
        changes = tuple(self._change(n, found, hand) for n in range(len(self.tree.ducts)))
        new, by_hand = self._totals(found), None if hand is None else self._totals(hand)
        words = (
            *saved_words(new, by_hand, self.tree.power, self.bill, self.currency, self.units),
            *check_words(check, self.tree, found, fan, self.units),
        )
        speed = None if curve is None else check.speed
        return FanSized(fan.name, changes, new, by_hand, self.tree.power, speed, check, words)

    def _outlet(self) -> float:
        fan, last = self.tree.fan, self.tree.sections[-1].duct
        return area_of(fan.outlet) if fan.outlet is not None else area_of(last)

    def _by_hand(self) -> Sized | None:
        """The hand method's sizes, with a damper where nothing else helps; None where even so it has no answer."""
        prices = self.prices if self.prices.damper is not None else self.bill.prices(self.tree.behind, dampers=True)
        try:
            return hand_sizes(self.tree.ducts, self.series, prices, self.rules)
        except NoSolution:
            return None

    def _totals(self, sized: Sized) -> Totals:
        return Totals(sized.power, sized.power / self.bill.share, sized.duct_cost, sized.total)

    def _change(self, n: int, found: Sized, hand: Sized | None) -> Change:
        duct, size, flow = self.tree.sections[n].duct, found.sizes[n], found.flows[n]
        area = area_of(duct) if self.tree.ducts[n].kept else math.pi / 4 * size.last**2
        pressure = self.rules.density_in(self.tree.ducts[n]) * (flow / area) ** 2 / 2
        damper = found.dampers[n] / pressure if n in found.dampers else None
        by_hand = None if hand is None else hand.sizes[n].last
        part = (size.diameter, size.then, size.share, duct.length)
        change = Change(duct.name, duct.round, by_hand, *part, damper, flow / area, "")
        if self.tree.ducts[n].kept:
            change = replace(change, old=size.last, by_hand=size.last)
        return replace(change, words=change_words(change, self.units))


def with_sizes(document: Document, answer: SizingAnswer) -> Document:
    """The document with the new sizes, dampers and, where the file has a speed, fan speeds; all else stays."""
    workplace = document.workplace()
    dampers: dict[str, float] = {}
    for change in answer.changes:
        names = [duct.name for duct in document.workplace().ducts]
        if change.duct not in names:
            raise InputError(f"the file has no duct {change.duct!r} any more; size it again")
        dampers[change.duct] = change.damper or 0.0
        if not change.changed:
            continue
        path = ("ducts", names.index(change.duct), "round")
        document = document.set(path, in_its_unit(document, path, change.new, exact=True))
        if change.then is not None:
            document, narrow = with_two_sizes(document, path[1], change.then, change.share)
            dampers |= {change.duct: 0.0, narrow: change.damper or 0.0}
    rated = {fan.name for fan in workplace.fans if fan.speed}
    speeds = {f.fan: f.speed for f in answer.fans if f.speed is not None and f.fan in rated}
    return kept(document, Tried(dampers=dampers, speeds=speeds))


def series_of(asked: str | tuple[float, ...]) -> np.ndarray:
    """Diameters of a series by its name, or as given [m]."""
    if isinstance(asked, str):
        if asked not in SERIES:
            raise InputError(f"no series is named {asked!r}; there is {', '.join(SERIES)}")
        return SERIES[asked]()
    if not asked or min(asked) <= 0:
        raise InputError(f"got the series {list(asked)}; give one diameter or more, each above 0 m")
    return np.unique(asked)


def _notes(workplace: Workplace, changes: tuple[Change, ...]) -> Iterator[str]:
    """What the sizes do not count, and where a damper is out of place."""
    hazards = {hazard for contaminant in workplace.contaminants for hazard in contaminant.hazards}
    if any(change.damper is not None for change in changes):
        for hazard in NO_DAMPER:
            if hazard in hazards:
                yield f"dampers where {hazard} passes: many rules forbid them; ask for sizes without, or for two sizes"
    if "explosible dust" in hazards:
        yield "explosible dust: a named person must review the whole system before any size is taken"
    if any(duct.taper for duct in workplace.ducts):
        yield "cones at the start of ducts are left out: they change with the sizes"
    if any(duct.leak for duct in workplace.ducts):
        yield "leaks are left out; the ducts as built count them"
    if any(duct.rise and duct.temperature for duct in workplace.ducts):
        yield "the lift of hot air is left out; the ducts as built count it"
