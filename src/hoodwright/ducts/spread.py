"""How far the flows of a duct system may lie from the computed ones: many samples of what is not known.

Each sample draws a roughness and a tightness for the whole system, a loss for every run, and a curve for every fan;
then it is solved as built. Temperatures, filters and the law of every meeting stay those of the computed answer.
"""

from dataclasses import dataclass, fields
from typing import Protocol

import numpy as np

from hoodwright.ducts.as_built import solve_system
from hoodwright.errors import NoSolution, RangeError
from hoodwright.kernels.tree_samples import tree_samples
from hoodwright.network import Branches, Network
from hoodwright.network.parts import Part
from hoodwright.ranges import not_below

HALF_WIDTH = 1.96  # standard deviations
SETTLED, MOST_STEPS = 1e-6, 60  # m/s; finer than any reading, coarser than the solver's own
BLOCK = 256  # samples solved between two reports
MOST_UNSETTLED = 0.01  # of all samples


class Reporting(Protocol):
    """What is needed of a jobs.Progress; it raises Cancelled when the work shall stop."""

    def report(self, fraction: float, doing: str) -> None: ...


@dataclass(frozen=True)
class DuctSpreads:
    """By how much each may be off: 95 of 100 lie between the value divided by this factor and multiplied by it."""

    roughness: float = 2.0  # one factor for the whole system: one sheet, one maker
    losses: float = 1.25  # every run its own: hoods, elbows, entries
    fan: float = 1.05  # the pressures of every fan curve
    leak: float = 3.0  # flow through all leaks together

    def __post_init__(self):
        for part in fields(self):
            tail = "; give the factor within which 95 of 100 lie"
            not_below(f"spread of {part.name}", getattr(self, part.name), 1.0, "", tail)

    def sigma(self, name: str) -> float:
        """Standard deviation of the logarithm of a factor."""
        return float(np.log(getattr(self, name))) / HALF_WIDTH


@dataclass(frozen=True, eq=False)
class FlowSamples:
    """Flows of some runs in every sample that settled, and as computed without any spread."""

    names: tuple[str, ...]
    computed: np.ndarray  # (names,) m3/s
    flow: np.ndarray  # (samples, names) m3/s
    unsettled: int


def flow_samples(system, wanted, samples, rng, spreads=None, *, start=None, progress=None):
    """Flows of a duct system where roughness, losses, fans and leaks are drawn from their spreads.

    Parameters
    ----------
    system : DuctSystem [SI]
    wanted : sequence of str
        Names of the runs to keep.
    samples : int
    rng : numpy Generator
    spreads : DuctSpreads, optional [1]
    start : array (runs,) [m3/s], optional
        Flows to start from, such as the design flows.
    progress : jobs.Progress, optional
        Told how far the work is; may stop it.

    Returns
    -------
    samples : FlowSamples [m3/s]

    Valid: 1 sample or more, else RangeError; NoSolution where more than one sample in a hundred does not settle.
    Source: [network-theory, many systems; common-practice, spreads]
    """
    if samples < 1:
        raise RangeError(f"number of samples {samples} is not 1 or more; give 1000 or more for shares of them")
    nominal = solve_system(system, start)
    branches = system.branches(nominal.temperature)
    network = Network(system.graph(frozenset(nominal.turned_back)))
    leaking = [run.leak for run in system.runs]
    draws = _Draws(leaking, len(branches.curves), spreads or DuctSpreads(), rng)
    places = np.array([nominal.at(name) for name in wanted], dtype=np.int64)
    solvers = [_solver(part, branches, draws, nominal.flow * nominal.density, places) for part in network.parts]
    found = np.full((samples, len(places)), np.nan)
    for first in range(0, samples, BLOCK):
        if progress:
            progress.report(first / samples, f"sample {first} of {samples}")
        draw = draws.next(min(BLOCK, samples - first))
        for solver in solvers:
            solver.solve(draw, found[first : first + BLOCK])
    settled = ~np.isnan(found).any(axis=1)
    _enough(settled)
    density = np.asarray(branches.density)[places]
    return FlowSamples(tuple(wanted), nominal.flow[places], found[settled] / density, int((~settled).sum()))


def _enough(settled: np.ndarray) -> None:
    missing = 1 - float(settled.mean())
    if missing > MOST_UNSETTLED:
        raise NoSolution(
            f"{missing:.0%} of {len(settled)} samples did not settle in {MOST_STEPS} steps; the fan may run near its "
            "peak: look at its operating points, or give smaller spreads"
        )


