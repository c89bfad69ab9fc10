"""The files that `hoodwright capture` can write: names that cannot be written are told before anything is computed."""

from pathlib import Path

from hoodwright.console import console
from hoodwright.errors import InputError
from hoodwright.tasks.capture.answer import CaptureReport

PICTURES = (".png", ".svg")
EXAMPLES = {"--pdf": "air.pdf", "--plot": "curve.png", "--map": "map.png"}


def check_outputs(plot: Path | None, picture: Path | None, pdf: Path | None, paper: str | None) -> None:
    """Refuse a name with a wrong ending, a folder that is not there, and a paper without its PDF."""
    for option, file, endings in (("--plot", plot, PICTURES), ("--map", picture, PICTURES), ("--pdf", pdf, (".pdf",))):
        if file is None:
            continue
        if file.suffix.lower() not in endings:
            allowed = " or ".join(endings)
            raise InputError(
                f"{option}: got {str(file)!r}; a name that ends in {allowed} is needed, for example {EXAMPLES[option]}"
            )
        if not file.parent.is_dir():
            raise InputError(f"{option}: there is no folder {str(file.parent)!r}; make it, or choose another place")
    if paper is not None and pdf is None:
        raise InputError("--paper: it is the paper of the PDF; name the PDF with --pdf")


def write_plot(report: CaptureReport, file: Path, *, quiet: bool) -> None:
    """Draw captured share against distance; unless `quiet`, say where."""
    from hoodwright.reports.capture_figure import capture_png, capture_svg

    file.write_bytes(capture_svg(report).encode() if file.suffix.lower() == ".svg" else capture_png(report))
    if not quiet:
        console().print(f"{file} written.")
