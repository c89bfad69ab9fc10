"""The computed air on the points of a lattice, small enough to send away: what a picture of moving smoke needs.

The points are the middles of the solver's cells, cut to a box round the hoods. There the velocity is the mean of the
two faces of each axis, so nothing is looked up.
"""

from dataclasses import dataclass

import numpy as np

from hoodwright.errors import InputError
from hoodwright.flow.bases import DRAUGHTS, Bases
from hoodwright.flow.calm import calm_air
from hoodwright.ranges import not_above, numbers, positive

REST = "rest"
MOST_POINTS = 80_000
FEWEST_POINTS = 1000
FULL = 255  # calm as a byte: all of the room's turbulence is left
FILLED = 2  # layers of solid points, which take the velocity of the air beside them
HALVINGS = 20


@dataclass(frozen=True, eq=False)
class Lattice:
    """Velocities per unit weight on the points of three sets of lines; `names` says what each basis is."""

    names: tuple[str, ...]
    lines: tuple[np.ndarray, np.ndarray, np.ndarray]  # m
    velocity: np.ndarray  # (bases, nx, ny, nz, 3) half precision, m/s per unit weight
    calm: np.ndarray  # (nx, ny, nz) bytes: share of the room's turbulence that is left, 255 for all of it
    solid: np.ndarray  # (nx, ny, nz) bytes: 1 where there is no air

    @property
    def shape(self) -> tuple[int, int, int]:
        """Points along each axis."""
        x, y, z = (len(line) for line in self.lines)
        return x, y, z


def lattice_of(bases, chosen, others, eddy, centres, reach, most=MOST_POINTS):
    """The air of a scene on a lattice: one hood, all other hoods and vents together, and three draughts.

    Parameters
    ----------
    bases : Bases
    chosen : str
        The hood whose flow is a weight of its own: its basis is that of unit flow.
    others : dict of name to float [m3/s]
        Flow of all other hoods and vents, which are one basis called "rest", of weight 1.
    eddy : float [m]
        Size of an eddy of the room.
    centres : array (n, 3) [m]
        The lattice reaches round each of them.
    reach : float [m]
        So far; the box of the bases ends it.
    most : int
        Points; where there would be more, lines that lie close together are left out.

    Returns
    -------
    lattice : Lattice [m, m/s per m3/s, m/s per m/s]

    Valid: a hood of the scene, reach above 0, 1000 points or more; else InputError or RangeError is raised.
    Source: [potential-flow, finite volumes; limits in docs/limits.md]
    """
    if chosen not in bases.names[:-3]:
        raise InputError(f"there is no hood {chosen!r}; there are {', '.join(bases.names[:-3])}")
    middles = numbers("centres of the lattice", centres).reshape(-1, 3)
    size = float(positive("reach of the lattice", reach, "m"))
    not_above("fewest points of a lattice", FEWEST_POINTS, most, "", ", the most that are allowed; allow more")
    box = middles.min(axis=0) - size, middles.max(axis=0) + size
    at = _thinned([_within(c, *ends) for c, *ends in zip(bases.grid.centres, *box, strict=True)], bases, most)
    where = np.ix_(*at)
    solid = bases.cut.solid[where]
    velocity = _filled(_velocities(bases, _weights(bases, chosen, others), at), solid)
    calm = np.rint(FULL * calm_air(bases.distance[where], eddy)).astype(np.uint8)
    lines = tuple(c[index] for c, index in zip(bases.grid.centres, at, strict=True))
    whole = np.ascontiguousarray(np.moveaxis(velocity, 3, 0), dtype=np.float16)
    return Lattice((chosen, REST, *DRAUGHTS), lines, whole, calm, solid.astype(np.uint8))  # type: ignore[arg-type]


def _within(centres: np.ndarray, low: float, high: float) -> np.ndarray:
    """The numbers of the cells of one axis that reach from one place to another, with one to spare on each side."""
    first = max(int(np.searchsorted(centres, low)) - 1, 0)
    last = min(int(np.searchsorted(centres, high)) + 1, len(centres))
    return np.arange(first, max(last, first + 1))


def _thinned(at: list[np.ndarray], bases: Bases, most: int) -> list[np.ndarray]:
    """The same cells, or so many of them, evenly left out where they are finest, that there are not too many."""

    def spaced(least: float) -> list[np.ndarray]:
        return [_apart(index, c, least) for index, c in zip(at, bases.grid.centres, strict=True)]

    if np.prod([len(index) for index in at]) <= most:
        return at
    low, high = 0.0, max(float(np.ptp(c)) for c in bases.grid.centres)
    for _ in range(HALVINGS):
        middle = (low + high) / 2
        few = np.prod([len(index) for index in spaced(middle)]) <= most
        low, high = (low, middle) if few else (middle, high)
    return spaced(high)


def _apart(index: np.ndarray, centres: np.ndarray, least: float) -> np.ndarray:
    """Those cells whose centres are at least so far apart."""
    kept = [int(index[0])]
    for number in index[1:]:
        if centres[number] - centres[kept[-1]] >= least:
            kept.append(int(number))
    return np.array(kept)


def _weights(bases: Bases, chosen: str, others: dict[str, float]) -> np.ndarray:
    """Weights of the solver's bases in each of the lattice's: (5, bases)."""
    rest = {name: flow for name, flow in others.items() if name != chosen}
    rows = [np.array([float(name == chosen) for name in bases.names]), bases.weights(rest)]
    rows += [np.array([float(name == draught) for name in bases.names]) for draught in DRAUGHTS]
    return np.array(rows, dtype=np.float32)


def _velocities(bases: Bases, weights: np.ndarray, at: list[np.ndarray]) -> np.ndarray:
    """Velocity of each basis in the middle of the chosen cells: (nx, ny, nz, 5, 3)."""
    parts = []
    for axis, faces in enumerate(bases.faces):
        low = np.ix_(*at)
        high = np.ix_(*(index + (a == axis) for a, index in enumerate(at)))
        parts.append((faces[low] + faces[high]) @ weights.T / 2)
    return np.stack(parts, axis=-1)


def _filled(velocity: np.ndarray, solid: np.ndarray) -> np.ndarray:
    """Solid points take the mean of the air beside them, so that smoke is not held up before a wall or a hood."""
    known = ~solid
    velocity[solid] = 0.0
    for _ in range(FILLED):
        unknown = np.argwhere(~known)
        total, count = np.zeros((len(unknown), *velocity.shape[3:]), np.float32), np.zeros(len(unknown))
        for axis in range(3):
            for step in (-1, 1):
                beside = unknown.copy()
                beside[:, axis] += step
                here = np.flatnonzero((beside[:, axis] >= 0) & (beside[:, axis] < solid.shape[axis]))
                near = tuple(beside[here].T)
                total[here] += velocity[near] * known[near][:, None, None]
                count[here] += known[near]
        some = count > 0
        found = tuple(unknown[some].T)
        velocity[found] = total[some] / count[some, None, None]
        known[found] = True
    return velocity
