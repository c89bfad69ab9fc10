"""Builds the fields of a part of the file: quantities, directions, choices; and lets them follow the draft."""

from collections.abc import Callable, Sequence
from contextlib import contextmanager

from nicegui import ui

from hoodwright.errors import HoodwrightError, InputError
from hoodwright.tasks import edits
from hoodwright.web.components.field import QuantityField
from hoodwright.web.components.words import Words, block, button
from hoodwright.web.draft import Draft
from hoodwright.workplace import Document
from hoodwright.workplace.tree import Path

AXES = ("Along the room, x", "Into the room, y", "Height, z")
WAYS = {
    "0, 0, -1": "down",
    "0, 0, 1": "up",
    "1, 0, 0": "along the room, +x",
    "-1, 0, 0": "back along the room, −x",
    "0, 1, 0": "into the room, +y",
    "0, -1, 0": "out of the room, −y",
}
OTHER_WAY = "another way"
NOT_SAID = "not said"
LONG_WORDS = 24  # letters, from which a list takes two columns


class Fields:
    """The fields that are shown for one part, in the order they were asked for."""

    def __init__(self, draft: Draft):
        self.draft = draft
        self.fields: list[QuantityField] = []
        self._choices: list[tuple[ui.radio | ui.select, Callable[[], str]]] = []

    def follow(self) -> None:
        """Show again what the draft says."""
        for field in self.fields:
            field.follow()
        for choice, value in self._choices:
            choice.set_value(value())

    def says(self, path: Path) -> str:
        """What the file says at a path, as typed; empty where it says nothing."""
        return (self.draft.document.words(path) or "").strip("\"' ")

    @contextmanager
    def group(self, title: str):
        """A group of fields with its question."""
        with block("fieldset", "group"):
            Words("legend", title)
            yield

    def text(self, path: Path, label: str, kind: str, *, gone: Path | None = None) -> None:
        """A quantity of any unit; `gone` is what is taken out of the file when the value is removed."""

        def apply(document: Document, text: str) -> Document:
            return edits.with_text(document, path, text)

        self.fields.append(QuantityField(self.draft, path, label, kind, lambda: self.says(path), apply, gone))

    def optional(self, path: Path, label: str, kind: str) -> None:
        """A quantity that the file may do without."""
        self.text(path, label, kind, gone=path)

    def point(self, path: Path, of: str = "") -> None:
        """Three coordinates."""
        for axis, label in enumerate(AXES):
            self.text((*path, axis), f"{of}{label}", "length")

    def asked(
        self, key: Path, label: str, shown: Callable[[], str], apply: Callable[[Document, str], Document]
    ) -> None:
        """A length that is not in the file itself, but follows from it and can be asked for."""
        with block("div", "alone"):
            self.fields.append(QuantityField(self.draft, key, label, "length", shown, apply))

    def direction(self, path: Path, label: str, *, optional: bool = False, unsaid: str = "") -> None:
        """Three plain numbers; in words what they mean."""

        def shown() -> str:
            found = [self.says((*path, axis)) for axis in range(3)]
            return ", ".join(found) if all(found) else unsaid

        def apply(document: Document, text: str) -> Document:
            return document.set(path, direction_of(text))

        gone = path if optional else None
        self.fields.append(QuantityField(self.draft, path, label, "", shown, apply, gone, in_words))

    def way(self, path: Path, label: str, unsaid: str) -> None:
        """The nearest axis as a choice, for a direction that may also be typed."""

        def value() -> str:
            numbers = [self.says((*path, axis)) for axis in range(3)]
            text = ", ".join(numbers) if all(numbers) else unsaid
            return next((way for way in WAYS if direction_of(way) == direction_of(text)), OTHER_WAY)

        def act(document: Document, chosen: str) -> Document:
            return document if chosen == OTHER_WAY else document.set(path, direction_of(chosen))

        self.select(label, {**WAYS, OTHER_WAY: OTHER_WAY}, value, act)

    def rows(self, path: Path, label: str, words: Sequence[str], *, optional: bool = True) -> None:
        """A row of a published table, by name."""
        options = {NOT_SAID: NOT_SAID} if optional else {}

        def act(document: Document, chosen: str) -> Document:
            if chosen == NOT_SAID:
                return document.remove(path) if document.words(path) else document
            return edits.with_text(document, path, chosen)

        self.select(label, options | {word: word for word in words}, lambda: self.says(path) or NOT_SAID, act)

    def select(
        self,
        label: str,
        options: dict[str, str],
        value: Callable[[], str],
        act: Callable[[Document, str], Document],
    ) -> None:
        """One of several words, from a list that opens; a fault is told below it."""
        longest = max(len(words) for words in options.values())
        with block("div", "field long" if longest > LONG_WORDS else "field"):
            name = Words("label", label)
            choice = ui.select(options, value=value()).props("outlined dense options-dense").mark(label)
            choice.props["aria-label"] = label
            name.props["for"] = choice.html_id
            fault = Words("div", "", "understood")
        choice.on_value_change(lambda e: self._chosen(e.value, value, act, fault))
        self._choices.append((choice, value))

    def radio(
        self,
        label: str,
        options: dict[str, str],
        value: Callable[[], str],
        act: Callable[[Document, str], Document],
    ) -> None:
        """One of a few words, all of them in sight."""
        choice = ui.radio(options, value=value()).props("inline").mark(label)
        choice.props["aria-label"] = label
        fault = Words("div", "", "understood fault-line")
        choice.on_value_change(lambda e: self._chosen(e.value, value, act, fault))
        self._choices.append((choice, value))

    def button(self, words: str, act: Callable[[Document], Document]) -> None:
        """Something that is added or taken away whole."""
        button(words, lambda: self._done(act, fault))
        fault = Words("div", "", "understood fault-line")

    def _chosen(self, chosen: str, value: Callable[[], str], act, fault: Words) -> None:
        if chosen is not None and chosen != value():
            self._done(lambda document: act(document, chosen), fault)

    def _done(self, act: Callable[[Document], Document], fault: Words) -> None:
        try:
            self.draft.edit(act(self.draft.document))
        except HoodwrightError as error:
            fault.text = str(error)
            self.follow()
        else:
            fault.text = ""


def direction_of(text: str) -> list[int | float]:
    """Three plain numbers, as typed with commas or spaces between."""
    words = text.strip("[] ").replace(",", " ").split()
    try:
        numbers = [float(word) for word in words]
    except ValueError:
        numbers = []
    if len(numbers) != 3:
        raise InputError(f"got {text!r}; a direction is three plain numbers: write for example 0, -1, 0")
    return [int(number) if number == int(number) else number for number in numbers]


def in_words(text: str) -> str:
    """What a direction means: 'down', or the axes that it leans to."""
    numbers = direction_of(text)
    plain = next((words for way, words in WAYS.items() if direction_of(way) == numbers), None)
    largest = max(abs(number) for number in numbers)
    lean = [
        WAYS[", ".join(str(int((number > 0) - (number < 0)) if i == axis else 0) for i in range(3))]
        for axis, number in enumerate(numbers)
        if largest and abs(number) > 0.02 * largest
    ]
    return plain or " and ".join(lean)
