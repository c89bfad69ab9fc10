"""SI floats in, text with a unit out: for the eye, for columns, and for the file."""

import math
import re
from decimal import Decimal

from hoodwright.errors import UnitError
from hoodwright.units.kinds import KINDS, SYSTEMS, Kind
from hoodwright.units.meaning import known_unit, offset, to_si
from hoodwright.units.reading import parse
from hoodwright.units.registry import unit_of
from hoodwright.units.text import spaced

THIN_SPACE = "\u2009"
WRITTEN_TO = 1e-9  # relative: what `write` may lose


def show(value: float, kind: str, system: str, digits: int = 3) -> str:
    """The value with its unit for the eye; large values in the larger unit of their kind."""
    unit_text = _fitting_unit(value, KINDS[kind], system)
    return _join(_shown(value, kind, unit_text, digits), _label(unit_text), THIN_SPACE)


def show_number(value: float, kind: str, system: str, digits: int = 3) -> str:
    """The number alone, always in the unit that `unit_label` names: for columns and axes."""
    return _shown(value, kind, KINDS[kind].show[system], digits)


def unit_label(kind: str, system: str) -> str:
    """The unit of a column or a form field, for the eye: "m³/h", "in wg", "°C"."""
    return _label(KINDS[kind].show[system])


def to_unit(value: float, kind: str, unit_text: str) -> float:
    """The number that an SI value is in another unit of the same kind."""
    wanted = KINDS[kind]
    unit = known_unit(spaced(unit_text), wanted)
    if unit.dimension != unit_of(wanted.si_unit).dimension:
        raise UnitError(f"{unit_text} is not a unit of {kind}; use for example {wanted.show['SI']}")
    return (value - offset(unit, wanted)) / unit.factor


def write(value: float, kind: str, unit_or_system: str) -> str:
    """Plain text that `parse` reads back to within 1e-9, in as few digits as that takes."""
    wanted = KINDS[kind]
    _refuse_unreal(value, kind)
    unit_text = unit_or_system
    if unit_or_system in SYSTEMS:
        unit_text = _fitting_unit(value, wanted, unit_or_system)
    number = to_unit(value, kind, unit_text)
    unit = known_unit(spaced(unit_text), wanted)
    for digits in range(18):
        text = _number_text(number, digits) if digits else "0"
        if abs(to_si(float(text), unit, wanted) - value) <= WRITTEN_TO * abs(value):
            return _join(text, unit_text, " ")
    return _join(repr(float(value)), wanted.si_unit, " ")


def _shown(value: float, kind: str, unit_text: str, digits: int) -> str:
    number = to_unit(value, kind, unit_text)
    _refuse_unreal(number, kind)
    if kind == "temperature":
        number = round(number, 6)  # its zero is far from 0 K, where rounding noise would show
    return _number_text(number, digits)


def _refuse_unreal(value: float, kind: str) -> None:
    if not math.isfinite(value):
        raise UnitError(f"{kind} {value} is not a number that can be shown")


def _fitting_unit(value: float, kind: Kind, system: str) -> str:
    units = [kind.show, *(units for start, units in kind.larger if abs(value) >= start)]
    return units[-1][system]


def _number_text(number: float, digits: int) -> str:
    """`digits` significant digits without closing zeros; powers of ten only far from everyday sizes."""
    rounded = Decimal(f"{number:.{digits}g}")
    if not rounded:
        return "0"
    if -6 <= rounded.adjusted() < 12:
        return format(rounded.normalize(), "f")
    return re.sub(r"E\+?", "e", f"{rounded.normalize():E}")


def _label(unit_text: str) -> str:
    """A unit for the eye: m3/h becomes m³/h."""
    raised = re.sub(r"(?<=[a-z])[23]", lambda found: "²³"[int(found[0]) - 2], unit_text)
    return re.sub(r"^deg", "°", raised)


def _join(number: str, unit_text: str, space: str) -> str:
    return f"{number}{space}{unit_text}" if unit_text else number


def understood(text: object, kind: str, system: str) -> str:
    """What a field understood, in the user's system and the other: "320 m³/h = 188 cfm"."""
    value = parse(text, kind)
    other = "US" if system == "SI" else "SI"
    return " = ".join(dict.fromkeys([show(value, kind, system), show(value, kind, other)]))
