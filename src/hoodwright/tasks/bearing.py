"""The way of a draught on the floor plan: degrees clockwise from "into the room" (+y), and words.

0 deg is into the room (+y), 90 deg along the room (+x), as a compass is read with +y up. It says where the air goes to.
"""

import math

from hoodwright import units
from hoodwright.errors import HoodwrightError, InputError
from hoodwright.workplace.model import Workplace

Xyz = tuple[float, float, float]

ROSE = (
    "into the room",
    "into the room and along it",
    "along the room",
    "out of the room and along it",
    "out of the room",
    "out of the room and back along it",
    "back along the room",
    "into the room and back along it",
)
LEVEL = 1e-9
EXAMPLE = "write for example 90 deg, 'along the room', or three numbers: 1, 0, 0"


def bearing_of(way: Xyz) -> float:
    """Degrees clockwise from +y, 0 to 360, of a direction seen from above; straight up or down gives 0."""
    x, y, _ = way
    if math.hypot(x, y) < LEVEL:
        return 0.0
    return round(math.degrees(math.atan2(x, y)) % 360.0, 6) % 360.0


def towards(bearing: float) -> Xyz:
    """The level direction of a bearing, of length 1."""
    angle = math.radians(bearing)
    x, y = round(math.sin(angle), 4) + 0.0, round(math.cos(angle), 4) + 0.0
    return (x, y, 0.0)


def words_of(bearing: float) -> str:
    """The nearest of eight ways in words: 'along the room'."""
    return ROSE[round(bearing / 45.0) % len(ROSE)]


def told(bearing: float) -> str:
    """A bearing for the eye: '90°, along the room'."""
    return f"{bearing:.0f}°, {words_of(bearing)}"


def read_bearing(text: str) -> float:
    """The bearing that was typed: an angle, words of the rose, or three numbers of a direction."""
    plain = " ".join(text.casefold().replace("°", " deg").split())
    if plain in ROSE:
        return 45.0 * ROSE.index(plain)
    numbers = _numbers(plain)
    if len(numbers) == 3 and math.hypot(numbers[0], numbers[1]) > LEVEL:
        return bearing_of((numbers[0], numbers[1], numbers[2]))
    try:
        return math.degrees(units.parse(plain.split(",")[0], "angle")) % 360.0
    except HoodwrightError:
        raise InputError(f"got {text!r}; a direction on the floor plan is needed: {EXAMPLE}") from None


def _numbers(text: str) -> list[float]:
    try:
        found = [float(word) for word in text.strip("[]() ").replace(",", " ").split()]
    except ValueError:
        return []
    return found if all(math.isfinite(number) for number in found) else []


def draught_with(workplace: Workplace, speed: float | None, bearing: float | None) -> Xyz | None:
    """The draught [m/s] of a workplace with another speed or bearing; None where neither is given."""
    if speed is None and bearing is None:
        return None
    told = workplace.room.draught
    if speed is None:
        speed = told.speed if told else 0.0
    way = towards(bearing) if bearing is not None else told.towards if told else towards(0.0)
    x, y, z = way
    return (speed * x, speed * y, speed * z)
