"""Invented shops with many ducts: sub-mains with a number of hoods each, which join one main."""

import itertools
from collections.abc import Iterator

HEAD = """hoodwright: 1
name: Invented shop
room: {size: [60 m, 40 m, 8 m]}
contaminants:
  - {name: wood dust, kind: dust}
"""
FLOWS = (600, 637, 674, 711, 748, 785, 822)  # m3/h
CURVE = ((0.0, 3600), (0.3, 3700), (0.6, 3500), (1.0, 3000), (1.3, 2100), (1.7, 300))


def shop(hoods: int, each: int) -> str:
    """The text of a file with so many hoods, `each` on one sub-main; about two ducts a hood."""
    total = sum(_flow(i) for i in range(hoods))
    points = ", ".join(f"[{share * total:.0f} m3/h, {pressure} Pa]" for share, pressure in CURVE)
    lines = [HEAD, "sources:"]
    lines += [
        f"  - {{name: saw {i}, contaminant: wood dust, at: {_at(i, hoods, 2.0)}, dispersion: gentle}}"
        for i in range(hoods)
    ]
    lines += ["hoods:", *(_hood(i, hoods) for i in range(hoods))]
    lines += ["ducts:", *_ducts(hoods, each)]
    lines.append(f"fans:\n  - {{name: fan, efficiency: 70 %, pressure: total, curve: [{points}]}}")
    return "\n".join(lines) + "\n"


def _flow(hood: int) -> int:
    return FLOWS[hood % len(FLOWS)]


def _at(hood: int, hoods: int, y: float) -> str:
    return f"[{1 + 58 * hood / hoods:.3f} m, {y} m, 1 m]"


def _hood(i: int, hoods: int) -> str:
    return (
        f"  - {{name: hood {i}, type: capturing, serves: [saw {i}], opening: {{round: 150 mm}}, "
        f"at: {_at(i, hoods, 2.12)}, facing: [0, -1, 0], intended_flow: {_flow(i)} m3/h}}"
    )


def _ducts(hoods: int, each: int) -> Iterator[str]:
    names = (f"d{i}" for i in itertools.count())
    main, carried = "", 0
    for group, first in enumerate(range(0, hoods, each)):
        node, flow = f"hood {first}", _flow(first)
        for i in range(first + 1, min(hoods, first + each)):
            meet = f"G{group}.{i - first}"
            yield _duct(next(names), node, meet, flow)
            yield _duct(next(names), f"hood {i}", meet, _flow(i), ", joins_at: 30 deg")
            node, flow = meet, flow + _flow(i)
        if main:
            yield _duct(next(names), main, f"M{group}", carried)
            yield _duct(next(names), node, f"M{group}", flow, ", joins_at: 30 deg")
        main, carried = f"M{group}" if main else node, carried + flow
    yield _duct("main", main, "fan", carried)
    yield _duct("stack", "fan", "outside", carried)


def _duct(name: str, start: str, end: str, flow: int, more: str = "") -> str:
    size = max(80, round((flow / 3600 / 20 / 0.785) ** 0.5 * 1000))
    return f"  - {{name: {name}, from: {start}, to: {end}, round: {size} mm, length: 3 m{more}}}"
