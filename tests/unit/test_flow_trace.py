"""Particles through air whose flow is known: against exact answers, and against a second program in plain numpy."""

from dataclasses import replace
from statistics import NormalDist

import numpy as np
import pytest

from analytic_air import Opening, analytic_air, lines, point_sink
from hoodwright.errors import InputError, RangeError
from hoodwright.flow import (
    Draught,
    Extent,
    Grain,
    Plan,
    Release,
    Varied,
    calm_air,
    drawn_jets,
    drawn_starts,
    grain_of,
    nozzle_jet,
    trace,
)
from hoodwright.flow.trace import ESCAPED, LATE, SETTLED

ROOM = 293.15
HOOD = {"hood": 0.05}
POINT = Extent("point", ((0.3, 0.0, 0.0),))


def nothing(x, y, z):
    return 0 * x, 0 * x, 0 * x


def quiet(half=20.0, low=-20.0, walls=(), cells=20):
    """A box without flow; its hood is a name only."""
    return analytic_air(
        (lines(-half, half, cells), lines(-half, half, cells), lines(low, half, cells)),
        {"hood": (nothing, 1e-9)},
        walls,
    )


@pytest.fixture(scope="module")
def sink():
    """A sink of unit strength with a small cube as its mouth."""
    return analytic_air((lines(-1, 1, 60),) * 3, {"hood": (point_sink, 0.0334)})


def run(air, release, draught, plan, seed=1, **more):
    return trace(air, air.mouths, HOOD, release, draught, plan, np.random.default_rng(seed), **more)


def test_a_sink_in_a_stream_catches_what_lies_in_its_tube(sink):
    """Between start and infinity the flow through a disc is U pi r^2 + Q/2 (1 - cos a); all of it enters below Q."""
    q, u, x = HOOD["hood"], 0.2, 0.8
    plan = Plan(0.99, 30.0, 300, 1)
    ends = run(sink, Release(Extent("line", ((-x, 0, 0), (-x, 0.5, 0)))), Draught((u, 0, 0)), plan, kept=2)
    start, caught = ends.tracks[:, 0, 0, 1], ends.ends[:, 0] == 1
    through = u * np.pi * start**2 + q / 2 * (1 - x / np.hypot(x, start))
    assert through[caught].max() < q * 1.02 and through[~caught].min() > q * 0.98


def hashed(x):
    x = (x ^ (x >> 16)) * 0x7FEB352D & 0xFFFFFFFF
    x = (x ^ (x >> 15)) * 0x846CA68B & 0xFFFFFFFF
    return x ^ (x >> 16)


def twin(start, wind, sigma, eddy, plan, seed, step):
    """Even air, no jet, no walls: the same random walk, written again in numpy for all particles at once."""
    table = np.array([NormalDist().inv_cdf((n + 0.5) / 65536) for n in range(65536)])
    r, p = np.meshgrid(np.arange(plan.realisations), np.arange(plan.particles), indexing="ij")
    key = hashed(hashed(hashed(seed) + r) + p)
    state = np.stack([table[hashed(key + c + 1) & 65535] for c in range(3)], -1)
    place, t, count, still = np.full((*r.shape, 3), start, float), 0.0, 8, eddy / (sigma + 1e-9)
    while t < plan.time_limit:
        dt = min(step, plan.time_limit - t)
        keep = np.exp(-dt / still)
        new = np.stack([table[hashed(key + count + c) & 65535] for c in range(3)], -1)
        state = keep * state + np.sqrt(1 - keep**2) * new
        place, t, count = place + dt * (np.asarray(wind) + sigma * state), t + dt, count + 3
    return place


def test_the_kernel_walks_as_its_twin_in_numpy():
    plan, wind = Plan(30.0, 2.0, 3, 2), (0.3, -0.1, 0.05)
    traced = run(quiet(), Release(POINT), Draught(wind, turbulence=0.2, eddy=0.5), plan, seed=5)
    rng = np.random.default_rng(5)  # what a trace draws before its seed: draughts, then tilts and pulses
    rng.standard_normal((3, 3)), rng.random((3, 3)), rng.standard_normal((3, 2)), rng.standard_normal(3)
    rng.random((6, 3))
    expected = twin(POINT.points[0], wind, 0.2, 0.5, plan, int(rng.integers(2**32)), 0.1)
    assert traced.places[..., :3] == pytest.approx(expected, abs=2e-6)
    assert np.all(traced.ends == LATE)


def test_random_motion_spreads_smoke_as_taylor_says():
    """Variance 2 sigma^2 T (t - T (1 - exp(-t/T))) in each direction, T = eddy / sigma."""
    plan, sigma, eddy = Plan(60.0, 5.0, 1500, 2), 0.1, 0.2
    traced = run(quiet(), Release(POINT), Draught(turbulence=sigma, eddy=eddy), plan)
    moved = traced.places[..., :3] - np.array(POINT.points[0])
    span = eddy / sigma
    expected = 2 * sigma**2 * span * (5.0 - span * (1 - np.exp(-5.0 / span)))
    assert moved.reshape(-1, 3).var(axis=0) == pytest.approx(expected, rel=4 * np.sqrt(2 / 3000))


