"""What a source does: where it lies, the stream it gives off, how that wavers, and what its particles are like."""

from dataclasses import dataclass, replace
from typing import Literal

import numpy as np

from hoodwright.errors import InputError
from hoodwright.flow.jet import Jet
from hoodwright.particles import relaxation_time, settling_velocity
from hoodwright.ranges import not_above, numbers, positive

LARGEST_PARTICLE = 30e-6  # m: heavier ones fly their own way
WIDEST_START = 0.9  # of the opening's radius: particles start within it
Place = tuple[float, float, float]


@dataclass(frozen=True)
class Extent:
    """Where a source lies: one point, a line of two, the opposite corners of a box, or a path of points [m]."""

    form: Literal["point", "line", "box", "path"]
    points: tuple[Place, ...]

    def __post_init__(self):
        counts = {"point": (1, 1), "line": (2, 2), "box": (2, 2), "path": (2, 10_000)}
        low, high = counts[self.form]
        if not low <= len(self.points) <= high:
            raise InputError(f"a source of the form {self.form!r} takes {low} points, got {len(self.points)}")
        numbers("place of the source", self.points)

    def drawn(self, count, rng) -> np.ndarray:
        """`count` places, evenly spread over the source: (count, 3)."""
        ends = np.asarray(self.points, float)
        share = rng.random((count, 3))
        if self.form == "point":
            return np.repeat(ends, count, axis=0)
        if self.form == "box":
            return ends[0] + share * (ends[1] - ends[0])
        pieces = np.linalg.norm(np.diff(ends, axis=0), axis=1)
        way = share[:, 0] * pieces.sum()
        at = np.minimum(np.searchsorted(np.cumsum(pieces), way), len(pieces) - 1)
        part = (way - np.concatenate([[0.0], np.cumsum(pieces)])[at]) / np.maximum(pieces[at], 1e-12)
        return ends[at] + part[:, None] * (ends[at + 1] - ends[at])

    def moved(self, offset) -> "Extent":
        """The same source elsewhere."""
        x, y, z = (float(c) for c in offset)
        return replace(self, points=tuple((p[0] + x, p[1] + y, p[2] + z) for p in self.points))

    @property
    def centre(self) -> Place:
        """Its middle [m]."""
        x, y, z = (float(c) for c in np.mean(self.points, axis=0))
        return x, y, z


@dataclass(frozen=True)
class Grain:
    """How a particle falls and lags behind the air: 0 and 0 for gas, fume and fine fog."""

    settling: float = 0.0  # m/s
    relaxation: float = 0.0  # s


@dataclass(frozen=True)
class Release:
    """A source: where it is, its stream (None: nothing but what the air carries off), how that wavers, its grains."""

    extent: Extent
    jet: Jet | None = None
    tilt: float = 0.0  # rad: standard deviation of the direction, each way
    pulsing: float = 0.0  # standard deviation of the logarithm of the speed
    grain: Grain = Grain()
    name: str = "source"


def grain_of(diameter, density, air_density, viscosity):
    """How particles of one size fall and lag behind the air.

    Parameters
    ----------
    diameter : float [m]
    density : float [kg/m3]
        Of the particle.
    air_density : float [kg/m3]
    viscosity : float [Pa s]
        Of the air.

    Returns
    -------
    grain : Grain [m/s, s]

    Valid: diameter above 0, up to 30 um; outside this RangeError is raised.
    Source: [barati14, first formula, weight against drag; hinds, relaxation time]
    """
    d = positive("diameter of the particle", diameter, "m")
    tail = ", the limit of the computed air; a larger particle flies its own way: receive or enclose it"
    d = float(not_above("diameter of the particle", d, LARGEST_PARTICLE, "m", tail))
    falls = settling_velocity(d, density - air_density, air_density, viscosity)
    return Grain(float(falls), float(relaxation_time(d, density, viscosity)))


def drawn_jets(release, count, rng, strength=1.0):
    """The stream of each of many realisations: somewhere on the source, tilted, and faster or slower.

    Parameters
    ----------
    release : Release
    count : int
        How many realisations.
    rng : numpy Generator
    strength : float or array (count,) [1]
        By which the speed differs from the stated one.

    Returns
    -------
    rows : array (count, 10) [m, m3/s, m4/s2, m, m4/s3, m]
        Place, flow, momentum, core, buoyancy and width, as the kernel takes them; flow 0 where there is no stream.
    sideways : array (count, 2, 3) [1]
        Two directions across each stream, over which its particles start.

    Valid: always.
    Source: [plume-theory, definition]
    """
    places = release.extent.drawn(count, rng)
    turns, pulses = rng.standard_normal((count, 2)), rng.standard_normal(count)
    way = np.array([0.0, 0.0, 1.0]) if release.jet is None else np.asarray(release.jet.direction)
    first, second = _across(way)
    ways = way + release.tilt * (turns[:, :1] * first + turns[:, 1:] * second)
    ways /= np.linalg.norm(ways, axis=1, keepdims=True)
    rows = np.zeros((count, 10))
    rows[:, :3] = places
    if release.jet is not None:
        faster = strength * np.exp(release.pulsing * pulses - release.pulsing**2 / 2)
        flow, speed = release.jet.flow * faster, release.jet.speed * faster
        rows[:, 3], rows[:, 4:7] = flow, (flow * speed)[:, None] * ways
        rows[:, 7], rows[:, 8], rows[:, 9] = release.jet.core, release.jet.buoyancy * faster, release.jet.width
    across = np.stack([np.cross(ways, second), np.cross(ways, np.cross(ways, second))], axis=1)
    return rows, across / np.linalg.norm(across, axis=2, keepdims=True)


def drawn_starts(release, rows, sideways, particles, rng):
    """Where the particles of each realisation start: over the opening of its stream, or over the source.

    Parameters
    ----------
    release : Release
    rows : array (count, 10)
        From `drawn_jets`.
    sideways : array (count, 2, 3) [1]
        From `drawn_jets`.
    particles : int
        In each realisation.
    rng : numpy Generator

    Returns
    -------
    starts : array (count, particles, 3) [m]

    Valid: always.
    Source: [plume-theory, definition]
    """
    count = len(rows)
    if release.jet is None:
        return release.extent.drawn(count * particles, rng).reshape(count, particles, 3)
    radius = WIDEST_START * release.jet.radius * np.sqrt(rng.random((count, particles)))
    angle = 2 * np.pi * rng.random((count, particles))
    shift = np.einsum("rpk,rkc->rpc", np.stack([radius * np.cos(angle), radius * np.sin(angle)], -1), sideways)
    return rows[:, None, :3] + shift


def _across(way):
    """Two unit directions across one."""
    helper = np.eye(3)[np.argmin(np.abs(way))]
    first = np.cross(way, helper)
    first /= np.linalg.norm(first)
    return first, np.cross(way, first)
