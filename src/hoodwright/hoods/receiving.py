"""Canopies: hoods that hang above their work and look down.

Cold work needs inflow through the open sides. Hot work sends a plume up, and the canopy must take all of it: a low
canopy hangs so close that the plume has hardly grown. The equations for hot work are printed in feet and degrees
Fahrenheit; here the same equations take and give SI. Nobody may lean between the work and its canopy.
"""

import numpy as np

from hoodwright.errors import RangeError
from hoodwright.ranges import not_negative, positive
from hoodwright.tables import load_table

FOOT, CFM, FPM = 0.3048, 0.3048**3 / 60, 0.00508
FAHRENHEIT = 1.8  # degrees for each kelvin

COLD_FOUR_SIDES = 1.4
LOW_HIGHEST = 3 * FOOT  # and no higher than the source is wide
LOW_LARGER = 1 * FOOT  # canopy over source, both sides together
HIGH_GROWTH = 0.8  # canopy over plume, both sides together, for each height
FACE_VELOCITY = 100 * FPM  # through the part of the face that the plume leaves free; 200 fpm in draughts

LOW_ROUND = 4.7 * CFM / FOOT**2.33 * FAHRENHEIT**0.42  # m3/s for m and K
LOW_RECTANGULAR = 6.2 * CFM / FOOT**2.33 * FAHRENHEIT**0.42
HIGH_ORIGIN = FOOT * (2 / FOOT) ** 1.138
HIGH_SPREAD = 0.5 * FOOT / FOOT**0.88
HIGH_VELOCITY = 8 * FPM * FOOT**0.25 / FOOT**0.66 * FAHRENHEIT**0.42


def cold_canopy_flow(capture_velocity, open_length, height, *, open_sides=4):
    """Flow of a canopy over cold work: 1.4 P D V with four open sides.

    Parameters
    ----------
    capture_velocity : float or array [m/s]
        Through the open sides.
    open_length : float or array, broadcast with `capture_velocity` [m]
        Length of the open sides together: the perimeter of the WORK where all four are open.
    height : float or array, broadcast with the others [m]
        From the work up to the rim of the canopy.
    open_sides : int
        4 or 3: 1.4 P D V. 2, the others closed by curtains or walls: P D V.

    Returns
    -------
    flow : broadcast shape [m3/s]

    Valid: all above 0, 2 to 4 open sides; else RangeError is raised. No cross-draught.
    Source: [exam-equations, canopy hood; canopy-hot, sides closed, from memory]
    """
    if open_sides not in (2, 3, 4):
        raise RangeError(f"open sides {open_sides} is not 2, 3 or 4; with one open side the hood is a booth")
    coefficient = 1.0 if open_sides == 2 else COLD_FOUR_SIDES
    inflow = positive("capture velocity", capture_velocity, "m/s") * positive("length of open sides", open_length, "m")
    return coefficient * inflow * positive("height", height, "m")


def low_canopy_reach(source_width):
    """Greatest height at which a canopy over hot work counts as low: 3 ft, and no more than the source is wide.

    Parameters
    ----------
    source_width : float or array, any shape [m]
        Diameter, or shorter side.

    Returns
    -------
    height : same shape as `source_width` [m]

    Valid: width above 0; else RangeError is raised.
    Source: [canopy-hot, low canopies]
    """
    return np.minimum(LOW_HIGHEST, positive("width of the source", source_width, "m"))


def low_canopy_side(source_side):
    """Side or diameter that a low canopy needs: 1 ft more than the source, half of it on each side.

    Parameters
    ----------
    source_side : float or array, any shape [m]

    Returns
    -------
    side : same shape as `source_side` [m]

    Valid: side above 0; else RangeError is raised.
    Source: [canopy-hot, low canopies]
    """
    return positive("side of the source", source_side, "m") + LOW_LARGER


def low_canopy_flow_round(canopy_diameter, excess_temperature):
    """Flow of a low round canopy over hot work: 4.7 D^2.33 dT^0.42 in cfm, ft and degF.

    Parameters
    ----------
    canopy_diameter : float or array [m]
    excess_temperature : float or array, broadcast with `canopy_diameter` [K]
        Of the hot surface over the air.

    Returns
    -------
    flow : broadcast shape [m3/s]

    Valid: both above 0; else RangeError is raised. Up to `low_canopy_reach`, and 1 ft wider than the source.
    Source: [canopy-hot, low canopies]
    """
    warm = positive("excess temperature", excess_temperature, "K") ** 0.42
    return LOW_ROUND * positive("diameter of the canopy", canopy_diameter, "m") ** 2.33 * warm


