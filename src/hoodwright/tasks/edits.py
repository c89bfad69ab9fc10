"""Edits of a workplace file as people ask for them: nearer, a little to the left, today's reading.

Each takes a document and gives a new one; only the words that change are written, in the unit they had.
"""

import math
import re

from hoodwright import units
from hoodwright.errors import InputError
from hoodwright.workplace import Document
from hoodwright.workplace.model import Hood, Source
from hoodwright.workplace.tree import Path, read_tree

Xyz = tuple[float, float, float]

NUMBER = re.compile(r"[-+]?[0-9.]+(?:[eE][-+]?[0-9]+)?\s*")
SAME_PLACE = 1e-9


def distance_along_axis(hood: Hood, source: Source) -> float:
    """How far ahead of the opening the source lies along the hood's axis [m]; behind it: negative."""
    return sum((s - h) * f for s, h, f in zip(source.at, hood.at, hood.facing, strict=True))


def moved_to_distance(document: Document, hood: str, source: str, distance_m: float) -> Document:
    """The document with the hood moved along its own axis, until the source lies `distance_m` ahead of it."""
    if not distance_m > 0:
        raise InputError(f"got {distance_m:g} m; a hood stands more than 0 m from its source: give a positive distance")
    workplace = document.workplace()
    found = _hood(workplace.hoods, hood)
    step = distance_along_axis(found, workplace.source(source)) - distance_m
    return moved_by(document, hood, _scaled(found.facing, step))


def moved_by(document: Document, hood: str, step: Xyz) -> Document:
    """The document with the hood moved by a step [m]; it is held inside the room."""
    workplace = document.workplace()
    found = _hood(workplace.hoods, hood)
    limits = workplace.room.size
    target = [min(max(a + s, 0.0), limit) for a, s, limit in zip(found.at, step, limits, strict=True)]
    index = workplace.hoods.index(found)
    for axis, (old, new) in enumerate(zip(found.at, target, strict=True)):
        if not math.isclose(old, new, abs_tol=SAME_PLACE):
            path = ("hoods", index, "at", axis)
            document = document.set(path, _in_its_unit(document, path, new))
    return document


def with_text(document: Document, path: Path, text: str) -> Document:
    """The document that says `text` at a path; a group that is not there yet is added with it."""
    value: str | dict = text
    places = read_tree(document.text).places
    while len(path) > 1 and path[:-1] not in places:
        path, value = path[:-1], {str(path[-1]): value}
    return document.set(path, value)


def _hood(hoods: tuple[Hood, ...], name: str) -> Hood:
    found = next((hood for hood in hoods if hood.name == name), None)
    if found is None:
        raise InputError(f"no hood is named {name!r}; there is: {', '.join(h.name for h in hoods) or 'none'}")
    return found


def _in_its_unit(document: Document, path: Path, value: float) -> str:
    """A length in the unit that the file has at this place."""
    unit = NUMBER.sub("", document.words(path) or "", count=1).strip("\"' ") or "m"
    return units.write(0.0 if abs(value) < SAME_PLACE else value, "length", unit)


def _scaled(a: Xyz, factor: float) -> Xyz:
    return (a[0] * factor, a[1] * factor, a[2] * factor)


def with_shape(document: Document, hood: str, shape: str) -> Document:
    """The document whose hood has a round or rectangular opening; its size is taken over as written."""
    index = [h.name for h in document.workplace().hoods].index(hood)
    path: Path = ("hoods", index, "opening")
    if document.words((*path, shape)):
        return document
    size = document.words((*path, "round")) or document.words((*path, "rectangle", 0)) or "100 mm"
    size = size.strip("\"' ")
    return document.set(path, {"round": size} if shape == "round" else {"rectangle": [size, size]})
