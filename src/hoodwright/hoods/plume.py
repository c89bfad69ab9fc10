"""Warm air that rises from a hot process: how much of it there is at a height, how fast and how warm.

Only the convective part of the heat drives a plume. Heights are from the virtual origin, the point from which the
plume seems to grow, unless another place is named. Still, unlayered air: a warm layer under the roof stops a plume.
"""

import numpy as np

from hoodwright.ranges import absolute_pressure, gas_temperature, not_negative, positive, within

GRAVITY = 9.81  # m/s2
HEAT_CAPACITY = 1005.0  # J/(kg K), of air
ASHRAE_GRAVITY, ASHRAE_GAS_CONSTANT, ASHRAE_HEAT_CAPACITY = 9.8, 287.0, 1004.0  # as that handbook lists them
LATENT_HEAT = 2.257e6  # J/kg, as that handbook lists it

ROUSE_FLOW, ROUSE_VELOCITY, ROUSE_EXCESS = 0.153, 4.7, 11.0  # in B^(1/3) z^(5/3), B^(1/3) z^(-1/3), B^(2/3) z^(-5/3)
HESKESTAD_VELOCITY, HESKESTAD_EXCESS = 3.4, 9.1  # the same
ROOM_POINT = 0.005  # m3/s for each W^(1/3) m^(5/3)
ROOM_LINE = 0.014  # m2/s for each (W/m)^(1/3) m
ORIGIN_NEAREST, ORIGIN_FARTHEST = 1.7, 2.1  # diameters below a level face
STREAM_ANGLE = np.radians(5.0)  # of the air that climbs a vertical surface


def buoyancy_flux(heat, air_temperature, density):
    """Strength of a plume: g q / (rho cp T).

    Parameters
    ----------
    heat : float or array [W]
        The convective part.
    air_temperature : float or array, broadcast with `heat` [K]
    density : float or array, broadcast with the others [kg/m3]
        Of the air around.

    Returns
    -------
    buoyancy : broadcast shape [m4/s3]

    Valid: heat and density above 0, 150 to 2000 K; else RangeError is raised.
    Source: [plume-theory, definition]
    """
    air = gas_temperature(air_temperature, "air temperature")
    mass = positive("density", density, "kg/m3")
    return GRAVITY * positive("convective heat", heat, "W") / (mass * HEAT_CAPACITY * air)


def top_hat_constant(entrainment):
    """Constant c of the plume flow c B^(1/3) z^(5/3): (6a/5) (9a/10)^(1/3) pi^(2/3).

    Parameters
    ----------
    entrainment : float or array, any shape [1]
        Inflow speed over rising speed, both even across the plume: about 0.10 to 0.15.

    Returns
    -------
    constant : same shape as `entrainment` [1]

    Valid: entrainment above 0; else RangeError is raised.
    Source: [plume-theory, similarity solution]
    """
    a = positive("entrainment", entrainment, "")
    return 6 * a / 5 * np.cbrt(9 * a / 10) * np.pi ** (2 / 3)


def top_hat_plume_flow(buoyancy, height, entrainment):
    """Flow of a point plume, by the entrainment of Morton, Taylor and Turner.

    Parameters
    ----------
    buoyancy : float or array [m4/s3]
    height : float or array, broadcast with `buoyancy` [m]
    entrainment : float or array, broadcast with the others [1]

    Returns
    -------
    flow : broadcast shape [m3/s]

    Valid: buoyancy above 0, height of 0 or more; else RangeError is raised. Plume little warmer than the air.
    Source: [plume-theory, similarity solution]
    """
    return top_hat_constant(entrainment) * _point(buoyancy, height)


def top_hat_plume_radius(height, entrainment):
    """Radius of a point plume whose speed is even across it: 6 a z / 5.

    Parameters
    ----------
    height : float or array [m]
    entrainment : float or array, broadcast with `height` [1]

    Returns
    -------
    radius : broadcast shape [m]

    Valid: height of 0 or more, entrainment above 0; else RangeError is raised.
    Source: [plume-theory, similarity solution]
    """
    return 6 * positive("entrainment", entrainment, "") * not_negative("height", height, "m") / 5


def rouse_1952_plume_flow(buoyancy, height):
    """Flow of a point plume, by Rouse, Yih and Humphreys: 0.153 B^(1/3) z^(5/3).

    Parameters
    ----------
    buoyancy : float or array [m4/s3]
    height : float or array, broadcast with `buoyancy` [m]

    Returns
    -------
    flow : broadcast shape [m3/s]

    Valid: buoyancy above 0, height of 0 or more; else RangeError is raised. Plume little warmer than the air.
    Source: [rouse52, flow of a point plume]
    """
    return ROUSE_FLOW * _point(buoyancy, height)


