"""Air: the scene, what each hood needs and gets, and the fields that change it."""

import math
from dataclasses import replace

from nicegui import ui

from hoodwright import units
from hoodwright.errors import HoodwrightError
from hoodwright.tasks.air_edits import moved_to
from hoodwright.tasks.assessment import Assessment
from hoodwright.tasks.edits import held_at_wall, moved_by
from hoodwright.tasks.picture import Xyz, picture
from hoodwright.web.components.add_part import AddToAir
from hoodwright.web.components.air_panel import AirPanel
from hoodwright.web.components.edit_panel import EditPanel
from hoodwright.web.components.files import address
from hoodwright.web.components.outcomes import TYPES, caution_note, cautions_about, hood_in_full, hood_in_short
from hoodwright.web.components.parts import PartsList, where
from hoodwright.web.components.scene import Scene, dimensions
from hoodwright.web.components.still import Still
from hoodwright.web.components.words import Words, block
from hoodwright.web.desk import Desk
from hoodwright.web.draft import Draft
from hoodwright.web.frame import frame

DRAG_NOTE = "Drag a source or a hood to move it."
KEYS_NOTE = "Arrow keys and Page up, Page down move the chosen hood by 10 mm, with Shift by 100 mm."
TWIN_NOTE = "The list below says the same in words."
ROUTES_NOTE = "Duct routes are not in the file; they are drawn in a plain way."


def register(desk: Desk) -> None:
    """The page at /."""

    @ui.page("/")
    async def air(file: str | None = None, part: str | None = None):
        with frame(desk, await desk.opened(file), file, "/") as draft:
            if draft is not None:
                await AirPage(draft, part).show()


