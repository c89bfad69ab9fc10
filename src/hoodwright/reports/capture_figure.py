"""Captured fraction against distance, with its interval, as SVG and as PNG."""

from hoodwright.errors import HoodwrightError, InputError
from hoodwright.reports.svg import (
    AIR,
    AIR_LIGHT,
    INK,
    PAPER,
    QUIET,
    RULE,
    circle,
    drawing,
    line,
    polygon,
    polyline,
    text,
    ticks,
)
from hoodwright.tasks.capture import BANNER, CaptureReport
from hoodwright.units import KINDS, show, to_unit, unit_label

SIZE, LEFT, RIGHT, TOP, BOTTOM = (560.0, 340.0), 56.0, 20.0, 44.0, 56.0


def capture_svg(report: CaptureReport) -> str:
    """The captured fraction of one source against its distance from one hood; what cannot be told is left out."""
    told = sorted((a for a in report.answers if a.told), key=lambda answer: answer.distance)
    names = {(answer.source, answer.hood) for answer in report.answers}
    if not told or len(names) != 1:
        raise InputError(
            "--plot: one source before one hood is needed, of which a per cent may be claimed; name --source and --hood"
        )
    unit = KINDS["length"].show[report.system]
    scale = to_unit(1.0, "length", unit)
    most = 1.05 * scale * told[-1].distance
    wide, high = SIZE[0] - LEFT - RIGHT, SIZE[1] - TOP - BOTTOM

    def at(distance: float, share: float) -> tuple[float, float]:
        return LEFT + wide * distance / most, TOP + high * (1 - share)

    body = []
    for share in (0.0, 0.25, 0.5, 0.75, 1.0):
        body.append(line(at(0, share), at(most, share), RULE, 0.8))
        x, y = at(0, share)
        body.append(text((x - 8, y + 4), f"{100 * share:.0f} %", 12, text_anchor="end"))
    for tick in ticks(0.0, most, 6):
        x, y = at(tick, 0)
        body.append(text((x, y + 18), f"{tick:g}", 12, text_anchor="middle"))
    places = [scale * answer.distance for answer in told]
    lows = [at(x, answer.low) for x, answer in zip(places, told, strict=True)]
    highs = [at(x, answer.high) for x, answer in zip(places, told, strict=True)]
    middles = [at(x, answer.captured) for x, answer in zip(places, told, strict=True)]
    body.append(polygon([*lows, *reversed(highs)], fill=AIR_LIGHT))
    body += [line(a, b, AIR, 1) for a, b in zip(lows, highs, strict=True)]
    body += [polyline(middles, AIR, 2), *(circle(p, 4, fill=AIR) for p in middles)]
    first = told[0]
    body.append(text((LEFT, 20), f"Captured of {first.source} by {first.hood}, {_flow(report)}", 14, fill=INK))
    body.append(text((LEFT, SIZE[1] - 8), f"Shaded: interval. Computed air, {BANNER}.", 12, fill=QUIET))
    label = f"distance, {unit_label('length', report.system)}"
    body.append(text((SIZE[0] - RIGHT, SIZE[1] - 22), label, 12, fill=QUIET, text_anchor="end"))
    words = "; ".join(f"{show(a.distance, 'length', report.system)}: {a.shown} ({a.shown_interval})" for a in told)
    return drawing(SIZE, f"Captured of {first.source} by {first.hood}", f"{words}. {BANNER}.", body, PAPER)


def capture_png(report: CaptureReport) -> bytes:
    """The same as PNG, by the binding that also sets the reports."""
    import typst  # late: only figures need it

    page = '#set page(width: auto, height: auto, margin: 0pt)\n#image("figure.svg")'
    parts = {"main.typ": page.encode(), "figure.svg": capture_svg(report).encode()}
    try:
        return typst.compile(parts, format="png", ppi=144.0)  # type: ignore[call-overload,return-value]
    except typst.TypstError as error:
        raise HoodwrightError(f"the figure could not be set: {error}; please report it") from error


def _flow(report: CaptureReport) -> str:
    return show(report.answers[0].flow, "flow", report.system)
