"""Losses of elbows in rectangular ducts, as multiples of the velocity pressure."""

import numpy as np

from hoodwright.ranges import within
from hoodwright.tables import Table, load_table


def rectangular_elbow_loss(width_ratio, radius_ratio):
    """Loss of a smooth rectangular elbow of 90 degrees without vanes.

    Parameters
    ----------
    width_ratio : float or array, any shape [-]
        Side along the axis of the turn over the side in the plane of the turn.
    radius_ratio : float or array, broadcast with `width_ratio` [-]
        Radius of the centre line over the side in the plane of the turn.

    Returns
    -------
    loss : broadcast shape [velocity pressures]

    Valid: width ratio 0.5 to 3, radius ratio 0.5 to 1.5, straight lines between the rows; outside this
    RangeError is raised.
    Source: [duct-loss-table, rectangular elbow]
    """
    return _between(load_table("elbow_rectangular"), "width_ratio_w_d", width_ratio, "radius_ratio_r_d", radius_ratio)


def rectangular_mitred_elbow_loss(angle, height_ratio):
    """Loss of a mitred rectangular elbow, without vanes.

    Parameters
    ----------
    angle : float or array, any shape [deg]
    height_ratio : float or array, broadcast with `angle` [-]
        Side along the axis of the turn over the side in the plane of the turn.

    Returns
    -------
    loss : broadcast shape [velocity pressures]

    Valid: 20 to 90 degrees, height ratio 0.25 to 8, straight lines between the rows; outside this RangeError is
    raised. Reynolds numbers of 140 000 and more; see `mitred_elbow_reynolds_factor` below.
    Source: [fitting-table, table A-7D]
    """
    return _between(load_table("elbow_rectangular_mitred"), "angle_deg", angle, "height_ratio_h_w", height_ratio)


def _between(table: Table, x_column: str, x, y_column: str, y):
    """Straight lines between the rows of a table with two axes, every pair of them printed."""
    xs, ys = (np.unique(table.columns[column]) for column in (x_column, y_column))
    grid = np.reshape(table.columns["loss_vp"], (len(xs), len(ys)))
    tail = f", the rows of [{table.citation}]; choose one inside or give the loss yourself"
    x = within(x_column.rsplit("_", 2)[0].replace("_", " "), x, xs[0], xs[-1], "", tail)
    y = within(y_column.rsplit("_", 2)[0].replace("_", " "), y, ys[0], ys[-1], "", tail)
    x, y = np.broadcast_arrays(x, y)
    i = np.clip(np.searchsorted(xs, x, side="right") - 1, 0, len(xs) - 2)
    rows = np.stack([np.interp(y, ys, row) for row in grid])
    lower, upper = (np.take_along_axis(rows, (i + step)[None, ...], axis=0)[0] for step in (0, 1))
    found = lower + (x - xs[i]) / (xs[i + 1] - xs[i]) * (upper - lower)
    return float(found) if found.ndim == 0 else found
