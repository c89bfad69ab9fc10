"""Cautions as a reader wants them: those about one thing together, and what is said of many junctions said once."""

import re
from collections.abc import Iterable

from hoodwright.results import Caution

GOVERNS = re.compile(r"its side of (.+) governs: until that is balanced (.+)")


def grouped(cautions: Iterable[Caution]) -> dict[str, list[Caution]]:
    """Cautions by what they are about, in the order of first mention; none twice."""
    groups: dict[str, list[Caution]] = {}
    for caution in cautions:
        group = groups.setdefault(caution.about, [])
        if caution not in group:
            group.append(caution)
    return {about: _merged(group) for about, group in groups.items()}


def _merged(cautions: list[Caution]) -> list[Caution]:
    """One caution for all junctions whose side a hood governs, in the place of the first."""
    found = [(caution, match) for caution in cautions if (match := GOVERNS.fullmatch(caution.text))]
    if len(found) < 2:
        return cautions
    first, match = found[0]
    *names, last = (match[1] for _, match in found)
    text = f"its side of {', '.join(names)} and {last} governs: until they are balanced {match[2]}"
    others = [caution for caution, _ in found[1:]]
    return [Caution(c.about, text, c.source) if c is first else c for c in cautions if c not in others]
