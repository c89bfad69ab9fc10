"""[cengel-fm]: worked example 14-1, where fan and exhaust duct agree: curve and answer from memory."""

import math

import pytest

from hoodwright.ducts import DuctSystem, RoomAir, Run, fan_points, solve_system
from hoodwright.network import fan_curve

CFM = 0.3048**3 / 60
INCH_WATER = 998 * 9.81 * 0.0254  # Pa, with the book's water
DENSITY = 1.184  # air of 25 degC
FLOWS = (0, 250, 500, 750, 1000, 1200)  # cfm
PRESSURES = (0.90, 0.95, 0.90, 0.75, 0.40, 0.0)  # in wg
FLOW_TOL = 5.0  # cfm: half the last digit that the book gives, 650
PRESSURE_TOL = 0.005  # in wg: half the last printed digit of 0.83


def exhaust(damper=1.8):
    """Hood, 13.4 m of 0.23 m duct with five elbows, a damper; the jet behind it with its kinetic factor of 1.05."""
    area = math.pi * 0.23**2 / 4
    curve = fan_curve([q * CFM for q in FLOWS], [p * INCH_WATER * 1.2 / DENSITY for p in PRESSURES])
    runs = [
        Run("duct", "hood", "inlet", area, 0.23, length=13.4, roughness=0.15e-3, loss=1.3 + 5 * 0.21 + damper),
        Run("fan", "inlet", "outlet", area, 0.23, fan=curve),
        Run("jet", "outlet", "room", area, 0.23, loss=1.05),
    ]
    return DuctSystem(runs, {"hood": 0.0, "room": 0.0}, air=RoomAir(298.15))


@pytest.mark.memory
def test_operating_point():  # fan.ce14: about 650 cfm at 0.83 in wg
    system = exhaust()
    (point,) = fan_points(system, solve_system(system), "fan")
    assert point.stable
    assert point.flow / CFM == pytest.approx(650, rel=0, abs=FLOW_TOL)
    assert point.pressure / INCH_WATER == pytest.approx(0.83, rel=0, abs=PRESSURE_TOL)


def test_the_tolerance_can_fail():
    system = exhaust(damper=2.1)
    (point,) = fan_points(system, solve_system(system), "fan")
    assert abs(point.flow / CFM - 650) > FLOW_TOL
