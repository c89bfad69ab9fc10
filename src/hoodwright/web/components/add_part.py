"""Adding whole parts on the page, and giving the chosen one another name or taking it away; each one step of Undo."""

from collections.abc import Callable

from nicegui import ui

from hoodwright.errors import HoodwrightError
from hoodwright.tasks import duct_parts, part_edits
from hoodwright.tasks.part_names import names_of, parts_of
from hoodwright.web.components.words import Words, block, button
from hoodwright.web.draft import Draft
from hoodwright.workplace import Document, Workplace

TITLE = "Add, rename or take away"
START = "What is added gets starting values: look at each and change it to yours."
SIZES = "Sizes, lengths and resistances are a start: change them in the file, or let “Size it for me” find the sizes."
UNDO = "Undo takes it back."
NEW = "new: "

Options = Callable[[Workplace], dict[str, str]]


class AddPart:
    """What both pages share: the question of what to add, and what is done to the chosen part."""

    note = START

    def __init__(self, draft: Draft, chosen: Callable[[], str], choose: Callable[[str], None]):
        self.draft, self.chosen, self.choose = draft, chosen, choose
        self.choices: dict[str, tuple[ui.select, Options]] = {}
        self._named = ""
        with block("section", "panel add-part") as self.box:
            Words("h2", TITLE).props["id"] = "add-part"
            self.box.props["aria-labelledby"] = "add-part"
            Words("p", self.note, "because")
            self.build()
            with block("fieldset", "group") as self.own:
                Words("legend", "The chosen part")
                self.name = self._input("Its name")
                with block("div", "choices"):
                    button("Rename it", self._rename)
                    self.away = button("Take it away", self._take_away)
            self.said = Words("p", "", "held")
            self.said.props["role"] = "status"
        self.follow()

    def build(self) -> None:
        """The questions of the page."""

    def follow(self) -> None:
        """After an edit or another choice: the words that fit now."""
        workplace = self.draft.workplace
        for select, options in self.choices.values():
            words = options(workplace)
            if words != select.options:
                select.set_options(words, value=next(iter(words), None))
        name = self.chosen()
        known = name in names_of(workplace)
        self.own.set_visibility(known)
        if known and name != self._named:
            self.name.set_value(name)
            self._named = name
            self.name.error = None
            self.away.props["aria-label"] = f"Take the {name} away"

    def ask(self, title: str, add: Callable[[Document], Document], questions: dict[str, Options], act: str) -> None:
        """A question with lists to choose from, and the button that adds."""
        with block("fieldset", "group"):
            Words("legend", title)
            for label, options in questions.items():
                self._select(label, options)
            with block("div", "choices"):
                button(act, lambda: self._add(add), "act")

    def picked(self, label: str) -> str | None:
        """What is chosen in a list; None where there is nothing to choose."""
        return self.choices[label][0].value

    def _select(self, label: str, options: Options) -> None:
        with block("div", "field long"):
            name, words = Words("label", label), options(self.draft.workplace)
            select = ui.select(words, value=next(iter(words), None)).props("outlined dense options-dense").mark(label)
            select.props["aria-label"] = label
            name.props["for"] = select.html_id
        self.choices[label] = (select, options)

    def _input(self, label: str) -> ui.input:
        with block("div", "field"):
            name = Words("label", label)
            field = ui.input(validation=lambda _: None).without_auto_validation()
            field.props("outlined dense spellcheck=false autocomplete=off").mark(label)
            field.on("keydown.enter", self._rename)
            name.props["for"] = field.html_id
        return field

    def _add(self, add: Callable[[Document], Document]) -> None:
        before = set(parts_of(self.draft.workplace))
        if self._done(add):
            new = [name for name in parts_of(self.draft.workplace) if name not in before]
            self.said.text = f"Added: {', '.join(new)}. {UNDO}"
            self.choose(self.shown(new))

    def shown(self, new: list[str]) -> str:
        """Which of the new parts is looked at."""
        return new[-1]

    def _rename(self) -> None:
        old, new = self.chosen(), (self.name.value or "").strip()
        if new != old and self._done(lambda document: part_edits.rename_part(document, old, new), self.name):
            self.said.text = f"The {old} is called {new} now. {UNDO}"
            self.choose(new)

    def _take_away(self) -> None:
        old, before = self.chosen(), parts_of(self.draft.workplace)
        if self._done(lambda document: part_edits.remove_part(document, old)):
            gone = [name for name in before if name != old and name not in parts_of(self.draft.workplace)]
            with_it = f", and with it: {', '.join(gone)}" if gone else ""
            self.said.text = f"Taken away: {old}{with_it}. {UNDO}"

    def _done(self, act: Callable[[Document], Document], field: ui.input | None = None) -> bool:
        """Whether it could be done; a fault is told at its field, or below."""
        self.name.error, self.said.text = None, ""
        try:
            document = act(self.draft.document)
        except HoodwrightError as error:
            if field is None:
                self.said.text = str(error)
            else:
                field.error = str(error)
            return False
        self.draft.typed.clear()  # what is half typed belongs to a place that may be another part's now
        self.draft.edit(document)
        return True


class AddToAir(AddPart):
    """Sources and hoods."""

    def build(self) -> None:
        """What gives off what, and what should catch it."""
        self.ask(
            "Add a source: what gives off what?",
            lambda document: part_edits.add_source(
                document, self.picked("It is") or "", _kind(self.picked("It gives off"))
            ),
            {"It is": lambda _: part_edits.SOURCE_KINDS, "It gives off": _contaminants},
            "Add the source",
        )
        self.ask(
            "Add a hood: what should catch it?",
            lambda document: part_edits.add_hood(document, self.picked("It stands") or "", self.picked("It serves")),
            {"It stands": lambda _: part_edits.HOOD_KINDS, "It serves": _sources},
            "Add the hood",
        )


class AddToDucts(AddPart):
    """Ducts, cleaners and fans."""

    note = SIZES

    def build(self) -> None:
        """How the air gets from a hood to a fan, and what cleans it."""
        self.ask(
            "Add a duct",
            lambda document: duct_parts.add_duct(document, self.picked("From the hood"), self.picked("It leads to")),
            {"From the hood": _free_hoods, "It leads to": duct_parts.targets},
            "Add the duct",
        )
        self.ask(
            "Add a cleaner",
            lambda document: duct_parts.add_cleaner(document, self.picked("Before the fan")),
            {"Before the fan": _fans},
            "Add the cleaner",
        )
        with block("div", "choices"):
            button("Add a fan, with its stack, for that hood", self._fan)

    def _fan(self) -> None:
        self._add(lambda document: duct_parts.add_fan(document, self.picked("From the hood")))


def _contaminants(workplace: Workplace) -> dict[str, str]:
    kinds = {f"{NEW}{kind}": f"something new: {kind}" for kind in part_edits.CONTAMINANT_KINDS}
    return {one.name: one.name for one in workplace.contaminants} | kinds


def _kind(picked: str | None) -> str | None:
    return picked.removeprefix(NEW) if picked else None


def _sources(workplace: Workplace) -> dict[str, str]:
    """Those that no hood serves come first."""
    served = {name for hood in workplace.hoods for name in hood.serves}
    names = sorted((source.name for source in workplace.sources), key=lambda name: name in served)
    return {name: name if name in served else f"{name}: no hood yet" for name in names}


def _free_hoods(workplace: Workplace) -> dict[str, str]:
    return {name: name for name in duct_parts.free_hoods(workplace)}


def _fans(workplace: Workplace) -> dict[str, str]:
    return {fan.name: fan.name for fan in workplace.fans}
