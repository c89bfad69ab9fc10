"""What really flows: the drawing, what is looked at, what is tried, and everything that follows from it."""

import asyncio
from collections.abc import Callable
from functools import partial

from nicegui import run, ui

from hoodwright.errors import Cancelled, HoodwrightError
from hoodwright.jobs import Latest, Progress
from hoodwright.tasks.as_built.fan_curves import Curved, fan_curves
from hoodwright.tasks.as_built.layout import Layout, layout_of
from hoodwright.tasks.as_built.live import LiveDucts, Tried, intended_of, live_of, told_by
from hoodwright.tasks.as_built.paths import hood_before, path_of
from hoodwright.tasks.as_built.words import sentence
from hoodwright.tasks.assessment import Assessment
from hoodwright.web.components.duct_layout import DuctDrawing
from hoodwright.web.components.duct_look import DuctLook
from hoodwright.web.components.duct_tables import DuctTable, HoodTable
from hoodwright.web.components.duct_try import DuctTry
from hoodwright.web.components.fan_plot import FanPanel
from hoodwright.web.components.files import address
from hoodwright.web.components.pressure_plot import options, pressure_plot
from hoodwright.web.components.words import Words, block, button
from hoodwright.web.draft import Draft
from hoodwright.workplace.model import Workplace

KEYS_NOTE = "Arrow keys go from part to part, Enter looks at one, + and − move its damper."
STATIC_NOTE = (
    "As thick as the flow; static pressure at the end of each duct, what filters take, and the total pressure fans "
    "raise."
)
PATH_NOTE = "Gauge pressures, suction negative; as built, junctions by the balance of momentum."

CURVES_AFTER_S = 0.25


