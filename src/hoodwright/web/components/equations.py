"""The equations that ask for a flow, each with "where from?": formula, numbers, source and range."""

import json

from hoodwright import units
from hoodwright.sources import find_source
from hoodwright.tasks.assessment import HoodAnswer, LawNeed, Line, SourceNeed
from hoodwright.tasks.recompute import recompute
from hoodwright.web.components.words import Words, block, button, table

NO_PUBLICATION = ("definition", "continuity", "stated by the user", "")


def equations(answer: HoodAnswer, system: str, asked: set[str]) -> None:
    """One table for each source served. `asked` holds the numbers whose origin is open."""
    for need in answer.needs:
        Words("h3", f"What the {need.source} asks for")
        Words("p", _basis(need, system), "because")
        if need.untold:
            Words("p", f"No equation tells its need: {need.untold}.", "untold")
        rows = [(_name(law, need), law.flow, law.line, f"{law.reach}{_inside(need, system)}") for law in need.laws]
        rows += [] if need.in_range else _bounds(need, system)
        if not rows:
            continue
        with table(["equation", "required flow", ""], "equations"):
            for name, flow, line, reach in rows:
                _Number(name, flow, line, reach, f"{answer.name}/{need.source}/{name}", system, asked)


def _name(law: LawNeed, need: SourceNeed) -> str:
    return f"{law.equation} (rules)" if law.flow == need.flow and len(need.laws) > 1 else law.equation


def lines_list(lines: tuple[Line, ...]) -> None:
    """Lines to recompute: formula, the same with its numbers, what to type, and where it is from."""
    with block("ul", "lines-list"):
        for line in lines:
            with block("li"):
                Words("p", line.formula, "formula")
                Words("p", line.filled, "filled")
                to_type(line)
                _cite("p", line.source)


def to_type(line: Line) -> None:
    """What can be pasted into a calculator; nothing where the line is no plain arithmetic."""
    text = recompute(line.filled)
    if not text:
        return
    with block("div", "to-type"):
        Words("code", text)
        copy = Words("button", "copy", "ask")
        copy.props.update({"type": "button", "aria-label": f"Copy for a calculator: {text}"})
        copy.on("click", js_handler=f"() => navigator.clipboard?.writeText({json.dumps(text)})")


def _bounds(need: SourceNeed, system: str) -> list[tuple[str, float, Line, str]]:
    names = ("needed here at least", "enough here in still, open air")
    reach = f"{_place(need, system)}: {need.bound.why}; a limit that is certain in still, open air"
    limits = zip(names, (need.bound.least, need.bound.most), need.bound.lines, strict=False)
    return [(name, flow, line, reach) for name, flow, line in limits if flow is not None]


class _Number:
    """A row with a required flow, and below it the row that says where it is from."""

    def __init__(self, name: str, flow: float, line: Line, reach: str, key: str, system: str, asked: set[str]):
        self.key, self.asked, self.about = key, asked, f"{name}, {units.show(flow, 'flow', system)}"
        shown = units.show(flow, "flow", system)
        with block("tr", "asked"):
            Words("td", name)
            Words("td", shown, "number").props["title"] = f"{flow!r} m3/s"
            with block("td"):
                self.button = button("where from?", self._turn, "ask")
        with block("tr", "in-numbers"):
            Words("td", line.filled).props["colspan"] = 3
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
        Words("dt", "formula")
        Words("dd", line.formula, "filled")
        Words("dt", "with its numbers")
        Words("dd", line.filled, "filled")
        if recompute(line.filled):
            Words("dt", "recompute")
            with block("dd"):
                to_type(line)
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
    if not need.capture_velocity:
        return f"{need.basis} [{need.basis_source}]"
    speed = units.show(need.capture_velocity, "velocity", system)
    asked = (
        f"{need.velocity_kind} at the" if need.velocity_kind == "capture velocity" else f"{need.velocity_kind} for the"
    )
    return f"{speed} {asked} {need.source}: {need.basis} [{need.basis_source}]"


def _inside(need: SourceNeed, system: str) -> str:
    """That the place of the hood lies inside a range, where the range is one of places."""
    return f"; {_place(need, system)} lies inside it" if need.place[:1].isdigit() else ""


def _place(need: SourceNeed, system: str) -> str:
    angle = units.show(need.off_axis, "angle", system)
    aside = "" if angle.startswith("0") else f", {angle} off the axis"
    return f"{need.place} the {need.source}{aside}"
