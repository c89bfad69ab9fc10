"""Places for a drawing of the ducts: hoods at the left, fan and stack at the right, no line across another.

Every hood has a row of its own; a duct goes level on the row it starts at, and turns into its junction at the end.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from hoodwright.tasks.as_built.tree import Branching
from hoodwright.workplace.check import OUTSIDE
from hoodwright.workplace.model import Duct, Workplace

HOODS, FIRST, TAIL, AFTER = 214.0, 236.0, 166.0, 84.0  # px: hoods, their ducts, each step to the discharge, behind it
ROW, LOW_ROW, BETWEEN = 84.0, 48.0, 26.0  # px: a row, one of many, between two systems
FEW_ROWS, MOST_ROWS = 12, 40
NARROWEST, WIDEST, WIDE = 22.0, 190.0, 1320.0  # px: a column, and the whole drawing where it fits
BEND, BEND_SHARE, FOOT = 56.0, 0.6, 12.0
THICKEST, THINNEST = 0.32, 1.5  # of a row; px


@dataclass(frozen=True)
class Spot:
    """A hood, junction, cleaner, fan or the open air, or a part of the tree that is folded, with its hoods."""

    key: str
    name: str
    kind: str  # "hood", "junction", "cleaner", "fan", "outside", "folded", "onward"
    x: float
    y: float
    hoods: tuple[str, ...] = ()  # those behind what is folded


@dataclass(frozen=True)
class Line:
    """A duct: level from its start, then a turn over the last `bend` to its end."""

    name: str
    start: str  # keys of spots
    end: str
    x0: float
    y0: float
    x1: float
    y1: float
    bend: float

    @property
    def level_until(self) -> float:
        """Where the turn begins."""
        return self.x1 - self.bend


@dataclass(frozen=True)
class Layout:
    """Everything in px, y downwards; `column` is how wide one junction stands from the next."""

    width: float
    height: float
    row: float
    column: float
    spots: tuple[Spot, ...]
    lines: tuple[Line, ...]

    def spot(self, key: str) -> Spot:
        """The spot of a key."""
        return next(spot for spot in self.spots if spot.key == key)


@dataclass(frozen=True)
class Band:
    """How thick a duct is drawn, and how far above or below its node it ends, so that bands lie side by side."""

    width: float
    aside: float = 0.0


def layout_of(workplace: Workplace, inside: str | None = None, wide: float = WIDE) -> Layout:
    """Places of all ducts, or of those `inside`, before a junction; what finds no row is folded."""
    tree = Branching(workplace)
    roots = [tree.leaving[inside]] if inside in tree.leaving else tree.roots()
    return _Placing(tree, roots, wide).layout()


def bands(layout: Layout, flows: Mapping[str, float]) -> dict[str, Band]:
    """Thickness by flow; where ducts meet, they lie side by side in the order they come from, top to bottom."""
    most = max((abs(flows.get(line.name, 0.0)) for line in layout.lines), default=0.0) or 1.0
    full = THICKEST * layout.row
    width = {line.name: max(THINNEST, full * abs(flows.get(line.name, 0.0)) / most) for line in layout.lines}
    meeting: dict[str, list[Line]] = {}
    for line in layout.lines:
        meeting.setdefault(line.end, []).append(line)
    found = {}
    for lines in meeting.values():
        edge = -sum(width[line.name] for line in lines) / 2
        for line in sorted(lines, key=lambda one: one.y0):
            found[line.name] = Band(width[line.name], edge + width[line.name] / 2)
            edge += width[line.name]
    return found


class _Placing:
    """Rows in the order of a walk up the tree, columns by the longest way from a hood."""

    def __init__(self, tree: Branching, roots: list[Duct], wide: float):
        self.tree, self.roots, self.wide = tree, roots, wide
        self.open = tree.opened(roots, MOST_ROWS)
        self.parts = {part.name: kind for kind, parts in _kinds(tree.workplace) for part in parts}
        self.order: list[tuple[Duct, str]] = []  # ducts with the key of their end, from the discharge up
        self.rows: dict[str, float] = {}
        self.columns: dict[str, int] = {}
        self.x: dict[int, float] = {}
        self.tail = 0  # columns behind the last junction

    def layout(self) -> Layout:
        """Walk, place, and put together."""
        leaves = self._walk()
        row = ROW if len(leaves) <= FEW_ROWS else LOW_ROW
        self._set_rows(leaves, row)
        last = self._set_columns()
        inner = max(1, last - self.tail) - 1
        room = self.wide - HOODS - FIRST - AFTER - TAIL * (last - 1 - inner)
        column = min(WIDEST, max(NARROWEST, room / max(1, inner)))
        self.x = {c: HOODS + FIRST + column * min(c - 1, inner) + TAIL * max(0, c - 1 - inner) for c in range(last + 1)}
        self.x[0] = HOODS
        lines = tuple(self._line(duct, end, column) for duct, end in self.order)
        height = max(self.rows.values(), default=0.0) + row / 2 + FOOT
        width = self.x[last] + AFTER if self.order else 0.0
        return Layout(width, height, row, column, tuple(self._spots()), lines)

    def _walk(self) -> list[tuple[str, str]]:
        """Goes up every tree; returns its ends at the left in the order of their rows, each with its system."""
        leaves, low = [], sum(1 for duct in self.tree.workplace.ducts if duct.start not in self.tree.arriving)
        for root in self.roots:
            todo = [(root, f"{root.to} {root.name}", 0)]
            while todo:
                duct, end, depth = todo.pop()
                self.order.append((duct, end))
                if duct.start not in self.open:
                    leaves.append((duct.start, root.name))
                    continue
                into = self._side_by_side(duct, depth) if low > FEW_ROWS else self.tree.before(duct)
                todo += [(one, duct.start, depth + (len(into) > 1)) for one in reversed(into)]
        return leaves

    def _side_by_side(self, duct: Duct, depth: int) -> list[Duct]:
        """In a great tree branches come from above and from below by turns, so that the way to the main is short."""
        into = self.tree.before(duct)
        main = self._main(into)
        others = [one for one in into if one is not main]
        above = [one for i, one in enumerate(others) if (depth + i) % 2]
        return [*above, main, *(one for one in others if one not in above)]

    def _main(self, ducts: list[Duct]) -> Duct:
        return max(ducts, key=lambda duct: self.tree.weight.get(duct.start, 0.0))

    def _set_rows(self, leaves: list[tuple[str, str]], row: float) -> None:
        y, before = row / 2, leaves[0][1] if leaves else ""
        for node, system in leaves:
            y += BETWEEN if system != before else 0.0
            self.rows[node], y, before = y, y + row, system
        for duct, end in reversed(self.order):
            if duct.start in self.open:
                self.rows[duct.start] = self.rows[self._main(self.tree.before_node(duct.start)).start]
            if end != duct.to:
                self.rows[end] = self.rows[duct.start]

    def _set_columns(self) -> int:
        """Junctions as far left as they can stand; what follows the last one stands at the right."""
        for duct, end in reversed(self.order):
            self.columns.setdefault(duct.start, 0)
            self.columns[end] = max(self.columns.get(end, 0), self.columns[duct.start] + 1)
        last = max(self.columns.values(), default=0)
        for root in self.roots:
            key, column = f"{root.to} {root.name}", last
            self.columns[key] = column
            node = root.start
            while node in self.open:
                column -= 1
                self.columns[node] = column
                self.tail = max(self.tail, last - column)
                if len(self.tree.before_node(node)) != 1:
                    break
                node = self.tree.before_node(node)[0].start
        return last

    def _line(self, duct: Duct, end: str, column: float) -> Line:
        start = duct.start
        x0, x1 = self.x[self.columns[start]], self.x[self.columns[end]]
        bend = min(BEND, BEND_SHARE * column, BEND_SHARE * (x1 - x0))
        return Line(duct.name, start, end, x0, self.rows[start], x1, self.rows[end], bend)

    def _spots(self) -> Iterator[Spot]:
        for duct, end in self.order:
            node = duct.start
            kind = (
                "folded" if node not in self.open and self.tree.before_node(node) else self.parts.get(node, "junction")
            )
            yield self._spot(node, node, kind, self.tree.hoods_before(node) if kind == "folded" else ())
            if end != duct.to:
                last = "outside" if duct.to == OUTSIDE else "onward"
                yield self._spot(end, duct.to, last, ())

    def _spot(self, key: str, name: str, kind: str, hoods: tuple[str, ...]) -> Spot:
        return Spot(key, name, kind, self.x[self.columns[key]], self.rows[key], hoods)


def _kinds(workplace: Workplace):
    return ("hood", workplace.hoods), ("cleaner", workplace.cleaners), ("fan", workplace.fans)
