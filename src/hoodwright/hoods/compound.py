"""Compound hoods: slots in front of a plenum, and a duct behind it.

The air is lost on twice: into the slots and into the duct. It is accelerated once, to the faster of the two.
"""

import numpy as np

from hoodwright.air import velocity_pressure
from hoodwright.ranges import not_negative, positive

SLOT_LOSS = 1.78  # velocity pressures of the slot; a sharp-edged opening in a plate
EVEN_FLOW_RATIO = 2.0  # slot velocity over plenum velocity, at least


def compound_hood_suction(flow, slot_area, duct_area, duct_loss, density, slot_loss=SLOT_LOSS):
    """Suction in the duct behind slots and plenum, as a positive magnitude: Fs VPs + Fd VPd + the greater VP.

    Parameters
    ----------
    flow : float or array [m3/s]
    slot_area : float or array, broadcast with the others [m2]
        Of all slots together.
    duct_area : float or array, broadcast with the others [m2]
    duct_loss : float or array, broadcast with the others [1]
        From the plenum into the duct, in velocity pressures of the duct.
    density : float or array, broadcast with the others [kg/m3]
    slot_loss : float or array, broadcast with the others [1]
        Into the slots, in velocity pressures of the slots.

    Returns
    -------
    p_suction : broadcast shape [Pa]

    Valid: flow and losses of 0 or more, areas and density above 0; else RangeError is raised. The velocity in the
    plenum is taken as lost.
    Source: [hood-figure, compound hoods]
    """
    flow = not_negative("flow", flow, "m3/s")
    p_slot = velocity_pressure(flow / positive("slot area", slot_area, "m2"), density)
    p_duct = velocity_pressure(flow / positive("duct area", duct_area, "m2"), density)
    slot_loss, duct_loss = not_negative("slot loss", slot_loss, ""), not_negative("duct loss", duct_loss, "")
    return slot_loss * p_slot + duct_loss * p_duct + np.maximum(p_slot, p_duct)


def compound_entry_loss(slot_area, duct_area, duct_loss, slot_loss=SLOT_LOSS):
    """The one loss coefficient that a compound hood has, in velocity pressures of its duct.

    With it `hood_suction` and `flow_from_suction` hold for the compound hood too: areas alone decide it.

    Parameters
    ----------
    slot_area : float or array [m2]
        Of all slots together.
    duct_area : float or array, broadcast with the others [m2]
    duct_loss : float or array, broadcast with the others [1]
    slot_loss : float or array, broadcast with the others [1]

    Returns
    -------
    loss_coefficient : broadcast shape [1]

    Valid: losses of 0 or more, areas above 0; else RangeError is raised.
    Source: [hood-figure, compound hoods]
    """
    share = (positive("duct area", duct_area, "m2") / positive("slot area", slot_area, "m2")) ** 2
    slot_loss, duct_loss = not_negative("slot loss", slot_loss, ""), not_negative("duct loss", duct_loss, "")
    return slot_loss * share + duct_loss + np.maximum(share, 1.0) - 1.0


def even_flow_ratio(slot_area, plenum_area):
    """Velocity in the slots over that in the plenum; from `EVEN_FLOW_RATIO` the slots share the flow evenly.

    Parameters
    ----------
    slot_area : float or array [m2]
        Of all slots together.
    plenum_area : float or array, broadcast with the other [m2]
        Section of the plenum across its flow, where all the air has come in.

    Returns
    -------
    ratio : broadcast shape [1]

    Valid: areas above 0; else RangeError is raised.
    Source: [even-flow, plenum velocity at most half the slot velocity]
    """
    return positive("plenum area", plenum_area, "m2") / positive("slot area", slot_area, "m2")
