"""Hoods of grinding, buffing and polishing wheels, discs and belts: their flow is a table's."""

import math
from dataclasses import dataclass, replace
from typing import cast

from hoodwright import hoods
from hoodwright.errors import RangeError
from hoodwright.results import Hint
from hoodwright.tasks.assessment import Bound, LawNeed, Line, SourceNeed
from hoodwright.tasks.hint_tools import Case, down, flow_needed, hint, rounded
from hoodwright.tasks.lines import digits
from hoodwright.tasks.people import person_between
from hoodwright.tasks.receiving.thrown import missed
from hoodwright.tasks.receiving.wheel_cautions import cautions
from hoodwright.tasks.release import capture_velocity_of
from hoodwright.tasks.shapes import area_of
from hoodwright.units import show
from hoodwright.workplace.model import ReceivingHood, Source, Wheel, Workplace

__all__ = ["cautions", "disturbance", "hints", "need_of", "refusal"]

CFM = 4.719474432e-4
CLOSE = 0.2  # m from the rim, or the size of the wheel where that is more: so near, a hood counts as close
AT = 0.01  # m, nearer than that it is said to be at the wheel
LOOKS = math.cos(math.radians(60))
WIDER = "of the widths where it is wider"


@dataclass(frozen=True)
class Stand:
    """How a hood stands to its wheel: from the rim to the middle of the opening, and whether it looks at it."""

    gap: float
    close: float
    looks: bool

    @property
    def is_close(self) -> bool:
        """Whether the table, which is for hoods close to the wheel, can speak of it."""
        return self.looks and self.gap <= self.close * (1 + 1e-9)


def stand_of(hood: ReceivingHood, source: Source) -> Stand:
    """How the hood stands to the wheel, whose middle is the middle of the source."""
    wheel = _wheel(source)
    distance = math.dist(hood.at, source.centre)
    gap = max(0.0, distance - (wheel.diameter or 0.0) / 2)
    ahead = sum((c - h) * f for c, h, f in zip(source.centre, hood.at, hood.facing, strict=True))
    return Stand(gap, max(CLOSE, wheel.diameter or wheel.width or 0.0), distance <= AT or ahead >= LOOKS * distance)


def need_of(
    hood: ReceivingHood, source: Source, workplace: Workplace, design_flow: float | None, system: str
) -> SourceNeed:
    """What a wheel asks of its hood, by the table; nothing can be told beyond the table or of a hood far away."""
    stand = stand_of(hood, source)
    why = _untold(hood, source, stand, system)
    laws = () if why else (_with_others(wheel_law(_wheel(source)), hood, source, workplace),)
    velocity, basis, basis_source = capture_velocity_of(source, workplace, system)
    if laws:
        velocity = laws[0].flow / area_of(hood.opening)
        basis, basis_source = "the table's flow through the opening of the hood", laws[0].source
    return SourceNeed(
        source=source.name,
        distance=stand.gap,
        off_axis=0.0,
        capture_velocity=velocity,
        basis=basis,
        basis_source=basis_source,
        laws=laws,
        bound=Bound(0.0, None, why, ""),
        velocity=design_flow / area_of(hood.opening) if laws and design_flow else None,
        place=f"{show(stand.gap, 'length', system, 2)} from" if stand.gap > AT else "at",
        velocity_kind="face velocity" if laws else "capture velocity",
        untold=why,
    )


def wheel_law(wheel: Wheel) -> LawNeed:
    """The row of the table for a wheel, disc or belt; RangeError beyond the table."""
    if wheel.work == "belt":
        width = wheel.width or 0.0
        flow = float(hoods.belt_flow(width))
        return _row_law(flow, f"belt {digits(width)} m wide", "cal-5152, table V-5", "belts up to 0.229 m (9 in) wide")
    diameter = wheel.diameter or 0.0
    if wheel.width is None:
        flow = float(hoods.disc_flow(wheel.work, diameter))
        table = "V-4" if "vertical" in wheel.work else "V-3"
        words = f"{wheel.work} {digits(diameter)} m across"
        return _row_law(flow, words, f"cal-5152, table {table}", "discs up to 1.83 m (72 in)")
    return _width_law(wheel.work, diameter, wheel.width)


def _width_law(work: str, diameter: float, width: float) -> LawNeed:
    flow, widest = (
        float(f) for f in (hoods.wheel_flow(work, diameter, width), hoods.wheel_table_width(work, diameter))
    )
    row = float(hoods.wheel_flow(work, diameter, widest))
    table = "G-4" if work in ("grinding", "cutting off") else "G-5"
    law = _row_law(
        row, f"wheel {digits(diameter)} m across", f"us-1910-94, table {table}", "wheels up to 0.914 m (36 in)"
    )
    if width <= widest:
        return law
    formula = f"Q as the table has it for the diameter, times the ratio {WIDER}"
    filled = f"{law.line.filled}; x {digits(width)} / {digits(widest)} = {digits(flow)} m3/s"
    return replace(law, flow=flow, line=replace(law.line, formula=formula, filled=filled))


def _row_law(flow: float, words: str, source: str, reach: str) -> LawNeed:
    line = Line("Q as the table has it", f"{words}: {flow / CFM:.0f} cfm = {digits(flow)} m3/s", source)
    reach += ", for a hood close to it that takes the whole stream; the table does not know the speed"
    return LawNeed(f"table {source.split(', table ')[1]}", flow, line, reach)


