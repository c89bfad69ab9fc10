"""A still of the smoke: some particles of the computed air, where they have been and how they ended. Not validated."""

import math
from dataclasses import dataclass, replace

import numpy as np

from hoodwright.errors import InputError
from hoodwright.flow import Draught, Plan, Release, Traced, in_solid, streamlines, trace
from hoodwright.jobs import Progress
from hoodwright.tasks.air.scene import draught_of, release_of
from hoodwright.tasks.air.solved import SolvedAir, flows_of, plan_for, solved_air
from hoodwright.tasks.air.supply_jets import with_supply_jets
from hoodwright.tasks.assess import air_of
from hoodwright.tasks.capture.claims import claim_of
from hoodwright.tasks.hood_shapes import Xyz, frame_of
from hoodwright.tasks.today import with_today
from hoodwright.workplace.model import Hood, Source, Workplace

CAUGHT, LOST, SETTLED, AFLOAT = "caught", "lost", "settled", "in the air"
ENDS = {-1: LOST, -2: SETTLED, -3: AFLOAT}
PLAN = Plan(realisations=256, particles=2)
BETWEEN = 4e-3  # s between the places that are kept
FINE = 150  # shortest step of a drawn track: the escape radius over this
PUFFS = 3600  # places at even times, over all tracks
ROW, LIFT = 7, 0.15  # lines of the mean air across an opening; of its shorter side: so far before it they begin


@dataclass(frozen=True, eq=False)
class SmokeStill:
    """Tracks of particles from one source before one hood, laid over one another, and what was asked of the air."""

    hood: str
    source: str
    flow: float  # m3/s
    draught: Xyz  # m/s, its mean
    wander: float  # m/s, how much it swings from one moment to another
    turbulence: float  # m/s, within one moment
    distance: float  # m, from the middle of the opening to the farthest place of the source
    tracks: tuple[np.ndarray, ...]  # (n, 3) m each, as fine as a picture needs
    puffs: tuple[np.ndarray, ...]  # (n, 3) m each: places at even times, so that dense means much smoke
    ends: tuple[str, ...]  # of each track: caught, lost, settled, in the air
    takers: tuple[str, ...]  # of each track: the hood that caught it, or ""
    air: dict[Xyz, tuple[np.ndarray, ...]]  # (n, 3) m: lines of the mean air by the way their row lies in the opening
    centres: tuple[Xyz, ...]  # m, middles of the openings that draw
    plan: Plan  # escape radius, time limit, and how many particles of how many moments
    untold: str | None  # why no share may be claimed

    @property
    def told(self) -> bool:
        """Whether the picture may tell caught from lost."""
        return self.untold is None


def still_of(
    workplace: Workplace,
    hood: str,
    source: str,
    flow: float | None = None,
    draught: Xyz | None = None,
    seed: int = 1,
    *,
    today: bool = False,
    progress: Progress | None = None,
) -> SmokeStill:
    """Follow some particles from a source through the computed air, for a picture.

    `flow` [m3/s] and `draught` [m/s, its mean] take the place of those of the file. The same seed gives the same still.
    """
    chosen, given = _named(workplace, hood, source)
    blowing = draught_of(workplace)
    blowing = blowing if draught is None else replace(blowing, mean=draught)
    blowing = with_supply_jets(blowing, workplace, given.centre)
    workplace = with_today(workplace) if today else workplace
    flows = flows_of(workplace, today=today) | ({} if flow is None else {hood: flow})
    air, plan = solved_air(chosen, workplace, given.points, flows, progress), plan_for(chosen, given, PLAN)
    release = release_of(given, workplace, air_of(workplace.air).density)
    far = max(math.dist(chosen.at, point) for point in given.points)
    drawing = (mouth for mouth in air.scene.mouths if air.flows.get(mouth.name, 0.0) > 0)
    tracks, puffs, ends, takers = _smoke(air, release, blowing, plan, seed)
    wind = (blowing.mean, blowing.wander, blowing.turbulence)
    return SmokeStill(
        *(hood, source, flows[hood], *wind, far, tracks, puffs, ends, takers),
        air=_mean_air(chosen, air, blowing, plan.escape_radius),
        centres=tuple(mouth.centre for mouth in drawing),
        plan=plan,
        untold=claim_of(chosen, given, workplace),
    )


