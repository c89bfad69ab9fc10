"""The list of citations: one entry a source, in sources.toml beside this file."""

import re
import tomllib
from dataclasses import dataclass
from functools import cache
from importlib.resources import files

from hoodwright.errors import InputError

READ, DERIVED, MEMORY = "read", "derived", "memory"


@dataclass(frozen=True)
class Source:
    """One publication. `trust` is read, derived or memory; `how` says how it was read."""

    key: str
    title: str
    edition: str
    year: int
    trust: str
    how: str


@cache
def all_sources() -> dict[str, Source]:
    """Every source by its key."""
    text = files("hoodwright").joinpath("sources.toml").read_text(encoding="utf-8")
    return {key: Source(key=key, **entry) for key, entry in tomllib.loads(text).items()}


def find_source(citation: str) -> Source:
    """The source that a citation such as "ashrae-f17, ch. 1, eq. 3" belongs to."""
    key = re.split(r"[,\]\s]", citation.strip().lstrip("["), maxsplit=1)[0]
    try:
        return all_sources()[key]
    except KeyError:
        raise InputError(f"citation {citation!r}: no source {key!r} in sources.toml; add it there") from None
