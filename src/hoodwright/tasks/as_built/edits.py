"""Keeps in the file what was tried with the ducts: dampers, the speed of a fan, and gates as a state of use."""

from typing import Any

from hoodwright import units
from hoodwright.errors import InputError
from hoodwright.tasks.as_built.live import Tried
from hoodwright.tasks.edits import NUMBER
from hoodwright.workplace import Document
from hoodwright.workplace.model import Fan
from hoodwright.workplace.tree import read_tree

DIGITS = 4
OPEN = 1e-9
STATE = "kept from the page"


def kept(document: Document, tried: Tried) -> Document:
    """The document that says what is tried; how dirty the filters are stays with the page."""
    workplace = document.workplace()
    ducts = [duct.name for duct in workplace.ducts]
    for name, loss in tried.dampers.items():
        document = _with_damper(document, ducts.index(name), loss)
    for index, fan in enumerate(workplace.fans):
        if fan.name in tried.speeds:
            document = _with_speed(document, index, fan, tried.speeds[fan.name])
    return _with_state(document, tried)


def not_kept(tried: Tried) -> str:
    """What the file has no place for, as a sentence."""
    return "" if tried.load == 1.0 else "How dirty the filters are is not in the file: it says clean and dirty only."


def _with_damper(document: Document, index: int, loss: float) -> Document:
    path = ("ducts", index, "fittings")
    fittings = _said(document, path) or []
    value = _number(loss)
    dampers = [i for i, one in enumerate(fittings) if isinstance(one, dict) and {"damper", "damper_loss"} & one.keys()]
    if not dampers:
        return document if loss < OPEN else document.set(path, [*fittings, {"damper_loss": value}])
    for i in dampers[1:]:
        document = document.set((*path, i), {"damper_loss": 0})
    at = (*path, dampers[0])
    return (
        document.set((*at, "damper_loss"), value)
        if "damper_loss" in fittings[dampers[0]]
        else _instead(document, at, fittings[dampers[0]], value)
    )


def _instead(document: Document, path: tuple, fitting: dict, value: float) -> Document:
    """A damper that was given in pascals, as velocity pressures."""
    rest = {key: said for key, said in fitting.items() if key != "damper"}
    return document.set(path, rest | {"damper_loss": value})


def _with_speed(document: Document, index: int, fan: Fan, share: float) -> Document:
    if fan.speed is None:
        raise InputError(
            f"the file does not say at which speed the curve of the {fan.name} was taken, so another one cannot be "
            "kept; add 'speed' to the fan, from its sheet"
        )
    path = ("fans", index, "runs_at")
    typed = document.words(path) or document.words(("fans", index, "speed")) or ""
    unit = NUMBER.sub("", typed.strip("\"' "), count=1).strip()
    number = float(f"{units.to_unit(fan.speed * share, 'speed of rotation', unit):.{DIGITS}g}")
    return document.set(path, f"{number:g} {unit}")


def _with_state(document: Document, tried: Tried) -> Document:
    """Gates of hoods as a state of use; those of ducts as dampers that are shut."""
    if not tried.closed:
        return document
    workplace = document.workplace()
    hoods = {duct.name: duct.start for duct in workplace.ducts}
    names = {hood.name for hood in workplace.hoods}
    shut = {hoods.get(name, name) for name in tried.closed}
    if not shut <= names:
        word = ", ".join(sorted(name for name in tried.closed if hoods.get(name, name) not in names))
        raise InputError(f"a main that is shut is no state of use: open {word} first, or give it a damper")
    path = ("scenarios",)
    said = document.words(path) or ""
    if "#" in said:
        raise InputError("the states of use in the file have comments between them; add this one by hand")
    states = _said(document, path) or []
    taken = {one.name for one in workplace.scenarios}
    name = next(name for name in (STATE, *(f"{STATE} {i}" for i in range(2, 999))) if name not in taken)
    return document.set(path, [*states, {"name": name, "closed": sorted(shut)}])


def _said(document: Document, path: tuple) -> Any:
    """What the file says at a path, as data; None where it says nothing."""
    here: Any = read_tree(document.text).data
    for step in path:
        if isinstance(here, dict) and step not in here:
            return None
        here = here[step]
    return here


def _number(value: float) -> int | float:
    found = float(f"{value:.{DIGITS}g}")
    return int(found) if found == int(found) else found
