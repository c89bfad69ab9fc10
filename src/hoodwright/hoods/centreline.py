"""Air speed on the axis in front of a suction opening.

Every law is linear in the flow. Each function returns the velocity for a flow of one cubic metre per second,
in 1/m2: multiply by the flow for the velocity, or see `capturing.required_flow` for the flow. The distance is
measured along the axis from the plane of the opening. Draught, bodies and obstacles are not in these laws.
"""

from itertools import combinations

import numpy as np

from hoodwright.ranges import not_above, not_negative, positive, within

DALLAVALLE_DIAMETERS = 1.5
DALLAVALLE_SMALLEST_SIDE_RATIO = 0.2  # short side / long side
FLETCHER_1977_LARGEST_ASPECT = 16.0  # long side / short side
FLETCHER_1977_NEAREST, FLETCHER_1977_FARTHEST = 0.05, 3.0  # distance / square root of the area

BOUNDS = "use far_field_least_flow and far_field_most_flow, which hold there"


def equal_area_diameter(area):
    """Diameter of the circle with the same area.

    Parameters
    ----------
    area : float or array, any shape [m2]

    Returns
    -------
    diameter : same shape as `area` [m]

    Valid: area above 0; else RangeError is raised.
    Source: [potential-flow, area of a circle]
    """
    return np.sqrt(4 * positive("area", area, "m2") / np.pi)


def full_flange_width(area):
    """Width of flange, all round, from which the flanged laws may be used. A table top is not a flange.

    Parameters
    ----------
    area : float or array, any shape [m2]
        Of the opening.

    Returns
    -------
    width : same shape as `area` [m]

    Valid: area above 0; else RangeError is raised.
    Source: [hood-course-21, flange dimension]
    """
    return np.sqrt(positive("area", area, "m2"))


def dallavalle_reach(diameter):
    """Greatest distance at which DallaValle's laws hold.

    Parameters
    ----------
    diameter : float or array, any shape [m]
        Of the opening; of the circle of equal area where it is rectangular.

    Returns
    -------
    distance : same shape as `diameter` [m]

    Valid: diameter above 0; else RangeError is raised.
    Source: [dallavalle, range of 1.5 diameters]
    """
    return DALLAVALLE_DIAMETERS * positive("diameter", diameter, "m")


def dallavalle_plain(distance, area):
    """Velocity per flow before a plain round or nearly square opening: 1 / (10 x^2 + A).

    Parameters
    ----------
    distance : float or array [m]
    area : float or array, broadcast with `distance` [m2]

    Returns
    -------
    velocity_per_flow : broadcast shape [1/m2]

    Valid: up to 1.5 diameters of equal area, else RangeError is raised; short / long side of 0.2 or more.
    Source: [dallavalle, plain opening]
    """
    return 1 / _dallavalle_flow(distance, area)


def dallavalle_flanged(distance, area):
    """Velocity per flow before a round or nearly square opening with a full flange: 1 / (0.75 (10 x^2 + A)).

    Parameters
    ----------
    distance : float or array [m]
    area : float or array, broadcast with `distance` [m2]

    Returns
    -------
    velocity_per_flow : broadcast shape [1/m2]

    Valid: as `dallavalle_plain`, and a flange of `full_flange_width` all round.
    Source: [dallavalle, flanged opening]
    """
    return 1 / (0.75 * _dallavalle_flow(distance, area))


def fletcher_1977_reach(area):
    """Least and greatest distance at which Fletcher's law holds.

    Parameters
    ----------
    area : float or array, any shape [m2]

    Returns
    -------
    nearest, farthest : same shape as `area` [m]

    Valid: area above 0; else RangeError is raised.
    Source: [fletcher77, range of the law]
    """
    size = np.sqrt(positive("area", area, "m2"))
    return FLETCHER_1977_NEAREST * size, FLETCHER_1977_FARTHEST * size


def fletcher_1977_plain(distance, long_side, short_side):
    """Velocity per flow before a plain rectangular opening, square to slot.

    With z = x / sqrt(A), b = 0.2 z^(-1/3) and a = z (W/L)^-b: 1 / (A (0.93 + 8.58 a^2)).

    Parameters
    ----------
    distance : float or array [m]
    long_side, short_side : float or array, broadcast with `distance` [m]

    Returns
    -------
    velocity_per_flow : broadcast shape [1/m2]

    Valid: long side / short side 1 to 16, distance / sqrt(area) 0.05 to 3; outside this RangeError is raised.
    Source: [fletcher77, law for plain rectangles and slots]
    """
    length, width = positive("long side", long_side, "m"), positive("short side", short_side, "m")
    _check_aspect(length / width)
    area = length * width
    x = not_negative("distance", distance, "m")
    tail = f", the limit of [fletcher77, range of the law]; {BOUNDS}"
    within("distance", x, *fletcher_1977_reach(area), "m", tail)
    z = x / np.sqrt(area)
    a = z * (length / width) ** (0.2 * z ** (-1 / 3))
    return 1 / (area * (0.93 + 8.58 * a**2))


