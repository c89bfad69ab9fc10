"""Which hoods share ducts, and which of their streams must never meet in one."""

from dataclasses import dataclass
from functools import lru_cache

from hoodwright.tasks.guide import entry
from hoodwright.workplace.model import Contaminant, Duct, Hood, Workplace

NEVER_TOGETHER = (
    ("aluminium or magnesium", "sparks", "metal dust and steel sparks"),
    ("acid", "cyanide", "acid and cyanide"),
    ("acid", "hypochlorite", "acid and hypochlorite"),
    ("perchloric", "anything else", "perchloric acid and anything else"),
    ("oxidiser", "organic", "oxidisers and organic matter"),
    ("flammable", "sparks", "flammable vapour or mist and sparks"),
    ("mist", "sparks", "mist and sparks"),
    ("explosible dust", "sparks", "explosible dust and sparks"),
)


@dataclass(frozen=True)
class Clash:
    """Streams that must not share a duct: where they meet, in words, and the hoods they come from."""

    place: str
    words: str
    hoods: frozenset[str]


def way_from(workplace: Workplace, hood: Hood) -> dict[str, Duct]:
    """The ducts that the air of a hood goes through, in the order of the flow, by name."""
    follow = {duct.start: duct for duct in workplace.ducts}
    way: dict[str, Duct] = {}
    here = hood.name
    while here in follow:
        duct = follow[here]
        way[duct.name], here = duct, duct.to
    return way


def fan_of(workplace: Workplace, hood: Hood) -> str | None:
    """Name of the fan that draws on a hood; None where no duct leads to one."""
    fans = {fan.name for fan in workplace.fans}
    return next((duct.to for duct in way_from(workplace, hood).values() if duct.to in fans), None)


@lru_cache(maxsize=4)
def clashes(workplace: Workplace) -> tuple[Clash, ...]:
    """Every pair of streams that must not share a duct, at every place where they are together."""
    found: list[Clash] = []
    for place, hoods in _meetings(workplace):
        streams = [stream for hood in hoods for stream in _streams(workplace, hood)]
        names = frozenset(hood.name for hood in hoods)
        for one, other, words in NEVER_TOGETHER:
            if _clash(streams, one, other):
                found.append(Clash(place, words, names))
    return tuple(found)


def _meetings(workplace: Workplace) -> list[tuple[str, list[Hood]]]:
    """Each hood alone, then each duct with all hoods whose air it carries, the least shared first."""
    alone = [(hood.name, [hood]) for hood in workplace.hoods]
    shared: dict[str, list[Hood]] = {}
    place: dict[str, str] = {}
    for hood in workplace.hoods:
        for duct in way_from(workplace, hood).values():
            shared.setdefault(duct.name, []).append(hood)
            place[duct.name] = duct.start
    meetings = [(place[name], hoods) for name, hoods in shared.items() if len(hoods) > 1]
    return [*alone, *sorted(meetings, key=lambda meeting: len(meeting[1]))]


def _streams(workplace: Workplace, hood: Hood) -> list[frozenset[str]]:
    """Hazards of each source of a hood, with what its kind adds, and those that the guide knows of its process."""
    sources = [workplace.source(name) for name in hood.serves]
    return [
        _tags(workplace.contaminant(source.contaminant), entry(source.process).hazards if source.process else ())
        for source in sources
    ]


def _tags(contaminant: Contaminant, of_process: tuple[str, ...]) -> frozenset[str]:
    tags: set[str] = {*contaminant.hazards, *of_process}
    if contaminant.kind == "mist":
        tags.add("mist")
    if "flammable" in tags:
        tags.add("organic")
    if "perchloric" not in tags:
        tags.add("anything else")
    return frozenset(tags)


def _clash(streams: list[frozenset[str]], one: str, other: str) -> bool:
    return any(one in stream for stream in streams) and any(other in stream for stream in streams)
