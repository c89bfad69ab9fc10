"""Openings of an enclosure, its surface, and what stands within it."""

from dataclasses import dataclass

from hoodwright.hoods import opening_share
from hoodwright.tasks.hood_shapes import frame_of
from hoodwright.tasks.lines import digits
from hoodwright.tasks.shapes import area_of
from hoodwright.workplace.model import EnclosingHood, Person, Shaped

Xyz = tuple[float, float, float]

MARGIN = 0.01  # m: a source drawn on the edge of the box still stands in it


@dataclass(frozen=True)
class Within:
    """A point as the enclosure sees it: behind the plane of its main opening, sideways and upward from its middle."""

    behind: float
    aside: float
    up: float


def open_area(hood: EnclosingHood) -> float:
    """Area of all openings together."""
    return area_of(hood.opening) + sum(other.count * area_of(other) for other in hood.other_openings)


def area_words(hood: EnclosingHood) -> str:
    """The open area as a sum to type into a calculator."""
    parts = [_shape(hood.opening)]
    for other in hood.other_openings:
        times = "" if other.count == 1 else f"{other.count} x "
        parts.append(f"{times}{_shape(other)}")
    return parts[0] if len(parts) == 1 else f"({' + '.join(parts)})"


def _shape(section: Shaped) -> str:
    width, height = (digits(side) for side in section.sides)
    return f"pi / 4 x {width}²" if section.is_round else f"{width} x {height}"


def surface_of(hood: EnclosingHood) -> float:
    """Four walls, floor and ceiling, openings and all."""
    width, height, depth = hood.box
    return 2 * (width * height + height * depth + depth * width)


def share_open(hood: EnclosingHood) -> float:
    """Share of the enclosure's surface that is open."""
    return float(opening_share(open_area(hood), surface_of(hood)))


def seen_from(hood: EnclosingHood, point: Xyz) -> Within:
    """Where a point lies in the enclosure's own directions."""
    across, up = frame_of(hood)
    line = [p - a for p, a in zip(point, hood.at, strict=True)]

    def along(way: Xyz) -> float:
        return sum(step * part for step, part in zip(line, way, strict=True))

    return Within(-along(hood.facing), along(across), along(up))


def holds(hood: EnclosingHood, point: Xyz) -> bool:
    """Whether a point lies inside. Without `sill` a whole height counts, up and down from the opening's middle."""
    width, height, depth = hood.box
    place = seen_from(hood, point)
    floor = -height if hood.below is None else -hood.below
    ceiling = height if hood.below is None else height - hood.below
    deep = -MARGIN <= place.behind <= depth + MARGIN
    return deep and abs(place.aside) <= width / 2 + MARGIN and floor - MARGIN <= place.up <= ceiling + MARGIN


def stands_in(hood: EnclosingHood, person: Person) -> bool:
    """Whether a person's head is inside the enclosure."""
    return holds(hood, (*person.at, person.breathing_height)) and seen_from(hood, (*person.at, hood.at[2])).behind > 0
