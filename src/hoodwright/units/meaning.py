"""The unit that was meant: known, close to a known one, or of another kind of quantity."""

import difflib

from hoodwright.errors import UnitError
from hoodwright.units.kinds import KINDS, Kind
from hoodwright.units.registry import Unit, UnknownUnitError, unit_of, words

# Reference temperature [K] of each standard volume, by its name in units.txt; the pressure is one.
_REFERENCES = {
    "normal_": (273.15, "0 degC"),
    "standard_cubic_meter": (288.15, "15 degC"),
    "standard_cubic_foot": (294.2611111111111, "70 degF (21.1 degC)"),
}
REFERENCE_PRESSURE = 101325.0

# Words that look like units and are none, with what to do instead.
_EXPLAINED = {
    **dict.fromkeys(("ppm", "ppb"), "it depends on the molar mass of the substance; write mg/m3"),
    **dict.fromkeys(
        ("std", "stp", "ntp", "standard", "norm", "normal", "slpm", "sccm"),
        "its reference conditions are not told; write Nm3/h (0 degC), Sm3/h (15 degC) or scfm (70 degF)",
    ),
}


def named_unit(plain: str, number: str, unit_text: str, kind: Kind) -> Unit:
    """The unit that was typed, or the one that a bare number stands for."""
    if not unit_text and not kind.bare:
        raise UnitError(f"{plain} has no unit; write for example {number} {kind.show['SI']}")
    if not unit_text and kind.name == "share" and abs(float(number)) > 1:
        raise UnitError(f"{plain} has no unit and is above 1; write {number} % or a fraction such as 0.45")
    try:
        return known_unit(unit_text or kind.si_unit, kind)
    except UnitError as error:
        raise UnitError(f"{plain}: {error}") from None


def known_unit(unit_text: str, kind: Kind) -> Unit:
    try:
        return unit_of(unit_text)
    except UnknownUnitError as error:
        raise UnitError(f"unit {unit_text} is not known; {_meant(str(error), kind)}") from None


def _meant(word: str, kind: Kind) -> str:
    """What to do about an unknown word: the closest known one, or an example."""
    if word.lower() in _EXPLAINED:
        return _EXPLAINED[word.lower()]
    known = [known for known in words() if "_" not in known]
    close = [known for known in known if known.lower() == word.lower()]
    for group in (list(kind.show.values()), [unit for unit in known if _measures(unit, kind)], known):
        close = close or difflib.get_close_matches(word, group, n=1)
    return f"did you mean {' or '.join(sorted(close))}?" if close else f"write for example {kind.example}"


def _measures(word: str, kind: Kind) -> bool:
    """Whether a unit is one of this kind of quantity."""
    return unit_of(word).dimension == unit_of(kind.si_unit).dimension


def to_si(number: float, unit: Unit, kind: Kind) -> float:
    return number * unit.factor + offset(unit, kind)


def offset(unit: Unit, kind: Kind) -> float:
    return unit.offset if kind.name == "temperature" else 0.0


def reference(unit: Unit) -> tuple[float, str]:
    """Reference temperature of a standard flow: in kelvin, and in words."""
    return next(reference for name, reference in _REFERENCES.items() if name in unit.name)


def other_kind(plain: str, unit_text: str, unit: Unit, wanted: Kind) -> str:
    """Why a quantity of another kind is refused."""
    needed = f"{_a(wanted.name)} is needed"
    same = [kind for kind in KINDS.values() if unit_of(kind.si_unit).dimension == unit.dimension]
    if not same:
        return f"{plain} is no quantity used here; {needed}, for example {wanted.example}"
    shown = [kind for kind in same if unit_text in kind.show.values()]
    found = (shown or same)[0].name
    if (found, wanted.name) == ("standard flow", "flow"):
        return (
            f"{plain} is a standard flow, counted at {reference(unit)[1]} and {REFERENCE_PRESSURE:.0f} Pa; "
            "a flow at actual conditions is needed: convert it to the temperature and pressure of the air "
            f"there and write for example {wanted.example}"
        )
    return f"{plain} is {_a(found)}; {needed}, for example {wanted.example}"


def _a(noun: str) -> str:
    return f"{'an' if noun[0] in 'aeiou' else 'a'} {noun}"
