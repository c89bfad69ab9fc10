"""The curve of a fan with what the ducts ask of it, and every point where it can run: by shape and by word."""

from collections.abc import Iterator

from nicegui import ui

from hoodwright import units
from hoodwright.results import Caution
from hoodwright.tasks.as_built.answers import BuiltFan, FanPoint
from hoodwright.tasks.as_built.fan_curves import FanCurves
from hoodwright.web.components.outcomes import caution_note
from hoodwright.web.components.pressure_plot import AIR, COPPER, FONT, GREY
from hoodwright.web.components.signed import signed
from hoodwright.web.components.words import Words, block

GIVES, ASKED, SHEET = "the fan gives", "the ducts ask", "points of the sheet"
CROP = 1.25  # of the highest pressure of the fan: where the system curve leaves the drawing
MARKS = {"runs here": "circle", "can also run here": "circle", "not stable": "triangle"}
SIDES = {"runs here": "right", "can also run here": "right", "not stable": "top"}


class FanPanel:
    """The plot of one fan, its points in words, and what it takes; all of it follows."""

    def __init__(self, name: str):
        with block("article", "card fan-panel") as self.box:
            Words("h3", f"{name}: what it gives, and what the ducts ask")
            self.plot = ui.echart({}, renderer="svg").classes("plot fan-plot")
            self.plot.props["role"] = "img"
            self.plot.props["aria-label"] = f"Curve of the {name} with the system curve; the list below says the same."
            self.points = block("ul", "fan-points")
            self.list = block("dl", "numbers")
            self.cautions = block("div", "cautions")
        self.told: tuple = ()

    def show(self, curves: FanCurves, system: str, currency: str, cautions: tuple[Caution, ...]) -> None:
        """Another state; of all cautions those about this fan are told."""
        told = (curves, system, currency, cautions)
        if told == self.told:
            return
        self.told = told
        self.plot.options.clear()
        self.plot.options.update(options(curves, system))
        self.plot.update()
        self.cautions.clear()
        with self.cautions:
            for caution in cautions:
                if caution.about == curves.name:
                    caution_note(caution)
        self.points.clear()
        with self.points:
            for point in curves.points:
                Words("li", words_of(point, system))
        self.list.clear()
        with self.list:
            for name, text in _numbers(curves.fan, system, currency):
                with block("div"):
                    Words("dt", name)
                    Words("dd", text)


def kind_of(point: FanPoint) -> str:
    """The word for a point."""
    if not point.stable:
        return "not stable"
    return "runs here" if point.runs else "can also run here"


def words_of(point: FanPoint, system: str) -> str:
    """A point in words."""
    flow, rise = units.show(point.flow, "flow", system), units.show(point.total_pressure, "pressure", system)
    stays = "stable" if point.stable else "not stable: the flow runs away from it"
    here = "it runs at" if point.runs else "it could also run at"
    return f"{here} {flow} and {rise}; {stays}"


def options(curves: FanCurves, system: str) -> dict:
    """What ECharts draws."""
    flow, pressure = (units.KINDS[kind].show[system] for kind in ("flow", "pressure"))
    text = {"fontFamily": FONT, "fontSize": 13, "color": GREY}

    def at(q: float, p: float) -> list[float]:
        return [float(f"{units.to_unit(q, 'flow', flow):.4g}"), float(f"{units.to_unit(p, 'pressure', pressure):.4g}")]

    high = CROP * max(*(p for _, p in curves.gives), *(point.total_pressure for point in curves.points))
    gives = [at(q, p) for q, p in curves.gives if p >= 0]
    asked = [at(q, p) for q, p in curves.asked if 0 <= p <= high]
    sheet = {"symbolSize": 7, "itemStyle": {"color": "transparent", "borderColor": AIR, "borderWidth": 1.5}}
    return {
        "animation": False,
        "aria": {"enabled": False},
        "textStyle": {"fontFamily": FONT},
        "grid": {"left": 76, "right": 36, "top": 40, "bottom": 56},
        "legend": {"top": 0, "left": 66, "textStyle": text, "data": [GIVES, ASKED, SHEET]},
        "tooltip": {"trigger": "item", "confine": True},
        **_axes(text, system),
        "series": [
            _line(GIVES, gives, AIR, {"width": 3}),
            _line(ASKED, asked, COPPER, {"width": 2, "type": "dashed"}),
            {"name": SHEET, "type": "scatter", "data": [at(q, p) for q, p in curves.rated if p >= 0], **sheet},
            {"name": "points", "type": "scatter", "data": [_mark(point, at) for point in curves.points], "z": 5},
        ],
    }


def _axes(text: dict, system: str) -> dict:
    axis = {"axisLabel": text, "nameTextStyle": text, "nameLocation": "middle", "type": "value", "min": 0}
    return {
        "xAxis": {**axis, "name": f"flow ({units.unit_label('flow', system)})", "nameGap": 32}
        | {"splitLine": {"show": False}, "axisLine": {"lineStyle": {"color": GREY}}},
        "yAxis": {**axis, "name": f"total pressure ({units.unit_label('pressure', system)})", "nameGap": 56}
        | {"splitLine": {"lineStyle": {"color": GREY, "opacity": 0.25}}, "axisLine": {"show": False}},
    }


def _line(name: str, data: list, colour: str, style: dict) -> dict:
    plain = {"type": "line", "symbol": "none", "smooth": False, "itemStyle": {"color": colour}}
    return {**plain, "name": name, "data": data, "lineStyle": {"color": colour, **style}}


def _mark(point: FanPoint, at) -> dict:
    word = kind_of(point)
    style = (
        {"color": COPPER}
        if word == "runs here"
        else {"color": "transparent", "borderColor": COPPER, "borderWidth": 2.5}
    )
    label = {"show": True, "formatter": word, "position": SIDES[word], "distance": 10, "color": GREY}
    return {
        "value": at(point.flow, point.total_pressure),
        "name": word,
        "symbol": MARKS[word],
        "symbolSize": 14,
        "itemStyle": style,
        "label": label | {"fontFamily": FONT, "fontSize": 14, "fontWeight": 600},
    }


def _numbers(fan: BuiltFan, system: str, currency: str) -> Iterator[tuple[str, str]]:
    yield "flow", units.show(fan.flow, "flow", system)
    yield "total pressure", units.show(fan.total_pressure, "pressure", system)
    yield "fan static pressure", units.show(fan.static_pressure, "pressure", system)
    if fan.shaft_power is not None:
        yield "shaft power", units.show(fan.shaft_power, "power", system)
    if fan.efficiency is not None:
        yield "efficiency there", units.show(fan.efficiency, "share", system)
    if fan.margin is not None:
        yield "left of its motor", signed(fan.margin, "share", system)
    if fan.energy is not None:
        yield "energy a year", f"{fan.energy:,.0f}\u2009kWh"
    if fan.cost is not None:
        yield "cost of it a year", f"{fan.cost:,.0f} {currency}".strip()
