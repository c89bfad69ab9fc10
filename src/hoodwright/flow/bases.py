"""The solved flow of a scene: bases, which weights turn into an air velocity everywhere."""

import math
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property

import numpy as np
from scipy.spatial import cKDTree

from hoodwright.errors import InputError, RangeError
from hoodwright.flow.geometry import Block, Hole, Mouth, Plate
from hoodwright.flow.grids.choose import Resolution
from hoodwright.flow.grids.cut import OPEN, Cut, areas_of, crossings
from hoodwright.flow.grids.grid import Grid
from hoodwright.flow.grids.reach import reaches
from hoodwright.flow.scene import Scene
from hoodwright.flow.shapes import Vector
from hoodwright.kernels.velocity import velocities

DRAUGHTS = ("draught x", "draught y", "draught z")
FASTEST_DRAUGHT = 10.0  # m/s: above it there is no working indoors
FASTEST_FACE = 100.0  # m/s: above it air is no longer taken as incompressible
BINS = 512  # of the look-up of cells


@dataclass(frozen=True)
class SolveReport:
    """What was solved, and how well: cells, narrowest cell [m], greatest residual, steps, resolution, notes."""

    cells: int
    smallest: float
    residual: float
    steps: int
    resolution: Resolution
    notes: tuple[str, ...]


@dataclass(frozen=True, eq=False)
class Bases:
    """Velocities of every basis on the faces of a grid: unit flow of each hood and vent, unit draughts."""

    scene: Scene
    cut: Cut
    faces: list[np.ndarray]
    potential: np.ndarray
    report: SolveReport

    @property
    def grid(self) -> Grid:
        """The grid."""
        return self.cut.grid

    @cached_property
    def names(self) -> tuple[str, ...]:
        """One name per basis: mouths, vents that are not free, three draughts."""
        vents = (vent.name for vent in self.scene.vents if not vent.free)
        return (*(mouth.name for mouth in self.scene.mouths), *vents, *DRAUGHTS)

    def weights(self, flows: Mapping[str, float], draught: Vector = (0.0, 0.0, 0.0)) -> np.ndarray:
        """Weights of the bases: flows [m3/s] by name (out through a hood, in through a vent), and a draught [m/s]."""
        unknown = sorted(set(flows) - set(self.names[:-3]))
        if unknown:
            raise InputError(f"there is no hood or vent {unknown[0]!r}; there are {', '.join(self.names[:-3])}")
        for name, flow in flows.items():
            self._check_flow(name, flow)
        if not np.all(np.isfinite(draught)):
            raise RangeError(f"draught {draught} is not made of finite numbers; give m/s along x, y and z")
        if math.hypot(*draught) > FASTEST_DRAUGHT:
            raise RangeError(
                f"draught {math.hypot(*draught):g} m/s is above {FASTEST_DRAUGHT:g} m/s, "
                "more than any workroom has; give m/s"
            )
        return np.array([*(flows.get(name, 0.0) for name in self.names[:-3]), *draught], dtype=np.float32)

    def field(self, flows: Mapping[str, float], draught: Vector = (0.0, 0.0, 0.0)) -> "Field":
        """The air at given flows and draught."""
        if not any(flows.get(mouth.name, 0.0) > 0 for mouth in self.scene.mouths):
            raise InputError("no hood draws any air: every flow is zero; give a flow to at least one")
        return Field(self, self.weights(flows, draught))

    def _check_flow(self, name: str, flow: float) -> None:
        if not math.isfinite(flow):
            raise RangeError(f"{name}: flow {flow} is not a finite number; give m3/s")
        for mouth in self.scene.mouths:
            if mouth.name != name:
                continue
            if flow < 0:
                raise RangeError(
                    f"{name}: flow {flow:g} m3/s is below zero: a hood draws air; give it as a positive size"
                )
            if flow / mouth.area > FASTEST_FACE:
                raise RangeError(
                    f"{name}: face velocity {flow / mouth.area:.4g} m/s is above {FASTEST_FACE:g} m/s, "
                    "the limit of incompressible air; check flow and opening"
                )

    @cached_property
    def arrays(self) -> tuple:
        """Everything that the kernels need (see hoodwright.kernels.velocity)."""
        return self._arrays(self.faces)

    def contracted(self, weights: np.ndarray) -> tuple:
        """Arrays with four bases: the weighted sum of all hoods and vents, then the three draughts."""
        fixed = np.asarray(weights, dtype=np.float32)[:-3]
        parts = [np.concatenate([(face[..., :-3] @ fixed)[..., None], face[..., -3:]], axis=-1) for face in self.faces]
        return self._arrays(parts)

    def _arrays(self, faces: list[np.ndarray]) -> tuple:
        lines = [np.ascontiguousarray(line, dtype=float) for line in self.grid.lines]
        looks = [_look_up(line) for line in lines]
        codes = [np.ascontiguousarray(code) for code in self.cut.codes]
        whole = (np.ascontiguousarray(face, dtype=np.float32) for face in faces)
        return (*lines, *looks, *whole, *self._reaches, *codes, self.cut.solid.astype(np.uint8))

    @cached_property
    def _reaches(self) -> list[np.ndarray]:
        return reaches(self.cut)

    @cached_property
    def distance(self) -> np.ndarray:
        """Distance of every cell centre to the nearest wall or hood face [m], single precision."""
        closed = [self.grid.face_centres(axis, np.nonzero(code != OPEN)) for axis, code in enumerate(self.cut.codes)]
        centres = self.grid.cell_centres()
        points = np.concatenate(closed)
        if not len(points):
            return np.full(self.grid.shape, np.inf, dtype=np.float32)
        return cKDTree(points).query(centres, workers=-1)[0].astype(np.float32)

    def refuse_solid(self, name: str, points) -> None:
        """Raise InputError when a point is not in the open air of the box."""
        points = np.atleast_2d(np.asarray(points, dtype=float))
        if not np.all(np.isfinite(points)):
            raise InputError(f"{name}: its place is not made of finite numbers; give metres")
        for point in points:
            at = tuple(float(c) for c in np.round(point, 4))
            if not self.grid.holds(point):
                raise InputError(f"{name}: {at} lies outside the box of the computed air; move it nearer, or watch it")
            if self.cut.solid[self.grid.cell_at(point)][0]:
                raise InputError(f"{name}: {at} lies in {self._what_stands_at(point)}; move it into the air")

    def _what_stands_at(self, point: np.ndarray) -> str:
        parts: tuple[Block | Mouth, ...] = (*self.scene.blocks, *self.scene.mouths)
        for part in parts:
            if part.fills(point):
                return f"the body of {part.name}"
        return "a wall, a hood or a closed space"