class DuctDesk:
    """The live part of the Ducts page in one tab."""

    def __init__(self, draft: Draft, part: str, heard: Callable[[], None]):
        self.draft, self.heard = draft, heard
        self.found: Assessment | None = None
        self.intended: LiveDucts | None = None
        self.live: LiveDucts | None = None
        self.layout: Layout | None = None
        self.inside: str | None = None
        self.chosen = part
        self.latest = Latest(_live, finish_running=True)
        self.curves = Latest(fan_curves)
        self.panels: dict[str, FanPanel] = {}
        self.sentence = Words("p", "", "sentence live-sentence")
        self.sentence.props["role"] = "status"
        with block("figure", "duct-figure") as self.figure:
            self.crumbs = block("div", "toggles crumbs")
            self.drawing = DuctDrawing(self.choose, self._step)
            Words("figcaption", f"{STATIC_NOTE} {KEYS_NOTE} The table below says the same.", "because")
        with block("div", "duct-work") as self.work:
            looking = block("div")
            self.trying = DuctTry(draft, self.ask)
            with looking:
                self.look = DuctLook(draft, self.trying)
        self._below()

    def _below(self) -> None:
        self.fans = block("div", "cards fan-panels")
        with block("figure", "run path") as self.path:
            self.path_title = Words("h2", "")
            self.plot = pressure_plot((), self.draft.system)
            self.plot.props["role"] = "img"
            self.plot.props["aria-label"] = "Pressure along the way of the air; the table of ducts gives the numbers."
            Words("figcaption", PATH_NOTE, "because")
        self.hoods = HoodTable()
        self.table = DuctTable()

    async def show(self) -> None:
        """Draw the draft as it stands, and answer it in the state that is tried."""
        workplace = self.draft.workplace
        intended = await run.io_bound(intended_of, workplace)
        if intended is None or workplace is not self.draft.workplace:  # the server stops, or a newer one is on its way
            return
        self.intended, self.found = intended, None
        if not workplace.ducts:
            self._only()
            self.sentence.text = sentence(intended, self.trying.tried, self.draft.system)
            return
        starts = {duct.start for duct in workplace.ducts}
        self.inside = self.inside if self.inside in starts else None
        self.layout = layout_of(workplace, self.inside)
        if self.chosen not in {*(s.key for s in self.layout.spots), *(line.name for line in self.layout.lines)}:
            self.chosen = next((hood.name for hood in workplace.hoods if hood.name in starts), "")
        self.look.forget()
        self.trying.build()
        self._crumbs()
        await self.answer()

    def assessed(self, found: Assessment) -> None:
        """What every hood requires is known now."""
        self.found = found
        self._hoods()

    def ask(self) -> None:
        """Something else is tried: the newest request is answered, older ones are not waited for."""
        self.drawing.grey()
        with self.figure:
            ui.timer(0, self.answer, once=True)

    async def answer(self) -> None:
        """Answer the state that is tried now, off the event loop; curves take longer and come after."""
        asked = self._now()
        if self.intended is None or self.layout is None:
            return
        try:
            live = await asyncio.wrap_future(self.latest.ask(*asked).future)
        except Cancelled:
            return
        except HoodwrightError as error:
            self.sentence.text = str(error)
            return
        self._tell(live, *asked)
        if live.built and asked == self._now():
            with self.figure:
                ui.timer(CURVES_AFTER_S, lambda: self._curves(asked), once=True)

    async def _curves(self, asked: tuple) -> None:
        """Not while a slider still moves: the drawing comes first."""
        if asked != self._now():
            return
        workplace, tried, _, system = asked
        try:
            curved = await asyncio.wrap_future(self.curves.ask(workplace, tried, system).future)
        except HoodwrightError:
            return  # a newer state is asked, or the sentence says why there is none
        self._curve(curved, asked)

    def _now(self) -> tuple:
        return (self.draft.workplace, self.trying.tried, self.intended, self.draft.system)

    def _curve(self, curved: Curved, asked: tuple) -> None:
        """Curves of the newest state; where a fan cannot stay as it was found first, everything is told again."""
        if asked != self._now():
            return
        workplace, tried, intended, system = asked
        live = told_by(curved.answer, tried, intended)
        if self.live is None or any(not live.fans[name].like(fan) for name, fan in self.live.fans.items()):
            self._tell(live, *asked)
        names = [curves.name for curves in curved.fans]
        if list(self.panels) != names:
            self.fans.clear()
            with self.fans:
                self.panels = {name: FanPanel(name) for name in names}
        currency = workplace.prices.currency or ""
        for curves in curved.fans:
            self.panels[curves.name].show(curves, system, currency, curved.answer.cautions)

    def _tell(self, live: LiveDucts, workplace: Workplace, tried: Tried, intended: LiveDucts, system: str) -> None:
        """Everything that follows from what flows."""
        if intended is not self.intended:
            return
        self.live = live
        self._only()
        self.sentence.text = sentence(live, tried, system)
        self._draw()
        self._look()
        self._hoods()

    def _hoods(self) -> None:
        if self.live is not None:
            self.hoods.show(self.draft.workplace, self.found, self.live, self.draft.system)

    def _only(self) -> None:
        """With no ducts only the sentence is left; with no curve nothing can be tried."""
        some = self.intended is not None and bool(self.intended.ducts)
        built = some and self.intended is not None and self.intended.curved
        for part in (self.figure, self.hoods.box, self.table.box, self.work):
            part.set_visibility(some)
        for part in (self.fans, self.path, self.trying.box):
            part.set_visibility(built)

    def _draw(self) -> None:
        """The drawing and the table that says the same."""
        if self.layout is None or self.live is None:
            return
        about = f"Ducts of {self.draft.workplace.name}. {self.sentence.text} {KEYS_NOTE}"
        system = self.draft.system
        self.drawing.show(self.layout, self.live, self.trying.tried, self.chosen, system, about)
        self.table.show(self.layout, self.live, system)

    def choose(self, part: str) -> None:
        """Look at a part; a folded one is opened, and the way on leads back."""
        spots = self.layout.spots if self.layout else ()
        kind = next((spot.kind for spot in spots if spot.key == part), "duct")
        if kind in ("folded", "onward"):
            self.go(part if kind == "folded" else None)
            return
        self.chosen = part
        self.drawing.choose(part)
        self._look()
        where = address("/ducts", self.draft.path.name, part)
        ui.run_javascript(f"history.replaceState(null, '', {where!r})")
        self.heard()

    def go(self, inside: str | None) -> None:
        """Draw only what lies before a junction, or everything."""
        self.inside = inside
        self.layout = layout_of(self.draft.workplace, inside)
        self._crumbs()
        self._draw()

    def _crumbs(self) -> None:
        self.crumbs.clear()
        self.crumbs.set_visibility(self.inside is not None)
        if self.inside is None:
            return
        with self.crumbs:
            button("Everything", partial(self.go, None), "toggle")
            Words("span", f"› before {self.inside}")

    def _look(self) -> None:
        if self.live is None or self.intended is None:
            return
        system, workplace = self.draft.system, self.draft.workplace
        self.look.show(self.chosen, self.live, system)
        hood = hood_before(workplace, self.chosen)
        way = path_of(workplace, self.live, hood)
        by_hand = path_of(workplace, self.intended, hood)
        self.path_title.text = f"Pressure on the way of the air from the {hood}"
        self.plot.options.clear()
        self.plot.options.update(options(way, system, by_hand))
        self.plot.update()

    def _step(self, part: str, way: int) -> None:
        if part != self.chosen:
            self.choose(part)
        self.look.step(way)


def _live(progress: Progress, workplace: Workplace, tried: Tried, intended: LiveDucts, system: str) -> LiveDucts:
    progress.check()
    return live_of(workplace, tried, intended, system)
