"""Sheet metal that ducts are made of: thickness by size, and weight."""

import numpy as np

from hoodwright.ranges import not_negative, positive, within
from hoodwright.tables import load_table

MILLIMETRE = 0.001  # m, exact
STEEL = 7850.0  # kg/m3
STAINLESS = 7900.0  # kg/m3
DENSITIES = {"galvanised": STEEL, "medium smooth": STEEL, "black iron": STEEL, "stainless": STAINLESS}


def sheet_thickness(size):
    """Thickness of the sheet of an extraction duct.

    Parameters
    ----------
    size : float or array, any shape [m]
        Diameter, or the longer side.

    Returns
    -------
    thickness : same shape as `size` [m]

    Valid: above 0 to 1.5 m, the row that holds the size; outside this RangeError is raised.
    Source: [common-practice, sheet of extraction ducts by size]
    """
    table = load_table("sheet_thickness")
    up_to, thickness = (np.array(table.columns[name]) for name in ("up_to_mm", "thickness_mm"))
    tail = f", the last row of [{table.citation}]; ask the maker for the sheet"
    given = positive("size of a duct", size, "m")
    mm = within("size of a duct", given / MILLIMETRE, 0.0, up_to[-1], "mm", tail)
    return (thickness[np.searchsorted(up_to, np.round(mm, 6))] * MILLIMETRE)[()]


def sheet_weight(area, thickness, density=STEEL):
    """Weight of plain sheet, without seams, flanges and stiffeners.

    Parameters
    ----------
    area : float or array, any shape [m2]
    thickness : float or array, broadcast [m]
    density : float or array, broadcast [kg/m3]

    Returns
    -------
    weight : broadcast shape [kg]

    Valid: area 0 or more, the others above 0; else RangeError is raised.
    Source: [common-practice, area times thickness times density]
    """
    return (
        not_negative("area", area, "m2") * positive("thickness", thickness, "m") * positive("density", density, "kg/m3")
    )


def sheet_density(material):
    """Density of the metal that ducts of a material are made of.

    Parameters
    ----------
    material : str

    Returns
    -------
    density : float or None [kg/m3]
        None where it is no sheet metal: hoses, plastics.

    Valid: any word; all but sheet metals give None.
    Source: [common-practice, density of steel]
    """
    return DENSITIES.get(material)
