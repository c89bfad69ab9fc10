"""Particles through the computed air: many realisations of draught and stream, a few particles in each.

All particles of one realisation meet the same draught and the same stream, so they are not independent: count
realisations, not particles. The noise is counted out from one seed, so threads do not change it.
"""

import os
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass
from functools import lru_cache
from statistics import NormalDist
from typing import Protocol

import numpy as np

from hoodwright.errors import InputError
from hoodwright.flow.calm import calm_air
from hoodwright.flow.jet import JET_UNREST, MOST_STATIONS, WORK, jet_laws
from hoodwright.flow.release import drawn_jets, drawn_starts
from hoodwright.kernels.chance import PLACES
from hoodwright.kernels.jet_path import COLUMNS
from hoodwright.kernels.particle_path import ESCAPED, LATE, SETTLED, trace_particles
from hoodwright.ranges import not_above, not_negative, numbers, positive

__all__ = ["ESCAPED", "LATE", "SETTLED", "Draught", "Plan", "Traced", "Varied", "trace"]

JET_TIME = 1.0  # of the turbulence of a jet, in bell radii over the speed on its axis
STEP_SHARE = 0.8  # of a cell, a bell radius or an eddy, in one step
STRONGEST = 10.0  # m/s: a draught above that is a slip
MOST = 5_000_000  # particles


@dataclass(frozen=True)
class Draught:
    """The moving air of the room: its mean, how much that wanders, and its turbulence."""

    mean: tuple[float, float, float] = (0.0, 0.0, 0.0)  # m/s
    wander: float = 0.0  # m/s: standard deviation of the draught from one moment to another, each level direction
    rising: float = 0.3  # share of the wander that is left up and down
    turbulence: float = 0.0  # m/s: standard deviation within one moment
    eddy: float = 0.2  # m: size of an eddy

    def __post_init__(self):
        speed = float(np.linalg.norm(numbers("draught", self.mean)))
        tail = ", the most that this makes sense of; give the draught in m/s"
        for what, value in (("draught", speed), ("wander", self.wander), ("turbulence", self.turbulence)):
            not_above(what, not_negative(what, value, "m/s"), STRONGEST, "m/s", tail)
        positive("size of an eddy", self.eddy, "m")

    def drawn(self, count, rng) -> np.ndarray:
        """The draught of each of many realisations (count, 3)."""
        return self.mean + self.wander * np.array([1.0, 1.0, self.rising]) * rng.standard_normal((count, 3))


@dataclass(frozen=True)
class Plan:
    """What belongs to the definition of a captured fraction, and how finely it is computed."""

    escape_radius: float = 0.45  # m, from the middle of a mouth that draws: a particle farther from all of them is lost
    time_limit: float = 15.0  # s: a particle still in the air by then counts as not caught
    realisations: int = 256
    particles: int = 4  # in each realisation; many realisations of few particles tell more

    def __post_init__(self):
        positive("escape radius", self.escape_radius, "m")
        positive("time limit", self.time_limit, "s")
        if self.realisations < 2 or self.particles < 1 or self.realisations * self.particles > MOST:
            got = f"{self.realisations} realisations of {self.particles} particles"
            raise InputError(f"{got}: give at least 2 of 1, and no more than {MOST} particles in all")


class Air(Protocol):
    """What is needed of solved bases: flow.Bases."""

    arrays: tuple
    distance: np.ndarray

    def weights(self, flows: dict[str, float], draught: tuple[float, float, float]) -> np.ndarray:
        """How much of each basis flows."""

    def contracted(self, weights: np.ndarray) -> tuple:
        """Arrays with four bases: all hoods and vents in one, then three draughts."""

    def refuse_solid(self, name: str, points) -> None:
        """Raise InputError when a point is not in open air."""


@dataclass(frozen=True)
class Traced:
    """How every particle ended: `ends` 1 + mouth number, or ESCAPED, SETTLED, LATE; where and when in `places`."""

    ends: np.ndarray  # (realisations, particles)
    places: np.ndarray  # (realisations, particles, 4): m, m, m, s
    plumes: np.ndarray  # (realisations, mouths) m3/s: flow of the stream where it comes nearest to each mouth
    tracks: np.ndarray  # (realisations, particles, kept, 3) m


