"""One hood and its sources from the side, to scale, in the plane of the hood's axis."""

import math
from dataclasses import dataclass

from hoodwright.errors import InputError
from hoodwright.reports.camera import along, dot
from hoodwright.reports.elevation import UPRIGHT, elevation_svg, is_level_view
from hoodwright.reports.labels import Labels
from hoodwright.reports.svg import (
    AIR,
    COPPER,
    COPPER_LIGHT,
    INK,
    QUIET,
    Point,
    arrow,
    circle,
    dimension,
    drawing,
    halo,
    line,
    rectangle,
    round_below,
    text,
    words_width,
)
from hoodwright.reports.words import shortened
from hoodwright.tasks.picture import HoodShape, Picture, SourceShape, Xyz
from hoodwright.units import KINDS, show, to_unit

WIDTH, HIGHEST, LEAST_LONG, LEAST_HIGH = 390.0, 118.0, 0.05, 0.03
LEFT, RIGHT, TOP, ROW = 112.0, 70.0, 40.0, 24.0
MOST_SOURCES = 4
ON_AXIS = math.radians(2)  # nearer to the axis, a source is drawn as on it


@dataclass(frozen=True)
class Spot:
    """A source as its hood sees it [m]: along the axis, off the axis (upward positive), straight distance."""

    name: str
    ahead: float
    off: float

    @property
    def distance(self) -> float:
        """Straight distance from the centre of the opening, as the equations use it."""
        return math.hypot(self.ahead, self.off)

    @property
    def angle(self) -> float:
        """Angle between the axis and the line to the source [rad]."""
        return math.atan2(abs(self.off), self.ahead)


@dataclass(frozen=True)
class Frame:
    """Where the centre of the opening lies in the picture, and how many units a metre takes."""

    scale: float
    left: float
    axis: float

    def at(self, spot: Spot) -> Point:
        """Place of a source."""
        return self.left + spot.ahead * self.scale, self.axis - spot.off * self.scale


def close_up_svg(picture: Picture, hood_name: str, system: str) -> str:
    """The hood of that name with the sources it serves, seen from the side, to scale."""
    hood = next((h for h in picture.hoods if h.name == hood_name), None)
    if hood is None:
        known = ", ".join(h.name for h in picture.hoods)
        raise InputError(f"no hood is named {hood_name!r}; there is: {known}; name one")
    if is_level_view(hood):
        return elevation_svg(picture, hood, system)
    spots = [_spot(hood, s) for s in picture.sources if s.name in hood.serves]
    shown = sorted(spots, key=lambda spot: -spot.distance)[:MOST_SOURCES]
    jet = _jet(hood)
    all_spots = [*shown, *jet]
    ahead, behind = max([LEAST_LONG, *(s.ahead for s in all_spots)]), max([0.0, *(-s.ahead for s in all_spots)])
    half = half_of(hood) + hood.flange
    high = max([LEAST_HIGH, half, *(spot.off for spot in all_spots)])
    low = max([LEAST_HIGH, half, *(-spot.off for spot in all_spots)])
    scale = min((WIDTH - LEFT - RIGHT) / (ahead + behind), HIGHEST / (high + low))
    frame = Frame(scale, LEFT + behind * scale, TOP + high * scale)
    bottom = frame.axis + low * scale + 16
    body = _surfaces(picture, hood, frame, (high, low)) + _hood(hood, frame, system) + _push(jet, frame)
    for spot in shown:
        if spot.angle < ON_AXIS:
            body += _level_distance(spot, frame, bottom, system)
            bottom += ROW
        else:
            body.append(dimension((frame.left, frame.axis), frame.at(spot)))
    body += _names(shown, hood, frame, bottom, system)
    body += _scale_bar(frame, bottom + 6, system)
    return drawing((WIDTH, bottom + 26), f"Close-up of {hood_name}", close_up_words(hood, spots, system), body)


