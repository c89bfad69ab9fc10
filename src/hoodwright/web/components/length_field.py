"""A length that one tab tries out: typed in any unit, with what was understood; the file is left alone."""

from collections.abc import Callable

from nicegui import ui

from hoodwright import units
from hoodwright.errors import HoodwrightError
from hoodwright.web.components.words import Words

WAIT_MS = 250


class LengthField:
    """`take` gets every sound length [m]; what it refuses, or cannot be read, is said at the field."""

    def __init__(self, label: str, value: float, system: str, take: Callable[[float], None]):
        self.value, self.system, self._take = value, system, take
        with ui.element("div").classes("field"):
            name = Words("label", label)
            self.input = ui.input(value=_words(value, system), validation=lambda _: None).without_auto_validation()
            self.input.props(f"outlined dense debounce={WAIT_MS} spellcheck=false autocomplete=off").mark(label)
            name.props["for"] = self.input.html_id
            self.note = Words("div", units.understood(_words(value, system), "length", system), "understood")
        self.input.on_value_change(self._typed)

    def follow(self, value: float, system: str) -> None:
        """Show another length, unless what stands there says the same."""
        self.system = system
        if abs(value - self.value) > 1e-9 or self.input.error:
            self.value = value
            self.input.set_value(_words(value, system))
        self._say(self.input.value or "")

    def _typed(self) -> None:
        text = self.input.value or ""
        try:
            value = units.parse(text, "length")
            if abs(value - self.value) > 1e-9:
                self._take(value)
        except HoodwrightError as error:
            self.input.error = str(error)
            self.note.text = ""
            return
        self.value = value
        self.input.error = None
        self._say(text)

    def _say(self, text: str) -> None:
        self.note.text = "" if self.input.error else units.understood(text, "length", self.system)


def _words(value: float, system: str) -> str:
    return units.show(value, "length", system).replace("\u2009", " ")
