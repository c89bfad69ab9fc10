"""Which hoods share a fan, and which of their streams must never meet in one duct."""

from hoodwright.workplace.model import Duct, Hood, Workplace

NEVER_TOGETHER = (
    ("aluminium or magnesium", "sparks", "metal dust and steel sparks"),
    ("acid", "cyanide", "acid and cyanide"),
    ("acid", "hypochlorite", "acid and hypochlorite"),
    ("perchloric", "organic", "perchloric acid and organic matter"),
    ("oxidiser", "organic", "oxidisers and organic matter"),
    ("flammable", "sparks", "flammable vapour or mist and sparks"),
)


def way_from(workplace: Workplace, hood: Hood) -> dict[str, Duct]:
    """The ducts that the air of a hood goes through, in the order of the flow, by name."""
    follow = {duct.start: duct for duct in workplace.ducts}
    way, here = {}, hood.name
    while here in follow:
        duct = follow[here]
        way[duct.name], here = duct, duct.to
    return way


def fan_of(workplace: Workplace, hood: Hood) -> str | None:
    """Name of the fan that draws on a hood; None where no duct leads to one."""
    fans = {fan.name for fan in workplace.fans}
    return next((duct.to for duct in way_from(workplace, hood).values() if duct.to in fans), None)


def meeting_place(workplace: Workplace, hood: Hood) -> str:
    """Where a hood's streams meet others: at its fan, or in the hood itself where it has none."""
    return fan_of(workplace, hood) or hood.name


def clashes(workplace: Workplace) -> dict[str, list[str]]:
    """By meeting place, the pairs of streams that must not share a duct, in words."""
    together: dict[str, set[str]] = {}
    for hood in workplace.hoods:
        together.setdefault(meeting_place(workplace, hood), set()).update(_hazards_of(workplace, hood))
    found = {
        place: [words for one, other, words in NEVER_TOGETHER if {one, other} <= hazards]
        for place, hazards in together.items()
    }
    return {place: words for place, words in found.items() if words}


def _hazards_of(workplace: Workplace, hood: Hood) -> set[str]:
    return {h for name in hood.serves for h in workplace.contaminant(workplace.source(name).contaminant).hazards}
