"""Ducts, fans and air cleaners as people add them: a hood is led to a fan, straight or into a duct that is there.

Sizes, lengths and resistances are starting values that their owner changes.
"""

import math
from typing import Any

from hoodwright import units
from hoodwright.ducts import standard_diameters
from hoodwright.errors import InputError
from hoodwright.tasks.assess import design_flow
from hoodwright.tasks.part_names import OUTSIDE, free_name, sound
from hoodwright.workplace import Document, Workplace
from hoodwright.workplace.items import with_item
from hoodwright.workplace.model import Duct, Hood

START_SPEED, TOO_FAST = 15.0, 25.0  # m/s
BRANCH, PIECE, STACK = "4 m", "1 m", "3 m"
JOINS, MEETS = "30 deg", "J"
CLEAN, DIRTY = "500 Pa", "1000 Pa"
NEW_FAN = "a new fan"
MOST_LISTED = 200  # ducts


def add_duct(document: Document, start: str | None = None, to: str | None = None) -> Document:
    """The document with a duct from a hood to a meeting of ducts, a cleaner or a fan, or into the middle of a duct.

    By default it begins at the first hood that has none, and leads to the first fan or the cleaner before it.
    `a new fan`, or no fan in the file, gives the hood a fan and a stack of its own.
    """
    workplace = document.workplace()
    hood = _free_hood(workplace, start)
    target = to or _collector(workplace)
    if target == NEW_FAN:
        return _with_own_fan(document, hood)
    ducts = [duct.name for duct in workplace.ducts]
    arrivals = [duct for duct in workplace.ducts if duct.to == target]
    nodes = {*_names(workplace.cleaners), *_names(workplace.fans)}
    if target in ducts and not arrivals and target not in nodes:
        document, target = _split(document, workplace.ducts[ducts.index(target)], hood)
    elif target in nodes and arrivals:
        document, target = _split(document, arrivals[0], hood)
    elif target in nodes:
        return _with_own_fan(document, hood, target) if target in _names(workplace.fans) else _no_way(target)
    elif not arrivals or target == OUTSIDE:
        raise InputError(f"no fan, cleaner, duct or meeting of ducts is named {target!r}; {_there(workplace)}")
    document = with_item(document, "ducts", _branch(document.workplace(), hood, target, joins=True))
    return _wide_enough(sound(document), target)


def add_fan(document: Document, hood: str | None = None) -> Document:
    """The document with one more fan, with a duct to it from a hood that has none, and a stack."""
    workplace = document.workplace()
    if not workplace.ducts and not workplace.hoods:
        raise InputError("a fan draws the air of a hood, and there is none yet; add a hood first")
    return add_duct(document, hood, NEW_FAN)


def add_cleaner(document: Document, fan: str | None = None) -> Document:
    """The document with an air cleaner before a fan; by default before the first one."""
    workplace = document.workplace()
    fans = [one.name for one in workplace.fans if any(duct.to == one.name for duct in workplace.ducts)]
    if not fans:
        raise InputError("a cleaner stands before a fan, and no duct leads to one yet; add a duct first")
    if fan is not None and fan not in fans:
        raise InputError(f"no fan with a duct is named {fan!r}; there is: {', '.join(fans)}")
    fan = fan or fans[0]
    name = free_name(workplace, "filter")
    arrivals = [index for index, duct in enumerate(workplace.ducts) if duct.to == fan]
    for index in arrivals:
        document = document.set(("ducts", index, "to"), name)
    link = {"name": free_name(workplace, "link"), "from": name, "to": fan} | _wider(
        [workplace.ducts[i] for i in arrivals]
    )
    document = with_item(document, "ducts", link | {"length": PIECE})
    resistance = {"clean": CLEAN, "dirty": DIRTY, "at": _flow_words(workplace, fan)}
    return sound(with_item(document, "cleaners", {"name": name, "resistance": resistance}))


def targets(workplace: Workplace) -> dict[str, str]:
    """Where a new duct can lead to, each in words; the usual one first."""
    nodes = {*_names(workplace.fans), *_names(workplace.cleaners)}
    before = _before_a_fan(workplace)
    ends = dict.fromkeys(duct.to for duct in before)
    found = {one: f"the {one}" for one in ends if one in nodes}
    if len(before) <= MOST_LISTED:
        found |= {one: f"where ducts meet: {one}" for one in ends if one not in nodes}
        found |= {duct.name: f"into the duct {duct.name}" for duct in before if duct.name not in found}
    found |= {NEW_FAN: NEW_FAN}
    usual = _collector(workplace)
    return {usual: found[usual]} | found if usual in found else found


def free_hoods(workplace: Workplace) -> list[str]:
    """Hoods that have no duct yet."""
    led = {duct.start for duct in workplace.ducts}
    return [hood.name for hood in workplace.hoods if hood.name not in led]


def _free_hood(workplace: Workplace, name: str | None) -> Hood:
    hoods, free = _names(workplace.hoods), free_hoods(workplace)
    if name is not None and name not in hoods:
        raise InputError(f"no hood is named {name!r}; there is: {', '.join(hoods) or 'none'}")
    if not hoods:
        raise InputError("a duct begins at a hood, and there is none yet; add a hood first")
    if not free or (name is not None and name not in free):
        raise InputError(f"{f'the {name}' if name else 'every hood'} has a duct already; add another hood first")
    return workplace.hoods[hoods.index(name or free[0])]


