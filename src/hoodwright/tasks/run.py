"""Ducts, junctions and fans as answers: numbers, outcomes, and the lines that lead to them."""

from dataclasses import dataclass

from hoodwright import ducts as d
from hoodwright.results import Outcome, Verdict
from hoodwright.tasks.assessment import AirAnswer, DuctAnswer, FanAnswer, JunctionAnswer, Line
from hoodwright.tasks.laws import area_of
from hoodwright.tasks.lines import digits
from hoodwright.tasks.streams import fan_of, way_from
from hoodwright.tasks.walk import Section, Walk, acceleration_loss, hood_loss
from hoodwright.units import show
from hoodwright.workplace.model import Duct, Fan, Hood, Workplace

FASTEST_USUAL = 30.0  # m/s, common practice
NEVER_SETTLES = "vapour"


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
        tuple(_junctions(loaded)),
        tuple(_fan_answer(fan, loaded, clean) for fan in workplace.fans),
    )


def _duct_answer(section: Section, walk: Walk, system: str) -> DuctAnswer:
    duct, name = section.duct, section.duct.name
    lowest = _slowest(section)
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
        lines=(*_loss_lines(section, walk.air), *_pressure_lines(section, start, end, walk)),
        friction_per_length=section.friction_factor / section.diameter * section.p_velocity,
    )


def _loss_lines(section: Section, air: AirAnswer) -> list[Line]:
    duct, vp, velocity = section.duct, digits(section.p_velocity), digits(section.velocity)
    length, diameter, factor = (digits(x) for x in (duct.length, section.diameter, section.friction_factor))
    lines = [
        Line("V = Q / A", f"{digits(section.flow)} / {digits(area_of(duct))} = {velocity} m/s", "continuity"),
        Line("VP = rho V² / 2", f"{digits(air.density)} x {velocity}² / 2 = {vp} Pa", "definition"),
        Line(
            f"friction = f L / D x VP, f by Colebrook at Re {digits(section.reynolds, 4)}, {duct.material}",
            f"{factor} x {length} / {diameter} x {vp} = {digits(section.friction)} Pa",
            "colebrook39, 3.7 and 2.51; roughness-table, absolute roughness",
        ),
    ]
    for loss in section.fittings:
        filled = f"{digits(loss.coefficient)} x {vp} = {digits(loss.coefficient * section.p_velocity)} Pa"
        lines.append(Line(f"{loss.name} = K x VP", filled, loss.source))
    return lines


def _size(duct: Duct, system: str) -> str:
    width, height = (show(side, "length", system) for side in duct.sides)
    return f"round {width}" if duct.is_round else f"{width} by {height}"


def _transport(section: Section, lowest: float, system: str) -> Outcome:
    fast, least = show(section.velocity, "velocity", system), show(lowest, "velocity", system)
    if section.carries == NEVER_SETTLES:
        return Outcome(Verdict.MEETS, f"{fast}; vapour settles at no speed, {least} and more is usual for economy")
    if section.velocity >= lowest:
        return Outcome(Verdict.MEETS, f"{fast}; {section.carries} needs at least {least} to stay airborne")
    return Outcome(Verdict.SHORT, f"{fast} is slower than the {least} that keep {section.carries} moving: it settles")


def _pressure_lines(section: Section, start: float, end: float, walk: Walk) -> list[Line]:
    filled = f"{digits(start)} - {digits(section.loss)} = {digits(end)} Pa"
    last = Line("SP at the end = SP at the start - losses", filled, "balance-rule, sum of losses along a run")
    if section.duct.name in walk.discharge:
        return [last]
    hood = walk.hoods.get(section.duct.start)
    return [*(_behind_hood(hood, section, start) if hood else _behind_node(section, start, walk)), last]


def _behind_hood(hood: Hood, section: Section, start: float) -> list[Line]:
    loss, shape = hood_loss(hood)
    filled = f"-(1 + {loss:g}) x {digits(section.p_velocity)} = {digits(start)} Pa"
    return [Line(f"SP behind the hood = -(1 + F) VP, {shape}", filled, "exam-equations, hood-loss figure")]


