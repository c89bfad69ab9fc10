"""How strongly air resists shear."""

from hoodwright.ranges import within

SUTHERLAND_FACTOR = 1.458e-6  # kg/(m s K^0.5)
SUTHERLAND_TEMPERATURE = 110.4  # K


def viscosity(temperature):
    """Dynamic viscosity of dry air, by Sutherland's formula; pressure hardly matters.

    Parameters
    ----------
    temperature : float or array, any shape [K]

    Returns
    -------
    viscosity : same shape as `temperature` [Pa s]

    Valid: 170 to 1900 K, within 2 %; outside this RangeError is raised.
    Source: [us-atmosphere-76, Sutherland's formula]
    """
    tail = ", the limit of [us-atmosphere-76, Sutherland's formula]; give kelvin inside it"
    t = within("temperature", temperature, 170.0, 1900.0, "K", tail)
    return SUTHERLAND_FACTOR * t**1.5 / (t + SUTHERLAND_TEMPERATURE)
