"""Fan pressures, power and the fan laws.

The laws compare two states of one fan, or of fans of one shape, at the same point of the curve.
"""

import numpy as np

from hoodwright.ranges import not_above, not_negative, positive

STANDARD_DENSITY = 1.2  # kg/m3, at which catalogues rate fans


def fan_total_pressure(p_total_out, p_total_in):
    """Rise of total pressure across a fan.

    Parameters
    ----------
    p_total_out : float or array, any shape [Pa]
        Gauge, at the outlet.
    p_total_in : float or array, broadcast with `p_total_out` [Pa]
        Gauge, at the inlet; negative behind a suction duct.

    Returns
    -------
    p_total : broadcast shape [Pa]

    Valid: any signed gauge pressures.
    Source: [common-practice, definition of fan total pressure]
    """
    return np.asarray(p_total_out, dtype=float) - np.asarray(p_total_in, dtype=float)


def fan_static_pressure(p_static_out, p_total_in):
    """Fan static pressure, SP out - SP in - VP in: fan total pressure less the outlet velocity pressure.

    Parameters
    ----------
    p_static_out : float or array, any shape [Pa]
        Gauge static pressure at the outlet.
    p_total_in : float or array, broadcast with `p_static_out` [Pa]
        Gauge total pressure at the inlet, static plus velocity pressure.

    Returns
    -------
    p_static : broadcast shape [Pa]

    Valid: any signed gauge pressures.
    Source: [common-practice, definition of fan static pressure]
    """
    return np.asarray(p_static_out, dtype=float) - np.asarray(p_total_in, dtype=float)


def air_power(flow, p_total):
    """Power that a fan gives to the air.

    Parameters
    ----------
    flow : float or array, any shape [m3/s]
    p_total : float or array, broadcast with `flow` [Pa]
        Fan total pressure.

    Returns
    -------
    power : broadcast shape [W]

    Valid: flow and pressure 0 or more; outside this RangeError is raised. Air taken as incompressible.
    Source: [fan-sheet, air power]
    """
    return not_negative("flow", flow, "m3/s") * not_negative("fan total pressure", p_total, "Pa")


def shaft_power(flow, p_total, efficiency):
    """Power that a fan takes at its shaft, without belt and motor losses.

    Parameters
    ----------
    flow : float or array, any shape [m3/s]
    p_total : float or array, broadcast with `flow` [Pa]
        Fan total pressure, with the total efficiency.
    efficiency : float or array, broadcast with `flow` [-]

    Returns
    -------
    power : broadcast shape [W]

    Valid: efficiency above 0 and at most 1, the others 0 or more; outside this RangeError is raised.
    Source: [fan-sheet, brake power]
    """
    eta = positive("efficiency", efficiency, "")
    return air_power(flow, p_total) / not_above("efficiency", eta, 1.0, "", "; give a share, such as 0.6")


def scaled_flow(flow, speed_ratio, size_ratio=1.0):
    """Flow of a fan at another speed or size; density does not change it.

    Parameters
    ----------
    flow : float or array, any shape [m3/s]
    speed_ratio : float or array, broadcast with `flow` [-]
        New speed over old speed.
    size_ratio : float or array, broadcast with `flow` [-]
        New diameter over old diameter of a fan of the same shape.

    Returns
    -------
    flow : broadcast shape [m3/s]

    Valid: flow 0 or more, ratios above 0; outside this RangeError is raised.
    Source: [abulencia, ch. 17, fan laws]
    """
    n, d = positive("speed ratio", speed_ratio, ""), positive("size ratio", size_ratio, "")
    return not_negative("flow", flow, "m3/s") * n * d**3


def scaled_pressure(pressure, speed_ratio, size_ratio=1.0, density_ratio=1.0):
    """Static or total pressure of a fan at another speed, size or density.

    Parameters
    ----------
    pressure : float or array, any shape [Pa]
    speed_ratio : float or array, broadcast with `pressure` [-]
    size_ratio : float or array, broadcast with `pressure` [-]
    density_ratio : float or array, broadcast with `pressure` [-]
        New air density over old air density.

    Returns
    -------
    pressure : broadcast shape [Pa]

    Valid: pressure 0 or more, ratios above 0; outside this RangeError is raised.
    Source: [abulencia, ch. 17, fan laws]
    """
    n, d = positive("speed ratio", speed_ratio, ""), positive("size ratio", size_ratio, "")
    return not_negative("fan pressure", pressure, "Pa") * n**2 * d**2 * positive("density ratio", density_ratio, "")


def scaled_power(power, speed_ratio, size_ratio=1.0, density_ratio=1.0):
    """Power of a fan at another speed, size or density.

    Parameters
    ----------
    power : float or array, any shape [W]
    speed_ratio : float or array, broadcast with `power` [-]
    size_ratio : float or array, broadcast with `power` [-]
    density_ratio : float or array, broadcast with `power` [-]
        New air density over old air density.

    Returns
    -------
    power : broadcast shape [W]

    Valid: power 0 or more, ratios above 0; outside this RangeError is raised.
    Source: [abulencia, ch. 17, fan laws]
    """
    n, d = positive("speed ratio", speed_ratio, ""), positive("size ratio", size_ratio, "")
    return not_negative("power", power, "W") * n**3 * d**5 * positive("density ratio", density_ratio, "")


def motor_power(shaft_power, drive_loss):
    """Power that a motor must give where belts or couplings lose a share of it.

    Parameters
    ----------
    shaft_power : float or array, any shape [W]
        At the shaft of the fan.
    drive_loss : float or array, broadcast with `shaft_power` [-]
        Share of the motor's power that the drive loses; common practice is about 0.05 for belts, 0 for direct drive.

    Returns
    -------
    power : broadcast shape [W]

    Valid: power 0 or more, drive loss 0 to 0.5; outside this RangeError is raised. No reserve is added.
    Source: [common-practice, belt losses]
    """
    lost = not_above("drive loss", not_negative("drive loss", drive_loss, ""), 0.5, "", "; give a share, such as 0.05")
    return not_negative("shaft power", shaft_power, "W") / (1 - lost)
