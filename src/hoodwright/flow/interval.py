"""The interval that covers what is not known: draught, flow, position, release, grid and sampling together.

The inputs are drawn 39 times from their spreads, and the captured fraction is computed for each. A value not yet seen
lies between the lowest and the highest of 39 with a chance of 95 %. The scatter that few particles add is taken off.
"""

from dataclasses import dataclass, replace

import numpy as np

from hoodwright.errors import InputError
from hoodwright.flow.capture import Captured, capped_shares, capture, escape_radius_for, moved_to
from hoodwright.flow.trace import Varied, trace
from hoodwright.kernels.moving import OPEN, move
from hoodwright.ranges import not_above, not_negative, positive

SETS = 39
LEAST_REAL = 0.5  # of the spread found: how much of it sampling explains is itself uncertain
SIGMAS = 1.96  # half widths are those of 95 %
BEFORE_A_MOUTH = 0.95  # of the way to it: a source that is moved into a hood stays just outside


@dataclass(frozen=True)
class Spreads:
    """Half widths of the 95 % interval of each input."""

    flow: float = 0.10  # share of all hoods' flow together
    position: float = 0.05  # m, each direction
    draught: float = 0.05  # m/s of its mean, each level direction
    release: float = 0.10  # share of the speed of the stream
    grid: float = 0.03  # of the captured fraction itself

    def __post_init__(self):
        limits = {
            "flow": (0.9, ""),
            "position": (1.0, "m"),
            "draught": (2.0, "m/s"),
            "release": (0.9, ""),
            "grid": (1.0, ""),
        }
        for name, (most, unit) in limits.items():
            value = not_negative(f"spread of the {name}", getattr(self, name), unit)
            not_above(f"spread of the {name}", value, most, unit, "; give the half width of its 95 % interval")


@dataclass(frozen=True)
class FullInterval:
    """A captured fraction at the stated inputs, and the interval that covers what is not known of them."""

    captured: Captured
    low: float
    high: float
    sets: int
    spreads: Spreads
    values: tuple[float, ...]  # captured fraction of each set of inputs, with the scatter of sampling


def full_interval(air, mouths, flows, release, draught, plan, rng, spreads, sets=SETS):
    """Captured fraction at the stated inputs, with the interval over draught, flow, position, release, grid, sampling.

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
        Its realisations are computed once as stated, and once more shared out among the sets.
    rng : numpy Generator, or an int as its seed
    spreads : Spreads
    sets : int
        How often the inputs are drawn; fewer than 39 give less than 95 %.

    Returns
    -------
    interval : FullInterval [1]

    Valid: as `trace`, and at least two realisations for each set; else InputError is raised.
    Source: [david-nagaraja, order statistics of a sample]
    """
    seed = rng if isinstance(rng, int) else None
    rng = np.random.default_rng(rng)
    each = plan.realisations // sets
    if sets < 2 or each < 2:
        raise InputError(
            f"{plan.realisations} realisations are not two for each of {sets} sets; give {2 * sets} or more"
        )
    stated = replace(capture(air, mouths, flows, release, draught, plan, rng), seed=seed)
    varied = drawn_inputs(air, release.extent.centre, spreads, sets, each, rng)
    many = replace(plan, realisations=sets * each)
    traced = trace(air, mouths, flows, release, draught, many, rng, varied=varied)
    shares, _ = capped_shares(traced, mouths, flows)
    whole = shares.sum(axis=1).reshape(sets, each)
    low, high = spread_of(whole)
    return FullInterval(stated, *_joined(stated, low, high, spreads.grid), sets, spreads, tuple(whole.mean(axis=1)))


def capture_series(air, mouths, flows, release, mouth, distances, draught, plan, seed, spreads, sets=SETS):
    """Captured fraction with its full interval, with the source moved along a hood's axis from its face.

    Every distance sees the same random numbers, so the curve is smooth; the escape radius grows with the distance.

    Parameters
    ----------
    air : Bases
        Of a scene whose box holds every place: let it watch them.
    mouths : sequence of Mouth
        Of the scene, in its order.
    flows : dict of name to float [m3/s]
    release : Release
    mouth : Mouth
        The hood whose axis it is.
    distances : sequence of float [m]
    draught : Draught
    plan : Plan
    seed : int
    spreads : Spreads
    sets : int

    Returns
    -------
    series : tuple of FullInterval [1]

    Valid: distances above 0, each place in open air; else RangeError or InputError is raised.
    Source: [common-practice, definition of a captured fraction]
    """
    facing = np.asarray(mouth.facing, float) / np.linalg.norm(mouth.facing)
    found = []
    for distance in np.ravel(positive("distance", distances, "m")):
        moved = moved_to(release, np.asarray(mouth.centre) + distance * facing)
        own = replace(plan, escape_radius=max(plan.escape_radius, float(escape_radius_for(distance))))
        found.append(full_interval(air, mouths, flows, moved, draught, own, seed, spreads, sets))
    return tuple(found)


def drawn_inputs(air, place, spreads, sets, each, rng):
    """Inputs drawn from their spreads, every set for `each` realisations on end.

    Parameters
    ----------
    air : Bases
        Whose walls a moved source does not pass.
    place : three floats [m]
        Of the source.
    spreads : Spreads
    sets, each : int
    rng : numpy Generator

    Returns
    -------
    varied : Varied [m, m/s]

    Valid: always.
    Source: [david-nagaraja, order statistics of a sample]
    """
    normal = rng.standard_normal((sets, 8)) / SIGMAS
    flow, strength = (np.exp(s * normal[:, n]) for n, s in ((0, spreads.flow), (1, spreads.release)))
    offset = np.array([_reached(air, place, step) for step in spreads.position * normal[:, 2:5]])
    mean = spreads.draught * normal[:, 5:8] * (1.0, 1.0, 0.0)
    return Varied(*(np.repeat(drawn, each, axis=0) for drawn in (flow, offset, mean, strength)))


def spread_of(shares):
    """Lowest and highest captured fraction over sets of inputs, less the scatter of sampling.

    Parameters
    ----------
    shares : array (sets, realisations) [1]

    Returns
    -------
    low, high : float [1]

    Valid: two sets of two realisations or more.
    Source: [david-nagaraja, order statistics of a sample]
    """
    shares = np.asarray(shares, float)
    means, middle = shares.mean(axis=1), float(shares.mean())
    found = float(means.var(ddof=1))
    scatter = float(np.mean(shares.var(axis=1, ddof=1))) / shares.shape[1]
    real = np.sqrt(max(1 - scatter / found, LEAST_REAL**2)) if found > 0 else 0.0
    low, high = float(means.min()), float(means.max())
    # where some inputs catch nothing, or all, the end is certain and no scatter
    return (0.0 if low == 0 else middle + real * (low - middle)), (
        1.0 if high == 1 else middle + real * (high - middle)
    )


def _joined(stated, low, high, grid):
    """The reach of inputs, sampling and grid on each side of the stated value, as for independent causes."""
    value = stated.fraction
    down = np.hypot(np.hypot(max(value - low, 0.0), value - stated.low), grid)
    up = np.hypot(np.hypot(max(high - value, 0.0), stated.high - value), grid)
    return float(max(value - down, 0.0)), float(min(value + up, 1.0))


def _reached(air, place, step):
    """How far a source can really be moved: walls turn it back, and it does not enter a hood."""
    px, py, pz, *_, met = move(air.arrays, *(float(p) for p in place), *(float(s) for s in step))
    moved = np.array([px, py, pz]) - place
    return moved if met == OPEN else BEFORE_A_MOUTH * moved
