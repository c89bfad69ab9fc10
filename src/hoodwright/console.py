"""What the command line prints: a sentence first, then a table, then where to look next."""

import os
import sys
import textwrap
from pathlib import Path

from rich.console import Console
from rich.table import Table

from hoodwright.errors import InputError
from hoodwright.results import Outcome, Verdict
from hoodwright.tasks.assessment import Assessment, DuctAnswer, FanAnswer, HoodAnswer, JunctionAnswer
from hoodwright.units import show
from hoodwright.workplace import Document, Workplace

WIDTH, LEAST_WIDTH = 100, 60
ROOM_FOR_PLAIN = 6  # a line may grow by this where ± and ° are written as +/- and deg
MARKS = {Verdict.MEETS: "●", Verdict.SHORT: "△", Verdict.CANNOT_TELL: "◧"}
PLAIN_MARKS = {Verdict.MEETS: "[*]", Verdict.SHORT: "[/]", Verdict.CANNOT_TELL: "[?]"}


def console(file=None) -> Console:
    """A console no wider than 100 columns; colour only on a terminal."""
    file = file or sys.stdout
    width = max(LEAST_WIDTH, min(WIDTH, os.get_terminal_size().columns or WIDTH)) if file.isatty() else WIDTH
    return Console(file=file, width=width, highlight=False, markup=False, emoji=False, soft_wrap=False)


def say(out: Console, text: str, indent: str = "", first: str = "") -> None:
    """Print a paragraph; a number never parts from its unit, since only plain spaces are broken."""
    width = out.width if _shows_signs(out) else out.width - ROOM_FOR_PLAIN
    out.print(textwrap.fill(text, width, initial_indent=first or indent, subsequent_indent=indent), soft_wrap=True)


def print_answer(answer: Assessment, file: Path) -> None:
    """Print the whole answer of the assess job."""
    out = console()
    say(out, f"{answer.workplace}" + (f" - {answer.about}" if answer.about else ""))
    out.print()
    for hood in answer.hoods:
        _print_hood(out, hood, answer.system)
    out.print(_flows(answer))
    if answer.ducts:
        out.print()
        out.print(_ducts(answer.ducts, answer.system))
        _print_run(out, answer)
    out.print()
    out.print("Mind")
    for caution in answer.cautions:
        say(out, f"{caution.about}: {caution.text}.", "    ", "  - ")
    out.print()
    say(out, f"Equations and sources: hoodwright assess {file} --report answer.pdf  (or --json)")


def write_report(
    document: Document,
    workplace: Workplace,
    answer: Assessment,
    target: Path,
    paper: str = "a4",
    *,
    quiet: bool = False,
) -> None:
    """Write the PDF and say where it is."""
    from hoodwright.reports import assessment_pdf

    pdf = assessment_pdf(document, answer, workplace, paper={"a4": "a4", "letter": "us-letter"}[paper])
    try:
        target.write_bytes(pdf)
    except OSError as error:
        raise InputError(f"{target}: {(error.strerror or 'cannot be written').lower()}; choose another place") from None
    if not quiet:
        console().print(f"Report written: {target}")


def _mark(out: Console, verdict: Verdict) -> str:
    return MARKS[verdict] if _shows_signs(out) else PLAIN_MARKS[verdict]


def _shows_signs(out: Console) -> bool:
    return "utf" in (out.encoding or "ascii").lower()


def _print_hood(out: Console, hood: HoodAnswer, system: str) -> None:
    say(out, hood.sentence)
    for question, outcome in (("Is what was intended enough?", hood.enough), ("Is it met today?", hood.met)):
        say(out, f"{question} {_capital(outcome)}.", "    ", f"  {_mark(out, outcome.verdict)} ")
    if hood.suction is not None:
        suction, flow = show(hood.suction, "pressure", system), show(hood.design_flow, "flow", system)
        say(out, f"Hood suction {suction} at {flow}.", "    ", "  - ")
    for hint in hood.hints:
        say(out, f"What would help, {hint.change}: {hint.text}.", "    ", "  - ")
    out.print()


def _capital(outcome: Outcome) -> str:
    text = str(outcome)
    return text[0].upper() + text[1:]


def _table(*headings: tuple[str, str]) -> Table:
    table = Table(box=None, pad_edge=False, padding=(0, 2, 0, 0), header_style="bold")
    for heading, side in headings:
        table.add_column(heading, justify=side, overflow="fold")
    return table


def _flows(answer: Assessment) -> Table:
    table = _table(
        ("Hood", "left"), ("required", "right"), ("intended", "right"), ("commissioned", "right"), ("today", "right"),
        ("is it enough?", "left"), ("is it met?", "left"),
    )  # fmt: skip
    for hood in answer.hoods:
        needed = show(hood.worst.flow, "flow", answer.system)
        table.add_row(
            hood.name,
            needed if hood.worst.in_range else f"> {needed}",
            _maybe(hood.intended, "flow", answer.system),
            _maybe(hood.commissioned and hood.commissioned.value, "flow", answer.system),
            _maybe(hood.today and hood.today.value, "flow", answer.system),
            hood.enough.verdict.value,
            hood.met.verdict.value,
        )
    return table


def _maybe(value: float | None, kind: str, system: str) -> str:
    return "-" if value is None else show(value, kind, system)


def _ducts(ducts: tuple[DuctAnswer, ...], system: str) -> Table:
    table = _table(
        ("Duct", "left"), ("from", "left"), ("to", "left"), ("size", "left"), ("flow", "right"), ("velocity", "right"),
        ("at least", "right"), ("VP", "right"), ("SP at end", "right"),
    )  # fmt: skip
    for duct in ducts:
        table.add_row(
            duct.name,
            duct.start_from,
            duct.to,
            duct.size,
            show(duct.flow, "flow", system),
            show(duct.velocity, "velocity", system),
            show(duct.transport_velocity, "velocity", system),
            show(duct.velocity_pressure, "pressure", system),
            show(duct.static_pressure, "pressure", system),
        )
    return table


def _print_run(out: Console, answer: Assessment) -> None:
    for duct in answer.ducts:
        if duct.transport.verdict is Verdict.SHORT:
            say(out, f"{_mark(out, Verdict.SHORT)} {duct.name}: {duct.transport.because}.")
    for junction in answer.junctions:
        say(out, _junction(junction))
    for fan in answer.fans:
        say(out, _fan(fan, answer.system))


def _junction(junction: JunctionAnswer) -> str:
    return f"Junction {junction.name}: {junction.governing} governs, ratio {junction.ratio:.2f}; {junction.advice}."


def _fan(fan: FanAnswer, system: str) -> str:
    total, clean = show(fan.total_pressure, "pressure", system), show(fan.total_pressure_clean, "pressure", system)
    loaded = f"{total} total pressure"
    if fan.has_cleaners:
        loaded += f" with loaded cleaners ({clean} clean)"
    power = f"{show(fan.air_power, 'power', system)} air power, no efficiency given"
    if fan.power is not None:
        power = f"{show(fan.power, 'power', system)} at the shaft"
    return f"Fan {fan.name}: {show(fan.flow, 'flow', system)} at {loaded}, {power}."
