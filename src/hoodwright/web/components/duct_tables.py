"""The drawing again as tables: what every hood needs and gets, and every duct; cells keep their place and change."""

from collections.abc import Iterator

from nicegui import ui

from hoodwright import units
from hoodwright.results import Verdict
from hoodwright.tasks.as_built.layout import Layout
from hoodwright.tasks.as_built.live import TROUBLES, HoodFlow, LiveDucts
from hoodwright.tasks.assessment import Assessment, SourceNeed
from hoodwright.web.components.signed import percent, signed
from hoodwright.web.components.words import Words, block, mark, mark_shape, table
from hoodwright.workplace.model import Workplace

HOOD_HEAD = ["hood", "required", "intended", "as built", "read on site", "is it enough?"]
DUCT_HEAD = ["duct", "flow", "velocity", "static pressure, start", "static pressure, end", "trouble"]
MOST = 60  # rows


class HoodTable:
    """Required, intended and today side by side."""

    def __init__(self) -> None:
        with block("section", "hood-table") as self.box:
            Words("h2", "What does every hood need, and get?")
            self.note = Words("p", "", "because held")
            self.place = block("div", "scrolls")
        self.names: tuple = ()
        self.cells: list[tuple[list[Words], ui.html, Words]] = []

    def show(self, workplace: Workplace, found: Assessment | None, live: LiveDucts, system: str) -> None:
        """Every hood, the worst first where there are many."""
        rows = list(self._rows(workplace, found, live, system))
        names = tuple(cells[0] for cells, _, _ in rows)
        if names != self.names:
            self._build(names)
        self.note.text = f"The {len(rows)} worst of {len(live.hoods)} hoods." if len(rows) < len(live.hoods) else ""
        for (texts, shape, words), (cells, verdict, told) in zip(self.cells, rows, strict=True):
            for cell, text in zip(texts, cells, strict=True):
                cell.text = text
            shape.content = mark_shape(verdict)
            words.text = told

    def _build(self, names: tuple) -> None:
        self.names, self.cells = names, []
        self.place.clear()
        with self.place, table(HOOD_HEAD, "lines"):
            for _ in names:
                with block("tr"):
                    texts = [Words("td") for _ in HOOD_HEAD[:-1]]
                    with block("td"), block("span", "verdict"):
                        self.cells.append((texts, mark(Verdict.CANNOT_TELL), Words("span")))

    def _rows(self, workplace: Workplace, found: Assessment | None, live: LiveDucts, system: str) -> Iterator[tuple]:
        needs = {answer.name: answer.worst for answer in found.hoods if answer.needs} if found else {}
        hoods = (
            sorted(live.hoods.values(), key=lambda hood: hood.share) if len(live.hoods) > MOST else live.hoods.values()
        )
        read = {hood.name: hood.today for hood in workplace.hoods}
        for hood in list(hoods)[:MOST]:
            need, today = needs.get(hood.name), read[hood.name]
            flow = signed(hood.flow, "flow", system) if hood.built else "not known"
            cells = (
                hood.name,
                "" if need is None else required(need, system),
                units.show(hood.intended, "flow", system),
                flow,
                "" if today is None else units.show(today.flow, "flow", system),
            )
            yield cells, *_enough(need, hood)


def required(need: SourceNeed, system: str) -> str:
    """What a source asks of its hood, as far as it can be told."""
    if need.untold and not need.bound.lines:
        return "cannot be told"
    if need.in_range:
        return units.show(need.flow, "flow", system)
    least = units.show(need.bound.least, "flow", system)
    if need.bound.most is None:
        return f"at least {least}"
    return f"{least} to {units.show(need.bound.most, 'flow', system)}"


def _enough(need: SourceNeed | None, hood: HoodFlow) -> tuple[Verdict, str]:
    if not hood.built:
        return Verdict.CANNOT_TELL, "cannot tell: no duct leads to a fan with a curve"
    if hood.troubles and hood.troubles[0] in ("shut", "reversed"):
        return Verdict.SHORT, TROUBLES[hood.troubles[0]]
    if need is None:
        return Verdict.CANNOT_TELL, "not worked out"
    least = need.flow if need.in_range else need.bound.least
    most = need.flow if need.in_range else need.bound.most
    if hood.flow < least:
        return Verdict.SHORT, f"falls short: {percent(hood.flow / least)} of what is required"
    if most is None or hood.flow < most or (need.untold and not need.bound.lines):
        return Verdict.CANNOT_TELL, "cannot tell"
    also = ", but less than intended" if "short" in hood.troubles else ""
    return Verdict.MEETS, f"meets the need{also}"


class DuctTable:
    """Every duct of the drawing in words."""

    def __init__(self) -> None:
        with block("details", "duct-table") as self.box:
            self.box.props["open"] = True
            Words("summary", "The drawing as a table")
            self.note = Words("p", "", "because")
            self.place = block("div", "scrolls")
        self.names: tuple = ()
        self.cells: dict[str, list[Words]] = {}

    def show(self, layout: Layout, live: LiveDucts, system: str) -> None:
        """Those in trouble first where there are many."""
        names = tuple(sorted(line.name for line in layout.lines))
        file_order = [name for name in live.ducts if name in set(names)]
        if len(live.ducts) > MOST:
            trouble = [name for name, duct in live.ducts.items() if duct.troubles]
            file_order = list(dict.fromkeys([*trouble, *file_order]))[:MOST]
            self.note.text = f"{len(file_order)} of {len(live.ducts)} ducts: those in trouble, and those drawn."
        if tuple(file_order) != self.names:
            self._build(file_order)
        for name in file_order:
            for cell, text in zip(self.cells[name], _duct_cells(name, live, system), strict=True):
                cell.text = text

    def _build(self, names: list[str]) -> None:
        self.names, self.cells = tuple(names), {}
        self.place.clear()
        with self.place, table(DUCT_HEAD, "lines"):
            for name in names:
                with block("tr"):
                    self.cells[name] = [Words("td") for _ in DUCT_HEAD]


def _duct_cells(name: str, live: LiveDucts, system: str) -> list[str]:
    duct = live.ducts[name]
    pressures = [signed(p, "pressure", system) for p in duct.static]
    return [
        name,
        signed(duct.flow, "flow", system),
        signed(duct.velocity, "velocity", system),
        *pressures,
        ", ".join(TROUBLES[key] for key in duct.troubles),
    ]
