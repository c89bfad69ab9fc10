"""Lateral exhaust of open tanks, by the withdrawn federal table of the United States, from memory.

The class of a tank is a letter for the hazard (A the worst) and a figure for how fast it gives off (1 the fastest).
"""

from hoodwright.ranges import positive, within
from hoodwright.tables import load_table

FPM = CFM_A_SQUARE_FOOT = 0.3048 / 60  # m/s
WIDEST = 2.0  # width over length


def tank_control_velocity(tank_class):
    """Air speed that lateral exhaust must keep over a tank.

    Parameters
    ----------
    tank_class : str
        A-1 to D-2; the mildest classes need general ventilation only and have no row.

    Returns
    -------
    velocity : float [m/s]

    Valid: the rows of the table; any other word raises InputError.
    Source: [us-1910-94-d, table G-14, from memory]
    """
    return load_table("tank_control_velocity").row("class", tank_class)["lateral_fpm"] * FPM


def lateral_exhaust_flow(tank_class, length, width, *, against_wall):
    """Flow of a slot along the long side of a tank.

    Parameters
    ----------
    tank_class : str
        A-1 to D-2.
    length : float [m]
        Of the side with the slot.
    width : float [m]
        Across which the slot draws.
    against_wall : bool
        Whether the hood's side stands against a wall or a baffle.

    Returns
    -------
    flow : float [m3/s]

    Valid: width over length of at most 2, else RangeError is raised; the rows of the table.
    Source: [us-1910-94-d, table G-15, from memory]
    """
    length = float(positive("length", length, "m"))
    ratio = float(positive("width", width, "m")) / length
    within("width over length", ratio, 0.0, WIDEST, "", ", the widest of [us-1910-94-d]; draw from both sides or push")
    table = load_table("tank_lateral_exhaust")
    speed = tank_control_velocity(tank_class) / FPM
    place = "against a wall" if against_wall else "standing free"
    rows = zip(*(table.columns[name] for name in ("place", "velocity_fpm", "from_ratio", "cfm_ft2")), strict=True)
    found = [rate for at, v, start, rate in rows if at == place and abs(v - speed) < 1e-6 and ratio >= start - 1e-9]
    return found[-1] * CFM_A_SQUARE_FOOT * length * width
