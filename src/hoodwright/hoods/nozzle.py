"""Air speed before a round nozzle by fits to measurements, in shares of the mean velocity at its face.

Each law has a near and a far piece which do not quite meet at half a diameter: the step is the source's.
"""

import numpy as np

from hoodwright.hoods.centreline import BOUNDS
from hoodwright.ranges import not_negative, positive, within

GARRISON_1983_DIAMETERS = 1.5
NEAR_END = 0.5  # diameters


def garrison_1983_plain(distance, diameter):
    """Velocity per flow before a plain round nozzle: 1.1 (0.06)^(x/D), and 0.08 (x/D)^-1.7 beyond 0.5 D.

    Parameters
    ----------
    distance : float or array [m]
    diameter : float or array, broadcast with `distance` [m]

    Returns
    -------
    velocity_per_flow : broadcast shape [1/m2]

    Valid: up to 1.5 diameters; outside this RangeError is raised.
    Source: [garrison83, plain round nozzle]
    """
    return _fit(distance, diameter, (1.1, 0.06), (0.08, -1.7))


def garrison_1983_flanged(distance, diameter):
    """Velocity per flow before a flanged round nozzle: 1.1 (0.07)^(x/D), and 0.10 (x/D)^-1.6 beyond 0.5 D.

    Parameters
    ----------
    distance : float or array [m]
    diameter : float or array, broadcast with `distance` [m]

    Returns
    -------
    velocity_per_flow : broadcast shape [1/m2]

    Valid: up to 1.5 diameters; outside this RangeError is raised.
    Source: [garrison83, flanged round nozzle]
    """
    return _fit(distance, diameter, (1.1, 0.07), (0.10, -1.6))


def _fit(distance, diameter, near, far):
    d = positive("diameter", diameter, "m")
    z = not_negative("distance", distance, "m") / d
    tail = f" diameters, the limit of [garrison83, range]; {BOUNDS}"
    within("distance", z, 0.0, GARRISON_1983_DIAMETERS, "", tail)
    share = np.where(z <= NEAR_END, near[0] * near[1] ** z, far[0] * np.maximum(z, NEAR_END) ** far[1])
    return share / (np.pi / 4 * d**2)
