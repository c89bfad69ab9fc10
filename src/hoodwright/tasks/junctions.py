"""Junctions by the hand method: which side governs, and three ways to bring every other side up to it."""

import math
from collections.abc import Iterator

import numpy as np

from hoodwright import ducts as d
from hoodwright import hoods
from hoodwright.errors import NoSolution
from hoodwright.tasks.assessment import JunctionAnswer, Line, SideAdvice
from hoodwright.tasks.lines import digits
from hoodwright.tasks.sections import Section, keeps_moving
from hoodwright.tasks.walk import Walk
from hoodwright.units import show

INCH = 0.0254  # m, exact
NO_NEARER = 1e-6  # of the ratio
RULE = "balance-rule, ratio 0.95 / 0.80"
LATER = "later editions (greater over lesser, 1.05 / 1.20) say: {}"


def junctions(walk: Walk, system: str) -> Iterator[JunctionAnswer]:
    """Every node before the fans at which ducts meet."""
    for node in dict.fromkeys(s.duct.to for s in walk.sections.values() if s.duct.name not in walk.discharge):
        sides = walk.arriving(node)
        if len(sides) > 1:
            yield _junction(node, sides, walk, system)


def _junction(node: str, sides: list[Section], walk: Walk, system: str) -> JunctionAnswer:
    pressures = {s.duct.name: walk.end[s.duct.name] for s in sides}
    governing = min(pressures, key=lambda name: pressures[name])
    ratio = float(d.balance_ratio(max(pressures.values()), pressures[governing]))
    others = [s for s in sides if s.duct.name != governing]
    flows = {s.duct.name: float(d.corrected_flow(s.flow, pressures[governing], pressures[s.duct.name])) for s in others}
    corrected = tuple(flows.items()) if ratio >= d.CORRECT_FROM else ()
    advice, later = d.balance_advice(ratio), d.balance_advice_1_2(1 / ratio)
    return JunctionAnswer(
        node,
        governing,
        tuple(pressures.items()),
        ratio,
        advice.value,
        corrected,
        RULE,
        tuple(_side(s, node, pressures[governing], flows, walk, system) for s in others),
        "" if later is advice else LATER.format(later.value),
    )


def _side(
    section: Section, node: str, governing: float, flows: dict[str, float], walk: Walk, system: str
) -> SideAdvice:
    name = section.duct.name
    here, flow = walk.end[name], flows[name]
    ratio = float(d.balance_ratio(here, governing))
    damper = float(d.damper_loss(governing, here))
    more = sum(flows[s.duct.name] - s.flow for s in walk.arriving(node) if s.duct.name in flows)
    main_flow, fan_flow = walk.leaving(node).flow + more, _fan_flow(node, more, walk)
    size = _resize(section, walk, -governing, system)
    words = (
        _resize_words(section, size, ratio, system),
        _flow_words(ratio, flow, main_flow, fan_flow, system),
        f"damper: {show(damper, 'pressure', system)}, {damper / section.p_velocity:.2f} velocity pressures of {name}; "
        "lock it and mark its position",
    )
    exact, nearest, velocity, reached = size
    holds = velocity is not None and keeps_moving(section.carries, velocity)
    return SideAdvice(
        name=name,
        ratio=ratio,
        advice=d.balance_advice(ratio).value,
        diameter=exact,
        size=nearest,
        size_velocity=velocity,
        size_ratio=reached,
        size_holds=holds,
        flow=flow,
        main_flow=main_flow,
        fan_flow=fan_flow,
        damper=damper,
        damper_vp=damper / section.p_velocity,
        words=words,
        lines=tuple(_lines(section, here, governing, flow, damper, exact)),
    )


Size = tuple[float | None, float | None, float | None, float | None]


def _resize(section: Section, walk: Walk, suction: float, system: str) -> Size:
    """Exact diameter, nearest size of the series, its velocity, and the ratio that it reaches."""
    side = side_of(section, walk)
    try:
        exact = d.balancing_diameter(side, suction)
    except NoSolution:
        return None, None, None, None
    sizes = _series(system)
    reached = np.asarray(d.suction_at_diameter(side, sizes))
    ratios = np.minimum(reached, suction) / np.maximum(reached, suction)
    best = int(np.argmax(ratios))
    velocity = section.flow / (math.pi / 4 * sizes[best] ** 2)
    return exact, float(sizes[best]), float(velocity), float(ratios[best])


