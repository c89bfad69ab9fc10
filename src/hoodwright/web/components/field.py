"""A field that takes any unit, says what it understood, and shows a fault where it was typed."""

from collections.abc import Callable

from nicegui import run, ui

from hoodwright import units
from hoodwright.errors import Fault, HoodwrightError, WorkplaceError
from hoodwright.web.components.words import Words
from hoodwright.web.draft import Draft
from hoodwright.workplace import Document
from hoodwright.workplace.tree import Path, read_tree

WAIT_MS = 250
NOT_IN_FILE = "not in the file yet"


class QuantityField:
    """One quantity of the draft. `apply` makes the edited document from the typed text."""

    def __init__(
        self,
        draft: Draft,
        path: Path,
        label: str,
        kind: str,
        shown: Callable[[], str],
        apply: Callable[[Document, str], Document],
    ):
        self.draft, self.path, self.kind = draft, path, kind
        self._shown, self._apply = shown, apply
        self._at_work = False
        start = draft.typed.get(path, shown())
        with ui.element("div").classes("field"):
            name = Words("label", label)
            self.input = ui.input(value=start, validation=lambda _: None).without_auto_validation()
            self.input.props(f"outlined dense debounce={WAIT_MS} spellcheck=false autocomplete=off").mark(label)
            name.props["for"] = self.input.html_id
            self.input.on_value_change(self._typed).on("blur", self._left)
            self.note = Words("div", "", "understood")
        self._say(start)
        if path in draft.typed:
            ui.timer(0, self._typed, once=True)

    async def _typed(self) -> None:
        text = self.input.value or ""
        if text == self._shown():
            self.draft.typed.pop(self.path, None)
            return self._say(text)
        self._at_work = True
        base = self.draft.document
        fault, candidate = await run.io_bound(_candidate, base, text, self._apply, self.path)
        if text != (self.input.value or ""):
            return None
        if base is not self.draft.document:
            return await self._typed()
        self._say(text, fault)
        if fault:
            self.draft.typed[self.path] = text
        else:
            self.draft.typed.pop(self.path, None)
            self.draft.edit(candidate, key=self.path)
        return None

    def _left(self) -> None:
        self._at_work = False
        self.draft.close_step()
        self.follow()

    def _say(self, text: str, fault: str | None = None) -> None:
        self.input.error = fault
        self.note.text = "" if fault else _understood(text, self.kind, self.draft.system)

    def follow(self) -> None:
        """Show what the draft says now, unless the field says the same in other words or is being mended."""
        if self.path in self.draft.typed:
            return
        shown = self._shown()
        own = self._at_work and self.draft.last_key == self.path
        if not own and not _same(self.input.value or "", shown, self.kind):
            self.input.set_value(shown)
        self._say(self.input.value or "")


def _candidate(
    document: Document, text: str, apply: Callable[[Document, str], Document], path: Path
) -> tuple[str | None, Document]:
    """The edited document, or the fault that keeps it from being one."""
    try:
        edited = apply(document, text)
        edited.workplace()
    except WorkplaceError as error:
        return _at_the_field(error.faults, edited, path), document
    except HoodwrightError as error:
        return str(error), document
    return None, edited


def _at_the_field(faults: list[Fault], document: Document, path: Path) -> str:
    """The fault of this field; a fault elsewhere says where."""
    label = read_tree(document.text).label(path)
    own = [f for f in faults if f.field == label or label.startswith(f.field)]
    return own[0].message if own else f"{faults[0].field}: {faults[0].message}"


def _understood(text: str, kind: str, system: str) -> str:
    try:
        return units.understood(text, kind, system) if text else NOT_IN_FILE
    except HoodwrightError:
        return ""


def _same(a: str, b: str, kind: str) -> bool:
    if a == b:
        return True
    try:
        return abs(units.parse(a, kind) - units.parse(b, kind)) <= 1e-9
    except HoodwrightError:
        return False
