"""The equations that ask for a flow, each with "where from?": formula, numbers, source and range."""

from hoodwright import units
from hoodwright.sources import find_source
from hoodwright.tasks.assessment import HoodAnswer, Line, SourceNeed
from hoodwright.web.components.words import Words, block, button, table

NO_PUBLICATION = ("definition", "continuity", "stated by the user")


def equations(answer: HoodAnswer, system: str, asked: set[str]) -> None:
    """One table for each source served. `asked` holds the numbers whose origin is open."""
    for need in answer.needs:
        Words("h3", f"What the {need.source} asks for")
        Words("p", _basis(need, system), "because")
        with table(["equation", "required flow", ""], "equations"):
            for law in need.laws:
                ruling = law.flow == need.flow and len(need.laws) > 1
                name = f"{law.equation} (rules)" if ruling else law.equation
                reach = f"{law.reach}; {_place(need, system)} lies inside it"
                _Number(
                    name,
                    law.flow,
                    law.line,
                    reach,
                    f"{answer.name}/{need.source}/{law.equation}",
                    system,
                    asked,
                )
            if not need.in_range:
                _bounds(answer.name, need, system, asked)


def lines_table(lines: tuple[Line, ...]) -> None:
    """Lines to recompute: formula, the same with its numbers, and where it is from."""
    with table(["formula", "with its numbers", "from"], "lines"):
        for line in lines:
            with block("tr"):
                Words("td", line.formula)
                Words("td", line.filled, "filled")
                _cite("td", line.source)


def _bounds(hood: str, need: SourceNeed, system: str, asked: set[str]) -> None:
    names = ("needed here at least", "enough here in still, open air")
    reach = f"{_place(need, system)}: {need.bound.why}; a limit that is certain in still, open air"
    for name, flow, line in zip(names, (need.bound.least, need.bound.most), need.bound.lines, strict=False):
        if flow is not None:
            _Number(name, flow, line, reach, f"{hood}/{need.source}/{name}", system, asked)


class _Number:
    """A row with a required flow, and below it the row that says where it is from."""

    def __init__(self, name: str, flow: float, line: Line, reach: str, key: str, system: str, asked: set[str]):
        self.key, self.asked, self.about = key, asked, f"{name}, {units.show(flow, 'flow', system)}"
        shown = units.show(flow, "flow", system)
        with block("tr"):
            Words("td", name)
            Words("td", shown, "number").props["title"] = f"{flow!r} m3/s"
            with block("td"):
                self.button = button("where from?", self._turn, "ask")
        with block("tr", "origin") as self.origin, block("td") as cell:
            cell.props["colspan"] = 3
            _origin(line, reach)
        self._show()

    def _turn(self) -> None:
        self.asked.symmetric_difference_update({self.key})
        self._show()

    def _show(self) -> None:
        shown = self.key in self.asked
        self.origin.set_visibility(shown)
        self.button.text = "back" if shown else "where from?"
        self.button.props["aria-label"] = f"{self.button.text} {self.about}"
        self.button.props["aria-expanded"] = "true" if shown else "false"


def _origin(line: Line, reach: str) -> None:
    with block("dl"):
        for name, words in (("formula", line.formula), ("with its numbers", line.filled)):
            if words:
                Words("dt", name)
                Words("dd", words, "filled")
        Words("dt", "source")
        _cite("dd", line.source)
        Words("dt", "range")
        Words("dd", reach)


def _cite(tag: str, citation: str) -> None:
    if citation in NO_PUBLICATION:
        Words(tag, citation)
        return
    source = find_source(citation)
    cell = Words(tag, f"{source.title} ({source.year}) [{citation}]")
    cell.props["title"] = f"{source.edition}; {source.trust}: {source.how}"


def _basis(need: SourceNeed, system: str) -> str:
    speed = units.show(need.capture_velocity, "velocity", system)
    return f"{speed} towards the hood at the {need.source}: {need.basis} [{need.basis_source}]"


def _place(need: SourceNeed, system: str) -> str:
    away = f"{units.show(need.distance, 'length', system)} away"
    angle = units.show(need.off_axis, "angle", system)
    return f"{away}, {angle} off the axis" if not angle.startswith("0") else away
