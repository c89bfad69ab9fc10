"""Losses of fittings in round ducts, as multiples of the velocity pressure.

Angles are in degrees, as the tables print them. Every number keeps the name of its table:
smooth and gored elbows, and the two rules for elbows of less than 90 degrees, are not the same.
"""

import numpy as np

from hoodwright.errors import RangeError
from hoodwright.ranges import not_negative, within
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
    radius_ratio : float or array, any shape [-]
        Radius of the centre line over the diameter.

    Returns
    -------
    loss : same shape as `radius_ratio` [velocity pressures]

    Valid: 3, 4 or 5 pieces; radius ratio 0.5 (3 pieces) or 0.75 (4 and 5) to 2.0, straight lines between the
    rows; outside this RangeError is raised.
    Source: [fitting-table, table A-7B]
    """
    table = load_table("elbow_gored")
    ratios, losses = gored_elbow_rows(pieces)
    tail = f", the rows of [{table.citation}] for {pieces} pieces; choose one inside or give the loss yourself"
    ratio = within("radius ratio", radius_ratio, ratios[0], ratios[-1], "", tail)
    found = np.interp(ratio, ratios, losses)
    return float(found) if found.ndim == 0 else found


def gored_elbow_rows(pieces):
    """Rows of the table of gored elbows for a number of pieces.

    Parameters
    ----------
    pieces : int
        Number of pieces.

    Returns
    -------
    radius_ratios, losses : (n,) arrays [-], [velocity pressures]

    Valid: 3, 4 or 5 pieces; RangeError for any other.
    Source: [fitting-table, table A-7B]
    """
    table = load_table("elbow_gored")
    count, ratios, losses = (np.array(table.columns[name]) for name in ("pieces_1", "radius_ratio_r_d", "loss_vp"))
    here = count == pieces
    if not here.any():
        known = ", ".join(f"{n:g}" for n in np.unique(count))
        raise RangeError(
            f"a gored elbow of {pieces} pieces is not in [{table.citation}]; it has {known} pieces; "
            "choose one of these or give the loss yourself"
        )
    return ratios[here], losses[here]


def elbow_angle_share(angle):
    """Share of the loss of a 90-degree elbow that a smaller turn has, angle / 90.

    This is the rule of the exhaust-ventilation sheets, for gored elbows: 30, 45 and 60 degrees are printed.

    Parameters
    ----------
    angle : float or array, any shape [deg]

    Returns
    -------
    share : same shape as `angle` [-]

    Valid: 0 to 90 degrees; outside this RangeError is raised.
    Source: [lev-worksheet, elbow loss factors]
    """
    return within("angle", angle, 0.0, 90.0, "deg", ", the limit of [lev-worksheet]; give the turn in degrees") / 90


def older_lev_elbow_loss(radius_ratio):
    """Loss of a round elbow of 90 degrees by the older table of the exhaust-ventilation sheets.

    It lies above the newer tables: kept for reading old calculations.

    Parameters
    ----------
    radius_ratio : float or array, any shape [-]
        Radius of the centre line over the diameter.

    Returns
    -------
    loss : same shape as `radius_ratio` [velocity pressures]

    Valid: radius ratio 1.25 to 2.5, straight lines between the rows; outside this RangeError is raised.
    Source: [lev-elbows-older, older table of elbow losses]
    """
    return interpolate(load_table("elbow_lev_older"), "radius_ratio_r_d", "loss_vp", radius_ratio)


def mitred_elbow_loss(angle):
    """Loss of a round elbow made of two pieces, without vanes.

    Parameters
    ----------
    angle : float or array, any shape [deg]

    Returns
    -------
    loss : same shape as `angle` [velocity pressures]

    Valid: 20 to 90 degrees, straight lines between the rows; outside this RangeError is raised. Reynolds numbers
    of 140 000 and more; see `mitred_elbow_reynolds_factor` below.
    Source: [fitting-table, table A-7C]
    """
    return interpolate(load_table("elbow_mitred"), "angle_deg", "loss_vp", angle)


def mitred_elbow_reynolds_factor(reynolds):
    """Factor on the loss of a mitred elbow, round or rectangular, at lower Reynolds numbers.

    Parameters
    ----------
    reynolds : float or array, any shape [-]

    Returns
    -------
    factor : same shape as `reynolds` [-]

    Valid: 10 000 and more, straight lines between the rows, 1 from 140 000; outside this RangeError is raised.
    Source: [fitting-table, table A-7C, note]
    """
    capped = np.minimum(np.asarray(reynolds, dtype=float) / 1e4, 14.0)
    return interpolate(load_table("elbow_mitred_reynolds"), "reynolds_1e4", "factor_1", capped)


def rounded_bend_loss(angle, radius_ratio, friction_factor):
    """Loss of a long smooth bend, its own friction counted in.

    For bends wider than the table of smooth elbows holds, such as a hose laid in a curve.

    Parameters
    ----------
    angle : float or array, any shape [deg]
    radius_ratio : float or array, broadcast with `angle` [-]
        Radius of the centre line over the diameter.
    friction_factor : float or array, broadcast with `angle` [-]
        Darcy friction factor.

    Returns
    -------
    loss : broadcast shape [velocity pressures]

    Valid: 0 to 180 degrees, radius ratio 1 to 20 (our limits; the source prints none), friction factor 0 or more;
    outside this RangeError is raised.
    Source: [rennels-bend, rounded bend]
    """
    tail = ", the limit of our use of [rennels-bend]; give the loss yourself"
    turn = np.radians(within("angle", angle, 0.0, 180.0, "deg", tail))
    ratio = within("radius ratio", radius_ratio, 1.0, 20.0, "", tail)
    f = not_negative("friction factor", friction_factor, "")
    half = np.sin(turn / 2)
    walls = 6.6 * f * (np.sqrt(half) + half) / ratio ** (4 * turn / np.pi)
    return f * turn * ratio + (0.10 + 2.4 * f) * half + walls


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


def weather_cap_loss(gap):
    """Loss of a flat weather cap over a stack, beyond the velocity pressure that leaves it.

    Parameters
    ----------
    gap : float or array, any shape [diameters of the stack]
        Free height between the stack and its cap.

    Returns
    -------
    loss : same shape as `gap` [velocity pressures]

    Valid: 0.45 to 1 diameter, straight lines between the rows; outside this RangeError is raised.
    Source: [lev-caps, weather cap by its gap]
    """
    return interpolate(load_table("weather_cap"), "gap_d", "loss_vp", gap)
