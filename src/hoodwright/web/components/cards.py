"""One card a duct, a junction, a fan: what it does, what it costs, and the lines to recompute it."""

from hoodwright import units
from hoodwright.errors import UnitError
from hoodwright.results import Caution
from hoodwright.tasks.assessment import AirAnswer, DuctAnswer, FanAnswer, JunctionAnswer, Line, Material, SideAdvice
from hoodwright.web.components.equations import lines_list
from hoodwright.web.components.outcomes import caution_note
from hoodwright.web.components.words import Words, block, mark, table

OTHER_AIR_K = 0.5  # K, from which a duct's air is told apart from the room's


def duct_card(duct: DuctAnswer, cautions: tuple[Caution, ...], system: str, air: AirAnswer) -> None:
    """Flow, velocity against transport velocity, pressures, and the losses line by line."""
    with _card(duct.name, f"Duct from {duct.start_from} to {duct.to}, {duct.size}"):
        with block("p", f"verdict {duct.transport.verdict.name.lower()}"):
            mark(duct.transport.verdict)
            Words("span", f"It carries {duct.carries}: {duct.transport}")
        with block("dl", "numbers"):
            _number("flow", duct.flow, "flow", system)
            _number("velocity", duct.velocity, "velocity", system)
            _number("velocity pressure", duct.velocity_pressure, "pressure", system)
            if abs(duct.temperature - air.temperature) > OTHER_AIR_K:
                _number("temperature", duct.temperature, "temperature", system)
                _number("density", duct.density, "density", system)
        ledger(duct, system)
        _recompute(duct.lines)
        _cautions(duct.name, cautions)


def ledger(duct: DuctAnswer, system: str) -> None:
    """What is lost before the duct, its static pressure at the start, every loss on the way, and that at the end."""
    losses = [
        (name, loss) for name, loss in map(_loss, duct.lines) if loss is not None and name[:2] not in ("VP", "SP")
    ]
    with block("dl", "ledger"):
        for name, loss in losses:
            if _stands_before(name):
                _row(name, loss, system)
        _row("static pressure at the start", duct.static_pressure_start, system, "total")
        for name, loss in losses:
            if not _stands_before(name):
                _row(name, loss, system)
        _row("static pressure at the end", duct.static_pressure, system, "total")


def _stands_before(name: str) -> bool:
    """Whether a loss happens where the air comes from: behind a junction, in a cleaner, in the hood's filter."""
    return name == "acceleration" or name.endswith(", dirty")


def _loss(line: Line) -> tuple[str, float | None]:
    """Name and pascals of a line that ends in a pressure; None where it ends in something else."""
    result = line.filled.rpartition(" = ")[2]
    name = line.formula.partition(" = ")[0]
    try:
        return name, units.parse(result, "pressure") if result.endswith(" Pa") else None
    except UnitError:
        return name, None


def _row(name: str, pressure: float, system: str, classes: str = "") -> None:
    with block("div", classes):
        Words("dt", name)
        Words("dd", units.show(pressure, "pressure", system)).props["title"] = f"{pressure!r} Pa"


def junction_card(junction: JunctionAnswer, cautions: tuple[Caution, ...], system: str) -> None:
    """Which side governs, how far apart the others are, and what the hand method advises."""
    with _card(junction.name, f"Junction; {junction.governing} governs, it needs the most suction"):
        Words("p", f"Ratio of static pressures {junction.ratio:.2f}: {junction.advice}.", "sentence")
        with block("dl", "numbers"):
            for name, pressure in junction.pressures:
                _number(f"static pressure of {name}", pressure, "pressure", system)
            for name, flow in junction.corrected:
                _number(f"corrected flow of {name}", flow, "flow", system)
        for side in junction.sides:
            _side(side)
        if junction.editions_differ:
            Words("p", junction.editions_differ, "because")
        Words("p", f"[{junction.source}]", "because")
        _cautions(junction.name, cautions)


def _side(side: SideAdvice) -> None:
    """A side with less suction than the governing one, and the ways to bring it up, one a row."""
    Words("h3", f"{side.name}, ratio {side.ratio:.2f}: {side.advice}")
    with block("dl", "ways"):
        for words in side.words:
            way, _, rest = words.partition(": ")
            with block("div"):
                Words("dt", way)
                Words("dd", rest)
    _recompute(side.lines)


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
            _number("fan static pressure at standard density", fan.static_pressure_standard, "pressure", system)
            _number("air power", fan.air_power, "power", system)
            if fan.power is not None:
                _number("shaft power", fan.power, "power", system)
            if fan.motor_power is not None:
                _number("motor power, with belt loss", fan.motor_power, "power", system)
        _recompute(fan.lines)
        _cautions(fan.name, cautions)


def materials_list(materials: tuple[Material, ...], system: str) -> None:
    """What the ductwork is made of, to be ordered; closed until it is asked for."""
    with block("details", "materials"):
        Words("summary", "List of materials")
        with table(["what", "size", "make", "count", "length", "sheet"], "lines"):
            for line in materials:
                with block("tr"):
                    Words("td", line.item)
                    Words("td", "" if line.size is None else units.show(line.size, "length", system))
                    Words("td", line.make)
                    Words("td", str(line.count))
                    Words("td", "" if line.length is None else units.show(line.length, "length", system))
                    Words("td", "" if line.sheet is None else units.show(line.sheet, "area", system))


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
        lines_list(lines)


def _cautions(about: str, cautions: tuple[Caution, ...]) -> None:
    for caution in cautions:
        if caution.about == about:
            caution_note(caution)
