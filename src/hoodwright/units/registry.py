"""Our own Pint registry, and the units that words stand for."""

import re
from dataclasses import dataclass
from functools import cache, lru_cache
from importlib.resources import files
from typing import Any

from hoodwright.errors import UnitError

MOST_WORDS = 6  # of one unit

# Spellings with spaces, dots or signs, brought to the words of units.txt one after the other.
_PHRASES = [
    (re.compile(pattern, re.IGNORECASE), plain)
    for pattern, plain in (
        (r'^(?:in\.?|inch(?:es)?|")\s*(?:of\s*)?(?:w\.?\s?[gc]\.?|h2o|water(?: gauge| column)?)$', "in_wg"),
        (r"^(mm|cm)\s*(?:of\s*)?(?:w\.?\s?[gc]\.?|h2o|water(?: gauge| column)?)$", r"\1_wg"),
        (r"^(mm|in)\s+hg$", r"\1hg"),
        (r"^(?:°|deg\.?|degrees?)\s*([cf])(?:elsius|ahrenheit)?$", r"\1"),
        (r"\s+per\s+", "/"),
        (r"\b(?:sq\s|sq\.|square\s)\s*([a-z]+)", r"\g<1>2"),
        (r"\b(?:cu\s|cu\.|cubic\s)\s*([a-z]+)", r"\g<1>3"),
        (r"(?:\^|\*\*)(?=-?\d)", ""),
        (r"''|\"", "in"),
        ("'", "ft"),
        ("%", "percent"),
        ("°", "deg"),
    )
]


@dataclass(frozen=True)
class Unit:
    """What a unit is in SI: one step of it, its zero, its dimension, and its name in Pint."""

    factor: float
    offset: float
    dimension: str
    name: str


@cache
def _registry() -> Any:
    """Our own Pint registry; imported late, because Pint takes a tenth of a second."""
    from pint import UnitRegistry

    registry: Any = UnitRegistry(None)
    registry.load_definitions(files("hoodwright.units").joinpath("units.txt").read_text("utf-8").splitlines())
    return registry


class UnknownUnitError(UnitError):
    """A word that is no unit; `known_unit` adds what may have been meant."""


@cache
def words() -> dict[str, str]:
    """Every word for a unit, and the unit's name in Pint."""
    registry = _registry()
    return {word: registry.get_name(word) for word in registry if not word.startswith(("delta_", "Δ"))}


@cache
def _words_in_any_case() -> dict[str, str]:
    """The same in small letters, less those that would mean two things (mPa and MPa)."""
    names: dict[str, set[str]] = {}
    for word, name in words().items():
        names.setdefault(word.lower(), set()).add(name)
    return {word: min(found) for word, found in names.items() if len(found) == 1}


@lru_cache(maxsize=1000)
def unit_of(unit_text: str) -> Unit:
    """The unit of a text such as "m3/h" or "in w.g."; UnknownUnitError when a word in it is none."""
    registry = _registry()
    powers = _powers(unit_text)
    steps = registry.Unit("")
    for name, power in powers:
        delta = f"delta_{name}"
        steps *= registry.Unit(delta if delta in registry else name) ** power
    factor = registry.Quantity(1.0, steps).to_base_units().magnitude
    offset = 0.0
    if len(powers) == 1 and powers[0][1] == 1:
        offset = registry.Quantity(0.0, powers[0][0]).to_base_units().magnitude
    return Unit(factor, offset, str(steps.dimensionality), str(steps))


def _powers(unit_text: str) -> list[tuple[str, int]]:
    """Unit names and their powers: "kg/m3" is kilogram 1, meter -3."""
    plain = unit_text
    for pattern, replacement in _PHRASES:
        plain = pattern.sub(replacement, plain)
    over, *under = (re.split(r"[* ]+", group.strip()) for group in plain.split("/"))
    if len(over) + sum(map(len, under)) > MOST_WORDS:
        raise UnknownUnitError(unit_text)
    powers = [] if over in ([""], ["1"]) else [_factor(word) for word in over]
    return powers + [(name, -power) for group in under for name, power in map(_factor, group)]


def _factor(word: str) -> tuple[str, int]:
    """One word of a unit, with the power that follows it: "m3", "s-1", "Nm3"."""
    found = re.search(r"-?[1-4]$", word)
    bare, power = (word[: found.start()], int(found[0])) if found else (word, 1)
    for candidate, its_power in ((word, 1), (bare.rstrip("."), power)):
        if name := words().get(candidate) or _words_in_any_case().get(candidate.lower()):
            return name, its_power
    raise UnknownUnitError(word)