def test_even_smoke_stays_even_where_walls_calm_the_air():
    """The well-mixed condition: without the drift term smoke gathers where the air is calm."""
    walls = [(axis, at) for axis in range(3) for at in (0, 10)]
    centres = np.meshgrid(*(lines(0.05, 0.95, 9),) * 3, indexing="ij")
    near = np.min([np.minimum(c, 1 - c) for c in centres], axis=0)
    air = replace(analytic_air((lines(0, 1, 10),) * 3, {"hood": (nothing, 1e-9)}, walls), near=near)
    release = Release(Extent("box", ((0.0, 0.0, 0.0), (1.0, 1.0, 1.0))))
    plan = Plan(5.0, 20.0, 1500, 1)
    places = run(air, release, Draught(turbulence=0.2, eddy=0.3), plan).places[:, 0, :3]
    for axis in range(3):
        share = np.mean((places[:, axis] < 0.15) | (places[:, axis] > 0.85))
        assert share == pytest.approx(0.3, abs=3.5 * np.sqrt(0.3 * 0.7 / 1500))


def test_smoke_in_a_free_jet_spreads_wider_than_its_speed():
    """Root mean square radius over that of the speed's bell: 0.74 to 0.79, which is a bell 1.1 to 1.3 times as wide."""
    jet = nozzle_jet((0, 0, 0), (0, 0, 1), np.pi * 0.01**2 / 4, 10.0, ROOM, ROOM)
    release = Release(Extent("point", ((0.0, 0.0, 0.0),)), jet)
    traced = run(quiet(), release, Draught(), Plan(15.0, 4.0, 300, 2), kept=401)
    tracks = traced.tracks.reshape(-1, 401, 3)
    at = np.argmax(tracks[:, :, 2] > 0.6, axis=1)
    there = tracks[np.arange(len(at)), at][at > 0]
    radius = np.sqrt(np.mean(np.sum(there[:, :2] ** 2, axis=1)))
    assert 0.71 < radius / (0.11 * 0.6) < 0.82


def test_a_grain_settles_on_the_floor_and_gas_does_not():
    air = quiet(half=2.0, low=0.0, walls=[(2, 0)])
    plan = Plan(3.0, 30.0, 2, 1)
    grain = Release(Extent("point", ((0.0, 0.0, 1.0),)), grain=Grain(settling=0.1))
    fell = run(air, grain, Draught(), plan)
    assert np.all(fell.ends == SETTLED) and fell.places[..., 3] == pytest.approx(10.0, abs=0.2)
    assert np.all(run(air, replace(grain, grain=Grain()), Draught(), plan).ends == LATE)


def test_a_heavy_grain_lags_behind_air_that_speeds_up(sink):
    """Drawn in from rest, it arrives later the longer it takes to follow."""
    plan, place = Plan(0.9, 60.0, 2, 1), Extent("point", ((0.3, 0.01, 0.02),))
    times = [
        run(sink, Release(place, grain=Grain(0.0, tau)), Draught(), plan).places[0, 0, 3] for tau in (0.0, 0.003, 0.3)
    ]
    assert times[0] < times[2] and times[1] == pytest.approx(times[0], rel=0.02)
    assert times[0] == pytest.approx(4 * np.pi / 3 * 0.3**3 / HOOD["hood"], rel=0.05)


def test_who_leaves_the_radius_has_escaped(sink):
    lost = run(sink, Release(POINT), Draught((2.0, 0, 0)), Plan(0.5, 10.0, 2, 1))
    assert np.all(lost.ends == ESCAPED)


def test_the_same_seed_gives_the_same_answer_on_any_number_of_cores(sink, monkeypatch):
    jet = nozzle_jet((0.3, 0, 0), (0, 0, 1), 1e-4, 1.0, ROOM, ROOM)
    release = Release(POINT, jet, tilt=0.1, pulsing=0.2)
    draught = Draught((0.1, 0, 0), 0.05, turbulence=0.05)
    answers = []
    for cores in (1, 3):
        monkeypatch.setattr("os.cpu_count", lambda cores=cores: cores)
        answers.append(run(sink, release, draught, Plan(0.9, 5.0, 7, 3)))
    assert np.array_equal(answers[0].places, answers[1].places)
    assert not np.array_equal(answers[0].places, run(sink, release, draught, Plan(0.9, 5.0, 7, 3), seed=2).places)


def test_varied_inputs_reach_their_realisation():
    varied = Varied(np.ones(2), np.array([[0, 0, 0], [0, 0.1, 0]]), np.array([[0, 0, 0], [0.5, 0, 0]]), np.ones(2))
    places = run(quiet(), Release(POINT), Draught(), Plan(5.0, 2.0, 2, 1), varied=varied).places[:, 0, :3]
    assert places == pytest.approx(np.array([[0.3, 0, 0], [1.3, 0.1, 0]]), abs=1e-5)


