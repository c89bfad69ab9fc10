"""The captured fraction and its intervals: on made-up shares, and on air whose flow is known."""

import numpy as np
import pytest

from analytic_air import analytic_air, lines, point_sink
from hoodwright.errors import InputError, RangeError
from hoodwright.flow import (
    Draught,
    Extent,
    Plan,
    Release,
    Spreads,
    Traced,
    capped_shares,
    capture,
    capture_map,
    capture_series,
    cluster_interval,
    drawn_inputs,
    escape_radius_for,
    full_interval,
    moved_to,
    nozzle_jet,
    shown_share,
    spread_of,
)

HOOD = {"hood": 0.05}
WIND = Draught((0.2, 0.0, 0.0), wander=0.06, turbulence=0.05, eddy=0.2)
PLAN = Plan(0.95, 20.0, 80, 4)


@pytest.fixture(scope="module")
def sink():
    return analytic_air((lines(-1, 1, 40),) * 3, {"hood": (point_sink, 0.0501)})


def at(*place):
    return Release(Extent("point", (place,)))


def shares_of(long_run, count, particles, rng):
    """Shares of realisations whose particles go together: most catch nearly all or nearly nothing."""
    chance = rng.beta(0.7 * long_run, 0.7 * (1 - long_run), count)
    return rng.binomial(particles, chance) / particles


@pytest.mark.parametrize("long_run", [0.1, 0.5, 0.9])
def test_sampling_interval_holds_the_long_run_value(long_run):
    """In 90 to 98 of 100 seeds; an interval that took particles for independent would hold it in fewer than 70."""
    rng, held, naive = np.random.default_rng(1), 0, 0
    for _ in range(400):
        shares = shares_of(long_run, 64, 8, rng)
        low, high = cluster_interval(shares)
        held += low <= long_run <= high
        mean = shares.mean()
        naive += abs(mean - long_run) <= 1.96 * np.sqrt(mean * (1 - mean) / (64 * 8))
    assert 0.90 <= held / 400 <= 0.98
    assert naive / 400 < 0.70


def test_four_times_the_realisations_halve_the_interval():
    rng = np.random.default_rng(2)
    widths = [np.mean([np.diff(cluster_interval(shares_of(0.4, n, 4, rng))) for _ in range(200)]) for n in (64, 256)]
    assert widths[0] / widths[1] == pytest.approx(2.0, rel=0.06)


@pytest.mark.parametrize("share", [0.0, 1.0])
def test_all_alike_still_leaves_an_interval(share):
    low, high = cluster_interval(np.full(60, share))
    assert low <= share <= high and 0.03 < high - low < 0.08


def test_computed_fraction_falls_with_the_distance_and_with_the_draught(sink):
    found = [capture(sink, sink.mouths, HOOD, at(-0.3, y, 0), WIND, PLAN, 1).fraction for y in (0.0, 0.2, 0.4)]
    assert found[0] > found[1] > found[2]
    windy = Draught((0.6, 0, 0), WIND.wander, turbulence=WIND.turbulence)
    assert capture(sink, sink.mouths, HOOD, at(-0.3, 0.2, 0), windy, PLAN, 1).fraction < found[1]


def test_fractions_of_all_ends_add_up(sink):
    c = capture(sink, sink.mouths, HOOD, at(-0.3, 0.2, 0), WIND, PLAN, 7)
    assert c.by_mouth == {"hood": c.fraction} and c.low < c.fraction < c.high
    assert (c.plan, c.seed, c.settled) == (PLAN, 7, 0.0) and 0 <= c.late <= 1 - c.fraction


def test_no_more_is_caught_than_the_hood_can_swallow(sink):
    """A hood of 0.05 m3/s takes half of a stream of 0.1 m3/s, whatever superposed flows say."""
    ends = np.ones((3, 4), np.int64)
    traced = Traced(ends, np.zeros((3, 4, 4)), np.array([[0.1], [0.05], [0.0]]), np.zeros((3, 4, 0, 3)))
    shares, limited = capped_shares(traced, sink.mouths, HOOD)
    assert shares[:, 0] == pytest.approx([0.5, 1.0, 1.0]) and limited
    traced = Traced(ends, traced.places, np.full((3, 1), 0.05), traced.tracks)
    assert capped_shares(traced, sink.mouths, HOOD)[1] is False


