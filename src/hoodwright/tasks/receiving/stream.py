"""A stream of thrown particles: how far it flies, and whether it meets the opening of its hood."""

import math
from dataclasses import dataclass

from hoodwright import particles
from hoodwright.air import density, viscosity
from hoodwright.errors import RangeError
from hoodwright.tasks.hood_shapes import frame_of
from hoodwright.tasks.lines import digits
from hoodwright.workplace.model import ReceivingHood, Source, Throws, Workplace
from hoodwright.workplace.moisture import humidity_ratio_of, pressure_of

Xyz = tuple[float, float, float]

FINE = 10e-6  # m: dust that is breathed in, thrown with the rest
GRAZING = -0.17  # cosine of 100 degrees: a stream that slants more does not fly into an opening


@dataclass(frozen=True)
class Path:
    """The way of a stream to the plane of an opening; `spare`: how far inside the rim it meets it, below 0 past it."""

    length: float
    spare: float

    @property
    def angle(self) -> float:
        """How wide the stream may spread to each side and still meet the opening [rad]."""
        return math.atan2(self.spare, self.length)


def path_of(hood: ReceivingHood, source: Source) -> Path | None:
    """The worst way from any point of a source to its hood; None where the stream does not fly towards the opening."""
    assert source.throws is not None
    found = [_path(hood, source.throws, point) for point in source.points]
    if any(path is None for path in found):
        return None
    return min((path for path in found if path is not None), key=lambda path: path.spare)


def _path(hood: ReceivingHood, throws: Throws, point: Xyz) -> Path | None:
    slant = _dot(throws.towards, hood.facing)
    away = tuple(h - p for h, p in zip(hood.at, point, strict=True))
    if slant > GRAZING or _dot(away, hood.facing) > 0:
        return None
    length = _dot(away, hood.facing) / slant
    missed = tuple(length * t - a for t, a in zip(throws.towards, away, strict=True))
    a, b = (abs(_dot(missed, way)) for way in frame_of(hood))
    w, h = (side / 2 for side in hood.opening.sides)
    return Path(length, w - math.hypot(a, b) if hood.opening.is_round else min(w - a, h - b))


def reach_of(throws: Throws, workplace: Workplace, grain: float | None = None) -> float | None:
    """How far one grain flies in still air before it stops; None beyond the drag law, farther than any room."""
    state = workplace.air
    p_abs, mu = pressure_of(state), float(viscosity(state.temperature))
    rho = float(density(state.temperature, p_abs, humidity_ratio_of(state)))
    size = grain or throws.grain
    slip = particles.slip_factor(size, particles.mean_free_path(state.temperature, p_abs, mu))
    try:
        return float(particles.stopping_distance(size, throws.grain_density, throws.speed, rho, mu, slip))
    except RangeError:
        return None


def flight_words(throws: Throws, workplace: Workplace, reach: float) -> str:
    """The stopping distance as it can be recomputed, beside what Stokes' drag would say."""
    mu = float(viscosity(workplace.air.temperature))
    time = particles.relaxation_time(throws.grain, throws.grain_density, mu)
    stokes = float(particles.stokes_stopping_distance(throws.speed, time))
    filled = f"{digits(throws.speed)} x {digits(throws.grain_density)} x {digits(throws.grain)}² / (18 x {digits(mu)})"
    return (
        f"S = (4 rhop d / (3 rho)) integral of dRe / (Re Cd) = {digits(reach, 3)} m; Stokes' v rhop d² / (18 mu) = "
        f"{filled} = {digits(stokes, 3)} m is an upper bound"
    )


def _dot(a: tuple[float, ...], b: tuple[float, ...]) -> float:
    return sum(i * j for i, j in zip(a, b, strict=True))
