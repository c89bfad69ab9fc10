"""[push-pull-figure], read on an engineering page."""

import pytest

from hoodwright.hoods import push_flow_of_figure, push_pull_hood_height, push_pull_tank_exhaust

FOOT = 0.3048
CFM = FOOT**3 / 60
FACTORS = [(4, 2.0), (8, 1.4), (12, 1.4), (20, 1.0), (30, 0.7)]  # ft of throw, factor; at 8 ft two rows meet
TOL = 0.05  # half the last printed digit
TOL_HEIGHT = 0.005  # 0.18: half the last printed digit


@pytest.mark.read
@pytest.mark.parametrize("throw, printed", FACTORS)
def test_entrainment_factor(throw, printed):
    assert 1 / push_flow_of_figure(1.0, throw * FOOT) / throw == pytest.approx(printed, rel=0, abs=TOL)


@pytest.mark.read
@pytest.mark.parametrize("end, printed", [(0, 100), (1, 150)])
def test_exhaust_for_each_square_foot_of_tank(end, printed):
    assert push_pull_tank_exhaust(24 * FOOT**2)[end] / CFM == pytest.approx(24 * printed, rel=1e-9)


@pytest.mark.read
def test_height_of_the_hood():
    assert push_pull_hood_height(1.0) == pytest.approx(0.18, rel=0, abs=TOL_HEIGHT)


def test_tolerances_tell_rows_apart():
    assert 2 * TOL < 1.0 - 0.7 and 2 * TOL_HEIGHT < 0.20 - 0.18
