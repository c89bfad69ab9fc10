"""What a junction takes from each inlet: two published laws, and the plain one (nothing)."""

from dataclasses import dataclass
from typing import Literal

import numpy as np

from hoodwright.errors import InputError
from hoodwright.kernels.junction_loss import MOMENTUM, PLAIN, TABULATED
from hoodwright.ranges import not_negative, positive

LAWS = {"plain": PLAIN, "momentum": MOMENTUM, "tabulated": TABULATED}


@dataclass(frozen=True)
class Junction:
    """Where branches meet one common branch. By its law, `values` are one for each inlet:

    momentum: the cosine of the angle to the common duct; tabulated: the loss in velocity pressures of the inlet
    itself. `leak` marks inlets that bring no velocity pressure.
    """

    law: Literal["plain", "momentum", "tabulated"]
    inlets: tuple[int, ...]
    common: int
    values: tuple[float, ...]
    leak: tuple[bool, ...] = ()

    def __post_init__(self):
        if self.law not in LAWS:
            raise InputError(f"junction law {self.law!r} is not known; there are {', '.join(LAWS)}")
        if len(self.values) != len(self.inlets) or len(self.leak) not in (0, len(self.inlets)):
            raise InputError(
                f"a junction of {len(self.inlets)} inlets has {len(self.values)} values; give one for each"
            )


def momentum_loss(flows, areas, cosines, area, density):
    """Total pressure lost from each inlet of a junction to the common duct, from the balance of momentum.

    Static pressure is taken as the same at all inlets; wall pressure in the cone of the junction is left out.

    Parameters
    ----------
    flows : array (..., n) [m3/s]
        Of the inlets, into the junction.
    areas : array (n,) [m2]
    cosines : array (n,) [1]
        Of the angle between inlet and common duct.
    area : float [m2]
        Of the common duct.
    density : float [kg/m3]

    Returns
    -------
    losses : array (..., n) [Pa]
        May be negative: a fast stream lifts a slow one.

    Valid: flows 0 or more, areas above 0; else RangeError is raised.
    Source: [network-theory, balance of momentum]
    """
    q, a = not_negative("flow", flows, "m3/s"), positive("area", areas, "m2")
    common = positive("area of the common duct", area, "m2")
    own = density * (q / a) ** 2 / 2
    whole = density * (q.sum(axis=-1, keepdims=True) / common) ** 2 / 2
    push = np.sum(density * q**2 * np.asarray(cosines) / (a * common), axis=-1, keepdims=True)
    return own + whole - push


def tabulated_loss(flows, areas, coefficients, area, density):
    """Total pressure lost from each inlet of a junction to the common duct, as the hand method counts it.

    Each inlet loses its coefficient in its own velocity pressures; where the common duct is faster than the flow
    mean of the inlets, the difference is lost too; where it is slower, nothing is regained.

    Parameters
    ----------
    flows : array (..., n) [m3/s]
    areas : array (n,) [m2]
    coefficients : array (n,) [1]
    area : float [m2]
    density : float [kg/m3]

    Returns
    -------
    losses : array (..., n) [Pa]

    Valid: flows 0 or more and not all 0, areas above 0; else RangeError is raised.
    Source: [balance-rule, resultant velocity pressure]
    """
    q, a = not_negative("flow", flows, "m3/s"), positive("area", areas, "m2")
    total = positive("flow of the common duct", q.sum(axis=-1, keepdims=True), "m3/s")
    own = density * (q / a) ** 2 / 2
    whole = density * (total / positive("area of the common duct", area, "m2")) ** 2 / 2
    mean = np.sum(q * own, axis=-1, keepdims=True) / total
    return own * (1 + np.asarray(coefficients)) - np.minimum(whole, mean)
