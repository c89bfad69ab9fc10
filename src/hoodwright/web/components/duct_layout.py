"""The ducts as a drawing: thin to thick by flow, trouble as a shape and a word, every part a click away."""

from collections.abc import Callable
from pathlib import Path

from nicegui import ui

from hoodwright import units
from hoodwright.tasks.as_built.layout import HOODS, ROW, Band, Layout, Line, Spot, bands
from hoodwright.tasks.as_built.live import TROUBLES, DuctFlow, LiveDucts, Tried
from hoodwright.web.components import duct_shapes as shapes
from hoodwright.web.components.duct_scales import closed_share
from hoodwright.web.components.signed import percent, signed

LETTER, SMALL = 7.9, 7.1  # px of width a letter takes at most, at 15 and 13 px
DAMPER_AT = 20.0  # px before the turn
BESIDE_TURN = 14.0  # px
MARK_ROOM = 60.0  # px, from which a trouble is told in words beside its shape
SLOW_S, FAST_S = 6.0, 0.5  # a mark of the air takes so long over its length at 2 m/s and at most
MOVING = 60  # ducts up to which air is seen to move
LOOK = Path(__file__).parents[1] / "static" / "ducts.css"
HALF_TURN = 90.0
LONGEST_NAME = 20  # letters of a hood's name before its drawing


class DuctDrawing(ui.element, component="duct_layout.js"):
    """Shows a layout and what flows; `on_choose` hears of a part, `on_step` of a duct whose damper a key moved."""

    def __init__(self, on_choose: Callable[[str], None], on_step: Callable[[str, int], None]):
        super().__init__()
        ui.add_css(LOOK)
        self.on("choose", lambda e: on_choose(e.args))
        self.on("step", lambda e: on_step(e.args["part"], e.args["step"]))

    def show(self, layout: Layout, live: LiveDucts, tried: Tried, chosen: str, system: str, about: str) -> None:
        """Draw it."""
        pen = _Pen(layout, live, tried, system)
        self.props.update(
            width=layout.width,
            height=layout.height,
            about=about,
            chosen=chosen,
            ducts=[pen.duct(line) for line in layout.lines],
            spots=[pen.spot(spot) for spot in layout.spots],
            old=False,
        )

    def choose(self, chosen: str) -> None:
        """Mark another part."""
        self.props["chosen"] = chosen

    def grey(self) -> None:
        """What is shown belongs to an earlier moment."""
        self.props["old"] = True


