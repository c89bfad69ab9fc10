"""What stands in the air: hood openings, thin plates, solid blocks, openings in the room's walls."""

import math
from dataclasses import dataclass
from functools import cached_property

import numpy as np

from hoodwright.errors import InputError
from hoodwright.flow.shapes import Checks, Frame, Shape, Vector

WALLS = ("west", "east", "south", "north", "floor", "ceiling")  # low and high side of x, y, z
BODY = 4.0  # longer sides of solid hood and duct behind an opening, when not told


@dataclass(frozen=True)
class Mouth(Checks):
    """A hood's opening, with the solid hood and duct behind it. `facing` looks out of the hood, into the room.

    The air enters as V0 [1 + k (1 - 2 r^2/R^2)], k = `profile`: fastest on the axis. `throat` = (length, diameter)
    narrows the body to a round duct.
    """

    name: str
    centre: Vector
    facing: Vector
    sides: tuple[float, float]
    shape: Shape = "round"
    along: Vector | None = None
    profile: float = 0.3
    flange: float = 0.0
    body: float | None = None
    throat: tuple[float, float] | None = None

    def __post_init__(self):
        self._finite(centre=self.centre, facing=self.facing, sides=self.sides, flange=self.flange, along=self.along)
        self._finite(profile=self.profile, body=self.body, throat=self.throat)
        self._positive(sides=self.sides)
        self._direction("facing", self.facing)
        if self.shape == "round" and self.sides[0] != self.sides[1]:
            raise InputError(f"{self.name}: a round opening has one diameter, got sides {self.sides}; give it twice")
        if self.flange < 0 or not 0 <= self.profile < 0.5:
            raise InputError(f"{self.name}: flange {self.flange} m or profile {self.profile} is outside 0 and 0 to 0.5")

    @cached_property
    def frame(self) -> Frame:
        """The opening as a plane figure; its normal is `facing`."""
        return Frame.facing(self.centre, self.facing, self.sides, self.shape, self.along)

    @property
    def area(self) -> float:
        """Square metres."""
        return self.frame.area

    @property
    def longer(self) -> float:
        """The longer side [m]."""
        return max(self.sides)

    @property
    def shorter(self) -> float:
        """The shorter side [m]."""
        return min(self.sides)

    @property
    def depth(self) -> float:
        """How far the solid hood and duct reach behind the opening [m]."""
        return BODY * self.longer if self.body is None else self.body

    def speed_ratio(self, points, scale: float = 1.0) -> np.ndarray:
        """Face velocity over its mean at points of the opening, its sides multiplied by `scale`; zero outside."""
        frame = self.frame.scaled(scale)
        a, b = frame.local(points)
        if self.shape == "round":
            shape = 1 - 2 * (a**2 + b**2)
        elif self.shape == "slot":
            shape = 1 - 3 * (a if self.sides[1] > self.sides[0] else b) ** 2
        else:
            shape = 1 - 1.5 * (a**2 + b**2)
        return np.where(frame.holds(points), 1 + self.profile * shape, 0.0)

    def fills(self, points, scale: float = 1.0) -> np.ndarray:
        """Whether points lie in the solid hood or duct behind the opening, its sides multiplied by `scale`."""
        frame = self.frame.scaled(scale)
        back = -frame.height(points)
        inside = (back >= 0) & (back <= self.depth)
        if self.throat is None:
            return inside & frame.holds(points)
        length, diameter = self.throat
        share = np.clip(back / length, 0.0, 1.0)
        a, b = (np.abs(c) * side / 2 for c, side in zip(frame.local(points), frame.sides, strict=True))
        half = [side / 2 * (1 - share) + diameter / 2 * share for side in frame.sides]
        taper = np.hypot(a, b) <= half[0] if self.shape == "round" else (a <= half[0]) & (b <= half[1])
        return inside & np.where(back < length, taper, np.hypot(a, b) <= diameter / 2)


@dataclass(frozen=True)
class Hole(Checks):
    """An opening in a plate. Its first side runs along the plate's first side unless told."""

    centre: Vector
    sides: tuple[float, float]
    shape: Shape = "rectangle"
    name: str = "opening"

    def __post_init__(self):
        self._finite(centre=self.centre, sides=self.sides)
        self._positive(sides=self.sides)