def side_of(section: Section, walk: Walk) -> d.Side:
    """A section as a side whose diameter may change: what is lost before it, in it, and whatever its size."""
    fixed, coefficient = section.fixed, section.coefficients
    before, brought = 0.0, None
    if section.duct.start in walk.hoods:
        entry = walk.entry(section)
        fixed += walk.in_hood(section)
        if entry.slot_area is None:
            coefficient += 1 + entry.coefficient
        else:
            slot = section.air.density * (section.flow / entry.slot_area) ** 2 / 2
            fixed, before, brought = fixed + hoods.SLOT_LOSS * slot, slot, slot
            coefficient += entry.behind
    else:
        step = walk.step_into(section)
        before = -min(walk.end[s.duct.name] for s in walk.arriving(section.duct.start)) + step.cleaner
        brought = step.brought
    return d.Side(
        flow=section.flow,
        length=section.duct.length,
        loss_coefficient=coefficient,
        roughness=d.roughness(section.duct.material),
        density=section.air.density,
        viscosity=section.air.viscosity,
        suction_before=before,
        p_velocity_before=brought,
        p_fixed=fixed,
    )


def _series(system: str) -> np.ndarray:
    """Diameters in which round ducts are made; in US units half inches to 8 in, then whole ones, by common practice."""
    if system == "SI":
        return d.standard_diameters()
    return np.array([*np.arange(3, 8, 0.5), *np.arange(8, 41)]) * INCH


def _resize_words(section: Section, size: Size, ratio: float, system: str) -> str:
    exact, nearest, velocity, reached = size
    if exact is None or nearest is None or velocity is None or reached is None:
        return f"another size: no diameter of {section.duct.name} reaches that suction at its flow"
    agrees = f"another size: a round duct of {show(exact, 'length', system)} would agree at the same flow"
    if reached < ratio + NO_NEARER:
        return f"{agrees}, and no size made comes nearer than the one it has"
    fast = show(velocity, "velocity", system)
    keeps = "keeps" if keeps_moving(section.carries, velocity) else "does not keep"
    return (
        f"{agrees}; of the sizes made {show(nearest, 'length', system)} comes nearest (ratio {reached:.2f}, {fast}, "
        f"which {keeps} {section.carries} moving)"
    )


def _flow_words(ratio: float, flow: float, main: float, fan: float | None, system: str) -> str:
    own, all_of_it = (show(q, "flow", system) for q in (flow, main))
    text = f"more flow: {own}; with every side corrected the main carries {all_of_it}"
    text += f", the fan {show(fan, 'flow', system)}" if fan is not None else ""
    return (
        text
        if ratio >= d.CORRECT_FROM
        else f"{text}. The rule corrects flows from a ratio of {d.CORRECT_FROM:.2f} only"
    )


def _fan_flow(node: str, more: float, walk: Walk) -> float | None:
    """Flow of the fan that a junction leads to, with what the corrections add. Cooling on the way scales it."""
    section, share = walk.leaving(node), 1.0
    while section.duct.to not in walk.fans:
        if not walk.arriving(section.duct.to) or section.duct.to not in {s.duct.start for s in walk.sections.values()}:
            return None
        onward = walk.leaving(section.duct.to)
        share *= section.air.density / onward.air.density
        section = onward
    return sum(s.flow for s in walk.arriving(section.duct.to)) + more * share


def _lines(section: Section, here: float, governing: float, flow: float, damper: float, exact: float | None):
    low, most = digits(here), digits(governing)
    yield Line(
        "Q corrected = Q sqrt(SP governing / SP)",
        f"{digits(section.flow)} x sqrt({most} / {low}) = {digits(flow)} m3/s",
        "lev-worksheet, corrected flow",
    )
    yield Line(
        "damper = SP - SP governing",
        f"{low} - ({most}) = {digits(damper)} Pa",
        "balance-rule, balance of static pressures",
    )
    if exact is not None:
        velocity = section.flow / (math.pi / 4 * exact**2)
        pressure = section.air.density * velocity**2 / 2
        yield Line(
            "VP at the agreeing diameter = rho / 2 x (Q / (pi D² / 4))²",
            f"{digits(section.air.density)} / 2 x ({digits(section.flow)} / (pi x {digits(exact)}² / 4))² = "
            f"{digits(pressure)} Pa",
            "definition",
        )
