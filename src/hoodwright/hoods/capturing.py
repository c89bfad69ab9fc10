"""Capturing hoods: how fast the air must move at the source, and the flow that takes.

Release classes:
still   given off at hardly any speed into still air: drying, degreasing, evaporation
gentle  given off slowly: soldering, welding, pouring from low height
driven  given off with force: spraying, filling, crushing
thrown  flung out at speed: grinding, abrasive blasting
"""

from hoodwright.ranges import positive
from hoodwright.tables import load_table

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