@dataclass(frozen=True)
class Plate(Checks):
    """A thin plate: corner + u first + v second, with u and v from 0 to 1. No thickness, and leak-tight at any tilt."""

    name: str
    corner: Vector
    first: Vector
    second: Vector
    holes: tuple[Hole, ...] = ()

    def __post_init__(self):
        self._finite(corner=self.corner, first=self.first, second=self.second)
        if np.linalg.norm(np.cross(self.first, self.second)) < 1e-12:
            raise InputError(
                f"{self.name}: the sides {self.first} and {self.second} span no plate; give two directions"
            )

    @cached_property
    def spans(self) -> np.ndarray:
        """Corner, first and second side as rows."""
        return np.array([self.corner, self.first, self.second], dtype=float)

    @property
    def normal(self) -> np.ndarray:
        """Unit vector square to the plate: first x second."""
        n = np.cross(self.spans[1], self.spans[2])
        return n / np.linalg.norm(n)

    @classmethod
    def box(cls, name: str, low: Vector, high: Vector, holes: tuple[Hole, ...] = ()) -> tuple["Plate", ...]:
        """The six thin walls of an upright box; each hole goes to the wall that it lies in."""
        ends, walls = np.array([low, high], dtype=float), []
        for axis in range(3):
            first, second = (_vector(np.eye(3)[a] * (ends[1] - ends[0])) for a in range(3) if a != axis)
            for side, place in zip(WALLS[2 * axis : 2 * axis + 2], ends, strict=True):
                corner = _vector(np.where(np.arange(3) == axis, place, ends[0]))
                own = tuple(hole for hole in holes if abs(hole.centre[axis] - place[axis]) < 1e-6)
                walls.append(cls(f"{name}, {side}", corner, first, second, own))
        return tuple(walls)

    def corners(self) -> np.ndarray:
        """Its four corners."""
        o, a, b = self.spans
        return np.array([o, o + a, o + b, o + a + b])

    def hole_frame(self, hole: Hole) -> Frame:
        """A hole as a plane figure in this plate."""
        return Frame.facing(hole.centre, self.normal, hole.sides, hole.shape, self.first)

    def holds(self, points) -> np.ndarray:
        """Whether points of its plane lie on the plate, holes left out."""
        o, a, b = self.spans
        square = np.array([[a @ a, a @ b], [a @ b, b @ b]])
        offset = np.asarray(points, dtype=float) - o
        u, v = np.linalg.solve(square, np.array([offset @ a, offset @ b]))
        on = (u > -1e-9) & (u < 1 + 1e-9) & (v > -1e-9) & (v < 1 + 1e-9)
        for hole in self.holes:
            on &= ~self.hole_frame(hole).holds(points)
        return on

    def height(self, points) -> np.ndarray:
        """Distance of points from its plane, signed by its normal."""
        return (np.asarray(points, dtype=float) - self.spans[0]) @ self.normal


@dataclass(frozen=True)
class Block(Checks):
    """A solid box, upright, turned about the vertical by `turn` radians: a person, a machine, a cupboard."""

    name: str
    centre: Vector
    size: Vector
    turn: float = 0.0

    def __post_init__(self):
        self._finite(centre=self.centre, size=self.size, turn=self.turn)
        self._positive(size=self.size)

    @classmethod
    def person(cls, name: str, feet: Vector, facing: Vector, height: float = 1.75) -> "Block":
        """A person as an upright box, 0.25 of the height wide and 0.14 deep."""
        turn = math.atan2(-facing[0], facing[1])
        centre = (feet[0], feet[1], feet[2] + height / 2)
        return cls(name, centre, (0.25 * height, 0.14 * height, height), turn)

    def fills(self, points) -> np.ndarray:
        """Whether points lie in the block."""
        c, s = math.cos(self.turn), math.sin(self.turn)
        offset = (np.asarray(points, dtype=float) - self.centre) @ np.array([[c, -s, 0], [s, c, 0], [0, 0, 1]])
        return np.all(np.abs(offset) <= np.array(self.size) / 2, axis=-1)

    def corners(self) -> np.ndarray:
        """Its eight corners."""
        c, s = math.cos(self.turn), math.sin(self.turn)
        signs = np.array([[i, j, k] for i in (-0.5, 0.5) for j in (-0.5, 0.5) for k in (-0.5, 0.5)])
        return np.asarray(self.centre) + (signs * self.size) @ np.array([[c, s, 0], [-s, c, 0], [0, 0, 1]])


@dataclass(frozen=True)
class Vent(Checks):
    """An opening in a wall of the room: supply terminal, grille, door. `free`: takes or gives what is left over."""

    name: str
    centre: Vector
    sides: tuple[float, float]
    wall: str
    free: bool = False

    def __post_init__(self):
        self._finite(centre=self.centre, sides=self.sides)
        self._positive(sides=self.sides)

    @property
    def axis(self) -> int:
        """The axis square to its wall."""
        return WALLS.index(self.wall) // 2

    @property
    def side(self) -> int:
        """0 for the low wall of that axis, 1 for the high one."""
        return WALLS.index(self.wall) % 2

    @property
    def level_axes(self) -> tuple[int, int]:
        """The axes along its first and second side."""
        first, second = (a for a in range(3) if a != self.axis)
        return first, second

    def holds(self, points) -> np.ndarray:
        """Whether points of its wall lie in it."""
        offset = np.abs(np.asarray(points, dtype=float) - self.centre)
        a, b = self.level_axes
        return (offset[..., a] <= self.sides[0] / 2 + 1e-9) & (offset[..., b] <= self.sides[1] / 2 + 1e-9)


def _vector(values: np.ndarray) -> Vector:
    x, y, z = (float(value) for value in values)
    return x, y, z
