"""What can be changed on a hood or a source, in the user's words."""

from nicegui import ui

from hoodwright import units
from hoodwright.tasks import edits
from hoodwright.web.components.field import QuantityField
from hoodwright.web.components.words import Words, block
from hoodwright.web.draft import Draft
from hoodwright.workplace.model import Hood, Source
from hoodwright.workplace.tree import Path

AXES = ("Along the room, x", "Into the room, y", "Height, z")
RELEASES = {
    "still": "still: it seeps off by itself",
    "gentle": "gentle: it leaves slowly",
    "driven": "driven: it is pushed out",
    "thrown": "thrown: it is flung off",
}
SHAPES = {"round": "round", "rectangle": "rectangular"}


class EditPanel:
    """Fields of the chosen part. `follow` shows again what the draft says."""

    def __init__(self, draft: Draft):
        self.draft = draft
        self.box = block("section", "panel")
        self.fields: list[QuantityField] = []
        self._choices: list[tuple[ui.radio, Path]] = []

    def show(self, name: str) -> None:
        """Fields for the hood or source of this name."""
        self.name = name
        self.fields, self._choices = [], []
        self.box.clear()
        with self.box:
            hood = next((h for h in self.draft.workplace.hoods if h.name == name), None)
            source = next((s for s in self.draft.workplace.sources if s.name == name), None)
            if hood:
                self._hood(hood)
            elif source:
                self._source(source)

    def follow(self) -> None:
        """After an edit elsewhere: the same fields, the new words."""
        if self._shape() != self._shape_shown:
            return self.show(self.name)
        for field in self.fields:
            field.follow()
        for radio, path in self._choices:
            radio.set_value(self.draft.document.words(path))
        return None

    def _hood(self, hood: Hood) -> None:
        path: Path = ("hoods", self.draft.workplace.hoods.index(hood))
        Words("h2", f"Change the {hood.name}")
        with self._group("Where is it?"):
            for source in hood.serves:
                self._distance(path, hood.name, source)
            self._place(path)
        self._shape_shown = self._shape()
        with self._group("What opening does it have?"):
            self._choice((*path, "opening"), SHAPES, self._shape_shown, self._new_shape, "Shape of the opening")
            if self._shape_shown == "round":
                self._text((*path, "opening", "round"), "Diameter", "length")
            else:
                self._text((*path, "opening", "rectangle", 0), "Width", "length")
                self._text((*path, "opening", "rectangle", 1), "Height", "length")
            self._text((*path, "flange"), "Flange width", "length")
        with self._group("What does it get?"):
            self._text((*path, "intended_flow"), "Intended flow", "flow")
            self._text((*path, "today", "flow"), "Flow read today", "flow")
            self._text((*path, "today", "uncertainty"), "Uncertainty of today's flow, ±", "share")

    def _source(self, source: Source) -> None:
        path: Path = ("sources", self.draft.workplace.sources.index(source))
        self._shape_shown = self._shape()
        Words("h2", f"Change the {source.name}")
        with self._group("How is it given off?"):
            self._choice((*path, "dispersion"), RELEASES, source.dispersion, self._new_release, "Release")
        with self._group("Where is it?"):
            self._place(path)

    def _group(self, title: str):
        group = block("fieldset", "group")
        with group:
            Words("legend", title)
        return group

    def _place(self, path: Path) -> None:
        for axis, label in enumerate(AXES):
            self._text((*path, "at", axis), label, "length")

    def _text(self, path: Path, label: str, kind: str) -> None:
        def shown() -> str:
            return (self.draft.document.words(path) or "").strip("\"' ")

        def apply(document, text):
            return edits.with_text(document, path, text)

        self.fields.append(QuantityField(self.draft, path, label, kind, shown, apply))

    def _distance(self, path: Path, hood: str, source: str) -> None:
        def shown() -> str:
            workplace = self.draft.workplace
            ahead = edits.distance_along_axis(workplace.hoods[path[1]], workplace.source(source))
            return units.show(ahead, "length", self.draft.system).replace("\u2009", " ")

        def apply(document, text):
            return edits.moved_to_distance(document, hood, source, units.parse(text, "length"))

        key = (*path, "distance", source)
        with block("div", "alone"):
            label = f"Distance to the {source}, along the hood's axis"
            self.fields.append(QuantityField(self.draft, key, label, "length", shown, apply))

    def _choice(self, path: Path, options: dict[str, str], value: str, act, label: str) -> None:
        radio = ui.radio(options, value=value, on_change=lambda e: act(path, e.value)).props("inline")
        radio.props["aria-label"] = label
        if path[-1] == "dispersion":
            self._choices.append((radio, path))

    def _new_release(self, path: Path, value: str) -> None:
        if value != self.draft.document.words(path):
            self.draft.edit(self.draft.document.set(path, value))

    def _new_shape(self, _path: Path, value: str) -> None:
        self.draft.edit(edits.with_shape(self.draft.document, self.name, value))

    def _shape(self) -> str:
        hood = next((h for h in self.draft.workplace.hoods if h.name == self.name), None)
        return "rectangle" if hood and hood.opening.rectangle else "round"
