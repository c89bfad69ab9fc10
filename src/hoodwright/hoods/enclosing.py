"""Enclosing hoods: the source stands inside, and air goes in at every opening.

All openings of one enclosure see the same suction, so one flow gives all of them the same velocity. Face velocity
alone proves no containment: that takes a test.
"""

import numpy as np

from hoodwright.ranges import not_below, not_negative, positive
from hoodwright.tables import load_table

METRES_A_SECOND = {"fpm": 0.3048 / 60, "m/s": 1.0}

TOTAL_ENCLOSURE_SHARE = 0.05  # of walls, floor and ceiling that may be open
TOTAL_ENCLOSURE_DIAMETERS = 4.0  # of an opening, to the nearest source
OPENING_DISCHARGE = 0.6  # of a sharp-edged opening

FOOT, TON_AN_HOUR = 0.3048, 907.18474 / 3600  # short ton
INDUCED = 10 * (FOOT / 60) / (TON_AN_HOUR * FOOT) ** (1 / 3)  # 0.1195: 10 in cfm, square feet, tons an hour and feet
FINEST_INDUCING = FOOT / 96  # 1/8 in
DUMPING = 33.3 * 600 / 2000  # of the bulk volume: 2000 lb a ton


def face_velocity_range(form):
    """Recommended range of mean air speed into every opening of an enclosure.

    Parameters
    ----------
    form : str
        spray booth, laboratory cupboard, or another row of the table.

    Returns
    -------
    low, high : float [m/s]

    Valid: the rows of the table; any other word raises InputError.
    Source: [imc-502, section 502.7.3.3; each row names its own]
    """
    row = load_table("face_velocity").row("form", form)
    return tuple(row[end] * METRES_A_SECOND[row["unit"]] for end in ("low", "high"))


def face_velocity(form, *, high_hazard):
    """Face velocity to design for: the lower end of the range, or the upper end for a high hazard.

    Taking the very end is our reading: the sources give a least value, a range, or the values of a test.

    Parameters
    ----------
    form : str
        A row of the table.
    high_hazard : bool
        Stated by whoever knows the substance.

    Returns
    -------
    velocity : float [m/s]

    Valid: the rows of the table; any other word raises InputError.
    Source: [imc-502, section 502.7.3.3, with our reading; each row names its own]
    """
    low, high = face_velocity_range(form)
    return high if high_hazard else low


def enclosure_flow(open_area, face_velocity):
    """Flow that draws air in at every opening with the face velocity: Q = A V.

    Parameters
    ----------
    open_area : float or array [m2]
        Of all openings together.
    face_velocity : float or array, broadcast with `open_area` [m/s]

    Returns
    -------
    flow : broadcast shape [m3/s]

    Valid: both above 0; else RangeError is raised.
    Source: [abulencia, example 20.4]
    """
    return positive("open area", open_area, "m2") * positive("face velocity", face_velocity, "m/s")


def opening_velocity(flow, open_area):
    """Mean velocity at every opening, the same at all of them.

    Parameters
    ----------
    flow : float or array [m3/s]
    open_area : float or array, broadcast with `flow` [m2]
        Of all openings together.

    Returns
    -------
    velocity : broadcast shape [m/s]

    Valid: flow of 0 or more, area above 0; else RangeError is raised. Openings of one kind, no draught.
    Source: [abulencia, example 20.4]
    """
    return not_negative("flow", flow, "m3/s") / positive("open area", open_area, "m2")


def velocity_from_enclosure_pressure(p_suction, density):
    """Velocity at the openings of an enclosure that stands below the room's pressure: V = 0.6 sqrt(2 p / rho).

    Parameters
    ----------
    p_suction : float or array [Pa]
        How far below the room, as a positive magnitude.
    density : float or array, broadcast with `p_suction` [kg/m3]

    Returns
    -------
    velocity : broadcast shape [m/s]

    Valid: suction of 0 or more, density above 0; else RangeError is raised. Sharp-edged openings.
    Source: [us-method-204, 0.013 mm Hg beside 3600 m/h, from memory]
    """
    return OPENING_DISCHARGE * np.sqrt(
        2 * not_negative("suction", p_suction, "Pa") / positive("density", density, "kg/m3")
    )


