"""Pressure along one converging run, from every hood to the discharge."""

from dataclasses import dataclass

from hoodwright.reports.svg import (
    AIR,
    COPPER,
    INK,
    QUIET,
    RULE,
    Point,
    circle,
    dimension,
    drawing,
    halo,
    line,
    polyline,
    round_below,
    text,
    ticks,
    words_width,
)
from hoodwright.reports.words import shortened
from hoodwright.tasks.assessment import DuctAnswer
from hoodwright.units import KINDS, to_unit, unit_label

WIDTH, LEFT, RIGHT, TOP, HIGH = 720.0, 52.0, 20.0, 34.0, 200.0
FOOT = TOP + HIGH + 17  # first row of names
LEAST_LENGTH = 0.3  # m, so that a duct without length still shows


@dataclass(frozen=True)
class Piece:
    """One duct with the distance of its end from the discharge [m]."""

    duct: DuctAnswer
    start: float
    end: float


@dataclass(frozen=True)
class Plot:
    """Distance and pressure to picture."""

    longest: float
    low: float
    high: float

    def at(self, before_end: float, pressure: float) -> Point:
        """Place of a pressure at a distance before the discharge."""
        share = 1 - before_end / self.longest
        up = (self.high - pressure) / (self.high - self.low)
        return LEFT + share * (WIDTH - LEFT - RIGHT), TOP + up * HIGH


def runs(ducts: tuple[DuctAnswer, ...]) -> list[tuple[DuctAnswer, ...]]:
    """Ducts grouped by the discharge they lead to, in the order of the file."""
    groups: dict[str, list[DuctAnswer]] = {}
    follow = {duct.start_from: duct for duct in ducts}
    for duct in ducts:
        last, seen = duct, {duct.name}
        while last.to in follow and follow[last.to].name not in seen:
            last = follow[last.to]
            seen.add(last.name)
        groups.setdefault(last.name, []).append(duct)
    return [tuple(group) for group in groups.values()]


def pressure_svg(ducts: tuple[DuctAnswer, ...], lengths: dict[str, float], system: str) -> str:
    """Static pressure (thick) and total pressure (thin) along one run; `lengths` by duct name [m]."""
    pieces = _pieces(ducts, lengths)
    values = [0.0]
    for piece in pieces:
        duct = piece.duct
        values += [duct.static_pressure_start, duct.static_pressure, duct.total_pressure_start, duct.total_pressure]
    spare = 0.06 * (max(values) - min(values)) or 1.0
    plot = Plot(max(p.start for p in pieces), min(values) - spare, max(values) + spare)
    body = _axes(plot, system) + _curves(pieces, plot) + _names(pieces, plot) + _key() + _scale(plot, system)
    return drawing((WIDTH, TOP + HIGH + 46), "Pressure along the run", _words(ducts, system), body)


def _pieces(ducts: tuple[DuctAnswer, ...], lengths: dict[str, float]) -> list[Piece]:
    follow = {duct.start_from: duct for duct in ducts}
    found = []
    for duct in ducts:
        end, seen = 0.0, {duct.name}
        after = follow.get(duct.to)
        while after is not None and after.name not in seen:
            seen.add(after.name)
            end += _length(after, lengths)
            after = follow.get(after.to)
        found.append(Piece(duct, end + _length(duct, lengths), end))
    return found


def _length(duct: DuctAnswer, lengths: dict[str, float]) -> float:
    return max(LEAST_LENGTH, lengths.get(duct.name, 0.0))


def _curves(pieces: list[Piece], plot: Plot) -> list[str]:
    follow = {piece.duct.start_from: piece for piece in pieces}
    leads = {piece.duct.to for piece in pieces}
    parts = []
    for piece in pieces:
        duct = piece.duct
        static = [plot.at(piece.start, duct.static_pressure_start), plot.at(piece.end, duct.static_pressure)]
        total = [plot.at(piece.start, duct.total_pressure_start), plot.at(piece.end, duct.total_pressure)]
        if duct.start_from not in leads:
            static, total = [plot.at(piece.start, 0.0), *static], [plot.at(piece.start, 0.0), *total]
        after = follow.get(duct.to)
        if after:
            next_total = after.duct.total_pressure_start
            static.append(plot.at(piece.end, after.duct.static_pressure_start))
            total.append(plot.at(piece.end, next_total))
        parts.append(polyline(total, QUIET, 1.2, stroke_dasharray="5 3"))
        parts.append(polyline(static, AIR, 2.4))
    return parts


