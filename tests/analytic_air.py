"""Air whose flow is known in a formula, in the form that particle and jet kernels take: for tests without a solver."""

from dataclasses import dataclass

import numpy as np

WEST_TO_EAST = ("draught x", "draught y", "draught z")


@dataclass(frozen=True)
class Opening:
    """The part of a hood's opening that tracing asks for."""

    name: str
    centre: tuple


@dataclass(frozen=True, eq=False)
class AnalyticAir:
    """Bases in a box: one formula per hood, each for a flow of 1 m3/s, and three even draughts."""

    arrays: tuple
    names: tuple
    mouths: tuple = ()
    near: np.ndarray | None = None  # distance of every cell to the nearest wall [m]

    def weights(self, flows, draught):
        return np.array([*(flows.get(name, 0.0) for name in self.names[:-3]), *draught], np.float32)

    def contracted(self, weights):
        summed = [np.concatenate([(u[..., :-3] @ weights[:-3])[..., None], u[..., -3:]], -1) for u in self.arrays[6:9]]
        return (*self.arrays[:6], *(np.ascontiguousarray(u, dtype=np.float32) for u in summed), *self.arrays[9:])

    def refuse_solid(self, name, points):
        """There is no wall to lie in."""

    @property
    def distance(self):
        return np.full(self.arrays[-1].shape, np.inf, np.float32) if self.near is None else self.near


def lines(low, high, cells):
    return np.linspace(low, high, cells + 1)


def point_sink(x, y, z):
    """Air drawn into the origin from all sides."""
    r3 = np.maximum(x * x + y * y + z * z, 1e-9) ** 1.5
    return -x / (4 * np.pi * r3), -y / (4 * np.pi * r3), -z / (4 * np.pi * r3)


def analytic_air(grid, hoods=None, walls=()):
    """Air on `grid` (three arrays of lines); `hoods` = {name: (formula, half size of the cube that catches)}.

    `walls`: pairs (axis, index of the line) that are closed all over.
    """
    grid = tuple(np.asarray(line, float) for line in grid)
    hoods = hoods or {}
    formulas = [formula for formula, _ in hoods.values()]
    formulas += [
        lambda x, y, z, a=a: tuple(np.ones_like(x) if a == b else np.zeros_like(x) for b in range(3)) for a in range(3)
    ]
    speeds, faces = [], []
    for axis in range(3):
        places = places_of(grid, axis)
        speeds.append(np.ascontiguousarray(np.stack([f(*places)[axis] for f in formulas], -1), dtype=np.float32))
        face = np.ones(places[0].shape, np.int8)
        for number, (_, half) in enumerate(hoods.values()):
            face[np.all([np.abs(p) <= half + 1e-9 for p in places], axis=0)] = -(number + 1)
        for wall_axis, at in walls:
            if wall_axis == axis:
                face[(slice(None),) * axis + (at,)] = 0
                speeds[-1][(slice(None),) * axis + (at,)] = 0.0
        faces.append(face)
    reach = [np.full(face.shape, 255, np.uint8) for face in faces]
    solid = np.zeros(tuple(len(line) - 1 for line in grid), np.uint8)
    arrays = (*grid, *(bins(line) for line in grid), *speeds, *reach, *faces, solid)
    return AnalyticAir(arrays, (*hoods, *WEST_TO_EAST), tuple(Opening(name, (0.0, 0.0, 0.0)) for name in hoods))


def places_of(grid, axis):
    """Middles of the faces across one axis."""
    along = [line if a == axis else (line[1:] + line[:-1]) / 2 for a, line in enumerate(grid)]
    return np.meshgrid(*along, indexing="ij")


def bins(line, count=1024):
    """The cell in which each of even pieces begins."""
    at = np.linspace(line[0], line[-1], count + 1)[:-1]
    return np.clip(np.searchsorted(line, at, "right") - 1, 0, len(line) - 2).astype(np.int32)


def still_air(half=5.0, height=12.0):
    """A box of quiet air."""
    return analytic_air((lines(-half, half, 5), lines(-half, half, 5), lines(-1.0, height, 13)))
