"""Writes the PDF of `hoodwright capture`."""

from pathlib import Path

from hoodwright.console import console
from hoodwright.console_capture import with_bar
from hoodwright.errors import InputError
from hoodwright.reports import capture_pdf
from hoodwright.tasks.capture.answer import CaptureReport
from hoodwright.workplace import Document


def write_pdf(
    document: Document, report: CaptureReport, target: Path, paper: str | None = None, *, quiet: bool = False
) -> None:
    """Write the computed air as a PDF and say where it is; with `quiet` it is not said."""
    chosen = paper or ("letter" if report.system == "US" else "a4")
    papers = {"a4": "a4", "letter": "us-letter"}

    def work(progress):
        return capture_pdf(document, report, document.workplace(), papers[chosen], progress)

    pdf = with_bar(work, document, "computing what the pages show")
    try:
        target.write_bytes(pdf)
    except OSError as error:
        raise InputError(f"{target}: {(error.strerror or 'cannot be written').lower()}; choose another place") from None
    if not quiet:
        console().print(f"Report written: {target}")