def _named(workplace: Workplace, hood: str, source: str) -> tuple[Hood, Source]:
    found = []
    for what, name, parts in (("hood", hood, workplace.hoods), ("source", source, workplace.sources)):
        one = next((part for part in parts if part.name == name), None)
        if one is None:
            raise InputError(f"no {what} is named {name!r}; there is {', '.join(p.name for p in parts)}; name one")
        found.append(one)
    return found[0], found[1]  # type: ignore[return-value]


def _smoke(air: SolvedAir, release: Release, draught: Draught, plan: Plan, seed: int):
    """Tracks, puffs, ends and takers of all particles."""
    rng, kept = np.random.default_rng(seed), round(plan.time_limit / BETWEEN) + 1
    mouths = air.scene.mouths
    traced = trace(air.bases, mouths, air.flows, release, draught, plan, rng, kept=kept)
    ends = traced.ends.ravel().tolist()
    takers = tuple(mouths[end - 1].name if end > 0 else "" for end in ends)
    drawn = _drawn(traced, plan.escape_radius / FINE, seed)
    return *drawn, tuple(ENDS.get(end, CAUGHT) for end in ends), takers


def _mean_air(hood: Hood, air: SolvedAir, draught: Draught, reach: float) -> dict[Xyz, tuple[np.ndarray, ...]]:
    """Lines of the mean air through an upright and a level row of places before the opening."""
    rows = {}
    args = (air.bases, air.scene.mouths, air.flows, draught.mean)
    for way, side in zip(frame_of(hood), hood.opening.sides, strict=True):
        shares = (np.arange(ROW) + 0.5) / ROW - 0.5
        ahead = LIFT * min(hood.opening.sides) * np.asarray(hood.facing)
        starts = np.asarray(hood.at) + ahead + side * shares[:, None] * np.asarray(way)
        starts = starts[~in_solid(air.bases, starts)]
        after, before = (streamlines(*args, starts, 2 * reach, reach / FINE, against=back) for back in (False, True))
        lines = (np.concatenate([b.places[:0:-1], a.places]) for a, b in zip(after, before, strict=True))
        rows[way] = tuple(lines)
    return rows


def _drawn(traced: Traced, step: float, seed: int) -> tuple[tuple[np.ndarray, ...], tuple[np.ndarray, ...]]:
    """Each track as a line, and as puffs at even times from a drawn first one."""
    times = traced.places.reshape(-1, 4)[:, 3]
    whole = traced.tracks.reshape(len(times), -1, 3)
    apart = float(times.sum()) / PUFFS
    firsts = apart * np.random.default_rng(seed).random(len(times))
    puffs = (_puffs(*one, apart) for one in zip(whole, times, firsts, strict=True))
    return tuple(_thinned(places, step) for places in whole), tuple(puffs)


def _thinned(places: np.ndarray, step: float) -> np.ndarray:
    """The same track with about one place for each `step` of its way; its end stays."""
    way = np.concatenate([[0.0], np.cumsum(np.linalg.norm(np.diff(places, axis=0), axis=1))])
    first = np.unique((way / step).astype(int), return_index=True)[1]
    return np.array(np.append(places[first], places[-1:], axis=0), float)


def _puffs(places: np.ndarray, time: float, first: float, apart: float) -> np.ndarray:
    """Where one particle is at even times from a first one to its end."""
    moments = np.arange(first, time, apart)
    return np.array(places[np.minimum((moments / BETWEEN).astype(int), len(places) - 1)], float)
