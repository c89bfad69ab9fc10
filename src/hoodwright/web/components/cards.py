"""One card a duct, a junction, a fan: what it does, what it costs, and the lines to recompute it."""

from hoodwright import units
from hoodwright.results import Caution
from hoodwright.tasks.assessment import DuctAnswer, FanAnswer, JunctionAnswer
from hoodwright.web.components.equations import lines_table
from hoodwright.web.components.outcomes import caution_note
from hoodwright.web.components.words import Words, block, mark


def duct_card(duct: DuctAnswer, cautions: tuple[Caution, ...], system: str) -> None:
    """Flow, velocity against transport velocity, pressures, and the losses line by line."""
    with _card(duct.name, f"Duct from {duct.start_from} to {duct.to}, {duct.size}"):
        with block("p", f"verdict {duct.transport.verdict.name.lower()}"):
            mark(duct.transport.verdict)
            Words("span", f"It carries {duct.carries}: {duct.transport}")
        with block("dl", "numbers"):
            _number("flow", duct.flow, "flow", system)
            _number("velocity", duct.velocity, "velocity", system)
            _number("transport velocity, at least", duct.transport_velocity, "velocity", system)
            _number("velocity pressure", duct.velocity_pressure, "pressure", system)
            _number("static pressure at the start", duct.static_pressure_start, "pressure", system)
            _number("static pressure at the end", duct.static_pressure, "pressure", system)
        _recompute(duct.lines)
        _cautions(duct.name, cautions)


def junction_card(junction: JunctionAnswer, cautions: tuple[Caution, ...], system: str) -> None:
    """Which side governs, how far apart the others are, and what the hand method advises."""
    with _card(junction.name, f"Junction; {junction.governing} governs, it needs the most suction"):
        Words("p", f"Ratio of static pressures {junction.ratio:.2f}: {junction.advice}.", "sentence")
        with block("dl", "numbers"):
            for name, pressure in junction.pressures:
                _number(f"static pressure of {name}", pressure, "pressure", system)
            for name, flow in junction.corrected:
                _number(f"corrected flow of {name}", flow, "flow", system)
        Words("p", f"[{junction.source}]", "because")
        _cautions(junction.name, cautions)


def fan_card(fan: FanAnswer, cautions: tuple[Caution, ...], system: str) -> None:
    """What the fan must do, with loaded and with clean cleaners."""
    with _card(fan.name, "Fan; what it must do at the intended flows"):
        with block("dl", "numbers"):
            _number("flow", fan.flow, "flow", system)
            if fan.has_cleaners:
                _number("total pressure, cleaners loaded", fan.total_pressure, "pressure", system)
                _number("total pressure, cleaners clean", fan.total_pressure_clean, "pressure", system)
            else:
                _number("total pressure", fan.total_pressure, "pressure", system)
            _number("fan static pressure", fan.static_pressure, "pressure", system)
            _number("air power", fan.air_power, "power", system)
            if fan.power is not None:
                _number("shaft power", fan.power, "power", system)
        _recompute(fan.lines)
        _cautions(fan.name, cautions)


def _card(title: str, about: str):
    card = block("article", "card")
    with card:
        Words("h2", title)
        Words("p", about, "because")
    return card


def _number(name: str, value: float, kind: str, system: str) -> None:
    with block("div"):
        Words("dt", name)
        Words("dd", units.show(value, kind, system)).props["title"] = f"{value!r} {units.KINDS[kind].si_unit}"


def _recompute(lines) -> None:
    with block("details"):
        Words("summary", "Line by line")
        lines_table(lines)


def _cautions(about: str, cautions: tuple[Caution, ...]) -> None:
    for caution in cautions:
        if caution.about == about:
            caution_note(caution)
