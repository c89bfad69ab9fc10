"""Cautions and hints for a hood at the edge of an open tank."""

import math
from collections.abc import Iterator

from hoodwright.results import Caution, Hint, Quantity
from hoodwright.tasks.assessment import SourceNeed
from hoodwright.tasks.capturing.tank_laws import CITED, EQUATION, across, own_part, tank_trouble
from hoodwright.tasks.hint_tools import Case, flow_needed, hint, rounded
from hoodwright.units import show
from hoodwright.workplace.model import CapturingHood, Source, Workplace

ONE_SIDE, TWO_SIDES, WIDEST = 0.5, 0.9, 1.2  # m of width (20, 36 and 48 in); from memory
WIDTHS = "common-practice, widths of tanks, from memory"


def at_a_tank(need: SourceNeed) -> bool:
    """Whether the table of lateral exhaust is among the laws of a need."""
    return any(law.equation == EQUATION for law in need.laws)


def tank_cautions(
    hood: CapturingHood, need: SourceNeed, source: Source, workplace: Workplace, system: str
) -> Iterator[Caution]:
    """What to mind at a tank: where the table does not hold, how wide it is, and what moves the air over it."""
    if source.tank is None:
        return
    trouble = tank_trouble(hood, source, system)
    if trouble:
        yield Caution(hood.name, f"{trouble}; it is not asked here", CITED)
        return
    if not at_a_tank(need):
        return
    part = own_part(hood, source, workplace)
    size, shared = across(hood, part), part is not source
    width = size.width * (2 if shared else 1)
    yield from _width(hood, source, width, system, shared=shared)
    if size.ratio > 1:
        text = f"seen from it the {source.name} is wider than long: draw along its longer side instead"
        yield Caution(hood.name, text, CITED)
    text = (
        f"the table for the {source.name} is withdrawn law, from memory, and for a place without draughts or a hoist's "
        "swing; covers, floating balls or foam take less air than any hood"
    )
    yield Caution(hood.name, text, CITED)


def _width(hood: CapturingHood, source: Source, width: float, system: str, *, shared: bool) -> Iterator[Caution]:
    wide = f"the air has {show(width, 'length', system)} of the {source.name} to cross"
    if width > WIDEST * (1 + 1e-9):
        most = show(WIDEST, "length", system)
        yield Caution(
            hood.name, f"{wide}; beyond {most} suction alone is not practical: push and pull, or cover", WIDTHS
        )
    elif width > TWO_SIDES * (1 + 1e-9) and not shared:
        least = show(TWO_SIDES, "length", system)
        yield Caution(hood.name, f"{wide}; beyond {least} draw from both long sides, or push and pull", WIDTHS)
    elif width > ONE_SIDE * (1 + 1e-9) and not shared:
        usual = show(ONE_SIDE, "length", system)
        yield Caution(hood.name, f"{wide}; beyond {usual} a hood on each long side is better", WIDTHS)


def tank_hints(case: Case) -> tuple[Hint | None, ...]:
    """What would save most at a tank: a baffle behind the hood, or hoods on both sides."""
    source = case.workplace.source(case.worst.source)
    if not isinstance(case.hood, CapturingHood) or source.tank is None or not at_a_tank(case.worst):
        return ()
    return _baffled(case, source), _two_sides(case, case.hood, source)


def _baffled(case: Case, source: Source) -> Hint | None:
    assert source.tank is not None
    behind = source.model_copy(update={"tank": source.tank.model_copy(update={"baffled": True})})
    flow = flow_needed(case.hood, _with_source(case.workplace, behind))
    if flow is None or flow >= case.worst.flow * (1 - 1e-9):
        return None
    flow = rounded(flow, "flow", case.system, math.ceil)
    size = across(case.hood, source)  # type: ignore[arg-type]
    high = show(size.width - size.set_back, "length", case.system)
    text = (
        f"with a wall or an upright plate {high} high behind it, as long as the {source.name}, "
        f"{show(flow, 'flow', case.system)} would be enough"
    )
    return hint(case, "baffle", text, flow)


def _two_sides(case: Case, hood: CapturingHood, source: Source) -> Hint | None:
    """An equal hood opposite, at the same height and set back alike; each then takes half."""
    if own_part(hood, source, case.workplace) is not source:
        return None
    other = _opposite(hood, source)
    workplace = case.workplace.model_copy(update={"hoods": (*case.workplace.hoods, other)})
    each = flow_needed(hood, workplace)
    if each is None or 2 * each >= case.worst.flow * (1 - 1e-9):
        return None
    each = rounded(each, "flow", case.system, math.ceil)
    text = (
        f"with an equal hood on the other side of the {source.name}, {show(each, 'flow', case.system)} each would be "
        f"enough, {show(2 * each, 'flow', case.system)} for both"
    )
    both = Quantity(2 * each, "flow")
    return Hint("two sides", text, both, None, both)


def _opposite(hood: CapturingHood, source: Source) -> CapturingHood:
    axis = 0 if abs(hood.facing[0]) > abs(hood.facing[1]) else 1
    at, facing = list(hood.at), list(hood.facing)
    at[axis], facing[axis] = 2 * source.centre[axis] - at[axis], -facing[axis]
    update = {"name": f"{hood.name} opposite", "at": tuple(at), "facing": tuple(facing), "serves": (source.name,)}
    return hood.model_copy(update=update)


def _with_source(workplace: Workplace, changed: Source) -> Workplace:
    sources = tuple(changed if source.name == changed.name else source for source in workplace.sources)
    return workplace.model_copy(update={"sources": sources})
