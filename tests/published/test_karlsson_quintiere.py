"""[karlsson-quintiere], chapter 4: formulas and answers as an open program quotes them, equation and example named."""

import math

import pytest

from hoodwright.hoods import (
    buoyancy_flux,
    heskestad_1984_axis_excess,
    heskestad_1984_axis_velocity,
    top_hat_constant,
    top_hat_plume_flow,
    top_hat_plume_radius,
)

AIR, DENSITY, CP = 293.0, 1.2, 1005.0  # the program takes cp as 1.0 kJ/(kg K)
WEAK = 0.15  # even entrainment of the ideal plume
TOL_FLOW = 0.005 + 0.95 * 0.01 + 0.95 * 0.005 / 3  # half a digit; 0.20 for 0.198; 0.5 % of cp to the power 1/3
TOL_WEAK = 0.5 + 73 * 0.01 + 73 * 0.005  # K: half a digit, 0.20 for 0.198, cp
TOL_STRONG = 5 + 140 * 0.005 * 2 / 3  # K: "about 140", to ten; cp


@pytest.mark.read
def test_constant_of_the_ideal_plume():
    """Equation 4.19: 0.20 for the mass flow."""
    assert top_hat_constant(WEAK) == pytest.approx(0.20, rel=0, abs=0.005)


@pytest.mark.read
@pytest.mark.xfail(strict=True, reason="1.946 follows: the last digit is cut off, not rounded")
def test_velocity_of_the_ideal_plume():
    """Equation 4.18: 1.94."""
    velocity = top_hat_constant(WEAK) / (math.pi * top_hat_plume_radius(1.0, WEAK) ** 2)
    assert velocity == pytest.approx(1.94, rel=0, abs=0.005)


@pytest.mark.read
def test_mass_flow_of_example_4_2():
    """70 kW, 2 m up: about 0.95 kg/s."""
    flow = DENSITY * top_hat_plume_flow(buoyancy_flux(70e3, AIR, DENSITY), 2.0, WEAK)
    assert flow == pytest.approx(0.95, rel=0, abs=TOL_FLOW)


@pytest.mark.read
def test_temperature_of_example_4_2():
    """All the heat is in the plume: about 73 K more than the air."""
    flow = DENSITY * top_hat_plume_flow(buoyancy_flux(70e3, AIR, DENSITY), 2.0, WEAK)
    assert 70e3 / (CP * flow) == pytest.approx(73, rel=0, abs=TOL_WEAK)


@pytest.mark.read
def test_axis_temperature_of_example_4_3():
    """1690 kW, 0.7 of it convective, 6 m up, origin at 0.01 m: about 140 K more than the air."""
    buoyancy = buoyancy_flux(0.7 * 1690e3, AIR, DENSITY)
    assert heskestad_1984_axis_excess(buoyancy, 6.0 - 0.01, AIR) == pytest.approx(140, rel=0, abs=TOL_STRONG)


@pytest.mark.read
def test_axis_velocity_of_equation_4_26():
    """3.4 (g / (cp T rho))^(1/3) Q^(1/3) z^(-1/3) in kW and kJ, written out for 1 kW at 1 m."""
    printed = 3.4 * (9.81 / (1.0 * AIR * DENSITY)) ** (1 / 3)
    found = heskestad_1984_axis_velocity(buoyancy_flux(1000.0, AIR, DENSITY), 1.0)
    assert found == pytest.approx(printed, rel=0.05 / 3.4 / 2 + 0.005 / 3)


def test_tolerances_can_fail():
    other = DENSITY * top_hat_plume_flow(buoyancy_flux(70e3, AIR, DENSITY), 2.0, 0.16)
    assert abs(other - 0.95) > TOL_FLOW and abs(70e3 / (CP * other) - 73) > TOL_WEAK
    buoyancy = buoyancy_flux(1690e3, AIR, DENSITY)
    assert abs(heskestad_1984_axis_excess(buoyancy, 6.0, AIR) - 140) > TOL_STRONG
