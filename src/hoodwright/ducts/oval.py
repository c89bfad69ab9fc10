"""Flat oval ducts: two half circles with straight sides between them."""

import numpy as np

from hoodwright.errors import InputError
from hoodwright.ranges import positive


def oval_area(long, short):
    """Area of a flat oval section.

    Parameters
    ----------
    long : float or array, any shape [m]
        Whole width.
    short : float or array, broadcast with `long` [m]
        Distance of the straight sides.

    Returns
    -------
    area : broadcast shape [m2]

    Valid: sides above 0, else RangeError is raised; the longer one first, else InputError.
    Source: [common-practice, a rectangle between two half circles]
    """
    a, b = _sides(long, short)
    return b * (a - b) + np.pi / 4 * b**2


def oval_perimeter(long, short):
    """Way round a flat oval section.

    Parameters
    ----------
    long : float or array, any shape [m]
    short : float or array, broadcast with `long` [m]

    Returns
    -------
    perimeter : broadcast shape [m]

    Valid: sides above 0, else RangeError is raised; the longer one first, else InputError.
    Source: [common-practice, a rectangle between two half circles]
    """
    a, b = _sides(long, short)
    return 2 * (a - b) + np.pi * b


def oval_hydraulic_diameter(long, short):
    """Hydraulic diameter of a flat oval duct, four times its area over its perimeter.

    Parameters
    ----------
    long : float or array, any shape [m]
    short : float or array, broadcast with `long` [m]

    Returns
    -------
    diameter : broadcast shape [m]

    Valid: sides above 0, else RangeError is raised; the longer one first, else InputError.
    Source: [huebscher47, hydraulic diameter]
    """
    return 4 * oval_area(long, short) / oval_perimeter(long, short)


def _sides(long, short):
    a, b = positive("longer side", long, "m"), positive("shorter side", short, "m")
    if np.any(b > a):
        raise InputError(f"oval {long} by {short} m: the longer side comes first; exchange the two")
    return a, b