def _behind_node(section: Section, start: float, walk: Walk) -> list[Line]:
    """How the static pressure at the start of a duct follows from the ducts that arrive there."""
    node, inflow = section.duct.start, walk.arriving(section.duct.start)
    lines, taken = [], [digits(min(walk.end[s.duct.name] for s in inflow))]
    acceleration = acceleration_loss(section, inflow)
    if acceleration:
        brought = digits(section.p_velocity - acceleration)
        filled = f"{digits(section.p_velocity)} - {brought} = {digits(acceleration)} Pa"
        source = "balance-rule, acceleration behind a junction"
        lines.append(Line("acceleration = VP - VP of what arrives, by flow", filled, source))
        taken.append(digits(acceleration))
    if node in walk.cleaners:
        rated = walk.cleaners[node].resistance
        ratio = f"({digits(section.flow)} / {digits(rated.at)})^{rated.exponent:g}"
        loss = digits(walk.cleaner_loss(node, section.flow))
        filled = f"{digits(rated.dirty)} x {ratio} = {loss} Pa"
        lines.append(Line(f"{node}, dirty = rated x (Q / Q rated)^n", filled, "stated by the user"))
        taken.append(loss)
    filled = f"{' - '.join(taken)} = {digits(start)} Pa"
    source = "balance-rule, sum of losses along a run"
    return [*lines, Line("SP at the start = lowest SP that arrives - losses there", filled, source)]


def _junctions(walk: Walk):
    for node in dict.fromkeys(s.duct.to for s in walk.sections.values() if s.duct.name not in walk.discharge):
        sides = walk.arriving(node)
        if len(sides) < 2:
            continue
        pressures = {s.duct.name: walk.end[s.duct.name] for s in sides}
        governing = min(pressures, key=lambda name: pressures[name])
        weakest = max(pressures.values())
        ratio = float(d.balance_ratio(weakest, pressures[governing]))
        correctable = [s for s in sides if s.duct.name != governing and ratio >= d.CORRECT_FROM]
        corrected = tuple(
            (s.duct.name, float(d.corrected_flow(s.flow, pressures[governing], pressures[s.duct.name])))
            for s in correctable
        )
        advice = d.balance_advice(ratio).value
        source = "balance-rule, ratio 0.95 / 0.80"
        yield JunctionAnswer(node, governing, tuple(pressures.items()), ratio, advice, corrected, source)


def effect_of(workplace: Workplace, hood: Hood, flows: dict[str, float], air: AirAnswer) -> Effect:
    """What the ducts and the fan of one hood do at the given flows; quicker than the whole run."""
    fan = next((fan for fan in workplace.fans if fan.name == fan_of(workplace, hood)), None)
    if fan is None:
        return Effect()
    walk = Walk(workplace, flows, air, loaded=True)
    total_in, _, total_out, flow = _fan_sides(fan, walk)
    power = float(d.shaft_power(flow, total_out - total_in, fan.efficiency)) if fan.efficiency else None
    way = [walk.sections[name] for name in way_from(workplace, hood)]
    slow = (s.duct.name for s in way if s.carries != NEVER_SETTLES and s.velocity < _slowest(s))
    fastest = max(way, key=lambda section: section.velocity)
    return Effect(power, next(slow, None), (fastest.duct.name, fastest.velocity))


def _slowest(section: Section) -> float:
    return d.transport_velocity_range(section.carries)[0]


def _fan_answer(fan: Fan, loaded: Walk, clean: Walk) -> FanAnswer:
    total_in, static_out, total_out, flow = _fan_sides(fan, loaded)
    total = float(d.fan_total_pressure(total_out, total_in))
    clean_in, _, clean_out, _ = _fan_sides(fan, clean)
    power = float(d.shaft_power(flow, total, fan.efficiency)) if fan.efficiency else None
    air = float(d.air_power(flow, total))
    lines = [
        Line(
            "FTP = TP out - TP in",
            f"{digits(total_out)} - ({digits(total_in)}) = {digits(total)} Pa",
            "definition",
        ),
        Line(
            "air power = Q x FTP",
            f"{digits(flow)} x {digits(total)} = {digits(air)} W",
            "fan-sheet, air power",
        ),
    ]
    if power is not None:
        filled = f"{digits(air)} / {fan.efficiency:g} = {digits(power)} W"
        lines.append(Line("shaft power = air power / efficiency", filled, "fan-sheet, brake power"))
    return FanAnswer(
        name=fan.name,
        flow=flow,
        static_pressure=float(d.fan_static_pressure(static_out, total_in)),
        total_pressure=total,
        total_pressure_clean=float(d.fan_total_pressure(clean_out, clean_in)),
        air_power=air,
        efficiency=fan.efficiency,
        power=power,
        lines=tuple(lines),
    )


def _fan_sides(fan: Fan, walk: Walk) -> tuple[float, float, float, float]:
    """Total pressure at the inlet, static and total at the outlet, and the flow."""
    inflow, onward = walk.arriving(fan.name), walk.leaving(fan.name)
    worst = min(inflow, key=lambda section: walk.end[section.duct.name])
    total_in = walk.end[worst.duct.name] + worst.p_velocity
    static_out = walk.start[onward.duct.name]
    return total_in, static_out, static_out + onward.p_velocity, onward.flow