def rouse_1952_axis_velocity(buoyancy, height):
    """Velocity on the axis of a point plume, by Rouse, Yih and Humphreys: 4.7 B^(1/3) z^(-1/3).

    Parameters
    ----------
    buoyancy : float or array [m4/s3]
    height : float or array, broadcast with `buoyancy` [m]

    Returns
    -------
    velocity : broadcast shape [m/s]

    Valid: buoyancy and height above 0; else RangeError is raised. Plume little warmer than the air.
    Source: [rouse52, axis of a point plume]
    """
    return ROUSE_VELOCITY * np.cbrt(_strength(buoyancy) / positive("height", height, "m"))


def rouse_1952_axis_excess(buoyancy, height, air_temperature):
    """How much warmer than the air the axis of a point plume is: 11 B^(2/3) z^(-5/3) T / g.

    Parameters
    ----------
    buoyancy : float or array [m4/s3]
    height : float or array, broadcast with `buoyancy` [m]
    air_temperature : float or array, broadcast with the others [K]

    Returns
    -------
    excess : broadcast shape [K]

    Valid: buoyancy and height above 0, 150 to 2000 K; else RangeError is raised. Plume little warmer than the air.
    Source: [rouse52, axis of a point plume]
    """
    return ROUSE_EXCESS * _excess(buoyancy, height, air_temperature)


def heskestad_1984_axis_velocity(buoyancy, height):
    """Velocity on the axis above the flames of a fire, by Heskestad: 3.4 B^(1/3) z^(-1/3).

    Parameters
    ----------
    buoyancy : float or array [m4/s3]
        From the convective heat.
    height : float or array, broadcast with `buoyancy` [m]

    Returns
    -------
    velocity : broadcast shape [m/s]

    Valid: buoyancy and height above 0; else RangeError is raised. Above the flames.
    Source: [karlsson-quintiere, eq. 4.26]
    """
    return HESKESTAD_VELOCITY * np.cbrt(_strength(buoyancy) / positive("height", height, "m"))


def heskestad_1984_axis_excess(buoyancy, height, air_temperature):
    """How much warmer than the air the axis above the flames of a fire is: 9.1 B^(2/3) z^(-5/3) T / g.

    Parameters
    ----------
    buoyancy : float or array [m4/s3]
        From the convective heat.
    height : float or array, broadcast with `buoyancy` [m]
    air_temperature : float or array, broadcast with the others [K]

    Returns
    -------
    excess : broadcast shape [K]

    Valid: buoyancy and height above 0, 150 to 2000 K; else RangeError is raised. Above the flames.
    Source: [karlsson-quintiere, eq. 4.25]
    """
    return HESKESTAD_EXCESS * _excess(buoyancy, height, air_temperature)


def room_plume_flow(heat, height):
    """Flow of a point plume in room air of about 20 degC: 0.005 q^(1/3) z^(5/3).

    Parameters
    ----------
    heat : float or array [W]
        The convective part.
    height : float or array, broadcast with `heat` [m]

    Returns
    -------
    flow : broadcast shape [m3/s]

    Valid: heat above 0, height of 0 or more; else RangeError is raised.
    Source: [room-plume, point source]
    """
    return ROOM_POINT * _point(positive("convective heat", heat, "W"), height)


def room_line_plume_flow(heat, length, height):
    """Flow of a plume from a long line in room air of about 20 degC: 0.014 (q / L)^(1/3) z L.

    Parameters
    ----------
    heat : float or array [W]
        The convective part, of the whole line.
    length : float or array, broadcast with `heat` [m]
        Of the line.
    height : float or array, broadcast with the others [m]

    Returns
    -------
    flow : broadcast shape [m3/s]

    Valid: heat and length above 0, height of 0 or more; else RangeError is raised. Height well below the length.
    Source: [room-plume, line source]
    """
    line = positive("length", length, "m")
    return ROOM_LINE * np.cbrt(positive("convective heat", heat, "W") / line) * _height(height) * line


def virtual_origin_depth(diameter):
    """How far below a level hot face its plume seems to begin: about 1.7 to 2.1 diameters.

    Parameters
    ----------
    diameter : float or array, any shape [m]

    Returns
    -------
    nearest, farthest : same shape as `diameter` [m]

    Valid: diameter above 0; else RangeError is raised.
    Source: [room-plume, virtual origin of a disc]
    """
    d = positive("diameter", diameter, "m")
    return ORIGIN_NEAREST * d, ORIGIN_FARTHEST * d


