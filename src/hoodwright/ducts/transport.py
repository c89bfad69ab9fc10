"""Air velocities that keep what is extracted moving along the duct."""

from hoodwright.tables import load_table

FPM = 0.00508  # m/s, exact


def transport_velocity_range(kind):
    """Lowest and highest design velocity in the duct for a kind of contaminant.

    Parameters
    ----------
    kind : str
        One of the words in tables/transport_velocity.csv, such as "workshop dust".

    Returns
    -------
    lowest, highest : float [m/s]
        `highest` is infinite where the table says "and up".

    Valid: the kinds of the table; another word raises InputError.
    Source: [transport-table, annex 5]
    """
    row = load_table("transport_velocity").row("kind", kind)
    return row["lowest_fpm"] * FPM, row["highest_fpm"] * FPM


def student_manual_transport_velocity(kind):
    """Recommended duct velocity by the short list of a student manual.

    Parameters
    ----------
    kind : str
        One of the words in tables/transport_velocity_student.csv, such as "light dust".

    Returns
    -------
    velocity : float [m/s]

    Valid: the kinds of the table; another word raises InputError.
    Source: [transport-si, section 10.2.3]
    """
    return load_table("transport_velocity_student").row("kind", kind)["velocity_m_s"]
