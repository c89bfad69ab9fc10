"""The processes of the guide as a table that one can search and sort, and walk through with the arrow keys."""

from collections.abc import Callable

from hoodwright.tasks.guide import GuideEntry
from hoodwright.web.components.words import Words, block, button

COLUMNS = {
    "process": "Process",
    "trade": "Trade",
    "kind": "Gives off",
    "release": "Release",
    "hood": "First choice of hood",
}
WALK = """(e) => {
  if (!["ArrowDown", "ArrowUp"].includes(e.key) || !e.target.classList.contains("guide-name")) return;
  const names = [...e.currentTarget.querySelectorAll(".guide-name")];
  const next = names[names.indexOf(e.target) + (e.key === "ArrowDown" ? 1 : -1)];
  if (next) { e.preventDefault(); next.focus(); }
}"""


class GuideList:
    """The table. `choose` is called with a process, `sort` with a column."""

    def __init__(self, choose: Callable[[str], None], sort: Callable[[str], None]):
        self.choose, self.heads = choose, dict[str, Words]()
        self.names: dict[str, Words] = {}
        with block("table", "guide") as table:
            table.on("keydown", js_handler=WALK)
            with block("thead"), block("tr"):
                for key, words in COLUMNS.items():
                    with block("th", f"col-{key}") as head:
                        head.props["scope"] = "col"
                        self.heads[key] = button(words, lambda key=key: sort(key), "sort")
            self.body = block("tbody", "")

    def show(self, entries: tuple[GuideEntry, ...], sorted_by: str, chosen: str) -> None:
        """Rows for these entries, in this order."""
        for key, head in self.heads.items():
            sorted_here = key == sorted_by
            head.text = f"{COLUMNS[key]} ▾" if sorted_here else COLUMNS[key]
            head.props["aria-pressed"] = "true" if sorted_here else "false"
            head.props["aria-label"] = f"Sort by {COLUMNS[key].lower()}"
        self.body.clear()
        self.names = {}
        with self.body:
            for found in entries:
                self._row(found)
        self.mark(chosen)

    def mark(self, chosen: str) -> None:
        """Show which process is looked at."""
        for process, name in self.names.items():
            name.props["aria-pressed"] = "true" if process == chosen else "false"

    def _row(self, found: GuideEntry) -> None:
        first = found.hoods[0]
        with block("tr", "guide-row"):
            with block("td"):
                self.names[found.process] = button(found.process, lambda: self.choose(found.process), "guide-name")
            for words, key in ((found.trade, "trade"), (found.kind, "kind"), (found.release, "release")):
                Words("td", words, f"col-{key}")
            with block("td", "col-hood"):
                Words("strong", f"{first.type}: ")
                Words("span", first.form)
