"""What really flows, in sentences."""

from hoodwright.tasks.as_built.live import LiveDucts, Tried
from hoodwright.units import show

MOST_NAMES = 4


def sentence(live: LiveDucts, tried: Tried, system: str) -> str:
    """The answer to "what really flows?": what is wrong, hood by hood, then what the fans do."""
    if not live.ducts:
        return "The file has no ducts yet; add 'ducts:' to see what flows."
    if not live.built:
        return no_curve(live)
    wrong = [*_hoods(live, system), *_ducts(live)]
    first = "; ".join(wrong) if wrong else "every open hood gets what it was meant to get, and nothing settles"
    fans = [_fan(name, live, system) for name, fan in live.fans.items() if fan.built]
    text = f"{_state(tried, live)} {first}. {' '.join(fans)}".strip()
    left = f" {no_curve(live)}" if live.uncurved else ""
    return text + left


def no_curve(live: LiveDucts) -> str:
    """Why nothing, or not all, is told as built; and what is shown instead."""
    fans = _names([f"the {name}" for name in live.uncurved]) or "any fan"
    rest = "its part of the drawing shows" if live.built else "the drawing shows"
    return (
        f"The file gives no curve for {fans}, so what really flows there cannot be told; {rest} the intended flows. "
        "Add 'curve' and 'pressure' to the fan, from the maker's sheet."
    )


def _state(tried: Tried, live: LiveDucts) -> str:
    parts = []
    if live.cleaners:
        share = round(100 * tried.load)
        parts.append({0: "clean filters", 100: "dirty filters"}.get(share, f"filters {share} % dirty"))
    parts += [f"the {fan} at {round(100 * speed)} % of its speed" for fan, speed in tried.speeds.items()]
    if tried.closed:
        parts.append(f"{_names(sorted(f'the {name}' if name in live.hoods else name for name in tried.closed))} shut")
    return f"With {' and '.join(parts)}," if parts else "As built,"


def _hoods(live: LiveDucts, system: str) -> list[str]:
    short = sorted((h for h in live.hoods.values() if "short" in h.troubles), key=lambda hood: hood.share)
    words = []
    for hood in short[:MOST_NAMES]:
        flow, of = (show(q, "flow", system) for q in (hood.flow, hood.intended))
        words.append(f"the {hood.name} gets {flow} of {of} ({round(100 * hood.share)} %)")
    if len(short) > MOST_NAMES:
        words.append(f"{len(short) - MOST_NAMES} more hoods fall short")
    back = [hood.name for hood in live.hoods.values() if "reversed" in hood.troubles]
    return words + ([f"air blows out of {_names(back)}"] if back else [])


def _ducts(live: LiveDucts) -> list[str]:
    words = []
    for key, told in (("settles", "dust settles in"), ("reversed", "the flow is reversed in")):
        names = [duct.name for duct in live.ducts.values() if key in duct.troubles]
        words += [f"{told} {_names(names)}"] if names else []
    return words


def _fan(name: str, live: LiveDucts, system: str) -> str:
    fan = live.fans[name]
    power = f" and takes {show(fan.power, 'power', system)}" if fan.power is not None else ""
    rise, flow = show(fan.pressure, "pressure", system), show(fan.flow, "flow", system)
    stable = "; it is not stable there" if "unstable" in fan.troubles else ""
    return f"The {name} moves {flow}, raises {rise} of total pressure{power}{stable}."


def _names(names: list[str]) -> str:
    told = names if len(names) <= MOST_NAMES else [*names[:MOST_NAMES], f"{len(names) - MOST_NAMES} more"]
    return " and ".join([", ".join(told[:-1]), told[-1]] if len(told) > 1 else told)
