"""Samples of a duct system: against answers by hand, the solver itself, and what they say when they cannot."""

import math

import numpy as np
import pytest

from hoodwright.ducts import DuctSpreads, flow_samples
from hoodwright.ducts.spread import _Draws, _TreeSamples
from hoodwright.ducts.system import DuctSystem, Meeting, Run
from hoodwright.errors import Cancelled, NoSolution, RangeError
from hoodwright.jobs import Progress
from hoodwright.network import Network, fan_curve
from random_networks import random_network

COUNT = 4000
EXACT = DuctSpreads(1.0, 1.0, 1.0, 1.0)
FLAT = fan_curve([0.0, 1.0], [600.0, 600.0])


def run(name, start, end, **more):
    return Run(name, start, end, 0.01, 0.1, **more)


def one_way(**more):
    """A loss of 4 velocity pressures against a fan of 600 Pa at any flow."""
    runs = [run("duct", "hood", "fan", loss=4.0, **more), run("fan", "fan", "outside", fan=FLAT)]
    return DuctSystem(runs, {"hood": 0.0, "outside": 0.0})


def two_hoods(law="tabulated"):
    runs = [
        run("A", "hood A", "J", loss=2.0, length=4.0, roughness=1e-4),
        run("B", "hood B", "J", loss=1.5, length=2.0, roughness=1e-4),
        run("leak", "room", "J", coefficient=3e5, exponent=1 / 0.65, leak=True),
        Run("main", "J", "fan", 0.02, 0.16, length=5.0, roughness=1e-4),
        Run("fan", "fan", "outside", 0.02, 0.16, loss=1.0, fan=fan_curve([0.0, 0.3, 0.6], [1500.0, 1300.0, 200.0])),
    ]
    pressures = {"hood A": 0.0, "hood B": 0.0, "room": 0.0, "outside": 0.0}
    return DuctSystem(runs, pressures, [Meeting("J", law, {"B": 0.5}, {"B": 0.2})])


def samples(system, wanted, spreads=None, count=COUNT, seed=1, **more):
    return flow_samples(system, wanted, count, np.random.default_rng(seed), spreads, **more)


def log_spread(flow):
    return np.log(flow).std(axis=0)


def of_sampling(sigma, count=COUNT):
    """Five standard errors of a standard deviation."""
    return 5 * sigma / math.sqrt(2 * count)


def test_without_spreads_every_sample_is_the_computed_answer():
    found = samples(two_hoods(), ["A", "B"], EXACT, 300)
    assert np.allclose(found.flow, found.computed, rtol=1e-6)
    assert found.unsettled == 0


@pytest.mark.parametrize("name", ["fan", "losses"])
def test_flow_goes_as_the_root_of_pressure_over_loss(name):
    factors = {"roughness": 1.0, "losses": 1.0, "fan": 1.0, "leak": 1.0, name: 1.2}
    sigma = math.log(1.2) / 1.96 / 2
    found = samples(one_way(), ["duct"], DuctSpreads(**factors))
    assert log_spread(found.flow[:, 0]) == pytest.approx(sigma, abs=of_sampling(sigma))
    assert np.median(found.flow) == pytest.approx(found.computed[0], rel=0.01)


def test_what_leaks_in_varies_as_its_spread_says():
    system = DuctSystem(
        [run("leak", "room", "sucked", coefficient=1e5, exponent=1 / 0.65, leak=True)], {"room": 0.0, "sucked": -500.0}
    )
    sigma = math.log(3.0) / 1.96
    found = samples(system, ["leak"], DuctSpreads(leak=3.0))
    assert log_spread(found.flow[:, 0]) == pytest.approx(sigma, abs=of_sampling(sigma))


def test_rougher_ducts_only_carry_less():
    rough = samples(two_hoods(), ["main"], DuctSpreads(2.0, 1.0, 1.0, 1.0)).flow[:, 0]
    order = np.argsort(np.random.default_rng(1).standard_normal(256))
    assert np.all(np.diff(rough[:256][order]) <= 1e-9)


