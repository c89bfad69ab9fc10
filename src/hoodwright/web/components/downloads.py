"""The PDF and the YAML of the draft; the PDF with a thin line of progress and a cancel."""

from nicegui import ui

from hoodwright.jobs import Progress
from hoodwright.web.components.job_line import JobLine
from hoodwright.web.draft import Draft


def yaml_of(draft: Draft) -> None:
    """Download the draft as it stands, unsaved edits included; a file with faults as it lies on disk."""
    as_it_lies = draft.faults and draft.path.exists()
    content = draft.path.read_bytes() if as_it_lies else draft.document.text.encode("utf-8")
    ui.download.content(content, draft.path.name, "application/yaml")


class PdfDownload:
    """One PDF at a time: begin, a thin line, cancel, and the file."""

    def __init__(self, draft: Draft):
        self.draft = draft
        self.line = JobLine()

    async def begin(self) -> None:
        """Write the PDF of the draft as it stands now."""
        if self.line.busy:
            return
        document, workplace = self.draft.document, self.draft.workplace
        assessment = await self.draft.assessment()
        self.line.begin(
            "writing the PDF",
            _pdf,
            document,
            assessment,
            workplace,
            done=self._save,
            nothing="cancelled; no PDF was written",
        )

    def _save(self, pdf: bytes) -> None:
        ui.download.content(pdf, f"{self.draft.path.stem}.pdf", "application/pdf")


def _pdf(progress: Progress, document, assessment, workplace) -> bytes:
    from hoodwright.reports import assessment_pdf

    progress.report(0.2, "setting the pages of the PDF")
    paper = "us-letter" if assessment.system == "US" else "a4"
    pdf = assessment_pdf(document, assessment, workplace, paper=paper)
    progress.report(1.0, "the PDF is set")
    return pdf
