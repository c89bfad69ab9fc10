"""What air loses on entering a hood, and the flow told from the suction that this makes.

The loss refers to the velocity pressure in the duct behind the hood. Hood suction is a positive magnitude:
the static pressure there is its negative. It holds the acceleration of the air as well as the loss.
"""

import numpy as np

from hoodwright.air import velocity_from_pressure, velocity_pressure
from hoodwright.ranges import not_negative, positive
from hoodwright.tables import load_table


def entry_loss_coefficient(shape):
    """Loss on entering a hood, in velocity pressures of its duct.

    Parameters
    ----------
    shape : str
        plain, flanged, bell mouth, or another row of the table.

    Returns
    -------
    loss_coefficient : float [1]

    Valid: the rows of the table; any other word raises InputError.
    Source: [exam-equations, hood-loss figure]
    """
    return load_table("hood_entry_loss").row("hood", shape)["loss_vp"]


def entry_coefficient(loss_coefficient):
    """Share of the flow of a lossless hood, at the same suction: 1 / sqrt(1 + F).

    Parameters
    ----------
    loss_coefficient : float or array, any shape [1]

    Returns
    -------
    entry_coefficient : same shape as `loss_coefficient` [1]

    Valid: loss coefficient of 0 or more; below this RangeError is raised.
    Source: [exam-equations, coefficient of entry]
    """
    return 1 / np.sqrt(1 + not_negative("entry loss coefficient", loss_coefficient, ""))


def hood_suction(flow, duct_area, loss_coefficient, density):
    """Suction in the duct behind a hood, as a positive magnitude.

    Parameters
    ----------
    flow : float or array [m3/s]
    duct_area : float or array, broadcast with the others [m2]
    loss_coefficient : float or array, broadcast with the others [1]
    density : float or array, broadcast with the others [kg/m3]
        In the duct.

    Returns
    -------
    p_suction : broadcast shape [Pa]

    Valid: flow and loss of 0 or more, area and density above 0; else RangeError is raised.
    Source: [iv-problem-set, hood static pressure]
    """
    velocity = not_negative("flow", flow, "m3/s") / positive("duct area", duct_area, "m2")
    return velocity_pressure(velocity, density) / entry_coefficient(loss_coefficient) ** 2


def flow_from_suction(p_suction, duct_area, loss_coefficient, density):
    """Flow of a hood, from the suction in the duct behind it.

    Subtract the friction between hood and tap from the reading first.

    Parameters
    ----------
    p_suction : float or array [Pa]
        Positive magnitude.
    duct_area : float or array, broadcast with the others [m2]
    loss_coefficient : float or array, broadcast with the others [1]
    density : float or array, broadcast with the others [kg/m3]
        In the duct.

    Returns
    -------
    flow : broadcast shape [m3/s]

    Valid: suction and loss of 0 or more, area and density above 0; else RangeError is raised.
    Source: [exam-equations, flow from hood static pressure]
    """
    p_suction = not_negative("hood suction", p_suction, "Pa")
    velocity = entry_coefficient(loss_coefficient) * velocity_from_pressure(p_suction, density)
    return positive("duct area", duct_area, "m2") * velocity