@pytest.mark.parametrize(
    "share, text",
    [
        (0.0, "< 5 %"),
        (0.049, "< 5 %"),
        (0.05, "5 %"),
        (0.62, "60 %"),
        (0.63, "65 %"),
        (0.95, "95 %"),
        (0.951, "> 95 %"),
        (1.0, "> 95 %"),
    ],
)
def test_shown_fractions(share, text):
    assert shown_share(share) == text


def test_escape_radius():
    assert escape_radius_for(np.array([0.1, 0.3, 0.6])) == pytest.approx([0.45, 0.45, 0.9])
    assert escape_radius_for(np.array([])).shape == (0,)


def test_a_source_moves_with_its_stream():
    jet = nozzle_jet((0, 0, 0), (0, 0, 1), 1e-4, 1.0, 293.0, 293.0)
    moved = moved_to(Release(Extent("line", ((0, 0, 0), (2, 0, 0))), jet), (5, 1, 0))
    assert moved.extent.points == ((4, 1, 0), (6, 1, 0)) and moved.jet.place == (5, 1, 0)


@pytest.mark.parametrize("middle, spread", [(0.6, 0.1), (0.3, 0.06), (0.9, 0.05)])
def test_spread_over_inputs_holds_a_value_not_yet_seen(middle, spread):
    """The lowest and highest of 39 sets, less the scatter of sampling: it holds the 40th in 90 of 100 or more."""
    rng, held = np.random.default_rng(3), 0
    for _ in range(300):
        truths = np.clip(middle + spread * rng.standard_normal(40), 0.0, 1.0)
        shares = np.stack([shares_of(np.clip(t, 1e-3, 1 - 1e-3), 16, 4, rng) for t in truths[1:]])
        low, high = spread_of(shares)
        held += low - 0.02 <= truths[0] <= high + 0.02  # less than the grid's part, which always comes on top
    assert held / 300 >= 0.90


def test_scatter_alone_is_mostly_taken_off():
    shares = np.random.default_rng(4).binomial(4, 0.5, (39, 16)) / 4
    low, high = spread_of(shares)
    assert high - low < 0.7 * np.ptp(shares.mean(axis=1))


def test_full_interval_grows_with_what_is_not_known(sink):
    plan = Plan(0.95, 20.0, 156, 2)
    sure = Spreads(0.0, 0.0, 0.0, 0.0, 0.0)
    known, unknown = (
        full_interval(sink, sink.mouths, HOOD, at(-0.3, 0.2, 0), WIND, plan, 1, s) for s in (sure, Spreads())
    )
    assert unknown.captured == known.captured and unknown.captured.seed == 1
    assert unknown.low < known.captured.fraction < unknown.high
    assert unknown.high - unknown.low > known.high - known.low
    assert unknown.low <= known.captured.low and unknown.high >= known.captured.high


def test_full_interval_holds_the_truth_of_drawn_inputs(sink):
    """A reduced run of benchmarks/captured_fraction.py: 12 draws, of which 10 or more must hold."""
    rng, held = np.random.default_rng(6), 0
    for seed in range(12):
        true = drawn_inputs(sink, (-0.3, 0.2, 0.0), Spreads(), 1, 1, rng)
        source = moved_to(at(-0.3, 0.2, 0), np.add((-0.3, 0.2, 0.0), true.offset[0]))
        wind = Draught(tuple(np.add(WIND.mean, true.draught[0])), WIND.wander, turbulence=WIND.turbulence)
        flows = {"hood": HOOD["hood"] * true.flow[0]}
        truth = capture(sink, sink.mouths, flows, source, wind, Plan(0.95, 20.0, 300, 2), 50 + seed).fraction
        found = full_interval(
            sink, sink.mouths, HOOD, at(-0.3, 0.2, 0), WIND, Plan(0.95, 20.0, 160, 2), seed, Spreads()
        )
        held += found.low <= truth <= found.high
    assert held >= 10


