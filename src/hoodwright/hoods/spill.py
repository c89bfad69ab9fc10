"""Warm air that runs out of an opening and rises past its upper edge, such as from a furnace door or an oven mouth."""

import numpy as np

from hoodwright.ranges import not_negative, positive

SHARE, ENTRAINMENT = 0.42, 0.13
EDGE = 0.09  # kg/s for each kW^(1/3) m^(5/3)


def spill_edge_flow(heat, width, opening_height):
    """Mass flow of warm air out of an opening, at its upper edge: 0.09 (q W^2)^(1/3) h, q in kW.

    Parameters
    ----------
    heat : float or array [W]
        The convective part.
    width, opening_height : float or array, broadcast with `heat` [m]

    Returns
    -------
    mass_flow : broadcast shape [kg/s]

    Valid: all above 0; else RangeError is raised. An opening without a lintel, clearly wider than a slit.
    Source: [spill-opening, flow at an opening]
    """
    return EDGE * _drive(heat, width) * positive("height of the opening", opening_height, "m")


def spill_plume_flow(heat, width, height, edge_flow):
    """Mass flow of a plume that spills over an edge and rises free on both sides.

    m = 0.42 (2E)^(2/3) (q W^2)^(1/3) (z + z0) (1 + 2 E z / W)^(2/3), q in kW, E = 0.13; z0 follows from the flow at
    the edge. One that clings to a wall above the opening carries less.

    Parameters
    ----------
    heat : float or array [W]
        The convective part.
    width : float or array, broadcast with `heat` [m]
        Of the opening.
    height : float or array, broadcast with the others [m]
        Above the edge.
    edge_flow : float or array, broadcast with the others [kg/s]
        Mass flow at the edge.

    Returns
    -------
    mass_flow : broadcast shape [kg/s]

    Valid: heat and width above 0, height and edge flow of 0 or more; else RangeError is raised. Up to 5 widths.
    Source: [spill-plume, eq. 54]
    """
    w, z = positive("width", width, "m"), not_negative("height", height, "m")
    grown = SHARE * (2 * ENTRAINMENT) ** (2 / 3) * _drive(heat, w) * z
    return (not_negative("flow at the edge", edge_flow, "kg/s") + grown) * (1 + 2 * ENTRAINMENT * z / w) ** (2 / 3)


def _drive(heat, width):
    kilowatts = positive("convective heat", heat, "W") / 1000
    return np.cbrt(kilowatts * positive("width", width, "m") ** 2)
