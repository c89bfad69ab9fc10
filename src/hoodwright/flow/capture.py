"""The captured fraction of what a source gives off, hood by hood, with the part of its interval due to sampling."""

from dataclasses import dataclass, replace
from statistics import NormalDist

import numpy as np

from hoodwright.errors import InputError
from hoodwright.flow.release import Release
from hoodwright.flow.trace import Plan, Traced, Varied, trace
from hoodwright.ranges import not_negative, numbers, within

LEVEL = 0.95
LOWEST_SHOWN, HIGHEST_SHOWN, SHOWN_STEP = 0.05, 0.95, 0.05
NEAREST_ESCAPE, ESCAPE_FACTOR = 0.45, 1.5  # m; times the distance
PRIOR = 2.0  # realisations' worth of the widest spread, mixed into the spread found


@dataclass(frozen=True)
class Captured:
    """Captured fraction with its sampling interval; `plume_limited` where a stream brought more than the hoods take."""

    fraction: float
    low: float
    high: float
    by_mouth: dict[str, float]
    plume_limited: bool
    settled: float  # share that fell on a surface
    late: float  # share still in the air at the time limit
    plan: Plan
    seed: int | None = None


def capture(air, mouths, flows, release, draught, plan, rng):
    """Share of what a source gives off that is caught, and by which hood.

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
    rng : numpy Generator, or an int as its seed

    Returns
    -------
    captured : Captured [1]

    Valid: as `trace`. Never more than the share of a stream that the hoods can swallow.
    Source: [thomson87, well-mixed condition]
    """
    seed = rng if isinstance(rng, int) else None
    traced = trace(air, mouths, flows, release, draught, plan, np.random.default_rng(rng))
    shares, limited = capped_shares(traced, mouths, flows)
    whole = shares.sum(axis=1)
    low, high = cluster_interval(whole)
    by_mouth = {m.name: float(share) for m, share in zip(mouths, shares.mean(axis=0), strict=True)}
    settled, late = (float(np.mean(traced.ends == end)) for end in (-2, -3))
    return Captured(float(whole.mean()), low, high, by_mouth, limited, settled, late, plan, seed)


def capture_map(air, mouths, flows, release, places, draught, plan, seed):
    """Captured fraction with the source at each of many places, for a picture: few realisations at each, no interval.

    Every place meets the same gusts, spread evenly over their chances: places differ by the air, less by luck.

    Parameters
    ----------
    air : Bases
        Of a scene whose box holds every place.
    mouths : sequence of Mouth
        Of the scene, in its order.
    flows : dict of name to float [m3/s]
    release : Release
    places : array (n, 3) [m]
        In open air, all of them.
    draught : Draught
    plan : Plan
        Its realisations are those at each place; its escape radius grows to 1.5 times the farthest place.
    seed : int

    Returns
    -------
    fractions : array (n,) [1]

    Valid: as `trace`, for every place.
    Source: [thomson87, well-mixed condition]
    """
    places = np.asarray(numbers("places of the map", places)).reshape(-1, 3)
    if len(places) == 0:
        return np.zeros(0)
    drawing = np.array([m.centre for m in mouths if flows.get(m.name, 0.0) > 0]).reshape(-1, 3)
    far = np.linalg.norm(places[:, None] - drawing[None], axis=2).min(axis=1, initial=np.inf)
    air.refuse_solid(release.name, places)
    each, start = plan.realisations, moved_to(release, places[int(np.argmin(far))])
    radius = max(plan.escape_radius, float(escape_radius_for(far.max()))) if len(drawing) else plan.escape_radius
    own = replace(plan, escape_radius=radius, realisations=each * len(places))
    alike, rng = np.ones(own.realisations), np.random.default_rng(seed)
    offset = np.repeat(places - start.extent.centre, each, axis=0)
    varied = Varied(alike, offset, np.tile(_even_gusts(draught, each, rng), (len(places), 1)), alike)
    traced = trace(air, mouths, flows, start, replace(draught, wander=0.0), own, rng, varied=varied)
    shares, _ = capped_shares(traced, mouths, flows)
    return shares.sum(axis=1).reshape(len(places), each).mean(axis=1)


def _even_gusts(draught, count, rng):
    """Deviations of the draught from its mean (count, 3): one from each of even shares of their chances."""
    shares = (np.arange(count) + 0.5) / count
    normals = np.array([NormalDist().inv_cdf(share) for share in shares])
    drawn = np.stack([rng.permutation(normals) for _ in range(3)], axis=1)
    return draught.wander * np.array([1.0, 1.0, draught.rising]) * drawn


