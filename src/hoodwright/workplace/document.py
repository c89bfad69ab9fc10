"""A workplace file being edited: only the edited words change, every comment stays.

A Document is never changed: an edit gives a new one, so undo is a list of documents.
"""

import hashlib
import json
import os
import re
import tempfile
from copy import deepcopy
from dataclasses import dataclass, replace
from functools import lru_cache
from pathlib import Path as FilePath
from typing import Any

from hoodwright.errors import FileConflict, HoodwrightError, InputError
from hoodwright.workplace.model import Workplace
from hoodwright.workplace.read import parse_workplace, read_text
from hoodwright.workplace.removal import without_key
from hoodwright.workplace.tree import Path, Place, Tree, read_tree

PLAIN = re.compile(r"[A-Za-z0-9][A-Za-z0-9 ./²³µ%°()^_-]*(?<! )")
KEY_WORDS = {"true", "false", "null", "yes", "no", "on", "off"}


def checksum(text: str) -> str:
    """SHA-256 of a document's text, as reports and pages print it."""
    return hashlib.sha256(text.encode("utf-8")).hexdigest()


@dataclass(frozen=True)
class Document:
    """Text of a workplace file, where it lies, and the checksum it had there when read."""

    text: str
    path: FilePath | None = None
    checksum_on_disk: str | None = None

    @classmethod
    def open(cls, path: str | FilePath) -> "Document":
        """Read a file; faults of its content are reported by `workplace`."""
        text = read_text(path)
        return cls(text, FilePath(path), checksum(text))

    @property
    def checksum(self) -> str:
        """SHA-256 of the text as it stands now."""
        return checksum(self.text)

    @property
    def edited(self) -> bool:
        """Whether the text differs from what was read from or saved to the file."""
        return self.checksum != self.checksum_on_disk

    def workplace(self) -> Workplace:
        """The model; WorkplaceError carries all faults."""
        return parse_workplace(self.text, file=str(self.path or "workplace"))

    def words(self, path: Path) -> str | None:
        """What the file says at a path, as typed; None where it says nothing."""
        place = _places(self.text).get(path)
        return self.text[place.start : place.end].strip() if place else None

    def set(self, path: Path, value: str | int | float | bool | list | dict) -> "Document":
        """A document that says `value` at `path`; a missing last key is added, nothing else is touched."""
        tree = read_tree(self.text)
        if tree.faults:
            raise InputError(f"the file has faults; mend them first: {tree.faults[0]}")
        place = tree.places.get(path)
        text = self._replaced(place, value) if place else self._added(tree, path, value)
        changed = replace(self, text=text)
        if not _says_only(changed, tree, path, value):
            raise HoodwrightError(f"cannot write {value!r} at {tree.label(path)}; edit the file by hand there")
        return changed

    def remove(self, path: Path) -> "Document":
        """A document that says nothing at `path`; comments stay, and a group that holds nothing else goes with it."""
        tree = read_tree(self.text)
        if tree.faults:
            raise InputError(f"the file has faults; mend them first: {tree.faults[0]}")
        while path in tree.keys and len(_at(tree.data, path[:-1])) == 1:
            path = path[:-1]
        if path not in tree.keys:
            raise InputError(f"{tree.label(path)}: the file says nothing there that could be removed by itself")
        wanted = deepcopy(tree.data)
        del _at(wanted, path[:-1])[path[-1]]
        changed = replace(self, text=without_key(self.text, tree, path))
        left = read_tree(changed.text)
        if left.faults or left.data != wanted:
            raise HoodwrightError(f"cannot remove {tree.label(path)}; edit the file by hand there")
        return changed

    def save(self, path: str | FilePath | None = None, *, overwrite: bool = False) -> "Document":
        """Write the text; FileConflict when the file on disk is not the one that was read."""
        target = FilePath(path) if path else self.path
        if target is None:
            raise InputError("no file name; say where to save")
        if not overwrite and self.changed_on_disk(target):
            happened = "changed on disk since it was read" if target == self.path else "exists already"
            reload = "reload it, " if target == self.path else ""
            raise FileConflict(
                f"{target} {happened}; nothing was written: {reload}save under another name, or overwrite on purpose"
            )
        try:
            _write_whole(target.resolve(), self.text)
        except OSError as error:
            reason = (error.strerror or "cannot be written").lower()
            raise InputError(f"{target}: {reason}; choose another place") from None
        return replace(self, path=target, checksum_on_disk=self.checksum)

    def changed_on_disk(self, target: FilePath | None = None) -> bool:
        """Whether the file differs from what was read (a file that is gone has not changed)."""
        target = target or self.path
        if target is None or not target.exists():
            return False
        if self.path is None or target.resolve() != self.path.resolve():
            return True
        return checksum(read_text(target)) != self.checksum_on_disk

    def _replaced(self, place: Place, value) -> str:
        old = self.text[place.start : place.end]
        tail = old[len(old.rstrip()) :]
        space = "" if old else " "
        return self.text[: place.start] + space + as_yaml(value) + tail + self.text[place.end :]

    def _added(self, tree: Tree, path: Path, value) -> str:
        parent = tree.places.get(path[:-1])
        here = _at(tree.data, path[:-1]) if parent else None
        if parent is None or not isinstance(here, dict) or not here:
            raise InputError(f"{tree.label(path)}: its group is not in the file; add the group by hand first")
        entry = f"{path[-1]}: {as_yaml(value)}"
        last = tree.places[(*path[:-1], list(here)[-1])]
        if parent.inline:
            return f"{self.text[: last.end]}, {entry}{self.text[last.end :]}"
        line_end = self.text.find("\n", max(last.end - 1, last.start))
        line_end = len(self.text) if line_end < 0 else line_end
        newline = "\r\n" if "\r\n" in self.text else "\n"
        line_end -= self.text[:line_end].endswith("\r")
        indent = " " * (tree.keys[(*path[:-1], next(iter(here)))].column - 1)
        return f"{self.text[:line_end]}{newline}{indent}{entry}{self.text[line_end:]}"


