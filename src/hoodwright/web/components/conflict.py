"""The bar that says a file changed on disk, and lets the user choose."""

from nicegui import ui

from hoodwright.errors import FileConflict, HoodwrightError, InputError
from hoodwright.web.components.files import address
from hoodwright.web.components.words import Words, block, button
from hoodwright.web.draft import Draft

LOOK_EVERY_S = 2.0
GONE = "no file"


class SaveBar:
    """Saves, and asks when someone else saved meanwhile."""

    def __init__(self, draft: Draft, place: str):
        self.draft, self.place = draft, place
        self._shows_conflict = False
        self._next = ""
        with block("div", "conflict") as self.box:
            self.box.props["role"] = "alert"
            self.words = Words("p", "")
            with block("div", "choices"):
                self.reload = button("Reload from disk", draft.reload, "act")
                with block("div", "copy"):
                    label = Words("label", "another name:")
                    self.name = ui.input(value=f"{draft.path.stem}-2.yaml").props("outlined dense")
                    label.props["for"] = self.name.html_id
                button("Save under this name", self._save_as, "act")
                self.overwrite = button("Overwrite the file", lambda: self.save(overwrite=True), "act")
                button("Not now", self._not_now)
        self.box.set_visibility(False)
        self._quiet_for: str | None = None
        ui.timer(LOOK_EVERY_S, self._look)

    def save(self, *, overwrite: bool = False) -> None:
        """Write the file, or show why not."""
        try:
            self.draft.save(overwrite=overwrite)
        except FileConflict:
            self._ask()
        except (HoodwrightError, OSError) as error:
            self._show(f"Nothing was written: {error}", conflict=False)
        else:
            self.box.set_visibility(False)

    def _look(self) -> None:
        """Notice what others wrote. A file with faults has no edits to lose: it is read again at once."""
        if not self.draft.path.exists():
            if self._quiet_for != GONE:
                self._show(
                    f"{self.draft.path.name} is no longer on disk. Your draft is kept here; Save writes it anew."
                )
            return
        changed = self.draft.changed_on_disk()
        if changed and self.draft.faults:
            self.draft.reload()
        elif changed:
            if self._quiet_for != self.draft.document.checksum_on_disk:
                self._ask()
        elif self._shows_conflict:
            self.box.set_visibility(False)

    def _ask(self) -> None:
        yours = "Your edits are kept here; nothing was written." if self.draft.edited else "You have no unsaved edits."
        self._show(f"{self.draft.path.name} changed on disk since it was read. {yours} What shall be done?")

    def _show(self, words: str, *, conflict: bool = True) -> None:
        self._shows_conflict = conflict
        for choice in (self.reload, self.overwrite):
            choice.set_visibility(self.draft.path.exists())
        if self.words.text != words:
            self.words.text = words
        self.box.set_visibility(True)

    def _not_now(self) -> None:
        there = self.draft.path.exists()
        self._quiet_for = self.draft.document.checksum_on_disk if there else GONE
        self.box.set_visibility(False)

    def _save_as(self) -> None:
        name = (self.name.value or "").strip()
        self._next = address(self.place, name)
        try:
            self.draft.save_as(name)
        except (InputError, OSError) as error:
            self._next, self.name.error = "", str(error)

    def go_on(self) -> None:
        """After the file was read again: to the copy that was made here, else the same page anew."""
        if self._next:
            ui.navigate.to(self._next)
        else:
            ui.navigate.reload()