def trace(air, mouths, flows, release, draught, plan, rng, *, varied=None, kept=0):
    """Carry particles from a source through the computed air until each is caught, lost, settled or late.

    Parameters
    ----------
    air : Bases
        Of the scene.
    mouths : sequence of Mouth
        Of the scene, in its order.
    flows : dict of name to float [m3/s]
    release : Release
    draught : Draught
    plan : Plan
    rng : numpy Generator
        The same one gives the same answer, on any number of threads.
    varied : Varied or None
        What differs from one realisation to the next beside draught and stream: flow, place, mean draught, strength.
    kept : int
        How many places of every track to keep, at even times, for a picture.

    Returns
    -------
    traced : Traced [m, s, m3/s]

    Valid: a mouth draws, the source lies in open air and within the escape radius of one that draws; else InputError.
    Source: [thomson87, well-mixed condition]
    """
    drawing = [m for m in mouths if flows.get(m.name, 0.0) > 0]
    if not drawing:
        raise InputError("no hood draws any air; give at least one hood a flow above 0")
    _within_reach(release, drawing, plan)
    air.refuse_solid(release.name, release.extent.points)
    count = plan.realisations
    fixed, weights = _air_of(air, flows, draught, count, rng, varied)
    strength = 1.0 if varied is None else varied.strength
    jets, sideways = drawn_jets(release, count, rng, strength)
    if varied is not None:
        jets[:, :3] += varied.offset
    starts = drawn_starts(release, jets, sideways, plan.particles, rng)
    if varied is not None and release.jet is None:
        starts += varied.offset[:, None, :]
    middles = [np.array([m.centre for m in some], float) for some in (mouths, drawing)]
    calm = calm_air(air.distance, draught.eddy) if draught.turbulence > 0 else np.zeros((0, 0, 0), np.float32)
    laws = _laws(release, draught, plan, kept)
    seed = int(rng.integers(2**32))
    return _run(fixed, weights, jets, starts, calm, middles, laws, seed, kept)


@dataclass(frozen=True)
class Varied:
    """What differs from one realisation to the next, each with one value for every realisation."""

    flow: np.ndarray  # (n,) factor on all flows
    offset: np.ndarray  # (n, 3) m: of the source
    draught: np.ndarray  # (n, 3) m/s: added to the mean
    strength: np.ndarray  # (n,) factor on the speed of the release


def _within_reach(release, drawing, plan):
    """The source must lie within the radius beyond which a particle counts as lost."""
    apart = np.linalg.norm(
        np.asarray(release.extent.points)[:, None] - np.array([m.centre for m in drawing])[None], axis=2
    )
    far = float(apart.min(axis=1).max())
    if far >= plan.escape_radius:
        raise InputError(
            f"escape radius {plan.escape_radius:g} m is not above {far:.3g} m, the distance from the source to the "
            "nearest hood that draws; give a larger radius"
        )


def _air_of(air, flows, draught, count, rng, varied):
    """The bases summed to four, hoods and vents together and three draughts, and their weights in each realisation."""
    whole = np.asarray(air.weights(flows, (0.0, 0.0, 0.0)), np.float32)
    weights = np.ones((count, 4), np.float32)
    weights[:, 1:] = draught.drawn(count, rng)
    if varied is not None:
        weights[:, 0] = varied.flow
        weights[:, 1:] += varied.draught
    return _summed(air, tuple(whole.tolist())), weights


@lru_cache(maxsize=4)
def _summed(air, weights):
    return air.contracted(np.asarray(weights, np.float32))


def _laws(release, draught, plan, kept):
    between = plan.time_limit / max(kept - 1, 1)
    room = [draught.turbulence, draught.eddy, JET_UNREST, JET_TIME, STEP_SHARE, plan.time_limit, plan.escape_radius]
    return np.array([*room, release.grain.settling, release.grain.relaxation, between])


@lru_cache(maxsize=1)
def _normals():
    """Normal deviates at the middles of equal shares: none is drawn, so none is missed."""
    places = (np.arange(PLACES) + 0.5) / PLACES
    half = [NormalDist().inv_cdf(p) for p in places[PLACES // 2 :]]
    return np.array([*(-h for h in reversed(half)), *half], np.float32)


def _run(fixed, weights, jets, starts, calm, middles, laws, seed, kept):
    """All realisations, shared among the cores; the outcome does not depend on how."""
    count, particles = starts.shape[:2]
    ends = np.zeros((count, particles), np.int64)
    places, plumes = np.zeros((count, particles, 4)), np.zeros((count, len(middles[0])))
    tracks = np.zeros((count, particles, kept, 3), np.float32)
    cores = min(os.cpu_count() or 1, count)
    pieces = np.linspace(0, count, 4 * cores + 1).astype(int)

    def piece(number):
        first, last = int(pieces[number]), int(pieces[number + 1])
        path = np.empty((MOST_STATIONS, COLUMNS))
        own = (jet_laws(), starts, calm, *middles, laws, seed, _normals(), first, last)
        trace_particles(fixed, weights, jets, *own, ends, places, plumes, tracks, np.empty(WORK), path)

    with ThreadPoolExecutor(cores) as pool:
        list(pool.map(piece, range(4 * cores)))
    return Traced(ends, places, plumes, tracks)
