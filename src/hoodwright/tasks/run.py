"""Ducts, junctions and fans as answers: numbers, outcomes, and the lines that lead to them."""

from dataclasses import dataclass

from hoodwright.results import Outcome, Verdict
from hoodwright.tasks.assessment import AirAnswer, DuctAnswer, FanAnswer, JunctionAnswer, Line
from hoodwright.tasks.fan_answers import fan_answer, fan_sides, power_of
from hoodwright.tasks.hood_entry import entry_loss, filter_loss, resistance_line
from hoodwright.tasks.junctions import junctions
from hoodwright.tasks.lines import digits
from hoodwright.tasks.sections import (
    CLEANED,
    NEVER_SETTLES,
    Section,
    carried,
    first_section,
    keeps_moving,
    least_velocity,
)
from hoodwright.tasks.shapes import area_of
from hoodwright.tasks.streams import fan_of, way_from
from hoodwright.tasks.walk import Walk, step_lines
from hoodwright.units import show
from hoodwright.workplace.model import Duct, Hood, Workplace

FASTEST_USUAL = 30.0  # m/s, common practice
RUN_SUM = "balance-rule, sum of losses along a run"


@dataclass(frozen=True)
class Effect:
    """What a hood's ducts and fan do at another flow: fan power, the first duct too slow, the fastest and its speed."""

    fan_power: float | None = None
    too_slow: str | None = None
    fastest: tuple[str, float] | None = None


@dataclass(frozen=True)
class Run:
    """Ducts, junctions and fans of a workplace at one set of hood flows."""

    ducts: tuple[DuctAnswer, ...]
    junctions: tuple[JunctionAnswer, ...]
    fans: tuple[FanAnswer, ...]


def run_of(workplace: Workplace, flows: dict[str, float], air: AirAnswer, system: str) -> Run:
    """The hand method at the given hood flows, with loaded cleaners; fans are also given with clean ones."""
    if not workplace.ducts:
        return Run((), (), ())
    loaded = Walk(workplace, flows, air, loaded=True)
    clean = Walk(workplace, flows, air, loaded=False)
    return Run(
        tuple(_duct_answer(section, loaded, system) for section in loaded.sections.values()),
        tuple(junctions(loaded, system)),
        tuple(fan_answer(fan, loaded, clean) for fan in workplace.fans),
    )


def suction_of(hood: Hood, workplace: Workplace, flow: float, air: AirAnswer) -> tuple[float | None, Line | None]:
    """Suction right behind a hood at a flow, its filter loaded, and the line to recompute it."""
    duct = next((duct for duct in workplace.ducts if duct.start == hood.name), None)
    if duct is None:
        return None, None
    section = first_section(duct, flow, carried(workplace, hood), air)
    loss, filtered = entry_loss(hood, duct, workplace), filter_loss(hood, flow, loaded=True)
    suction = (1 + loss.coefficient) * section.p_velocity + filtered
    density, velocity = digits(section.air.density), digits(section.velocity)
    also = (" + filter", f" + {digits(filtered)}") if filtered else ("", "")
    filled = f"(1 + {digits(loss.coefficient)}) x {density} x {velocity}² / 2{also[1]} = {digits(suction)} Pa"
    return suction, Line(f"hood suction = (1 + F) rho V² / 2{also[0]}, {loss.name}", filled, loss.source)


def _duct_answer(section: Section, walk: Walk, system: str) -> DuctAnswer:
    duct, name = section.duct, section.duct.name
    lowest = least_velocity(section.carries)
    start, end = walk.start[name], walk.end[name]
    return DuctAnswer(
        name=name,
        start_from=duct.start,
        to=duct.to,
        size=_size(duct, system),
        flow=section.flow,
        velocity=section.velocity,
        velocity_pressure=section.p_velocity,
        static_pressure_start=start,
        static_pressure=end,
        transport_velocity=lowest,
        carries=section.carries,
        transport=_transport(section, lowest, system),
        lines=(*_loss_lines(section, walk), *_pressure_lines(section, start, end, walk)),
        friction_per_length=section.friction_factor / section.diameter * section.p_velocity,
        temperature=section.air.temperature,
        density=section.air.density,
    )


def _loss_lines(section: Section, walk: Walk) -> list[Line]:
    duct, vp, velocity = section.duct, digits(section.p_velocity), digits(section.velocity)
    length, diameter, factor = (digits(x) for x in (duct.length, section.diameter, section.friction_factor))
    lines = [
        *_hot_lines(section, walk),
        Line("V = Q / A", f"{digits(section.flow)} / {digits(area_of(duct))} = {velocity} m/s", "continuity"),
        Line("VP = rho V² / 2", f"{digits(section.air.density)} x {velocity}² / 2 = {vp} Pa", "definition"),
        Line(
            f"friction = f L / D x VP, f by Colebrook at Re {digits(section.reynolds, 4)}, {duct.material}",
            f"{factor} x {length} / {diameter} x {vp} = {digits(section.friction)} Pa",
            "colebrook39, 3.7 and 2.51; roughness-table, absolute roughness",
        ),
    ]
    for loss in section.fittings:
        filled = f"{digits(loss.coefficient)} x {vp} = {digits(loss.coefficient * section.p_velocity)} Pa"
        if loss.fixed is not None:
            lines.append(Line(f"{loss.name}, as set at this flow", f"{digits(loss.fixed)} Pa", loss.source))
        else:
            lines.append(Line(f"{loss.name} = K x VP", filled, loss.source))
    return lines


