"""A canopy, an enclosure, a receiving hood or a table with its sources, seen level from one side, to scale.

Hoods that draw in sideways are drawn along their axis instead: see `close_up.py`.
"""

import math
from dataclasses import dataclass

from hoodwright.reports.camera import along, dot, rim
from hoodwright.reports.labels import Labels
from hoodwright.reports.svg import (
    COPPER,
    COPPER_LIGHT,
    INK,
    QUIET,
    RULE,
    Point,
    arrow,
    circle,
    dimension,
    drawing,
    halo,
    line,
    polygon,
    polyline,
    rectangle,
    round_below,
    text,
)
from hoodwright.reports.words import shortened
from hoodwright.tasks.picture import HoodShape, Picture, Sight, SourceShape, Xyz
from hoodwright.units import KINDS, show, to_unit

WIDTH, HIGHEST, MARGIN, LEAST, TOP = 390.0, 150.0, 84.0, 0.2, 26.0
UPRIGHT = 0.7  # a hood whose axis leans less than this from the vertical looks up or down
STRAIGHT = math.radians(2)  # nearer to the vertical, a distance is drawn beside the hood
MOST_DISTANCES = 3
NEAR = 14.0  # a floor farther below than this is left out


@dataclass(frozen=True)
class View:
    """A level view: which way is right in the picture, and how room coordinates become picture units."""

    right: Xyz
    scale: float
    left: float
    top: float

    def at(self, point: Xyz) -> Point:
        """Place of a point of the room in the picture."""
        return MARGIN + (dot(point, self.right) - self.left) * self.scale, TOP + (self.top - point[2]) * self.scale


def is_level_view(hood: HoodShape) -> bool:
    """Whether a hood is drawn in this way: every type but the capturing one, and all that look up or down."""
    return hood.type != "capturing" or abs(hood.facing[2]) > UPRIGHT


def elevation_svg(picture: Picture, hood: HoodShape, system: str) -> str:
    """The hood and the sources it serves, to scale."""
    sources = [source for source in picture.sources if source.name in hood.serves]
    points = [*rim(hood, hood.flange), *_body_points(hood), *(p for s in sources for p in _points(s))]
    view = _view(hood, sources, points)
    low = min(p[2] for p in points)
    bottom = view.at((0.0, 0.0, low))[1] + 18
    labels = Labels((WIDTH, bottom + 30))
    body = _floor(view, low, picture) + _body(hood, view)
    for source in sources:
        body += _source(source, view, labels)
    body += _sizes(hood, sources, view, system, labels)
    if hood.type != "enclosing" and not any(_is_wheel(source) for source in sources):
        body += _distances(hood, sources, view, system, labels)
    body += _names(sources, view, labels)
    body += _scale_bar(view, bottom + 10, system)
    return drawing((WIDTH, bottom + 30), f"Close-up of {hood.name}", elevation_words(hood, sources, system), body)


def elevation_words(hood: HoodShape, sources: list[SourceShape], system: str) -> str:
    """The view in words."""
    way = "down" if hood.facing[2] < -UPRIGHT else "up" if hood.facing[2] > UPRIGHT else "sideways"
    parts = [f"Hood {hood.name} seen level, to scale; its opening looks {way}."]
    for source in sources:
        high = show(abs(hood.at[2] - source.at[2]), "length", system)
        side = "above" if hood.at[2] >= source.at[2] else "below"
        parts.append(f"The middle of its opening lies {high} {side} the middle of {source.name}.")
        if any(source.is_thrown(drawn) for drawn in source.lines):
            parts.append(f"An arrow shows which way {source.name} throws.")
    if hood.also_open:
        parts.append(f"Not drawn: {', '.join(hood.also_open)}.")
    return " ".join(parts)


def _points(source: SourceShape) -> list[Xyz]:
    return [source.at, *source.extent, *(p for drawn in source.lines for p in drawn)]


def _body_points(hood: HoodShape) -> list[Xyz]:
    found = [p for panel in (*hood.panels, *hood.lines) for p in panel]
    return found if hood.panels else [*found, *rim(hood, behind=_deep(hood))]


def _deep(hood: HoodShape) -> float:
    """How far a hood without a body of its own is drawn behind its opening."""
    return min(0.8 * min(hood.half_width, hood.half_height), 0.3)


def _looks_up_or_down(hood: HoodShape) -> bool:
    return abs(hood.facing[2]) > UPRIGHT


