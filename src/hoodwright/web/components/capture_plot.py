"""Captured share against distance: a plot with its interval as a band, and the same as a table."""

from dataclasses import dataclass

from nicegui import ui

from hoodwright import units
from hoodwright.tasks.capture.job import CaptureAnswer, CaptureReport
from hoodwright.web.components.pressure_plot import AIR, COPPER, FONT, GREY
from hoodwright.web.components.words import Words, block, table

LIMITED = "plume limited: the stream brings more air than the hood takes"
UNTOLD_AT = 0.0  # where the marks of what cannot be told stand
SIZES = {"captured": 9, "plume limited": 13, "cannot tell": 13}
SYMBOLS = {"captured": "circle", "plume limited": "triangle", "cannot tell": "rect"}


@dataclass(frozen=True)
class Now:
    """Where the source stands now along the axis [m], and how far beside it, where that matters."""

    distance: float
    beside: float | None = None


def capture_plot(report: CaptureReport, now: Now, system: str) -> ui.echart:
    """The plot; the table beside it says the same."""
    plot = ui.echart(options(report, now, system), renderer="svg").classes("plot")
    plot.props["role"] = "img"
    plot.props["aria-label"] = "Captured share against distance; the table below gives the same numbers."
    return plot


def state_of(answer: CaptureAnswer) -> str:
    """What a mark of the plot stands for."""
    if not answer.told:
        return "cannot tell"
    return "plume limited" if answer.plume_limited else "captured"


def options(report: CaptureReport, now: Now, system: str) -> dict:
    """What ECharts draws."""
    unit = units.KINDS["length"].show[system]
    text = {"fontFamily": FONT, "fontSize": 13, "color": GREY}
    axis = {"axisLabel": text, "nameTextStyle": text, "nameLocation": "middle", "type": "value"}
    answers = sorted(report.answers, key=lambda answer: answer.distance)
    kinds = [kind for kind in SYMBOLS if any(state_of(answer) == kind for answer in answers)]
    here = {"symbol": "none", "silent": True, "lineStyle": {"color": COPPER, "type": "dashed", "width": 2}} | {
        "label": {**text, "color": COPPER, "formatter": "it stands here now", "position": "end"},
        "data": [{"xAxis": _length(now.distance, unit)}],
    }
    series = [*_band(answers, unit), *(_marks(kind, answers, unit) for kind in kinds)]
    series[-1] = series[-1] | {"markLine": here}
    return {
        "animation": False,
        "aria": {"enabled": False},
        "textStyle": {"fontFamily": FONT},
        "grid": {"left": 64, "right": 48, "top": 64, "bottom": 56},
        "legend": {"top": 0, "left": 56, "textStyle": text, "data": kinds},
        "tooltip": {"trigger": "item", "confine": True},
        "xAxis": {**axis, "name": f"distance along the axis of the hood ({units.unit_label('length', system)})"}
        | {"nameGap": 32, "min": 0, "splitLine": {"show": False}, "axisLine": {"lineStyle": {"color": GREY}}},
        "yAxis": {**axis, "name": "captured (%)", "nameGap": 44, "min": 0, "max": 100}
        | {"splitLine": {"lineStyle": {"color": GREY, "opacity": 0.25}}, "axisLine": {"show": False}},
        "series": series,
    }


def _band(answers: list[CaptureAnswer], unit: str) -> list[dict]:
    """The interval as a band between two lines without marks, and the line through the middle."""
    low, gap, middle = [], [], []
    for answer in answers:
        x = _length(answer.distance, unit)
        least, most, share = (100 * value for value in (answer.low, answer.high, answer.captured))
        low.append([x, round(least, 1)] if answer.told else [x, None])
        gap.append([x, round(most - least, 1)] if answer.told else [x, None])
        middle.append([x, round(share, 1)] if answer.told else [x, None])
    plain = {"type": "line", "symbol": "none", "silent": True, "connectNulls": False}
    thin = {"lineStyle": {"color": AIR, "width": 1, "opacity": 0.6}}
    return [
        {**plain, "name": "low", "stack": "interval", "data": low, **thin},
        {**plain, "name": "interval", "stack": "interval", "data": gap, **thin}
        | {"areaStyle": {"color": AIR, "opacity": 0.22}},
        {**plain, "name": "middle", "data": middle, "lineStyle": {"color": AIR, "width": 3}},
    ]


def _marks(kind: str, answers: list[CaptureAnswer], unit: str) -> dict:
    """Marks of one kind: a shape of their own, and words beside what is not plain."""
    data = [
        {
            "value": [_length(answer.distance, unit), round(100 * answer.captured, 1) if answer.told else UNTOLD_AT],
            "name": f"{answer.shown} ({answer.shown_interval})" if answer.told else answer.claim,
        }
        for answer in answers
        if state_of(answer) == kind
    ]
    words = {"show": kind != "captured", "formatter": kind, "position": "top", "color": GREY, "fontSize": 13}
    style = {"color": AIR} if kind == "captured" else {"color": COPPER}
    if kind == "cannot tell":
        style = {"color": "transparent", "borderColor": COPPER, "borderWidth": 2}
    return {
        "name": kind,
        "type": "scatter",
        "symbol": SYMBOLS[kind],
        "symbolSize": SIZES[kind],
        "data": data,
        "itemStyle": style,
        "label": {**words, "fontFamily": FONT},
        "labelLayout": {"hideOverlap": True},
        "tooltip": {"formatter": "{b}"},
    }


def capture_table(report: CaptureReport, now: Now, system: str) -> None:
    """The same numbers as a table."""
    with table(["distance", "captured", "interval", "note"], "lines"):
        for answer in sorted(report.answers, key=lambda answer: answer.distance):
            here = abs(answer.distance - now.distance) < 1e-6
            with block("tr"):
                Words("td", units.show(answer.distance, "length", system))
                cell = Words("td", answer.shown)
                cell.props["title"] = f"{answer.captured!r}" if answer.told else ""
                Words("td", answer.shown_interval)
                Words("td", _note(answer, here=here))


def _note(answer: CaptureAnswer, *, here: bool) -> str:
    told = "" if answer.told else answer.claim.removeprefix("cannot tell, ")
    notes = ["it stands here now"] * here + [LIMITED] * (answer.told and answer.plume_limited) + [told] * bool(told)
    return "; ".join(notes)


def sentence_of(report: CaptureReport, system: str) -> str:
    """What the curve says: how far away the hood still catches most."""
    told = sorted((answer for answer in report.answers if answer.told), key=lambda answer: answer.distance)
    if not told:
        return f"The computed air cannot tell: {report.answers[0].claim.removeprefix('cannot tell, because ')}."
    near, far = told[0], told[-1]
    hood, source = near.hood, near.source
    places = [units.show(answer.distance, "length", system) for answer in (near, far)]
    return (
        f"From {places[0]} to {places[1]} before the {hood}, the captured share of the {source} goes from "
        f"{near.shown} to {far.shown}."
    )


def _length(value: float, unit: str) -> float:
    return float(f"{units.to_unit(value, 'length', unit):.4g}")