def _hot_lines(section: Section, walk: Walk) -> list[Line]:
    """How density and flow follow from a temperature that is not the room's, where the duct is the first to have it."""
    room, here, inflow = walk.air, section.air, walk.arriving(section.duct.start)
    if here.temperature == room.temperature or any(s.air is here for s in inflow):
        return []
    warm = f"{digits(room.density)} x {digits(room.temperature)} / {digits(here.temperature)} = {digits(here.density)}"
    lines = [Line("rho = rho room x T room / T, at one pressure", f"{warm} kg/m3", "ashrae-f17, ch. 1, eq. 11")]
    if inflow and section.duct.temperature is None:
        heat = " + ".join(f"{digits(s.mass_flow)} x {digits(s.air.temperature)}" for s in inflow)
        filled = f"({heat}) / {digits(section.mass_flow)} = {digits(here.temperature)} K"
        lines.insert(0, Line("T = mean of what arrives, by mass", filled, "common-practice"))
    if inflow:
        masses = " + ".join(f"{digits(s.flow)} x {digits(s.air.density)}" for s in inflow)
        filled = f"({masses}) / {digits(here.density)} = {digits(section.flow)} m3/s"
        lines.append(Line("Q = mass that arrives / rho", filled, "continuity"))
    return lines


def _size(duct: Duct, system: str) -> str:
    width, height = (show(side, "length", system) for side in duct.sides)
    return f"round {width}" if duct.is_round else f"{'oval ' if duct.oval else ''}{width} by {height}"


def _transport(section: Section, lowest: float, system: str) -> Outcome:
    fast, least = show(section.velocity, "velocity", system), show(lowest, "velocity", system)
    if section.carries == CLEANED:
        return Outcome(Verdict.MEETS, f"{fast}; what an air cleaner leaves settles at no speed, while it works")
    if section.carries in NEVER_SETTLES:
        return Outcome(Verdict.MEETS, f"{fast}; vapour settles at no speed, {least} and more is usual for economy")
    if section.velocity >= lowest:
        return Outcome(Verdict.MEETS, f"{fast}; {section.carries} needs at least {least} to stay airborne")
    return Outcome(Verdict.SHORT, f"{fast} is slower than the {least} that keep {section.carries} moving: it settles")


def _pressure_lines(section: Section, start: float, end: float, walk: Walk) -> list[Line]:
    filled = f"{digits(start)} - {digits(section.loss)} = {digits(end)} Pa"
    last = Line("SP at the end = SP at the start - losses", filled, RUN_SUM)
    if section.duct.name in walk.discharge:
        return [*_back_from(section, end, walk), last]
    if section.duct.start in walk.hoods:
        return [*_behind_hood(section, start, walk), last]
    return [*_behind_node(section, start, walk), last]


def _behind_hood(section: Section, start: float, walk: Walk) -> list[Line]:
    loss, filtered, hood = walk.entry(section), walk.in_hood(section), walk.hoods[section.duct.start]
    lines, also = list(loss.lines), ("", "")
    if hood.filter:
        lines.append(resistance_line(f"filter in {hood.name}", hood.filter, section.flow))
        also = (" - filter", f" - {digits(filtered)}")
    filled = f"-(1 + {digits(loss.coefficient)}) x {digits(section.p_velocity)}{also[1]} = {digits(start)} Pa"
    return [*lines, Line(f"SP behind the hood = -(1 + F) VP{also[0]}, {loss.name}", filled, loss.source)]


def _behind_node(section: Section, start: float, walk: Walk) -> list[Line]:
    """How the static pressure at the start of a duct follows from the ducts that arrive there."""
    step = walk.step_into(section)
    lowest = min(walk.end[s.duct.name] for s in walk.arriving(section.duct.start))
    taken = [f" - {digits(p)}" for p in (step.acceleration, step.contraction, step.cleaner) if p]
    taken += [f" + {digits(step.regain)}"] if step.regain else []
    words = "lowest SP that arrives - losses there" + (" + regain" if step.regain else "")
    filled = f"{digits(lowest)}{''.join(taken)} = {digits(start)} Pa"
    return [*step_lines(step, section, walk), Line(f"SP at the start = {words}", filled, RUN_SUM)]


def _back_from(section: Section, end: float, walk: Walk) -> list[Line]:
    """Behind a fan: how the pressure at the end of a duct follows from the next one, where something is spent there."""
    if section.duct.to == "outside":
        return []
    onward = walk.leaving(section.duct.to)
    step = walk.step_into(onward)
    if not step.total:
        return []
    filled = f"{digits(walk.start[onward.duct.name])} + {digits(step.total)} = {digits(end)} Pa"
    return [
        *step_lines(step, onward, walk),
        Line("SP at the end = SP at the start of the next + losses there", filled, RUN_SUM),
    ]


def effect_of(workplace: Workplace, hood: Hood, flows: dict[str, float], air: AirAnswer) -> Effect:
    """What the ducts and the fan of one hood do at the given flows; quicker than the whole run."""
    fan = next((fan for fan in workplace.fans if fan.name == fan_of(workplace, hood)), None)
    if fan is None:
        return Effect()
    walk = Walk(workplace, flows, air, loaded=True)
    total_in, _, total_out, flow = fan_sides(fan, walk)
    way = [walk.sections[name] for name in way_from(workplace, hood)]
    slow = (s.duct.name for s in way if not keeps_moving(s.carries, s.velocity))
    fastest = max(way, key=lambda section: section.velocity)
    power = power_of(fan, flow, total_out - total_in)
    return Effect(power, next(slow, None), (fastest.duct.name, fastest.velocity))
