"""One hood and its sources from the side, to scale, in the plane of the hood's axis."""

import math
from dataclasses import dataclass

from hoodwright.errors import InputError
from hoodwright.reports.camera import along, dot
from hoodwright.reports.labels import Labels
from hoodwright.reports.svg import (
    COPPER,
    COPPER_LIGHT,
    INK,
    QUIET,
    Point,
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
from hoodwright.tasks.picture import HoodShape, Picture, SourceShape
from hoodwright.units import KINDS, show, to_unit

WIDTH, HIGHEST, LEAST_LONG, LEAST_HIGH = 390.0, 118.0, 0.1, 0.06
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
    spots = [_spot(hood, s) for s in picture.sources if s.name in hood.serves]
    shown = sorted(spots, key=lambda spot: -spot.distance)[:MOST_SOURCES]
    ahead, behind = max([LEAST_LONG, *(s.ahead for s in shown)]), max([0.0, *(-s.ahead for s in shown)])
    half = hood.half_height + hood.flange
    high = max([LEAST_HIGH, half, *(spot.off for spot in shown)])
    low = max([LEAST_HIGH, half, *(-spot.off for spot in shown)])
    scale = min((WIDTH - LEFT - RIGHT) / (ahead + behind), HIGHEST / (high + low))
    frame = Frame(scale, LEFT + behind * scale, TOP + high * scale)
    bottom = frame.axis + low * scale + 16
    body = _hood(hood, frame, system)
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
    parts = [f"Hood {hood.name} from the side, to scale."]
    for spot in spots:
        far, angle = show(spot.distance, "length", system), show(spot.angle, "angle", system, 2)
        parts.append(f"{spot.name} lies {far} from the opening, {angle} off its axis.")
    return " ".join(parts)


def _spot(hood: HoodShape, source: SourceShape) -> Spot:
    way = along(source.at, (hood.at, -1.0))
    ahead = dot(way, hood.facing)
    off = math.sqrt(max(0.0, dot(way, way) - ahead**2))
    return Spot(source.name, ahead, -off if dot(way, hood.up) < -1e-9 else off)


def _hood(hood: HoodShape, frame: Frame, system: str) -> list[str]:
    half, flange, axis, left = hood.half_height * frame.scale, hood.flange * frame.scale, frame.axis, frame.left
    stub = min(44.0, max(20.0, 2 * half))
    solid = {"fill": COPPER_LIGHT, "stroke": COPPER, "stroke_width": 1.6}
    parts = [rectangle((left - stub, axis - half), (stub, 2 * half), **solid)]
    if hood.flange:
        parts += [rectangle((left - 3, y), (3, flange), **solid) for y in (axis - half - flange, axis + half)]
    parts.append(line((left - stub - 6, axis), (WIDTH - 8, axis), QUIET, 0.7, stroke_dasharray="10 3 2 3"))
    parts.append(line((left, axis - half), (left, axis + half), INK, 2.2))
    x = left - stub - 10
    parts.append(dimension((x, axis - half), (x, axis + half), QUIET))
    size = ("⌀ " if hood.is_round else "") + show(2 * hood.half_height, "length", system)
    parts.append(halo((x - 6, axis + 4), size, 12, text_anchor="end"))
    if hood.flange:
        words = f"flange {show(hood.flange, 'length', system)}"
        parts.append(text((left - 9, axis - half - flange / 2 + 4), words, 12, fill=QUIET, text_anchor="end"))
    return parts


def _names(spots: list[Spot], hood: HoodShape, frame: Frame, height: float, system: str) -> list[str]:
    """A dot and a name for each source; those off the axis with their straight distance and angle."""
    labels = Labels((WIDTH, height))
    half = (hood.half_height + hood.flange) * frame.scale
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
