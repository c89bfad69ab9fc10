"""Writes the PDF of `hoodwright capture`."""

from pathlib import Path

from hoodwright.console import paper_for, save_report
from hoodwright.console_capture import with_bar
from hoodwright.reports import capture_pdf
from hoodwright.tasks.capture.answer import CaptureReport
from hoodwright.workplace import Document


def write_pdf(
    document: Document, report: CaptureReport, target: Path, paper: str | None = None, *, quiet: bool = False
) -> None:
    """Write the computed air as a PDF and say where it is; with `quiet` it is not said."""

    def work(progress):
        return capture_pdf(document, report, document.workplace(), paper_for(paper, report.system), progress)

    save_report(with_bar(work, document, "computing what the pages show"), target, quiet=quiet)
