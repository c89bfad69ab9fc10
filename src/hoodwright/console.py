"""What the command line prints: a sentence first, then a table, then where to look next."""

import os
import sys
import textwrap
from pathlib import Path

from rich.cells import cell_len
from rich.console import Console
from rich.table import Table

from hoodwright.errors import InputError
from hoodwright.results import Caution, Verdict
from hoodwright.tasks.assessment import Assessment, DuctAnswer, FanAnswer, HoodAnswer, JunctionAnswer, SourceNeed
from hoodwright.tasks.caution_groups import grouped
from hoodwright.tasks.today import is_computed
from hoodwright.units import show, show_number, unit_label
from hoodwright.workplace import Document, Workplace

WIDTH, LEAST_WIDTH = 100, 60
ROOM_FOR_PLAIN = 6  # a line may grow by this where ± and ° are written as +/- and deg
MARKS = {Verdict.MEETS: "●", Verdict.SHORT: "△", Verdict.CANNOT_TELL: "◧"}
PLAIN_MARKS = {Verdict.MEETS: "[*]", Verdict.SHORT: "[/]", Verdict.CANNOT_TELL: "[?]"}


def console(file=None) -> Console:
    """A console no wider than 100 columns; colour only on a terminal."""
    file = file or sys.stdout
    columns = os.get_terminal_size(file.fileno()).columns if file.isatty() else WIDTH
    width = max(LEAST_WIDTH, min(WIDTH, columns or WIDTH))
    return Console(file=file, width=width, highlight=False, markup=False, emoji=False, soft_wrap=False)


def say(out: Console, text: str, indent: str = "", first: str = "") -> None:
    """Print a paragraph; a number never parts from its unit, since only plain spaces are broken."""
    width = out.width if _shows_signs(out) else out.width - ROOM_FOR_PLAIN
    width -= min(cell_len(text) - len(text), out.width // 2)  # letters that take two columns
    out.print(textwrap.fill(text, width, initial_indent=first or indent, subsequent_indent=indent), soft_wrap=True)


def print_answer(answer: Assessment, file: Path) -> None:
    """Print the whole answer of the assess job."""
    out = console()
    say(out, f"{answer.workplace}" + (f" - {answer.about}" if answer.about else ""))
    out.print()
    for hood in answer.hoods:
        _print_hood(out, hood, answer.system)
    out.print(_flows(answer))
    computed = [hood for hood in answer.hoods if hood.today is not None and is_computed(hood.today)]
    if computed:
        how = computed[0].today.source  # type: ignore[union-attr]
        say(out, f"* {how}; a flow read on site would stand instead. More: hoodwright ducts {file}")
    if answer.ducts:
        out.print()
        out.print(_ducts(answer.ducts, answer.system))
        _print_run(out, answer)
    print_cautions(out, answer.cautions)
    out.print()
    say(out, f"Equations and sources: hoodwright assess {file} --report answer.pdf  (or --json)")


def print_cautions(out: Console, cautions: tuple[Caution, ...]) -> None:
    """What to mind, by what it is about."""
    if not cautions:
        return
    out.print()
    out.print("Mind")
    for about, group in grouped(cautions).items():
        if len(group) == 1:
            say(out, f"{about}: {group[0].text}.", "    ", "  ")
            continue
        say(out, f"{about}:", "    ", "  ")
        for caution in group:
            say(out, f"{_capital(caution.text)}.", "      ", "    - ")


def write_report(
    document: Document,
    workplace: Workplace,
    answer: Assessment,
    target: Path,
    paper: str | None = None,
    *,
    quiet: bool = False,
) -> None:
    """Write the PDF and say where it is."""
    from hoodwright.reports import assessment_pdf

    pdf = assessment_pdf(document, answer, workplace, paper=paper_for(paper, answer.system))
    save_report(pdf, target, quiet=quiet)


def paper_for(wanted: str | None, system: str) -> str:
    """The paper of a PDF: as wanted, else what is usual where the units are."""
    return {"a4": "a4", "letter": "us-letter"}[wanted or ("letter" if system == "US" else "a4")]


def save_report(pdf: bytes, target: Path, *, quiet: bool) -> None:
    """Write a PDF and say where it is."""
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
        say(out, f"{question} {_capital(str(outcome))}.", "    ", f"  {_mark(out, outcome.verdict)} ")
    for need in hood.needs:
        say(out, _asked(need, system), "    ", "  - ")
    if hood.openings:
        say(out, _inward(hood, system), "    ", "  - ")
    if hood.suction is not None:
        suction, flow = show(hood.suction, "pressure", system), show(hood.design_flow, "flow", system)
        say(out, f"Hood suction {suction} at {flow}.", "    ", "  - ")
    for hint in hood.hints:
        air = f" Make-up air {show(hint.make_up_air.value, 'flow', system)}." if hint.make_up_air else ""
        say(out, f"What would help, {hint.change}: {hint.text}.{air}", "    ", "  - ")
    out.print()


def _asked(need: SourceNeed, system: str) -> str:
    asked = show(need.capture_velocity, "velocity", system)
    words = f"For the {need.source}: {need.velocity_kind} {asked}, {need.basis}."
    if len(need.laws) > 1:
        share = show(need.spread, "share", system, 2)
        words += f" {len(need.laws)} equations hold; the least demanding asks {share} less than the one that rules."
    elif need.untold:
        words += f" No equation is used: {need.untold}."
    return words


def _inward(hood: HoodAnswer, system: str) -> str:
    """How fast the air goes in through the openings of an enclosure."""
    first = hood.openings[0]
    names = [o.name if o.count == 1 else f"{o.count} x {o.name}" for o in hood.openings]
    through = f"the {names[0]}" if len(names) == 1 else f"{', '.join(names[:-1])} and {names[-1]}"
    flow = show(hood.design_flow, "flow", system)
    words = f"Inward through {through}: {show(first.velocity, 'velocity', system)} at {flow}"
    if hood.today is not None and first.velocity_today is not None:
        today = show(hood.today.value, "flow", system)
        words += f", {show(first.velocity_today, 'velocity', system)} at today's {today}"
    return f"{words}."


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]


