"""One file being edited. Every tab that shows the file shows the same draft, and a reload loses nothing."""

import re
from dataclasses import replace
from pathlib import Path
from time import monotonic

from nicegui import Event, run

from hoodwright.errors import Cancelled, Fault, HoodwrightError, InputError, WorkplaceError
from hoodwright.tasks.assess import assess
from hoodwright.tasks.assessment import Assessment
from hoodwright.workplace import Document, Workplace
from hoodwright.workplace.tree import Path as FieldPath

MOST_STEPS_BACK = 500
ONE_STEP_S = 1.5  # typing that pauses longer is another step back
FILE_NAME = re.compile(r"[^\\/:*?\"<>|\x00-\x1f.][^\\/:*?\"<>|\x00-\x1f]*\.ya?ml")


class Draft:
    """One file being edited: its document, the steps back, and text that is typed but not yet sound."""

    def __init__(self, path: Path):
        self.path = path
        self.changed = Event()
        self.reopened = Event()
        self._units: str | None = None
        self._read()

    def _read(self) -> None:
        self.past: list[str] = []
        self.typed: dict[FieldPath, str] = {}
        self.faults: tuple[Fault, ...] = ()
        self.last_key: object = None
        self._last_at = 0.0
        self._models: dict[str, Workplace] = {}
        self._answers: dict[tuple[str, str], Assessment] = {}
        self.document = Document("", self.path)
        self._stamp = _stamp(self.path)
        try:
            self.document = Document.open(self.path)
            self.document.workplace()
        except WorkplaceError as error:
            self.faults = tuple(error.faults)

    @property
    def workplace(self) -> Workplace:
        """The model of the draft as it stands."""
        return self._model(self.document)

    def _model(self, document: Document) -> Workplace:
        key = document.checksum
        if key not in self._models:
            self._models = {key: document.workplace()}
        return self._models[key]

    @property
    def system(self) -> str:
        """How results are shown: as chosen on the page, else as the file says."""
        return self._units or self.workplace.units

    def show_in(self, system: str) -> None:
        """Show results in SI or US units; the file is left as it is."""
        self._units = system
        self.changed.emit()

    async def assessment(self) -> Assessment:
        """The answer for the draft as it stands."""
        workplace, key = self.workplace, (self.document.checksum, self.system)
        if key not in self._answers:
            found = await run.io_bound(assess, workplace, self.system)
            if found is None:
                raise Cancelled("the server is stopping; no answer was computed")
            self._answers[key] = found
        return self._answers[key]

    def edit(self, document: Document, key: object = None) -> None:
        """Take an edited document. Edits with the same key that follow each other soon are one step back."""
        if document.text == self.document.text:
            return
        self._model(document)
        now = monotonic()
        if key is None or key != self.last_key or now - self._last_at > ONE_STEP_S:
            self.past = [*self.past[-MOST_STEPS_BACK:], self.document.text]
        self.last_key, self._last_at = key, now
        self.document = replace(self.document, text=document.text)  # saved meanwhile or not: that stays known
        self._answers.clear()
        self.changed.emit()

    def close_step(self) -> None:
        """The next edit is a step back of its own."""
        self.last_key = None

    def undo(self) -> None:
        """One step back."""
        self.typed.clear()
        self.last_key = None
        if self.past:
            self.document = replace(self.document, text=self.past.pop())
        self.changed.emit()

    def save(self, *, overwrite: bool = False) -> None:
        """Write the draft to its file; FileConflict when the file changed meanwhile."""
        self.document = self.document.save(overwrite=overwrite)
        self.last_key = None
        self.changed.emit()

    def save_as(self, name: str) -> None:
        """Write the draft under another name of the same folder; the first file goes back to what it says."""
        if not FILE_NAME.fullmatch(name):
            raise InputError(f"got {name!r}; a plain name that ends in .yaml is needed, for example 'bench.yaml'")
        target = self.path.parent / name
        if target.exists():
            raise InputError(f"{name} is there already; choose a name that is free")
        self.document.save(target)
        self.reload()

    def reload(self) -> None:
        """Forget the draft and read the file again."""
        self._read()
        self.reopened.emit()

    def changed_on_disk(self) -> bool:
        """Whether someone else wrote the file since it was read."""
        if self.document.checksum_on_disk is None:
            return _stamp(self.path) != self._stamp
        try:
            return self.document.changed_on_disk()
        except HoodwrightError:
            return True

    @property
    def edited(self) -> bool:
        """Whether the draft says something else than the file did."""
        return self.document.checksum_on_disk is not None and self.document.edited


def _stamp(path: Path) -> tuple[int, int] | None:
    """Time and size of a file; None where there is none."""
    try:
        found = path.stat()
    except OSError:
        return None
    return found.st_mtime_ns, found.st_size