@dataclass(frozen=True, eq=False)
class _Draw:
    """Factors of some samples."""

    roughness: np.ndarray  # (samples,)
    leak: np.ndarray  # (samples,)
    fan: np.ndarray  # (samples, curves)
    losses: np.ndarray  # (samples, runs)


class _Draws:
    """Draws factors in blocks: the same for one seed, whatever is asked of them."""

    def __init__(self, leaking, fans: int, spreads: DuctSpreads, rng: np.random.Generator):
        self.leaking = np.array(leaking, dtype=np.int64)
        self.fans, self.spreads, self.rng = fans, spreads, rng

    def next(self, count: int) -> _Draw:
        """Factors of the next samples."""
        return _Draw(
            self._factors("roughness", (count,)),
            self._factors("leak", (count,)),
            self._factors("fan", (count, self.fans)),
            self._factors("losses", (count, len(self.leaking))),
        )

    def _factors(self, name: str, shape: tuple[int, ...]) -> np.ndarray:
        return np.exp(self.spreads.sigma(name) * self.rng.standard_normal(shape))


def _solver(part: Part, branches: Branches, draws: _Draws, flows: np.ndarray, wanted: np.ndarray):
    kind = _GraphSamples if part.tree is None else _TreeSamples
    return kind(part, branches, draws, flows, wanted)


def _places(order: np.ndarray, size: int, wanted: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
    """Which of the wanted runs are among `order`, and where."""
    place = np.full(size, -1)
    place[order] = np.arange(len(order))
    columns = np.flatnonzero(place[wanted] >= 0)
    return columns, place[wanted][columns]


class _TreeSamples:
    """All samples of a part that is a tree, in one kernel."""

    def __init__(self, part: Part, branches: Branches, draws: _Draws, flows: np.ndarray, wanted: np.ndarray):
        tree, own = part.tree, branches.only(part.branches)
        assert tree is not None
        self.order = part.branches[tree.order]  # numbers in the whole system, in solving order
        fan = own.fan_arrays
        self.law = (*tree.arrays, np.take(own.laws, tree.order, axis=0), fan[0], fan[1][tree.order], *fan[2:])
        self.outlet = part.outlet
        self.leaking, self.flows = draws.leaking[self.order], np.ascontiguousarray(flows[self.order])
        self.columns, self.places = _places(self.order, len(branches), wanted)
        size = len(self.order)
        self.room = (
            np.zeros_like(self.law[6]),
            np.zeros_like(fan[2]),
            *np.zeros((3, size)),
            np.zeros((size, 6)),
            np.zeros((3, size)),
        )

    def solve(self, draw: _Draw, found: np.ndarray) -> None:
        """Mass flows of the wanted runs of this part into their columns."""
        into = np.empty((len(found), len(self.places)))
        losses = np.ascontiguousarray(draw.losses[:, self.order])
        factors = (draw.roughness, losses, draw.leak, np.ascontiguousarray(draw.fan))
        tree_samples(
            *self.law,
            self.outlet,
            SETTLED,
            MOST_STEPS,
            self.leaking,
            *factors,
            self.flows,
            self.places,
            *self.room,
            into,
        )
        found[:, self.columns] = into


class _GraphSamples:
    """All samples of a part with rings or several outlets, one after the other; losses of meetings stay as they are."""

    def __init__(self, part: Part, branches: Branches, draws: _Draws, flows: np.ndarray, wanted: np.ndarray):
        self.part, self.branches, self.flows, self.leaking = part, branches, flows, draws.leaking
        self.columns, self.places = _places(part.branches, len(branches), wanted)

    def solve(self, draw: _Draw, found: np.ndarray) -> None:
        """Mass flows of the wanted runs of this part into their columns."""
        for s in range(len(found)):
            try:
                flows = self.part.solved(self._sample(draw, s), self.flows).mass_flow
            except NoSolution:
                continue
            found[s, self.columns] = flows[self.places]

    def _sample(self, draw: _Draw, s: int) -> Branches:
        one = self.branches
        leak = np.where(self.leaking > 0, draw.leak[s] ** -np.asarray(one.exponent), 1.0)
        return one.changed(
            roughness=np.asarray(one.roughness) * draw.roughness[s],
            loss=np.asarray(one.loss) * draw.losses[s],
            coefficient=np.asarray(one.coefficient) * leak,
            curves=tuple(c.scaled(pressure=float(f)) for c, f in zip(one.curves, draw.fan[s], strict=True)),
        )
