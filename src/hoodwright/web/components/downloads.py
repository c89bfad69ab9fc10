"""The PDF and the YAML of the draft; the PDF with a thin line of progress and a cancel."""

from nicegui import ui

from hoodwright.errors import Cancelled, HoodwrightError
from hoodwright.jobs import Job, Progress
from hoodwright.web.components.words import Words, block, button
from hoodwright.web.draft import Draft

LOOK_EVERY_S = 0.1


def yaml_of(draft: Draft) -> None:
    """Download the draft as it stands, unsaved edits included; a file with faults as it lies on disk."""
    as_it_lies = draft.faults and draft.path.exists()
    content = draft.path.read_bytes() if as_it_lies else draft.document.text.encode("utf-8")
    ui.download.content(content, draft.path.name, "application/yaml")


class PdfDownload:
    """One PDF at a time: begin, a thin line, cancel, and the file."""

    def __init__(self, draft: Draft):
        self.draft = draft
        self.job: Job | None = None
        with block("div", "progress") as self.line:
            self.line.props["role"] = "status"
            self.bar = ui.linear_progress(value=0, show_value=False, size="3px").props("instant-feedback")
            self.words = Words("span", "")
            self.stop = button("Cancel", self._cancel)
        self.line.set_visibility(False)
        self.timer = ui.timer(LOOK_EVERY_S, self._look, active=False)

    async def begin(self) -> None:
        """Write the PDF of the draft as it stands now."""
        if self.job and not self.job.done:
            return
        document, workplace = self.draft.document, self.draft.workplace
        assessment = await self.draft.assessment()
        self.job = Job(_pdf, document, assessment, workplace).start()
        self._say("writing the PDF", busy=True)

    def _cancel(self) -> None:
        if self.job:
            self.job.cancel()

    def _look(self) -> None:
        if not self.job or not self.job.done:
            if self.job:
                self.bar.value = self.job.progress.now.fraction
                self.words.text = self.job.progress.now.doing or self.words.text
            return
        try:
            pdf = self.job.result()
        except Cancelled:
            self._say("cancelled; no PDF was written", busy=False)
        except HoodwrightError as error:
            self._say(str(error), busy=False)
        else:
            ui.download.content(pdf, f"{self.draft.path.stem}.pdf", "application/pdf")
            self._say("", busy=False)
        self.job = None

    def _say(self, words: str, *, busy: bool) -> None:
        self.timer.active = busy
        self.words.text = words
        self.bar.set_visibility(busy)
        self.stop.set_visibility(busy)
        self.line.set_visibility(bool(words))


def _pdf(progress: Progress, document, assessment, workplace) -> bytes:
    from hoodwright.reports import assessment_pdf

    progress.report(0.2, "setting the pages of the PDF")
    paper = "us-letter" if assessment.system == "US" else "a4"
    pdf = assessment_pdf(document, assessment, workplace, paper=paper)
    progress.report(1.0, "the PDF is set")
    return pdf
