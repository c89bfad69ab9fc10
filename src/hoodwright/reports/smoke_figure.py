"""The smoke as a still: soft grey on paper, dark where it ends in a hood, light where it is lost."""

import math

import numpy as np

from hoodwright.reports.camera import along, dot
from hoodwright.reports.labels import Labels
from hoodwright.reports.smoke_around import hoods, near, surroundings
from hoodwright.reports.smoke_puffs import escape, escape_seen, mean_air, smoke
from hoodwright.reports.smoke_view import SmokeView, deep, smoke_view
from hoodwright.reports.svg import (
    AIR,
    COPPER,
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
    rectangle,
    round_below,
    tag,
    text,
)
from hoodwright.reports.words import shortened
from hoodwright.tasks.air.smoke_still import CAUGHT, SmokeStill
from hoodwright.tasks.capture.answer import BANNER
from hoodwright.tasks.picture import HoodShape, Picture, PlateShape, SourceShape
from hoodwright.units import KINDS, show, to_unit

LEGEND, ROW = 62.0, 16.0
THIN = 20  # of so many puffs, one keeps names away
STEPS = 40  # along an edge, to find a place for a name
ASIDE, FARTHEST = 30.0, 90.0  # of the dimension line from what it measures


def smoke_svg(picture: Picture, still: SmokeStill, system: str, view: str = "side") -> str:
    """One hood, one source and the smoke between them, to scale, seen level ("side") or straight down ("above")."""
    hood = next(one for one in picture.hoods if one.name == still.hood)
    source = next(one for one in picture.sources if one.name == still.source)
    picture = near(picture, hood, still)
    seen = smoke_view(picture, hood, source, still, view)
    inside = [*surroundings(picture, hood, seen, view), *escape(still, seen), *mean_air(still, seen)]
    inside += [*smoke(still, seen), *hoods(picture, hood, seen)]
    inside += [circle(seen.at(place), 4, fill=INK) for place in source.extent or (source.at,)]
    body = [tag("svg", "".join(inside), x=0, y=0, width=seen.size[0], height=seen.size[1])]
    body.append(rectangle((0.5, 0.5), (seen.size[0] - 1, seen.size[1] - 1), fill="none", stroke=RULE))
    body += _named(picture, hood, source, still, seen, system)
    body += _below(still, seen, system)
    whole = (seen.size[0], seen.size[1] + LEGEND)
    return drawing(whole, f"Smoke from {source.name} at {hood.name}", smoke_words(still, system, view), body)


def smoke_words(still: SmokeStill, system: str, view: str = "side") -> str:
    """The picture in words."""
    seen = "level, from the side" if view == "side" else "from above"
    far, flow = (show(value, kind, system) for value, kind in ((still.distance, "length"), (still.flow, "flow")))
    words = f"Smoke from {still.source}, {far} from {still.hood} at {flow}, seen {seen}, to scale. "
    return f"{words}{legend_words(still)} Computed air, {BANNER}."


def legend_words(still: SmokeStill) -> str:
    """What dark and light mean in this picture."""
    if not still.told:
        return "Fine smoke as the air would carry it; what is caught cannot be told."
    takers = sorted({name for name in still.takers if name})
    if not takers:
        return "Nothing ends in a hood."
    where = f"the {takers[0]}" if len(takers) == 1 else "a hood"
    light = any(end != CAUGHT for end in still.ends)
    return f"Dark: what ends in {where}. {'Light: what does not.' if light else 'None is lost here.'}"


def _named(picture: Picture, hood: HoodShape, source: SourceShape, still: SmokeStill, seen: SmokeView, system: str):
    """Names, the distance and the draught, none over another."""
    labels = Labels(seen.size)
    drawn = _distance(hood, source, still, seen, system, labels) + _draught(still, seen, system, labels)
    for place in source.extent or (source.at,):
        labels.keep_clear(seen.at(place), 7)
        labels.keep_line_clear(seen.at(place), seen.at(hood.at), 11)
    middle = seen.at(along(hood.at, (hood.facing, -0.5 * deep(hood))))
    labels.keep_clear(middle, 10)
    labels.add(middle, [shortened(hood.name, 26), show(still.flow, "flow", system)], fill=COPPER, bold=True)
    labels.add(seen.at(source.at), [shortened(source.name, 26)], bold=True, below=True)
    for x, y in seen.many(np.concatenate(still.puffs)[::THIN]).tolist():
        labels.keep_clear((x, y), 6)
    _name_around(picture, seen.at(source.at), seen, labels)
    return drawn + labels.drawn


def _name_around(picture: Picture, source: Point, seen: SmokeView, labels: Labels) -> None:
    """Names of surfaces and people, where there is room beside the smoke."""
    for plate in picture.plates:
        edge = _free_place(plate, source, seen)
        if edge:
            labels.add(edge, [shortened(plate.name, 26)], 12, QUIET, below=True)
    for person in picture.people:
        chest = seen.at(along(person.at, ((0.0, 0.0, 1.0), person.breathing_height)))
        if seen.holds(chest, 4):
            labels.add(chest, [shortened(person.name, 26)], 12, QUIET)


