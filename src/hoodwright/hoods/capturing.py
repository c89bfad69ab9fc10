"""Capturing hoods: how fast the air must move at the source, and the flow that takes.

Release classes:
still   given off at hardly any speed into still air: drying, degreasing, evaporation
gentle  given off slowly: soldering, welding, pouring from low height
driven  given off with force: spraying, filling, crushing
thrown  flung out at speed: grinding, abrasive blasting
"""

import numpy as np

from hoodwright.ranges import not_above, positive
from hoodwright.tables import load_table

INCH, FOOT = 0.0254, 0.3048  # m, exact
CFM = FOOT**3 / 60  # m3/s, exact
PER_UNIT = {"cfm": CFM, "cfm_ft": CFM / FOOT, "cfm_ft2": CFM / FOOT**2, "cfm_in": CFM / INCH}

RELEASES = ("still", "gentle", "driven", "thrown")


def capture_velocity_range(release):
    """Recommended range of air speed at the farthest point of the source.

    A thrown stream of particles is to be received or enclosed. Its range is for the air it drags along only.

    Parameters
    ----------
    release : str
        still, gentle, driven or thrown.

    Returns
    -------
    low, high : float [m/s]

    Valid: the four release classes; any other word raises InputError.
    Source: [capture-table, table 2.3]
    """
    row = load_table("capture_velocity").row("release", release)
    return row["low_m_s"], row["high_m_s"]


def capture_velocity(release, *, high_hazard):
    """Capture velocity to design for: the lower end of the range, or the upper end for a high hazard.

    The table asks for values towards the upper end for a higher hazard or output, more draught, or a small
    hood. Taking the very end is our reading. At the extreme of hazard, enclose instead; a thrown stream of
    particles is to be received or enclosed, not captured.

    Parameters
    ----------
    release : str
        still, gentle, driven or thrown.
    high_hazard : bool
        Stated by whoever knows the substance.

    Returns
    -------
    velocity : float [m/s]

    Valid: the four release classes; any other word raises InputError.
    Source: [capture-table, table 2.3, with our reading of its notes]
    """
    low, high = capture_velocity_range(release)
    return high if high_hazard else low


def required_flow(capture_velocity, velocity_per_flow):
    """Flow that brings the capture velocity to the source.

    Parameters
    ----------
    capture_velocity : float or array [m/s]
    velocity_per_flow : float or array, broadcast with `capture_velocity` [1/m2]
        From one of the centreline laws, at the distance of the source.

    Returns
    -------
    flow : broadcast shape [m3/s]

    Valid: both above 0; else RangeError is raised.
    Source: [potential-flow, velocity proportional to flow]
    """
    return positive("capture velocity", capture_velocity, "m/s") / positive(
        "velocity per flow", velocity_per_flow, "1/m2"
    )


def welding_hood_reach():
    """Greatest distance from arc or torch in the table for movable welding hoods.

    Returns
    -------
    distance : float [m]

    Valid: always.
    Source: [us-1910-252, (c)(3)(i), table]
    """
    return load_table("welding_hood").columns["zone_in"][-1] * INCH


def welding_hood_flow(distance):
    """Least flow of a freely movable welding hood, for 100 fpm at the far end of its zone.

    Parameters
    ----------
    distance : float or array, any shape [m]
        From arc or torch; the zone that holds it rules.

    Returns
    -------
    flow : same shape as `distance` [m3/s]

    Valid: above 0 to 12 in (305 mm), else RangeError is raised. More is asked where cadmium is brazed or cut.
    Source: [us-1910-252, (c)(3)(i), table]
    """
    table = load_table("welding_hood").columns
    x = positive("distance", distance, "m")
    tail = ", the last zone of [us-1910-252, (c)(3)(i)]; bring the hood closer"
    not_above("distance", x, welding_hood_reach(), "m", tail)
    zone = np.searchsorted(np.asarray(table["zone_in"]) * INCH * (1 + 1e-9), x)
    return np.asarray(table["flow_cfm"])[np.minimum(zone, len(table["zone_in"]) - 1)] * CFM


def form_flow_range(form, area, length):
    """Flow that tables ask of a form of hood: by its opening's area or length, the tool's diameter, or flat.

    Parameters
    ----------
    form : str
        A row of tables/hood_forms.csv, such as "downdraught bench".
    area : float [m2]
        Of the opening or grille.
    length : float [m]
        The opening's longer side; of an on-tool grinder the diameter of its wheel.

    Returns
    -------
    low, high : float [m3/s]

    Valid: the rows of the table, else InputError; area and length above 0, else RangeError is raised.
    Source: [hygiene-table-1595, exhaust volume by operation; other rows name their own source]
    """
    row = load_table("hood_forms").row("form", form)
    size = {"area": positive("area", area, "m2"), "flat": 1.0}.get(row["basis"], positive("length", length, "m"))
    return tuple(float(row[end] * PER_UNIT[row["unit"]] * size) for end in ("low", "high"))


def form_source(form):
    """Where the flow of a form of hood was found, as a citation.

    Parameters
    ----------
    form : str
        A row of tables/hood_forms.csv.

    Returns
    -------
    citation : str
        Key of the source and place.

    Valid: the rows of the table; any other word raises InputError.
    Source: [hygiene-table-1595, exhaust volume by operation]
    """
    row = load_table("hood_forms").row("form", form)
    return f"{row['row_source']}, {row['place']}"
