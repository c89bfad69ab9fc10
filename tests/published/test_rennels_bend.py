"""[rennels-bend]: the one value that the open library prints: 30 degrees, smooth wall, Reynolds number 1e5."""

import pytest

from hoodwright.ducts import friction_factor, rounded_bend_loss

TOL = 0.000005 + 0.11519 * 0.001  # half the last digit; the library's friction factor may differ by 0.1 %


def bend(angle=30.0):
    return rounded_bend_loss(angle, 20 / 4.02, friction_factor(1e5, 0.0))


@pytest.mark.read
def test_rounded_bend():  # duct.bend
    assert bend() == pytest.approx(0.11519, rel=0, abs=TOL)


def test_tolerance_tells_half_a_degree_apart():
    assert abs(bend(30.5) - 0.11519) > TOL