def _free_place(plate: PlateShape, source: Point, seen: SmokeView) -> Point | None:
    """A place on the edge of a surface, in the picture and away from the source."""
    ends = zip(plate.corners, (*plate.corners[1:], plate.corners[0]), strict=True)
    edges = [(seen.at(a), seen.at(b)) for a, b in ends]
    places = [tuple(p + (q - p) * k / STEPS for p, q in zip(a, b, strict=True)) for a, b in edges for k in range(STEPS)]
    inside = [(x, y) for x, y in places if seen.holds((x, y), 16)]
    return max(inside, key=lambda place: math.dist(place, source), default=None)


def _distance(hood: HoodShape, source: SourceShape, still: SmokeStill, seen: SmokeView, system: str, labels: Labels):
    """From the middle of the opening to the farthest place, drawn a little aside; not where the view shortens it."""
    start, end = seen.at(hood.at), seen.at(source.farthest_from(hood.at))
    far = math.dist(start, end)
    if far < 0.6 * still.distance * seen.scale or far < 12:
        return []
    way = ((end[0] - start[0]) / far, (end[1] - start[1]) / far)
    sides = [_beside(still, start, way, far, across, seen) for across in ((way[1], -way[0]), (-way[1], way[0]))]
    a, b, across = min(sides, key=lambda side: _clear(side[0], side[1], side[2], start, seen))
    thin = [line(p, q, QUIET, 0.7, stroke_dasharray="2 3") for p, q in ((start, a), (end, b))]
    lower = 14 if across[1] > 0.5 else -6 if across[1] < -0.5 else 4
    middle = ((a[0] + b[0]) / 2 + 8 * across[0], (a[1] + b[1]) / 2 + lower)
    labels.keep_line_clear(a, b, 9)
    labels.keep_line_clear((middle[0] - 28, middle[1] - 4), (middle[0] + 28, middle[1] - 4), 9)
    anchor = "middle" if abs(across[1]) > 0.5 else "start" if across[0] > 0 else "end"
    words = show(still.distance, "length", system)
    return [*thin, dimension(a, b), halo(middle, words, 13, text_anchor=anchor, font_weight="bold")]


def _beside(still: SmokeStill, start: Point, way: Point, far: float, across: Point, seen: SmokeView):
    """Both ends of a line on one side of the smoke between two places."""
    places = seen.many(np.concatenate(still.puffs)) - np.array(start)
    ahead, off = places @ np.array(way), places @ np.array(across)
    between = off[(ahead > 0) & (ahead < far)]
    thick = float(np.percentile(between, 95)) if len(between) else 0.0
    aside = min(max(ASIDE, thick + 16), FARTHEST)
    ends = ((start[0] + aside * across[0] + k * way[0], start[1] + aside * across[1] + k * way[1]) for k in (0.0, far))
    return *ends, across


def _clear(a: Point, b: Point, across: Point, start: Point, seen: SmokeView) -> tuple[bool, float, float]:
    """In the picture, near, and below or to the right where both sides leave room."""
    return not (seen.holds(a, 22) and seen.holds(b, 22)), round(math.dist(a, start)), -across[1] - 0.5 * across[0]


def _draught(still: SmokeStill, seen: SmokeView, system: str, labels: Labels) -> list[str]:
    """The mean draught, as an arrow in the upper right corner, or as a ring where it blows along the view."""
    speed = math.hypot(*still.draught)
    x, y = dot(still.draught, seen.right), -dot(still.draught, seen.up)
    corner = (seen.size[0] - 34.0, 26.0)
    words = f"draught {show(speed, 'velocity', system)}" if speed > 0 else "no steady draught"
    flat = math.hypot(x, y) / speed if speed > 0 else 0.0
    drawn = []
    if flat > 0.3:
        step = (16 * x / speed, 16 * y / speed)
        drawn.append(
            arrow((corner[0] - step[0], corner[1] - step[1]), (corner[0] + step[0], corner[1] + step[1]), AIR, 2)
        )
    elif speed > 0:
        words += " along the view"
    far = corner[0] - (26 if flat > 0.3 else -24)
    labels.keep_line_clear((far - 6.5 * len(words), corner[1]), (corner[0] + 18, corner[1]), 12)
    return [*drawn, halo((far, corner[1] + 4), words, 12, text_anchor="end", fill=AIR)]


def _below(still: SmokeStill, seen: SmokeView, system: str) -> list[str]:
    """Scale bar and legend."""
    unit = KINDS["length"].show[system]
    per_unit = 1 / to_unit(1.0, "length", unit)
    step = round_below(to_unit(90 / seen.scale, "length", unit)) * per_unit
    long, y = step * seen.scale, seen.size[1] + 10
    far = show(still.plan.escape_radius, "length", system)
    lost = f"{'dotted: ' if escape_seen(still, seen) else ''}farther than {far} counts as lost"
    many = (
        f"{len(still.tracks)} particles of {still.plan.realisations} moments, laid over one another. Arrows: mean air."
    )
    return [
        rectangle((0, y), (long, 4), fill=INK),
        text((long + 7, y + 6), show(step, "length", system), 12, fill=QUIET),
        text((seen.size[0], y + 6), lost, 12, fill=QUIET, text_anchor="end"),
        text((0, y + 8 + ROW), legend_words(still), 12.5),
        text((0, y + 8 + 2 * ROW), f"{many} Computed air, {BANNER}.", 12, fill=QUIET),
    ]
