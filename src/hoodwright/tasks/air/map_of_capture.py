"""The capture map: where on a plane would the hoods still catch what this source gives off? Not validated."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from hoodwright.errors import InputError
from hoodwright.flow import (
    Bases,
    Draught,
    Frame,
    Mouth,
    Plan,
    Plane,
    Plate,
    Release,
    capture_map,
    escape_radius_for,
    in_solid,
    isolines,
)
from hoodwright.jobs import Progress
from hoodwright.tasks.air.layers import Level
from hoodwright.tasks.air.planes import part_of, plane_in_box
from hoodwright.units import show

COARSE, COARSE_DRAWS = 130, 6  # places, and draughts at each
PLACES, DRAWS, EACH = 600, 16, 1  # places, draughts at each, particles in each draught
JET_PLACES, JET_DRAWS, JET_EACH = 420, 8, 2  # of a source with a stream, whose particles take shorter steps
PIECES = 6  # of the work, between which it can be stopped
SHARES = {0.9: "90 %", 0.5: "50 %"}
MATTERS = 0.35  # share from which a place belongs to the picture


@dataclass(frozen=True, eq=False)
class MapLayer:
    """Captured share with the source's middle at each place of a plane; NaN in solid bodies."""

    plane: Plane
    shape: tuple[int, int]
    values: np.ndarray  # (a, b)
    levels: tuple[Level, ...]
    escape_radius: float  # m
    time_limit: float  # s
    realisations: int  # at each place
    particles: int  # in each
    words: str


def capture_map_of(
    bases: Bases,
    mouths: Sequence[Mouth],
    flows: dict[str, float],
    release: Release,
    draught: Draught,
    plan: Plan,
    name: str,
    frame: Frame,
    plane: str,
    system: str = "SI",
    *,
    untold: str | None = None,
    seed: int = 1,
    progress: Progress | None = None,
) -> MapLayer:
    """The captured share with the source at each of many places of a plane, by few draws at each.

    `name` and `frame` are those of the chosen hood; `untold` says why no per cent may be claimed: then there is no map.
    """
    if untold:
        raise InputError(f"there is no capture map: {untold}")
    progress, middle = progress or Progress(), tuple(float(c) for c in release.extent.centre)
    whole = plane_in_box(bases, frame, middle, plane)  # type: ignore[arg-type]
    asked = _Asked(bases, mouths, flows, release, draught, plan, seed)
    coarse, _ = asked.on(whole, whole.shape_for(COARSE), (COARSE_DRAWS, 1), progress.part(0.0, 0.2))
    part = part_of(whole, np.nan_to_num(coarse) >= MATTERS, (tuple(frame.centre), middle))  # type: ignore[arg-type]
    most, *draws = (PLACES, DRAWS, EACH) if release.jet is None else (JET_PLACES, JET_DRAWS, JET_EACH)
    shape = part.shape_for(most)
    raw, radius = asked.on(part, shape, (draws[0], draws[1]), progress.part(0.2, 1.0))
    values = smoothed(raw, part.places(shape), bases.scene.plates)
    lines = isolines(values, part, tuple(SHARES))
    levels = tuple(Level(v, words, own) for (v, words), own in zip(SHARES.items(), lines, strict=True) if own)
    drawing = [m.name for m in mouths if flows.get(m.name, 0.0) > 0 and bases.grid.holds(m.centre)]
    words = _words(name, drawing, frame, part, values, system)
    progress.report(1.0, "done")
    return MapLayer(part, shape, values, levels, radius, plan.time_limit, draws[0], draws[1], words)


