"""What the command line prints of the process guide: a sentence, a table or one process, then where to look next."""

from rich.console import Console
from rich.table import Table

from hoodwright.console import console, say
from hoodwright.tasks.guide import (
    CAPTURE_SOURCE,
    TRANSPORT_SOURCE,
    GuideEntry,
    Statement,
    in_a_sentence,
    record_years,
    speeds,
    statement,
)

HEADINGS = ("Process", "gives off", "release", "hood, first choice", "capture", "ducts")


def print_entries(entries: tuple[GuideEntry, ...], words: str, system: str) -> None:
    """Print a list of processes."""
    out = console()
    about = f" with the words {words!r}" if words else ""
    say(out, f"The process guide has {len(entries)} processes{about}; the first hood named is the one to try first.")
    out.print()
    table = Table(box=None, pad_edge=False, padding=(0, 2, 0, 0), header_style="bold")
    for heading in HEADINGS:
        table.add_column(heading, overflow="fold")
    for found in entries:
        capture, transport = speeds(found, system)
        first = found.hoods[0]
        table.add_row(found.process, found.kind, found.release, f"{first.type}: {first.form}", capture, transport)
    out.print(table)
    out.print()
    example = entries[0].process
    say(out, f'One process with reasons and sources: hoodwright guide "{example}"  (or --json)')
    say(out, f'A file to start from: hoodwright new work.yaml --process "{example}"')


def print_entry(found: GuideEntry, system: str) -> None:
    """Print one process with every statement and its source."""
    out = console()
    say(out, in_a_sentence(found, system))
    capture, transport = speeds(found, system)
    say(out, f"Release {found.release}: {capture} [{CAPTURE_SOURCE}].", "    ", "  - ")
    say(out, f"Ducts, {found.transport}: {transport} [{TRANSPORT_SOURCE}].", "    ", "  - ")
    _list(out, "Why", (*found.why_hazards, *found.why_hoods))
    _list(out, "Mind", (statement("always.order"), *found.cautions))
    _list(out, "Refused", found.refusals)
    out.print()
    out.print("Examination")
    for one in found.intervals:
        say(out, f"{one.text}; {one.condition} [{one.citation}]", "    ", "  - ")
    say(out, f"UK: its record is kept for {record_years('UK')} years [coshh-2002, reg. 9(4)]", "    ", "  - ")
    for key in ("examination.us", "examination.elsewhere"):
        _say(out, statement(key))
    out.print()
    say(out, f'A file to start from: hoodwright new work.yaml --process "{found.process}"')


def _list(out: Console, title: str, statements: tuple[Statement, ...]) -> None:
    if statements:
        out.print()
        out.print(title)
        for one in statements:
            _say(out, one)


def _say(out: Console, one: Statement) -> None:
    say(out, f"{one.said} [{one.citation}]", "    ", "  - ")