def low_canopy_flow_rectangular(canopy_length, canopy_width, excess_temperature):
    """Flow of a low rectangular canopy over hot work: 6.2 b^1.33 dT^0.42 for each foot of length.

    Parameters
    ----------
    canopy_length, canopy_width : float or array [m]
        Longer and shorter side.
    excess_temperature : float or array, broadcast with the others [K]
        Of the hot surface over the air.

    Returns
    -------
    flow : broadcast shape [m3/s]

    Valid: all above 0; else RangeError is raised. Up to `low_canopy_reach`, and 1 ft larger than the source.
    Source: [canopy-hot, low canopies]
    """
    long_side = positive("length of the canopy", canopy_length, "m")
    short_side = positive("width of the canopy", canopy_width, "m")
    return (
        LOW_RECTANGULAR * long_side * short_side**1.33 * positive("excess temperature", excess_temperature, "K") ** 0.42
    )


def high_canopy_origin(source_width):
    """How far below a hot source its plume seems to begin: (2 D)^1.138 in ft.

    Parameters
    ----------
    source_width : float or array, any shape [m]
        Diameter, or shorter side.

    Returns
    -------
    depth : same shape as `source_width` [m]

    Valid: width above 0; else RangeError is raised.
    Source: [canopy-hot, high canopies]
    """
    return HIGH_ORIGIN * positive("width of the source", source_width, "m") ** 1.138


def high_canopy_plume_width(distance):
    """Width of the plume of a hot source at a distance from its virtual origin: 0.5 Xc^0.88 in ft.

    Parameters
    ----------
    distance : float or array, any shape [m]
        Height above the source, and `high_canopy_origin`.

    Returns
    -------
    width : same shape as `distance` [m]

    Valid: distance above 0; else RangeError is raised.
    Source: [canopy-hot, high canopies]
    """
    return HIGH_SPREAD * positive("distance from the origin", distance, "m") ** 0.88


def high_canopy_plume_velocity(source_area, excess_temperature, distance):
    """Mean velocity of the plume of a hot source: 8 As^0.33 dT^0.42 / Xc^0.25 in fpm, ft2, degF and ft.

    Parameters
    ----------
    source_area : float or array [m2]
    excess_temperature : float or array, broadcast with `source_area` [K]
        Of the hot surface over the air.
    distance : float or array, broadcast with the others [m]
        Height above the source, and `high_canopy_origin`.

    Returns
    -------
    velocity : broadcast shape [m/s]

    Valid: all above 0; else RangeError is raised.
    Source: [canopy-hot, high canopies]
    """
    area = positive("area of the source", source_area, "m2")
    warm = positive("excess temperature", excess_temperature, "K")
    far = positive("distance from the origin", distance, "m")
    return HIGH_VELOCITY * area**0.33 * warm**0.42 / far**0.25


def high_canopy_side(plume_width, height):
    """Side or diameter that a high canopy needs: the plume and 0.8 of the height above the source.

    Parameters
    ----------
    plume_width : float or array [m]
        At the canopy.
    height : float or array, broadcast with `plume_width` [m]
        Of the canopy above the source.

    Returns
    -------
    side : broadcast shape [m]

    Valid: width above 0, height of 0 or more; else RangeError is raised.
    Source: [canopy-hot, high canopies]
    """
    return positive("width of the plume", plume_width, "m") + HIGH_GROWTH * not_negative("height", height, "m")


def canopy_flow(plume_flow, plume_area, canopy_area, face_velocity=FACE_VELOCITY):
    """Flow of a canopy that takes a plume, and air through the rest of its face: Q + V (A - Ac).

    Parameters
    ----------
    plume_flow : float or array [m3/s]
    plume_area, canopy_area : float or array, broadcast with `plume_flow` [m2]
        Where the plume fills the canopy, nothing is added.
    face_velocity : float or array, broadcast with the others [m/s]
        0.51 m/s (100 fpm); twice that in draughts.

    Returns
    -------
    flow : broadcast shape [m3/s]

    Valid: areas and flow above 0, velocity of 0 or more; else RangeError is raised.
    Source: [canopy-hot, high canopies]
    """
    free = positive("area of the canopy", canopy_area, "m2") - positive("area of the plume", plume_area, "m2")
    rest = not_negative("face velocity", face_velocity, "m/s") * np.maximum(free, 0.0)
    return positive("flow of the plume", plume_flow, "m3/s") + rest


def measured_capture(burner):
    """Share of a burner's plume that an overhead hood against a wall was found to catch, at its highest flow.

    Parameters
    ----------
    burner : str
        back or front, and the hood: "front, flat hood".

    Returns
    -------
    lowest, highest : float [1]
        1 where only the lower end is printed.

    Valid: the rows of the table; any other word raises InputError. Kitchen hoods, not a design value.
    Source: [kitchen-capture, abstract]
    """
    row = load_table("canopy_capture").row("burner", burner)
    return row["lowest_1"], row["highest_1"]