class _Pen:
    """Turns one duct or spot into paths, words and marks."""

    def __init__(self, layout: Layout, live: LiveDucts, tried: Tried, system: str):
        self.layout, self.live, self.tried, self.system = layout, live, tried, system
        self.bands = bands(layout, live.flows)
        self.few = layout.row == ROW
        self.kinds = {spot.key: spot.kind for spot in layout.spots}
        self.from_rows: dict[str, list[float]] = {}
        for line in layout.lines:
            self.from_rows.setdefault(line.end, []).append(line.y0)

    def duct(self, line: Line) -> dict:
        """One duct."""
        flow, band = self.live.ducts[line.name], self.bands[line.name]
        classes = [*(f"is-{key}" for key in flow.troubles), *(["intended"] if not flow.built else [])]
        words, marks = self._words(line, flow, band)
        return {
            "name": line.name,
            "path": _path(line, band),
            "width": round(band.width, 1),
            "classes": " ".join(classes),
            "pace": self._pace(flow),
            "at": [(line.x0 + line.level_until) / 2, line.y0],
            "lines": words,
            "marks": marks,
            "damper": self._damper(line, flow),
            "about": about_duct(line.name, flow, self.system),
        }

    def spot(self, spot: Spot) -> dict:
        """One hood, junction, cleaner, fan or the open air."""
        drawn = getattr(self, f"_{spot.kind}")(spot)
        base = {"key": spot.key, "classes": f"spot-{spot.kind}", "x": spot.x, "y": spot.y, "marks": [], "lines": []}
        return base | drawn

    def _pace(self, flow: DuctFlow) -> float:
        """Seconds a mark of the air takes; 0 where nothing moves."""
        if len(self.layout.lines) > MOVING or abs(flow.velocity) < 0.05 or "shut" in flow.troubles:
            return 0.0
        seconds = max(FAST_S, SLOW_S * 2.0 / abs(flow.velocity))
        return round(seconds, 2)

    def _words(self, line: Line, flow: DuctFlow, band: Band) -> tuple[list[dict], list[dict]]:
        """Name and flow above the duct, the rest below it, trouble below that; as much as there is room for."""
        left = line.x0 + (8 if self.kinds[line.start] in ("hood", "folded") else self._half(line.start) + 6)
        above, below = self._room(line, left)
        said = [units.show(abs(flow.flow), "flow", self.system), *self._rest(flow)]
        up, down = line.y0 - band.width / 2 - 7, line.y0 + band.width / 2 + 17
        if "shut" in flow.troubles:
            rows = [(up, line.name)] if max(above, below) > MARK_ROOM else []
        elif self.few:
            rows = [(up, _fitting([[line.name, said[0]], [line.name]], above))]
            joined = _fitting([said[1:]], below)
            apart = [(down + 17 * i, text) for i, text in enumerate(said[1:]) if len(text) * SMALL <= below]
            rows += [(down, joined)] if joined else apart
        else:
            choices = [[line.name, *said], [line.name, *said[:2]], [line.name, said[0]], [line.name]]
            rows = [(up, _fitting(choices, min(above, below)))]
        words = [
            {"x": left, "y": y, "words": text, "classes": "flow" if y == up else "rest"} for y, text in rows if text
        ]
        mark_at = (rows[-1][0] if len(rows) > 1 else down - 17) + 6 if self.few else line.y0 + band.width / 2 + 4
        wide = max(above, below) > MARK_ROOM
        return words, [self._mark(key, left + 120 * i, mark_at, wide=wide) for i, key in enumerate(flow.troubles)]

    def _room(self, line: Line, left: float) -> tuple[float, float]:
        """Px above and below a duct, up to where it or one that meets it turns, or to its damper."""
        turn = line.level_until - (2 * DAMPER_AT if self._has_damper(line) else 0)
        until = line.x1 - self._half(line.end) - 4 if self.kinds[line.end] != "outside" else line.x1
        until = turn if self._has_damper(line) else until
        rows = self.from_rows.get(line.end, [])
        up = line.y1 < line.y0 - 1 or any(y < line.y1 - 1 for y in rows if y != line.y0)
        down = line.y1 > line.y0 + 1 or any(y > line.y1 + 1 for y in rows if y != line.y0)
        beside = min(until, turn + BESIDE_TURN)  # a turn leaves its row slowly
        return (turn if up else until) - left, (beside if down else until) - left

    def _rest(self, flow: DuctFlow) -> list[str]:
        return [
            units.show(abs(flow.velocity), "velocity", self.system),
            signed(flow.static[1], "pressure", self.system),
        ]

    def _mark(self, key: str, x: float, y: float, *, wide: bool = True) -> dict:
        return {"x": x, "y": y, "shape": shapes.TROUBLE_SHAPES[key], "words": TROUBLES[key] if wide else ""}

    def _half(self, key: str) -> float:
        if self.kinds[key] == "junction":
            return shapes.pill_half(_short(key, 8)) if self._pills else 6.0
        return 24.0

    @property
    def _pills(self) -> bool:
        return self.layout.column > 80

    def _has_damper(self, line: Line) -> bool:
        """A damper is drawn in every duct that joins another, and in any that has one."""
        own = self.live.ducts[line.name]
        return own.built and (
            own.damper > 0 or (len(self.from_rows[line.end]) > 1 and self.kinds[line.start] == "hood")
        )

    def _damper(self, line: Line, flow: DuctFlow) -> dict | None:
        if not self._has_damper(line):
            return None
        turn = HALF_TURN * closed_share(flow.damper)
        if "shut" in flow.troubles:
            turn = HALF_TURN
        return {"x": line.level_until - DAMPER_AT, "y": line.y0, "turn": round(turn, 1), "set": flow.damper > 0}

    def _hood(self, spot: Spot) -> dict:
        hood = self.live.hoods[spot.key]
        flow = signed(hood.flow, "flow", self.system)
        of = f"{flow} of {units.show_number(hood.intended, 'flow', self.system)}" if hood.built else f"meant {flow}"
        trouble = next(iter(hood.troubles), None)
        word = TROUBLES[trouble] if trouble in ("reversed", "shut") else of
        if trouble == "short":
            got, meant = (units.show_number(q, "flow", self.system) for q in (hood.flow, hood.intended))
            word = f"short: {got} of {meant}"
        x = -HOODS + 10
        mark = {"x": x, "y": 4, "shape": shapes.TROUBLE_SHAPES.get(trouble or "", shapes.ENOUGH), "words": word}
        name = {"x": x, "y": -6, "words": _short(spot.name, LONGEST_NAME), "classes": "name"}
        return {
            "shape": shapes.HOOD,
            "lines": [name],
            "marks": [mark] if hood.built else [{**mark, "shape": "", "x": x - 22}],
            "box": [x - 8, -26, HOODS - 2, 52],
            "about": about_hood(spot.name, self.live, self.system),
        }

    def _junction(self, spot: Spot) -> dict:
        name = _short(spot.name, 8)
        half = shapes.pill_half(name)
        if not self._pills:
            return {"shape": shapes.DOT, "box": [-14, -22, 28, 44], "about": f"junction {spot.name}"}
        words = {"x": 0, "y": 5, "words": name, "classes": "middle small"}
        return {"shape": shapes.junction(name), "lines": [words], "box": [-half, -22, 2 * half, 44]} | {
            "about": f"junction {spot.name}"
        }

    def _cleaner(self, spot: Spot) -> dict:
        took = self.live.cleaners.get(spot.key)
        said = "" if took is None else units.show(took, "pressure", self.system)
        about = f"air cleaner {spot.name}, {percent(self.tried.load)} dirty{f', takes {said}' if said else ''}"
        drawn = {"shape": shapes.cleaner(self.tried.load), "box": [-24, -30, 48, 60], "about": about}
        return drawn | {"lines": _over(spot.name, f"−{said}" if said else "", -36)}

    def _fan(self, spot: Spot) -> dict:
        fan = self.live.fans[spot.key]
        rise = units.show(fan.pressure, "pressure", self.system)
        troubles = "".join(f"; {TROUBLES[key]}" for key in fan.troubles)
        about = f"fan {spot.name}, {'raises' if fan.built else 'must raise'} {rise} of total pressure{troubles}"
        marks = [self._mark(key, -38, 30) for key in fan.troubles]
        drawn = {"shape": shapes.FAN, "marks": marks, "box": [-26, -26, 52, 52], "about": about}
        return drawn | {"lines": _over(spot.name, f"+{rise}", -33)}

    def _outside(self, spot: Spot) -> dict:
        words = {"x": 16, "y": 5, "words": "outside", "classes": "small"}
        return {"shape": shapes.STACK, "lines": [words], "box": [-12, -24, 88, 46], "about": "outside"}

    def _onward(self, spot: Spot) -> dict:
        words = {"x": 16, "y": 5, "words": _short(f"to {spot.name}", 9), "classes": "small"}
        return {"shape": shapes.ONWARD, "lines": [words], "box": [-12, -24, 88, 46], "about": f"on to {spot.name}"}

    def _folded(self, spot: Spot) -> dict:
        x = -HOODS + 10
        name = {"x": x, "y": -6, "words": _short(f"before {spot.name}", 22), "classes": "name"}
        troubled = sum(1 for hood in spot.hoods if self.live.hoods[hood].troubles)
        told = f"{len(spot.hoods)} hoods" + (f", {troubled} in trouble" if troubled else ", folded")
        count = {"x": x, "y": 15, "words": told, "classes": "small"}
        about = f"{told} before {spot.name}, folded; choose it to look inside"
        return {"shape": shapes.FOLDED, "lines": [name, count], "box": [x - 8, -22, HOODS - 2, 44], "about": about}


