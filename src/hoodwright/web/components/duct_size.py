""" "Size it for me": sizes of all ducts that balance themselves, before and after, to be applied or discarded."""

from hoodwright import units
from hoodwright.jobs import Progress
from hoodwright.tasks.sizing.job import Change, FanSized, SizingAnswer, SizingAsk, Totals, size_ducts, with_sizes
from hoodwright.web.components.job_line import JobLine
from hoodwright.web.components.words import Words, block, button, table
from hoodwright.web.draft import Draft
from hoodwright.workplace import Document

HEAD = ["duct", "before", "by hand", "after", "velocity", "damper"]
ABOUT = (
    "Looks for the sizes that share the air as intended by themselves and cost least, ducts and fan energy together; "
    "then solves them as built, with dirty filters and the fan 5 % slower."
)
APPLIED = "Applied; Undo takes all of it back."
CHANGED = "The file changed since; find the sizes again."
MOST_ROWS = 80


class DuctSize:
    """Folded until it is asked for. What was found belongs to one state of the file, and goes with it."""

    def __init__(self, draft: Draft):
        self.draft = draft
        self.sized: tuple[Document, SizingAnswer] | None = None
        self.dampers, self.split = True, False
        with block("section", "duct-size") as self.box:
            Words("h2", "Size it for me").props["id"] = "duct-size"
            self.box.props["aria-labelledby"] = "duct-size"
            Words("p", ABOUT, "because")
            with block("div", "toggles"):
                self.damper_choice = button("dampers where nothing else helps", self._dampers, "toggle")
                self.split_choice = button("hood ducts of two sizes", self._split, "toggle")
                button("Find the sizes", self.ask, "act")
            self.line = JobLine()
            self.said = Words("p", "", "because held")
            self.said.props["role"] = "status"
            self.answer = block("div", "sized")
        self._press()

    def ask(self) -> None:
        """Size the ducts of the draft as it stands, off the event loop."""
        document, system = self.draft.document, self.draft.system
        self._clear("")
        asked = (self.draft.workplace, SizingAsk(dampers=self.dampers, split=self.split), system)
        self.line.begin(
            "looking for sizes",
            size_ducts,
            *asked,
            done=lambda found: self._show(document, found),
            nothing="cancelled; the file is as it was",
        )

    def follow(self) -> None:
        """The file changed: what was found for it before no longer holds."""
        if self.sized is not None and self.sized[0].text != self.draft.document.text:
            self._clear(CHANGED)

    def _dampers(self) -> None:
        self.dampers = not self.dampers
        self._press()

    def _split(self) -> None:
        self.split = not self.split
        self._press()

    def _press(self) -> None:
        for choice, on in ((self.damper_choice, self.dampers), (self.split_choice, self.split)):
            choice.props["aria-pressed"] = "true" if on else "false"

    def _clear(self, words: str) -> None:
        self.sized = None
        self.answer.clear()
        self.said.text = words

    def _show(self, document: Document, found: SizingAnswer) -> None:
        if document.text != self.draft.document.text:
            self._clear(CHANGED)
            return
        self.sized = (document, found)
        with self.answer:
            for fan in found.fans:
                _fan(fan, found)
            for note in found.notes:
                Words("p", note, "because")
            with block("div", "choices"):
                button("Apply", self._apply, "act").props["aria-label"] = "Apply the sizes to the file"
                button("Discard", lambda: self._clear("Discarded; the file is as it was."))

    def _apply(self) -> None:
        """Write the sizes off the event loop; a great document takes a while."""
        if self.sized is None or self.line.busy:
            return
        base, found = self.sized
        self.line.begin(
            "writing the sizes",
            _written,
            base,
            found,
            done=lambda document: self._applied(base, document),
            nothing="cancelled; the file is as it was",
        )

    def _applied(self, base: Document, document: Document) -> None:
        if base.text != self.draft.document.text:
            self._clear(CHANGED)
            return
        self._clear(APPLIED)
        self.draft.edit(document)


def _written(progress: Progress, document: Document, found: SizingAnswer) -> Document:
    written = with_sizes(document, found)
    written.workplace()
    progress.check()
    return written


def _fan(fan: FanSized, found: SizingAnswer) -> None:
    """What was found before one fan: in sentences, what it takes, and every duct before and after."""
    Words("h3", f"Before the {fan.fan}")
    for words in fan.words:
        Words("p", words, "because told")
    with block("div", "scrolls"), table(["", "by hand", "sized"], "lines totals"):
        for name, by_hand, new in _totals(fan, found):
            with block("tr"):
                for text in (name, by_hand, new):
                    Words("td", text)
    with block("div", "scrolls"), table(HEAD, "lines"):
        for change in fan.changes[:MOST_ROWS]:
            with block("tr", "changed" if change.changed else ""):
                for text in _cells(change, found.system):
                    Words("td", text)
    if len(fan.changes) > MOST_ROWS:
        Words("p", f"{len(fan.changes) - MOST_ROWS} more ducts; all of them are applied together.", "because")


def _cells(change: Change, system: str) -> tuple[str, ...]:
    def size(diameter: float | None) -> str:
        return "" if diameter is None else units.show(diameter, "length", system)

    new = size(change.new) if change.then is None else f"{size(change.new)}, then {size(change.then)}"
    kept = new if change.changed else f"{new}, as it is"
    damper = "" if change.damper is None else f"{change.damper:.2g} velocity pressures"
    fast = units.show(change.velocity, "velocity", system)
    return change.duct, size(change.old), size(change.by_hand), kept, fast, damper


def _totals(fan: FanSized, found: SizingAnswer) -> list[tuple[str, str, str]]:
    """Rows of what it takes; money in the currency of the file."""

    def row(name: str, shown) -> tuple[str, str, str]:
        return name, "none found" if fan.by_hand is None else shown(fan.by_hand), shown(fan.new)

    def money(amount: float) -> str:
        return f"{amount:,.0f} {found.currency}".strip()

    def power(one: Totals) -> str:
        return units.show(one.power, "power", found.system)

    return [
        row("air power", power),
        row("drawn from the mains", lambda one: units.show(one.electric, "power", found.system)),
        row("cost of ducts and dampers", lambda one: money(one.ducts)),
        row("with the energy of its years", lambda one: money(one.total)),
    ]
