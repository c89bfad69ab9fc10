"""Air pressure by altitude, and flow at one condition told at another."""

from hoodwright.ranges import absolute_pressure, gas_temperature, numbers, within


def standard_pressure(altitude):
    """Absolute air pressure of the standard atmosphere at an altitude.

    Parameters
    ----------
    altitude : float or array, any shape [m]
        Height above sea level.

    Returns
    -------
    p_abs : same shape as `altitude` [Pa]

    Valid: -500 to 11000 m; outside this RangeError is raised.
    Source: [ashrae-f17, ch. 1, eq. 3]
    """
    tail = ", the limit of [ashrae-f17, ch. 1, eq. 3]; give the measured pressure instead"
    z = within("altitude", altitude, -500.0, 11000.0, "m", tail)
    return 101325 * (1 - 2.25577e-5 * z) ** 5.2559


def actual_flow(flow_std, temperature, p_abs, temperature_std, p_std):
    """Flow at the true condition of the air, from the flow at a reference condition. The mass stays the same.

    Reference conditions differ (0, 20, 21.1 or 25 degrees Celsius): there is no default here.

    Parameters
    ----------
    flow_std : float or array [m3/s]
        Flow as if the air were at `temperature_std` and `p_std`.
    temperature, p_abs : float or array, broadcast with `flow_std` [K], [Pa]
        True condition of the air.
    temperature_std, p_std : float or array, broadcast with `flow_std` [K], [Pa]
        Reference condition.

    Returns
    -------
    flow : broadcast shape [m3/s]

    Valid: 150 to 2000 K, 10 kPa to 1 MPa; outside this RangeError is raised.
    Source: [practice-questions, flow after heating]
    """
    return numbers("flow", flow_std) * _expansion(temperature, p_abs, temperature_std, p_std)


def standard_flow(flow, temperature, p_abs, temperature_std, p_std):
    """Flow at a reference condition, from the flow at the true condition of the air.

    Parameters
    ----------
    flow : float or array [m3/s]
        At `temperature` and `p_abs`.
    temperature, p_abs : float or array, broadcast with `flow` [K], [Pa]
        True condition of the air.
    temperature_std, p_std : float or array, broadcast with `flow` [K], [Pa]
        Reference condition.

    Returns
    -------
    flow_std : broadcast shape [m3/s]

    Valid: 150 to 2000 K, 10 kPa to 1 MPa; outside this RangeError is raised.
    Source: [practice-questions, flow after heating, solved for the standard flow]
    """
    return numbers("flow", flow) / _expansion(temperature, p_abs, temperature_std, p_std)


def _expansion(temperature, p_abs, temperature_std, p_std):
    hot, cold = gas_temperature(temperature), gas_temperature(temperature_std, "reference temperature")
    here, there = absolute_pressure(p_abs), absolute_pressure(p_std, "reference pressure")
    return hot / cold * there / here
