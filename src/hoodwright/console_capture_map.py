"""What `hoodwright capture --map` does: it asks place after place, and draws the picture."""

from pathlib import Path

from hoodwright.console import console, say
from hoodwright.console_capture import with_bar
from hoodwright.errors import InputError
from hoodwright.tasks.air.planes import LEVEL, PLANES
from hoodwright.tasks.capture.map import CaptureMap, captured_map, pair_of
from hoodwright.workplace import Document


def map_asked(picture: Path | None, plane: str | None, *, as_data: bool) -> str | None:
    """The plane that is asked for, or None; the plane alone asks for the numbers only, so it needs --json."""
    if plane is not None and plane.lower() not in PLANES:
        raise InputError(f"--plane: got {plane!r}; allowed: {', '.join(PLANES)}; choose one of these")
    if plane is not None and picture is None and not as_data:
        raise InputError("--plane: it says on which plane the map is drawn; name its picture with --map, or ask --json")
    return None if plane is None and picture is None else (plane or LEVEL).lower()


def mapped(document: Document, source: str | None, hood: str | None, plane: str, *, today: bool = False) -> CaptureMap:
    """The capture map of one source before one hood, with a bar on a terminal."""
    workplace = document.workplace()
    names = pair_of(workplace, source, hood)

    def work(progress):
        return captured_map(workplace, *names, plane, today=today, progress=progress)

    return with_bar(work, document, "laying the grid")


def write_map(found: CaptureMap, file: Path, *, quiet: bool) -> None:
    """Draw the map; unless `quiet`, say in a sentence what it shows."""
    from hoodwright.reports.capture_map_figure import capture_map_png, capture_map_svg

    is_svg = file.suffix.lower() == ".svg"
    file.write_bytes(capture_map_svg(found).encode() if is_svg else capture_map_png(found))
    if not quiet:
        say(console(), f"{found.layer.words} {file} written.")