def flanged_rectangle(distance, long_side, short_side):
    """Velocity per flow before a rectangle in an endless flange, suction uniform over the opening.

    The velocity is the share of the half space, seen from the point, that the opening fills.

    Parameters
    ----------
    distance : float or array [m]
    long_side, short_side : float or array, broadcast with `distance` [m]

    Returns
    -------
    velocity_per_flow : broadcast shape [1/m2]

    Valid: any distance of 0 or more; below this RangeError is raised.
    Source: [potential-flow, rectangle in an infinite flange]
    """
    x = not_negative("distance", distance, "m")
    a, b = positive("long side", long_side, "m") / 2, positive("short side", short_side, "m") / 2
    share = 2 / np.pi * np.arctan2(a * b, x * np.sqrt(a**2 + b**2 + x**2))
    return share / (4 * a * b)


def flanged_disc_uniform(distance, diameter):
    """Velocity per flow before a round opening in an endless flange, suction uniform over the opening.

    Parameters
    ----------
    distance : float or array [m]
    diameter : float or array, broadcast with `distance` [m]

    Returns
    -------
    velocity_per_flow : broadcast shape [1/m2]

    Valid: any distance of 0 or more; below this RangeError is raised.
    Source: [potential-flow, disc of uniform suction in an infinite flange]
    """
    x, radius = not_negative("distance", distance, "m"), positive("diameter", diameter, "m") / 2
    rim = np.hypot(x, radius)
    return 1 / (np.pi * rim * (rim + x))


def flanged_disc_aperture(distance, diameter):
    """Velocity per flow before a round hole in an endless thin flange, suction strongest at its edge.

    A true opening lies between this and `flanged_disc_uniform`; at one diameter the two are 6 % apart.

    Parameters
    ----------
    distance : float or array [m]
    diameter : float or array, broadcast with `distance` [m]

    Returns
    -------
    velocity_per_flow : broadcast shape [1/m2]

    Valid: any distance of 0 or more; below this RangeError is raised. Half the mean velocity at the face.
    Source: [potential-flow, ideal aperture in an infinite flange]
    """
    x, radius = not_negative("distance", distance, "m"), positive("diameter", diameter, "m") / 2
    return 1 / (2 * np.pi * (radius**2 + x**2))


def far_field_least_flow(distance, image_offsets=()):
    """Flow that an opening needs at least, for each metre per second on its axis: 2 pi x^2 in the open.

    In the half space before the opening's plane the velocity on the axis is the sum of q x / (2 pi r^3) over
    the flow q that crosses that plane, r away. Since r is x or more, the opening's own share is at most
    Q / (2 pi x^2). Past the rim air comes forward from behind, which only takes away. Each plane alongside the
    axis adds a mirror image of the opening, and each pair of planes at right angles the image of an image.

    Parameters
    ----------
    distance : float or array, any shape [m]
    image_offsets : sequence of floats [m]
        How far beside the axis the mirror image of the opening lies, for each plane alongside: twice the
        distance of the plane.

    Returns
    -------
    flow_per_velocity : same shape as `distance` [m2]

    Valid: distance and offsets of 0 or more, planes at right angles to each other, still air, no other suction;
    else RangeError is raised. Two parallel planes close together help more than is counted here.
    Source: [potential-flow, bound by the nearest point]
    """
    x = not_negative("distance", distance, "m")
    offsets = not_negative("image offset", np.asarray(image_offsets, dtype=float), "m")
    subsets = (chosen for n in range(1, len(offsets) + 1) for chosen in combinations(offsets, n))
    help_ = sum(_image_share(x, np.hypot.reduce(chosen)) for chosen in subsets)
    return 2 * np.pi * x**2 / (1 + help_)


def _image_share(x, aside):
    """Velocity that an image draws on the axis, as a share of the opening's own."""
    reach = np.hypot(x, aside)
    return np.where(reach > 0, x, 1.0) ** 3 / np.where(reach > 0, reach, 1.0) ** 3


def far_field_most_flow(distance, half_diagonal):
    """Flow that is always enough, for each metre per second on the axis: 4 pi (x^2 + r^2)^1.5 / x.

    In open space each part of the opening draws x / (4 pi s^3) on the axis for each unit of its flow, at a
    distance s of at most sqrt(x^2 + r^2). So the bound holds for every shape, however the suction is spread;
    a flange, a duct behind or a plane alongside only lowers the need. Close to the opening it says little:
    below r / sqrt(2) it rises again.

    Parameters
    ----------
    distance : float or array [m]
    half_diagonal : float or array, broadcast with `distance` [m]
        From the axis to the farthest point of the opening: r; half the diameter if round.

    Returns
    -------
    flow_per_velocity : broadcast shape [m2]

    Valid: any distance above 0, nothing in the way, still air; else RangeError is raised.
    Source: [potential-flow, bound by the farthest point]
    """
    x, r = positive("distance", distance, "m"), positive("half diagonal", half_diagonal, "m")
    return 4 * np.pi * np.hypot(x, r) ** 3 / x


def _dallavalle_flow(distance, area):
    area = positive("area", area, "m2")
    tail = f", the limit of [dallavalle, range of 1.5 diameters]; {BOUNDS}"
    x = not_negative("distance", distance, "m")
    not_above("distance", x, dallavalle_reach(equal_area_diameter(area)), "m", tail)
    return 10 * x**2 + area


def _check_aspect(aspect):
    tail = ", the limit of [fletcher77, range of the law]; give the longer side first, or use another law"
    within("long side / short side", aspect, 1.0, FLETCHER_1977_LARGEST_ASPECT, "", tail)
