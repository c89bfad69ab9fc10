"""The only place that knows units: text with a unit in, SI floats out, and back.

The units themselves are listed in units.txt. Inside hoodwright every number is SI.
"""

from hoodwright.units.kinds import KINDS, SYSTEMS, Kind
from hoodwright.units.reading import StandardFlow, parse, parse_standard_flow
from hoodwright.units.writing import show, show_number, to_unit, understood, unit_label, write

__all__ = [
    "KINDS",
    "SYSTEMS",
    "Kind",
    "StandardFlow",
    "parse",
    "parse_standard_flow",
    "show",
    "show_number",
    "to_unit",
    "understood",
    "unit_label",
    "write",
]