def _view(hood: HoodShape, sources: list[SourceShape], points: list[Xyz]) -> View:
    """Canopies from the front; others so that they look to the right, or so that a source aside is seen aside."""
    right = _right(hood, sources)
    sides = [dot(p, right) for p in points]
    wide, high = max(LEAST, max(sides) - min(sides)), max(LEAST, max(p[2] for p in points) - min(p[2] for p in points))
    scale = min((WIDTH - 2 * MARGIN) / wide, HIGHEST / high)
    spare = (WIDTH - 2 * MARGIN) / scale - (max(sides) - min(sides))
    return View(right, scale, min(sides) - spare / 2, max(p[2] for p in points))


def _right(hood: HoodShape, sources: list[SourceShape]) -> Xyz:
    if not _looks_up_or_down(hood):
        level = math.hypot(hood.facing[0], hood.facing[1])
        return (hood.facing[0] / level, hood.facing[1] / level, 0.0)
    ways = [along(sight.end, (sight.start, -1.0)) for sight in map(hood.sight_of, sources)]
    x, y, z = max(ways, key=lambda way: math.hypot(way[0], way[1]), default=(0.0, 0.0, 1.0))
    aside = math.hypot(x, y)
    if hood.type != "capturing" or aside <= STRAIGHT * abs(z):
        return hood.across
    return (x / aside, y / aside, 0.0)


def _floor(view: View, low: float, picture: Picture) -> list[str]:
    """Surfaces that the sources stand on, as lines; the floor where it is near."""
    drawn, lowest = [], view.at((0.0, 0.0, low))[1]
    for plate in picture.plates:
        sides = sorted(view.at(corner)[0] for corner in plate.corners)
        level = max(c[2] for c in plate.corners) - min(c[2] for c in plate.corners) < 1e-6
        _, y = view.at(plate.corners[0])
        if level and abs(plate.corners[0][2] - low) < 0.35 and y < lowest + NEAR:
            start, end = (min(max(x, 8.0), WIDTH - 8) for x in (sides[0], sides[-1]))
            drawn.append(line((start, y), (end, y), QUIET, 2.4))
    _, y = view.at((0.0, 0.0, 0.0))
    if low < 0.05 and y < lowest + NEAR:
        drawn.append(line((8, y), (WIDTH - 8, y), RULE, 2.4))
    return drawn


def _body(hood: HoodShape, view: View) -> list[str]:
    solid = {"fill": COPPER_LIGHT, "fill_opacity": 0.45, "stroke": COPPER, "stroke_width": 1.2}
    drawn = [polygon([view.at(p) for p in panel], **solid) for panel in hood.panels]
    if not hood.panels:
        (a, b), (c, d) = (_ends(hood, view, behind=far) for far in (0.0, _deep(hood)))
        drawn.append(polygon([a, b, d, c], **solid))
    if hood.flange:
        drawn.append(line(*_ends(hood, view, wider=hood.flange), COPPER, 1.8))
    drawn.append(line(*_opening(hood, view), INK, 2.6))
    return drawn + [polyline([view.at(p) for p in extra], COPPER, 1.6) for extra in hood.lines]


def _opening(hood: HoodShape, view: View) -> tuple[Point, Point]:
    """Both ends of the opening, which is seen edge-on."""
    return _ends(hood, view)


def _ends(hood: HoodShape, view: View, wider: float = 0.0, behind: float = 0.0) -> tuple[Point, Point]:
    """Ends of the rim, the left or upper one first, always in the same order for one hood."""
    x, y = dot(hood.facing, view.right), hood.facing[2]

    def along_rim(point: Point) -> float:
        if abs(x) >= abs(y):
            return point[1] * abs(x) + point[0] * (y if x > 0 else -y)
        return point[0] * abs(y) + point[1] * (x if y > 0 else -x)

    edge = sorted((view.at(p) for p in rim(hood, wider, behind)), key=along_rim)
    return edge[0], edge[-1]


def _source(source: SourceShape, view: View, labels: Labels) -> list[str]:
    drawn = []
    for extra in source.lines:
        points = [view.at(p) for p in extra]
        if source.is_thrown(extra):
            drawn.append(arrow(points[0], points[-1], INK, 1.4))
            labels.keep_line_clear(points[0], points[-1], 4)
        else:
            drawn.append(polyline(points, INK, 1.2))
    labels.keep_clear(view.at(source.at), 6)
    return [*drawn, circle(view.at(source.at), 4, fill=INK)]


def _is_wheel(source: SourceShape) -> bool:
    """Whether a closed outline in an upright plane is all there is of it."""
    closed = [drawn for drawn in source.lines if len(drawn) > 4 and math.dist(drawn[0], drawn[-1]) < 1e-9]
    return any(max(p[2] for p in drawn) > min(p[2] for p in drawn) for drawn in closed)


