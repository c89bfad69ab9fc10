"""What air loses on entering a hood: by the name of the hood, or by the angle of its taper.

The loss refers to the velocity pressure in the duct behind the hood. Every number keeps the name of its table.
"""

import numpy as np

from hoodwright.ranges import not_negative, positive
from hoodwright.tables import interpolate, load_table

FACE_AREA_LEAST = 2.0  # duct areas: a narrower face is not a hood of the taper table


def entry_loss_coefficient(shape):
    """Loss on entering a hood, in velocity pressures of its duct.

    Parameters
    ----------
    shape : str
        plain, flanged, bell mouth, or another row of the table.

    Returns
    -------
    loss_coefficient : float [1]

    Valid: the rows of the table; any other word raises InputError.
    Source: [exam-equations, hood-loss figure]
    """
    return load_table("hood_entry_loss").row("hood", shape)["loss_vp"]


def entry_loss_source(shape):
    """Citation of the row that `entry_loss_coefficient` reads.

    Parameters
    ----------
    shape : str
        A row of the table.

    Returns
    -------
    citation : str
        Key of the source, and the place in it.

    Valid: the rows of the table; any other word raises InputError.
    Source: [exam-equations, hood-loss figure]
    """
    return load_table("hood_entry_loss").row("hood", shape)["source"]


def taper_entry_loss(included_angle, *, rectangular=False):
    """Loss of a hood that narrows evenly to its duct, in velocity pressures of the duct.

    Parameters
    ----------
    included_angle : float or array, any shape [deg]
        Between two opposite walls; of a rectangle the greater one.
    rectangular : bool
        Whether the face is a rectangle.

    Returns
    -------
    loss_coefficient : same shape as `included_angle` [1]

    Valid: 15 to 180 degrees, straight lines between the rows; outside this RangeError is raised. The face has
    at least two duct areas: see `face_area_ratio`.
    Source: [hood-taper, tapered hoods; duct-maker-hoods, slope of 0 degrees]
    """
    column = "rectangular_vp" if rectangular else "round_vp"
    return interpolate(load_table("hood_taper_loss"), "angle_deg", column, included_angle)


def taper_entry_source(included_angle):
    """Citation of what `taper_entry_loss` reads at an angle: beyond 150 degrees also the duct maker's row at 180.

    Parameters
    ----------
    included_angle : float [deg]

    Returns
    -------
    citation : str
        Keys of the sources, and the places in them.

    Valid: any angle.
    Source: [hood-taper, tapered hoods; duct-maker-hoods, slope of 0 degrees]
    """
    rows = [] if included_angle >= 180 else ["hood-taper, tapered hoods"]
    return "; ".join([*rows, *(["duct-maker-hoods, slope of 0 degrees"] if included_angle > 150 else [])])


def major_included_angle(face_width, face_height, duct_width, duct_height, taper_length):
    """The greater of the two included angles of a tapered rectangular hood.

    Parameters
    ----------
    face_width : float or array [m]
    face_height : float or array, broadcast with the others [m]
    duct_width : float or array, broadcast with the others [m]
        Of a round duct its diameter.
    duct_height : float or array, broadcast with the others [m]
        Of a round duct its diameter.
    taper_length : float or array, broadcast with the others [m]
        From the face to the duct, along the axis.

    Returns
    -------
    included_angle : broadcast shape [deg]

    Valid: sizes above 0, else RangeError is raised. A side that widens towards the duct counts as 0.
    Source: [hood-figure, tapered hoods]
    """
    sides = (("face width", face_width), ("face height", face_height))
    ends = (("duct width", duct_width), ("duct height", duct_height))
    length = positive("taper length", taper_length, "m")
    steps = [positive(*side, "m") - positive(*end, "m") for side, end in zip(sides, ends, strict=True)]
    widest = np.maximum(np.maximum(steps[0], steps[1]), 0.0)
    return np.degrees(2 * np.arctan(widest / (2 * length)))


def face_area_ratio(face_area, duct_area):
    """Area of a hood's face over that of its duct; the taper table asks for `FACE_AREA_LEAST` or more.

    Parameters
    ----------
    face_area : float or array [m2]
    duct_area : float or array, broadcast with the other [m2]

    Returns
    -------
    ratio : broadcast shape [1]

    Valid: face of 0 or more, duct above 0; else RangeError is raised.
    Source: [hood-figure, tapered hoods]
    """
    return not_negative("face area", face_area, "m2") / positive("duct area", duct_area, "m2")
