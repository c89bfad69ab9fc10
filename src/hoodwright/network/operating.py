"""Where a fan can run: every crossing of its curve with what the network asks of it."""

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
from scipy.optimize import brentq

from hoodwright.network.curves import Curve
from hoodwright.ranges import positive

SAMPLES = 64
CLOSE = 1e-10  # of the greatest flow
NUDGE = 1e-4  # of the greatest flow: over which slopes are taken


@dataclass(frozen=True)
class OperatingPoint:
    """A flow [m3/s] at which fan and network agree, and the pressure rise there [Pa].

    `stable` where a little more flow is asked for more pressure than the fan then gives; else the flow runs away from
    it, to the next point.
    """

    flow: float
    pressure: float
    stable: bool


def operating_points(curve: Curve, asked: Callable[[float], float], greatest=None, samples=SAMPLES):
    """Every point at which a fan can run, from flow 0 up.

    Parameters
    ----------
    curve : Curve
        Of the fan, at its speed and density.
    asked : function of a flow [m3/s] to a pressure rise [Pa]
        What the network asks of the fan.
    greatest : float [m3/s], optional
        Up to where to look; the end of the curve without it.
    samples : int
        How many flows are tried; two crossings between two of them are missed.

    Returns
    -------
    points : tuple of OperatingPoint
        None where the fan never gives what is asked, or always more.

    Valid: greatest above 0; else RangeError is raised.
    Source: [cengel-fm, ch. 14, operating point]
    """
    most = float(positive("greatest flow", curve.end if greatest is None else greatest, "m3/s"))
    flows = np.linspace(0.0, most, samples)

    def spare(flow: float) -> float:
        return float(curve.rise(flow)) - asked(float(flow))

    found = np.array([spare(flow) for flow in flows])
    points = []
    for low, high, left, right in zip(flows, flows[1:], found, found[1:], strict=False):
        if left == 0 or left * right < 0:
            flow = float(low) if left == 0 else brentq(spare, low, high, xtol=CLOSE * most)
            step = NUDGE * most
            falls = spare(flow + step) < spare(max(flow - step, 0.0))
            points.append(OperatingPoint(flow, float(curve.rise(flow)), falls))
    return tuple(points)
