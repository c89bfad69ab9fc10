"""The hoods and sources as a list: the text twin of the scene, for eyes, keyboard and screen readers."""

from collections.abc import Callable

from nicegui import ui

from hoodwright.results import Verdict
from hoodwright.tasks.assessment import Assessment, HoodAnswer, SourceNeed
from hoodwright.tasks.picture import Xyz
from hoodwright.web.components.words import Words, block, mark
from hoodwright.workplace.model import Source, Workplace

STEP_M, BIG_STEP_M = 0.01, 0.1
KEYS = {
    "ArrowLeft": (-1, 0, 0),
    "ArrowRight": (1, 0, 0),
    "ArrowUp": (0, 1, 0),
    "ArrowDown": (0, -1, 0),
    "PageUp": (0, 0, 1),
    "PageDown": (0, 0, -1),
}
ONLY_OURS = f"(e) => {{ if ({list(KEYS)}.includes(e.key)) {{ e.preventDefault(); emit(e.key, e.shiftKey); }} }}"


class PartsList:
    """One row a part. A row is a button; on a hood's row the arrow keys move the hood."""

    def __init__(self, choose: Callable[[str], None], step: Callable[[str, Xyz], None]):
        self.choose, self.step = choose, step
        self.rows: dict[str, tuple[Words, Words]] = {}
        self.marks: dict[str, Words] = {}
        with block("section", "parts") as self.box:
            self.box.props["aria-label"] = "Hoods and sources"

    def show(self, workplace: Workplace, assessment: Assessment, chosen: str) -> None:
        """Rows for every part; kept while their names stay, so that the keyboard stays where it is."""
        answers = {answer.name: answer for answer in assessment.hoods}
        names = [part.name for part in (*workplace.hoods, *workplace.sources)]
        if list(self.rows) != names:
            self._build(workplace)
        for hood in workplace.hoods:
            self._say(hood.name, _of_hood(answers[hood.name]), chosen)
            self.marks[hood.name].clear()
            with self.marks[hood.name]:
                mark(answers[hood.name].enough.verdict)
                if answers[hood.name].met.verdict is Verdict.SHORT:
                    mark(Verdict.SHORT)
        for source in workplace.sources:
            self._say(source.name, _of_source(source), chosen)

    def focus(self, name: str) -> None:
        """Put the keyboard on a part's row."""
        ui.run_javascript(f"document.getElementById('{self.rows[name][0].html_id}')?.focus()")

    def _build(self, workplace: Workplace) -> None:
        self.rows, self.marks = {}, {}
        self.box.clear()
        with self.box:
            for part in (*workplace.hoods, *workplace.sources):
                self._row(part.name, is_hood=part in workplace.hoods)

    def _row(self, name: str, *, is_hood: bool) -> None:
        with block("button", "part hood" if is_hood else "part source") as row:
            row.props["type"] = "button"
            row.on("click", lambda: self.choose(name))
            Words("span", "hood" if is_hood else "source", "kind")
            with block("span", "name"):
                Words("span", name)
                if is_hood:
                    self.marks[name] = Words("span", "", "marks")
            self.rows[name] = (row, Words("span", "", "about"))
            if is_hood:
                row.on("keydown", lambda e: self._key(name, *e.args), js_handler=ONLY_OURS)
                row.props["aria-keyshortcuts"] = " ".join(KEYS)

    def _say(self, name: str, about: str, chosen: str) -> None:
        row, words = self.rows[name]
        words.text = about
        row.props["aria-pressed"] = "true" if name == chosen else "false"

    def _key(self, name: str, key: str, shift: bool) -> None:
        size = BIG_STEP_M if shift else STEP_M
        self.choose(name)
        self.step(name, tuple(size * way for way in KEYS[key]))


def _of_hood(answer: HoodAnswer) -> str:
    today = "; today it falls short" if answer.met.verdict is Verdict.SHORT else ""
    return f"{', '.join(where(need) for need in answer.needs)}; {answer.enough.verdict.value}{today}"


def where(need: SourceNeed) -> str:
    """Where a hood stands to a source, in words: '600 mm above the crucible'."""
    return f"{need.place} the {need.source}"


def _of_source(source: Source) -> str:
    ways = [f"gives off {source.contaminant}", source.dispersion]
    ways += ["hot"] * (source.heat is not None) + ["falls in"] * (source.falls is not None)
    ways += [source.wheel.work] if source.wheel else []
    ways += [f"tank of class {source.tank.name}"] if source.tank else []
    return ", ".join(ways)
