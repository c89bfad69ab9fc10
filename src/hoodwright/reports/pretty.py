"""Recompute lines set for paper: × for x, √ for sqrt, Greek letters, a true minus, raised powers."""

import re

WORDS = {
    "sqrt": "√",
    "rho": "ρ",
    "pi": "π",
    "m3/s": "m³/s",
}
WORD = re.compile(r"(?<![A-Za-z])(?:" + "|".join(map(re.escape, WORDS)) + r")(?![A-Za-z])")
TIMES = re.compile(r"(?<=[\s\d)²³A-Za-zπρ]) x (?=[\s\d(A-Za-zπ√-])")
MINUS = re.compile(r"(?<![A-Za-z0-9])-(?=[\d(\s])")


def pretty(words: str) -> str:
    """The line as a printer would set it; the digits stay as they are."""
    words = WORD.sub(lambda found: WORDS[found[0]], words)
    return MINUS.sub("−", TIMES.sub(" × ", words))
