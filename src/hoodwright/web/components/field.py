"""A field that takes any unit, says what it understood, and shows a fault where it was typed."""

from collections.abc import Callable

from nicegui import run, ui

from hoodwright import units
from hoodwright.errors import Fault, HoodwrightError, WorkplaceError
from hoodwright.web.components.words import Words, button
from hoodwright.web.draft import Draft
from hoodwright.workplace import Document
from hoodwright.workplace.tree import Path, read_tree

WAIT_MS = 250
NOT_IN_FILE = "not in the file yet"


class QuantityField:
    """One quantity of the draft. `apply` makes the edited document from the typed text.

    `gone` names what the file may do without: then the value can be removed. `explain` says what the text means,
    by default the quantity in both systems of units.
    """

    def __init__(
        self,
        draft: Draft,
        path: Path,
        label: str,
        kind: str,
        shown: Callable[[], str],
        apply: Callable[[Document, str], Document],
        gone: Path | None = None,
        explain: Callable[[str], str] | None = None,
    ):
        self.draft, self.path, self.kind, self.gone = draft, path, kind, gone
        self._shown, self._apply, self._explain = shown, apply, explain
        self._at_work = False
        self._pending: str | None = None
        start = draft.typed.get(path, shown())
        with ui.element("div").classes("field"):
            name = Words("label", label)
            self.input = ui.input(value=start, validation=lambda _: None).without_auto_validation()
            self.input.props(f"outlined dense debounce={WAIT_MS} spellcheck=false autocomplete=off").mark(label)
            name.props["for"] = self.input.html_id
            self.input.on_value_change(self._heard).on("blur", self._left)
            with ui.element("div").classes("under-field"):
                self.note = Words("div", "", "understood")
                if gone:
                    self.remove = button("remove", self._remove, "ask").mark(f"remove {label}")
                    self.remove.props["aria-label"] = f"Remove {label} from the file"
        self._say(start)
        if path in draft.typed:
            ui.timer(0, self._typed, once=True)

    def _heard(self):
        """Keep what was typed from being overwritten from this moment on, and then look at it."""
        self._pending = self.input.value or ""
        return self._typed()

    async def _typed(self) -> None:
        text = self.input.value or ""
        if text == self._shown():
            self._pending = None
            self.draft.typed.pop(self.path, None)
            return self._say(text)
        self._at_work, self._pending = True, text
        base = self.draft.document
        fault, candidate = await run.io_bound(_candidate, base, text, self._apply, self.path) or (None, base)
        if text != (self.input.value or ""):
            return None
        if base.text != self.draft.document.text:
            return await self._typed()
        self._pending = None
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

    def _remove(self) -> None:
        """Take the value out of the file, or say at the field why it has to stay."""
        self.draft.typed.pop(self.path, None)
        try:
            self.draft.edit(self.draft.document.remove(self.gone or self.path))
        except WorkplaceError as error:
            self.input.error = f"{error.faults[0].field}: {error.faults[0].message}"
        except HoodwrightError as error:
            self.input.error = str(error)

    def _say(self, text: str, fault: str | None = None) -> None:
        self.input.error = fault
        if self.gone:
            self.remove.set_visibility(bool(self._shown()))
        if fault or not text:
            self.note.text = "" if fault else NOT_IN_FILE
            return
        try:
            meant = self._explain(text) if self._explain else units.understood(text, self.kind, self.draft.system)
        except HoodwrightError:
            meant = ""
        self.note.text = meant

    def follow(self) -> None:
        """Show what the draft says now, unless the field says the same in other words, or is being typed in."""
        if self.path in self.draft.typed or self._pending is not None:
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


def _same(a: str, b: str, kind: str) -> bool:
    if a == b or not kind:
        return a == b
    try:
        return abs(units.parse(a, kind) - units.parse(b, kind)) <= 1e-9
    except HoodwrightError:
        return False
