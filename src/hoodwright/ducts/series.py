"""Diameters in which round ducts are made."""

import numpy as np

from hoodwright.tables import load_table

MILLIMETRE = 0.001  # m, exact
INCH = 0.0254  # m, exact
SMALLEST, LARGEST = 3, 60  # in
R20 = (1.0, 1.12, 1.25, 1.4, 1.6, 1.8, 2.0, 2.24, 2.5, 2.8, 3.15, 3.55, 4.0, 4.5, 5.0, 5.6, 6.3, 7.1, 8.0, 9.0)
FINE_FROM, FINE_TO = 63.0, 1600.0  # mm


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


def fine_diameters():
    """Diameters in millimetres as workshops roll them, finer than the standard: preferred numbers R 20, smallest first.

    One step changes the area by 23 to 31 %.

    Returns
    -------
    diameters : (n,) array [m]

    Valid: 63 to 1600 mm; ask the maker which of them he has.
    Source: [common-practice, preferred numbers R 20]
    """
    decades = np.outer([10.0, 100.0, 1000.0], R20).ravel()
    return decades[(decades >= FINE_FROM) & (decades <= FINE_TO)] * MILLIMETRE


def inch_diameters(*, halves=False):
    """Diameters of round ducts in whole inches, smallest first.

    Parameters
    ----------
    halves : bool
        Half inches too.

    Returns
    -------
    diameters : (n,) array [m]

    Valid: 3 to 60 in; ask the maker which of them he has.
    Source: [common-practice, ducts in whole and half inches]
    """
    step = 0.5 if halves else 1.0
    return np.arange(SMALLEST, LARGEST + step / 2, step) * INCH