@pytest.mark.parametrize(
    "form, points, low, high",
    [
        ("point", ((1, 2, 3),), (1, 2, 3), (1, 2, 3)),
        ("line", ((0, 0, 0), (2, 0, 0)), (0, 0, 0), (2, 0, 0)),
        ("box", ((0, 0, 0), (1, 2, 3)), (0, 0, 0), (1, 2, 3)),
        ("path", ((0, 0, 0), (1, 0, 0), (1, 3, 0)), (0, 0, 0), (1, 3, 0)),
    ],
)
def test_sources_of_every_form_are_filled_evenly(form, points, low, high):
    places = Extent(form, points).drawn(4000, np.random.default_rng(1))
    assert np.all(places >= np.array(low) - 1e-12) and np.all(places <= np.array(high) + 1e-12)
    if form == "path":
        assert np.mean(places[:, 1] > 0) == pytest.approx(0.75, abs=0.03)
    else:
        assert places.mean(axis=0) == pytest.approx((np.array(low) + high) / 2, abs=0.08)


def test_streams_tilt_and_pulse_about_what_is_stated():
    jet = nozzle_jet((0, 0, 0), (0, 1, 0), 1e-4, 2.0, ROOM, ROOM)
    rows, sideways = drawn_jets(Release(POINT, jet, 0.1, 0.25), 4000, np.random.default_rng(1))
    assert rows[:, 3].mean() == pytest.approx(jet.flow, rel=0.02) and rows[:, 3].std() == pytest.approx(
        0.25 * jet.flow, rel=0.1
    )
    ways = rows[:, 4:7] / np.linalg.norm(rows[:, 4:7], axis=1, keepdims=True)
    assert ways[:, 0].std() == pytest.approx(0.1, rel=0.05) and ways[:, 2].std() == pytest.approx(0.1, rel=0.05)
    starts = drawn_starts(Release(POINT, jet), rows, sideways, 3, np.random.default_rng(2))
    assert np.linalg.norm(starts - rows[:, None, :3], axis=2).max() <= 0.9 * jet.radius + 1e-12
    assert np.abs(np.sum((starts - rows[:, None, :3]) * ways[:, None], axis=2)).max() < 1e-12


def test_grains_of_ten_micrometres():
    """Settling 3.0 mm/s, relaxation 0.31 ms: 10 um of unit density in air of 20 degC."""
    grain = grain_of(10e-6, 1000.0, 1.2, 1.81e-5)
    assert (grain.settling, grain.relaxation) == (pytest.approx(3.0e-3, rel=0.02), pytest.approx(0.307e-3, rel=0.01))


def test_turbulence_fades_within_an_eddy():
    assert calm_air(np.array([0.0, 0.1, 0.2, 5.0]), 0.2) == pytest.approx([0.0, 0.5, 1.0, 1.0])
    assert calm_air(np.array([]), 0.2).shape == (0,)


@pytest.mark.parametrize(
    "call, text",
    [
        (lambda a: run(a, Release(POINT), Draught(), Plan(0.2, 5.0, 2, 1)), "escape radius 0.2 m is not above 0.3 m"),
        (
            lambda a: trace(a, a.mouths, {"hood": 0.0}, Release(POINT), Draught(), Plan(), np.random.default_rng()),
            "no hood draws any air",
        ),
        (lambda a: Draught((0.0, 25.0, 0.0)), "draught 25 m/s is above 10 m/s"),
        (lambda a: Draught((0.0, float("nan"), 0.0)), "draught nan is not a finite number"),
        (lambda a: Draught(turbulence=-0.1), "turbulence -0.1 m/s is below 0 m/s"),
        (lambda a: Plan(realisations=1), "1 realisations of 4 particles: give at least 2 of 1"),
        (lambda a: Plan(time_limit=0.0), "time limit 0 s is not above 0 s"),
        (lambda a: Extent("line", ((0, 0, 0),)), "a source of the form 'line' takes 2 points, got 1"),
        (lambda a: grain_of(50e-6, 2600.0, 1.2, 1.8e-5), "diameter of the particle 5e-05 m is above 3e-05 m"),
        (lambda a: calm_air(np.ones(2), 0.0), "size of an eddy 0 m is not above 0 m"),
    ],
)
def test_bad_input_is_told(sink, call, text):
    with pytest.raises((InputError, RangeError), match=text):
        call(sink)


def test_only_hoods_that_draw_count_for_the_radius(sink):
    mouths = (*sink.mouths, Opening("idle", (0.3, 0.0, 0.0)))
    with pytest.raises(InputError, match=r"not above 0\.3 m"):
        trace(sink, mouths, HOOD, Release(POINT), Draught(), Plan(0.2, 1.0, 2, 1), np.random.default_rng(1))
