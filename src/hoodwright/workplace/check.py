"""Faults that need more than one part of the file: names that lead nowhere, double names, impossible places."""

from collections import Counter
from difflib import get_close_matches

from hoodwright.errors import Fault, RangeError
from hoodwright.workplace.model import AirState, Source, Workplace
from hoodwright.workplace.moisture import humidity_ratio_of
from hoodwright.workplace.quantities import said
from hoodwright.workplace.tree import Path, Tree, word

OUTSIDE = "outside"
MOST_NAMES = 12  # that a message lists
SECTIONS = ("people", "contaminants", "surfaces", "sources", "hoods", "ducts", "cleaners", "fans")


def check_references(data: dict, tree: Tree) -> list[Fault]:
    """Names given twice, and names that lead nowhere. Works on faulty data too."""
    faults = _double_names(data, tree)
    faults += _dangling(data, tree, "sources", "contaminant", _names(data, "contaminants"), "contaminant")
    faults += _dangling(data, tree, "hoods", "serves", _names(data, "sources"), "source")
    return faults + _loose_ducts(data, tree)


def _items(data: dict, section: str) -> list[tuple[int, dict]]:
    found = data.get(section)
    return [(i, item) for i, item in enumerate(found) if isinstance(item, dict)] if isinstance(found, list) else []


def _names(data: dict, section: str) -> list[str]:
    return [item["name"].strip() for _, item in _items(data, section) if isinstance(item.get("name"), str)]


def _double_names(data: dict, tree: Tree) -> list[Fault]:
    faults: list[Fault] = []
    seen: dict[str, Path] = {}
    for path, item in _named_parts(data):
        name = item.get("name")
        if not isinstance(name, str) or not name.strip():
            continue
        first = seen.setdefault(name.strip(), path)
        if first != path:
            line = tree.place((*first, "name")).line
            message = f"{said(name)} is already the name of another part (line {line}); give each part its own"
            faults.append(tree.fault((*path, "name"), message))
        elif name.strip() == OUTSIDE:
            faults.append(tree.fault((*path, "name"), "'outside' means the open air; choose another name"))
    return faults


def _named_parts(data: dict) -> list[tuple[Path, dict]]:
    """Every part that has a name of its own, with its place in the file."""
    found: list[tuple[Path, dict]] = [((section, i), item) for section in SECTIONS for i, item in _items(data, section)]
    room = data.get("room")
    openings = _items(room, "openings") if isinstance(room, dict) else []
    return [*found, *((("room", "openings", i), item) for i, item in openings)]


def _dangling(data: dict, tree: Tree, section: str, key: str, known: list[str], what: str) -> list[Fault]:
    faults = []
    for i, item in _items(data, section):
        value = item.get(key)
        entries = list(enumerate(value)) if isinstance(value, list) else [(None, value)]
        for j, name in entries:
            if isinstance(name, str) and name.strip() not in known:
                path = (section, i, key) if j is None else (section, i, key, j)
                faults.append(tree.fault(path, _nowhere(name, known, what)))
    return faults


def _nowhere(name: str, known: list[str], what: str) -> str:
    close = get_close_matches(name, known, n=1, cutoff=0.6)
    advice = f"did you mean {close[0]!r}?" if close else f"add that {what} or mend the name"
    there = [word(name) for name in dict.fromkeys(known)]
    if len(there) > MOST_NAMES:
        there = [*there[:MOST_NAMES], f"and {len(there) - MOST_NAMES} more"]
    return f"no {what} is named {said(name)}; there is: {', '.join(there) or 'none'}; {advice}"


def _loose_ducts(data: dict, tree: Tree) -> list[Fault]:
    ends = [(i, item.get("from"), item.get("to")) for i, item in _items(data, "ducts")]
    starts = Counter(start.strip() for _, start, _ in ends if isinstance(start, str))
    arrivals = Counter(to.strip() for _, _, to in ends if isinstance(to, str))
    hoods, fans = _names(data, "hoods"), _names(data, "fans")
    named = [*hoods, *_names(data, "cleaners"), *fans]
    faults = []
    for i, start, to in ends:
        if isinstance(start, str) and start.strip() not in named and start.strip() not in arrivals:
            known = [*named, *(a for a in arrivals if a not in named and a != OUTSIDE)]
            faults.append(tree.fault(("ducts", i, "from"), _nowhere(start, known, "hood, junction, cleaner or fan")))
        if isinstance(to, str) and to.strip() != OUTSIDE and to.strip() not in starts:
            faults.append(tree.fault(("ducts", i, "to"), _dead_end(to, [*starts, OUTSIDE])))
        if isinstance(to, str) and to.strip() in hoods:
            faults.append(
                tree.fault(
                    ("ducts", i, "to"),
                    f"{said(to)} is a hood; ducts lead away from hoods: exchange from and to",
                )
            )
    faults += _tapers_at_hoods(data, hoods, tree)
    circles = _circles(ends, tree)
    faults += [] if circles else _fans_on_the_way(ends, hoods, fans, tree)
    return faults + circles + _forks(ends, starts, tree) + _unjoined(data, arrivals, starts, tree)


