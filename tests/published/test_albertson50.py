"""[albertson50], slot jets: constants from memory; what they must obey is exact."""

import math

import pytest

from hoodwright.hoods import half_jet_flow, plane_jet_flow, plane_jet_velocity

TOL = 0.005  # half the last remembered digit of 2.28 and 0.62


@pytest.mark.memory
def test_velocity_on_the_axis():
    assert plane_jet_velocity(100.0, 1.0) * 10 == pytest.approx(2.28, rel=0, abs=TOL)


@pytest.mark.memory
def test_flow_of_the_jet():
    assert plane_jet_flow(100.0, 1.0) / 10 == pytest.approx(0.62, rel=0, abs=TOL)


@pytest.mark.memory
def test_length_of_the_core():
    assert plane_jet_velocity(5.19, 1.0) == 1.0 > plane_jet_velocity(5.3, 1.0)


# A profile exp(-y^2/b^2) that keeps its momentum has flow x velocity = sqrt(2), whatever its spread.
@pytest.mark.derived
@pytest.mark.parametrize("widths", [6.0, 50.0, 1000.0])
def test_momentum_is_kept(widths):
    product = plane_jet_flow(widths, 1.0) * plane_jet_velocity(widths, 1.0)
    rounding = 0.005 / 0.62 + 0.005 / 2.28
    assert product == pytest.approx(math.sqrt(2), rel=rounding)


@pytest.mark.derived
def test_a_half_jet_is_half_of_a_jet_from_twice_the_slot():
    assert half_jet_flow(3.0, 0.01) == pytest.approx(plane_jet_flow(3.0, 0.02))
    assert half_jet_flow(3.0, 0.01) == pytest.approx(plane_jet_flow(3.0, 0.01) / math.sqrt(2))


def test_tolerance_tells_a_round_jet():
    assert abs(6.2 / 100 * 10 - 2.28) > TOL