def _sizes(hood: HoodShape, sources: list[SourceShape], view: View, system: str, labels: Labels) -> list[str]:
    """The opening's size in this view, outside the way to the sources."""
    start, end = _opening(hood, view)
    labels.keep_line_clear(start, end, 4)
    first, second = _size_words(hood, view, system)
    if _looks_up_or_down(hood):
        back = [view.at(p)[1] for p in (_body_points(hood) or [hood.at])]
        y = max(back) + 15 if hood.facing[2] > 0 else min(back) - 6
        x = (start[0] + end[0]) / 2
        labels.keep_line_clear((x - 40, y - 4), (x + 40, y - 4), 9)
        return [halo((x, y), f"{first} {second}".strip(), 12, text_anchor="middle", fill=QUIET)]
    behind = 0.0 if hood.panels else _deep(hood) * view.scale
    side = 1 if hood.panels else -1
    x, middle = end[0] + side * (12 + behind), (start[1] + end[1]) / 2
    labels.keep_line_clear((x, start[1]), (x, end[1]), 5)
    for i in range(4):
        labels.keep_clear((x + side * (10 + 14 * i), middle), 9)
    return [
        dimension((x, start[1]), (x, end[1]), QUIET),
        halo((x + 6 * side, middle + (-2 if second else 4)), first, 13, text_anchor="start" if side > 0 else "end"),
        halo((x + 6 * side, middle + 12), second, 13, text_anchor="start" if side > 0 else "end") if second else "",
    ]


def _size_words(hood: HoodShape, view: View, system: str) -> tuple[str, str]:
    """The opening's size, first the side that this view shows best."""
    wide, high = (show(2 * half, "length", system) for half in (hood.half_width, hood.half_height))
    if hood.is_round:
        return f"⌀ {wide}", ""
    up = view.right if _looks_up_or_down(hood) else (0.0, 0.0, 1.0)
    first, second = (wide, high) if abs(dot(hood.across, up)) > abs(dot(hood.up, up)) else (high, wide)
    return first, f"by {second}"


def _distances(hood: HoodShape, sources: list[SourceShape], view: View, system: str, labels: Labels) -> list[str]:
    """The lines by which the answer judges: upright ones beside the hood, others where they are."""
    drawn: list[str] = []
    done: set[tuple[str, float]] = set()
    aside = max(p[0] for p in _opening(hood, view)) + 14
    for source in sources[:MOST_DISTANCES]:
        sight = hood.sight_of(source)
        words = show(math.dist(sight.start, sight.end), "length", system)
        if _is_upright(sight):
            if (words, round(sight.end[2], 6)) in done:
                continue
            done.add((words, round(sight.end[2], 6)))
            drawn += _upright(sight, aside, words, view, labels)
            aside += 16
        elif math.dist(view.at(sight.start), view.at(sight.end)) > 8:
            drawn += _slanted(sight, words, view, labels)
    return drawn


def _is_upright(sight: Sight) -> bool:
    x, y, z = along(sight.end, (sight.start, -1.0))
    return math.hypot(x, y) <= STRAIGHT * abs(z)


def _upright(sight: Sight, x: float, words: str, view: View, labels: Labels) -> list[str]:
    (near, y), (_, other) = view.at(sight.end), view.at(sight.start)
    middle = (y + other) / 2
    labels.keep_line_clear((x, y), (x, other), 5)
    for i in range(5):
        labels.keep_clear((x + 10 + 12 * i, middle), 9)
    return [
        line((near, y), (x, y), QUIET, 0.7, stroke_dasharray="2 3"),
        dimension((x, other), (x, y)),
        halo((x + 6, middle + 4), words, 13, font_weight="bold"),
    ]


def _slanted(sight: Sight, words: str, view: View, labels: Labels) -> list[str]:
    start, end = view.at(sight.start), view.at(sight.end)
    labels.keep_line_clear(start, end, 5)
    middle = ((start[0] + end[0]) / 2 + 8, (start[1] + end[1]) / 2 - 6)
    for i in range(4):
        labels.keep_clear((middle[0] + 8 + 12 * i, middle[1] - 4), 9)
    return [dimension(start, end), halo(middle, words, 13, font_weight="bold")]


def _names(sources: list[SourceShape], view: View, labels: Labels) -> list[str]:
    for source in sources:
        labels.add(view.at(source.at), [shortened(source.name, 26)], below=True)
    return labels.drawn


def _scale_bar(view: View, y: float, system: str) -> list[str]:
    unit = KINDS["length"].show[system]
    per_unit = 1 / to_unit(1.0, "length", unit)
    step = round_below(to_unit(90 / view.scale, "length", unit)) * per_unit
    length = step * view.scale
    return [
        rectangle((12, y), (length, 4), fill=INK),
        text((12 + length + 7, y + 6), show(step, "length", system), 12, fill=QUIET),
    ]
