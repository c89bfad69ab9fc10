"""The room of the workplace file: its size, its draught, and the openings in its walls."""

from typing import Annotated, Literal

from pydantic import BeforeValidator, model_validator

from hoodwright.workplace import quantities as q
from hoodwright.workplace.base import Part, as_list, one_of

Wall = Literal["west", "east", "south", "north", "floor", "ceiling"]
WALL_AXES = {"west": 0, "east": 0, "south": 1, "north": 1, "floor": 2, "ceiling": 2}
HIGH_WALLS = ("east", "north", "ceiling")
FASTEST_VENT = 30.0  # m/s

Xyz = tuple[float, float, float]


class Draught(Part):
    """A cross-draught through the work space, how far it swings, and its turbulence."""

    towards: q.Direction
    speed: q.Speed
    wander: q.Speed = 0.0
    turbulence: q.Speed = 0.05
    eddy: q.Eddy = 0.2


class RoomOpening(Part):
    """A door, a supply terminal or an extract grille in a wall; `at` is its middle, along the wall and up.

    On floor and ceiling `at` is x and y. A door takes or gives what is left over; the two others have a flow.
    """

    name: q.Name
    wall: Wall
    at: q.WallPoint
    size: q.Rectangle | None = None
    round: q.Size | None = None
    kind: Literal["door", "supply", "extract"]
    flow: q.Flow | None = None

    @property
    def sides(self) -> tuple[float, float]:
        """Its sides along the wall and up; of a round one those of the square of its area."""
        side = (3.141592653589793 / 4) ** 0.5 * (self.round or 0.0)
        return self.size or (side, side)

    @property
    def axis(self) -> int:
        """The axis square to its wall."""
        return WALL_AXES[self.wall]

    @property
    def flow_in(self) -> float | None:
        """What it brings into the room, below zero for an extract; None for a door."""
        return None if self.flow is None else -self.flow if self.kind == "extract" else self.flow

    def centre(self, size: Xyz) -> Xyz:
        """Its middle, in a room of that size."""
        place = list(self.at)
        place.insert(self.axis, size[self.axis] if self.wall in HIGH_WALLS else 0.0)
        x, y, z = place
        return x, y, z

    @model_validator(mode="after")
    def _one_shape(self):
        one_of(self, ("size", "round"), "'size: [1 m, 2.1 m]'")
        if (self.kind == "door") == (self.flow is not None):
            advice = "a door takes or gives what is left over: remove 'flow'"
            if self.flow is None:
                advice = f"a {self.kind} has one: add for example 'flow: 800 m3/h', or make it a door"
            raise ValueError(f"kind '{self.kind}' and 'flow' do not fit; {advice}")
        speed = (self.flow or 0.0) / (self.sides[0] * self.sides[1])
        if speed > FASTEST_VENT:
            got, most = (q.plain(v, "velocity") for v in (speed, FASTEST_VENT))
            raise ValueError(f"air would pass it at {got}; at most {most}: read its flow and its size again")
        return self


class Room(Part):
    """Inner size of the room, x by y by z, its draught, and the openings in its walls."""

    size: q.Box
    draught: Draught | None = None
    openings: Annotated[tuple[RoomOpening, ...], BeforeValidator(as_list)] = ()