def _with_others(law: LawNeed, hood: ReceivingHood, source: Source, workplace: Workplace) -> LawNeed:
    """The flow of all wheels of the hood, since the table is for each."""
    others = [workplace.source(name) for name in hood.serves if name != source.name]
    wheels = [other for other in others if other.wheel is not None and not _beyond(other.wheel, "SI")]
    if not wheels:
        return law
    added = [wheel_law(_wheel(other)).flow for other in wheels]
    flow = law.flow + sum(added)
    names = " and the ".join(other.name for other in wheels)
    filled = f"{law.line.filled}; with the {names} + {' + '.join(map(digits, added))} = {digits(flow)} m3/s"
    return replace(law, flow=flow, line=replace(law.line, filled=filled))


def refusal(hood: ReceivingHood, source: Source, workplace: Workplace) -> str | None:
    """Why no flow of this hood can be called enough for the wheel; None where one can."""
    if hood.is_canopy:
        return f"the {source.name} throws its stream out: a hood above it that looks down does not take it"
    return missed(hood, source, workplace.units)


def disturbance(need: SourceNeed, hood: ReceivingHood, workplace: Workplace, system: str) -> str | None:
    """A person between the wheel and its hood, or a draught faster than the air in the opening."""
    if need.untold:
        return None
    person = person_between(hood, workplace.source(need.source), workplace)
    if person:
        return f"{person} stands between the {need.source} and its hood, in the stream"
    slowest = hoods.capture_velocity_range("thrown")[0]
    if need.capture_velocity < slowest * (1 - 1e-9):
        has, least = show(need.capture_velocity, "velocity", system, 2), show(slowest, "velocity", system)
        return (
            f"the table's flow makes {has} in an opening so large, less than the {least} that a thrown stream takes: "
            f"close the hood round the {need.source}"
        )
    draught = workplace.room.draught
    gust = draught.speed + draught.wander if draught else 0.0
    if gust >= need.capture_velocity:
        air, asked = show(gust, "velocity", system), show(need.capture_velocity, "velocity", system)
        return f"draughts reach {air}, the {asked} in the opening or more: shield the {need.source}"
    return None


def hints(case: Case) -> tuple[Hint, ...]:
    """What would help most at a wheel: a hood that stands close and looks at it, a narrower wheel, or more flow."""
    found = [_placed(case), _narrower(case), _more_flow(case)]
    return tuple(one for one in found if one is not None)


def _placed(case: Case) -> Hint | None:
    """The hood close to the wheel, where now the table cannot speak of it."""
    source = case.workplace.source(case.worst.source)
    stand = stand_of(cast(ReceivingHood, case.hood), source)
    if stand.is_close:
        return None
    try:
        flow = rounded(wheel_law(_wheel(source)).flow, "flow", case.system, math.ceil)
    except RangeError:
        return None
    close = rounded(stand.close, "length", case.system, down)
    near, asked = show(close, "length", case.system), show(flow, "flow", case.system)
    text = f"within {near} of the {source.name} and facing it, the table asks {asked}"
    return hint(case, "closer", text, flow)


def _narrower(case: Case) -> Hint | None:
    source = case.workplace.source(case.worst.source)
    wheel = _wheel(source)
    if case.worst.untold or wheel.width is None or wheel.diameter is None:
        return None
    widest = float(hoods.wheel_table_width(wheel.work, wheel.diameter))
    if wheel.width <= widest * (1 + 1e-9) or len(case.hood.serves) > 1:
        return None
    flow = float(hoods.wheel_flow(wheel.work, wheel.diameter, widest))
    flow = rounded(flow, "flow", case.system, math.ceil)
    wide = show(rounded(widest, "length", case.system, down), "length", case.system)
    text = f"with a wheel up to {wide} wide, the {source.name} asks {show(flow, 'flow', case.system)}"
    return hint(case, "narrower wheel", text, flow)


def _more_flow(case: Case) -> Hint | None:
    flow, intended = flow_needed(case.hood, case.workplace), case.hood.intended_flow
    if flow is None or (intended is not None and intended >= flow):
        return None
    flow = rounded(flow, "flow", case.system, math.ceil)
    return hint(case, "more flow", f"{show(flow, 'flow', case.system)} is what the table asks where it is now", flow)


def _untold(hood: ReceivingHood, source: Source, stand: Stand, system: str) -> str:
    """Why the table says nothing; empty where it does."""
    wheel = _wheel(source)
    if not stand.looks:
        return "the hood does not look at it: the table is for a hood that takes the whole stream"
    if not stand.is_close:
        gap, near = show(stand.gap, "length", system), show(stand.close, "length", system)
        return f"its hood stands {gap} away: the table is for a hood close by, which is taken as within {near}"
    return _beyond(wheel, system) or _too_narrow(hood, wheel, system)


def _too_narrow(hood: ReceivingHood, wheel: Wheel, system: str) -> str:
    """Why the opening cannot take the whole stream; empty where it can."""
    widest = max(hood.opening.sides)
    if wheel.width is None or widest >= wheel.width * (1 - 1e-9):
        return ""
    across, width = show(widest, "length", system), show(wheel.width, "length", system)
    return f"its hood opens {across} at the widest and the wheel or belt is {width} wide: part of the stream passes"


def _beyond(wheel: Wheel, system: str) -> str:
    """Why the table has no row for a wheel; empty where it has."""
    try:
        wheel_law(wheel)
        return ""
    except RangeError:
        pass
    size = wheel.width if wheel.work == "belt" else wheel.diameter
    what = "wide" if wheel.work == "belt" else "across"
    limit = 0.2286 if wheel.work == "belt" else 0.9144 if wheel.width is not None else 1.8288
    got, ends = show(size or 0.0, "length", system), show(limit, "length", system)
    return f"it is {got} {what} and the published table ends at {ends}: no flow is published for it"


def _wheel(source: Source) -> Wheel:
    assert source.wheel is not None
    return source.wheel
