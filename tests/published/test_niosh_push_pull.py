"""[niosh-push-pull], abstract read."""

import pytest

from hoodwright.hoods import push_pull_exhaust, push_reach

TOL = 0.05  # half the last printed digit of 1.5; "two" is taken as 2.0


@pytest.mark.read
@pytest.mark.parametrize("end, printed", [(0, 1.5), (1, 2.0)])
def test_exhaust_over_the_jet_at_the_hood(end, printed):  # pp.ratio
    assert push_pull_exhaust(0.4)[end] / 0.4 == pytest.approx(printed, rel=0, abs=TOL)


@pytest.mark.read
def test_reach_in_slot_lengths():
    assert push_reach(1.5) / 1.5 == pytest.approx(6, rel=0, abs=0.5)


def test_tolerance_tells_the_ends_apart():
    assert 2 * TOL < 2.0 - 1.5
