"""Whole parts of a workplace as people add them and take them away: a source, a hood, and what they give off.

Each takes a document and gives a new one that reads as a workplace, or raises InputError in words. Ducts, fans and
cleaners are in `duct_parts`, what is taken away in `part_removal`.
"""

from hoodwright.errors import InputError
from hoodwright.tasks.part_names import free_name, rename_part, sound
from hoodwright.tasks.part_places import free_place, hood_at, source_at
from hoodwright.tasks.part_removal import goes_with, remove_part
from hoodwright.workplace import Document, Workplace
from hoodwright.workplace.items import with_item
from hoodwright.workplace.model import Source

__all__ = [
    "CONTAMINANT_KINDS",
    "HOOD_KINDS",
    "SOURCE_KINDS",
    "add_contaminant",
    "add_hood",
    "add_source",
    "goes_with",
    "remove_part",
    "rename_part",
]

SOURCE_KINDS = {
    "point": "small work in one place",
    "line": "a seam or an edge",
    "area": "a bench, a vessel or a pile",
    "tank": "an open tank of liquid",
    "hot": "hot work: its air rises",
    "wheel": "a wheel that throws what it grinds off",
}
HOOD_KINDS = {
    "capturing": "beside the work: it draws in what is given off",
    "receiving": "above the work, or where its stream goes",
    "enclosing": "round the work: a cabinet or a booth",
}
CONTAMINANT_KINDS = ("dust", "fume", "mist", "vapour", "gas", "smoke")
SOURCE_NAMES = {"point": "work", "line": "seam", "area": "bench work", "tank": "tank", "hot": "hot work"}
HOOD_NAMES = {"capturing": "hood", "receiving": "canopy", "enclosing": "enclosure"}


def add_contaminant(document: Document, kind: str) -> Document:
    """The document with one more thing that can be given off, named after its kind."""
    _known(kind, CONTAMINANT_KINDS, "what is given off")
    item = {"name": free_name(document.workplace(), kind), "kind": kind}
    return sound(with_item(document, "contaminants", item))


def add_source(document: Document, kind: str, contaminant: str | None = None) -> Document:
    """The document with one more source, at bench height and apart from the others.

    It gives off the contaminant of that name, or a new one where that is a kind; by default the first of the file.
    """
    _known(kind, SOURCE_KINDS, "source")
    workplace = document.workplace()
    names = [one.name for one in workplace.contaminants]
    asked = contaminant or (names[0] if names else "fume")
    if asked not in names:
        document = add_contaminant(document, asked)
        asked = document.workplace().contaminants[-1].name
        workplace = document.workplace()
    item = {"name": free_name(workplace, SOURCE_NAMES.get(kind, kind)), "contaminant": asked}
    item |= source_at(free_place(workplace), kind, workplace.room.size)
    return sound(with_item(document, "sources", item))


def add_hood(document: Document, kind: str, near: str | None = None) -> Document:
    """The document with one more hood, for the source of that name; by default the first that has none."""
    _known(kind, HOOD_KINDS, "hood")
    workplace = document.workplace()
    source = _source(workplace, near)
    word = "hood" if kind == "receiving" and (source.wheel or source.throws) else HOOD_NAMES[kind]
    item = {"name": free_name(workplace, f"{source.name} {word}"), "type": kind, "serves": [source.name]}
    return sound(with_item(document, "hoods", item | hood_at(source, kind, workplace)))


def _source(workplace: Workplace, name: str | None) -> Source:
    if not workplace.sources:
        raise InputError("a hood serves a source, and there is none yet; add a source first")
    if name is None:
        served = {one for hood in workplace.hoods for one in hood.serves}
        return next((s for s in workplace.sources if s.name not in served), workplace.sources[0])
    found = next((source for source in workplace.sources if source.name == name), None)
    if found is None:
        raise InputError(f"no source is named {name!r}; there is: {', '.join(s.name for s in workplace.sources)}")
    return found


def _known(kind: str, kinds, what: str) -> None:
    if kind not in kinds:
        raise InputError(f"got {kind!r} as {what}; choose one of: {', '.join(kinds)}")