@dataclass(frozen=True)
class _Asked:
    """What stays the same for every place."""

    bases: Bases
    mouths: Sequence[Mouth]
    flows: dict[str, float]
    release: Release
    draught: Draught
    plan: Plan
    seed: int

    def on(
        self, plane: Plane, shape: tuple[int, int], draws: tuple[int, int], progress: Progress
    ) -> tuple[np.ndarray, float]:
        """Captured shares on a raster of a plane, and the escape radius, which is the same for all of them."""
        places = plane.places(shape).reshape(-1, 3)
        offsets = np.subtract(self.release.extent.points, self.release.extent.centre)
        open_air = ~np.any(in_solid(self.bases, places[:, None] + offsets), axis=1) & ~in_solid(self.bases, places)
        size = {"realisations": draws[0], "particles": draws[1]}
        own = replace(self.plan, **size, escape_radius=self._radius(places[open_air]))
        values = np.full(len(places), np.nan)
        pieces = np.array_split(np.flatnonzero(open_air), PIECES)
        for number, piece in enumerate(pieces):
            progress.report(number / PIECES, "asking place after place what is caught")
            args = (self.bases, self.mouths, self.flows, self.release, places[piece], self.draught, own)
            values[piece] = capture_map(*args, self.seed)  # the same gusts everywhere
        return values.reshape(shape), own.escape_radius

    def _radius(self, places: np.ndarray) -> float:
        drawing = np.array([m.centre for m in self.mouths if self.flows.get(m.name, 0.0) > 0]).reshape(-1, 3)
        away = np.linalg.norm(places[:, None] - drawing[None], axis=2).min(axis=1, initial=np.inf)
        extent = np.linalg.norm(np.subtract(self.release.extent.points, self.release.extent.centre), axis=1).max()
        far = float(away.max(initial=0.0) + extent)
        return max(self.plan.escape_radius, float(escape_radius_for(far)))


def smoothed(values: np.ndarray, places: np.ndarray, plates: Sequence[Plate]) -> np.ndarray:
    """Each place with its neighbours, so that the chance of few draws does not draw its own lines.

    Neighbours behind a plate or in a body do not count. `places` (a, b, 3).
    """
    known = ~np.isnan(values)
    total, weight = np.where(known, values, 0.0), known.astype(float)
    for axis in (0, 1):
        low, high = ((slice(None),) * axis + (part,) for part in (slice(0, -1), slice(1, None)))
        open_way = ~_parted(plates, places[low], places[high]) & known[low] & known[high]
        total, weight = (_spread(part, open_way, low, high) for part in (total, weight))
    return np.where(known, total / np.where(known, weight, 1.0), np.nan)


def _spread(values: np.ndarray, open_way: np.ndarray, low, high) -> np.ndarray:
    """Twice each value and once each neighbour along one side, where the way there is open."""
    found = 2 * values
    found[low] += values[high] * open_way
    found[high] += values[low] * open_way
    return found


def _parted(plates: Sequence[Plate], starts: np.ndarray, ends: np.ndarray) -> np.ndarray:
    """Whether a plate stands between two places (..., 3)."""
    parted = np.zeros(starts.shape[:-1], bool)
    for plate in plates:
        before, after = plate.height(starts), plate.height(ends)
        across = before * after < 0
        if across.any():
            share = (before[across] / (before[across] - after[across]))[:, None]
            parted[across] |= plate.holds(starts[across] + share * (ends[across] - starts[across]))
    return parted


def _words(name: str, drawing: list[str], frame: Frame, plane: Plane, values: np.ndarray, system: str) -> str:
    who = f"the {name}" if drawing == [name] else "the hoods together"
    catch = "catches" if drawing == [name] else "catch"
    tail = "Few draws at each place, no interval."
    good = np.nan_to_num(values) >= max(SHARES)
    if not good.any():
        return f"Nowhere on this plane {who} still {catch} nine tenths. {tail}"
    if good[~np.isnan(values)].all():
        return f"Everywhere on this plane {who} still {catch} nine tenths. {tail}"
    places = plane.places(values.shape)[good]
    ahead = float(frame.height(places).max())
    aside = places - frame.centre - frame.height(places)[:, None] * frame.normal
    flat = np.linalg.norm(np.cross(np.cross(plane.first, plane.second), frame.normal)) < 1e-9  # square to the axis
    far = float(np.linalg.norm(aside, axis=1).max()) if flat else ahead
    where = "to the side of its axis" if flat else "ahead of the opening"
    reach = show(round(far, 2), "length", system, 2)
    return f"Inside the 90 % line {who} still {catch} nine tenths; it reaches {reach} {where}. {tail}"