def capped_shares(traced: Traced, mouths, flows):
    """Share caught by each hood in each realisation, no more than the hood's flow is of the stream's where they meet.

    Superposed flows break the balance of mass: a stream that brings more air than a hood takes would all go in.

    Parameters
    ----------
    traced : Traced
    mouths : sequence of Mouth
    flows : dict of name to float [m3/s]

    Returns
    -------
    shares : array (realisations, mouths) [1]
    limited : bool
        Whether the limit held in any realisation.

    Valid: always.
    Source: [plume-theory, balance of mass]
    """
    numbers = np.arange(1, len(mouths) + 1)
    shares = np.mean(traced.ends[:, :, None] == numbers, axis=1)
    taken = np.array([max(flows.get(m.name, 0.0), 0.0) for m in mouths])
    most = np.divide(taken, traced.plumes, out=np.full(shares.shape, np.inf), where=traced.plumes > 0)
    return np.minimum(shares, most), bool(np.any(shares > most + 1e-12))


def cluster_interval(shares, level=LEVEL):
    """Interval of a mean share over realisations whose particles are not independent, after Wilson.

    Parameters
    ----------
    shares : array (realisations,) [1]
        Share of the particles caught in each.
    level : float [1]

    Returns
    -------
    low, high : float [1]

    Valid: at least two realisations, level between 0 and 1; else InputError or RangeError is raised.
    Source: [wilson27, score interval]
    """
    shares = np.asarray(shares, float)
    if shares.size < 2:
        raise InputError(f"an interval needs two realisations or more, got {shares.size}")
    level = float(within("level of the interval", level, 0.5, 0.9999, "", "; give a share such as 0.95"))
    count, mean = shares.size, float(np.clip(shares.mean(), 0.0, 1.0))
    widest = mean * (1 - mean)
    spread = (float(shares.var()) * count + PRIOR * widest) / (count - 1 + PRIOR)
    worth = count if widest < 1e-9 else widest * count / max(spread, 1e-12)  # independent particles that tell as much
    worth = min(worth, 1e9)
    z = NormalDist().inv_cdf((1 + level) / 2) * (1 + 1 / count)
    middle = (mean + z**2 / (2 * worth)) / (1 + z**2 / worth)
    half = z / (1 + z**2 / worth) * np.sqrt(widest / worth + z**2 / (4 * worth**2))
    return float(max(min(middle - half, mean), 0.0)), float(min(max(middle + half, mean), 1.0))


def shown_share(fraction):
    """A captured fraction as it is shown: to 5 per cent, never above "> 95 %" or below "< 5 %".

    Parameters
    ----------
    fraction : float [1]

    Returns
    -------
    text : str

    Valid: 0 to 1; outside RangeError is raised.
    Source: [common-practice, what a computed per cent can carry]
    """
    share = float(within("captured fraction", fraction, 0.0, 1.0, "", "; give a share"))
    if share > HIGHEST_SHOWN:
        return "> 95 %"
    if share < LOWEST_SHOWN:
        return "< 5 %"
    return f"{round(share / SHOWN_STEP) * 5:d} %"


def escape_radius_for(distance):
    """Distance from a hood beyond which a particle counts as lost: 1.5 times that of the source, at least 0.45 m.

    In still air a flow without friction would catch everything in the end, so the radius is part of the answer.

    Parameters
    ----------
    distance : float or array [m]
        From the source's farthest point to the nearest hood.

    Returns
    -------
    radius : same shape as `distance` [m]

    Valid: 0 or more; else RangeError is raised.
    Source: [common-practice, definition of a captured fraction]
    """
    return np.maximum(NEAREST_ESCAPE, ESCAPE_FACTOR * not_negative("distance", distance, "m"))


def moved_to(release: Release, place):
    """The same source with its middle elsewhere.

    Parameters
    ----------
    release : Release
    place : three floats [m]

    Returns
    -------
    release : Release

    Valid: always.
    Source: [common-practice, definition of a captured fraction]
    """
    extent = release.extent.moved(np.subtract(place, release.extent.centre))
    jet = None if release.jet is None else replace(release.jet, place=extent.centre)
    return replace(release, extent=extent, jet=jet)
