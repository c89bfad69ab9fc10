"""Captured fraction against distance, with its interval, as SVG and as PNG."""

from dataclasses import dataclass

from hoodwright.errors import HoodwrightError, InputError
from hoodwright.reports.svg import (
    AIR,
    AIR_LIGHT,
    COPPER,
    INK,
    PAPER,
    QUIET,
    RULE,
    Point,
    circle,
    drawing,
    halo,
    line,
    polygon,
    polyline,
    rectangle,
    text,
    ticks,
    words_width,
)
from hoodwright.results import Verdict
from hoodwright.tasks.capture.answer import BANNER, CaptureAnswer, CaptureReport
from hoodwright.units import KINDS, show, to_unit, unit_label

SIZE, LEFT, RIGHT, TOP, BOTTOM = (560.0, 340.0), 64.0, 20.0, 52.0, 56.0
WHISKER = 5.0
HERE = "it stands here"


@dataclass(frozen=True)
class Axes:
    """From distance and share to the picture. `scale` turns metres into the unit of the axis."""

    scale: float
    most: float  # end of the axis, in its unit
    size: Point = SIZE

    def at(self, distance: float, share: float) -> Point:
        """Place of a distance [m] and a share."""
        wide, high = self.size[0] - LEFT - RIGHT, self.size[1] - TOP - BOTTOM
        return LEFT + wide * self.scale * distance / self.most, TOP + high * (1 - share)


def capture_svg(report: CaptureReport, now: CaptureAnswer | None = None, paper: str = PAPER, size: Point = SIZE) -> str:
    """The captured fraction of one source against its distance from one hood; what cannot be told is left out.

    `now` is the answer where the source stands, which is marked with what the handbook says there.
    """
    told = _told(report)
    unit = KINDS["length"].show[report.system]
    scale = to_unit(1.0, "length", unit)
    far = max(answer.distance for answer in (*told, *([now] if now else [])))
    axes = Axes(scale, 1.05 * scale * far, size)
    first = told[0]
    flow = show(first.flow, "flow", report.system)
    body = [*_grid(axes), *_curve(told, axes), *(_now(now, axes) if now else []), *_handbook(told, axes)]
    body.append(text((8, 18), f"Captured of {first.source} by {first.hood}, {flow}", 14, fill=INK))
    body.append(text((8, size[1] - 8), f"Shaded: interval. Computed air, {BANNER}.", 12, fill=QUIET))
    label = f"distance along the axis, {unit_label('length', report.system)}"
    body.append(text((size[0] - RIGHT, size[1] - 24), label, 12, fill=QUIET, text_anchor="end"))
    words = "; ".join(f"{show(a.distance, 'length', report.system)}: {a.shown} ({a.shown_interval})" for a in told)
    return drawing(size, f"Captured of {first.source} by {first.hood}", f"{words}. {BANNER}.", body, paper)


def capture_png(report: CaptureReport) -> bytes:
    """The same as PNG, by the binding that also sets the reports."""
    import typst  # late: only figures need it

    page = '#set page(width: auto, height: auto, margin: 0pt)\n#image("figure.svg")'
    parts = {"main.typ": page.encode(), "figure.svg": capture_svg(report).encode()}
    try:
        return typst.compile(parts, format="png", ppi=144.0)  # type: ignore[call-overload,return-value]
    except typst.TypstError as error:
        raise HoodwrightError(f"the figure could not be set: {error}; please report it") from error


def _told(report: CaptureReport) -> list[CaptureAnswer]:
    """The answers that may be drawn, by distance."""
    told = sorted((a for a in report.answers if a.told), key=lambda answer: answer.distance)
    names = {(answer.source, answer.hood) for answer in report.answers}
    if not told or len(names) != 1:
        raise InputError(
            "--plot: one source before one hood is needed, of which a per cent may be claimed; name --source and --hood"
        )
    return told


def _grid(axes: Axes) -> list[str]:
    drawn = []
    end = axes.most / axes.scale
    for share in (0.0, 0.25, 0.5, 0.75, 1.0):
        x, y = axes.at(0, share)
        drawn.append(line((x, y), axes.at(end, share), RULE, 0.8))
        drawn.append(text((x - 8, y + 4), f"{100 * share:.0f} %", 12, text_anchor="end"))
    for tick in ticks(0.0, axes.most, 6):
        x, y = axes.at(tick / axes.scale, 0)
        drawn += [line((x, y), (x, y + 4), QUIET, 0.8), text((x, y + 18), f"{tick:g}", 12, text_anchor="middle")]
    return drawn


def _curve(told: list[CaptureAnswer], axes: Axes) -> list[str]:
    """The band of the interval, and the line through the middles."""
    lows = [axes.at(a.distance, a.low) for a in told]
    highs = [axes.at(a.distance, a.high) for a in told]
    middles = [axes.at(a.distance, a.captured) for a in told]
    drawn = [polygon([*lows, *reversed(highs)], fill=AIR_LIGHT)]
    drawn += [line(a, b, AIR, 1) for a, b in zip(lows, highs, strict=True)]
    return [*drawn, polyline(middles, AIR, 2), *(circle(p, 4, fill=AIR) for p in middles)]


def _now(now: CaptureAnswer, axes: Axes) -> list[str]:
    """Where the source stands: a line with the handbook's answer above it, and the share with its interval."""
    x, top = axes.at(now.distance, 1.0)
    side = -1 if x + words_width(HERE, 12) + 14 > axes.size[0] - RIGHT else 1
    drawn = [line((x, top), axes.at(now.distance, 0.0), COPPER, 1.4, stroke_dasharray="5 3")]
    if now.told:
        low, high, (_, y) = (axes.at(now.distance, s) for s in (now.low, now.high, now.captured))
        drawn += [line(low, high, COPPER, 2.2)]
        drawn += [line((x - WHISKER, end), (x + WHISKER, end), COPPER, 2.2) for end in (low[1], high[1])]
        drawn.append(polygon([(x - 6, y), (x, y - 7), (x + 6, y), (x, y + 7)], fill="#FFFFFF", stroke=COPPER,
                             stroke_width=2))  # fmt: skip
    place = (x + 8 * side, axes.at(0.0, 0.0)[1] - 8)
    return [*drawn, halo(place, HERE, 12, fill=COPPER, text_anchor="end" if side < 0 else "start")]


def _handbook(told: list[CaptureAnswer], axes: Axes) -> list[str]:
    """Above each distance, what the handbook says of it: full, open or half a mark."""
    y = TOP - 14
    drawn = [text((LEFT - 8, y + 4), "handbook", 12, fill=QUIET, text_anchor="end")]
    for answer in told:
        x, _ = axes.at(answer.distance, 1.0)
        drawn.append(_mark(answer.handbook.verdict, (x, y)))
    return drawn


def _mark(verdict: Verdict, at: Point) -> str:
    x, y = at
    if verdict is Verdict.MEETS:
        return circle(at, 4, fill=INK)
    if verdict is Verdict.SHORT:
        return polygon([(x - 4.5, y + 4), (x, y - 4.5), (x + 4.5, y + 4)], fill="none", stroke=INK, stroke_width=1.4)
    half = rectangle((x - 4, y - 4), (4, 8), fill=INK)
    return half + rectangle((x - 4, y - 4), (8, 8), fill="none", stroke=INK, stroke_width=1.4)
