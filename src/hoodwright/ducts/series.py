"""Diameters in which round ducts are made."""

import numpy as np

from hoodwright.tables import load_table

MILLIMETRE = 0.001  # m, exact


def standard_diameters(*, preferred_only=False):
    """Nominal diameters of round sheet-metal ducts, smallest first.

    One step of the preferred series changes the area by 56 to 64 %; the full series is finer.

    Parameters
    ----------
    preferred_only : bool
        Leave out the additional sizes.

    Returns
    -------
    diameters : (n,) array [m]

    Valid: 63 to 1250 mm, the sizes listed by the source.
    Source: [en1506, nominal diameters]
    """
    columns = load_table("duct_series_en1506").columns
    diameters = np.array(columns["diameter_mm"]) * MILLIMETRE
    return diameters[np.array(columns["series"]) == "preferred"] if preferred_only else diameters
