"""The capture map as SVG and as PNG: where on a plane would the hood still catch what the source gives off?"""

import math
from dataclasses import dataclass
from itertools import groupby

import numpy as np

from hoodwright.errors import HoodwrightError
from hoodwright.reports.svg import (
    AIR,
    COPPER,
    INK,
    PAPER,
    QUIET,
    RULE,
    WHITE,
    Point,
    circle,
    drawing,
    halo,
    line,
    polyline,
    rectangle,
    tag,
    text,
    ticks,
    words_width,
)
from hoodwright.tasks.air.planes import UPRIGHT
from hoodwright.tasks.capture.answer import BANNER
from hoodwright.tasks.capture.map import CaptureMap
from hoodwright.units import KINDS, show, to_unit, unit_label

WIDE, HIGH = 560.0, 430.0  # the most that the plane itself takes
LEFT, RIGHT, TOP, BOTTOM = 72.0, 108.0, 78.0, 84.0
FINE = 5  # pieces of one step of the raster, between whose corners the share is linear
STEPS = 20  # of the colours
LAP = 0.4  # by which pieces of colour lap over, so that no paper shines through
BODY = "#9AA3A8"
LEVEL_STYLE = {0.9: {"width": 2.4}, 0.5: {"width": 1.6, "stroke_dasharray": "6 4"}}
BAR = (14.0, 150.0)


@dataclass(frozen=True)
class Sheet:
    """From places of the plane to the picture. An upright plane stands upright; a level one is seen from above."""

    found: CaptureMap

    @property
    def lengths(self) -> tuple[float, float]:
        """Sides of the plane [m]."""
        plane = self.found.layer.plane
        return math.hypot(*plane.first), math.hypot(*plane.second)

    @property
    def scale(self) -> float:
        """Points of the picture a metre."""
        a, b = self.lengths
        return min(WIDE / a, HIGH / b)

    @property
    def size(self) -> Point:
        """Of the plane in the picture."""
        a, b = self.lengths
        return a * self.scale, b * self.scale

    def at(self, u: float, v: float) -> Point:
        """A place by its shares of both sides."""
        wide, high = self.size
        return LEFT + u * wide, TOP + (1 - v) * high

    def of(self, place) -> Point:
        """The nearest place of the plane, in the picture."""
        return self.at(*self.shares(place))

    def shares(self, place) -> tuple[float, float]:
        """How far along both sides a place lies."""
        plane = self.found.layer.plane
        offset = np.subtract(place, plane.corner)
        u, v = (float(offset @ np.asarray(side) / np.dot(side, side)) for side in (plane.first, plane.second))
        return u, v


def capture_map_svg(found: CaptureMap) -> str:
    """The captured share with the source at each place, its 90 % and 50 % lines, hood and source."""
    sheet = Sheet(found)
    wide, high = sheet.size
    size = (LEFT + wide + RIGHT, TOP + high + BOTTOM)
    title = f"Where would the {found.hood} still catch what the {found.source} gives off?"
    parts = [
        *_colours(sheet),
        *_plates(sheet),
        *_axes(sheet),
        *_lines(sheet),
        *_things(sheet),
        *_bar(sheet),
        *_head(sheet, title),
    ]
    return drawing(size, title, f"{found.layer.words} Computed air, {BANNER}.", parts, PAPER)


def capture_map_png(found: CaptureMap) -> bytes:
    """The same as PNG, by the binding that also sets the reports."""
    import typst  # late: only figures need it

    page = '#set page(width: auto, height: auto, margin: 0pt)\n#image("figure.svg")'
    parts = {"main.typ": page.encode(), "figure.svg": capture_map_svg(found).encode()}
    try:
        return typst.compile(parts, format="png", ppi=144.0)  # type: ignore[call-overload,return-value]
    except typst.TypstError as error:
        raise HoodwrightError(f"the figure could not be set: {error}; please report it") from error


