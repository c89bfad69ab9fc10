"""Where a picture of the smoke looks: level from the side of a hood or straight down, and what fits into it."""

import math
from dataclasses import dataclass

import numpy as np

from hoodwright.errors import InputError
from hoodwright.reports.camera import along, dot, rim
from hoodwright.reports.elevation import UPRIGHT
from hoodwright.reports.svg import Point
from hoodwright.tasks.air.smoke_still import SmokeStill
from hoodwright.tasks.picture import HoodShape, Picture, PlateShape, SourceShape, Xyz

WIDTH, HIGHEST, LOWEST = 560.0, 330.0, 190.0
SPARE = 0.16  # of the picture, around what it must hold
LEAST = 0.12  # m, that every picture shows
OUTERMOST = 2.0  # per cent of the smoke on each side that may lie outside
STRAIGHT = 1e-6
STANDS = 0.3  # m above a surface, up to which it belongs in the picture
VIEWS = ("side", "above")


@dataclass(frozen=True)
class SmokeView:
    """Directions right and up in the picture, picture units in a metre, the room's point in its middle, and size."""

    right: Xyz
    up: Xyz
    scale: float
    middle: Point  # m, along right and up
    size: Point

    def at(self, point: Xyz) -> Point:
        """Place of a point of the room in the picture."""
        x, y = dot(point, self.right) - self.middle[0], dot(point, self.up) - self.middle[1]
        return self.size[0] / 2 + x * self.scale, self.size[1] / 2 - y * self.scale

    def many(self, points: np.ndarray) -> np.ndarray:
        """Places (n, 2) of many points (n, 3)."""
        flat = points @ np.array([self.right, self.up]).T - self.middle
        return np.array(self.size) / 2 + flat * (self.scale, -self.scale)

    def holds(self, place: Point, rim: float = 0.0) -> bool:
        """Whether a place lies in the picture, some way from its edge."""
        return all(rim <= c <= most - rim for c, most in zip(place, self.size, strict=True))


def smoke_view(picture: Picture, hood: HoodShape, source: SourceShape, still: SmokeStill, view: str) -> SmokeView:
    """A view that holds hood, source, and nearly all smoke; `view` is "side" or "above"."""
    if view not in VIEWS:
        raise InputError(f"view {view!r} of the smoke is not known; allowed: {', '.join(VIEWS)}; choose one")
    right = _right(hood, source)
    up = (0.0, 0.0, 1.0) if view == "side" else (-right[1], right[0], 0.0)
    axes = np.array([right, up])
    body = [p for panel in (*hood.panels, *hood.lines) for p in panel] or rim(hood, behind=deep(hood))
    walls = [p for plate in picture.plates if _is_near(plate, hood, still) for p in plate.corners]
    walls += [(*source.at[:2], z) for plate in picture.plates for z in _tops(plate, source)]
    solid = np.array([*walls, *rim(hood, hood.flange), *body, *(source.extent or (source.at,))]) @ axes.T
    smoke = np.concatenate([p for p in still.puffs if len(p)] or [np.array([source.at])]) @ axes.T
    low = np.minimum(solid.min(axis=0), np.percentile(smoke, OUTERMOST, axis=0))
    high = np.maximum(solid.max(axis=0), np.percentile(smoke, 100 - OUTERMOST, axis=0))
    span = np.maximum(high - low, LEAST) * (1 + 2 * SPARE)
    scale = float(min(WIDTH / span[0], HIGHEST / span[1]))
    tall = float(max(LOWEST, span[1] * scale))
    x, y = ((low + high) / 2).tolist()
    return SmokeView(right, up, scale, (x, y), (WIDTH, tall))


def deep(hood: HoodShape) -> float:
    """How far a hood without a body of its own is drawn behind its opening."""
    return min(1.6 * min(hood.half_width, hood.half_height), 0.3)


def _tops(plate: PlateShape, source: SourceShape) -> list[float]:
    """Height of a level surface on which the source stands, or a little above."""
    (xs, ys, zs), (x, y, z) = zip(*plate.corners, strict=True), source.at
    over = min(xs) <= x <= max(xs) and min(ys) <= y <= max(ys) and max(zs) - min(zs) < STRAIGHT
    return [zs[0]] if over and 0 <= z - zs[0] <= STANDS else []


def _is_near(plate: PlateShape, hood: HoodShape, still: SmokeStill) -> bool:
    """Whether the whole of a surface stands within the escape radius: a baffle or a small box."""
    return all(math.dist(corner, hood.at) < still.plan.escape_radius for corner in plate.corners)


def _right(hood: HoodShape, source: SourceShape) -> Xyz:
    """The hood looks to the right; one that looks up or down is seen so that a source aside is seen aside."""
    way = hood.facing if abs(hood.facing[2]) <= UPRIGHT else along(source.at, (hood.at, -1.0))
    level = math.hypot(way[0], way[1])
    if level <= max(STRAIGHT, 0.05 * abs(way[2])):
        return hood.across
    return (way[0] / level, way[1] / level, 0.0)
