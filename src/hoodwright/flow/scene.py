"""The scene: everything that shapes the flow, and the room or the open air around it. Flows are not part of it."""

from dataclasses import dataclass, field

import numpy as np

from hoodwright.errors import InputError
from hoodwright.flow.geometry import WALLS, Block, Mouth, Plate, Vent
from hoodwright.flow.shapes import Vector

ENDLESS = 1e6  # m: a side without a wall


@dataclass(frozen=True)
class Surroundings:
    """Walls around the scene: each of six sides is a wall at a place, or None for open air."""

    west: float | None = None
    east: float | None = None
    south: float | None = None
    north: float | None = None
    floor: float | None = None
    ceiling: float | None = None

    def __post_init__(self):
        for axis in range(3):
            low, high = self.bounds[0][axis], self.bounds[1][axis]
            if not low < high:
                names = WALLS[2 * axis : 2 * axis + 2]
                raise InputError(f"room: {names[0]} at {low:g} m is not below {names[1]} at {high:g} m; swap them")

    @classmethod
    def room(cls, size: Vector) -> "Surroundings":
        """A room of length, width and height, its corner at the origin."""
        return cls(0.0, size[0], 0.0, size[1], 0.0, size[2])

    @classmethod
    def over_floor(cls, height: float = 0.0) -> "Surroundings":
        """Open air over a floor."""
        return cls(floor=height)

    @property
    def bounds(self) -> tuple[np.ndarray, np.ndarray]:
        """Low and high corner; a side without a wall is a million metres away."""
        sides = [getattr(self, name) for name in WALLS]
        low = [-ENDLESS if s is None else s for s in sides[::2]]
        high = [ENDLESS if s is None else s for s in sides[1::2]]
        return np.array(low), np.array(high)

    @property
    def closed(self) -> bool:
        """Whether all six sides are walls."""
        return all(getattr(self, name) is not None for name in WALLS)


@dataclass(frozen=True)
class Scene:
    """Hood openings, plates, blocks and vents in their surroundings; `watch` are points that matter (sources)."""

    mouths: tuple[Mouth, ...]
    plates: tuple[Plate, ...] = ()
    blocks: tuple[Block, ...] = ()
    vents: tuple[Vent, ...] = ()
    surroundings: Surroundings = field(default_factory=Surroundings)
    watch: tuple[Vector, ...] = ()

    def __post_init__(self):
        if not self.mouths:
            raise InputError("scene: there is no hood opening, so nothing draws air; add one")
        names = [part.name for part in (*self.mouths, *self.vents)]
        twice = sorted({name for name in names if names.count(name) > 1})
        if twice:
            raise InputError(f"scene: the name {twice[0]!r} is used twice; give every hood and vent its own")
        self._inside_the_room()

    def _inside_the_room(self) -> None:
        low, high = self.surroundings.bounds
        for part in self.mouths:
            centre = np.asarray(part.centre)
            if np.any(centre < low - 1e-9) or np.any(centre > high + 1e-9):
                raise InputError(f"{part.name}: its centre {part.centre} lies outside the room; move it inside")
        for vent in self.vents:
            if vent.wall not in WALLS or getattr(self.surroundings, vent.wall) is None:
                raise InputError(
                    f"{vent.name}: there is no wall {vent.wall!r}; use one of {', '.join(WALLS)} that stands"
                )
        for point in self.watch:
            if not np.all(np.isfinite(point)):
                raise InputError(f"scene: the point {point} is not made of finite numbers; give numbers")