class AirPage:
    """One tab that shows the air of one draft."""

    def __init__(self, draft: Draft, part: str | None):
        self.draft = draft
        self.asked: set[str] = set()
        self.assessment: Assessment | None = None
        names = self._names()
        self.chosen = part if part in names else next(iter(names), "")
        Words("h1", "What gives off what, and what should catch it?")
        self.said = Words("p", "", "said")
        self.said.props["role"] = "status"
        with block("div", "work"):
            self.still = Still()
            self.scene = Scene(self.choose, lambda step: self.move(self._hood_name(), step), self._blind)
            Words("p", f"{DRAG_NOTE} {KEYS_NOTE} {ROUTES_NOTE}", "because under-scene")
            self.held = Words("p", "", "untold held")
            self.held.props["role"] = "status"
            self.air = AirPanel(draft, self.scene, self._redraw, self.still.show_smoke)
            self.scene.on("moved", lambda e: self.dragged(e.args["name"], tuple(e.args["at"])))
            self.parts = PartsList(self.choose, self.move)
            self.panel = EditPanel(draft, self.choose)
            self.adding = AddToAir(draft, lambda: self.chosen, self.choose)
        with block("section", "margin") as margin:
            margin.props["aria-label"] = "What each hood needs and gets"
            self.answers = block("div", "answers")
        self.panel.show(self.chosen)
        draft.changed.subscribe(self.follow)

    async def follow(self) -> None:
        """The draft changed, here or in another tab; where the chosen part is gone, the first is looked at."""
        names = self._names()
        if self.chosen not in names:
            self.chosen = next(iter(names), "")
            self.panel.show(self.chosen)
        self.panel.follow()
        self.adding.follow()
        await self.show()

    async def show(self) -> None:
        """Answer the draft as it stands; when it changed meanwhile, a newer answer is on its way."""
        document = self.draft.document
        try:
            assessment = await self.draft.assessment()
        except HoodwrightError as error:
            self._say_error(str(error))
            return
        if document is self.draft.document:
            self.assessment = assessment
            self._draw(assessment)
            self._answer(assessment)

    def choose(self, name: str) -> None:
        """Look at another hood or source."""
        if name == self.chosen:
            return
        self.chosen = name
        self.panel.show(name)
        self.adding.follow()
        where = address("/", self.draft.path.name, name)
        ui.run_javascript(f"history.replaceState(null, '', {where!r})")
        ui.timer(0, self.show, once=True)

    def _names(self) -> list[str]:
        return [part.name for part in (*self.draft.workplace.hoods, *self.draft.workplace.sources)]

    def _look_at(self, name: str) -> None:
        self.choose(name)
        self.parts.focus(name)

    def move(self, name: str, step: Xyz) -> None:
        """Move a hood by a step; it stays inside the room, and that is said."""
        document = self.draft.document
        self.held.text = f"The {name} is at the wall; it goes no farther." if held_at_wall(document, name, step) else ""
        self.draft.edit(moved_by(document, name, step))

    def dragged(self, name: str, place: Xyz) -> None:
        """A hood or source was dragged in the scene: write its place, or say why it cannot stand there."""
        document = self.draft.document
        try:
            self.draft.edit(moved_to(document, name, place))
        except HoodwrightError as error:
            self.held.text = str(error)
            self.draft.changed.emit()  # the scene puts it back
        else:
            self.held.text = ""

    def _source_name(self, hood: str) -> str:
        """The chosen source, or that which was looked at before, or the first of the hood."""
        serves = next((h.serves for h in self.draft.workplace.hoods if h.name == hood), ())
        return next((name for name in (self.chosen, self.air.source) if name in serves), next(iter(serves), ""))

    def _hood_name(self) -> str:
        hoods = self.draft.workplace.hoods
        return next((h.name for h in hoods if self.chosen == h.name or self.chosen in h.serves), "")

    def _draw(self, assessment: Assessment) -> None:
        workplace = self.draft.workplace
        hood = self._hood_name()
        self.air.show(hood, self._source_name(hood))
        self._redraw()
        self.parts.show(workplace, assessment, self.chosen)

    def _redraw(self) -> None:
        """The scene with the draught that is tried, or that of the file."""
        if self.assessment is None:
            return
        workplace, system = self.draft.workplace, self.assessment.system
        shapes, lines = picture(workplace), dimensions(workplace, self.assessment, self.chosen)
        tried = self.air.values.draught(workplace)
        if tried is not None:
            shapes = replace(shapes, room=replace(shapes.room, draught=tried))
        speed = math.hypot(*(shapes.room.draught or ()))
        blows = f"draught {units.show(speed, 'velocity', system)}" if speed else ""
        about = f"Scene of {workplace.name}. {_standing(self.assessment, self.chosen)} {KEYS_NOTE} {TWIN_NOTE}"
        self.scene.show(shapes, self.chosen, lines, blows, about)
        self.still.show(shapes, system)

    def _answer(self, assessment: Assessment) -> None:
        looked_at = self._hood_name()
        self.answers.clear()
        with self.answers:
            for answer in assessment.hoods:
                if answer.name == looked_at:
                    cautions = cautions_about(answer, self.draft.workplace, assessment.cautions)
                    hood_in_full(
                        answer,
                        cautions,
                        assessment.system,
                        self.asked,
                    )
                    self.said.text = f"{answer.name}: {answer.enough}"
            for answer in assessment.hoods:
                if answer.name != looked_at:
                    hood_in_short(answer, self._look_at)
            for caution in assessment.cautions:
                if caution.about == assessment.workplace:
                    caution_note(caution, everywhere=True)

    def _say_error(self, text: str) -> None:
        self.answers.clear()
        with self.answers:
            Words("p", text, "caution")

    def _blind(self) -> None:
        self.scene.set_visibility(False)
        self.still.stand_in()
        self.air.blind()


def _standing(assessment: Assessment, chosen: str) -> str:
    """The chosen part in words: which hood it is, and where it stands to its sources."""
    hoods = [answer for answer in assessment.hoods if answer.name == chosen]
    places = [f"{TYPES[hood.type]}, {', '.join(where(need) for need in hood.needs)}" for hood in hoods]
    return f"Chosen: {', '.join([chosen, *places])}."
