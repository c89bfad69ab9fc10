"""Push-pull: a slot blows a flat jet across the work, and a hood on the other side takes it in.

The jet drags air along, so its flow grows with the square root of the distance while its momentum stays. A hood
that takes less than the jet brings spills what the jet has gathered.
"""

import numpy as np

from hoodwright.ranges import not_negative, positive
from hoodwright.tables import load_table

CORE = 5.2  # slot widths, as long as the jet keeps its speed on the axis
JET_VELOCITY, JET_FLOW = 2.28, 0.62
CORE_GROWTH = 0.080  # of the flow, a slot width
EXHAUST_PER_JET = (1.5, 2.0)
REACH = 6.0  # slot lengths
HOOD_SPREAD = np.tan(np.radians(10.0))  # height of the hood's opening for each metre of throw

FOOT = 0.3048
CFM_A_SQUARE_FOOT = FOOT / 60  # m/s
TANK_EXHAUST = (100 * CFM_A_SQUARE_FOOT, 150 * CFM_A_SQUARE_FOOT)
TANK_PUSH = 243 * FOOT / 60 * FOOT**0.5  # m2/s for a nozzle of 1 m2 a metre


def plane_jet_velocity(distance, slot_width):
    """Velocity on the axis of a flat jet, over its velocity at the slot: 2.28 sqrt(b / x) beyond the core.

    Parameters
    ----------
    distance : float or array [m]
        From the slot.
    slot_width : float or array, broadcast with `distance` [m]

    Returns
    -------
    share : broadcast shape [1]

    Valid: distance of 0 or more, width above 0; else RangeError is raised. Free air on both sides, long slot.
    Source: [albertson50, slot jet]
    """
    widths = not_negative("distance", distance, "m") / positive("slot width", slot_width, "m")
    return np.where(widths < CORE, 1.0, JET_VELOCITY / np.sqrt(np.maximum(widths, CORE)))[()]


def plane_jet_flow(distance, slot_width):
    """Flow of a flat jet over the flow that its slot blows: 0.62 sqrt(x / b) beyond the core.

    Parameters
    ----------
    distance : float or array [m]
        From the slot.
    slot_width : float or array, broadcast with `distance` [m]

    Returns
    -------
    ratio : broadcast shape [1]

    Valid: distance of 0 or more, width above 0; else RangeError is raised. Free air on both sides, long slot.
    Source: [albertson50, slot jet]
    """
    widths = not_negative("distance", distance, "m") / positive("slot width", slot_width, "m")
    return np.where(widths < CORE, 1 + CORE_GROWTH * widths, JET_FLOW * np.sqrt(np.maximum(widths, CORE)))[()]


def half_jet_flow(distance, slot_width):
    """Flow of a jet that clings to a surface, over the flow of its slot: that of a free jet from twice the width.

    The surface acts as a mirror; its friction is left out.

    Parameters
    ----------
    distance : float or array [m]
        From the slot.
    slot_width : float or array, broadcast with `distance` [m]

    Returns
    -------
    ratio : broadcast shape [1]

    Valid: as `plane_jet_flow`, with a flat surface or liquid alongside.
    Source: [albertson50, slot jet, mirrored]
    """
    return plane_jet_flow(distance, 2 * positive("slot width", slot_width, "m"))


def plane_jet_force(flow, slot_area, density):
    """Momentum that a slot gives to the air each second, and that its jet keeps: rho Q^2 / A.

    Parameters
    ----------
    flow : float or array [m3/s]
    slot_area : float or array, broadcast with the others [m2]
    density : float or array, broadcast with the others [kg/m3]

    Returns
    -------
    force : broadcast shape [N]

    Valid: flow of 0 or more, area and density above 0; else RangeError is raised.
    Source: [albertson50, conservation of momentum]
    """
    flow = not_negative("flow", flow, "m3/s")
    return positive("density", density, "kg/m3") * flow**2 / positive("slot area", slot_area, "m2")


def push_pull_exhaust(jet_flow):
    """Range of exhaust flow for a jet that arrives with `jet_flow`: 1.5 to 2 times as much.

    Parameters
    ----------
    jet_flow : float or array, any shape [m3/s]
        Of the jet where it reaches the hood.

    Returns
    -------
    low, high : same shape as `jet_flow` [m3/s]

    Valid: flow above 0; else RangeError is raised.
    Source: [niosh-push-pull, abstract]
    """
    jet_flow = positive("jet flow", jet_flow, "m3/s")
    return EXHAUST_PER_JET[0] * jet_flow, EXHAUST_PER_JET[1] * jet_flow


def push_reach(slot_length):
    """Longest throw of a push jet that was found satisfactory: six slot lengths.

    Parameters
    ----------
    slot_length : float or array, any shape [m]

    Returns
    -------
    distance : same shape as `slot_length` [m]

    Valid: length above 0; else RangeError is raised.
    Source: [niosh-push-pull, abstract]
    """
    return REACH * positive("slot length", slot_length, "m")


def push_pull_hood_height(distance):
    """Height of the hood's opening that takes the spread of the jet: tan(10 degrees) of the throw.

    Parameters
    ----------
    distance : float or array, any shape [m]
        From the slot to the hood.

    Returns
    -------
    height : same shape as `distance` [m]

    Valid: distance above 0; else RangeError is raised.
    Source: [push-pull-figure, hood height]
    """
    return HOOD_SPREAD * positive("distance", distance, "m")


def push_flow_of_figure(exhaust_flow, distance):
    """Flow to push for a given exhaust, by the figure: Q1 = Q2 / (D E), D in feet, E by the throw.

    Parameters
    ----------
    exhaust_flow : float or array [m3/s]
    distance : float or array, broadcast with `exhaust_flow` [m]
        From the slot to the hood.

    Returns
    -------
    flow : broadcast shape [m3/s]

    Valid: both above 0; else RangeError is raised.
    Source: [push-pull-figure, entrainment factor]
    """
    feet = positive("distance", distance, "m") / FOOT
    table = load_table("push_entrainment")
    rows = np.searchsorted(table.columns["from_ft"], feet + 1e-9, side="right") - 1
    factor = np.asarray(table.columns["factor"])[rows]
    return positive("exhaust flow", exhaust_flow, "m3/s") / (feet * factor)


def push_pull_tank_exhaust(tank_area):
    """Range of exhaust flow of a push-pull tank: 100 to 150 cfm for each square foot of its surface.

    Parameters
    ----------
    tank_area : float or array, any shape [m2]

    Returns
    -------
    low, high : same shape as `tank_area` [m3/s]

    Valid: area above 0; else RangeError is raised. Depends on temperature and how much is drawn aside.
    Source: [push-pull-figure, quantity exhausted]
    """
    area = positive("tank area", tank_area, "m2")
    return TANK_EXHAUST[0] * area, TANK_EXHAUST[1] * area


def tank_push_flow(nozzle_area, length):
    """Flow to push over an open tank: 243 sqrt(A) cfm for each foot, A the nozzle's area for each foot.

    Parameters
    ----------
    nozzle_area : float or array [m2]
        Of slot or holes, all together.
    length : float or array, broadcast with `nozzle_area` [m]
        Of the nozzle, along the tank.

    Returns
    -------
    flow : broadcast shape [m3/s]

    Valid: both above 0; else RangeError is raised.
    Source: [iv-manual-memory, push nozzle of open tanks]
    """
    length = positive("length", length, "m")
    return TANK_PUSH * length * np.sqrt(positive("nozzle area", nozzle_area, "m2") / length)
