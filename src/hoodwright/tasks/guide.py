"""The process guide: from a process to its hood, release class, velocities, cautions, refusals and examination."""

import math
from dataclasses import dataclass
from difflib import SequenceMatcher
from functools import cache

from hoodwright.ducts import transport_velocity_range
from hoodwright.errors import InputError
from hoodwright.hoods import capture_velocity_range
from hoodwright.sources import find_source
from hoodwright.tables import load_table
from hoodwright.units import show, show_number

HOOD_TYPES = ("enclosing", "receiving", "capturing")
NO_CANOPY = ("asbestos", "asthmagen", "carcinogen", "isocyanate")
SORTS = ("process", "trade", "kind", "release", "hood")
RELEASES = ("still", "gentle", "driven", "thrown")
NEAREST = 5
LIKE = 0.75  # of 1: how alike one word must be to one of the entry
CAPTURE_SOURCE = "capture-table, table 2.3; its class by our reading"
TRANSPORT_SOURCE = "transport-table, annex 5; its row by our reading"


@dataclass(frozen=True)
class Statement:
    """One statement in our own words, with where it is from and where it holds."""

    key: str
    text: str
    source: str
    place: str
    jurisdiction: str

    @property
    def citation(self) -> str:
        """Source key and place."""
        return f"{self.source}, {self.place}"

    @property
    def said(self) -> str:
        """The text, after the name of where it holds unless it holds anywhere."""
        return self.text if self.jurisdiction == "any" else f"{self.jurisdiction}: {self.text}"

    @property
    def trust(self) -> str:
        """How its source was read: read, derived or memory."""
        return find_source(self.source).trust


@dataclass(frozen=True)
class HoodChoice:
    """A hood type with its form in plain words."""

    type: str
    form: str

    @property
    def is_canopy(self) -> bool:
        """Whether it hangs above the work."""
        return "canopy" in self.form


@dataclass(frozen=True)
class StarterKind:
    """How the starter file of a process is laid out, and the hood's row of its table of forms."""

    layout: str
    form: str | None


@dataclass(frozen=True)
class Interval:
    """The longest time between two thorough examinations, under one set of rules."""

    jurisdiction: str
    group: str
    months: int
    citation: str
    condition: str

    @property
    def text(self) -> str:
        """In words: "UK: examined at least every 14 months"."""
        often = "every month" if self.months == 1 else f"every {self.months} months"
        which = "" if self.group == "any other" else f" ({self.group})"
        return f"{self.jurisdiction}: examined at least {often}{which}"


@dataclass(frozen=True)
class GuideEntry:
    """One process of the guide."""

    process: str
    trade: str
    substance: str
    kind: str
    hazards: tuple[str, ...]
    release: str
    hoods: tuple[HoodChoice, ...]
    transport: str
    why_hazards: tuple[Statement, ...]
    why_hoods: tuple[Statement, ...]
    cautions: tuple[Statement, ...]
    refusals: tuple[Statement, ...]
    intervals: tuple[Interval, ...]
    start: StarterKind

    @property
    def capture_velocity(self) -> tuple[float, float]:
        """Range of its release class [m/s]."""
        return capture_velocity_range(self.release)

    @property
    def transport_velocity(self) -> tuple[float, float]:
        """Range of its row of the transport velocities [m/s]; the upper end may be infinite."""
        return transport_velocity_range(self.transport)

    @property
    def statements(self) -> tuple[Statement, ...]:
        """All its statements, in the order in which they are shown."""
        return (*self.why_hazards, *self.why_hoods, *self.cautions, *self.refusals)

    @property
    def words(self) -> str:
        """All that a search looks at, in small letters."""
        forms = (f"{hood.type} {hood.form}" for hood in self.hoods)
        parts = (self.process, self.trade, self.substance, self.kind, *self.hazards, self.release, *forms)
        return " ".join(parts).casefold()


@cache
def statement(key: str) -> Statement:
    """The statement of that key."""
    return Statement(**load_table("guide_statements").row("key", key))


@cache
def guide_entries() -> tuple[GuideEntry, ...]:
    """Every process of the guide, in the order of its table."""
    columns = load_table("process_guide").columns
    return tuple(_entry(dict(zip(columns, row, strict=True))) for row in zip(*columns.values(), strict=True))


def entry(process: str) -> GuideEntry:
    """The entry of a process by its name; InputError names the nearest ones."""
    wanted = " ".join(process.split()).casefold()
    for found in guide_entries():
        if found.process.casefold() == wanted:
            return found
    near = ", ".join(nearest(process))
    advice = f"the nearest are: {near}" if near else "look through: hoodwright guide"
    raise InputError(f"no process of the guide is named {process!r}; {advice}")


def find_entries(text: str) -> tuple[GuideEntry, ...]:
    """Entries that hold every word of the text, in any order, also as part of a word."""
    words = text.casefold().split()
    return tuple(found for found in guide_entries() if all(word in found.words for word in words))


