"""An error of the computed air, told at its place in the workplace file."""

from typing import Any

from hoodwright.errors import Fault, InputError, WorkplaceError
from hoodwright.workplace import Document
from hoodwright.workplace.giving_off import PLACES
from hoodwright.workplace.tree import Path, Tree, read_tree

OF_THE_DRAUGHT = {"draught": "speed", "wander": "wander", "turbulence": "turbulence", "size of an eddy": "eddy"}
OF_THE_FLOW = ("it draws no air", "flow ", "face velocity")


def at_its_place(error: InputError, document: Document) -> InputError:
    """The same error with file, line and field, where its first words name a part of the file or the draught."""
    if isinstance(error, WorkplaceError):
        return error
    tree, text = read_tree(document.text), str(error)
    found = _named(text, tree.data) or _of_the_draught(text, tree)
    if found is None:
        return error
    path, message = found
    fault = tree.fault(path, message)
    return WorkplaceError([Fault(fault.line, fault.column, fault.field, message, str(document.path or "workplace"))])


def _named(text: str, data: Any) -> tuple[Path, str] | None:
    """The part whose name begins the message, and the rest of the message."""
    parts = [*_parts(data, "sources"), *_parts(data, "hoods"), *_parts(data, "surfaces"), *_parts(data, "people")]
    parts += _parts(data, "room", "openings")
    for path, part in sorted(parts, key=lambda found: -len(str(found[1].get("name")))):
        name = str(part.get("name")).strip()
        if text.startswith(f"{name}: "):
            message = text[len(name) + 2 :]
            return (*path, *_key(path, part, message)), message
    return None


def _parts(data: Any, *way: str) -> list[tuple[Path, dict]]:
    for step in way:
        data = data.get(step) if isinstance(data, dict) else None
    return [((*way, n), part) for n, part in enumerate(data or []) if isinstance(part, dict)]


def _key(path: Path, part: dict, message: str) -> Path:
    """The key that a message about a part speaks of."""
    if path[0] == "sources":
        return tuple(key for key in PLACES if key in part)[:1]
    if path[0] == "hoods" and message.startswith(OF_THE_FLOW):
        return tuple(key for key in ("today", "intended_flow") if key in part)[:1]
    return ("at",) if "at" in part else ()


def _of_the_draught(text: str, tree: Tree) -> tuple[Path, str] | None:
    key = next((key for words, key in OF_THE_DRAUGHT.items() if text.startswith(f"{words} ")), None)
    path: Path = ("room", "draught", str(key))
    return (path, text) if key and path in tree.places else None
