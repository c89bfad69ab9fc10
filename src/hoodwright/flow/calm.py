"""How walls and hood faces calm the turbulence of the room near them."""

import numpy as np

from hoodwright.ranges import positive


def calm_air(distance, eddy):
    """Share of the room's turbulence that is left: it fades evenly within one eddy of a wall or a hood's face.

    Parameters
    ----------
    distance : array, any shape [m]
        To the nearest wall or hood face.
    eddy : float [m]
        Size of an eddy.

    Returns
    -------
    share : same shape as `distance` [1]

    Valid: eddy above 0; else RangeError is raised. Of the same size in all directions, which a wall's is not.
    Source: [hunt-graham78, turbulence beside a wall]
    """
    size = float(positive("size of an eddy", eddy, "m"))
    return np.minimum(np.asarray(distance, np.float32) / np.float32(size), np.float32(1.0))
