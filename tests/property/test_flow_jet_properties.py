"""What must hold for any stream and any shares."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from analytic_air import analytic_air, lines, still_air
from hoodwright.flow import (
    Traced,
    capped_shares,
    cluster_interval,
    follow,
    heat_plume,
    nozzle_jet,
    shown_share,
    spread_of,
)

STILL = np.zeros(3)
ROOM, DENSITY = 293.15, 1.2
QUIET = still_air().arrays
FEW = settings(max_examples=25, deadline=None)
share = st.floats(0.0, 1.0)


@FEW
@given(st.floats(0.003, 0.1), st.floats(0.5, 20.0), st.floats(0.2, 3.0))
def test_a_jet_looks_the_same_at_every_size_and_speed(bore, speed, times):
    """Distances go with the opening, speeds with that in the opening."""
    area = np.pi * bore**2 / 4
    one = follow(QUIET, STILL, nozzle_jet((0, 0, 0), (0, 0, 1), area, speed, ROOM, ROOM))
    two = follow(QUIET, STILL, nozzle_jet((0, 0, 0), (0, 0, 1), area, times * speed, ROOM, ROOM))
    places = np.linspace(0.0, min(one.travelled[-1], two.travelled[-1]), 7)
    speeds = [np.interp(places, p.travelled, p.axis_speed) for p in (one, two)]
    assert speeds[1] == pytest.approx(times * speeds[0], rel=1e-3)


@FEW
@given(st.floats(10.0, 2e4), st.floats(0.005, 0.3), st.floats(1.2, 5.0))
def test_more_heat_makes_more_flow_and_more_speed(heat, area, times):
    weak, strong = (follow(QUIET, STILL, heat_plume((0, 0, 0), area, q, ROOM, DENSITY)) for q in (heat, times * heat))
    for path in (weak, strong):
        assert np.all(np.diff(path.flow) > 0) and np.all(np.diff(path.radius) > 0)
    flows = [np.interp(1.5, p.travelled, p.flow) for p in (weak, strong)]
    assert flows[1] / flows[0] == pytest.approx(np.cbrt(times), rel=2e-3)


@FEW
@given(st.floats(-0.4, 0.4), st.floats(-0.4, 0.4))
def test_a_stream_bends_to_the_side_the_draught_blows_to(u, v):
    """Turn the draught round, and the path is mirrored."""
    grid = (lines(-4, 4, 8), lines(-4, 4, 8), lines(-0.5, 5, 8))
    air, jet = analytic_air(grid).arrays, nozzle_jet((0, 0, 0), (0, 0, 1), 1e-4, 4.0, ROOM, ROOM)
    there, back = (follow(air, [way * u, way * v, 0.0], jet).places for way in (1.0, -1.0))
    n = min(len(there), len(back))
    assert there[:n, 2] == pytest.approx(back[:n, 2], abs=1e-6)
    assert there[:n, :2] == pytest.approx(-back[:n, :2], abs=1e-6)
    assert np.all(there[:, 0] * u >= -1e-9) and np.all(there[:, 1] * v >= -1e-9)


@given(st.lists(share, min_size=2, max_size=60))
def test_interval_holds_its_mean_and_stays_a_share(shares):
    low, high = cluster_interval(shares)
    assert 0.0 <= low <= np.clip(np.mean(shares), 0, 1) <= high <= 1.0
    mirrored = cluster_interval(1 - np.asarray(shares))
    assert (1 - mirrored[1], 1 - mirrored[0]) == pytest.approx((low, high), abs=1e-9)


@given(share, share)
def test_what_is_shown_never_falls_as_the_fraction_rises(a, b):
    def rank(text):
        return {"< 5 %": 0.0, "> 95 %": 100.0}.get(text) or float(text.strip("<> %")) * (text[0] != "<")

    low, high = sorted((a, b))
    assert rank(shown_share(low)) <= rank(shown_share(high))


@given(st.lists(st.floats(0.001, 1.0), min_size=1, max_size=8), st.floats(0.001, 1.0))
def test_no_hood_swallows_more_than_its_flow(plumes, flow):
    class Mouth:
        name = "hood"

    n = len(plumes)
    traced = Traced(np.ones((n, 2), np.int64), np.zeros((n, 2, 4)), np.array(plumes)[:, None], np.zeros((n, 2, 0, 3)))
    shares, limited = capped_shares(traced, (Mouth,), {"hood": flow})
    assert np.all(shares[:, 0] * plumes <= flow * (1 + 1e-9))
    assert limited == bool(np.any(np.array(plumes) > flow * (1 + 1e-9)))


@given(st.integers(0, 1000))
def test_the_spread_over_inputs_lies_about_their_mean(seed):
    shares = np.random.default_rng(seed).random((12, 5))
    low, high = spread_of(shares)
    assert shares.mean(axis=1).min() <= low <= shares.mean() <= high <= shares.mean(axis=1).max()
