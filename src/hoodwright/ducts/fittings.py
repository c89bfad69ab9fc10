"""Losses of duct fittings, as multiples of the velocity pressure.

Angles are in degrees, as the tables print them. Every number keeps the name of its table:
smooth and gored elbows, and the two rules for elbows of less than 90 degrees, are not the same.
"""

from hoodwright.errors import RangeError
from hoodwright.ranges import within
from hoodwright.tables import interpolate, load_table

# A free jet keeps its velocity pressure and the room takes all of it. Counted in total pressure:
# in static pressure the end of the stack is simply 0.
STACK_EXIT_LOSS = 1.0


def smooth_elbow_loss(radius_ratio):
    """Loss of a smooth round elbow of 90 degrees.

    Parameters
    ----------
    radius_ratio : float or array, any shape [-]
        Radius of the centre line over the diameter.

    Returns
    -------
    loss : same shape as `radius_ratio` [velocity pressures]

    Valid: radius ratio 0.5 to 2.5, straight lines between the rows; outside this RangeError is raised.
    Source: [fitting-table, table A-7A]
    """
    return interpolate(load_table("elbow_smooth"), "radius_ratio_r_d", "loss_vp", radius_ratio)


def elbow_angle_factor(angle):
    """Factor on the loss of a smooth elbow that turns by less than 90 degrees.

    Parameters
    ----------
    angle : float or array, any shape [deg]

    Returns
    -------
    factor : same shape as `angle` [-]

    Valid: 20 to 90 degrees, straight lines between the rows; outside this RangeError is raised.
    Source: [fitting-table, table A-7A, note]
    """
    return interpolate(load_table("elbow_angle"), "angle_deg", "factor_1", angle)


def gored_elbow_loss(pieces, radius_ratio):
    """Loss of a round elbow of 90 degrees made of cut pieces (gores).

    Parameters
    ----------
    pieces : int
        Number of pieces.
    radius_ratio : float [-]
        Radius of the centre line over the diameter.

    Returns
    -------
    loss : float [velocity pressures]

    Valid: 4 or 5 pieces at a radius ratio of 1.5; RangeError for any other.
    Source: [lev-elbows, elbow loss by number of pieces]
    """
    table = load_table("elbow_gored")
    columns = table.columns
    rows = zip(columns["pieces_1"], columns["radius_ratio_r_d"], columns["loss_vp"], strict=True)
    losses = {(n, ratio): loss for n, ratio, loss in rows}
    if (pieces, radius_ratio) not in losses:
        known = ", ".join(f"{n:g} pieces at {ratio:g}" for n, ratio in losses)
        raise RangeError(
            f"gored elbow of {pieces} pieces at radius ratio {radius_ratio:g} is not in [{table.citation}]; "
            f"it has: {known}; choose one of these or give the loss yourself"
        )
    return losses[pieces, radius_ratio]


def elbow_angle_share(angle):
    """Share of the loss of a 90-degree elbow that a smaller turn has, angle / 90.

    This is the rule of the exhaust-ventilation sheets, for gored elbows.

    Parameters
    ----------
    angle : float or array, any shape [deg]

    Returns
    -------
    share : same shape as `angle` [-]

    Valid: 0 to 90 degrees; outside this RangeError is raised.
    Source: [lev-elbows, footnote on elbows of less than 90 degrees]
    """
    return within("angle", angle, 0.0, 90.0, "deg", ", the limit of [lev-elbows]; give the turn in degrees") / 90


def mitred_elbow_loss(angle):
    """Loss of a round elbow made of two pieces, without vanes.

    Parameters
    ----------
    angle : float or array, any shape [deg]

    Returns
    -------
    loss : same shape as `angle` [velocity pressures]

    Valid: 45 to 90 degrees, a straight line between the two rows; outside this RangeError is raised.
    Source: [fitting-table, table A-7C]
    """
    return interpolate(load_table("elbow_mitred"), "angle_deg", "loss_vp", angle)


def branch_entry_loss(angle):
    """Loss of a branch where it enters a main duct, on the velocity pressure of the branch.

    Parameters
    ----------
    angle : float or array, any shape [deg]
        Angle between branch and main; a small one joins gently.

    Returns
    -------
    loss : same shape as `angle` [velocity pressures]

    Valid: 10 to 90 degrees, straight lines between the rows; outside this RangeError is raised.
    Source: [lev-elbows, branch-entry loss]
    """
    return interpolate(load_table("branch_entry"), "angle_deg", "loss_vp", angle)