def close_up_words(hood: HoodShape, spots: list[Spot], system: str) -> str:
    """The close-up in words."""
    parts = [f"Hood {hood.name} {view_words(hood)}, to scale."]
    for spot in spots:
        far, angle = show(spot.distance, "length", system), show(spot.angle, "angle", system, 2)
        parts.append(f"{spot.name} lies {far} from the opening, {angle} off its axis.")
    if hood.lines:
        parts.append("A push nozzle blows towards it.")
    return " ".join(parts)


def view_words(hood: HoodShape) -> str:
    """From where a hood is drawn."""
    if is_level_view(hood):
        return "seen level"
    return "seen along its slot" if hood.is_slot else "from the side"


def close_up_caption(picture: Picture, hood_name: str) -> str:
    """What stands below the close-up: true of this hood."""
    hood = next(h for h in picture.hoods if h.name == hood_name)
    words = [f"{view_words(hood).capitalize()}, to scale."]
    if hood.type == "enclosing":
        words.append("The opening is the dark line.")
    if hood.type == "receiving" and hood.facing[2] < -UPRIGHT:
        words.append("The taper of the canopy is a sketch.")
    if hood.also_open:
        words.append(f"Not drawn: {', '.join(hood.also_open)}.")
    return " ".join(words)


def half_of(hood: HoodShape) -> float:
    """Half the side of the opening that the drawing shows: across a slot, else upward."""
    return min(hood.half_width, hood.half_height) if hood.is_slot else hood.half_height


def _shown_up(hood: HoodShape) -> Xyz:
    """The direction that is up in the drawing."""
    way = hood.across if hood.is_slot and hood.half_width < hood.half_height else hood.up
    return (-way[0], -way[1], -way[2]) if way[2] < 0 else way


def _spot(hood: HoodShape, source: SourceShape) -> Spot:
    sight = hood.sight_of(source)
    way = along(sight.end, (sight.start, -1.0))
    ahead = dot(way, hood.facing)
    off = math.sqrt(max(0.0, dot(way, way) - ahead**2))
    name = f"{shortened(source.name, 20)}, far end" if len(source.extent) > 1 else source.name
    return Spot(name, ahead, -off if dot(way, _shown_up(hood)) < -1e-9 else off)


def _jet(hood: HoodShape) -> list[Spot]:
    """Both ends of the arrow of a push nozzle."""
    ways = [along(point, (hood.at, -1.0)) for drawn in hood.lines[1:2] for point in drawn]
    return [Spot("push nozzle", dot(way, hood.facing), dot(way, _shown_up(hood))) for way in ways]


def _push(jet: list[Spot], frame: Frame) -> list[str]:
    if not jet:
        return []
    start, end = (frame.at(spot) for spot in jet)
    return [
        arrow(start, end, AIR, 1.6),
        rectangle((start[0] - 2, start[1] - 5), (12, 10), fill=COPPER_LIGHT, stroke=COPPER, stroke_width=1.4),
        halo((start[0] + 10, start[1] - 10), "push nozzle", 12, fill=COPPER, text_anchor="end"),
    ]


def _surfaces(picture: Picture, hood: HoodShape, frame: Frame, room: tuple[float, float]) -> list[str]:
    """Level surfaces near the hood, cut where the drawing cuts them."""
    if _shown_up(hood)[2] < 0.99:
        return []
    drawn = []
    for plate in picture.plates:
        heights = [corner[2] for corner in plate.corners]
        off = heights[0] - hood.at[2]
        asides = [dot(along(corner, (hood.at, -1.0)), _aside(hood)) for corner in plate.corners]
        aheads = [dot(along(corner, (hood.at, -1.0)), hood.facing) for corner in plate.corners]
        level, under = max(heights) - min(heights) < 1e-6, min(asides) <= 0 <= max(asides)
        if level and under and -room[1] - 1e-6 <= off <= room[0]:
            start, end = (frame.left + ahead * frame.scale for ahead in (min(aheads), max(aheads)))
            y = frame.axis - off * frame.scale
            left, right = max(start, 8.0), min(end, WIDTH - 8)
            drawn += [line((left, y), (right, y), QUIET, 2.4)] if right > left else []
    return drawn


