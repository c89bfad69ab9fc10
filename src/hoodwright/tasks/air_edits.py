"""Edits that come from the live air: a part dragged to another place, a flow and a draught that shall be kept.

Each takes a document and gives a new one; only the words that change are written, in the unit they had.
"""

import math

from hoodwright import units
from hoodwright.errors import InputError
from hoodwright.tasks.air.scene import UNREST
from hoodwright.tasks.edits import NUMBER, SAME_PLACE, Xyz, in_its_unit, moved_by
from hoodwright.workplace import Document
from hoodwright.workplace.model import Source
from hoodwright.workplace.tree import Path

DIGITS = 4


def moved_to(document: Document, name: str, place: Xyz) -> Document:
    """The document with the hood or source of this name dragged to a place; it is held inside the room.

    The place of a source is its centre; a line, box or path is shifted whole.
    """
    workplace = document.workplace()
    if not all(math.isfinite(number) for number in place):
        raise InputError(f"{name}: got the place {place}; three finite numbers are needed")
    for hood in workplace.hoods:
        if hood.name == name:
            return moved_by(document, name, _step(hood.at, place))
    found = next((source for source in workplace.sources if source.name == name), None)
    if found is None:
        known = [part.name for part in (*workplace.hoods, *workplace.sources)]
        raise InputError(f"no hood or source is named {name!r}; there is: {', '.join(known) or 'none'}")
    index = workplace.sources.index(found)
    step = _held(found, _step(found.centre, place), workplace.room.size)
    return _shifted(document, found, ("sources", index), step)


def with_live_air(
    document: Document, hood: str, flow: float | None = None, draught: Xyz | None = None, bearing: Xyz | None = None
) -> Document:
    """The document that says a flow [m3/s] of a hood and a draught [m/s]; None leaves what the file says.

    `bearing` is the way of a draught that has no speed.
    """
    workplace = document.workplace()
    names = [one.name for one in workplace.hoods]
    if hood not in names:
        raise InputError(f"no hood is named {hood!r}; there is: {', '.join(names) or 'none'}")
    if flow is not None:
        path: Path = ("hoods", names.index(hood), "intended_flow")
        document = document.set(path, _in_unit(document, path, _rounded(flow), "flow"))
    if draught is not None:
        document = _with_draught(document, draught, bearing)
    return document


def _with_draught(document: Document, draught: Xyz, bearing: Xyz | None) -> Document:
    told = document.workplace().room.draught
    speed = math.sqrt(sum(part * part for part in draught))
    way = (
        tuple(part / speed for part in draught) if speed > 0 else bearing or (told.towards if told else (1.0, 0.0, 0.0))
    )
    numbers: list = [_plain(part) for part in way]
    path: Path = ("room", "draught")
    if told is None:
        whole = {"towards": numbers, "speed": _speed(speed), "wander": _speed(UNREST)}  # as it was computed
        return document.set(path, whole)
    if math.dist(way, told.towards) > 1e-3:
        document = document.set((*path, "towards"), numbers)
    at: Path = (*path, "speed")
    if math.isclose(speed, told.speed, rel_tol=1e-6):
        return document
    return document.set(at, _in_unit(document, at, _rounded(speed), "velocity"))


def _in_unit(document: Document, path: Path, value: float, kind: str) -> str:
    """A value in the unit that the file has at this place, to four digits there."""
    typed = (document.words(path) or "").strip("\"' ")
    unit = NUMBER.sub("", typed, count=1).strip() or units.KINDS[kind].show[document.workplace().units]
    number = float(f"{units.to_unit(value, kind, unit):.{DIGITS}g}")
    return f"{units.write(units.parse(f'{number!r} {unit}', kind), kind, unit)}"


def _speed(value: float) -> str:
    return units.write(_rounded(value), "velocity", "m/s")


def _held(source: Source, step: Xyz, size: Xyz) -> Xyz:
    """A step that keeps every point of a source inside the room."""
    found = []
    for axis, limit in enumerate(size):
        places = [point[axis] for point in source.points]
        found.append(min(max(step[axis], -min(places)), limit - max(places)))
    return (found[0], found[1], found[2])


def _shifted(document: Document, source: Source, path: Path, step: Xyz) -> Document:
    """The document with each written point of a source moved by a step, each number in the unit it had."""
    key = source.place_key
    points = source.box or source.points
    paths: list[Path] = [(*path, key)] if key == "at" else [(*path, key, number) for number in range(len(points))]
    for point, at in zip(points, paths, strict=False):
        for axis in range(3):
            if abs(step[axis]) > SAME_PLACE:
                place: Path = (*at, axis)
                document = document.set(place, in_its_unit(document, place, point[axis] + step[axis], exact=False))
    return document


def _step(start: Xyz, end: Xyz) -> Xyz:
    return (end[0] - start[0], end[1] - start[1], end[2] - start[2])


def _rounded(value: float) -> float:
    return float(f"{value:.4g}")


def _plain(number: float) -> int | float:
    found = round(number, 4)
    return int(found) if found == int(found) else found
