"""Names of the parts of a workplace file: which are taken, where each stands, and a new name everywhere."""

from collections.abc import Iterator
from itertools import chain, count

from hoodwright.errors import InputError, WorkplaceError
from hoodwright.workplace import Document, Workplace
from hoodwright.workplace.items import data_of, with_key
from hoodwright.workplace.tree import Path

SECTIONS = ("people", "contaminants", "surfaces", "sources", "hoods", "ducts", "cleaners", "fans")
OUTSIDE = "outside"
ENDS = (("ducts",), ("from", "to"))
NAMED_BY: dict[str, tuple[tuple[Path, tuple[str, ...]], ...]] = {
    "contaminants": ((("sources",), ("contaminant",)),),
    "sources": ((("hoods",), ("serves",)),),
    "hoods": (ENDS, (("scenarios",), ("closed",))),
    "cleaners": (ENDS,),
    "fans": (ENDS,),
    "": (ENDS,),  # a point where ducts meet is told by its ducts alone
}


def names_of(workplace: Workplace) -> list[str]:
    """Every name that is taken: of parts, of openings of the room, and of the points where ducts meet."""
    ends = chain.from_iterable((duct.start, duct.to) for duct in workplace.ducts)
    openings = (opening.name for opening in workplace.room.openings)
    return list(dict.fromkeys([*parts_of(workplace), *openings, *ends, OUTSIDE]))


def free_name(workplace: Workplace, wish: str, *, numbered: bool = False) -> str:
    """The wish, or with the first number that is free: 'hood', 'hood 2'; numbered: 'J1', 'J2'."""
    taken = set(names_of(workplace))
    tries = (f"{wish}{i}" for i in count(1)) if numbered else chain([wish], (f"{wish} {i}" for i in count(2)))
    return next(name for name in tries if name not in taken)


def section_of(workplace: Workplace, name: str) -> tuple[str, int]:
    """The section of the file that has the part of this name, and its place there."""
    for section in SECTIONS:
        for index, part in enumerate(getattr(workplace, section)):
            if part.name == name:
                return section, index
    raise InputError(f"no part is named {name!r}; there is: {', '.join(parts_of(workplace)) or 'none'}")


def rename_part(document: Document, old: str, new: str) -> Document:
    """The document in which a part, or a point where ducts meet, has another name everywhere."""
    workplace, new = document.workplace(), new.strip()
    if new == old:
        return document
    if not new:
        raise InputError("got no name; type what people call it, for example 'bench nozzle'")
    if new in names_of(workplace):
        what = "means the open air" if new == OUTSIDE else "is a name in this file already"
        raise InputError(f"{new!r} {what}; choose another name")
    section = _kind_of(workplace, old)
    for path in list(_says(data_of(document), section, old)):
        document = document.set(path, new)
    if section == "ducts":
        for path in list(_dampers(data_of(document), old)):
            document = with_key(document, path, new)
    return sound(document)


def _kind_of(workplace: Workplace, name: str) -> str:
    """Its section; that of the openings of the room; or nothing for a point where ducts meet."""
    if name in (opening.name for opening in workplace.room.openings):
        return "room.openings"
    if name != OUTSIDE and name not in parts_of(workplace) and name in names_of(workplace):
        return ""
    return section_of(workplace, name)[0]


def parts_of(workplace: Workplace) -> list[str]:
    """Names of all parts, in the order of the sections."""
    return [part.name for section in SECTIONS for part in getattr(workplace, section)]


def sound(document: Document) -> Document:
    """The document, if it reads as a workplace; else InputError with its first fault."""
    try:
        document.workplace()
    except WorkplaceError as error:
        raise InputError(f"{error.faults[0].field}: {error.faults[0].message}") from None
    return document


def _says(data: dict, section: str, name: str) -> Iterator[Path]:
    """Every place that names the part."""
    if section:
        yield from _in(data, (*section.split("."),), ("name",), name)
    for path, keys in NAMED_BY.get(section, ()):
        yield from _in(data, path, keys, name)


def _in(data: dict, path: Path, keys: tuple[str, ...], name: str) -> Iterator[Path]:
    here: object = data
    for step in path:
        here = here.get(str(step)) if isinstance(here, dict) else None
    for index, item in enumerate(here if isinstance(here, list) else []):
        for key in keys:
            value = item.get(key)
            if isinstance(value, list):
                yield from ((*path, index, key, i) for i, one in enumerate(value) if str(one).strip() == name)
            elif value is not None and str(value).strip() == name:
                yield (*path, index, key)


def _dampers(data: dict, name: str) -> Iterator[Path]:
    """Every damper of a state of use that is told by its duct."""
    for index, one in enumerate(data.get("scenarios") or []):
        yield from (("scenarios", index, "dampers", key) for key in one.get("dampers") or {} if key.strip() == name)
