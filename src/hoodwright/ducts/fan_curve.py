"""The curve of a fan as its maker rates it, and what it becomes at another speed, density or place."""

import numpy as np
from scipy.optimize import brentq

from hoodwright.ducts.fan import STANDARD_DENSITY
from hoodwright.errors import NoSolution
from hoodwright.network import fan_curve
from hoodwright.ranges import not_above, not_negative, positive

SLOWEST, FASTEST = 0.05, 3.0  # of the rated speed: where a speed is looked for


def rated_curve(flows, pressures, *, static, outlet_area=None, density=STANDARD_DENSITY):
    """Total pressure rise of a fan by flow, from the points of a catalogue.

    A catalogue rates static pressure, which is the total less the velocity pressure at the outlet, or total pressure.
    It must be said which.

    Parameters
    ----------
    flows : array (n,) [m3/s]
    pressures : array (n,) [Pa]
    static : bool
        Whether these are fan static pressures.
    outlet_area : float, optional [m2]
        Needed for static pressures.
    density : float [kg/m3]
        At which the fan is rated.

    Returns
    -------
    curve : network.Curve
        Total pressure at standard density.

    Valid: two points or more, flows rising; else InputError or RangeError is raised.
    Source: [common-practice, definition of fan static pressure]
    """
    q, p = np.asarray(flows, dtype=float), np.asarray(pressures, dtype=float)
    rho = float(positive("density", density, "kg/m3"))
    if static:
        area = float(positive("area of the fan's outlet", np.nan if outlet_area is None else outlet_area, "m2"))
        p = p + rho * (q / area) ** 2 / 2
    return fan_curve(q, p).scaled(pressure=STANDARD_DENSITY / rho)


def at_speed(curve, speed_ratio):
    """The curve of the same fan at another speed, by the fan laws.

    Parameters
    ----------
    curve : network.Curve
    speed_ratio : float [1]
        New speed over old speed.

    Returns
    -------
    curve : network.Curve

    Valid: ratio above 0; else RangeError is raised.
    Source: [abulencia, ch. 17, fan laws]
    """
    n = float(positive("speed ratio", speed_ratio, ""))
    return curve.scaled(flow=n, pressure=n**2)


def speed_for(curve, flow, pressure):
    """Speed, over that of the curve, at which a fan gives a wanted pressure at a flow.

    Parameters
    ----------
    curve : network.Curve
        Total pressure, at the density at hand.
    flow : float [m3/s]
    pressure : float [Pa]

    Returns
    -------
    speed_ratio : float [1]

    Valid: flow and pressure above 0, else RangeError; NoSolution where no speed from 0.05 to 3 times gives it.
    Source: [abulencia, ch. 17, fan laws]
    """
    q, wanted = float(positive("flow", flow, "m3/s")), float(positive("pressure", pressure, "Pa"))

    def spare(n: float) -> float:
        return float(at_speed(curve, n).rise(q)) - wanted

    if spare(SLOWEST) > 0 or spare(FASTEST) < 0:
        raise NoSolution(
            f"no speed from {SLOWEST:g} to {FASTEST:g} times the rated one gives {wanted:.4g} Pa at {q:.4g} m3/s; "
            "choose another fan"
        )
    return float(brentq(spare, SLOWEST, FASTEST, xtol=1e-12))


def system_effect_loss(coefficient, p_velocity):
    """Pressure that a fan loses where its inlet or outlet is not as on the test stand.

    Parameters
    ----------
    coefficient : float or array, any shape [1]
        From published system effect tables; the user's own.
    p_velocity : float or array, broadcast [Pa]
        Velocity pressure at the inlet or outlet.

    Returns
    -------
    loss : broadcast shape [Pa]

    Valid: 0 or more; else RangeError is raised.
    Source: [common-practice, system effect]
    """
    return not_negative("coefficient", coefficient, "") * not_negative("velocity pressure", p_velocity, "Pa")


def motor_margin(motor_rating, power):
    """Share of a motor's rating that is left.

    Parameters
    ----------
    motor_rating : float or array, any shape [W]
    power : float or array, broadcast [W]
        What the motor must give.

    Returns
    -------
    margin : broadcast shape [1]
        Negative where the motor is too small.

    Valid: rating above 0, power 0 or more; else RangeError is raised.
    Source: [common-practice, motor reserve]
    """
    return 1 - not_negative("power", power, "W") / positive("motor rating", motor_rating, "W")


def yearly_energy(power, hours, motor_efficiency=1.0):
    """Electrical energy that a fan takes in a year.

    Parameters
    ----------
    power : float or array, any shape [W]
        At the motor's shaft.
    hours : float or array, broadcast [h]
        That it runs in a year.
    motor_efficiency : float or array, broadcast [1]

    Returns
    -------
    energy : broadcast shape [kWh]

    Valid: power 0 or more, 0 to 8784 h, efficiency above 0 and at most 1; else RangeError is raised.
    Source: [common-practice, power times time]
    """
    tail = ", the hours of a leap year; give the hours in a year"
    time = not_above("running time", not_negative("running time", hours, "h"), 8784.0, "h", tail)
    share = not_above("motor efficiency", positive("motor efficiency", motor_efficiency, ""), 1.0, "", "; give a share")
    return not_negative("power", power, "W") * time / share / 1000