def _colours(sheet: Sheet) -> list[str]:
    """Rows of even colour: white where nothing is caught, the colour of air where all is, grey in bodies."""
    steps = _stepped(sheet.found.layer.values)
    count, rows = steps.shape
    (left, top), (right, bottom) = sheet.at(0, 1), sheet.at(1, 0)
    wide, high = (right - left) / count, (bottom - top) / rows
    found = []
    for row in range(rows):
        start = 0
        for step, group in groupby(steps[:, rows - 1 - row].tolist()):
            length = len(list(group))
            corner = (left + start * wide, top + row * high)
            found.append(rectangle(corner, (length * wide + LAP, high + LAP), fill=_colour(step)))
            start += length
    return [tag("g", "".join(found), shape_rendering="crispEdges")]


def _stepped(values: np.ndarray) -> np.ndarray:
    """Shares in whole steps on a finer raster, linear between the places; -1 in bodies."""
    spots = [(np.arange((n - 1) * FINE) + 0.5) / FINE for n in values.shape]
    low = [spot.astype(int) for spot in spots]
    part = [spot - first for spot, first in zip(spots, low, strict=True)]
    part[0] = part[0][:, None]
    known = ~np.isnan(values)
    filled = np.where(known, values, 0.0)
    total = weight = np.zeros([len(spot) for spot in spots])
    for a in (0, 1):
        for b in (0, 1):
            share = (part[0] if a else 1 - part[0]) * (part[1] if b else 1 - part[1])
            corner = np.ix_(low[0] + a, low[1] + b)
            total = total + share * filled[corner]
            weight = weight + share * known[corner]
    mean = total / np.where(weight > 0, weight, 1.0)
    return np.where(weight < 0.5, -1, np.minimum((mean * STEPS).astype(int), STEPS - 1))


def _colour(step: int) -> str:
    if step < 0:
        return BODY
    share = (step + 0.5) / STEPS
    ends = [[int(colour[i : i + 2], 16) for i in (1, 3, 5)] for colour in (WHITE, AIR)]
    return "#" + "".join(f"{round(a + share * (b - a)):02X}" for a, b in zip(*ends, strict=True))


def _plates(sheet: Sheet) -> list[str]:
    """Benches and walls without thickness, where they cut the plane."""
    return [line(sheet.of(start), sheet.of(end), BODY, 4) for start, end in sheet.found.plates]


def _lines(sheet: Sheet) -> list[str]:
    """The 90 % and 50 % lines, each with its name on its longest part."""
    found = []
    for level in sheet.found.layer.levels:
        style = LEVEL_STYLE[level.value]
        found += [polyline([sheet.of(p) for p in one], INK, **style) for one in level.lines]  # type: ignore[arg-type]
    things = [sheet.of(sheet.found.source_at), sheet.of(sheet.found.frame.centre)]
    for level in sheet.found.layer.levels:  # named where there is most room
        points = [sheet.of(place) for place in level.lines[0]]
        x, y = max(points, key=lambda point: min(math.dist(point, thing) for thing in things))
        half = words_width(level.words, 12) / 2
        x = min(max(x, LEFT + half + 4), LEFT + sheet.size[0] - half - 4)
        found.append(
            halo((x, min(max(y + 4, TOP + 14), TOP + sheet.size[1] - 6)), level.words, 12, text_anchor="middle")
        )
    return found


def _things(sheet: Sheet) -> list[str]:
    """The opening as its edge seen on this plane, and the source where it stands."""
    found, frame = sheet.found, sheet.found.frame
    ends = []
    for way, side in ((frame.along, frame.sides[0]), (frame.across, frame.sides[1])):
        ends.append([sheet.of(frame.centre + s * way * side / 2) for s in (-1, 1)])
    first, second = max(ends, key=lambda pair: math.dist(*pair))
    here = sheet.of(found.source_at)
    opening = line(first, second, COPPER, 5, stroke_linecap="round")
    source = circle(here, 6, fill=COPPER, stroke=WHITE, stroke_width=1.5)
    names = [_name(sheet, *_beside(first, second, here), found.hood), _name(sheet, here, 22, found.source)]
    return [opening, source, *names]


def _beside(first: Point, second: Point, here: Point) -> tuple[Point, float]:
    """Where the hood's name goes: over an upright edge, or on the side of a level one that is away from the source."""
    middle = ((first[0] + second[0]) / 2, (first[1] + second[1]) / 2)
    if abs(first[1] - second[1]) > abs(first[0] - second[0]):
        return min(first, second, key=lambda end: end[1]), -10
    return middle, 22 if middle[1] > here[1] else -12


