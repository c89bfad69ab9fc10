"""Writes a hood's duct of two sizes into a file: the duct ends in a cone, and a second one goes on from there."""

import math
from copy import deepcopy
from dataclasses import replace
from typing import Any

from hoodwright import units
from hoodwright.ducts.sizing.parts import CONE
from hoodwright.errors import HoodwrightError
from hoodwright.tasks.edits import in_its_unit
from hoodwright.workplace import Document
from hoodwright.workplace.document import as_yaml
from hoodwright.workplace.model import Duct, Workplace
from hoodwright.workplace.tree import read_tree

MILLIMETRES = 3  # decimals of a metre to which a length is cut


def with_two_sizes(document: Document, index: int, then: float, share: float) -> tuple[Document, str]:
    """The document whose duct keeps `share` of its length and is followed by one of the size `then`; and its name."""
    workplace = document.workplace()
    duct = workplace.ducts[index]
    narrow, cone = (_free(f"{duct.name} {word}", workplace) for word in ("narrow", "cone"))
    first = round(duct.length * share, MILLIMETRES)
    path = ("ducts", index)
    second = _second(document, index, narrow, cone, then, duct.length - first)
    document = document.set((*path, "length"), in_its_unit(document, (*path, "length"), first, exact=True))
    if duct.rise:
        rise = in_its_unit(document, (*path, "rise"), duct.rise * first / duct.length, exact=True)
        document = document.set((*path, "rise"), rise)
    document = document.set((*path, "to"), cone)
    if duct.joins_at is not None:
        document = document.remove((*path, "joins_at"))
    return _inserted(document, index + 1, second), narrow


def _second(document: Document, index: int, name: str, start: str, size: float, length: float) -> dict[str, Any]:
    """What the file says of the second duct, in the words of the first where they stay."""
    duct: Duct = document.workplace().ducts[index]
    path = ("ducts", index)

    def told(value: float, key: str) -> str:
        return in_its_unit(document, (*path, key), value, exact=True)

    said = {"name": name, "from": start, "to": duct.to, "round": told(size, "round"), "length": told(length, "length")}
    if duct.rise:
        said["rise"] = told(duct.rise * length / duct.length, "rise")
    said |= {
        key: words.strip("\"' ")
        for key in ("material", "joins_at", "temperature")
        if (words := document.words((*path, key)))
    }
    return said | {"taper": f"{CONE:g} deg"}


def _inserted(document: Document, at: int, item: dict[str, Any]) -> Document:
    """The document with one more duct, on a line of its own where the others have one."""
    tree = read_tree(document.text)
    wanted: Any = deepcopy(tree.data)
    wanted["ducts"].insert(at, item)
    before, text = tree.places[("ducts", at - 1)], document.text
    if tree.places[("ducts",)].inline:
        text = f"{text[: before.end]}, {as_yaml(item)}{text[before.end :]}"
    else:
        end = text.find("\n", max(before.end - 1, before.start))
        end = len(text) if end < 0 else end
        newline = "\r\n" if text[:end].endswith("\r") else "\n"
        end -= text[:end].endswith("\r")
        start = text.rfind("\n", 0, before.start) + 1
        dash = text[start : before.start].split("-")[0]
        text = f"{text[:end]}{newline}{dash}- {as_yaml(item)}{text[end:]}"
    found = read_tree(text)
    if found.faults or found.data != wanted:
        raise HoodwrightError(f"cannot write the duct {item['name']!r} into the file; add it by hand")
    return replace(document, text=text)


def _free(name: str, workplace: Workplace) -> str:
    """A name that no duct and no node has yet."""
    taken = {word for duct in workplace.ducts for word in (duct.name, duct.start, duct.to)}
    return name if name not in taken else next(f"{name} {n}" for n in range(2, 999) if f"{name} {n}" not in taken)


def split_words(name: str, first: float, then: float, length: float, share: float, system: str) -> str:
    """A duct of two sizes in a sentence."""
    wide, thin, part = (units.show(x, "length", system) for x in (first, then, round(length * share, MILLIMETRES)))
    return f"{name}: {wide} for the first {part}, then {thin} behind a cone of {CONE:g}°"


def same(a: float, b: float) -> bool:
    """Whether two sizes are one."""
    return math.isclose(a, b, rel_tol=1e-6)
