"""The files that `hoodwright capture` can write."""

from pathlib import Path

from hoodwright.console import console
from hoodwright.console_files import check_output
from hoodwright.errors import InputError
from hoodwright.tasks.capture.answer import CaptureReport

PICTURES = (".png", ".svg")


def check_outputs(plot: Path | None, picture: Path | None, pdf: Path | None, paper: str | None) -> None:
    """Refuse a name with a wrong ending, a folder that is not there, and a paper without its PDF."""
    check_output("--plot", plot, PICTURES, "curve.png")
    check_output("--map", picture, PICTURES, "map.png")
    check_output("--pdf", pdf, (".pdf",), "air.pdf")
    if paper is not None and pdf is None:
        raise InputError("--paper: it is the paper of the PDF; name the PDF with --pdf")


def write_plot(report: CaptureReport, file: Path, *, quiet: bool) -> None:
    """Draw captured share against distance; unless `quiet`, say where."""
    from hoodwright.reports.capture_figure import capture_png, capture_svg

    file.write_bytes(capture_svg(report).encode() if file.suffix.lower() == ".svg" else capture_png(report))
    if not quiet:
        console().print(f"{file} written.")