def _name(sheet: Sheet, at: Point, down: float, words: str) -> str:
    """A name beside its thing, within the picture."""
    half = words_width(words, 12) / 2
    low, high = LEFT + half, LEFT + sheet.size[0] - half
    return halo((min(max(at[0], low), max(high, low)), at[1] + down), words, 12, text_anchor="middle", fill=COPPER)


def _axes(sheet: Sheet) -> list[str]:
    """Distances from the middle of the opening along both sides."""
    found, system = sheet.found, sheet.found.system
    unit = to_unit(1.0, "length", KINDS["length"].show[system])
    (left, top), (right, bottom) = sheet.at(0, 1), sheet.at(1, 0)
    start = sheet.shares(found.frame.centre)
    parts = [rectangle((left, top), sheet.size, fill="none", stroke=RULE)]
    for axis, length in enumerate(sheet.lengths):
        low, high = -start[axis] * length * unit, (1 - start[axis]) * length * unit
        for tick in ticks(low, high, 6):
            share = (tick - low) / (high - low)
            if axis == 0:
                x = left + share * (right - left)
                parts += [line((x, bottom), (x, bottom + 5), QUIET), _tick((x, bottom + 19), tick, "middle")]
            else:
                y = bottom - share * (bottom - top)
                parts += [line((left - 5, y), (left, y), QUIET), _tick((left - 9, y + 4), tick, "end")]
    up = "height" if found.plane == UPRIGHT else "along the room's width"
    along = "level" if found.plane == UPRIGHT else "along the room's length"
    words = f"{unit_label('length', system)} from the middle of the opening: {along} below, {up} on the left"
    return [*parts, text((left, bottom + 38), words, 12, fill=QUIET)]


def _tick(at: Point, value: float, anchor: str) -> str:
    return text(at, f"{value:g}".replace("-", "\N{MINUS SIGN}"), 12, text_anchor=anchor)


def _bar(sheet: Sheet) -> list[str]:
    """What the colours say."""
    left, (wide, high) = LEFT + sheet.size[0] + 22, BAR
    step = high / STEPS
    found = [rectangle((left, TOP + 18 + high - (n + 1) * step), (wide, step), fill=_colour(n)) for n in range(STEPS)]
    found = [tag("g", "".join(found), shape_rendering="crispEdges")]
    found.append(rectangle((left, TOP + 18), BAR, fill="none", stroke=RULE))
    found.append(text((left, TOP + 8), "captured", 12))
    for share in (0.0, 0.5, 1.0):
        found.append(text((left + wide + 6, TOP + 22 + high * (1 - share)), f"{100 * share:.0f} %", 12))
    if sheet.found.plates or np.isnan(sheet.found.layer.values).any():
        found.append(rectangle((left, TOP + 34 + high), (wide, wide), fill=BODY))
        found.append(text((left + wide + 6, TOP + 46 + high), "solid", 12))
    return found


def _head(sheet: Sheet, title: str) -> list[str]:
    """Title, the answer in words, and what the picture may be trusted for."""
    found, system = sheet.found, sheet.found.system
    answer, *_ = found.layer.words.partition(" Few draws")
    layer, bottom = found.layer, TOP + sheet.size[1]
    through = f"level, through the {found.source}" if found.plane != UPRIGHT else "upright, through hood and source"
    lost = show(layer.escape_radius, "length", system)
    foot = (
        f"Computed air, {BANNER}. {layer.realisations * layer.particles} particles from each place, no interval.",
        f"Lost: farther than {lost} from the hood, or in the air after {layer.time_limit:g} s.",
    )
    return [
        text((LEFT, 22), title, 15),
        text((LEFT, 42), f"At {show(found.flow, 'flow', system)}; {through}.", 12, fill=QUIET),
        text((LEFT, 60), answer, 12, fill=QUIET),
        *(text((LEFT, bottom + 56 + 16 * n), part, 12, fill=QUIET) for n, part in enumerate(foot)),
    ]
