"""The view of the room: from the front left, a little above, without perspective."""

import math
from dataclasses import dataclass

from hoodwright.reports.svg import Point
from hoodwright.tasks.picture import DuctShape, HoodShape, Picture, Xyz

AZIMUTH, ELEVATION = math.radians(28), math.radians(24)
MARGIN = 16.0
BELOW = 14.0  # room for the scale under the floor
CIRCLE = 28

RIGHT = (math.cos(AZIMUTH), -math.sin(AZIMUTH), 0.0)
UP = (
    math.sin(AZIMUTH) * math.sin(ELEVATION),
    math.cos(AZIMUTH) * math.sin(ELEVATION),
    math.cos(ELEVATION),
)
AHEAD = (
    math.sin(AZIMUTH) * math.cos(ELEVATION),
    math.cos(AZIMUTH) * math.cos(ELEVATION),
    -math.sin(ELEVATION),
)


def dot(a: Xyz, b: Xyz) -> float:
    """Scalar product."""
    return a[0] * b[0] + a[1] * b[1] + a[2] * b[2]


def along(start: Xyz, *steps: tuple[Xyz, float]) -> Xyz:
    """A point some way along each direction from another."""
    x, y, z = (start[i] + sum(way[i] * far for way, far in steps) for i in range(3))
    return x, y, z


def depth(point: Xyz) -> float:
    """How far into the picture a point lies; what is farther is drawn first."""
    return dot(point, AHEAD)


@dataclass(frozen=True)
class Camera:
    """Maps room coordinates [m] to picture coordinates."""

    scale: float
    left: float
    top: float
    width: float
    height: float

    def at(self, point: Xyz) -> Point:
        """Where a point of the room lies in the picture."""
        return (
            MARGIN + (dot(point, RIGHT) - self.left) * self.scale,
            MARGIN + (self.top - dot(point, UP)) * self.scale,
        )


def camera_for(picture: Picture, width: float = 720.0) -> Camera:
    """A view that holds everything."""
    points = [(dot(p, RIGHT), dot(p, UP)) for p in all_points(picture)]
    left, right = min(p[0] for p in points), max(p[0] for p in points)
    low, high = min(p[1] for p in points), max(p[1] for p in points)
    scale = min((width - 2 * MARGIN) / (right - left), (0.8 * width) / (high - low))
    spare = (width - 2 * MARGIN) / scale - (right - left)
    return Camera(scale, left - spare / 2, high, width, (high - low) * scale + 2 * MARGIN + BELOW)


def all_points(picture: Picture) -> list[Xyz]:
    """Points that the picture must hold."""
    x, y, z = picture.room.size
    found = [(i * x, j * y, k * z) for i in (0, 1) for j in (0, 1) for k in (0, 1)]
    found += [corner for plate in picture.plates for corner in plate.corners]
    found += [point for duct in picture.ducts for point in duct.points]
    found += [along(b.centre, (UP, sign * b.size)) for b in picture.boxes for sign in (-1, 1)]
    found += [point for hood in picture.hoods for panel in (*hood.panels, *hood.lines) for point in panel]
    found += [point for source in picture.sources for drawn in source.lines for point in drawn]
    return found + [hood.at for hood in picture.hoods] + [source.at for source in picture.sources]


def rim(hood: HoodShape, wider: float = 0.0, behind: float = 0.0) -> list[Xyz]:
    """The edge of a hood's opening, wider by a flange, or some way behind the opening."""
    w, h = hood.half_width + wider, hood.half_height + wider
    if hood.is_round:
        turns = [2 * math.pi * i / CIRCLE for i in range(CIRCLE)]
        sides = [(w * math.cos(t), h * math.sin(t)) for t in turns]
    else:
        sides = [(w, h), (-w, h), (-w, -h), (w, -h)]
    return [along(hood.at, (hood.across, a), (hood.up, b), (hood.facing, -behind)) for a, b in sides]


def duct_depth(duct: DuctShape) -> float:
    """Depth of the middle of a duct's line of points."""
    return sum(depth(p) for p in duct.points) / len(duct.points)
