"""One converging run of ducts from a hood to a fan, by the hand method.

The hand method keeps account of static pressure: it starts behind the hood at -(1 + F) VP, takes
off the loss of each duct, and asks that both sides of a junction arrive with the same static
pressure. A network balances total pressure instead. The two agree where the velocity does not
change; where it rises the hand method takes off the acceleration, where it falls it counts no regain.
Static pressures are gauge and signed: suction is negative. Losses are positive.
"""

from enum import StrEnum

import numpy as np

from hoodwright.ducts.friction import pressure_loss
from hoodwright.errors import InputError, RangeError
from hoodwright.ranges import not_negative, positive, within

CORRECT_FROM = 0.80
LEAVE_ABOVE = 0.95


class BalanceAdvice(StrEnum):
    """What the hand method does with two sides of a junction."""

    LEAVE = "leave both sides as they are"
    CORRECT = "correct the flow of the side with less suction"
    RESIZE = "choose another size for one side"


def static_pressure_behind_hood(entry_loss, p_velocity):
    """Static pressure in the duct just behind a hood, -(1 + F) VP.

    Parameters
    ----------
    entry_loss : float or array, any shape [velocity pressures]
    p_velocity : float or array, broadcast with `entry_loss` [Pa]
        Of the duct.

    Returns
    -------
    p_static : broadcast shape [Pa]
        Negative, as it is suction.

    Valid: both 0 or more; outside this RangeError is raised.
    Source: [exam-equations, hood static pressure]
    """
    factor = not_negative("entry loss", entry_loss, "")
    return -(1 + factor) * not_negative("velocity pressure", p_velocity, "Pa")


def duct_static_loss(p_velocity, friction_factor, length, diameter, fitting_loss=0.0):
    """Static pressure lost along one duct of constant size: friction and fittings.

    Parameters
    ----------
    p_velocity : float or array, any shape [Pa]
    friction_factor : float or array, broadcast [-]
        Darcy friction factor.
    length : float or array, broadcast [m]
    diameter : float or array, broadcast [m]
    fitting_loss : float or array, broadcast [velocity pressures]
        Sum of the losses of all fittings of this duct.

    Returns
    -------
    loss : broadcast shape [Pa]
        Positive.

    Valid: diameter above 0, the others 0 or more; outside this RangeError is raised.
    Source: [cengel-fm, ex. 14-1]
    """
    friction = pressure_loss(friction_factor, length, diameter, p_velocity)
    return friction + not_negative("fitting loss", fitting_loss, "") * np.asarray(p_velocity, dtype=float)


def static_pressure_along_run(p_static_start, losses):
    """Static pressure at the end of each duct of a run.

    Parameters
    ----------
    p_static_start : float [Pa]
        Just behind the hood; suction is negative.
    losses : (n_ducts,) array [Pa]
        Positive, in the order of the flow, accelerations among them.

    Returns
    -------
    p_static : (n_ducts,) array [Pa]

    Valid: losses 0 or more; outside this RangeError is raised.
    Source: [balance-rule, sum of losses along a run]
    """
    return p_static_start - np.cumsum(not_negative("loss", losses, "Pa"))


def balance_ratio(p_static_a, p_static_b):
    """How well two sides of a junction agree: the lesser suction over the greater.

    Parameters
    ----------
    p_static_a : float or array, any shape [Pa]
        Static pressure with which one side arrives; negative.
    p_static_b : float or array, broadcast with `p_static_a` [Pa]

    Returns
    -------
    ratio : broadcast shape [-]
        1 where both agree.

    Valid: both below 0, as upstream of a fan; outside this RangeError is raised.
    Source: [balance-rule, ratio of static pressures]
    """
    a, b = _suction("p_static_a", p_static_a), _suction("p_static_b", p_static_b)
    return np.minimum(a, b) / np.maximum(a, b)


def balance_advice(ratio):
    """What to do at a junction whose sides agree to a given ratio.

    Parameters
    ----------
    ratio : float [-]
        From `balance_ratio`.

    Returns
    -------
    advice : BalanceAdvice
        Leave above 0.95, correct the flow from 0.80 to 0.95, choose another size below.

    Valid: 0 to 1; outside this RangeError is raised. Other editions write the last limit as 1.2.
    Source: [balance-rule, ratio 0.95 / 0.80]
    """
    ratio = within("balance ratio", ratio, 0.0, 1.0, "", "; divide the lesser suction by the greater")
    if ratio > LEAVE_ABOVE:
        return BalanceAdvice.LEAVE
    return BalanceAdvice.CORRECT if ratio >= CORRECT_FROM else BalanceAdvice.RESIZE


def corrected_flow(flow, p_static_governing, p_static_low):
    """Flow that the side with less suction takes once both sides share the greater suction.

    It assumes that all losses of that side rise as the square of the flow.

    Parameters
    ----------
    flow : float or array, any shape [m3/s]
        Design flow of the side with less suction.
    p_static_governing : float or array, broadcast with `flow` [Pa]
        Static pressure of the other side; negative.
    p_static_low : float or array, broadcast with `flow` [Pa]
        Static pressure of the side with less suction; negative.

    Returns
    -------
    flow : broadcast shape [m3/s]

    Valid: flow 0 or more, both pressures below 0 (else RangeError), the governing one the lower
    (else InputError).
    Source: [balance-rule, corrected flow]
    """
    governing = _suction("p_static_governing", p_static_governing)
    low = _suction("p_static_low", p_static_low)
    if np.any(governing < low):
        raise InputError(
            f"p_static_governing {p_static_governing} Pa has less suction than p_static_low "
            f"{p_static_low} Pa; the side with more suction governs, so exchange them"
        )
    return not_negative("flow", flow, "m3/s") * np.sqrt(governing / low)


def resultant_velocity_pressure(flows, p_velocities):
    """Velocity pressure that the joining streams bring along, weighted by their flows.

    Parameters
    ----------
    flows : (n_streams, ...) array [m3/s]
    p_velocities : array of the same shape [Pa]

    Returns
    -------
    p_velocity : shape of one stream [Pa]

    Valid: flows 0 or more with a sum above 0, pressures 0 or more; outside this RangeError is raised.
    Source: [balance-rule, resultant velocity pressure]
    """
    q = not_negative("flow", flows, "m3/s")
    total = positive("sum of flows", q.sum(axis=0), "m3/s")
    return (q * not_negative("velocity pressure", p_velocities, "Pa")).sum(axis=0) / total


def junction_acceleration_loss(p_velocity_main, p_velocity_resultant):
    """Static pressure spent behind a junction where the main is faster than what joins.

    Parameters
    ----------
    p_velocity_main : float or array, any shape [Pa]
        Downstream of the junction.
    p_velocity_resultant : float or array, broadcast with `p_velocity_main` [Pa]

    Returns
    -------
    loss : broadcast shape [Pa]
        0 where the main is slower: the hand method counts no regain.

    Valid: both 0 or more; outside this RangeError is raised.
    Source: [balance-rule, acceleration behind a junction]
    """
    main = not_negative("velocity pressure of the main", p_velocity_main, "Pa")
    return np.maximum(0.0, main - not_negative("resultant velocity pressure", p_velocity_resultant, "Pa"))


def _suction(name: str, p_static):
    p_static = np.asarray(p_static, dtype=float)
    if not np.all(p_static < 0):
        raise RangeError(
            f"{name} {p_static} Pa is not suction (below 0), as it must be on both sides of a junction "
            "upstream of a fan; check its sign"
        )
    return -p_static
