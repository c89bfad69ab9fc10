"""Static pressure where a duct changes its size in a cone. Angles are included angles, in degrees."""

import numpy as np

from hoodwright.errors import InputError
from hoodwright.ranges import not_negative
from hoodwright.tables import interpolate, load_table


def contraction_loss(angle):
    """Loss of a cone that narrows, in velocity pressures of its narrow end.

    The acceleration is not in it: that is `junction_acceleration_loss`.

    Parameters
    ----------
    angle : float or array, any shape [deg]
        Included angle of the cone.

    Returns
    -------
    loss : same shape as `angle` [velocity pressures]

    Valid: 30 to 60 degrees, straight lines between the rows; outside this RangeError is raised.
    Source: [duct-loss-table, contraction]
    """
    return interpolate(load_table("contraction"), "angle_deg", "loss_vp", angle)


def expansion_loss_share(angle):
    """Share of the drop of velocity pressure that a cone which widens loses.

    Parameters
    ----------
    angle : float or array, any shape [deg]
        Included angle of the cone.

    Returns
    -------
    share : same shape as `angle` [-]

    Valid: 5 to 40 degrees, straight lines between the rows; outside this RangeError is raised.
    Source: [duct-loss-table, expansion]
    """
    return interpolate(load_table("expansion"), "angle_deg", "loss_share_1", angle)


def static_regain(angle, p_velocity_before, p_velocity_behind):
    """Static pressure won back where air slows down in a cone, R = (1 - share lost) (VP1 - VP2).

    Parameters
    ----------
    angle : float or array, any shape [deg]
        Included angle of the cone.
    p_velocity_before : float or array, broadcast [Pa]
    p_velocity_behind : float or array, broadcast [Pa]

    Returns
    -------
    regain : broadcast shape [Pa]
        Positive: the static pressure behind is higher by it.

    Valid: 5 to 40 degrees, pressures 0 or more (else RangeError), the one behind not the greater (else InputError).
    Source: [duct-loss-table, expansion]
    """
    before = not_negative("velocity pressure before", p_velocity_before, "Pa")
    behind = not_negative("velocity pressure behind", p_velocity_behind, "Pa")
    if np.any(behind > before):
        raise InputError(
            f"velocity pressure behind {p_velocity_behind} Pa is above that before, {p_velocity_before} Pa: the duct "
            "narrows there, and nothing is won back; use contraction_loss"
        )
    return (1 - expansion_loss_share(angle)) * (before - behind)
