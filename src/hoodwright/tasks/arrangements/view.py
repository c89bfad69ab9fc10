"""One place to look from for all three arrangements, so that they can be compared by eye."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from hoodwright.tasks.arrangements.arrange import Arrangement
from hoodwright.tasks.hood_shapes import Xyz, body_of, frame_of, plus
from hoodwright.workplace.model import CapturingHood, Hood

TO_FRONT, UP = 0.5, 0.35  # of a look from the side: how far towards the front, and from above
UPWIND = 0.1  # of a draught's direction, from which it blows to one side
LEAST = 0.25  # m, half of what is seen


@dataclass(frozen=True)
class Stance:
    """The middle of what is seen, half its size [m], and the way from there to the eye.

    `free_side`: where no hood beside the source stands in the picture, to the right (1) or left (-1).
    """

    middle: Xyz
    size: float
    looked_from: Xyz
    free_side: int


def stance_of(three: Sequence[Arrangement]) -> Stance:
    """From the side, so that nothing stands before the way from the source to the hood; smoke drifts away from the eye.

    Without a draught across, the hood beside the source is to the right.
    """
    points = [point for one in three for hood in one.workplace.hoods for point in _outline(hood)]
    points += [point for one in three for point in one.workplace.source(one.source).points]
    low, high = ([pick(p[i] for p in points) for i in range(3)] for pick in (min, max))
    x, y, z = ((a + b) / 2 for a, b in zip(low, high, strict=True))
    front = three[0].workplace.hoods[0].facing
    draught = three[0].workplace.room.draught
    blows = 0.0 if draught is None else draught.towards[1] * front[0] - draught.towards[0] * front[1]
    side = -1 if blows > UPWIND else 1
    way = (TO_FRONT * front[0] - side * front[1], TO_FRONT * front[1] + side * front[0], UP)
    far = math.hypot(*way)
    looked_from = (way[0] / far, way[1] / far, way[2] / far)
    return Stance((x, y, z), max(LEAST, math.dist(low, high) / 2), looked_from, -side)


def _outline(hood: Hood) -> list[Xyz]:
    """Corners of an opening with its flange, and of a body."""
    across, up = frame_of(hood)
    wide, high = (side / 2 + (hood.flange if isinstance(hood, CapturingHood) else 0.0) for side in hood.opening.sides)
    rim = [plus(hood.at, (across, a * wide), (up, b * high)) for a in (-1, 1) for b in (-1, 1)]
    return [*rim, *(point for panel in body_of(hood)[0] for point in panel)]
