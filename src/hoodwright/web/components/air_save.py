"""What is saved for a toolbox talk: a picture, a short film, and the PDF of the computed air."""

import json
from collections.abc import Callable

from nicegui import ui

from hoodwright.errors import HoodwrightError
from hoodwright.jobs import Progress
from hoodwright.tasks.capture.job import capture_of
from hoodwright.web.animation import save_animation
from hoodwright.web.components.job_line import JobLine
from hoodwright.web.components.scene import Scene
from hoodwright.web.components.words import Words, block, button
from hoodwright.web.draft import Draft
from hoodwright.workplace import Document

MOMENTS, EVERY_S = 40, 0.1
NO_PICTURE = "There is no picture to save: this browser draws no scene. The PDF of the computed air holds one."
NO_FILM = "There is no film to save: this browser draws no scene."
TOO_SLOW = "the film was not ready in time; draw it in a smaller window"
PATIENCE_S = 60.0  # drawing in software is slow
SAVE = """
const url = getElement(%(id)d)?.still?.();
if (!url) return false;
const link = document.createElement("a");
link.href = url;
link.download = %(name)s;
link.click();
return true;
"""
AT_WORK = "drawing {count} moments of the smoke; it takes longer to draw than to see"


class AirSave:
    """Buttons; what is at work is said beside them."""

    def __init__(
        self,
        draft: Draft,
        scene: Scene,
        tried: Callable[[], tuple[Document, str, str]],
        blind: Callable[[], bool],
    ):
        self.draft, self.scene, self.tried, self.blind = draft, scene, tried, blind
        with block("div", "saves") as group:
            group.props.update({"role": "group", "aria-label": "Save for a talk"})
            button("Save picture (PNG)", self.picture)
            self.film_button = button("Save short film (GIF)", self.film)
            button("PDF of the computed air", self.pdf)
        self.said = Words("p", "", "because")
        self.said.props["role"] = "status"
        self.line = JobLine()

    async def picture(self) -> None:
        """What is seen now; the browser writes it itself, as it may be large."""
        script = SAVE % {"id": self.scene.id, "name": json.dumps(f"{self._name()}.png")}
        saved = await _asked(ui.run_javascript(script, timeout=PATIENCE_S))
        self.said.text = "" if saved else NO_PICTURE

    async def film(self) -> None:
        """Some seconds of smoke."""
        if self.blind():
            self.said.text = NO_FILM
            return
        self.film_button.props["disabled"] = True
        self.said.text = AT_WORK.format(count=MOMENTS)
        fault = await _asked(save_animation(self.scene, f"{self._name()}.gif", MOMENTS, EVERY_S))
        self.said.text = TOO_SLOW if fault is None else fault
        self.film_button.props["disabled"] = False

    def pdf(self) -> None:
        """Picture of the flow, capture plot, definition and limits, for the air as it is tried now."""
        try:
            document, hood, source = self.tried()
        except HoodwrightError as error:
            self.said.text = str(error)
            return
        self.said.text = ""
        self.line.begin(
            "computing the pages of the PDF",
            _pdf,
            document,
            hood,
            source,
            self.draft.system,
            done=self._save_pdf,
            nothing="cancelled; no PDF was written",
        )

    def _save_pdf(self, pdf: bytes) -> None:
        ui.download.content(pdf, f"{self._name()}.pdf", "application/pdf")

    def _name(self) -> str:
        return f"{self.draft.path.stem}-air"


async def _asked(answer):
    """What the browser answered; None where it was too slow."""
    try:
        return await answer
    except TimeoutError:
        return None


def _pdf(progress: Progress, document: Document, hood: str, source: str, system: str) -> bytes:
    from hoodwright.reports import capture_pdf

    workplace = document.workplace().model_copy(update={"units": system})
    report = capture_of(workplace, source, hood, progress=progress.part(0.0, 0.3))
    paper = "us-letter" if system == "US" else "a4"
    return capture_pdf(document, report, workplace, paper, progress.part(0.3, 1.0))