def test_mass_is_kept_in_every_sample():
    flow = samples(two_hoods(), ["A", "B", "leak", "main"], count=500).flow
    assert np.allclose(flow[:, :3].sum(axis=1), flow[:, 3])


def test_a_system_with_a_ring_goes_the_slow_way_to_the_same():
    ring = [run("left", "J", "fan", loss=4.0), run("right", "J", "fan", loss=4.0)]
    system = DuctSystem([run("in", "hood", "J"), *ring, *one_way().runs[1:]], {"hood": 0.0, "outside": 0.0})
    factors = DuctSpreads(1.0, 1.0, 1.2, 1.0)
    by_ring, by_tree = samples(system, ["left"], factors, 100), samples(one_way(), ["duct"], factors, 100)
    assert by_ring.flow == pytest.approx(by_tree.flow, rel=1e-4)


def test_the_same_seed_gives_the_same_samples():
    first, second, other = (samples(two_hoods(), ["A"], count=50, seed=seed).flow for seed in (7, 7, 8))
    assert np.array_equal(first, second)
    assert not np.array_equal(first, other)


def test_more_samples_begin_with_the_same_ones():
    few, many = (samples(two_hoods(), ["A"], count=count).flow for count in (256, 600))
    assert np.array_equal(few, many[:256])


def test_each_sample_is_what_the_solver_finds():
    case = random_network(12, 3, law="tabulated", leaks=0.3)
    part = Network(case.graph).parts[0]
    leaking = np.asarray(case.branches.coefficient) > 0
    draws = _Draws(leaking, 1, DuctSpreads(), np.random.default_rng(2))
    draw, wanted = draws.next(5), np.arange(12)
    found = np.empty((5, 12))
    nominal = Network(case.graph).solved(case.branches).mass_flow
    _TreeSamples(part, case.branches, draws, nominal, wanted).solve(draw, found)
    for s in range(5):
        assert found[s] == pytest.approx(by_the_solver(case, leaking, draw, s)[:12], abs=1e-6)


def by_the_solver(case, leaking, draw, s):
    """The sample, with factors put on by hand."""
    one, losses = case.branches, draw.losses[s]
    junctions = [
        type(j)(
            j.law, j.inlets, j.common, tuple(v * losses[i] for v, i in zip(j.values, j.inlets, strict=True)), j.leak
        )
        for j in case.graph.junctions
    ]
    graph = type(case.graph)(case.graph.start, case.graph.end, case.graph.pressure, junctions)
    leak = np.where(leaking, draw.leak[s] ** -one.exponent, 1.0)
    varied = one.changed(
        roughness=one.roughness * draw.roughness[s],
        loss=one.loss * losses,
        coefficient=one.coefficient * leak,
        curves=(one.curves[0].scaled(pressure=draw.fan[s, 0]),),
    )
    return Network(graph).solved(varied).mass_flow


def test_it_reports_and_stops_when_told():
    told = []
    samples(two_hoods(), ["A"], count=600, progress=Progress(lambda now: told.append(now.doing)))
    assert told == ["sample 0 of 600", "sample 256 of 600", "sample 512 of 600"]
    stopped = Progress()
    stopped.cancel()
    with pytest.raises(Cancelled):
        samples(two_hoods(), ["A"], progress=stopped)


class TestRefusals:
    """One clear error each."""

    def test_no_samples(self):
        with pytest.raises(RangeError, match="number of samples 0 is not 1 or more; give 1000 or more"):
            samples(two_hoods(), ["A"], count=0)

    @pytest.mark.parametrize("name", ["roughness", "losses", "fan", "leak"])
    def test_a_factor_below_one(self, name):
        with pytest.raises(RangeError, match=f"spread of {name} 0.2 is below 1; give the factor within which 95"):
            DuctSpreads(**{name: 0.2})

    def test_samples_that_do_not_settle(self, monkeypatch):
        monkeypatch.setattr("hoodwright.ducts.spread.MOST_STEPS", 1)
        with pytest.raises(NoSolution, match="100% of 10 samples did not settle in 1 steps"):
            samples(two_hoods(), ["A"], count=10)