def hot_body_constant(p_abs=101325.0):
    """Constant of the flow at the top of a hot body: (2 g R / (p cp))^(1/3), 0.038 at sea level.

    Parameters
    ----------
    p_abs : float or array, any shape [Pa]

    Returns
    -------
    constant : same shape as `p_abs` [m3/s for each (W m5)^(1/3)]

    Valid: 10 kPa to 1 MPa; outside this RangeError is raised.
    Source: [ashrae-a99, ch. 29, eq. 20]
    """
    lifted = 2 * ASHRAE_GRAVITY * ASHRAE_GAS_CONSTANT / ASHRAE_HEAT_CAPACITY
    return np.cbrt(lifted / absolute_pressure(p_abs))


def hot_body_flow(heat, height, stream_area, p_abs=101325.0):
    """Flow of warm air at the top of a hot body: 0.038 (q L A^2)^(1/3).

    Parameters
    ----------
    heat : float or array [W]
        The convective part.
    height : float or array, broadcast with `heat` [m]
        L: of the body; of a level face its longer side or diameter.
    stream_area : float or array, broadcast with the others [m2]
        A: of the rising air at the top: the plan of a body, length x diameter of a level cylinder.
    p_abs : float or array, broadcast with the others [Pa]

    Returns
    -------
    flow : broadcast shape [m3/s]

    Valid: all above 0; else RangeError is raised. At the top; higher up the plume has grown.
    Source: [ashrae-a99, ch. 29, eq. 20]
    """
    lifted = positive("convective heat", heat, "W") * positive("height of the body", height, "m")
    return hot_body_constant(p_abs) * np.cbrt(lifted * positive("stream area", stream_area, "m2") ** 2)


def climbing_stream_area(width, height, angle=STREAM_ANGLE):
    """Area of the warm air that leaves the top of a vertical surface: w L tan(angle).

    Parameters
    ----------
    width, height : float or array [m]
    angle : float or array, broadcast with the others [rad]
        At which the stream widens: 4 to 5 degrees.

    Returns
    -------
    area : broadcast shape [m2]

    Valid: sizes above 0, angle above 0 and below 0.5 rad; else RangeError is raised.
    Source: [ashrae-a99, ch. 29, eq. 22]
    """
    tail = ", the limit of a stream that clings to a surface; give radians, about 0.08"
    spread = np.tan(within("angle of the stream", positive("angle", angle, "rad"), 0.0, 0.5, "rad", tail))
    return positive("width", width, "m") * positive("height", height, "m") * spread


def boiling_tank_flow(boils_off, length, area, p_abs=101325.0):
    """Flow of warm, moist air just above a boiling tank: 5 A (G L)^(1/3), G the steam for each area.

    Parameters
    ----------
    boils_off : float or array [kg/s]
        Steam from the whole tank.
    length : float or array, broadcast with `boils_off` [m]
        Longer side, or diameter.
    area : float or array, broadcast with the others [m2]
    p_abs : float or array, broadcast with the others [Pa]

    Returns
    -------
    flow : broadcast shape [m3/s]

    Valid: all above 0; else RangeError is raised.
    Source: [ashrae-a99, ch. 29, eq. 24]
    """
    return hot_body_flow(LATENT_HEAT * positive("steam", boils_off, "kg/s"), length, area, p_abs)


def draught_offset(draught, height, velocity):
    """How far a draught carries a plume aside on its way up: u z / w.

    Parameters
    ----------
    draught : float or array [m/s]
    height : float or array, broadcast with `draught` [m]
        From the source to the hood.
    velocity : float or array, broadcast with the others [m/s]
        At which the plume rises.

    Returns
    -------
    offset : broadcast shape [m]

    Valid: draught and height of 0 or more, velocity above 0; else RangeError is raised. Offsets below the height.
    Source: [plume-theory, drift in a level draught]
    """
    rise = positive("velocity of the plume", velocity, "m/s")
    return not_negative("draught", draught, "m/s") * _height(height) / rise


def _height(height):
    return not_negative("height", height, "m")


def _strength(buoyancy):
    return positive("buoyancy", buoyancy, "m4/s3")


def _point(strength, height):
    return np.cbrt(_strength(strength)) * _height(height) ** (5 / 3)


def _excess(buoyancy, height, air_temperature):
    air = gas_temperature(air_temperature, "air temperature")
    z = positive("height", height, "m")
    return air / GRAVITY * _strength(buoyancy) ** (2 / 3) * z ** (-5 / 3)
