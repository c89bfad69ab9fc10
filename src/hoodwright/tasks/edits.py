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
FINE_STEP = 3e-4  # m
SLOT_SHAPE = 10.0  # length over width of a slot that is made from another opening


def distance_along_axis(hood: Hood, source: Source) -> float:
    """How far ahead of the opening the source lies along the hood's axis [m]; behind it: negative."""
    return sum((s - h) * f for s, h, f in zip(source.farthest_from(hood.at), hood.at, hood.facing, strict=True))


def moved_to_distance(document: Document, hood: str, source: str, distance_m: float) -> Document:
    """The document with the hood moved along its own axis, until the source lies `distance_m` ahead of it."""
    if not distance_m > 0:
        raise InputError(f"got {distance_m:g} m; a hood stands more than 0 m from its source: give a positive distance")
    workplace = document.workplace()
    found = _hood(workplace.hoods, hood)
    step = distance_along_axis(found, workplace.source(source)) - distance_m
    target = _stepped(found.at, _scaled(found.facing, step))
    for name, place, limit in zip("xyz", target, workplace.room.size, strict=True):
        if not -SAME_PLACE <= place <= limit + SAME_PLACE:
            raise InputError(
                f"{_plain(distance_m)} would put the hood at {name} {_plain(place)}, outside the room "
                f"(0 to {_plain(limit)}); choose a distance that keeps it inside"
            )
    return _placed(document, found, target, exact=True)


def height_above(hood: Hood, source: Source) -> float:
    """How far the opening of a hood lies above a source's centre [m]; below it: negative."""
    return hood.at[2] - source.centre[2]


def moved_to_height(document: Document, hood: str, source: str, height_m: float) -> Document:
    """The document with the hood moved straight up or down, until its opening is `height_m` above the source."""
    if not height_m > 0:
        raise InputError(f"got {height_m:g} m; a canopy hangs more than 0 m above its source: give a positive height")
    workplace = document.workplace()
    found = _hood(workplace.hoods, hood)
    place, limit = workplace.source(source).centre[2] + height_m, workplace.room.size[2]
    if place > limit + SAME_PLACE:
        raise InputError(
            f"{_plain(height_m)} would put the hood at {_plain(place)}, above the room's {_plain(limit)}; "
            "choose a height that keeps it inside"
        )
    return _placed(document, found, (found.at[0], found.at[1], place), exact=True)


def moved_by(document: Document, hood: str, step: Xyz) -> Document:
    """The document with the hood moved by a step [m]; it is held inside the room, and written to a fine step."""
    workplace = document.workplace()
    found = _hood(workplace.hoods, hood)
    limits = workplace.room.size
    x, y, z = (min(max(a, 0.0), limit) for a, limit in zip(_stepped(found.at, step), limits, strict=True))
    return _placed(document, found, (x, y, z), exact=False)


def held_at_wall(document: Document, hood: str, step: Xyz) -> bool:
    """Whether a step would lead out of the room, so that the hood stops short."""
    workplace = document.workplace()
    target = _stepped(_hood(workplace.hoods, hood).at, step)
    sizes = zip(target, workplace.room.size, strict=True)
    return any(not -SAME_PLACE <= place <= limit + SAME_PLACE for place, limit in sizes)


def _placed(document: Document, hood: Hood, target: Xyz, *, exact: bool) -> Document:
    """The document with new coordinates where they differ, each in the unit it had."""
    index = document.workplace().hoods.index(hood)
    for axis, (old, new) in enumerate(zip(hood.at, target, strict=True)):
        if not math.isclose(old, new, abs_tol=SAME_PLACE):
            path = ("hoods", index, "at", axis)
            document = document.set(path, in_its_unit(document, path, new, exact=exact))
    return document


def _stepped(at: Xyz, step: Xyz) -> Xyz:
    return (at[0] + step[0], at[1] + step[1], at[2] + step[2])


def _plain(length: float) -> str:
    return units.show(length, "length", "SI").replace("\u2009", " ")


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


def in_its_unit(document: Document, path: Path, value: float, *, exact: bool) -> str:
    """A length in the unit that the file has at this place, to about a quarter of a millimetre unless exact."""
    unit = NUMBER.sub("", document.words(path) or "", count=1).strip("\"' ") or "m"
    if not exact:
        size = units.parse(f"1 {unit}", "length")
        places = max(0, math.ceil(math.log10(size / FINE_STEP)))
        value = round(value / size, places) * size
    return units.write(0.0 if abs(value) < SAME_PLACE else value, "length", unit)


def _scaled(a: Xyz, factor: float) -> Xyz:
    return (a[0] * factor, a[1] * factor, a[2] * factor)


def with_shape(document: Document, hood: str, shape: str) -> Document:
    """The document whose hood has a round, rectangular or slot opening; its size is taken over as written."""
    index = [h.name for h in document.workplace().hoods].index(hood)
    path: Path = ("hoods", index, "opening")
    if document.words((*path, shape)):
        return document
    size = _first_said(document, path) or "100 mm"
    sides = {"round": size, "rectangle": [size, size], "slot": [_times(size, SLOT_SHAPE), size]}
    return document.set(path, {shape: sides[shape]})


def _first_said(document: Document, path: Path) -> str | None:
    """Diameter, width of a rectangle or width of a slot, as the file says it."""
    found = (document.words((*path, *key)) for key in (("round",), ("rectangle", 0), ("slot", 1)))
    return next((words.strip("\"' ") for words in found if words), None)


def _times(size: str, factor: float) -> str:
    unit = NUMBER.sub("", size, count=1).strip() or "m"
    return units.write(units.parse(size, "length") * factor, "length", unit)
