"""Words of the report: text that is safe to print, citations, and values for the eye."""

import re
import unicodedata
from collections.abc import Sequence
from dataclasses import dataclass, field

from hoodwright.errors import InputError
from hoodwright.results import Outcome, Quantity, Verdict
from hoodwright.sources import Source, find_source
from hoodwright.tasks.assessment import HoodAnswer, SourceNeed
from hoodwright.units import parse, show

SI_KINDS = {"m": "length", "mm": "length", "m/s": "velocity", "degC": "temperature"}
SI_VALUE = re.compile(r"(?<![\w.])(\d+(?:\.\d+)?) (mm|m/s|m|degC)(?![\w³²/])")
MOST_LISTED = 4  # hoods that a summary names
KEPT_MARKS = "\u200c\u200d\ufe0e\ufe0f"  # joiners that some scripts need
UNPRINTABLE = "\u00a4"
SHAPES = {Verdict.MEETS: "circle", Verdict.SHORT: "triangle", Verdict.CANNOT_TELL: "half"}
TRUST_WORDS = {
    "read": "read in a public text",
    "derived": "derived: exact, checked numerically",
    "memory": "from memory: to be confirmed",
}


def clean(words: str) -> str:
    """Words on one line; what cannot be printed, or would turn the reading direction, becomes a currency sign."""
    return "".join(_clean_letter(letter) for letter in " ".join(words.split("\n")))


def _clean_letter(letter: str) -> str:
    if letter.isprintable() or letter in KEPT_MARKS or unicodedata.category(letter) == "Zs":
        return letter
    return " " if letter.isspace() else UNPRINTABLE


def cleaned(tree):
    """The same plain data with every text cleaned."""
    if isinstance(tree, str):
        return clean(tree)
    if isinstance(tree, dict):
        return {key: cleaned(value) for key, value in tree.items()}
    return [cleaned(item) for item in tree] if isinstance(tree, list | tuple) else tree


def shortened(words: str, most: int = 30) -> str:
    """Words cut to fit a figure."""
    return words if len(words) <= most else words[: most - 1].rstrip() + "…"


@dataclass
class Citations:
    """Collects what is cited, in the order of first mention."""

    used: dict[str, Source] = field(default_factory=dict)

    def cite(self, citation: str) -> list[dict]:
        """A citation for the margin, one entry for each part between semicolons; plain words stay as they are."""
        return [self._cite_one(part.strip().strip("[]")) for part in citation.split(";") if part.strip()]

    def _cite_one(self, citation: str) -> dict:
        try:
            source = find_source(citation)
        except InputError:
            return {"text": citation, "trust": ""}
        self.used.setdefault(source.key, source)
        return {"text": citation, "trust": source.trust}

    def entries(self) -> list[dict]:
        """Every source cited, in full."""
        return [
            {
                "key": s.key,
                "title": s.title,
                "edition": s.edition,
                "year": str(s.year),
                "trust": s.trust,
                "trust_words": TRUST_WORDS[s.trust],
                "how": s.how,
            }
            for s in self.used.values()
        ]


def verdict(outcome: Outcome) -> dict:
    """An outcome as a word and a shape."""
    return {
        "word": outcome.verdict.value,
        "shape": SHAPES[outcome.verdict],
        "because": outcome.because,
    }


def with_uncertainty(quantity: Quantity, system: str) -> str:
    """A value with the half width of its 95 % interval, where it has one."""
    value = show(quantity.value, quantity.kind, system)
    if quantity.uncertainty is None:
        return value
    return f"{value} ± {show(quantity.uncertainty, quantity.kind, system, 2)}"


def share(value: float) -> str:
    """A share for the eye: "18 %"."""
    return show(value, "share", "SI", 2)


def in_system(words: str, system: str) -> str:
    """Words that tell a range in metres, degrees or m/s, in the reader's units."""
    if system == "SI":
        return words
    return SI_VALUE.sub(
        lambda found: show(parse(f"{found[1]} {found[2]}", SI_KINDS[found[2]]), SI_KINDS[found[2]], system), words
    )


def required_words(need: SourceNeed, system: str) -> str:
    """The flow needed, in few words: "291 m³/h", "≥ 629 m³/h", "cannot be told"."""
    asked = show(need.flow, "flow", system)
    if need.in_range:
        return asked
    return f"≥ {asked}" if need.bound.least > 0 else "cannot be told"


def summary(hoods: Sequence[HoodAnswer]) -> str:
    """One sentence over all hoods; none for a single one, whose own sentence says it."""
    if len(hoods) < 2:
        return ""
    meant = _counted(hoods, [hood.enough.verdict for hood in hoods])
    now = _counted(hoods, [hood.met.verdict for hood in hoods])
    return f"Of {len(hoods)} hoods, what was intended {meant}. Today's flow {now}."


def _counted(hoods: Sequence[HoodAnswer], verdicts: list[Verdict]) -> str:
    parts = []
    for verdict, words in (
        (Verdict.MEETS, "meets the need"),
        (Verdict.SHORT, "falls short"),
        (Verdict.CANNOT_TELL, ""),
    ):
        names = [hood.name for hood, found in zip(hoods, verdicts, strict=True) if found is verdict]
        if names:
            told = f" ({', '.join(names)})" if len(names) <= MOST_LISTED and verdict is Verdict.SHORT else ""
            parts.append(f"{words or 'cannot be judged'} at {len(names)}{told}")
    return f"{', '.join(parts[:-1])} and {parts[-1]}" if len(parts) > 1 else parts[0]
