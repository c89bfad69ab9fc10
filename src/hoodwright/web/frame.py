"""The frame around every page: three places, the workplace, units, undo, save and downloads."""

from collections.abc import Iterator
from contextlib import contextmanager
from functools import cache
from importlib.resources import files

from nicegui import ui

from hoodwright.web.components.conflict import SaveBar
from hoodwright.web.components.downloads import PdfDownload, yaml_of
from hoodwright.web.components.files import FileChooser, address, faulty, nothing_here
from hoodwright.web.components.words import Words, block, button
from hoodwright.web.desk import Desk
from hoodwright.web.draft import Draft

PLACES = {"/": "Air", "/ducts": "Ducts", "/guide": "Guide"}
WITHIN = {"/three": "/"}  # pages that belong to a place
NAMES = {**PLACES, "/three": "Three"}


@contextmanager
def frame(
    desk: Desk, draft: Draft | None, file: str | None, place: str, *, alone: bool = False
) -> Iterator[Draft | None]:
    """Put a page inside the frame; gives the draft again, or None when it cannot be answered.

    A page that stands `alone` needs no draft: it is shown whatever the state of the file.
    """
    ui.page_title(f"{NAMES[place]} · {draft.path.name if draft else 'hoodwright'}")
    ui.add_head_html(f"<style>{_style()}</style>")
    with block("div", "sheet"):
        with block("div", "head"):
            header = _Header(desk, draft, place)
        with block("div", f"place place-{NAMES[place].lower()}") as main:
            main.props["id"] = "main"
            if alone:
                yield draft
            elif draft is None:
                nothing_here(desk, file)
                yield None
            elif draft.faults:
                faulty(draft, lambda: yaml_of(draft))
                yield None
            else:
                yield draft
    if draft:
        draft.reopened.subscribe(header.bar.go_on)
        draft.changed.subscribe(header.follow)


class _Header:
    """Header, and below it the bars that appear when there is something to say."""

    def __init__(self, desk: Desk, draft: Draft | None, place: str):
        self.draft = draft
        chooser = FileChooser(desk, place)
        with block("header", "top"):
            skip = Words("a", "Skip to the page", "skip")
            skip.props["href"] = "#main"
            Words("span", "hoodwright", "wordmark")
            with block("nav", "places"):
                for target, name in PLACES.items():
                    link = Words("a", name)
                    link.props["href"] = address(target, draft.path.name) if draft else target
                    if target == WITHIN.get(place, place):
                        link.props["aria-current"] = "page"
            self.name = button(f"{draft.path.name if draft else 'no file'} ▾", chooser.open, "workplace")
            self.name.props["title"] = "Choose another workplace file"
            self.state = Words("span", "", "state")
            self.state.props["role"] = "status"
            if draft and not draft.faults:
                self._tools(draft)
        if draft:
            self.bar = SaveBar(draft, place)
        if draft and not draft.faults:
            self.pdf = PdfDownload(draft)
            self.follow()

    def _tools(self, draft: Draft) -> None:
        with block("div", "tools"):
            with block("div", "units") as choice:
                choice.props.update({"role": "group", "aria-label": "Units of the results"})
                self.systems = {s: button(s, lambda s=s: draft.show_in(s), "unit") for s in ("SI", "US")}
            self.undo = button("Undo", draft.undo)
            self.save = button("Save", lambda: self.bar.save())
            button("PDF", lambda: self.pdf.begin()).props["aria-label"] = "Download PDF"
            button("YAML", lambda: yaml_of(draft)).props["aria-label"] = "Download YAML"

    def follow(self) -> None:
        """Show the state of the draft."""
        self.name.text = f"{self.draft.workplace.name} ▾"
        self.state.text = "unsaved edits" if self.draft.edited else "as on disk"
        self.save.classes(add="act" if self.draft.edited else "quiet", remove="act quiet")
        self.undo.props["disabled"] = not self.draft.past
        for system, choice in self.systems.items():
            choice.props["aria-pressed"] = "true" if system == self.draft.system else "false"


@cache
def _style() -> str:
    return (files("hoodwright.web") / "static" / "page.css").read_text(encoding="utf-8")
