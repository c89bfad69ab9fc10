"""The file chooser, and what is said of a file with faults."""

from urllib.parse import quote

from nicegui import run, ui

from hoodwright.errors import Fault
from hoodwright.web.components.words import Words, block, button
from hoodwright.web.desk import Desk, Listed
from hoodwright.web.draft import Draft


def address(place: str, file: str, part: str = "") -> str:
    """Where a file is shown."""
    return f"{place}?file={quote(file)}" + (f"&part={quote(part)}" if part else "")


class FileChooser:
    """Workplace files of the folder, in a dialog that the keyboard can leave."""

    def __init__(self, desk: Desk, place: str):
        self.desk, self.place = desk, place
        with ui.dialog() as self.dialog, block("div", "chooser") as self.box:
            pass

    async def open(self) -> None:
        """Read the folder and show it."""
        listed = await run.io_bound(self.desk.listed)
        self.box.clear()
        with self.box:
            Words("h2", "Which workplace?")
            Words("p", str(self.desk.folder), "because")
            with block("ul", "files"):
                for entry in listed:
                    self._entry(entry)
            button("Close", self.dialog.close)
        self.dialog.open()

    def _entry(self, entry: Listed) -> None:
        with block("li"):
            name = f"{entry.title} ({entry.path.name})" if entry.title else entry.path.name
            made = button(name, lambda: ui.navigate.to(address(self.place, entry.path.name)), "file")
            made.props["data-file"] = entry.path.name
            if entry.faults:
                count = len(entry.faults)
                Words("p", f"{count} fault{'s' if count > 1 else ''}, cannot be answered yet:", "because")
                fault_list(entry.faults)


def fault_list(faults: tuple[Fault, ...]) -> None:
    """Every fault: place in the file, field, and what to do."""
    with block("ul", "faults"):
        for fault in faults:
            with block("li"):
                name = fault.file.replace("\\", "/").rsplit("/", 1)[-1]
                Words("code", f"{name}:{fault.line}:{fault.column}: {fault.field}: ")
                Words("span", fault.message)


def faulty(draft: Draft, download) -> None:
    """The page of a file that cannot be answered: every fault, and what one can do."""
    count = len(draft.faults)
    faults, them = ("faults", "them") if count > 1 else ("fault", "it")
    Words("h1", f"{draft.path.name} has {count} {faults}; mend {them} first")
    fault_list(draft.faults)
    Words("p", "Mend the file in an editor and save it; this page notices, or read it again now.")
    with block("div", "choices"):
        button("Read the file again", draft.reload, "act")
        button("Download YAML", download)


def nothing_here(desk: Desk, file: str | None) -> None:
    """The page of an empty folder, or of a file that is not there."""
    Words("h1", f"There is no workplace file {file}" if file else "There is no workplace file here")
    Words("p", f"Looked in {desk.folder}. Write a starter there with: hoodwright new workplace.yaml")
    button("Start from the process guide", lambda: ui.navigate.to("/guide"), "act")
    for path in desk.files():
        button(path.name, lambda name=path.name: ui.navigate.to(address("/", name)), "file")
