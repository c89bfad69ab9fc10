"""Static and total pressure from the hoods to the discharge, as a plot with labelled units."""

from nicegui import ui

from hoodwright import units
from hoodwright.tasks.stretches import Stretch

AIR, COPPER, GREY = "#2F8899", "#C0703A", "#7D8A92"
LINES = ("static pressure", "total pressure")
DESIGNED = "static pressure by hand, at the intended flows"
LENGTH_UNIT = {"SI": "m", "US": "ft"}
LABEL_GAP, LABEL_LINE = 9, 17  # px
FONT = "system-ui, sans-serif"


def pressure_plot(stretches: tuple[Stretch, ...], system: str) -> ui.echart:
    """The plot; signs as everywhere: suction is negative."""
    return ui.echart(options(stretches, system), renderer="svg").classes("plot")


def options(stretches: tuple[Stretch, ...], system: str, designed: tuple[Stretch, ...] = ()) -> dict:
    """What ECharts draws; `designed` is the same way at the intended flows, as a thin line beside it."""
    way, pressure = LENGTH_UNIT[system], units.KINDS["pressure"].show[system]
    text = {"fontFamily": FONT, "fontSize": 13, "color": GREY}
    axis = {"axisLabel": text, "nameTextStyle": text, "nameLocation": "middle", "type": "value"}
    return {
        "animation": False,
        "aria": {"enabled": False},
        "textStyle": {"fontFamily": FONT},
        "grid": {"left": 76, "right": 36, "top": 40, "bottom": 56},
        "legend": {"top": 0, "left": 70, "textStyle": text, "data": [*LINES, DESIGNED][: 3 if designed else 2]},
        "tooltip": {"trigger": "item", "confine": True},
        "xAxis": {**axis, "name": f"way left to the discharge ({way})", "nameGap": 32, "inverse": True}
        | {"splitLine": {"show": False}, "axisLine": {"onZero": False, "lineStyle": {"color": GREY}}},
        "yAxis": {**axis, "name": f"gauge pressure ({units.unit_label('pressure', system)})", "nameGap": 56}
        | {
            "splitLine": {"lineStyle": {"color": GREY, "opacity": 0.25}},
            "axisLine": {"show": False},
            "axisTick": {"show": False},
        }
        | {"boundaryGap": ["8%", "8%"]},
        "series": [
            _line("static pressure", [s.static for s in stretches], stretches, way, pressure, AIR, 3, "solid"),
            _line("total pressure", [s.total for s in stretches], stretches, way, pressure, COPPER, 2, "dashed"),
            *(
                [_line(DESIGNED, [s.static for s in designed], designed, way, pressure, GREY, 1.5, "dotted")]
                * bool(designed)
            ),
            _nodes(stretches, way, pressure),
        ],
    }


def _line(name, ends, stretches, way, pressure, colour, width, dash) -> dict:
    """Every duct as a line of its own; a fall at one place joins it to what follows."""
    follow = {stretch.start_from: pair for stretch, pair in zip(stretches, ends, strict=True)}
    data: list = []
    for stretch, pair in zip(stretches, ends, strict=True):
        places = [(stretch.begins, pair[0]), (stretch.ends, pair[1])]
        if stretch.from_hood:
            places.insert(0, (stretch.begins, 0.0))
        if stretch.to in follow:
            places.append((stretch.ends, follow[stretch.to][0]))
        data += [_point(x, y, way, pressure) for x, y in places]
        data.append([None, None])
    zero = {"silent": True, "symbol": "none", "label": {"show": False}, "data": [{"yAxis": 0}]}
    return {
        "name": name,
        "type": "line",
        "data": data,
        "connectNulls": False,
        "symbol": "circle",
        "symbolSize": 7,
        "lineStyle": {"color": colour, "width": width, "type": dash},
        "itemStyle": {"color": colour},
        "markLine": {**zero, "lineStyle": {"color": GREY, "type": "solid"}},
    }


def _nodes(stretches: tuple[Stretch, ...], way: str, pressure: str) -> dict:
    """Names of hoods and of what stands between the ducts."""
    seen: dict[str, dict] = {}
    for stretch in stretches:
        below = stretch.static[0] <= 0 and not stretch.from_hood
        y = 0.0 if stretch.from_hood else stretch.static[0] if below else stretch.total[0]
        side = "bottom" if below else "top"
        seen.setdefault(stretch.start_from, _named(stretch.start_from, _point(stretch.begins, y, way, pressure), side))
    follow = {stretch.start_from for stretch in stretches}
    for stretch in stretches:
        if stretch.to not in follow:
            end = _point(stretch.ends, stretch.static[1], way, pressure)
            seen.setdefault(stretch.to, _named(stretch.to, end, "bottom"))
    hoods = {stretch.start_from for stretch in stretches if stretch.from_hood}
    _stagger([node for name, node in seen.items() if name in hoods])
    label = {
        "show": True,
        "formatter": "{b}",
        "fontFamily": FONT,
        "fontSize": 13,
        "color": GREY,
        "distance": LABEL_GAP,
    }
    return {
        "type": "scatter",
        "data": list(seen.values()),
        "symbolSize": 1,
        "itemStyle": {"opacity": 1},
        "silent": True,
        "label": label,
        "labelLayout": {"moveOverlap": "shiftY", "hideOverlap": True},
    }


def _stagger(nodes: list[dict]) -> None:
    """Every other hood's name a line higher, so that long names of near hoods have room."""
    for index, node in enumerate(sorted(nodes, key=lambda node: node["value"][0])):
        node["label"]["distance"] = LABEL_GAP + (index % 2) * LABEL_LINE


def _named(name: str, place: list[float], side: str) -> dict:
    return {"value": place, "name": name, "label": {"position": side}}


def _point(way_left: float, value: float, way: str, pressure: str) -> list[float]:
    found = units.to_unit(way_left, "length", way), units.to_unit(value, "pressure", pressure)
    return [float(f"{number:.4g}") for number in found]
