"""Grinding, buffing and polishing: wheels, discs and belts whose hood takes a flow by table.

The tables are a regulation's least flows for a hood that stands close and catches the stream. They know nothing of
the speed of the wheel, nor of work that reaches outside the hood: that needs more.
"""

import numpy as np

from hoodwright.errors import InputError
from hoodwright.ranges import not_above, positive
from hoodwright.tables import load_table

INCH, CFM, FPM = 0.0254, 4.719474432e-4, 0.00508  # CFM as units.py rounds it, so that 390 cfm is 390 cfm
WHEEL_BRANCH_VELOCITY, WHEEL_MAIN_VELOCITY = 4500 * FPM, 3500 * FPM

WHEELS = {
    "grinding": "wheel_grinding",
    "cutting off": "wheel_grinding",
    "buffing": "wheel_buffing",
    "polishing": "wheel_buffing",
    "scratch brushing": "wheel_buffing",
}
DISCS = {
    "single-spindle disc": ("wheel_disc_level", "single_spindle_cfm"),
    "double-spindle disc": ("wheel_disc_level", "double_spindle_cfm"),
    "covered vertical-spindle disc": ("wheel_disc_upright", "covered_cfm"),
    "open vertical-spindle disc": ("wheel_disc_upright", "open_cfm"),
}
OUTLETS = {"covered vertical-spindle disc": "covered_outlets", "open vertical-spindle disc": "open_outlets"}
BELTS = "wheel_belt"


def wheel_flow(work, diameter, width):
    """Least flow of the hood of a grinding, cutting-off, buffing, polishing or scratch-brush wheel.

    A wheel wider than its row shows takes more by the ratio of the widths. The source says so of grinding wheels;
    for the others it is our reading.

    Parameters
    ----------
    work : str
        grinding, cutting off, buffing, polishing or scratch brushing.
    diameter : float or array [m]
    width : float or array, broadcast with `diameter` [m]

    Returns
    -------
    flow : broadcast shape [m3/s]

    Valid: diameter above 0 to 36 in (0.914 m), width above 0; else RangeError is raised. The five kinds of work; any
    other word raises InputError.
    Source: [us-1910-94, tables G-4 and G-5]
    """
    name = _known(work, WHEELS, "work of the wheel")
    widest = wheel_table_width(work, diameter)
    wider = np.maximum(positive("width of the wheel", width, "m") / widest, 1.0)
    return _step(name, "flow_cfm", diameter, "diameter of the wheel") * CFM * wider


def wheel_table_width(work, diameter):
    """Width up to which the table's flow holds for a wheel of this diameter.

    Parameters
    ----------
    work : str
        grinding, cutting off, buffing, polishing or scratch brushing.
    diameter : float or array, any shape [m]

    Returns
    -------
    width : same shape as `diameter` [m]

    Valid: diameter above 0 to 36 in (0.914 m); else RangeError is raised. The five kinds of work; any other word
    raises InputError.
    Source: [us-1910-94, tables G-4 and G-5]
    """
    name = _known(work, WHEELS, "work of the wheel")
    return _step(name, "width_in", diameter, "diameter of the wheel") * INCH


def disc_flow(kind, diameter):
    """Least flow of the hood of a disc grinder.

    Parameters
    ----------
    kind : str
        single-spindle disc or double-spindle disc, both level; covered vertical-spindle disc, of which half or more
        is covered, or open vertical-spindle disc.
    diameter : float or array, any shape [m]

    Returns
    -------
    flow : same shape as `diameter` [m3/s]

    Valid: diameter above 0 to 72 in (1.83 m); else RangeError is raised. The four kinds; any other word raises
    InputError.
    Source: [cal-5152, tables V-3 and V-4]
    """
    name, column = _known(kind, DISCS, "kind of disc")
    return _step(name, column, diameter, "diameter of the disc") * CFM


def disc_outlets(kind, diameter):
    """How many outlets the hood of a vertical-spindle disc has round its rim, or air spread as evenly otherwise.

    Parameters
    ----------
    kind : str
        covered vertical-spindle disc or open vertical-spindle disc.
    diameter : float or array, any shape [m]

    Returns
    -------
    outlets : same shape as `diameter` [-]

    Valid: diameter above 0 to 72 in (1.83 m); else RangeError is raised. The two kinds; any other word raises
    InputError.
    Source: [cal-5152, table V-4]
    """
    column = _known(kind, OUTLETS, "kind of disc")
    return _step("wheel_disc_upright", column, diameter, "diameter of the disc")


def belt_flow(width):
    """Least flow of the hood of a grinding or polishing belt.

    Parameters
    ----------
    width : float or array, any shape [m]

    Returns
    -------
    flow : same shape as `width` [m3/s]

    Valid: width above 0 to 9 in (0.229 m), where the copy that was read ends; else RangeError is raised.
    Source: [cal-5152, table V-5]
    """
    return _step(BELTS, "flow_cfm", width, "width of the belt", "width_to_in") * CFM


def wheel_branch_diameter(flow):
    """Widest branch duct that keeps a wheel's flow at 4500 fpm, the speed that the regulation recommends.

    Parameters
    ----------
    flow : float or array, any shape [m3/s]

    Returns
    -------
    diameter : same shape as `flow` [m]

    Valid: flow above 0; else RangeError is raised.
    Source: [us-1910-94, (b)(3)(ii)]
    """
    return np.sqrt(4 * positive("flow", flow, "m3/s") / (np.pi * WHEEL_BRANCH_VELOCITY))


def _step(name, column, size, what, axis="diameter_to_in"):
    """The row whose upper end is the first at or above the size."""
    table = load_table(name)
    ends, values = np.asarray(table.columns[axis]) * INCH, np.asarray(table.columns[column])
    tail = f", the last row of [{table.citation}]; the table says nothing beyond"
    size = not_above(what, positive(what, size, "m"), ends[-1], "m", tail)
    row = np.searchsorted(ends * (1 + 1e-9), size)
    return values[row][()]


def _known(word, words, what):
    if word not in words:
        raise InputError(f"{what} {word!r} is not known; it is one of: {', '.join(words)}")
    return words[word]