def _table(*headings: tuple[str, str]) -> Table:
    """Numbers and sizes keep to one line; names fold where there is no room."""
    table = Table(box=None, pad_edge=False, padding=(0, 2, 0, 0), header_style="bold")
    for heading, side in headings:
        table.add_column(heading, justify=side, overflow="fold", no_wrap=side == "right" or heading.startswith("size"))  # type: ignore[arg-type]
    return table


def _flows(answer: Assessment) -> Table:
    unit = unit_label("flow", answer.system)
    table = _table(
        ("Hood\n", "left"),
        *((f"{words}\n{unit}", "right") for words in ("required", "intended", "commissioned", "today")),
        ("is it enough?\n", "left"),
        ("is it met?\n", "left"),
    )
    for hood in answer.hoods:
        table.add_row(
            hood.name,
            _required(hood.worst, answer.system),
            _maybe(hood.intended, "flow", answer.system),
            _maybe(hood.commissioned.value if hood.commissioned else None, "flow", answer.system),
            _maybe(hood.today.value if hood.today else None, "flow", answer.system) + _marked(hood),
            hood.enough.verdict.value,
            hood.met.verdict.value,
        )
    return table


def _marked(hood: HoodAnswer) -> str:
    return " *" if hood.today is not None and is_computed(hood.today) else ""


def _required(need: SourceNeed, system: str) -> str:
    needed = show_number(need.flow, "flow", system)
    if need.in_range:
        return needed
    return f"> {needed}" if need.bound.least > 0 else "unknown"


def _maybe(value: float | None, kind: str, system: str) -> str:
    return "-" if value is None else show_number(value, kind, system)


DUCT_NUMBERS = (
    ("flow", "flow"), ("velocity", "velocity"), ("at least", "velocity"), ("VP", "pressure"), ("SP at end", "pressure"),
)  # fmt: skip


def _ducts(ducts: tuple[DuctAnswer, ...], system: str) -> Table:
    heads = [(f"{words}\n{unit_label(kind, system)}", "right") for words, kind in DUCT_NUMBERS]
    table = _table(("Duct\n", "left"), ("from\n", "left"), ("to\n", "left"), ("size\n", "left"), *heads)
    for duct in ducts:
        values = (duct.flow, duct.velocity, duct.transport_velocity, duct.velocity_pressure, duct.static_pressure)
        numbers = (show_number(v, kind, system) for v, (_, kind) in zip(values, DUCT_NUMBERS, strict=True))
        table.add_row(duct.name, duct.start_from, duct.to, duct.size, *numbers)
    return table


def _print_run(out: Console, answer: Assessment) -> None:
    for duct in answer.ducts:
        if duct.transport.verdict is Verdict.SHORT:
            say(out, f"{_mark(out, Verdict.SHORT)} {duct.name}: {duct.transport.because}.")
    for junction in answer.junctions:
        _print_junction(out, junction)
    for fan in answer.fans:
        say(out, _fan(fan, answer.system))


def _print_junction(out: Console, junction: JunctionAnswer) -> None:
    words = f"Junction {junction.name}: {junction.governing} governs, ratio {junction.ratio:.2f}; {junction.advice}."
    say(out, words)
    for side in junction.sides:
        for way in side.words:
            say(out, f"{side.name}, {way}.", "    ", "  - ")


def _fan(fan: FanAnswer, system: str) -> str:
    total, clean = show(fan.total_pressure, "pressure", system), show(fan.total_pressure_clean, "pressure", system)
    loaded = f"{total} total pressure"
    if fan.has_cleaners:
        loaded += f" with loaded cleaners ({clean} clean)"
    power = f"{show(fan.air_power, 'power', system)} air power, no efficiency given"
    if fan.power is not None:
        power = f"{show(fan.power, 'power', system)} at the shaft"
    return f"Fan {fan.name}: {show(fan.flow, 'flow', system)} at {loaded}, {power}."
