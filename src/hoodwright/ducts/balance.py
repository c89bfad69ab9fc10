"""Three ways to bring one side of a junction to the suction of the other: damper, size, or flow.

The flow is `corrected_flow` in run.py; here are the other two, and the rule of later editions.
"""

from dataclasses import dataclass

import numpy as np

from hoodwright.ducts.friction import friction_factor, reynolds_number
from hoodwright.ducts.run import BalanceAdvice
from hoodwright.errors import InputError, NoSolution
from hoodwright.ranges import not_below, not_negative, positive

LEAVE_UP_TO = 1.05
REDESIGN_ABOVE = 1.20
NARROWEST, WIDEST = 0.01, 10.0  # m
STEPS = 60


@dataclass(frozen=True)
class Side:
    """One duct that ends at a junction, as far as its size decides its suction.

    `loss_coefficient` holds fittings and, for a duct behind a hood, one velocity pressure of acceleration and the
    entry loss. For a duct further on, `suction_before` [Pa, positive] is what its start already takes without the
    acceleration into it, and `p_velocity_before` [Pa] the velocity pressure the air brings. `p_fixed` [Pa] is lost
    whatever the size: a damper, a cleaner.
    """

    flow: float
    length: float
    loss_coefficient: float
    roughness: float
    density: float
    viscosity: float
    suction_before: float = 0.0
    p_velocity_before: float | None = None
    p_fixed: float = 0.0


def suction_at_diameter(side, diameter):
    """Suction with which a round duct of one flow arrives at a junction, by its diameter.

    Parameters
    ----------
    side : Side [SI]
        What does not depend on the diameter.
    diameter : float or array, any shape [m]

    Returns
    -------
    suction : same shape as `diameter` [Pa]
        Positive.

    Valid: diameter above 0; outside this RangeError is raised.
    Source: [balance-rule, sum of losses along a run]
    """
    d = positive("diameter", diameter, "m")
    velocity = side.flow / (np.pi * d**2 / 4)
    vp = side.density * velocity**2 / 2
    reynolds = reynolds_number(velocity, d, side.density, side.viscosity)
    factor = friction_factor(reynolds, np.minimum(side.roughness / d, 0.1))
    faster = 0.0 if side.p_velocity_before is None else np.maximum(0.0, vp - side.p_velocity_before)
    return side.suction_before + side.p_fixed + faster + (side.loss_coefficient + factor * side.length / d) * vp


def balancing_diameter(side, suction):
    """Diameter with which a duct arrives at a junction with a wanted suction, at the same flow.

    Parameters
    ----------
    side : Side [SI]
        What does not depend on the diameter.
    suction : float [Pa]
        Positive: what the governing side needs.

    Returns
    -------
    diameter : float [m]

    Valid: suction above 0, else RangeError; NoSolution where no diameter from 10 mm to 10 m has that suction.
    Source: [balance-rule, sum of losses along a run]
    """
    wanted = float(positive("suction", suction, "Pa"))
    low, high = NARROWEST, WIDEST
    least, most = float(suction_at_diameter(side, high)), float(suction_at_diameter(side, low))
    if not least <= wanted <= most:
        raise NoSolution(
            f"no diameter from {NARROWEST:g} m to {WIDEST:g} m arrives with {wanted:.4g} Pa of suction: at the same "
            f"flow it lies between {least:.4g} and {most:.4g} Pa; change the flow, or use a damper"
        )
    for _ in range(STEPS):
        middle = (low * high) ** 0.5
        low, high = (middle, high) if suction_at_diameter(side, middle) > wanted else (low, middle)
    return (low * high) ** 0.5


def damper_loss(p_static_governing, p_static_low):
    """Pressure that a damper must take on the side with less suction, so that both sides agree.

    Parameters
    ----------
    p_static_governing : float or array, any shape [Pa]
        Static pressure of the side with more suction; signed.
    p_static_low : float or array, broadcast with `p_static_governing` [Pa]

    Returns
    -------
    loss : broadcast shape [Pa]
        Positive.

    Valid: any signed gauge pressures, the governing one the lower (else InputError).
    Source: [balance-rule, balance of static pressures]
    """
    governing, low = np.asarray(p_static_governing, dtype=float), np.asarray(p_static_low, dtype=float)
    if np.any(governing > low):
        raise InputError(
            f"p_static_governing {p_static_governing} Pa has less suction than p_static_low {p_static_low} Pa; "
            "the side with more suction governs, so exchange them"
        )
    return low - governing


def balance_advice_1_2(greater_over_lesser):
    """What later editions advise at a junction, by the greater suction over the lesser.

    Parameters
    ----------
    greater_over_lesser : float [-]
        One over `balance_ratio`.

    Returns
    -------
    advice : BalanceAdvice
        Leave up to 1.05, correct the flow to 1.20, choose another size above.

    Valid: 1 or more; outside this RangeError is raised.
    Source: [balance-rule-1-2, ratio 1.05 / 1.20]
    """
    ratio = not_below("balance ratio", greater_over_lesser, 1.0, "", "; divide the greater suction by the lesser")
    if ratio > REDESIGN_ABOVE:
        return BalanceAdvice.RESIZE
    return BalanceAdvice.CORRECT if ratio > LEAVE_UP_TO else BalanceAdvice.LEAVE


def resultant_velocity_pressure_by_area(flows, areas, density):
    """Velocity pressure of joining streams by the other form of the worksheet: all flows over all areas.

    Parameters
    ----------
    flows : (n_streams, ...) array [m3/s]
    areas : array of the same shape [m2]
    density : float or array, shape of one stream [kg/m3]

    Returns
    -------
    p_velocity : shape of one stream [Pa]

    Valid: flows 0 or more, areas and density above 0; outside this RangeError is raised. Never more than
    `resultant_velocity_pressure`; equal to it where the streams are equally fast.
    Source: [lev-worksheet, resultant velocity pressure]
    """
    total = not_negative("flow", flows, "m3/s").sum(axis=0)
    velocity = total / positive("area", areas, "m2").sum(axis=0)
    return positive("density", density, "kg/m3") * velocity**2 / 2


def mixed_temperature(mass_flows, temperatures):
    """Temperature of joining streams of air, weighted by their mass.

    Parameters
    ----------
    mass_flows : (n_streams, ...) array [kg/s]
    temperatures : array of the same shape [K]

    Returns
    -------
    temperature : shape of one stream [K]

    Valid: mass flows 0 or more with a sum above 0, temperatures above 0; outside this RangeError is raised. Equal
    heat capacities, and no heat lost through the walls.
    Source: [common-practice, heat balance of joining streams]
    """
    m = not_negative("mass flow", mass_flows, "kg/s")
    total = positive("sum of mass flows", m.sum(axis=0), "kg/s")
    return (m * positive("temperature", temperatures, "K")).sum(axis=0) / total
