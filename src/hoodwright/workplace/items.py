"""Whole parts in the text of a workplace file: one more in a list, one less, a key by another name.

Comments on lines of their own stay, but for those that are set in below the part that goes; they go with it.
"""

import re
from collections.abc import Callable
from copy import deepcopy
from dataclasses import replace
from typing import Any

from hoodwright.errors import HoodwrightError, InputError
from hoodwright.workplace.document import Document, as_yaml
from hoodwright.workplace.tree import Path, Tree, read_tree

WIDEST = 110  # characters of a part on one line


def data_of(document: Document) -> Any:
    """The file as plain data; InputError where it has faults."""
    return _tree(document)[1]


def with_item(document: Document, section: str, item: dict[str, Any]) -> Document:
    """The document with one more part at the end of a section, which is begun where it is missing."""
    tree, data = _tree(document)
    there = data.get(section)
    if there and tree.places[(section,)].inline:
        last = tree.places[(section, len(there) - 1)].end
        text = f"{document.text[:last]}, {as_yaml(item)}{document.text[last:]}"
    elif there:
        text = _after_last(document.text, tree, section, item, len(there) - 1)
    elif section in data:
        text = _begun(document.text, tree, section, item)
    else:
        text = _at_the_end(document.text, section, item)
    return _checked(document, tree, text, lambda data: data.setdefault(section, []).append(item), f"add to {section}")


def without_item(document: Document, section: str, index: int) -> Document:
    """The document without one part of a section; the last one leaves an empty list."""
    tree, data = _tree(document)
    text, count = document.text, len(data[section])
    if tree.places[(section,)].inline:
        text = _out_of_line(text, tree, section, index)
    else:
        dash, end = _lines(text, tree, (section, index))
        text = text[:dash] + text[end:]
        if count == 1:
            colon = text.index(":", tree.keys[(section,)].end) + 1
            text = f"{text[:colon]} []{text[colon:]}"
    return _checked(document, tree, text, lambda data: data[section].pop(index), f"take away {section}[#{index + 1}]")


def with_key(document: Document, path: Path, name: str) -> Document:
    """The document whose key at a path has another name; its value stays."""
    tree, _ = _tree(document)
    place = tree.keys[path]
    text = document.text[: place.start] + as_yaml(name) + document.text[place.end :]

    def rename(data: Any) -> None:
        for step in path[:-1]:
            data = data[step]
        data[name] = data.pop(path[-1])

    return _checked(document, tree, text, rename, f"rename {tree.label(path)}")


def _tree(document: Document) -> tuple[Tree, dict[str, Any]]:
    """The tree, and its data as keys of the first level."""
    tree = read_tree(document.text)
    if tree.faults or not isinstance(tree.data, dict):
        raise InputError(f"the file has faults; mend them first: {tree.faults[0] if tree.faults else 'it is empty'}")
    return tree, tree.data


def _checked(document: Document, before: Tree, text: str, change: Callable[[Any], object], what: str) -> Document:
    """The document with that text, if it says what was wanted and nothing else."""
    wanted = deepcopy(before.data)
    if isinstance(wanted, dict):
        wanted.update({key: [] for key, value in wanted.items() if value is None})
    change(wanted)
    found = read_tree(text)
    if found.faults or found.data != wanted:
        raise HoodwrightError(f"cannot {what}; edit the file by hand there")
    return replace(document, text=text)


def _after_last(text: str, tree: Tree, section: str, item: dict[str, Any], last: int) -> str:
    dash, end = _lines(text, tree, (section, last))
    column = len(text[dash:]) - len(text[dash:].lstrip(" "))
    return _put(text, end, _block(item, " " * column))


def _begun(text: str, tree: Tree, section: str, item: dict[str, Any]) -> str:
    """The first part of a section that is there and empty."""
    place, key = tree.places[(section,)], tree.keys[(section,)]
    colon = text.index(":", key.end) + 1
    text = text[:colon] + text[max(colon, place.end) :] if place.end > colon else text
    return _put(text, _line_end(text, colon), _block(item, "  "))


def _at_the_end(text: str, section: str, item: dict[str, Any]) -> str:
    return _put(text, len(text), ["", f"{section}:", *_block(item, "  ")])


def _put(text: str, at: int, lines: list[str]) -> str:
    newline = "\r\n" if "\r\n" in text else "\n"
    before = text[:at] if text[:at].endswith("\n") or not at else text[:at] + newline
    return before + "".join(line + newline for line in lines) + text[at:]


def _block(item: dict[str, Any], indent: str) -> list[str]:
    """A part on one line, or where that is too long one line for each key."""
    line = f"{indent}- {as_yaml(item)}"
    if len(line) <= WIDEST:
        return [line]
    return [f"{indent}{'  ' if i else '- '}{key}: {as_yaml(value)}" for i, (key, value) in enumerate(item.items())]


def _lines(text: str, tree: Tree, path: Path) -> tuple[int, int]:
    """From the beginning of the line of a part's dash to the end of its last line, with what is set in below it."""
    place = tree.places[path]
    dash = text.rfind("-", 0, place.start)
    begin = text.rfind("\n", 0, dash) + 1
    end = _line_end(text, place.start + len(text[place.start : place.end].rstrip()))
    deeper = re.compile(rf"[ ]{{{dash - begin + 1},}}#[^\n]*(\n|$)")
    while found := deeper.match(text, end):
        end = found.end()
    return begin, end


def _line_end(text: str, at: int) -> int:
    found = text.find("\n", at)
    return len(text) if found < 0 else found + 1


def _out_of_line(text: str, tree: Tree, section: str, index: int) -> str:
    """With the comma behind it, or the one before it where it is the last."""
    place = tree.places[(section, index)]
    behind = re.match(r"\s*,\s*", text[place.end :])
    if behind:
        return text[: place.start] + text[place.end + behind.end() :]
    before = re.search(r"\s*,\s*$", text[: place.start])
    return text[: before.start() if before else place.start] + text[place.end :]