def opening_share(open_area, surface):
    """Share of an enclosure's walls, floor and ceiling that is open.

    Parameters
    ----------
    open_area : float or array [m2]
    surface : float or array, broadcast with `open_area` [m2]
        Four walls, floor and ceiling, with the openings.

    Returns
    -------
    share : broadcast shape [1]

    Valid: area of 0 or more, surface above 0; else RangeError is raised.
    Source: [us-method-204, at most 5 per cent]
    """
    return not_negative("open area", open_area, "m2") / positive("surface", surface, "m2")


def least_opening_distance(area):
    """Least distance from an opening of a total enclosure to the nearest source: four equivalent diameters.

    Parameters
    ----------
    area : float or array, any shape [m2]
        Of that opening.

    Returns
    -------
    distance : same shape as `area` [m]

    Valid: area above 0; else RangeError is raised.
    Source: [us-method-204, four equivalent diameters]
    """
    return TOTAL_ENCLOSURE_DIAMETERS * np.sqrt(4 * positive("area", area, "m2") / np.pi)


def purge_flow(volume, air_changes):
    """Flow that changes the air of a glove box so many times.

    Parameters
    ----------
    volume : float or array [m3]
    air_changes : float or array, broadcast with `volume` [1/s]

    Returns
    -------
    flow : broadcast shape [m3/s]

    Valid: both above 0; else RangeError is raised.
    Source: [cabinet-table, class III, about 20 an hour]
    """
    return positive("volume", volume, "m3") * positive("air changes", air_changes, "1/s")


def displaced_flow(mass_rate, bulk_density):
    """Air that bulk material pushes out of what it falls into: the volume of the bulk.

    Parameters
    ----------
    mass_rate : float or array [kg/s]
    bulk_density : float or array, broadcast with `mass_rate` [kg/m3]
        With the air between the grains.

    Returns
    -------
    flow : broadcast shape [m3/s]

    Valid: rate of 0 or more, density above 0; else RangeError is raised.
    Source: [usbm-dust-handbook, chapter 5, the volume within its dumping formula]
    """
    return not_negative("mass rate", mass_rate, "kg/s") / positive("bulk density", bulk_density, "kg/m3")


def dumping_flow(mass_rate, bulk_density):
    """Exhaust for bulk material dumped at once into a hopper: 9.99 times its bulk volume.

    The source prints 33.3 (600 T) / G in cfm, with T in short tons a minute and G in pounds a cubic foot.

    Parameters
    ----------
    mass_rate : float or array [kg/s]
    bulk_density : float or array, broadcast with `mass_rate` [kg/m3]

    Returns
    -------
    flow : broadcast shape [m3/s]

    Valid: rate of 0 or more, density above 0; else RangeError is raised.
    Source: [usbm-dust-handbook, chapter 5, truck or loader to crusher]
    """
    return DUMPING * displaced_flow(mass_rate, bulk_density)


def induced_flow(mass_rate, height, grain, open_area):
    """Air that falling grains drag into an enclosure: Q = 0.1195 A (m S^2 / D)^(1/3).

    The source prints 10 A (R S^2 / D)^(1/3) in cfm, square feet and feet. It gives the rate R in tons a minute;
    other texts, from memory, in short tons an hour. We take the hour, which asks 3.9 times as much.

    Parameters
    ----------
    mass_rate : float or array [kg/s]
    height : float or array, broadcast with the others [m]
        Of free fall.
    grain : float or array, broadcast with the others [m]
        Mean size.
    open_area : float or array, broadcast with the others [m2]
        Through which the air is dragged in.

    Returns
    -------
    flow : broadcast shape [m3/s]

    Valid: grains of 1/8 in (3.175 mm) or more, else RangeError is raised; rate and height of 0 or more.
    Source: [usbm-dust-handbook, chapter 5, railroad dump to conveyor]
    """
    tail = ", the finest of [usbm-dust-handbook, chapter 5]; use dumping_flow for finer material"
    grain = not_below("grain", positive("grain", grain, "m"), FINEST_INDUCING, "m", tail)
    fall = not_negative("mass rate", mass_rate, "kg/s") * not_negative("height", height, "m") ** 2
    return INDUCED * positive("open area", open_area, "m2") * np.cbrt(fall / grain)
