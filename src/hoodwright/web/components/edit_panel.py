"""What can be changed on the chosen hood or source."""

from collections.abc import Callable

from hoodwright.web.components.fields import Fields
from hoodwright.web.components.hood_fields import hood_fields, layout_of
from hoodwright.web.components.source_fields import layout_of_source, source_fields
from hoodwright.web.components.words import Words, block, button
from hoodwright.web.draft import Draft


class EditPanel:
    """Fields of the chosen part. `follow` shows again what the draft says."""

    def __init__(self, draft: Draft, choose: Callable[[str], None]):
        self.draft, self.choose = draft, choose
        self.box = block("section", "panel")
        self.fields = Fields(draft)
        self.name = ""

    def show(self, name: str) -> None:
        """Fields for the hood or source of this name."""
        self.name = name
        self.fields = Fields(self.draft)
        self._layout_shown = self._layout()
        workplace = self.draft.workplace
        self.box.clear()
        with self.box:
            for index, hood in enumerate(workplace.hoods):
                if hood.name == name:
                    self._head("It serves:", hood.serves)
                    hood_fields(self.fields, hood, ("hoods", index))
            for index, source in enumerate(workplace.sources):
                if source.name == name:
                    self._head("Served by:", tuple(hood.name for hood in workplace.hoods if name in hood.serves))
                    source_fields(self.fields, source, ("sources", index))

    def _head(self, words: str, others: tuple[str, ...]) -> None:
        """The name of the part, and the way to those that belong to it."""
        with block("div", "short-head"):
            Words("h2", f"Change the {self.name}")
            with block("div", "ways-on"):
                Words("span", words, "because")
                for other in others:
                    button(other, lambda other=other: self.choose(other)).props["aria-label"] = f"Change the {other}"

    def follow(self) -> None:
        """After an edit elsewhere: the same fields, the new words."""
        if self._layout() != self._layout_shown:
            self.show(self.name)
        else:
            self.fields.follow()

    def _layout(self) -> tuple:
        workplace = self.draft.workplace
        hoods = [(i, layout_of(hood)) for i, hood in enumerate(workplace.hoods) if hood.name == self.name]
        sources = [(i, layout_of_source(one)) for i, one in enumerate(workplace.sources) if one.name == self.name]
        return (*hoods, *sources)
