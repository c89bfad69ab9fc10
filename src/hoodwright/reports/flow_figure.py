"""Needed, intended, commissioned and today's flow of one hood on one scale."""

import math
from dataclasses import dataclass

from hoodwright.reports.svg import (
    AIR,
    COPPER,
    INK,
    QUIET,
    RULE,
    circle,
    drawing,
    line,
    polygon,
    rectangle,
    text,
    ticks,
)
from hoodwright.tasks.assessment import HoodAnswer, SourceNeed
from hoodwright.units import KINDS, show, to_unit, unit_label

WIDTH, LEFT, RIGHT, ROW, TOP = 390.0, 86.0, 86.0, 27.0, 18.0
UNTOLD = "cannot be told"
BEYOND = 2.5  # an upper bound above this many times the rest is drawn as an arrow


@dataclass(frozen=True)
class Scale:
    """Flow to picture."""

    most: float

    def x(self, flow: float) -> float:
        """Place of a flow on the scale; beyond its end, the end."""
        return LEFT + min(flow / self.most, 1.0) * (WIDTH - LEFT - RIGHT)


def flow_svg(hood: HoodAnswer, system: str) -> str:
    """The four flows of one hood, with what is known of their uncertainty."""
    need = hood.worst
    scale = Scale(_most(hood, need))
    rows = [("required", _required(need, scale)), ("intended", _mark(hood.intended, scale))]
    rows += [("commissioned", _reading(hood.commissioned, scale)), ("today", _reading(hood.today, scale))]
    bottom = TOP + ROW * len(rows)
    body = _axis(scale, bottom, system)
    if _is_known(need):
        x = scale.x(need.flow)
        body.append(line((x, TOP - 8), (x, bottom), COPPER, 1.4, stroke_dasharray=None if need.in_range else "5 3"))
    values = _values(hood, need, system)
    for i, (name, marks) in enumerate(rows):
        y = TOP + ROW * (i + 0.5)
        body.append(text((LEFT - 10, y + 4), name, 13, text_anchor="end"))
        body.append(f'<g transform="translate(0 {y:g})">{marks}</g>')
        body.append(
            text(
                (WIDTH, y + 4),
                values[i],
                13,
                text_anchor="end",
                fill=INK if values[i] not in ("not given", UNTOLD) else QUIET,
            )
        )
    words = "; ".join(f"{row[0]} {value}" for row, value in zip(rows, values, strict=True))
    return drawing((WIDTH, bottom + 36), f"Flows of {hood.name}", f"{words}.", body)


def flow_caption(hood: HoodAnswer) -> str:
    """What the marks of this hood's figure mean."""
    need = hood.worst
    asked = "Copper: what is asked, a dot for each equation. " if need.in_range else "Hatched: certain limits. "
    if not _is_known(need):
        asked = "What is needed cannot be told, so nothing is drawn for it. "
    computed = ", today's computed as built" if hood.today and "computed" in (hood.today.source or "") else ""
    read = f" Dots with whiskers: read{computed}." if hood.commissioned or hood.today else ""
    meant = "Diamond: intended." if hood.intended is not None else "No flow is intended."
    return f"{asked}{meant}{read}"


def _is_known(need: SourceNeed) -> bool:
    """Whether an equation or a certain limit tells anything of the flow."""
    return need.in_range or need.bound.least > 0 or need.bound.most is not None


def _most(hood: HoodAnswer, need: SourceNeed) -> float:
    flows = [need.flow, hood.intended or 0.0, *(law.flow for law in need.laws)]
    flows += [q.value + (q.uncertainty or 0.0) for q in (hood.commissioned, hood.today) if q]
    most = max(flows)
    if not need.in_range and need.bound.most is not None and need.bound.most <= BEYOND * most:
        most = max(most, need.bound.most)
    return 1.08 * most or 1.0


def _values(hood: HoodAnswer, need: SourceNeed, system: str) -> list[str]:
    asked = show(need.flow, "flow", system)
    known = [
        hood.intended,
        hood.commissioned.value if hood.commissioned else None,
        hood.today.value if hood.today else None,
    ]
    if not need.in_range:
        asked = f"≥ {asked}" if need.bound.least > 0 else UNTOLD
    return [asked] + ["not given" if q is None else show(q, "flow", system) for q in known]


def _required(need: SourceNeed, scale: Scale) -> str:
    if need.in_range:
        low, high = (scale.x(f) for f in (min(law.flow for law in need.laws), need.flow))
        bar = rectangle((low, -3), (high - low, 6), fill=COPPER, fill_opacity=0.3) if high > low else ""
        return bar + "".join(circle((scale.x(law.flow), 0), 4, fill=COPPER) for law in need.laws)
    if not _is_known(need):
        return ""
    top = need.bound.most if need.bound.most is not None else math.inf
    low, high = scale.x(need.bound.least), scale.x(top)
    bar = rectangle((low, -6), (high - low, 12), fill="none", stroke=COPPER, stroke_dasharray="3 2")
    lines = "".join(line((x, 6), (x + 6, -6), COPPER, 0.8) for x in _steps(low, high - 6, 8))
    beyond = polygon([(high, -5), (high + 8, 0), (high, 5)], fill=COPPER) if top > scale.most else ""
    return bar + lines + beyond


def _steps(low: float, high: float, step: float) -> list[float]:
    return [low + step * i for i in range(int(max(0.0, high - low) / step) + 1)] if high >= low else []


def _mark(flow: float | None, scale: Scale) -> str:
    if flow is None:
        return ""
    x = scale.x(flow)
    return polygon([(x - 5, 0), (x, -6), (x + 5, 0), (x, 6)], fill="#FFFFFF", stroke=INK, stroke_width=1.6)


def _reading(reading, scale: Scale) -> str:
    if reading is None:
        return ""
    spread = reading.uncertainty or 0.0
    low, high = scale.x(max(0.0, reading.value - spread)), scale.x(reading.value + spread)
    whisker = (
        line((low, 0), (high, 0), AIR, 1.6)
        + line((low, -5), (low, 5), AIR, 1.6)
        + line((high, -5), (high, 5), AIR, 1.6)
    )
    return (whisker if spread else "") + circle((scale.x(reading.value), 0), 4.5, fill=AIR)


def _axis(scale: Scale, y: float, system: str) -> list[str]:
    unit = KINDS["flow"].show[system]
    per_unit = 1 / to_unit(1.0, "flow", unit)
    parts = [line((LEFT, y), (WIDTH - RIGHT, y), QUIET, 1)]
    for tick in ticks(0.0, scale.most / per_unit, 4):
        x = scale.x(tick * per_unit)
        parts += [line((x, TOP - 4), (x, y), RULE, 0.8), text((x, y + 15), f"{tick:g}", 12, text_anchor="middle")]
    parts.append(text((WIDTH, y + 15), unit_label("flow", system), 12, fill=QUIET, text_anchor="end"))
    return parts
