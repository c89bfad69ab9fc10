"""Hoods of the workplace file: capturing, receiving and enclosing."""

import math
from typing import Annotated, Any, Literal

from pydantic import BeforeValidator, Field, model_validator

from hoodwright.workplace import quantities as q
from hoodwright.workplace.base import FlowReading, Part, Resistance, Shaped, as_list, one_of

FASTEST_PUSH = 60.0  # m/s
NEAREST_PUSH = 0.05  # m
NARROWEST_SLOT = 5.0  # length over width, from which an opening is called a slot
DOWN = (0.0, 0.0, -1.0)
LEVEL = 0.1  # most of a direction that may point up or down, where it is called level


class Opening(Shaped):
    """A hood's opening: round, rectangular or a slot."""

    round: q.Size | None = None
    rectangle: q.Rectangle | None = None
    slot: q.Rectangle | None = None

    @property
    def is_slot(self) -> bool:
        """Whether it is given as a slot."""
        return self.slot is not None

    @property
    def sides(self) -> tuple[float, float]:
        """Width and height, or length and width of a slot; the diameter two times where it is round."""
        return self.slot or self.rectangle or (self.round or 0.0, self.round or 0.0)

    @model_validator(mode="after")
    def _one_shape(self):
        given = [name for name in ("round", "rectangle", "slot") if getattr(self, name) is not None]
        if len(given) != 1:
            got = {0: "none", 2: "both"}.get(len(given), "three")
            raise ValueError(
                f"got {got}; one shape is needed: 'round: 100 mm', 'rectangle: [300 mm, 200 mm]' or "
                "'slot: [600 mm, 25 mm]'"
            )
        if self.slot and self.slot[0] < NARROWEST_SLOT * self.slot[1]:
            length, width = (q.plain(side, "length") for side in self.slot)
            raise ValueError(
                f"got a slot of {length} by {width}; a slot is at least {NARROWEST_SLOT:g} times as long as wide, "
                "length first: exchange the two, or write 'rectangle'"
            )
        return self


class TakeOff(Part):
    """How a duct leaves the plenum behind slots; one of the three."""

    taper: q.Taper | None = None
    like: q.EntryRow | None = None
    loss: q.Number | None = None

    @model_validator(mode="after")
    def _one_kind(self):
        one_of(self, ("taper", "like", "loss"), "'taper: 60 deg'")
        return self


class Slots(Part):
    """Slots in front of a plenum: how many, the size of each, the section of the plenum behind them, its take-off."""

    count: Annotated[int, Field(ge=1, le=100)] = 1
    size: q.Rectangle
    plenum: q.Rectangle
    take_off: TakeOff | None = None


class HoodEntry(Part):
    """How the air gets from the hood into its duct; one of the four."""

    taper: q.Taper | None = None
    slots: Slots | None = None
    like: q.EntryRow | None = None
    loss: q.Number | None = None

    @model_validator(mode="after")
    def _one_kind(self):
        one_of(self, ("taper", "slots", "like", "loss"), "'taper: 45 deg'")
        return self


class AnyHood(Part):
    """What all hoods have: place, opening, and flow at four times of its life."""

    name: q.Name
    type: str
    serves: Annotated[tuple[q.Name, ...], Field(min_length=1), BeforeValidator(as_list)]
    opening: Opening
    at: q.Point
    facing: q.Direction
    along: q.Direction | None = None
    entry: HoodEntry | None = None
    filter: Resistance | None = None
    intended_flow: q.Flow | None = None
    commissioned: FlowReading | None = None
    today: FlowReading | None = None

    @model_validator(mode="after")
    def _along_lies_in_the_opening(self):
        if self.along is not None and abs(sum(a * f for a, f in zip(self.along, self.facing, strict=True))) > 0.1:
            raise ValueError("'along' is the direction of the opening's first side: it must be square to 'facing'")
        return self


class PushNozzle(Part):
    """A slot that blows across the work towards the hood."""

    at: q.Point
    slot: q.Rectangle
    flow: q.Flow

    @model_validator(mode="after")
    def _long_and_narrow(self):
        length, width = self.slot
        if length < NARROWEST_SLOT * width:
            given = " by ".join(q.plain(side, "length") for side in self.slot)
            raise ValueError(
                f"got a push slot of {given}; it is at least {NARROWEST_SLOT:g} times as long as wide, length first: "
                "exchange the two, or make it narrower"
            )
        speed = self.flow / (length * width)
        if speed > FASTEST_PUSH:
            got, most = (q.plain(v, "velocity") for v in (speed, FASTEST_PUSH))
            raise ValueError(f"the slot would blow at {got}; at most {most}: read its flow and its width again")
        return self