def _names(pieces: list[Piece], plot: Plot) -> list[str]:
    """A mark at each station, and its name in one of two rows where there is room."""
    leads = {piece.duct.to for piece in pieces}
    stations: dict[str, tuple[Point, bool]] = {}
    for piece in pieces:
        at = plot.at(piece.start, piece.duct.static_pressure_start)
        stations.setdefault(piece.duct.start_from, (at, piece.duct.start_from not in leads))
    ends = sorted(leads - set(stations))
    parts = [halo((WIDTH - RIGHT, FOOT), shortened(e, 12), 12, text_anchor="end") for e in ends[:1]]
    free_from = [0.0, 0.0]
    stop = WIDTH - RIGHT - words_width(shortened(ends[0], 12), 12) - 8 if ends else WIDTH
    for name, ((x, y), is_hood) in sorted(stations.items(), key=lambda item: item[1][0]):
        fill = COPPER if is_hood else AIR
        parts.append(circle((x, y), 3.2, fill=fill) + line((x, y), (x, TOP + HIGH), RULE, 0.8, stroke_dasharray="2 3"))
        width = words_width(shortened(name, 20), 12)
        left = min(max(2.0, x - width / 2), WIDTH - width)
        row = next((r for r in (0, 1) if left >= free_from[r] and (r or left + width < stop)), None)
        if row is not None:
            free_from[row] = left + width + 8
            words = shortened(name, 20)
            parts.append(halo((left, FOOT + 14 * row), words, 12, fill=COPPER if is_hood else INK))
    return parts


def _axes(plot: Plot, system: str) -> list[str]:
    unit = KINDS["pressure"].show[system]
    per_unit = 1 / to_unit(1.0, "pressure", unit)
    parts = []
    for tick in ticks(plot.low / per_unit, plot.high / per_unit, 6):
        _, y = plot.at(0.0, tick * per_unit)
        zero = abs(tick) < 1e-9
        parts.append(line((LEFT, y), (WIDTH - RIGHT, y), INK if zero else RULE, 1.1 if zero else 0.8))
        parts.append(text((LEFT - 7, y + 4), f"{0 if zero else tick:.6g}".replace("-", "−"), 12, text_anchor="end"))
    parts.append(text((LEFT - 7, TOP - 16), unit_label("pressure", system), 12, fill=QUIET, text_anchor="end"))
    return parts


def _key() -> list[str]:
    y = TOP - 20
    return [
        polyline([(LEFT + 10, y), (LEFT + 40, y)], AIR, 2.4),
        text((LEFT + 46, y + 4), "static pressure", 12),
        polyline([(LEFT + 150, y), (LEFT + 180, y)], QUIET, 1.2, stroke_dasharray="5 3"),
        text((LEFT + 186, y + 4), "total pressure", 12),
    ]


def _scale(plot: Plot, system: str) -> list[str]:
    """A bar of a round length along the run."""
    foot = 1.0 if system == "SI" else 0.3048
    step = max(1.0, round_below(plot.longest / foot / 5)) if plot.longest > foot else plot.longest / foot
    start, _ = plot.at(step * foot, 0.0)
    y = TOP - 20
    words = f"{step:g}\u2009{'m' if system == 'SI' else 'ft'} of duct"
    return [dimension((start, y), (WIDTH - RIGHT, y), INK), text((start - 8, y + 4), words, 12, text_anchor="end")]


def _words(ducts: tuple[DuctAnswer, ...], system: str) -> str:
    unit = KINDS["pressure"].show[system]
    parts = [
        f"{duct.name}: static {to_unit(duct.static_pressure_start, 'pressure', unit):.3g} to "
        f"{to_unit(duct.static_pressure, 'pressure', unit):.3g} {unit_label('pressure', system)}"
        for duct in ducts
    ]
    return "; ".join(parts) + "."
