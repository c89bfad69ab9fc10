"""Hoods that face something so close that no air can come between."""

import numpy as np

from hoodwright.errors import InputError
from hoodwright.flow.geometry import Mouth, Plate
from hoodwright.flow.scene import Scene

CLOSE = 1 / 8  # of the shorter side: the ring that is left is then half of the opening's area
TOUCHING = 1e-4  # m: what lies in the plane of the opening holds the hood


def refuse_blocked(scene: Scene) -> None:
    """Raise InputError with the name of a hood whose whole opening faces a plate, a block or a wall close by."""
    for mouth in scene.mouths:
        steps = np.linspace(TOUCHING, CLOSE * mouth.shorter, 9)
        found = [_what_is_before(scene, mouth, place, steps) for place in _places(mouth)]
        if all(found):
            raise InputError(
                f"{mouth.name}: its opening faces {found[0]} less than {1000 * steps[-1]:.3g} mm away, "
                "so it can draw no air; turn it round, or move it away"
            )


def _places(mouth: Mouth) -> list[np.ndarray]:
    """The centre of an opening, and four places half way to its rim."""
    frame = mouth.frame
    a, b = frame.along * frame.sides[0] / 4, frame.across * frame.sides[1] / 4
    return [frame.centre, frame.centre + a, frame.centre - a, frame.centre + b, frame.centre - b]


def _what_is_before(scene: Scene, mouth: Mouth, place: np.ndarray, steps: np.ndarray) -> str:
    """The name of what stands before a place of an opening; empty when there is nothing."""
    way = place + steps[:, None] * mouth.frame.normal
    low, high = scene.surroundings.bounds
    if np.any(way < low) or np.any(way > high):
        return "a wall of the room"
    for block in scene.blocks:
        if np.any(block.fills(way)):
            return block.name
    for plate in scene.plates:
        if _crosses(plate, way[0], way[-1]):
            return plate.name
    return ""


def _crosses(plate: Plate, start: np.ndarray, stop: np.ndarray) -> bool:
    a, b = float(plate.height(start)), float(plate.height(stop))
    if (a > 0) == (b > 0):
        return False
    return bool(plate.holds(start + a / (a - b) * (stop - start)))
