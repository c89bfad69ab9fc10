"""From plain data to PDF: the Typst call. Same data, same bytes: no clock, no fonts of the machine, fixed order."""

import json
from importlib.resources import files
from typing import TYPE_CHECKING

from hoodwright.errors import HoodwrightError, InputError
from hoodwright.jobs import Progress
from hoodwright.reports.capture_content import capture_content
from hoodwright.reports.content import Facts, report_content
from hoodwright.tasks.assessment import Assessment
from hoodwright.tasks.capture.answer import CaptureReport
from hoodwright.tasks.capture.pages import pages_of
from hoodwright.tasks.picture import picture

if TYPE_CHECKING:
    from hoodwright.workplace import Document, Workplace

PAPERS = ("a4", "us-letter")
TEMPLATES = ("parts.typ", "frame.typ", "hoods.typ", "run.typ", "close.typ")
BUNDLED_LETTERS = ((0x20, 0x52F), (0x1E00, 0x1FFF), (0x2000, 0x27FF), (0xFB00, 0xFB06))  # what Typst's own fonts hold


def capture_pdf(
    document: "Document",
    report: CaptureReport,
    workplace: "Workplace",
    paper: str = "a4",
    progress: Progress | None = None,
) -> bytes:
    """The computed air of one workplace file as a PDF; what a page lacks (curve, smoke) is computed for it."""
    progress = progress or Progress()
    pages = pages_of(report, workplace, progress.part(0.0, 0.9))
    progress.report(0.9, "setting the pages of the PDF")
    content = capture_content(report, pages, picture(workplace), facts_of(document, workplace), workplace.about or "")
    pdf = typeset(content, paper, "capture.typ")
    progress.report(1.0, "the PDF is set")
    return pdf


def facts_of(document: "Document", workplace: "Workplace") -> Facts:
    """What a report tells of its file."""
    return Facts(
        file_name=document.path.name if document.path else "not saved in a file",
        checksum=document.checksum,
        lengths={duct.name: duct.length for duct in workplace.ducts},
        contaminants={source.name: source.contaminant for source in workplace.sources},
    )


def assessment_pdf(document: "Document", assessment: Assessment, workplace: "Workplace", paper: str = "a4") -> bytes:
    """The answer for one workplace file as a PDF on A4 or US Letter; the same input gives the same bytes."""
    return typeset(report_content(assessment, picture(workplace), facts_of(document, workplace)), paper)


def typeset(content: dict, paper: str = "a4", main: str = "assessment.typ") -> bytes:
    """Plain data through the templates, `main` first; HoodwrightError carries the line where Typst stopped."""
    if paper not in PAPERS:
        raise InputError(f"paper {paper!r} is not known; allowed: {', '.join(PAPERS)}; choose one of these")
    words = json.dumps(content, ensure_ascii=False)
    parts = {name: _template(name) for name in TEMPLATES}
    parts["main.typ"] = _template(main)
    parts["data.json"] = words.encode("utf-8")
    return _compile(parts, paper, own_fonts_do=_bundled_fonts_do(words))


def _template(name: str) -> bytes:
    return files("hoodwright.reports").joinpath("templates", name).read_bytes()


def _compile(parts: dict[str, bytes], paper: str, *, own_fonts_do: bool) -> bytes:
    import typst  # late: only reports need it

    try:
        pdf = typst.compile(parts, sys_inputs={"paper": paper}, ignore_system_fonts=own_fonts_do)  # type: ignore[call-overload]
    except typst.TypstError as error:
        words = " ".join(str(error.diagnostic).split())
        raise HoodwrightError(
            f"the report could not be set: {words}; this is a fault of hoodwright, please report it"
        ) from error
    return pdf


def _bundled_fonts_do(words: str) -> bool:
    """Whether Typst's own fonts hold every letter; else fonts of the machine help out, and bytes may differ there."""
    return all(any(low <= ord(c) <= high for low, high in BUNDLED_LETTERS) for c in set(words))
