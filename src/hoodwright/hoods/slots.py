"""Air speed before a slot: the published line laws, and the exact sink along a line of finite length.

As in `centreline`, each function returns the velocity for a flow of one cubic metre per second, in 1/m2, on the axis
through the middle of the slot.
"""

import numpy as np

from hoodwright.ranges import not_above, not_negative, positive

SLOT_LARGEST_SIDE_RATIO = 0.2  # width / length
SLOT_REACH_IN_LENGTHS = 0.5
SLOT_NEAREST_IN_WIDTHS = 1.0


def slot_reach(length):
    """Greatest distance at which the line laws are used: half the slot's length.

    The laws hold where the distance is small against the length; the source gives no limit, this one is ours. There
    the exact line of finite length draws a tenth to a third less than an endless one.

    Parameters
    ----------
    length : float or array, any shape [m]

    Returns
    -------
    distance : same shape as `length` [m]

    Valid: length above 0; else RangeError is raised.
    Source: [common-practice, slots, distance small against the length]
    """
    return SLOT_REACH_IN_LENGTHS * positive("length", length, "m")


def silverman_plain(distance, length):
    """Velocity per flow before a plain slot: 1 / (3.7 L x).

    Parameters
    ----------
    distance : float or array [m]
    length : float or array, broadcast with `distance` [m]
        Of the slot.

    Returns
    -------
    velocity_per_flow : broadcast shape [1/m2]

    Valid: width / length of 0.2 or less; distance above 0 and up to half the length, else RangeError is raised.
    Source: [exam-equations, plain slot]
    """
    return 1 / (3.7 * _length_times_distance(distance, length))


def silverman_flanged(distance, length):
    """Velocity per flow before a flanged slot: 1 / (2.6 L x). Older texts print 2.8.

    Parameters
    ----------
    distance : float or array [m]
    length : float or array, broadcast with `distance` [m]
        Of the slot.

    Returns
    -------
    velocity_per_flow : broadcast shape [1/m2]

    Valid: as `silverman_plain`, and a flange all round.
    Source: [exam-equations, flanged slot]
    """
    return 1 / (2.6 * _length_times_distance(distance, length))


def line_sink_free(distance, length):
    """Velocity per flow before a sink along a line, in open space: 1 / (4 pi x sqrt(x² + L² / 4)).

    Near the line it is an endless line sink, 1 / (2 pi x L); far away a point, 1 / (4 pi x²).

    Parameters
    ----------
    distance : float or array [m]
    length : float or array, broadcast with `distance` [m]

    Returns
    -------
    velocity_per_flow : broadcast shape [1/m2]

    Valid: distance and length above 0, else RangeError is raised. A slot is a line from about one width on.
    Source: [potential-flow, sink along a line of finite length]
    """
    x, half = positive("distance", distance, "m"), positive("length", length, "m") / 2
    return 1 / (4 * np.pi * x * np.hypot(x, half))


def line_sink_flanged(distance, length):
    """Velocity per flow before a sink along a line in an endless flange: twice that in open space.

    Parameters
    ----------
    distance : float or array [m]
    length : float or array, broadcast with `distance` [m]

    Returns
    -------
    velocity_per_flow : broadcast shape [1/m2]

    Valid: as `line_sink_free`.
    Source: [potential-flow, sink along a line of finite length]
    """
    return 2 * line_sink_free(distance, length)


def line_sink_aside(distance, aside, length):
    """Velocity per flow towards a sink along a line, in open space, some way aside of its middle.

    With the ends of the line at s = a ± L / 2 along it: (s2 / r2 - s1 / r1) / (4 pi x L), r² = x² + s². Before an end
    it is about half that before the middle.

    Parameters
    ----------
    distance : float or array [m]
        From the line, square to it.
    aside : float or array, broadcast with `distance` [m]
        Along the line, from its middle.
    length : float or array, broadcast with `distance` [m]

    Returns
    -------
    velocity_per_flow : broadcast shape [1/m2]
        In an endless flange it is twice this.

    Valid: distance and length above 0, aside 0 or more; else RangeError is raised.
    Source: [potential-flow, sink along a line of finite length]
    """
    x, span = positive("distance", distance, "m"), positive("length", length, "m")
    a = not_negative("distance aside", aside, "m")
    one, other = a - span / 2, a + span / 2
    return (other / np.hypot(x, other) - one / np.hypot(x, one)) / (4 * np.pi * x * span)


def line_sink_over_surface(distance, height, length):
    """Velocity per flow along a surface, below a line sink that runs at a height over it: x / (pi L (x² + b²)).

    Parameters
    ----------
    distance : float or array [m]
        Along the surface, from the foot of the line.
    height : float or array, broadcast with `distance` [m]
    length : float or array, broadcast with `distance` [m]
        Of the slot, long against distance and height: the flow is plane.

    Returns
    -------
    velocity_per_flow : broadcast shape [1/m2]
        Towards the line; at its greatest, 1 / (2 pi L b), where the distance equals the height.

    Valid: height and length above 0, distance 0 or more; else RangeError is raised.
    Source: [cengel-fm, ex. 10-8]
    """
    b, span = positive("height", height, "m"), positive("length", length, "m")
    x = not_negative("distance", distance, "m")
    return x / (np.pi * span * (x**2 + b**2))


def _length_times_distance(distance, length):
    x, span = positive("distance", distance, "m"), positive("length", length, "m")
    tail = ", half the slot's length; use line_sink_free or line_sink_flanged, which hold there"
    not_above("distance", x, slot_reach(span), "m", tail)
    return span * x