def test_inputs_are_drawn_with_the_stated_half_widths(sink):
    v = drawn_inputs(
        sink,
        (-0.5, 0.3, 0.0),
        Spreads(flow=0.1, position=0.04, draught=0.05, release=0.2),
        2000,
        2,
        np.random.default_rng(1),
    )
    inside = [
        np.mean(np.abs(x) < w)
        for x, w in ((v.flow - 1, 0.1), (v.offset[:, 1], 0.04), (v.draught[:, 0], 0.05), (v.strength - 1, 0.2))
    ]
    assert inside == pytest.approx([0.95] * 4, abs=0.015)
    assert np.array_equal(v.flow[::2], v.flow[1::2]) and np.all(v.draught[:, 2] == 0)


def test_a_moved_source_goes_neither_through_a_wall_nor_into_a_hood():
    walls = analytic_air((lines(-1, 1, 40),) * 3, {"hood": (point_sink, 0.0501)}, [(2, 20)])
    v = drawn_inputs(walls, (-0.3, 0.0, 0.01), Spreads(position=0.2), 300, 1, np.random.default_rng(1))
    assert np.all(0.01 + v.offset[:, 2] >= 0)
    near = analytic_air((lines(-1, 1, 40),) * 3, {"hood": (point_sink, 0.0501)})
    v = drawn_inputs(near, (-0.06, 0.0, 0.02), Spreads(position=0.2), 300, 1, np.random.default_rng(1))
    places = np.array([-0.06, 0.0, 0.02]) + v.offset
    assert not np.any(np.all(np.abs(places) < 0.049, axis=1))


def test_a_series_moves_the_source_along_the_axis(sink):
    class Mouth:
        name, centre, facing = "hood", (0.0, 0.0, 0.0), (0.0, 2.0, 0.0)

    series = capture_series(
        sink, (Mouth,), HOOD, at(9, 9, 9), Mouth, [0.2, 0.5], WIND, Plan(0.45, 20.0, 80, 2), 1, Spreads()
    )
    near, far = (s.captured for s in series)
    assert near.fraction > far.fraction and (near.plan.escape_radius, far.plan.escape_radius) == (0.45, 0.75)


def test_a_map_agrees_with_single_places(sink):
    places = [(-0.3, y, 0.0) for y in (0.0, 0.25, 0.5)]
    fractions = capture_map(sink, sink.mouths, HOOD, at(9, 9, 9), places, WIND, Plan(0.95, 20.0, 80, 4), 1)
    singles = [capture(sink, sink.mouths, HOOD, at(*p), WIND, PLAN, 2) for p in places]
    assert all(s.low - 0.05 <= f <= s.high + 0.05 for f, s in zip(fractions, singles, strict=True))
    assert capture_map(sink, sink.mouths, HOOD, at(9, 9, 9), [], WIND, PLAN, 1).shape == (0,)


@pytest.mark.parametrize(
    "call, text",
    [
        (lambda a: cluster_interval([1.0]), "an interval needs two realisations or more, got 1"),
        (lambda a: cluster_interval([1.0, 0.0], 1.2), r"level of the interval 1\.2 is above 0\.9999"),
        (lambda a: shown_share(1.2), r"captured fraction 1\.2 is above 1"),
        (lambda a: escape_radius_for(-1.0), "distance -1 m is below 0 m"),
        (lambda a: Spreads(flow=-0.1), r"spread of the flow -0\.1 is below 0"),
        (lambda a: Spreads(position=5.0), "spread of the position 5 m is above 1 m; give the half width"),
        (
            lambda a: full_interval(a, a.mouths, HOOD, at(-0.3, 0, 0), WIND, Plan(0.9, 5.0, 40, 4), 1, Spreads()),
            "40 realisations are not two for each of 39 sets; give 78 or more",
        ),
    ],
)
def test_bad_input_is_told(sink, call, text):
    with pytest.raises((InputError, RangeError), match=text):
        call(sink)
