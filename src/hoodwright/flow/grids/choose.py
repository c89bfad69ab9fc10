"""Which grid a scene gets: how far it reaches, and how fine it is at openings, edges and bodies."""

from dataclasses import dataclass

import numpy as np

from hoodwright.errors import InputError, RangeError
from hoodwright.flow.geometry import Block, Hole, Mouth, Plate, Vent
from hoodwright.flow.grids.grid import Grid
from hoodwright.flow.grids.lines import Axis
from hoodwright.flow.scene import ENDLESS, Scene

ALONG = 24  # cells along a long side, when the short one is not finer
AHEAD = 0.75  # shorter sides before an opening with the finest cells
OVER_HOLE = 4  # cells across an opening of an enclosure
OVER_VENT = 3
OVER_BLOCK = 2
WHOLE = 3  # reaches: a plate that is no longer lies in the box as a whole
BESIDE = 0.05  # of the reach: the side of the box keeps off plates that are nearer
MOST_CELLS = 4_000_000
STRAIGHT = 1e-6  # a direction this close to an axis lies along it


@dataclass(frozen=True)
class Resolution:
    """How fine and how far: cells across the shorter side of an opening, growth from cell to cell, and the reach [m]
    of the box beyond openings and watched points (told None: ten longer sides, at least 0.8 m)."""

    cells_across: float = 10.0
    growth: float = 1.2
    reach: float | None = None

    def __post_init__(self):
        if not 2 <= self.cells_across <= 64:
            raise RangeError(f"cells across an opening {self.cells_across:g} is outside 2 to 64; 8 to 12 is usual")
        if not 1.02 <= self.growth <= 2:
            raise RangeError(f"growth of cells {self.growth:g} is outside 1.02 to 2; about 1.2 is usual")
        if self.reach is not None and not 0 < self.reach < ENDLESS:
            raise InputError(f"reach {self.reach} m must be above zero; give metres, or leave it out")


def box_round(scene: Scene, resolution: Resolution, names: tuple[str, ...] = ()) -> tuple[np.ndarray, np.ndarray]:
    """Low and high corner of the box round the named openings (all when none is named) and the watched points."""
    mouths = [mouth for mouth in scene.mouths if not names or mouth.name in names]
    longest = max(mouth.longer for mouth in mouths)
    reach = resolution.reach or max(10 * longest, 0.8)
    points = np.concatenate([mouth.frame.grown(mouth.flange).corners() for mouth in mouths])
    near = [p for p in scene.watch if np.min(np.linalg.norm(points - p, axis=1)) < reach or not names]
    points = np.concatenate([points, np.array(near).reshape(-1, 3)])
    corners = np.array([points.min(axis=0) - reach, points.max(axis=0) + reach])
    for plate in scene.plates:
        _take_in(corners, plate, reach)
    for side, outward in ((0, -1), (1, 1)):
        for axis in range(3):
            if any(_lies_at(plate, axis, corners[side][axis], BESIDE * reach) for plate in scene.plates):
                corners[side][axis] += outward * 2 * BESIDE * reach
    low, high = scene.surroundings.bounds
    return np.maximum(corners[0], low), np.minimum(corners[1], high)


def grid_for(scene: Scene, resolution: Resolution, box: tuple[np.ndarray, np.ndarray]) -> Grid:
    """The grid of a scene in a box."""
    largest = float(np.max(box[1] - box[0])) / 12
    axes = [Axis(low, high, resolution.growth, largest) for low, high in zip(*box, strict=True)]
    inside = [m for m in scene.mouths if np.all(m.centre >= box[0] - 1e-9) and np.all(m.centre <= box[1] + 1e-9)]
    for mouth in inside:
        _for_mouth(axes, mouth, resolution)
    for plate in scene.plates:
        if _meets(box, plate.corners()):
            _for_plate(axes, plate)
    for block in scene.blocks:
        if _meets(box, block.corners()):
            _for_block(axes, block)
    for vent in scene.vents:
        if _meets(box, np.array([vent.centre])):
            _for_vent(axes, vent)
    grid = Grid(tuple(axis.lines() for axis in axes))  # type: ignore[arg-type]
    if grid.cells > MOST_CELLS:
        raise RangeError(
            f"the grid would have {grid.cells} cells, more than {MOST_CELLS}; "
            "take fewer cells across an opening, a shorter reach, or solve groups of hoods by themselves"
        )
    return grid


def _meets(box: tuple[np.ndarray, np.ndarray], corners: np.ndarray) -> bool:
    """Whether what has these corners reaches into a box."""
    return bool(np.all(corners.min(axis=0) <= box[1] + 1e-9) and np.all(corners.max(axis=0) >= box[0] - 1e-9))


