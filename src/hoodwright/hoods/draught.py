"""How far a suction opening reaches in an even cross-draught: the half body that a sink makes in a stream.

The opening is a point: good from about one diameter on. Turbulence blurs the edge of what is caught.
"""

import numpy as np

from hoodwright.ranges import positive


def flanged_reach_in_draught(flow, draught):
    """How far ahead of a flanged opening a source on its axis may lie, and still be drawn in: sqrt(Q / (pi u)).

    Parameters
    ----------
    flow : float or array [m3/s]
    draught : float or array, broadcast with `flow` [m/s]
        Along the flange.

    Returns
    -------
    distance : broadcast shape [m]

    Valid: both above 0, a source without speed of its own; else RangeError is raised.
    Source: [potential-flow, sink in a stream along a plane]
    """
    return np.sqrt(_flow_per_draught(flow, draught))


def free_reach_in_draught(flow, draught):
    """How far ahead of a plain opening a source on its axis may lie, and still be drawn in: sqrt(Q / (2 pi u)).

    Parameters
    ----------
    flow : float or array [m3/s]
    draught : float or array, broadcast with `flow` [m/s]
        Across the axis.

    Returns
    -------
    distance : broadcast shape [m]

    Valid: both above 0, a source without speed of its own; else RangeError is raised.
    Source: [potential-flow, sink in a stream]
    """
    return np.sqrt(_flow_per_draught(flow, draught) / 2)


def flanged_catch_radius(flow, draught):
    """Radius of the half disc of oncoming draught that a flanged opening swallows, far upstream: sqrt(2 Q / (pi u)).

    Parameters
    ----------
    flow : float or array [m3/s]
    draught : float or array, broadcast with `flow` [m/s]

    Returns
    -------
    radius : broadcast shape [m]

    Valid: both above 0; else RangeError is raised.
    Source: [potential-flow, sink in a stream along a plane]
    """
    return np.sqrt(2 * _flow_per_draught(flow, draught))


def _flow_per_draught(flow, draught):
    """Q / (pi u)."""
    return positive("flow", flow, "m3/s") / (np.pi * positive("draught", draught, "m/s"))