def nearest(text: str) -> tuple[str, ...]:
    """Names of the processes nearest to a text that fits none, the nearest first."""
    held = [found.process for found in find_entries(text)] if text.split() else []
    if held:
        return tuple(held[:NEAREST])
    wanted = text.casefold().split()
    likeness = {found.process: _likeness(wanted, found) for found in guide_entries()}
    close = [name for name, alike in likeness.items() if max(alike, default=0.0) >= LIKE]
    return tuple(sorted(close, key=lambda name: -sum(likeness[name]))[:NEAREST])


def sorted_entries(by: str, entries: tuple[GuideEntry, ...] | None = None) -> tuple[GuideEntry, ...]:
    """Entries sorted by process, trade, kind, release (slow to fast) or hood (enclosing first)."""
    if by not in SORTS:
        raise InputError(f"got {by!r}; allowed: {', '.join(SORTS)}; choose one of these")
    keys = {
        "process": lambda e: (),
        "trade": lambda e: (e.trade,),
        "kind": lambda e: (e.kind,),
        "release": lambda e: (RELEASES.index(e.release),),
        "hood": lambda e: (HOOD_TYPES.index(e.hoods[0].type),),
    }
    found = guide_entries() if entries is None else entries
    return tuple(sorted(found, key=lambda e: (*keys[by](e), e.process.casefold())))


def speeds(found: GuideEntry, system: str = "SI") -> tuple[str, str]:
    """Capture and transport velocity as they are shown: "0.5 to 1.0 m/s"."""
    return _span(found.capture_velocity, system), _span(found.transport_velocity, system)


def in_a_sentence(found: GuideEntry, system: str = "SI") -> str:
    """What the guide says of a process, in a few short sentences."""
    hazards = f" ({', '.join(found.hazards)})" if found.hazards else ""
    capture, transport = speeds(found, system)
    first, *others = (f"{_a(hood.type)} hood ({hood.form})" for hood in found.hoods)
    then = f"; else {', or '.join(others)}" if others else ""
    air = f"A capturing hood needs {capture} at the source"
    if found.release == "thrown":
        air = "Its stream is received or enclosed, never captured by air alone"
    name = f"{found.process[0].upper()}{found.process[1:]}"
    return (
        f"{name}: gives off {found.substance}{hazards}; its release is {found.release}. "
        f"First choice: {first}{then}. {air}; the ducts need {transport}."
    )


def _entry(row: dict[str, str]) -> GuideEntry:
    hoods = tuple(HoodChoice(*choice.split("=", 1)) for choice in _several(row["hoods"]))
    why_hazards, why_hoods, cautions, refusals = (
        tuple(map(statement, _several(row[name])))
        for name in ("hazards_because", "hoods_because", "cautions", "refusals")
    )
    plain = {name: row[name] for name in ("process", "trade", "substance", "kind", "release", "transport")}
    return GuideEntry(
        **plain,
        start=StarterKind(row["starts_as"], None if row["start_form"] == "none" else row["start_form"]),
        hazards=tuple(_several(row["hazards"])),
        hoods=hoods,
        why_hazards=why_hazards,
        why_hoods=why_hoods,
        cautions=cautions,
        refusals=refusals,
        intervals=tuple(one for group in _several(row["examination"]) for one in intervals(group)),
    )


@cache
def intervals(group: str) -> tuple[Interval, ...]:
    """Examination intervals of one process group, one for each jurisdiction that has a rule."""
    columns = load_table("examination_interval").columns
    rows = zip(*columns.values(), strict=True)
    found = tuple(
        Interval(jurisdiction, name, int(months), f"{source}, {place}", condition)
        for jurisdiction, name, months, source, place, condition in rows
        if name == group
    )
    if not found:
        groups = ", ".join(dict.fromkeys(columns["process_group"]))
        raise InputError(f"no examination interval is listed for {group!r}; there is: {groups}")
    return found


def record_years(jurisdiction: str) -> int:
    """How long the record of an examination is kept available, at least."""
    return int(load_table("examination_record").row("jurisdiction", jurisdiction)["years"])


def _several(cell: str) -> list[str]:
    return [] if cell == "none" else [part.strip() for part in cell.split(";")]


def _likeness(wanted: list[str], found: GuideEntry) -> list[float]:
    """For each wanted word, how well the best word of an entry fits it: 0 to 1."""
    own = f"{found.process} {found.substance} {found.trade}".casefold().split()
    return [max(SequenceMatcher(None, word, other).ratio() for other in own) for word in wanted]


def _span(limits: tuple[float, float], system: str) -> str:
    low, high = limits
    if math.isinf(high):
        return f"{show(low, 'velocity', system)} and up"
    return f"{show_number(low, 'velocity', system)} to {show(high, 'velocity', system)}"


def _a(word: str) -> str:
    return f"an {word}" if word[0] in "aeiou" else f"a {word}"