def as_yaml(value) -> str:
    """A value as YAML on one line, quoted only where it must be."""
    if isinstance(value, dict):
        return "{" + ", ".join(f"{key}: {as_yaml(item)}" for key, item in value.items()) + "}"
    if isinstance(value, list | tuple):
        return "[" + ", ".join(as_yaml(item) for item in value) + "]"
    if isinstance(value, bool | int | float):
        return json.dumps(value)
    plain = PLAIN.fullmatch(value) and value.lower() not in KEY_WORDS and not _is_number(value)
    return value if plain else json.dumps(value, ensure_ascii=False)


@lru_cache(maxsize=16)
def _places(text: str) -> dict[Path, Place]:
    """Where everything stands in a text; a page asks for many words of the same one."""
    return read_tree(text).places


@lru_cache(maxsize=1024)
def _is_number(text: str) -> bool:
    data: Any = read_tree(f"a: {text}").data
    return not isinstance(data, dict) or not isinstance(data["a"], str)


def _at(data: Any, path: Path) -> Any:
    for step in path:
        data = data[step]
    return data


def _says_only(document: Document, before: Tree, path: Path, value) -> bool:
    """Whether the new text says `value` at `path`, and all else as before (an alias would change two places)."""
    tree, wanted = read_tree(document.text), deepcopy(before.data)
    _at(wanted, path[:-1])[path[-1]] = list(value) if isinstance(value, tuple) else value
    return not tree.faults and tree.data == wanted


def _write_whole(target: FilePath, text: str) -> None:
    """Replace the file in one step, so that a crash leaves the old or the new text, never half of one."""
    handle, name = tempfile.mkstemp(dir=target.parent, prefix=f".{target.name}.")
    try:
        with os.fdopen(handle, "w", encoding="utf-8", newline="") as file:
            file.write(text)
        if target.exists():
            os.chmod(name, target.stat().st_mode & 0o777)
        else:
            os.chmod(name, 0o644)
        os.replace(name, target)
    except BaseException:
        FilePath(name).unlink(missing_ok=True)
        raise
