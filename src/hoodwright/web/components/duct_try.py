"""What can be tried with the whole system: filters, fans, hoods open and shut, states of use; kept only when asked."""

from collections.abc import Callable

from hoodwright.errors import HoodwrightError
from hoodwright.tasks.as_built import edits as duct_edits
from hoodwright.tasks.as_built.live import Tried
from hoodwright.web.components.duct_scales import Slide, load_scale, speed_scale
from hoodwright.web.components.words import Words, block, button
from hoodwright.web.draft import Draft

KEPT = "Kept in the file; Undo takes it back."
MOST_FANS, MOST_GATES = 4, 30


class DuctTry:
    """Holds what is tried in one tab. `changed` is called at every change."""

    def __init__(self, draft: Draft, changed: Callable[[], None]):
        self.draft, self.changed = draft, changed
        self.tried = Tried()
        self.slides: dict[str, Slide] = {}
        self.gates: dict[str, Words] = {}
        with block("section", "duct-try") as self.box:
            Words("h2", "Try it").props["id"] = "duct-try"
            self.box.props["aria-labelledby"] = "duct-try"
            self.slots = block("div", "live-sliders")
            self.states = block("div", "toggles states")
            self.hoods = block("div", "toggles gates")
            with block("div", "choices"):
                self.keep = button("Keep in the file", self._keep, "act")
                self.back = button("Back to the file", self.reset)
            self.said = Words("p", "", "because")
            self.said.props["role"] = "status"

    def build(self) -> None:
        """Sliders and gates for the draft as it stands; what names parts that are gone is dropped."""
        workplace = self.draft.workplace
        names = {part.name for part in (*workplace.ducts, *workplace.hoods, *workplace.fans)}
        self.tried = Tried(
            self.tried.load,
            frozenset(self.tried.closed & names),
            {name: k for name, k in self.tried.dampers.items() if name in names},
            {name: n for name, n in self.tried.speeds.items() if name in names},
        )
        for part in (self.slots, self.states, self.hoods):
            part.clear()
        self.slides, self.gates = {}, {}
        with self.slots:
            self._sliders()
        with self.states:
            self._states()
        with self.hoods:
            self._gates()
        self._tell()

    def take(self, tried: Tried) -> None:
        """Something is tried."""
        self.tried = tried
        self.said.text = ""
        self._tell()
        self.changed()

    def gate(self, name: str) -> None:
        """Shut an open gate, open a shut one."""
        self.take(self.tried.with_gate(name, shut=name not in self.tried.closed))

    def reset(self) -> None:
        """Back to what the file says, with dirty filters."""
        self.tried = Tried()
        self.said.text = ""
        self.build()
        self.changed()

    def _sliders(self) -> None:
        workplace, tried = self.draft.workplace, self.tried
        if workplace.cleaners or any(hood.filter for hood in workplace.hoods):
            own = Slide(load_scale(), 1.0, tried.load, self._loaded, unfiled=True)
            self.slides["load"] = own
        for fan in [fan for fan in workplace.fans if fan.curve][:MOST_FANS]:
            now = tried.speeds.get(fan.name)
            self.slides[fan.name] = Slide(speed_scale(fan), fan.speed_ratio, now, self._sped(fan.name))

    def _states(self) -> None:
        states = self.draft.workplace.scenarios
        if states:
            Words("span", "State of use:", "because")
            button("all hoods open", lambda: self._state((), ()), "toggle")
        for one in states:
            button(one.name, lambda one=one: self._state(one.closed, one.dampers), "toggle")

    def _gates(self) -> None:
        led = {duct.start for duct in self.draft.workplace.ducts}
        hoods = [hood.name for hood in self.draft.workplace.hoods if hood.name in led]
        if len(hoods) > MOST_GATES:
            Words("p", "Choose a hood in the drawing to shut it.", "because")
            return
        Words("span", "Hoods in use:", "because")
        for name in hoods:
            self.gates[name] = button(name, lambda name=name: self.gate(name), "toggle gate")

    def _loaded(self, share: float) -> None:
        self.take(Tried(share, self.tried.closed, self.tried.dampers, self.tried.speeds))

    def _sped(self, fan: str) -> Callable[[float], None]:
        return lambda share: self.take(self.tried.with_speed(fan, share))

    def _state(self, closed: tuple, dampers: tuple) -> None:
        self.take(Tried(self.tried.load, frozenset(closed), dict(dampers), self.tried.speeds))

    def _tell(self) -> None:
        """Which gates are open, and whether there is something to keep."""
        for name, gate in self.gates.items():
            shut = name in self.tried.closed
            gate.text = f"{name}: shut" if shut else name
            gate.props["aria-pressed"] = "false" if shut else "true"
        some = self.tried != Tried(self.tried.load) and not self._is_state()
        self.keep.props["disabled"] = not some
        self.back.props["disabled"] = not self.tried.any

    def _is_state(self) -> bool:
        """Whether it is a state of use that the file has."""
        tried = self.tried
        states = [(frozenset(one.closed), dict(one.dampers)) for one in self.draft.workplace.scenarios]
        return not tried.speeds and (tried.closed, tried.dampers) in states

    def _keep(self) -> None:
        try:
            document = duct_edits.kept(self.draft.document, self.tried)
            document.workplace()
        except HoodwrightError as error:
            self.said.text = str(error)
            return
        told = duct_edits.not_kept(self.tried)
        closed = frozenset(self.tried.closed)
        self.tried = Tried(self.tried.load, closed)
        self.draft.edit(document)
        self.said.text = f"{KEPT} {told}".strip()