@dataclass(frozen=True, eq=False)
class Field:
    """The air at one set of flows and one draught."""

    bases: Bases
    flows_and_draught: np.ndarray

    @property
    def weights(self) -> np.ndarray:
        """Weight of each basis, in the order of `bases.names`."""
        return self.flows_and_draught

    def velocity(self, points) -> np.ndarray:
        """Velocity [m/s] at points (..., 3); points outside the box take that of its side."""
        points = np.asarray(points, dtype=float)
        flat = np.ascontiguousarray(points.reshape(-1, 3))
        found = np.empty_like(flat)
        velocities(self.bases.arrays, self.weights, flat, found)
        return found.reshape(points.shape)

    def flux_through(self, plate: Plate, hole: Hole | None = None) -> float:
        """Flow [m3/s] along the normal of a plate through it, or through one of its holes."""
        figure = plate if hole is None else plate.hole_frame(hole)
        sign = 1.0 if hole is None else float(np.sign(figure.normal @ plate.normal))
        total = 0.0
        grid = self.bases.grid
        for axis, index, _ in crossings(grid, figure.corners(), figure.height, figure.holds):
            way = np.sign(figure.normal[axis]) * sign
            velocity = self.bases.faces[axis][index].astype(float) @ self.weights
            total += float(way * np.sum(velocity * areas_of(grid, axis, index)))
        return total


def _look_up(line: np.ndarray) -> np.ndarray:
    """The cell of the low end of each of many even bins."""
    starts = np.linspace(line[0], line[-1], BINS + 1)[:-1]
    return np.clip(np.searchsorted(line, starts, side="right") - 1, 0, len(line) - 2).astype(np.int32)
