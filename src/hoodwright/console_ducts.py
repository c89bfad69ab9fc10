"""What the command line prints of the ductwork as built: a sentence, tables, then what to mind."""

from pathlib import Path

from rich.console import Console
from rich.table import Table

from hoodwright.console import console, print_cautions, say
from hoodwright.tasks.as_built.answers import BuiltAnswer, BuiltFan
from hoodwright.tasks.as_built.report import DuctReport
from hoodwright.tasks.as_built.states import ScenarioAnswer
from hoodwright.tasks.sections import NEVER_SETTLES
from hoodwright.units import show, show_number, unit_label

NOTHING = 0.01  # Pa: less is rounding
DUCT_HEADS = (
    ("flow", "flow"),
    ("velocity", "velocity"),
    ("at least", "velocity"),
    ("SP start", "pressure"),
    ("SP end", "pressure"),
    ("TP end", "pressure"),
    ("loss", "pressure"),
)


def print_ducts(report: DuctReport, file: Path) -> None:
    """Print the whole report."""
    out, answer = console(), report.answer
    say(out, report.sentence)
    if answer.left_out:
        names = ", ".join(answer.left_out)
        say(out, f"Not computed, since their fan has no curve: {names}.")
    out.print()
    out.print(_hoods(report))
    out.print()
    out.print(_ducts(answer))
    say(out, "Pressures are gauge, suction negative: SP static, TP total. The network balances total pressure.")
    _print_junctions(out, answer)
    for fan in answer.fans:
        out.print()
        _print_fan(out, fan, answer)
    _print_states(out, report)
    _print_setting(out, report)
    print_cautions(out, answer.cautions)
    out.print()
    say(out, f"Every number in SI: hoodwright ducts {file} --json  (with dirty filters: --dirty)")


def _table(*heads: tuple[str, str]) -> Table:
    table = Table(box=None, pad_edge=False, padding=(0, 2, 0, 0), header_style="bold")
    for head, side in heads:
        table.add_column(head, justify=side, overflow="fold", no_wrap=side == "right")  # type: ignore[arg-type]
    return table


def _hoods(report: DuctReport) -> Table:
    system = report.answer.system
    flow, pressure = unit_label("flow", system), unit_label("pressure", system)
    heads = [f"intended\n{flow}", f"clean\n{flow}", f"dirty\n{flow}", "share now\n%", f"suction\n{pressure}"]
    table = _table(("Hood\n", "left"), *((head, "right") for head in heads))
    for hood in report.answer.hoods:
        flows = (hood.intended, report.window.clean.hood(hood.name).flow, report.window.dirty.hood(hood.name).flow)
        shown = [show_number(q, "flow", system) for q in flows]
        shown[0] += "" if hood.stated else " *"
        suction = show_number(hood.suction, "pressure", system)
        table.add_row(hood.name, *shown, show_number(hood.share, "share", system), suction)
    if not all(hood.stated for hood in report.answer.hoods):
        table.caption, table.caption_justify = "* needed; no flow is intended in the file", "left"
    return table


def _ducts(answer: BuiltAnswer) -> Table:
    system = answer.system
    heads = [(f"{words}\n{unit_label(kind, system)}", "right") for words, kind in DUCT_HEADS]
    table = _table(("Duct\n", "left"), ("from\n", "left"), *heads)
    for duct in answer.ducts:
        pressures = (duct.static_pressure_start, duct.static_pressure, duct.total_pressure, duct.loss)
        values = (duct.flow, duct.velocity, duct.transport_velocity, *pressures)
        numbers = [_number(v, kind, system) for v, (_, kind) in zip(values, DUCT_HEADS, strict=True)]
        numbers[2] = "-" if duct.carries in NEVER_SETTLES else numbers[2]
        table.add_row(duct.name, duct.start, *numbers)
    return table


def _number(value: float, kind: str, system: str) -> str:
    return show_number(0.0 if kind == "pressure" and abs(value) < NOTHING else value, kind, system)


def _print_junctions(out: Console, answer: BuiltAnswer) -> None:
    if answer.junctions:
        worst = max(answer.junctions, key=lambda junction: abs(junction.imbalance))
        by = "the balance of momentum" if answer.law == "momentum" else "the hand method's table"
        say(
            out,
            f"{len(answer.junctions)} junction{'s' * (len(answer.junctions) > 1)}, by {by}; what arrives differs from "
            f"what leaves by {abs(worst.imbalance):.1g} kg/s at most.",
        )


def _print_fan(out: Console, fan: BuiltFan, answer: BuiltAnswer) -> None:
    system = answer.system
    flow, total = show(fan.flow, "flow", system), show(fan.total_pressure, "pressure", system)
    text = f"Fan {fan.name}: {flow} at {total} total pressure, {_power(fan, system)}."
    if fan.margin is not None:
        text += f" The motor has {show(max(fan.margin, 0.0), 'share', system)} of its rating left."
    if fan.energy is not None:
        text += f" {fan.energy:,.0f} kWh a year" + _cost(fan, answer) + "."
    say(out, text)
    for point in fan.points:
        stays = "stable" if point.stable else "not stable: it runs away from there"
        where = "runs here" if point.runs else "could run here"
        flow, total = show(point.flow, "flow", system), show(point.total_pressure, "pressure", system)
        say(out, f"operating point {flow}, {total}: {stays}; {where}", "    ", "  - ")


def _power(fan: BuiltFan, system: str) -> str:
    if fan.shaft_power is None:
        return f"{show(fan.air_power, 'power', system)} air power, no efficiency given"
    return f"{show(fan.shaft_power, 'power', system)} at the shaft"


def _cost(fan: BuiltFan, answer: BuiltAnswer) -> str:
    return "" if fan.cost is None else f", {fan.cost:,.0f} {answer.currency or 'at the price given'}"


def _print_states(out: Console, report: DuctReport) -> None:
    out.print()
    say(out, f"{report.window.words}.")
    shown = (*report.scenarios, *(one for one in report.gates if one.settling))
    for one in shown:
        _print_scenario(out, one, report.answer.system)
    if report.gates and not any(one.settling for one in report.gates):
        say(out, "With any one hood shut every duct still keeps what it carries moving.")


def _print_scenario(out: Console, one: ScenarioAnswer, system: str) -> None:
    open_hoods = [hood for hood in one.answer.hoods if hood.name not in one.closed]
    hoods = ", ".join(f"{hood.name} {show(hood.flow, 'flow', system)}" for hood in open_hoods)
    mains = ", ".join(f"{duct.name} {show(duct.velocity, 'velocity', system)}" for duct in one.mains)
    slow = ", ".join(duct.name for duct in one.settling)
    text = f"{one.name}: {hoods}; mains {mains}." if mains else f"{one.name}: {hoods}."
    text += f" Too slow for what it carries: {slow}." if slow else ""
    say(out, text, "    ", "  - ")


def _print_setting(out: Console, report: DuctReport) -> None:
    out.print()
    if report.balancing is None:
        say(out, "Balancing: no position of the dampers was found that serves all hoods alike.")
    else:
        say(out, f"Balancing: {report.balancing.words}.")
        for number, step in enumerate(report.balancing.steps, 1):
            say(out, f"{step.words}.", "     ", f"  {number}. ")
    out.print()
    out.print("Airflow indicators, hood suction")
    for one in report.indicators:
        say(out, f"{one.hood}: {one.words}.", "    ", "  - ")
