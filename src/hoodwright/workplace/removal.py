"""Taking one key out of the text of a workplace file, while comments and everything else stay."""

import re

from hoodwright.workplace.tree import Path, Tree

COMMENT = re.compile(r"[ \t]*(#[^\r\n]*)?")


def without_key(text: str, tree: Tree, path: Path) -> str:
    """The text without a key and its value; whoever calls reads it again to see that nothing else went."""
    key, value, parent = tree.keys[path], tree.places[path], tree.places[path[:-1]]
    if parent.inline:
        return _inline(text, key.start, value.end, parent.start)
    return _block(text, key.start, value.end)


def _inline(text: str, start: int, end: int, opened: int) -> str:
    """With the comma behind it, or the one before it where it is the last."""
    behind = re.match(r"\s*,[ \t]*", text[end:])
    if behind:
        return text[:start] + text[end + behind.end() :]
    before = re.search(r"\s*,\s*$", text[opened:start])
    return text[: opened + before.start() if before else start] + text[end:]


def _block(text: str, start: int, end: int) -> str:
    """With its line. A comment behind it gets a line of its own; a key beside a dash gives its place to the next."""
    begin = text.rfind("\n", 0, start) + 1
    end = start + len(text[start:end].rstrip())
    comment = COMMENT.match(text, end)
    assert comment is not None
    newline = re.compile(r"\r?\n|$").match(text, comment.end())
    if newline is None:
        return text
    before, kept = text[begin:start], comment.group(1)
    if before.strip():
        rest = text[newline.end() :]
        return text[:start] + (f"{kept}{newline.group()}" if kept else "") + (rest if kept else rest.lstrip(" "))
    return text[:begin] + (f"{before}{kept}{newline.group()}" if kept else "") + text[newline.end() :]
