"""Text with a unit in, SI floats out."""

import math
import re
from dataclasses import dataclass

from hoodwright.errors import UnitError
from hoodwright.units.kinds import KINDS
from hoodwright.units.meaning import REFERENCE_PRESSURE, named_unit, other_kind, reference, to_si
from hoodwright.units.registry import unit_of
from hoodwright.units.text import plain_text, split


@dataclass(frozen=True)
class StandardFlow:
    """A flow as typed, at the reference conditions of its own unit [m3/s, K, Pa]."""

    flow: float
    temperature: float
    p_abs: float


def parse(text: object, kind: str) -> float:
    """The SI value of a text such as "320 m3/h"; UnitError says what is wrong and what to write.

    A standard flow is returned at 0 degC and 101325 Pa; `parse_standard_flow` keeps it as typed.
    """
    wanted = KINDS[kind]
    plain = plain_text(text, wanted)
    number, unit_text = split(plain, wanted)
    unit = named_unit(plain, number, unit_text, wanted)
    if unit.dimension != unit_of(wanted.si_unit).dimension:
        raise UnitError(other_kind(plain, unit_text, unit, wanted))
    value = to_si(float(number), unit, wanted)
    vanished = float(number) * unit.factor == 0 and re.match("[+-]?[0.]*[1-9]", number)
    if vanished or not math.isfinite(value):
        raise UnitError(f"{plain} is beyond any number that can be used; check its exponent")
    if kind == "temperature" and value < 0:
        raise UnitError(f"{plain} is below absolute zero (-273.15 degC); check the sign and the unit")
    return value


def parse_standard_flow(text: object) -> StandardFlow:
    """A standard flow at the reference conditions of its own unit (Nm3/h, Sm3/h or scfm)."""
    normal_flow = parse(text, "standard flow")
    wanted = KINDS["standard flow"]
    temperature, _ = reference(unit_of(split(plain_text(text, wanted), wanted)[1]))
    return StandardFlow(normal_flow * temperature / 273.15, temperature, REFERENCE_PRESSURE)