def about_duct(name: str, flow: DuctFlow, system: str) -> str:
    """A duct in words."""
    meant = "" if flow.built else "meant "
    static = signed(flow.static[1], "pressure", system)
    words = [
        f"duct {name}: {meant}{units.show(abs(flow.flow), 'flow', system)}",
        units.show(abs(flow.velocity), "velocity", system),
        f"static pressure {static} at its end",
    ]
    return ", ".join([*words, *(TROUBLES[key] for key in flow.troubles)])


def about_hood(name: str, live: LiveDucts, system: str) -> str:
    """A hood in words."""
    hood = live.hoods[name]
    intended = units.show(hood.intended, "flow", system)
    if not hood.built:
        return f"hood {name}, meant to get {intended}"
    gets = f"hood {name}, gets {units.show(hood.flow, 'flow', system)} of the {intended} intended"
    return ", ".join([gets, *(TROUBLES[key] for key in hood.troubles)])


def _path(line: Line, band: Band) -> str:
    y1 = line.y1 + band.aside
    if abs(y1 - line.y0) < 0.25:
        return f"M{line.x0:.1f} {line.y0:.1f}H{line.x1:.1f}"
    middle = (line.level_until + line.x1) / 2
    return (
        f"M{line.x0:.1f} {line.y0:.1f}H{line.level_until:.1f}"
        f"C{middle:.1f} {line.y0:.1f} {middle:.1f} {y1:.1f} {line.x1:.1f} {y1:.1f}"
    )


def _fitting(choices: list[list[str]], room: float) -> str:
    """The fullest of several sayings that has room."""
    for words in choices:
        text = "  ".join(words)
        if len(text) * SMALL <= room:
            return text
    return ""


def _short(name: str, most: int) -> str:
    return name if len(name) <= most else f"{name[: most - 1]}…"


def _over(name: str, value: str, y: float) -> list[dict]:
    """A name and below it a value, both above what stands in the middle."""
    told = [{"x": 0, "y": y, "words": value, "classes": "middle small"}] if value else []
    return [{"x": 0, "y": y - 17 * len(told), "words": _short(name, 16), "classes": "middle name"}, *told]
