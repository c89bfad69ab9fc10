"""Friction in velocity pressures, as the worksheets of exhaust ventilation write it."""

from hoodwright.ranges import positive
from hoodwright.tables import load_table

FOOT = 0.3048  # m, exact
FPM = 0.00508  # m/s, exact
CFM = 0.0254**3 * 1728 / 60  # m3/s, exact


def loeffler_1980(velocity, flow, material):
    """Friction of standard air per metre of round duct, in velocity pressures.

    Published as Hf = a V^b / Q^c per foot, with V in fpm and Q in cfm. A second opinion beside Colebrook:
    a fit that holds for the sizes and velocities usual in exhaust ventilation.

    Parameters
    ----------
    velocity : float or array, any shape [m/s]
    flow : float or array, broadcast with `velocity` [m3/s]
    material : str
        One of the words in tables/friction_fit_loeffler.csv: "galvanised", "flexible", or "black iron", which the
        worksheet takes for aluminium and stainless steel too.

    Returns
    -------
    friction : broadcast shape [velocity pressures per m]

    Valid: velocity and flow above 0 (else RangeError), the materials of the table (else InputError); the source
    prints no range.
    Source: [lev-worksheet, friction per velocity pressure]
    """
    row = load_table("friction_fit_loeffler").row("material", material)
    v = positive("velocity", velocity, "m/s") / FPM
    q = positive("flow", flow, "m3/s") / CFM
    return row["a_1"] * v ** row["b_1"] / q ** row["c_1"] / FOOT
