"""What stands around in a picture of the smoke: walls, surfaces, people, hoods and the beginnings of ducts."""

import math
from dataclasses import replace

from hoodwright.reports.camera import along, rim
from hoodwright.reports.smoke_view import SmokeView, deep
from hoodwright.reports.svg import (
    AIR,
    AIR_LIGHT,
    COPPER,
    COPPER_LIGHT,
    INK,
    PAPER,
    QUIET,
    RULE,
    Point,
    circle,
    polygon,
    polyline,
    rectangle,
)
from hoodwright.tasks.air.smoke_still import SmokeStill
from hoodwright.tasks.picture import DuctShape, HoodShape, PersonShape, Picture, PlateShape, Xyz

NEAR = 0.5  # m beyond the escape radius, up to which things around are drawn
STUB = 0.16  # m of duct that is drawn
SHOULDERS, DEPTH, TALL = 0.45, 0.28, 0.25  # m; a head above the breathing height


def near(picture: Picture, hood: HoodShape, still: SmokeStill) -> Picture:
    """The picture without what stands far off, before or behind."""
    far = still.plan.escape_radius + NEAR
    plates = tuple(p for p in picture.plates if _apart(hood.at, p.corners) < far)
    people = tuple(p for p in picture.people if math.dist(p.at[:2], hood.at[:2]) < far)
    hoods = tuple(h for h in picture.hoods if math.dist(h.at, hood.at) < far)
    return replace(picture, plates=plates, people=people, hoods=hoods)


def _apart(point: Xyz, corners: tuple[Xyz, ...]) -> float:
    """How far a point lies from the upright box around some corners."""
    steps = [max(min(c) - p, 0.0, p - max(c)) for p, c in zip(point, zip(*corners, strict=True), strict=True)]
    return math.hypot(*steps)


def surroundings(picture: Picture, hood: HoodShape, seen: SmokeView, view: str) -> list[str]:
    """Walls of the room, surfaces and people, behind the smoke."""
    drawn = [polyline([seen.at(c) for c in (*plate.corners, plate.corners[0])], QUIET, 1.8, fill=PAPER)
             for plate in picture.plates if not _is_over(plate, hood, view)]  # fmt: skip
    drawn += [_person(person, seen, view) for person in picture.people]
    x, y, z = picture.room.size
    walls = [(0.0, 0.0, 0.0), (x, 0.0, 0.0), (x, y, 0.0), (0.0, y, 0.0)]
    edge = [*walls, walls[0]] if view == "above" else [*walls, *(along(w, ((0.0, 0.0, 1.0), z)) for w in walls)]
    places = [seen.at(p) for p in edge]
    left, right = min(p[0] for p in places), max(p[0] for p in places)
    low, high = min(p[1] for p in places), max(p[1] for p in places)
    return [rectangle((left, low), (right - left, high - low), fill="none", stroke=QUIET, stroke_width=2.4), *drawn]


def _is_over(plate: PlateShape, hood: HoodShape, view: str) -> bool:
    """Whether a surface would hide the hood in the view from above."""
    return view == "above" and min(corner[2] for corner in plate.corners) > hood.at[2]


def _person(person: PersonShape, seen: SmokeView, view: str) -> str:
    aside = (-person.facing[1], person.facing[0], 0.0)
    high = person.breathing_height + TALL
    ends = [(i * SHOULDERS / 2, j * DEPTH / 2) for i, j in ((-1, -1), (1, -1), (1, 1), (-1, 1))]
    low = [along(person.at, (aside, a), (person.facing, b)) for a, b in ends]
    places = [seen.at(p) for p in (*low, *(along(p, ((0.0, 0.0, 1.0), high)) for p in low))]
    corner = (min(p[0] for p in places), min(p[1] for p in places))
    size = (max(p[0] for p in places) - corner[0], max(p[1] for p in places) - corner[1])
    return rectangle(corner, size, rx=0.3 * min(size), fill=RULE, fill_opacity=0.35, stroke=QUIET, stroke_width=0.8)


def hoods(picture: Picture, chosen: HoodShape, seen: SmokeView) -> list[str]:
    """Hoods and the beginnings of their ducts, over the smoke; the chosen one bold."""
    drawn = [_stub(duct, hood, seen) for hood in picture.hoods if hood.panels for duct in picture.ducts
             if math.dist(duct.points[0], hood.duct_at) < 1e-6]  # fmt: skip
    return drawn + [part for hood in picture.hoods for part in _hood(hood, seen, bold=hood is chosen)]


def _stub(duct: DuctShape, hood: HoodShape, seen: SmokeView) -> str:
    """The beginning of the duct of a hood that has a body."""
    start, after = (seen.at(p) for p in duct.points[:2])
    whole = math.dist(start, after)
    far = min(whole, STUB * seen.scale)
    if far < 2:
        return circle(start, duct.diameter / 2 * seen.scale, fill="none", stroke=AIR)
    way = ((after[0] - start[0]) / whole, (after[1] - start[1]) / whole)
    half = duct.diameter / 2 * seen.scale
    ends = [
        (x - s * half * way[1], y + s * half * way[0])
        for x, y in (start, (start[0] + far * way[0], start[1] + far * way[1]))
        for s in (-1, 1)
    ]
    return polygon(_around(ends), fill=AIR_LIGHT, stroke=AIR, stroke_width=1)


def _hood(hood: HoodShape, seen: SmokeView, *, bold: bool) -> list[str]:
    solid = {"fill": COPPER_LIGHT if bold else "none", "stroke": COPPER, "stroke_width": 1.2 if bold else 0.8}
    drawn = [polygon([seen.at(p) for p in panel], **solid, fill_opacity=0.25) for panel in hood.panels]
    if not hood.panels:
        drawn.append(
            polygon(_around([seen.at(p) for far in (0.0, deep(hood)) for p in rim(hood, behind=far)]), **solid)
        )
    drawn += [polyline([seen.at(p) for p in extra], COPPER, 1.4) for extra in hood.lines]
    if hood.flange:
        drawn.append(polygon(_around([seen.at(p) for p in rim(hood, hood.flange)]), **solid))
    edge = _around([seen.at(p) for p in rim(hood)])
    return [*drawn, polygon(edge, fill="none", stroke=INK, stroke_width=2.4 if bold else 1.2, stroke_linejoin="round")]


def _around(places: list[Point]) -> list[Point]:
    """The outline that goes round all places."""
    points = sorted(set(places))
    ends: list[list[Point]] = []
    for row in (points, points[::-1]):
        side: list[Point] = []
        for p in row:
            while len(side) > 1 and _turn(side[-2], side[-1], p) <= 0:
                side.pop()
            side.append(p)
        ends.append(side[:-1])
    return ends[0] + ends[1] or points


def _turn(a: Point, b: Point, c: Point) -> float:
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])
