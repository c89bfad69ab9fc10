"""Pressures of moving air. Static and total pressure are gauge pascals with sign: suction is negative."""

import numpy as np

from hoodwright.ranges import not_below, numbers, positive


def velocity_pressure(velocity, density):
    """Pressure that moving air shows when it is brought to rest.

    Parameters
    ----------
    velocity : float or array [m/s]
    density : float or array, broadcast with `velocity` [kg/m3]
        At the place of measurement, not in the room.

    Returns
    -------
    p_velocity : broadcast shape [Pa]

    Valid: density above 0; else RangeError is raised. Incompressible flow, below about 100 m/s.
    Source: [fan-sheet, velocity pressure]
    """
    return positive("density", density, "kg/m3") * numbers("velocity", velocity) ** 2 / 2


def velocity_from_pressure(p_velocity, density):
    """Velocity of air, from its velocity pressure.

    Parameters
    ----------
    p_velocity : float or array [Pa]
    density : float or array, broadcast with `p_velocity` [kg/m3]
        At the place of measurement, not in the room.

    Returns
    -------
    velocity : broadcast shape [m/s]

    Valid: velocity pressure of 0 or more, density above 0; else RangeError is raised.
    Source: [exam-equations, velocity from velocity pressure]
    """
    return np.sqrt(2 * _pressure(p_velocity) / positive("density", density, "kg/m3"))


def total_pressure(p_static, p_velocity):
    """Static and velocity pressure together.

    Parameters
    ----------
    p_static : float or array [Pa]
        Gauge, with sign: negative on the suction side of a fan.
    p_velocity : float or array, broadcast with `p_static` [Pa]

    Returns
    -------
    p_total : broadcast shape [Pa]
        Gauge, with sign.

    Valid: velocity pressure of 0 or more; below this RangeError is raised.
    Source: [practice-questions, total pressure upstream of a fan]
    """
    return numbers("static pressure", p_static) + _pressure(p_velocity)


def _pressure(p_velocity):
    return not_below("velocity pressure", p_velocity, 0.0, "Pa", "; check whether the two tubes are swapped")
