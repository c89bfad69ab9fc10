"""Guide: from a process to its hood, with every statement's source, and a workplace file to start from."""

from urllib.parse import urlencode

from nicegui import run, ui

from hoodwright.errors import InputError
from hoodwright.tasks.guide import SORTS, entry, find_entries, nearest, sorted_entries
from hoodwright.web.components.files import address
from hoodwright.web.components.guide_entry import guide_entry
from hoodwright.web.components.guide_list import GuideList
from hoodwright.web.components.words import Words, block, button
from hoodwright.web.desk import Desk
from hoodwright.web.draft import Draft
from hoodwright.web.frame import frame

WAIT_MS = 200
SEARCH = "Words of a process, trade, contaminant or hazard"
NAME = "Name of the new file"


def register(desk: Desk) -> None:
    """The page at /guide."""

    @ui.page("/guide")
    async def guide(file: str | None = None, process: str = "", words: str = "", sort: str = "process"):
        draft = await desk.opened(file)
        with frame(desk, draft, file, "/guide", alone=True):
            GuidePage(desk, draft, process, words, sort if sort in SORTS else "process")


class GuidePage:
    """One tab that shows the guide."""

    def __init__(self, desk: Desk, draft: Draft | None, process: str, words: str, sort: str):
        self.desk, self.draft, self.sort = desk, draft, sort
        self.chosen = process if any(found.process == process for found in find_entries("")) else ""
        Words("h1", "What is done, and what belongs over it?")
        with block("section", "guide-find") as section:
            section.props["aria-label"] = "Processes"
            with block("div", "field"):
                label = Words("label", SEARCH)
                self.search = ui.input(value=words).props(f"outlined dense debounce={WAIT_MS} clearable").mark(SEARCH)
                label.props["for"] = self.search.html_id
            self.search.on_value_change(self.show)
            self.count = Words("p", "", "because")
            self.count.props["role"] = "status"
            self.list = GuideList(self.choose, self.sort_by)
        with block("article", "guide-entry") as self.detail:
            self.detail.props["aria-label"] = "The chosen process"
        self.show()
        self._entry()
        if draft:
            draft.changed.subscribe(self._entry)

    @property
    def words(self) -> str:
        """What is searched for."""
        return self.search.value or ""

    def show(self) -> None:
        """The processes that fit the words, in the chosen order."""
        found = sorted_entries(self.sort, find_entries(self.words))
        near = nearest(self.words) if not found else ()
        self.count.text = _counted(len(found), near)
        self.list.show(found or tuple(entry(name) for name in near), self.sort, self.chosen)
        self._keep()

    def sort_by(self, key: str) -> None:
        """Sort by another column."""
        self.sort = key
        self.show()

    def choose(self, process: str) -> None:
        """Look at a process."""
        self.chosen = process
        self.list.mark(process)
        self._entry()
        self._keep()
        ui.run_javascript("document.getElementById('guide-entry')?.scrollIntoView({block: 'nearest'})")

    def _keep(self) -> None:
        asked = {"process": self.chosen, "words": self.words, "sort": self.sort}
        asked |= {"file": self.draft.path.name} if self.draft else {}
        where = "/guide?" + urlencode({key: value for key, value in asked.items() if value})
        ui.run_javascript(f"history.replaceState(null, '', {where!r})")

    def _entry(self) -> None:
        self.detail.clear()
        with self.detail:
            if not self.chosen:
                Words("p", "Choose a process to see its hood, what to mind, and where each statement is from.")
                return
            system = self.draft.system if self.draft and not self.draft.faults else "SI"
            guide_entry(entry(self.chosen), system)
            self._starter()

    def _starter(self) -> None:
        Words("h3", "Start a workplace from this")
        with block("div", "field alone"):
            label = Words("label", NAME)
            self.name = ui.input(value=self.desk.free_name(self.chosen), validation=lambda _: None)
            self.name.without_auto_validation().props("outlined dense spellcheck=false autocomplete=off").mark(NAME)
            label.props["for"] = self.name.html_id
        button("Write it and open it", self.start, "act")

    async def start(self) -> None:
        """Write a starter file for the chosen process into the folder, and open it."""
        name = self.name.value or ""
        try:
            await run.io_bound(self.desk.start, self.chosen, name)
        except InputError as error:
            self.name.error = str(error)
            return
        ui.navigate.to(address("/", name))


def _counted(count: int, near: tuple[str, ...]) -> str:
    if count:
        return f"{count} process{'es' if count > 1 else ''}; press a heading to sort, arrow keys walk the list."
    return "No process fits all these words; these come nearest:" if near else "No process fits these words; use fewer."
