"""Openings as plane figures: round, rectangle or slot, with unit vectors along their sides."""

import math
from dataclasses import dataclass
from typing import Literal

import numpy as np

from hoodwright.errors import InputError

Vector = tuple[float, float, float]
Shape = Literal["round", "rectangle", "slot"]
UP = np.array([0.0, 0.0, 1.0])


class Checks:
    """What every piece of geometry is asked when it is made."""

    name: str

    def _finite(self, **values) -> None:
        for what, value in values.items():
            if value is not None and not np.all(np.isfinite(np.asarray(value, dtype=float))):
                raise InputError(f"{self.name}: {what} {value} is not made of finite numbers; give numbers")

    def _positive(self, **values) -> None:
        for what, value in values.items():
            if np.any(np.asarray(value, dtype=float) <= 0):
                raise InputError(f"{self.name}: {what} {value} must be above zero; give its true size in metres")

    def _direction(self, what: str, vector) -> None:
        if np.linalg.norm(vector) < 1e-9:
            raise InputError(f"{self.name}: {what} {tuple(vector)} has no length; give a direction such as (0, 0, 1)")


@dataclass(frozen=True)
class Frame:
    """A figure in space: centre, unit vectors along its sides and across, side lengths, shape."""

    centre: np.ndarray
    along: np.ndarray
    across: np.ndarray
    sides: tuple[float, float]
    shape: Shape

    @classmethod
    def facing(cls, centre, facing, sides, shape, along=None) -> "Frame":
        """The frame of an opening that looks along `facing`; `along` is made square to it, level by default."""
        normal = np.asarray(facing, dtype=float) / np.linalg.norm(facing)
        first = np.cross(UP, normal) if along is None else np.asarray(along, dtype=float)
        first = first - (first @ normal) * normal
        if np.linalg.norm(first) < 1e-6:
            first = np.array([1.0, 0.0, 0.0]) - normal[0] * normal
        first = first / np.linalg.norm(first)
        return cls(np.asarray(centre, dtype=float), first, np.cross(normal, first), tuple(sides), shape)

    @property
    def normal(self) -> np.ndarray:
        """Unit vector square to the figure."""
        return np.cross(self.along, self.across)

    @property
    def area(self) -> float:
        """Square metres."""
        return math.pi / 4 * self.sides[0] ** 2 if self.shape == "round" else self.sides[0] * self.sides[1]

    def local(self, points) -> tuple[np.ndarray, np.ndarray]:
        """Points projected on the plane, in half sides: the rim of a rectangle is at 1 and -1."""
        offset = np.asarray(points, dtype=float) - self.centre
        return 2 * (offset @ self.along) / self.sides[0], 2 * (offset @ self.across) / self.sides[1]

    def height(self, points) -> np.ndarray:
        """Distance of points in front of the plane, in metres."""
        return (np.asarray(points, dtype=float) - self.centre) @ self.normal

    def holds(self, points) -> np.ndarray:
        """Whether the projection of points lies in the figure."""
        return self.ring(points) <= 1 + 1e-9

    def ring(self, points) -> np.ndarray:
        """How far out the projection of points lies: 1 on the rim, less inside."""
        a, b = self.local(points)
        return np.hypot(a, b) if self.shape == "round" else np.maximum(np.abs(a), np.abs(b))

    def scaled(self, factor: float) -> "Frame":
        """The same figure, its sides multiplied."""
        return Frame(self.centre, self.along, self.across, (self.sides[0] * factor, self.sides[1] * factor), self.shape)

    def grown(self, margin: float) -> "Frame":
        """The same figure, wider by `margin` all round."""
        sides = (self.sides[0] + 2 * margin, self.sides[1] + 2 * margin)
        return Frame(self.centre, self.along, self.across, sides, self.shape)

    def corners(self) -> np.ndarray:
        """The four corners of the rectangle round the figure."""
        a, b = self.along * self.sides[0] / 2, self.across * self.sides[1] / 2
        return np.array([self.centre + s * a + t * b for s in (-1, 1) for t in (-1, 1)])
