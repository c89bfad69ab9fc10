"""What `hoodwright capture` prints: sentences first, then a table, then where to look next."""

import re
import sys
from pathlib import Path

from rich.progress import BarColumn, TextColumn
from rich.progress import Progress as Bar
from rich.table import Table

from hoodwright.console import console, say
from hoodwright.errors import InputError, UnitError
from hoodwright.jobs import Job
from hoodwright.tasks.capture.answer import CANNOT
from hoodwright.tasks.capture.faults import at_its_place
from hoodwright.tasks.capture.job import BANNER, CAPTURED, CaptureAnswer, CaptureReport, capture_of
from hoodwright.units import parse, show, show_number, unit_label
from hoodwright.workplace import Document

STOPPED = 130  # exit code after Ctrl-C
HEADINGS: tuple[tuple[str, int], ...] = (
    ("Source", 16),
    ("hood", 15),
    ("distance", 8),
    ("flow", 7),
    ("captured", 8),
    ("interval", 15),
    ("claim", 11),
    ("handbook", 14),
)
SHARE = re.compile(r"([<>] )?(\d+) %")
UNBROKEN = "\N{NO-BREAK SPACE}"


def distances_of(words: str | None) -> list[float] | None:
    """The distances of an option such as 25mm,51mm in metres."""
    try:
        return None if words is None else [parse(one.strip(), "length") for one in words.split(",")]
    except UnitError as error:
        raise InputError(f"--distances: {error}") from None


def computed(document: Document, source, hood, distances, *, today: bool) -> CaptureReport:
    """Run the job with a bar on a terminal; Ctrl-C stops it. An error names its place in the file."""

    def work(progress):
        return capture_of(document.workplace(), source, hood, distances, today=today, progress=progress)

    return with_bar(work, document, "laying the grid")


def with_bar(work, document: Document, first: str):
    """What a piece of work gives, with a bar on a terminal; `first` is what it does first."""
    columns = TextColumn("{task.percentage:3.0f} %"), BarColumn(), TextColumn("{task.description}")
    try:
        with Bar(*columns, console=console(sys.stderr), transient=True) as bar:
            line = bar.add_task(first, total=1.0)
            job = Job(work, listener=lambda now: bar.update(line, completed=now.fraction, description=now.doing))
            return _result(job.start())
    except KeyboardInterrupt:
        print("stopped; nothing more was written", file=sys.stderr)
        sys.exit(STOPPED)
    except InputError as error:
        raise at_its_place(error, document) from None


def _result(job: Job):
    """Wait for the answer, so that Ctrl-C is heard at once."""
    try:
        while True:
            try:
                return job.result(0.2)
            except TimeoutError:
                if job.done:
                    raise
    finally:
        job.cancel()


def print_capture(report: CaptureReport, file: Path) -> None:
    """Print the answer; numbers never without their interval and the banner."""
    out, system = console(), report.system
    noted: set[tuple[str, str]] = set()
    for answer in report.answers:
        say(out, _whole(answer.sentence))
        new = [note for note in answer.notes if (answer.hood, note) not in noted]
        noted |= {(answer.hood, note) for note in new}
        for words in (*_details(answer, system), *new):
            say(out, _whole(f"{words[0].upper()}{words[1:].rstrip('.')}."), "    ", "  - ")
    out.print()
    out.print(_table(report))
    out.print()
    say(out, _whole(_definition(report)))
    say(out, f"Raw numbers: hoodwright capture {file} --json. The handbook: hoodwright assess {file}")


def _whole(text: str) -> str:
    """The text with every per cent kept on one line."""
    return SHARE.sub(lambda found: found.group().replace(" ", UNBROKEN), text).replace("± ", f"±{UNBROKEN}")


def _details(answer: CaptureAnswer, system: str) -> list[str]:
    """What stands below a sentence: openings, the handbook, why the two differ."""
    words = []
    for one in answer.openings:
        inward = f"inward through the {one.name}: {show(one.velocity, 'velocity', system)} by flow over open area"
        if one.computed is not None:
            inward += f", {show(one.computed, 'velocity', system)} computed"
        words.append(inward)
    if answer.spills:
        words.append(answer.spills)
    words.append(f"by the handbook{', there' if answer.moved else ''}: {answer.handbook}")
    if answer.differs:
        words.append(answer.differs)
    if answer.plume_limited:
        words.append("the stream brings more air than the hoods take")
    return words


def _table(report: CaptureReport) -> Table:
    """One line for each answer; long names fold."""
    units = {"distance": unit_label("length", report.system), "flow": unit_label("flow", report.system)}
    table = Table(box=None, pad_edge=False, padding=(0, 1, 0, 0), header_style="bold")
    for heading, width in HEADINGS:
        numbers = heading in units
        head = f"{heading}\n{units.get(heading, '')}"
        table.add_column(head, justify="right" if numbers else "left", overflow="fold", max_width=width)
    for answer in report.answers:
        distance, flow = (
            show_number(value, kind, report.system)
            for value, kind in ((answer.distance, "length"), (answer.flow, "flow"))
        )
        shares = (answer.shown if answer.told else "-", answer.shown_interval)
        claim = CAPTURED if answer.told else CANNOT
        row = (answer.source, answer.hood, distance, flow, *(_whole(share) for share in shares), claim)
        table.add_row(*row, answer.handbook.verdict.value)
    return table


def _definition(report: CaptureReport) -> str:
    system, told = report.system, [answer.definition for answer in report.answers]
    first, spread = told[0], told[0].spreads
    radii = sorted({one.escape_radius for one in told})
    far = show(radii[0], "length", system) + (f" to {show(radii[-1], 'length', system)}" if len(radii) > 1 else "")
    draught, flow, place, release = (
        f"± {show(value, kind, system, 2)}"
        for value, kind in (
            (spread.draught, "velocity"),
            (spread.flow, "share"),
            (spread.position, "length"),
            (spread.release, "share"),
        )
    )
    return (
        f"Computed air, {BANNER}. Lost: farther than {far} from the hood, or still in the air after "
        f"{first.time_limit:g} s. {first.realisations} times {first.particles} particles. The interval covers draught "
        f"({draught}), flow ({flow}), place ({place}), release ({release}), grid and sampling."
    )
