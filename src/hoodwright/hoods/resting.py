"""Hoods that rest on a surface, or in the corner of two: each surface mirrors the opening.

With its images the opening is one of two or four times the area and flow, so DallaValle's laws hold for the whole.
Distances are along the surface, from the opening's edge on it. As in `centreline`, velocities are for a flow of one
cubic metre per second.
"""

from hoodwright.hoods.centreline import BOUNDS, dallavalle_reach, equal_area_diameter
from hoodwright.hoods.slots import silverman_flanged, silverman_plain
from hoodwright.ranges import not_above, not_negative, positive, within

MOST_SURFACES = 2


def resting_plain(distance, area, surfaces):
    """Velocity per flow before a plain opening on a surface, 1 / (5 x² + A), or in a corner, 1 / (2.5 x² + A).

    Parameters
    ----------
    distance : float or array [m]
    area : float or array, broadcast with `distance` [m2]
        Of the opening itself, without its images.
    surfaces : int
        1 for a bench or a wall, 2 for a corner.

    Returns
    -------
    velocity_per_flow : broadcast shape [1/m2]

    Valid: 1 or 2 surfaces; distance of 1.5 diameters of the opening with its images; else RangeError is raised.
    Source: [dallavalle, plain opening, with mirror images]
    """
    images = _images(surfaces)
    area = positive("area", area, "m2")
    x = not_negative("distance", distance, "m")
    tail = f", the limit of [dallavalle, range of 1.5 diameters]; {BOUNDS}"
    not_above("distance", x, dallavalle_reach(equal_area_diameter(images * area)), "m", tail)
    return 1 / (10 * x**2 / images + area)


def resting_flanged(distance, area, surfaces):
    """Velocity per flow before a flanged opening on a surface or in a corner: 4/3 of the plain one's.

    Parameters
    ----------
    distance : float or array [m]
    area : float or array, broadcast with `distance` [m2]
    surfaces : int
        1 or 2.

    Returns
    -------
    velocity_per_flow : broadcast shape [1/m2]

    Valid: as `resting_plain`, and a full flange on every other side.
    Source: [dallavalle, flanged opening, with mirror images]
    """
    return resting_plain(distance, area, surfaces) / 0.75


def resting_slot_plain(distance, length):
    """Velocity per flow before a plain slot that lies along a surface: 1 / (1.85 L x).

    Parameters
    ----------
    distance : float or array [m]
    length : float or array, broadcast with `distance` [m]

    Returns
    -------
    velocity_per_flow : broadcast shape [1/m2]

    Valid: as `slots.silverman_plain`.
    Source: [exam-equations, plain slot, with its mirror image]
    """
    return 2 * silverman_plain(distance, length)


def resting_slot_flanged(distance, length):
    """Velocity per flow before a flanged slot that lies along a surface: 1 / (1.3 L x).

    Parameters
    ----------
    distance : float or array [m]
    length : float or array, broadcast with `distance` [m]

    Returns
    -------
    velocity_per_flow : broadcast shape [1/m2]

    Valid: as `slots.silverman_flanged`.
    Source: [exam-equations, flanged slot, with its mirror image]
    """
    return 2 * silverman_flanged(distance, length)


def _images(surfaces: int) -> int:
    """The opening and its mirror images together."""
    count = within("surfaces", surfaces, 1, MOST_SURFACES, "", "; a hood rests on one, or in the corner of two")
    return 2 ** int(count)