def _take_in(box: np.ndarray, plate: Plate, reach: float) -> None:
    """Widen a box that would cut a plate of an enclosure: its side must not let air in behind the plate."""
    low, high = plate.corners().min(axis=0), plate.corners().max(axis=0)
    meets = np.all(low <= box[1]) and np.all(high >= box[0])
    if meets and (plate.holes or np.max(high - low) <= WHOLE * reach):
        box[0], box[1] = np.minimum(box[0], low - 2 * BESIDE * reach), np.maximum(box[1], high + 2 * BESIDE * reach)


def _lies_at(plate: Plate, axis: int, place: float, near: float) -> bool:
    """Whether a plate square to an axis lies so near to a place that it would fall into the side of the box."""
    along = plate.corners()[:, axis]
    return bool(np.ptp(along) < STRAIGHT and abs(along[0] - place) < near)


def _for_mouth(axes: list[Axis], mouth: Mouth, resolution: Resolution) -> None:
    frame = mouth.frame.scaled(_round_as_squares(mouth, resolution))
    fine = min(frame.sides) / resolution.cells_across
    corners = frame.corners()
    front = frame.centre + np.outer([0.0, AHEAD * mouth.shorter], frame.normal)
    for axis, (lowest, highest) in enumerate(zip(corners.min(axis=0), corners.max(axis=0), strict=True)):
        ahead = sorted(front[:, axis])
        axes[axis].refine(ahead[0], ahead[1], fine)
        axes[axis].refine(lowest, highest, max(fine, (highest - lowest) / ALONG))
        for rim in (lowest, highest):
            axes[axis].refine(rim, rim, fine)
        if _straight(frame.normal) and _straight(frame.along):
            axes[axis].snaps += [lowest, highest] if highest - lowest > STRAIGHT else [lowest]
            if mouth.flange and highest - lowest > STRAIGHT:
                axes[axis].snaps += [lowest - mouth.flange, highest + mouth.flange]


def _round_as_squares(mouth: Mouth, resolution: Resolution) -> float:
    """The factor on a diameter for which the squares whose centres lie in the circle have the circle's area."""
    across = round(resolution.cells_across)
    if mouth.shape != "round" or abs(across - resolution.cells_across) > STRAIGHT:
        return 1.0
    place = (2 * np.arange(across) + 1 - across) / across
    inside = np.count_nonzero(np.hypot(place[:, None], place[None, :]) <= 1)
    return float(np.sqrt(np.pi / 4 * across**2 / inside))


def _for_plate(axes: list[Axis], plate: Plate) -> None:
    corners = plate.corners()
    for axis in range(3):
        if all(_straight(side / np.linalg.norm(side)) for side in plate.spans[1:]):
            axes[axis].snaps += [corners[:, axis].min(), corners[:, axis].max()]
    for hole in plate.holes:
        _for_hole(axes, plate, hole)


def _for_hole(axes: list[Axis], plate: Plate, hole: Hole) -> None:
    corners = plate.hole_frame(hole).corners()
    fine = min(hole.sides) / OVER_HOLE
    for axis, (low, high) in enumerate(zip(corners.min(axis=0), corners.max(axis=0), strict=True)):
        if high < axes[axis].low or low > axes[axis].high:
            return
    for axis, (low, high) in enumerate(zip(corners.min(axis=0), corners.max(axis=0), strict=True)):
        axes[axis].snaps += [low, high]
        axes[axis].refine(low, high, max(fine, (high - low) / ALONG))


def _for_block(axes: list[Axis], block: Block) -> None:
    corners = block.corners()
    upright = abs(np.sin(2 * block.turn)) < STRAIGHT
    for axis, (low, high) in enumerate(zip(corners.min(axis=0), corners.max(axis=0), strict=True)):
        if upright:
            axes[axis].snaps += [low, high]
        axes[axis].refine(low, high, max((high - low) / OVER_BLOCK, min(block.size) / OVER_BLOCK))


def _for_vent(axes: list[Axis], vent: Vent) -> None:
    for axis, half in zip(vent.level_axes, np.array(vent.sides) / 2, strict=True):
        low, high = vent.centre[axis] - half, vent.centre[axis] + half
        axes[axis].snaps += [low, high]
        axes[axis].refine(low, high, (high - low) / OVER_VENT)


def _straight(direction: np.ndarray) -> bool:
    return bool(np.max(np.abs(direction)) > 1 - STRAIGHT)
