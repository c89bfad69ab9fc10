"""The part that is looked at: what flows there, and what can be moved on it."""

from collections.abc import Iterator
from functools import partial

from nicegui import ui

from hoodwright import units
from hoodwright.tasks.as_built.live import TROUBLES, DuctFlow, LiveDucts
from hoodwright.web.components.duct_scales import Slide, damper_scale
from hoodwright.web.components.duct_shapes import trouble_mark
from hoodwright.web.components.duct_try import DuctTry
from hoodwright.web.components.outcomes import caution_note
from hoodwright.web.components.signed import signed
from hoodwright.web.components.words import Words, block, button
from hoodwright.web.draft import Draft
from hoodwright.workplace.model import Duct

NOWHERE = "Choose a duct, hood, fan or filter in the drawing to look at it."


class DuctLook:
    """Built anew for another part; its numbers follow every answer."""

    def __init__(self, draft: Draft, trying: DuctTry):
        self.draft, self.trying = draft, trying
        self.part = ""
        self.slide: Slide | None = None
        self.in_file = 0.0
        self.gate: Words | None = None
        self.numbers: dict[str, Words] = {}
        with block("section", "duct-look") as self.box:
            self.title = Words("h2", "")
            self.about = Words("p", "", "because")
            self.trouble = block("p", "duct-trouble")
            self.trouble.props["role"] = "status"
            self.list = block("dl", "numbers")
            self.cautions = block("div", "cautions")
            self.slots = block("div", "slots")

    def show(self, part: str, live: LiveDucts, system: str) -> None:
        """Look at a part; the same part again only gets its numbers."""
        if part != self.part:
            self.part = part
            self._build(live)
        self._say(live, system)

    def forget(self) -> None:
        """The file changed: build anew at the next answer."""
        self.part = ""

    def step(self, way: int) -> None:
        """A key moved the damper of the duct that is looked at."""
        if self.slide is not None:
            place = self.slide.slider.value + 2 * way
            self.slide.slider.set_value(min(max(place, 0.0), 100.0))

    def _duct(self) -> Duct | None:
        """The duct that is looked at, or that of the hood."""
        ducts = self.draft.workplace.ducts
        hoods = {hood.name for hood in self.draft.workplace.hoods}
        by_name = next((duct for duct in ducts if duct.name == self.part), None)
        return by_name or next((duct for duct in ducts if duct.start == self.part and self.part in hoods), None)

    def _build(self, live: LiveDucts) -> None:
        self.list.clear()
        self.slots.clear()
        self.numbers, self.slide, self.gate = {}, None, None
        duct = self._duct()
        with self.slots:
            if duct is not None and live.ducts[duct.name].built:
                self._moves(duct, live.ducts[duct.name])

    def _moves(self, duct: Duct, flow: DuctFlow) -> None:
        trying = self.trying
        tried = trying.tried.dampers.get(duct.name)
        self.in_file = flow.damper if tried is None else sum(one.damper_loss or 0.0 for one in duct.fittings)
        self.slide = Slide(
            damper_scale(duct.name), self.in_file, tried, lambda k: trying.take(trying.tried.with_damper(duct.name, k))
        )
        self.gate = button("", lambda: trying.gate(self._gate_of(duct)), "toggle")

    def _say(self, live: LiveDucts, system: str) -> None:
        duct = self._duct()
        self.title.text = self.part or "Look closer"
        self.about.text = self._about(live, duct, system)
        found = (live.hoods, live.ducts, live.fans)
        troubles = next((parts[self.part].troubles for parts in found if self.part in parts), ())
        self.trouble.clear()
        self.trouble.set_visibility(bool(troubles))
        with self.trouble:
            for key in troubles:
                ui.html(trouble_mark(key), sanitize=False, tag="span").classes("mark")
                Words("span", TROUBLES[key])
        for name, text in self._numbers(live, duct, system):
            self._number(name, text)
        self.cautions.clear()
        with self.cautions:
            for caution in live.answer.cautions if live.answer else ():
                if caution.about == self.part and self.part not in live.fans:
                    caution_note(caution)
        self._tell_moves(duct)

    def _about(self, live: LiveDucts, duct: Duct | None, system: str) -> str:
        """What the part is, in a line."""
        if self.part in live.hoods:
            return f"Hood, through {duct.name}" if duct else "Hood without a duct"
        if self.part in live.ducts and duct is not None:
            return f"Duct from {duct.start} to {duct.to}, {_size(duct, system)}"
        if self.part in live.fans:
            return "Fan; its curve is below" if live.fans[self.part].built else "Fan; the file gives no curve"
        if any(cleaner.name == self.part for cleaner in self.draft.workplace.cleaners):
            return "Air cleaner; slide how dirty it is"
        return "Junction" if self.part else NOWHERE

    def _numbers(self, live: LiveDucts, duct: Duct | None, system: str) -> Iterator[tuple[str, str]]:
        shown = partial(signed, system=system)
        hood, fan = live.hoods.get(self.part), live.fans.get(self.part)
        if hood is not None and hood.built:
            yield "intended", shown(hood.intended, "flow")
        if fan is not None:
            yield "flow", shown(fan.flow, "flow")
            yield "total pressure", shown(fan.pressure, "pressure")
            if fan.power is not None:
                yield "shaft power", shown(fan.power, "power")
        if self.part in live.cleaners:
            yield "takes", shown(live.cleaners[self.part], "pressure")
        if duct is not None and duct.name in live.ducts:
            flow = live.ducts[duct.name]
            yield ("flow as built" if flow.built else "flow intended"), shown(flow.flow, "flow")
            yield f"velocity in {duct.name}", shown(flow.velocity, "velocity")
            yield f"{flow.carries} needs", shown(flow.least_velocity, "velocity")
            yield "static pressure at the start", shown(flow.static[0], "pressure")
            yield "static pressure at the end", shown(flow.static[1], "pressure")
        for one in [d for d in self.draft.workplace.ducts if d.to == self.part]:
            flow = live.ducts[one.name]
            yield f"from {one.name}", f"{shown(flow.flow, 'flow')}, {shown(flow.static[1], 'pressure')}"

    def _number(self, name: str, text: str) -> None:
        if name not in self.numbers:
            with self.list, block("div"):
                Words("dt", name)
                self.numbers[name] = Words("dd", text)
        self.numbers[name].text = text

    def _gate_of(self, duct: Duct) -> str:
        """Shutting the duct of a hood shuts the hood."""
        return duct.start if any(hood.name == duct.start for hood in self.draft.workplace.hoods) else duct.name

    def _tell_moves(self, duct: Duct | None) -> None:
        if self.slide is None or self.gate is None or duct is None:
            return
        self.slide.follow(self.in_file, self.trying.tried.dampers.get(duct.name))
        gate = self._gate_of(duct)
        shut = gate in self.trying.tried.closed
        self.gate.text = f"Open {gate} again" if shut else f"Shut {gate}"
        self.gate.props["aria-pressed"] = "true" if shut else "false"


def _size(duct: Duct, system: str) -> str:
    width, height = (units.show(side, "length", system) for side in duct.sides)
    return f"round {width}" if duct.is_round else f"{width} by {height}"