def _tapers_at_hoods(data: dict, hoods: list[str], tree: Tree) -> list[Fault]:
    advice = "begins at a hood, whose own taper is told there: write 'entry: {taper: 45 deg}' at the hood"
    return [
        tree.fault(("ducts", i, "taper"), f"this duct {advice}")
        for i, item in _items(data, "ducts")
        if item.get("taper") is not None and isinstance(item.get("from"), str) and item["from"].strip() in hoods
    ]


def _dead_end(to: str, starts: list[str]) -> str:
    close = get_close_matches(to, starts, n=1, cutoff=0.6)
    advice = f"did you mean {close[0]!r}?" if close else "add the duct that leads on from it, or write 'outside'"
    return f"no duct leads on from {said(to)}; {advice}"


def _forks(ends: list, starts: Counter, tree: Tree) -> list[Fault]:
    faults, seen = [], set()
    for i, start, _ in ends:
        if not isinstance(start, str):
            continue
        if start.strip() in seen and starts[start.strip()] > 1:
            message = (
                f"a second duct leads away from {said(start)}; this version reads runs that converge only: join them"
            )
            faults.append(tree.fault(("ducts", i, "from"), message))
        seen.add(start.strip())
    return faults


def _circles(ends: list, tree: Tree) -> list[Fault]:
    follow = {s.strip(): t.strip() for _, s, t in ends if isinstance(s, str) and isinstance(t, str)}
    faults, told = [], set()
    for i, start, _ in ends:
        if not isinstance(start, str) or start.strip() in told:
            continue
        seen, here = [], start.strip()
        while here in follow and here not in seen:
            seen.append(here)
            here = follow[here]
        if here == start.strip() and seen:
            told.update(seen)
            faults.append(
                tree.fault(("ducts", i), f"runs in a circle: {' > '.join(map(word, [*seen, here]))}; lead it to a fan")
            )
    return faults


def _fans_on_the_way(ends: list, hoods: list[str], fans: list[str], tree: Tree) -> list[Fault]:
    follow = {s.strip(): t.strip() for _, s, t in ends if isinstance(s, str) and isinstance(t, str)}
    faults = []
    for i, start, _ in ends:
        if not isinstance(start, str) or start.strip() not in hoods:
            continue
        here, way = start.strip(), list[str]()
        while here in follow and len(way) <= len(follow):
            here = follow[here]
            way.append(here)
        met = sum(1 for node in way if node in fans)
        if here == OUTSIDE and met != 1:
            problem = "no fan is" if met == 0 else f"{met} fans are"
            message = f"{problem} on the way from {said(start)} to outside; this version reads exactly one"
            faults.append(tree.fault(("ducts", i, "from"), message))
    return faults


def _unjoined(data: dict, arrivals: Counter, starts: Counter, tree: Tree) -> list[Fault]:
    faults = []
    for section in ("cleaners", "fans"):
        for i, item in _items(data, section):
            name = item.get("name")
            if (
                isinstance(name, str)
                and name.strip()
                and arrivals
                and (not arrivals[name.strip()] or not starts[name.strip()])
            ):
                side = "leads to" if not arrivals[name.strip()] else "leads on from"
                faults.append(
                    tree.fault((section, i, "name"), f"no duct {side} {said(name)}; add one, or remove the part")
                )
    return faults


def check_air(air: AirState, tree: Tree) -> list[Fault]:
    """Moisture that no air of this temperature and pressure can hold."""
    try:
        humidity_ratio_of(air)
    except RangeError as error:
        given = next((key for key in ("wet_bulb", "dew_point") if getattr(air, key) is not None), "relative_humidity")
        return [tree.fault(("air", given), str(error))]
    return []


def check_geometry(workplace: Workplace, data: dict, tree: Tree) -> list[Fault]:
    """Sources and hoods that stand outside the room."""
    size = workplace.room.size
    faults = []
    for section in ("sources", "hoods"):
        for i, item in _items(data, section):
            found = next((p for p in getattr(workplace, section) if p.name == str(item.get("name", "")).strip()), None)
            if found is None:
                continue
            key, points = (found.place_key, found.points) if isinstance(found, Source) else ("at", (found.at,))
            out = next((p for p in points if any(not 0 <= x <= s for x, s in zip(p, size, strict=True))), None)
            if out:
                place, room = ", ".join(f"{x:g}" for x in out), " x ".join(f"{s:g}" for s in size)
                message = f"[{place}] m is outside the room of {room} m; move the {section[:-1]} or mend the room"
                faults.append(tree.fault((section, i, key), message))
    return faults