def _aside(hood: HoodShape) -> Xyz:
    """Square to the drawing."""
    x, y, _ = hood.facing
    return (-y, x, 0.0)


def _hood(hood: HoodShape, frame: Frame, system: str) -> list[str]:
    half, flange, axis, left = half_of(hood) * frame.scale, hood.flange * frame.scale, frame.axis, frame.left
    stub = min(44.0, max(20.0, 2 * half))
    solid = {"fill": COPPER_LIGHT, "stroke": COPPER, "stroke_width": 1.6}
    parts = [rectangle((left - stub, axis - half), (stub, 2 * half), **solid)]
    if hood.flange:
        parts += [rectangle((left - 3, y), (3, flange), **solid) for y in (axis - half - flange, axis + half)]
    parts.append(line((left - stub - 6, axis), (WIDTH - 8, axis), QUIET, 0.7, stroke_dasharray="10 3 2 3"))
    parts.append(line((left, axis - half), (left, axis + half), INK, 2.2))
    x = left - stub - 10
    parts.append(dimension((x, axis - half), (x, axis + half), QUIET))
    size = show(2 * half_of(hood), "length", system)
    sizes = [f"⌀ {size}"] if hood.is_round else [size, f"by {show(2 * _other_half(hood), 'length', system)}"]
    for i, words in enumerate(sizes):
        parts.append(halo((x - 6, axis + 4 + 13 * i), words, 12, text_anchor="end"))
    if hood.flange:
        words = f"flange {show(hood.flange, 'length', system)}"
        y = min(axis - half - flange / 2 + 4, axis - 14)
        parts.append(text((left - 9, y), words, 12, fill=QUIET, text_anchor="end"))
    return parts


def _other_half(hood: HoodShape) -> float:
    """Half the side of the opening that the drawing does not show."""
    return hood.half_width + hood.half_height - half_of(hood)


def _names(spots: list[Spot], hood: HoodShape, frame: Frame, height: float, system: str) -> list[str]:
    """A dot and a name for each source; those off the axis with their straight distance and angle."""
    labels = Labels((WIDTH, height))
    half = (half_of(hood) + hood.flange) * frame.scale
    for i in range(5):  # the hood and the words beside it
        labels.keep_clear((frame.left - 22 * i, frame.axis), min(half, 60) if i == 0 else 18)
    labels.taken.append((frame.left, frame.axis - 3, WIDTH, frame.axis + 3))
    dots = []
    for spot in spots:
        words = [shortened(spot.name, 26)]
        if spot.angle >= ON_AXIS:
            far, angle = show(spot.distance, "length", system), show(spot.angle, "angle", system, 2)
            words.append(f"{far}, {angle} off axis")
        dots.append(circle(frame.at(spot), 4.5, fill=INK))
        if not labels.add(frame.at(spot), words, below=spot.off < 0 and spot.angle >= ON_AXIS):
            x, y = frame.at(spot)
            dots.append(halo((max(x, words_width(words[0]) / 2), y - 9), words[0], text_anchor="middle"))
    return dots + labels.drawn


def _level_distance(spot: Spot, frame: Frame, y: float, system: str) -> list[str]:
    x, source_y = frame.at(spot)
    thin = {"stroke_dasharray": "2 3"}
    words = show(spot.distance, "length", system)
    return [
        line((frame.left, frame.axis), (frame.left, y + 5), QUIET, 0.7, **thin),
        line((x, source_y), (x, y + 5), QUIET, 0.7, **thin),
        dimension((frame.left, y), (x, y)),
        halo(((frame.left + x) / 2, y - 4), words, 13, text_anchor="middle", font_weight="bold"),
    ]


def _scale_bar(frame: Frame, y: float, system: str) -> list[str]:
    unit = KINDS["length"].show[system]
    per_unit = 1 / to_unit(1.0, "length", unit)
    step = round_below(to_unit(90 / frame.scale, "length", unit)) * per_unit
    length = step * frame.scale
    return [
        rectangle((LEFT, y), (length, 4), fill=INK),
        text((LEFT + length + 7, y + 6), show(step, "length", system), 12, fill=QUIET),
    ]
