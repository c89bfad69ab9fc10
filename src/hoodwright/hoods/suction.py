"""Hood suction, and the flow told from it.

Hood suction is a positive magnitude: the static pressure in the duct is its negative. It holds the acceleration of
the air, the loss on entering, the friction as far as the tap, and what a screen or filter in the hood takes.
"""

import numpy as np

from hoodwright.air import velocity_from_pressure, velocity_pressure
from hoodwright.errors import InputError
from hoodwright.ranges import not_negative, positive, within

# Duct diameters from the hood to the tap: behind a taper the air has settled sooner.
TAP_DIAMETERS = {"tapered": (2.0, 4.0), "flat": (4.0, 6.0)}
STEEPEST_FILTER = 3.0
BISECTIONS = 200


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
    """Flow of a hood, from the suction in the duct right behind it.

    A tap stands some way along the duct: use `flow_from_tap` for its reading.

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


def tap_distance_range(entry, diameter):
    """Nearest and farthest good place of a suction tap, along the duct from the hood.

    Parameters
    ----------
    entry : str
        tapered, or flat for a plain or flanged opening.
    diameter : float or array, any shape [m]

    Returns
    -------
    nearest, farthest : same shape as `diameter` [m]

    Valid: diameter above 0, else RangeError is raised; any other word raises InputError. No elbow, damper or
    junction between hood and tap.
    Source: [tap-rule, diameters behind the hood]
    """
    diameter = positive("duct diameter", diameter, "m")
    if entry not in TAP_DIAMETERS:
        raise InputError(f"entry {entry!r} is not in the rule of the tap; choose one of: {', '.join(TAP_DIAMETERS)}")
    near, far = TAP_DIAMETERS[entry]
    return near * diameter, far * diameter


def friction_to_tap(friction_factor, distance, diameter):
    """Friction between hood and tap, in velocity pressures of the duct: f L / D.

    Parameters
    ----------
    friction_factor : float or array [1]
        Darcy's, four times Fanning's.
    distance : float or array, broadcast with the others [m]
    diameter : float or array, broadcast with the others [m]

    Returns
    -------
    loss_coefficient : broadcast shape [1]

    Valid: factor and distance of 0 or more, diameter above 0; else RangeError is raised.
    Source: [colebrook39, Darcy's friction factor]
    """
    factor = not_negative("friction factor", friction_factor, "")
    return factor * not_negative("tap distance", distance, "m") / positive("duct diameter", diameter, "m")


def suction_at_tap(flow, duct_area, loss_coefficient, tap_friction, density):
    """What a tap reads: hood suction and the friction up to the tap.

    Parameters
    ----------
    flow : float or array [m3/s]
    duct_area : float or array, broadcast with the others [m2]
    loss_coefficient : float or array, broadcast with the others [1]
    tap_friction : float or array, broadcast with the others [1]
        Of `friction_to_tap`.
    density : float or array, broadcast with the others [kg/m3]

    Returns
    -------
    p_suction : broadcast shape [Pa]

    Valid: flow, loss and friction of 0 or more, area and density above 0; else RangeError is raised.
    Source: [iv-problem-set, hood static pressure]
    """
    friction = not_negative("friction up to the tap", tap_friction, "")
    return hood_suction(
        flow, duct_area, not_negative("entry loss coefficient", loss_coefficient, "") + friction, density
    )


def flow_from_tap(p_at_tap, duct_area, loss_coefficient, tap_friction, density):
    """Flow of a hood, from the reading of a tap with the friction up to it taken off.

    Parameters
    ----------
    p_at_tap : float or array [Pa]
        Positive magnitude.
    duct_area : float or array, broadcast with the others [m2]
    loss_coefficient : float or array, broadcast with the others [1]
    tap_friction : float or array, broadcast with the others [1]
        Of `friction_to_tap`; 0 right behind the hood.
    density : float or array, broadcast with the others [kg/m3]

    Returns
    -------
    flow : broadcast shape [m3/s]

    Valid: reading, loss and friction of 0 or more, area and density above 0; else RangeError is raised.
    Source: [exam-equations, flow from hood static pressure]
    """
    friction = not_negative("friction up to the tap", tap_friction, "")
    loss = not_negative("entry loss coefficient", loss_coefficient, "") + friction
    return flow_from_suction(p_at_tap, duct_area, loss, density)


def hood_filter_loss(flow, rated_loss, rated_flow, exponent):
    """Pressure that a screen or filter in the hood takes: rated x (Q / Q rated)^n.

    Parameters
    ----------
    flow : float or array [m3/s]
    rated_loss : float or array, broadcast with the others [Pa]
    rated_flow : float or array, broadcast with the others [m3/s]
    exponent : float or array, broadcast with the others [1]
        1 for a fine filter, 2 for a screen or baffles.

    Returns
    -------
    p_loss : broadcast shape [Pa]

    Valid: flow and loss of 0 or more, rated flow above 0, exponent 0 to 3; else RangeError is raised.
    Source: [common-practice, resistance at a flow]
    """
    share = not_negative("flow", flow, "m3/s") / positive("rated flow", rated_flow, "m3/s")
    power = within("exponent", exponent, 0.0, STEEPEST_FILTER, "", "; a filter has about 1, a screen 2")
    return not_negative("rated loss", rated_loss, "Pa") * share**power


def flow_through_filter_from_suction(p_suction, duct_area, loss_coefficient, density, rated_loss, rated_flow, exponent):
    """Flow of a hood with a screen or filter in it, from the suction behind both.

    Parameters
    ----------
    p_suction : float or array [Pa]
        Positive magnitude, right behind the hood.
    duct_area : float or array, broadcast with the others [m2]
    loss_coefficient : float or array, broadcast with the others [1]
        Without the filter; add `friction_to_tap` for a tap farther on.
    density : float or array, broadcast with the others [kg/m3]
    rated_loss : float or array, broadcast with the others [Pa]
        Of the filter as it is today.
    rated_flow : float or array, broadcast with the others [m3/s]
    exponent : float or array, broadcast with the others [1]

    Returns
    -------
    flow : broadcast shape [m3/s]

    Valid: as `flow_from_suction` and `hood_filter_loss`; else RangeError is raised.
    Source: [iv-problem-set, hood static pressure; common-practice, resistance at a flow]
    """
    most = flow_from_suction(p_suction, duct_area, loss_coefficient, density)
    hood_filter_loss(most, rated_loss, rated_flow, exponent)
    inputs = np.broadcast_arrays(
        *(np.asarray(x, float) for x in (p_suction, duct_area, loss_coefficient, density, rated_loss, rated_flow)),
        np.asarray(exponent, float),
        most,
    )
    p_suction, duct_area, loss_coefficient, density, rated_loss, rated_flow, exponent, most = inputs
    low, high = np.zeros_like(most), np.array(most)
    for _ in range(BISECTIONS):  # what is taken grows with flow: one root between 0 and the flow without a filter
        middle = (low + high) / 2
        taken = hood_suction(middle, duct_area, loss_coefficient, density)
        taken = taken + hood_filter_loss(middle, rated_loss, rated_flow, exponent)
        low, high = np.where(taken > p_suction, low, middle), np.where(taken > p_suction, middle, high)
    flow = (low + high) / 2
    return float(flow) if flow.ndim == 0 else flow
