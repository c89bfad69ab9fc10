"""[cengel-fm]: worked example 14-1, an exhaust hood and duct at 600 cfm (from memory), and 10-8, a slot (read)."""

import math

import pytest

from hoodwright.ducts import duct_static_loss, friction_factor
from hoodwright.hoods import line_sink_over_surface

WATER = 998 * 9.81  # Pa per m of water column
INCH = 0.0254
VELOCITY = 6.81
P_VELOCITY = 1.184 * VELOCITY**2 / 2
KINETIC_FACTOR = 1.05
HEAD_TOL = 0.0005 + 0.709 * 2 * 0.005 / VELOCITY  # in wg: half the last digit, and of the velocity twice
# Roughness 0.15 mm and viscosity 1.562e-5 m2/s are from memory too.
REYNOLDS = 1.003e5  # 6.81 x 0.23 / 1.562e-5
FACTOR_TOL = 0.00005  # half the last printed digit


def head(elbows):
    fittings = 1.3 + elbows * 0.21 + 1.8  # hood, elbows, damper
    loss = duct_static_loss(P_VELOCITY, 0.0209, 13.4, 0.23, fittings)
    return (loss + KINETIC_FACTOR * P_VELOCITY) / WATER / INCH


@pytest.mark.memory
def test_required_head():  # fan.ce14.1h
    assert head(elbows=5) == pytest.approx(0.709, rel=0, abs=HEAD_TOL)


@pytest.mark.memory
def test_friction_factor():
    assert friction_factor(REYNOLDS, 0.15 / 230) == pytest.approx(0.0209, rel=0, abs=FACTOR_TOL)


def test_tolerances_can_fail():
    assert abs(head(elbows=4) - 0.709) > HEAD_TOL
    assert abs(friction_factor(REYNOLDS, 0.16 / 230) - 0.0209) > FACTOR_TOL


@pytest.mark.read
def test_strength_of_a_slot_of_350_mm():
    """line.sink: 0.11 m3/s over 0.35 m is 0.314 m2/s, which u = (q / pi) x / (x² + b²) must give back."""
    x, b = 0.05, 0.02
    speed = 0.11 * line_sink_over_surface(x, b, 0.35)
    assert speed * math.pi * (x**2 + b**2) / x == pytest.approx(0.314, rel=0, abs=0.0005)
