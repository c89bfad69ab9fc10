"""Three: one source and one flow, with the hood beside it, above it and around it, side by side."""

from urllib.parse import urlencode

from nicegui import run, ui

from hoodwright.errors import HoodwrightError
from hoodwright.tasks.arrangements.air import told_of
from hoodwright.tasks.arrangements.arrange import KEYS, arrangements_of, check_places, distance_in_file, left_out
from hoodwright.tasks.arrangements.view import stance_of
from hoodwright.tasks.arrangements.words import Told, where_it_goes
from hoodwright.web.components.arrangement import ArrangementPanel, stills_of
from hoodwright.web.components.job_line import JobLine
from hoodwright.web.components.length_field import LengthField
from hoodwright.web.components.words import Words, block, button
from hoodwright.web.desk import Desk
from hoodwright.web.draft import Draft
from hoodwright.web.frame import frame

SAME = "Only the place of the hood differs: the source, the flow and the draught are the same in all three."
DISTANCE = "Distance, beside it and above it"
CANCELLED = "cancelled; change the distance to compute again"


def register(desk: Desk) -> None:
    """The page at /three."""

    @ui.page("/three")
    async def three(file: str | None = None, hood: str = "", source: str = "", part: str = "", distance: str = ""):
        with frame(desk, await desk.opened(file), file, "/three") as draft:
            if draft is not None:
                await ThreePage(draft, hood or part, source or part, _metres(distance)).show()


class ThreePage:
    """One tab that compares three places of one hood."""

    def __init__(self, draft: Draft, hood: str, source: str, distance: float | None):
        self.draft, self.distance = draft, distance
        self.hood, self.source = _pair(draft, hood, source)
        self.told: dict[str, Told] = {}
        self.shown: tuple = ()
        self.blind = False
        Words("h1", "Where should the hood go?")
        self.sentence = Words("p", "", "sentence").mark("sentence")
        self.sentence.props["role"] = "status"
        with block("div", "three-asked"):
            self.choice = block("div", "toggles")
            self.choice.props.update({"role": "group", "aria-label": "Which hood and source"})
            self.field = LengthField(DISTANCE, self._distance() or 0.15, draft.system, self.move)
        self.line = JobLine()
        with block("div", "three"):
            self.panels = {key: ArrangementPanel(key, self._went_blind) for key in KEYS}
        self.notes = Words("p", "", "because")
        draft.changed.subscribe(self.show)

    async def show(self) -> None:
        """Draw the three as the draft has them now, and compute their air."""
        self.hood, self.source = _pair(self.draft, self.hood, self.source)
        now = (self.draft.document.checksum, self.draft.system, self.hood, self.source, self.distance)
        if now == self.shown:
            return
        self.shown = now
        self._choose_from()
        if not self.hood:
            self._cannot("no hood of the file serves a source; let one serve it")
            return
        workplace, system = self.draft.workplace, self.draft.system
        try:
            three = await run.io_bound(arrangements_of, workplace, self.hood, self.source, self.distance, system)
        except HoodwrightError as error:
            self._cannot(str(error))
            return
        if three is None or now != self.shown:  # the server stops, or a newer state is on its way
            return
        self.three, self.told = three, {}
        self.field.follow(self._distance(), system)
        stance = stance_of(self.three)
        for one in self.three:
            self.panels[one.key].box.set_visibility(True)
            self.panels[one.key].show(one, stance, self._asked(), system)
        self.notes.text = f"{SAME} {left_out(workplace, self.hood, self.source)}".strip()
        self._say()
        self.line.begin("computing the air of all three", told_of, self.three, done=self._tell, nothing=CANCELLED)

    def move(self, distance: float) -> None:
        """Another distance of the hoods beside and above; refused ones are said at the field."""
        check_places(self.draft.workplace, self.hood, self.source, distance)
        self.distance = distance
        self._keep()
        ui.timer(0, self.show, once=True)

    async def choose(self, hood: str, source: str) -> None:
        """Compare another hood; its own distance again."""
        self.hood, self.source, self.distance = hood, source, None
        self._keep()
        await self.show()

    def _tell(self, told: dict[str, Told]) -> None:
        self.told = told
        for one in self.three:
            self.panels[one.key].tell(one, told[one.key], self.draft.system)
        self._say()
        self._stills()

    def _went_blind(self) -> None:
        """The browser draws no scene: stills stand in, once the air is told."""
        if not self.blind:
            self.blind = True
            self._stills()

    def _stills(self) -> None:
        if self.blind and self.told:
            self.line.begin("drawing the smoke", stills_of, self.three, done=self._draw, nothing=CANCELLED)

    def _draw(self, stills: dict[str, str]) -> None:
        for key, smoke in stills.items():
            self.panels[key].draw(smoke)

    def _say(self) -> None:
        self.sentence.text = where_it_goes(self.three, self.told, self.draft.system)

    def _cannot(self, words: str) -> None:
        self.line.cancel()
        self.sentence.text = f"The three cannot be compared: {words}."
        self.notes.text = ""
        for panel in self.panels.values():
            panel.box.set_visibility(False)

    def _choose_from(self) -> None:
        """One button for each hood and source of the file, where there are several."""
        pairs = _pairs(self.draft)
        self.choice.clear()
        self.choice.set_visibility(len(pairs) > 1)
        with self.choice:
            for hood, source in pairs if len(pairs) > 1 else ():
                words = f"{hood}, {source}"
                one = button(words, lambda hood=hood, source=source: self.choose(hood, source), "toggle")
                one.props["aria-pressed"] = "true" if (hood, source) == (self.hood, self.source) else "false"

    def _distance(self) -> float:
        if self.distance is not None or not self.hood:
            return self.distance or 0.0
        return distance_in_file(self.draft.workplace, self.hood, self.source)

    def _asked(self) -> dict[str, str]:
        asked = {"file": self.draft.path.name, "hood": self.hood, "source": self.source}
        return asked | ({"distance": f"{self.distance:.9g}"} if self.distance is not None else {})

    def _keep(self) -> None:
        where = f"/three?{urlencode(self._asked())}"
        ui.run_javascript(f"history.replaceState(null, '', {where!r})")


def _metres(text: str) -> float | None:
    try:
        return float(text)
    except ValueError:
        return None


def _pairs(draft: Draft) -> list[tuple[str, str]]:
    return [(hood.name, source) for hood in draft.workplace.hoods for source in hood.serves]


def _pair(draft: Draft, hood: str, source: str) -> tuple[str, str]:
    """The hood and source that were asked for, as far as they are in the file and belong together."""
    pairs = _pairs(draft)
    near = sorted(pairs, key=lambda pair: -(2 * (pair[0] == hood) + (pair[1] == source)))
    return near[0] if near else ("", "")