def _collector(workplace: Workplace) -> str:
    """The first fan that has ducts, or the cleaner before it."""
    arrivals = [duct for fan in workplace.fans for duct in workplace.ducts if duct.to == fan.name]
    if not arrivals:
        return workplace.fans[0].name if workplace.fans else NEW_FAN
    first = arrivals[0]
    return first.start if first.start in _names(workplace.cleaners) else first.to


def _with_own_fan(document: Document, hood: Hood, fan: str | None = None) -> Document:
    """A duct from the hood to a fan, and a stack behind it."""
    workplace = document.workplace()
    named = fan or free_name(workplace, "fan")
    branch = _branch(workplace, hood, named, joins=False)
    stack = {"name": free_name(workplace, "stack"), "from": named, "to": OUTSIDE} | {"round": branch["round"]}
    for item in (branch, stack | {"length": STACK}):
        document = with_item(document, "ducts", item)
    return sound(document if fan else with_item(document, "fans", {"name": named}))


def _no_way(target: str) -> Document:
    raise InputError(f"no duct leads to {target!r} yet; lead the hood to a fan, and add the cleaner before it")


def _split(document: Document, duct: Duct, hood: Hood) -> tuple[Document, str]:
    """A duct that ends at a new meeting, from where a piece leads on; the document and the meeting."""
    workplace = document.workplace()
    meeting = free_name(workplace, MEETS, numbered=True)
    index = workplace.ducts.index(duct)
    piece = {"name": free_name(workplace, "main"), "from": meeting, "to": duct.to}
    piece |= _wider([duct], _diameter(hood, workplace)) | {"length": PIECE}
    return with_item(document.set(("ducts", index, "to"), meeting), "ducts", piece), meeting


def _branch(workplace: Workplace, hood: Hood, to: str, *, joins: bool) -> dict[str, Any]:
    item: dict[str, Any] = {"name": free_name(workplace, "duct"), "from": hood.name, "to": to}
    item |= {
        "round": _millimetres(_diameter(hood, workplace)),
        "length": BRANCH,
        "fittings": [{"elbow": "90 deg", "pieces": 5}],
    }
    return item | ({"joins_at": JOINS} if joins else {})


def _diameter(hood: Hood, workplace: Workplace) -> float:
    """The next standard size for the flow that is intended, or else needed."""
    return _standard(math.sqrt(4 * design_flow(hood, workplace) / (math.pi * START_SPEED)))


def _wider(ducts: list[Duct], more: float = 0.0) -> dict[str, Any]:
    """A round section for the air of several ducts, and of one more diameter."""
    areas = [duct.sides[0] ** 2 if duct.is_round else 4 / math.pi * duct.sides[0] * duct.sides[1] for duct in ducts]
    size = math.sqrt(sum(areas) + more**2)
    same = len(ducts) == 1 and not more and ducts[0].is_round
    return {"round": units.write(size, "length", "mm") if same else _millimetres(_standard(size))}


def _standard(size: float) -> float:
    fitting = [float(one) for one in standard_diameters() if one >= size - 1e-6]
    return fitting[0] if fitting else math.ceil(size * 20) / 20


def _millimetres(length: float) -> str:
    return units.write(round(length, 4), "length", "mm")


def _flow_words(workplace: Workplace, fan: str) -> str:
    follow = {duct.start: duct.to for duct in workplace.ducts}
    hoods = [hood for hood in workplace.hoods if _meets(hood.name, follow, [fan])]
    flow = sum(design_flow(hood, workplace) for hood in hoods)
    return units.write(max(round(flow * 360), 1) / 360, "flow", "m3/h")


def _wide_enough(document: Document, meeting: str) -> Document:
    """Round ducts behind a meeting that would now be too fast, in a wider size; all others stay as they are."""
    workplace = document.workplace()
    follow = {duct.start: duct.to for duct in workplace.ducts}
    for index, duct in enumerate(workplace.ducts):
        if not duct.is_round or not _meets(meeting, follow, [duct.start]):
            continue
        hoods = [hood for hood in workplace.hoods if _meets(hood.name, follow, [duct.start])]
        flow = sum(design_flow(hood, workplace) for hood in hoods)
        if flow > TOO_FAST * math.pi / 4 * duct.sides[0] ** 2:
            size = _standard(math.sqrt(4 * flow / (math.pi * START_SPEED)))
            document = document.set(("ducts", index, "round"), _millimetres(size))
    return sound(document)


def _before_a_fan(workplace: Workplace) -> list[Duct]:
    """Ducts whose air has its fan ahead."""
    arrivals: dict[str, list[Duct]] = {}
    for duct in workplace.ducts:
        arrivals.setdefault(duct.to, []).append(duct)
    found, ends = set[str](), _names(workplace.fans)
    while ends:
        led = [duct for duct in arrivals.get(ends.pop(), []) if duct.name not in found]
        found |= {duct.name for duct in led}
        ends += [duct.start for duct in led]
    return [duct for duct in workplace.ducts if duct.name in found]


def _meets(start: str, follow: dict[str, str], fans: list[str]) -> bool:
    """Whether a fan is at this end or on the way on from it."""
    here, left = start, len(follow)
    while here not in fans and here in follow and left >= 0:
        here, left = follow[here], left - 1
    return here in fans


def _names(parts) -> list[str]:
    return [part.name for part in parts]


def _there(workplace: Workplace) -> str:
    return f"there is: {', '.join(targets(workplace))}"