class CapturingHood(AnyHood):
    """A hood that draws in what is given off before it."""

    type: Literal["capturing"]
    flange: q.Width = 0.0
    bell_mouth: bool = False
    form: q.HoodForm | None = None
    push: PushNozzle | None = None

    @model_validator(mode="after")
    def _blows_from_elsewhere(self):
        if self.push is not None and math.dist(self.push.at, self.at) < NEAREST_PUSH:
            raise ValueError("the push nozzle stands in the hood's own opening; put it on the other side of the work")
        return self


class ReceivingHood(AnyHood):
    """A hood that stands where a process sends its stream: a canopy if it faces down."""

    type: Literal["receiving"]
    facing: q.Direction = DOWN
    open_sides: Literal[2, 3, 4] = 4

    @property
    def is_canopy(self) -> bool:
        """Whether it hangs above the work and looks down."""
        return self.facing[2] < -0.7


EnclosureWall = Literal["left", "right", "back", "front", "top", "floor"]


class OtherOpening(Shaped):
    """A further opening of an enclosure, or several of one size.

    `wall` and `at` say where its middle is, as one looks into the main opening: from the left and up on back and
    front, from the front and up on left and right, from the left and from the front on top and floor.
    """

    name: q.Name
    round: q.Size | None = None
    rectangle: q.Rectangle | None = None
    count: Annotated[int, Field(ge=1, le=1000)] = 1
    wall: EnclosureWall | None = None
    at: q.WallPoint | None = None

    @model_validator(mode="after")
    def _one_place(self):
        if (self.at is None) != (self.wall is None):
            raise ValueError("'wall' and 'at' say together where it is, for example 'wall: left, at: [0.3 m, 0.2 m]'")
        if self.at is not None and self.count > 1:
            raise ValueError(f"'at' is the place of one opening, got a count of {self.count}; give each an entry")
        return self


class EnclosingHood(AnyHood):
    """A hood that has the source inside. `at` is the middle of its main opening, which looks out of it."""

    type: Literal["enclosing"]
    form: q.EnclosureForm
    inside: q.Inside | None = None
    sill: q.Width | None = None
    other_openings: Annotated[tuple[OtherOpening, ...], BeforeValidator(as_list)] = ()
    face_velocity: q.CaptureSpeed | None = None

    @property
    def box(self) -> tuple[float, float, float]:
        """Width, height and depth inside; by default the opening's width and height, and its longer side as depth."""
        return self.inside or (*self.opening.sides, max(self.opening.sides))

    @property
    def below(self) -> float | None:
        """From the middle of the main opening down to the floor inside; None where the file does not say."""
        return None if self.sill is None else self.sill + self.opening.sides[1] / 2

    def wall_size(self, wall: EnclosureWall) -> tuple[float, float]:
        """Both sides of one of its walls, in the order in which places on it are told."""
        width, height, depth = self.box
        return {"left": (depth, height), "right": (depth, height), "top": (width, depth), "floor": (width, depth)}.get(
            wall, (width, height)
        )

    @model_validator(mode="after")
    def _sill_fits(self):
        if self.sill is None:
            return self
        if abs(self.facing[2]) > LEVEL or (self.along is not None and abs(self.along[2]) > LEVEL):
            raise ValueError("'sill' is for an opening that looks level, with 'along' level too: leave it out here")
        top, high = self.sill + self.opening.sides[1], self.box[1]
        if top > high * (1 + 1e-9):
            got, most = q.plain(top, "length"), q.plain(high, "length")
            raise ValueError(f"its sill and its opening reach {got} up, and inside it is {most} high: read both again")
        return self

    @model_validator(mode="after")
    def _holds_its_opening(self):
        for what, side, room in zip(("wide", "high"), self.opening.sides, self.box[:2], strict=True):
            if side > room * (1 + 1e-9):
                got, most = q.plain(side, "length"), q.plain(room, "length")
                raise ValueError(f"its opening is {got} {what}, and inside it is {most}: read both again")
        names = [other.name for other in self.other_openings]
        double = next((name for name in names if names.count(name) > 1), None)
        if double:
            raise ValueError(f"two other openings are named {double!r}; give each its own name, or use 'count'")
        return self


Hood = CapturingHood | ReceivingHood | EnclosingHood
HOOD_TYPES: dict[str, type[AnyHood]] = {
    "capturing": CapturingHood,
    "receiving": ReceivingHood,
    "enclosing": EnclosingHood,
}


def hood_type(data: Any) -> str | None:
    """The type that the file gives for a hood, where it is one of the three."""
    found = data.get("type") if isinstance(data, dict) else getattr(data, "type", None)
    return found if isinstance(found, str) and found in HOOD_TYPES else None
