"""Plain elements with words in them. Text is always text, never markup."""

from collections.abc import Callable

from nicegui import ui
from nicegui.elements.mixins.text_element import TextElement

from hoodwright.results import Verdict


class Words(TextElement):
    """An element of any tag with a text."""

    def __init__(self, tag: str, text: str = "", classes: str = ""):
        super().__init__(tag=tag, text=text)
        if classes:
            self.classes(classes)


def block(tag: str, classes: str = "") -> ui.element:
    """An element to put others in."""
    return ui.element(tag).classes(classes)


def button(text: str, act: Callable, classes: str = "quiet") -> Words:
    """A plain button; it is found and pressed by keyboard like any other."""
    made = Words("button", text, classes)
    made.props["type"] = "button"
    made.on("click", act)
    return made


MARKS = {
    Verdict.MEETS: '<circle cx="8" cy="8" r="6.5" fill="currentColor"/>',
    Verdict.SHORT: '<path d="M8 2 15 14H1Z" fill="none" stroke="currentColor" stroke-width="2"'
    ' stroke-linejoin="round"/>',
    Verdict.CANNOT_TELL: '<path d="M2 2h12v12H2Z" fill="none" stroke="currentColor" stroke-width="2"/>'
    '<path d="M2 2h6v12H2Z" fill="currentColor"/>',
}


def mark(verdict: Verdict) -> ui.html:
    """The shape of an outcome: filled circle, open triangle, half square; words beside it say the same."""
    return ui.html(mark_shape(verdict), sanitize=False, tag="span").classes("mark")


def mark_shape(verdict: Verdict) -> str:
    """The shape alone, as SVG."""
    return f'<svg viewBox="0 0 16 16" width="16" height="16" aria-hidden="true">{MARKS[verdict]}</svg>'


def table(head: list[str], classes: str = "") -> ui.element:
    """A table with its heading row; returns the body to put rows in."""
    with block("table", classes):
        with block("thead"), block("tr"):
            for words in head:
                cell = Words("th", words)
                cell.props["scope"] = "col"
        return block("tbody")
