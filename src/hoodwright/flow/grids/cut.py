"""How a scene cuts a grid: which faces are walls, which cells are solid, through which faces a hood draws.

A thin plate blocks every face whose link between two cell centres crosses it. A closed surface is then leak-tight at
any tilt: a link that leads from inside to outside must cross one of its plates.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass

import numpy as np

from hoodwright.errors import InputError
from hoodwright.flow.geometry import Mouth, Plate, Vent
from hoodwright.flow.grids.grid import Grid, above, below, end, inner
from hoodwright.flow.scene import Scene

OPEN, WALL = 1, 0  # what a face is; below zero: the opening of hood number -(face) - 1
WIDER = 1.5  # how far round an opening faces are looked for
PARTS = np.linspace(-0.4, 0.4, 5)  # sample places within a face, in face widths
Index = tuple[np.ndarray, np.ndarray, np.ndarray]


@dataclass(frozen=True, eq=False)
class Faces:
    """Faces of one axis through which a unit flow passes, with its velocity along the axis [1/m2]."""

    axis: int
    index: Index
    velocity: np.ndarray


@dataclass(frozen=True, eq=False)
class Opening:
    """The faces that stand for a hood's opening, with the points where they meet it, and the factor on its sides."""

    scale: float
    found: list[tuple[int, Index, np.ndarray]]


@dataclass(eq=False)
class Cut:
    """A grid, the code of every face, the solid cells, and the faces of each hood opening and vent."""

    grid: Grid
    codes: list[np.ndarray]
    solid: np.ndarray
    mouths: list[list[Faces]]
    vents: list[list[Faces]]
    here: list[bool]  # whether each mouth lies in the box
    openings: list[Opening]


def cut(scene: Scene, grid: Grid) -> Cut:
    """Cut a grid by everything that stands in it."""
    codes = [np.full(grid.faces_shape(axis), OPEN, dtype=np.int8) for axis in range(3)]
    made = Cut(grid, codes, np.zeros(grid.shape, dtype=bool), [], [], [], [])
    _close_sides(scene, made)
    flanges = [_Rim(mouth) for mouth in scene.mouths if mouth.flange > 0]
    plates: list[Plate | _Rim] = [*scene.plates, *flanges]
    for plate in plates:
        for axis, faces, _ in crossings(grid, plate.corners(), plate.height, plate.holds):
            codes[axis][faces] = WALL
    _fill(scene, made)
    _close_solids(made)
    for number, mouth in enumerate(scene.mouths):
        made.here.append(bool(grid.holds(mouth.centre)))
        made.mouths.append(_mouth_faces(mouth, number, made) if made.here[-1] else [])
    made.vents = [_vent_faces(vent, made) if grid.holds(vent.centre) else [] for vent in scene.vents]
    return made


def crossings(
    grid: Grid, corners: np.ndarray, height: Callable, holds: Callable
) -> Iterator[tuple[int, Index, np.ndarray]]:
    """For each axis, the inner faces whose link crosses a figure, and the points where it does."""
    window = grid.window(corners)
    centres = grid.cell_centres(window)
    if 0 in centres.shape:
        return
    signed = height(centres)
    start = np.array([part.start for part in window])
    for axis in range(3):
        low, high = signed[below(axis)], signed[above(axis)]
        at = np.nonzero((low > 0) != (high > 0))
        share = (low[at] / (low[at] - high[at]))[:, None]
        points = centres[below(axis)][at] * (1 - share) + centres[above(axis)][at] * share
        on = holds(points) if len(points) else np.zeros(0, dtype=bool)
        index = [part[on] + start[a] + (a == axis) for a, part in enumerate(at)]
        yield axis, (index[0], index[1], index[2]), points[on]


def mouth_code(number: int) -> int:
    """The code of faces of a hood's opening."""
    return -(number + 1)


def beside(axis: int, index: Index, side: int) -> Index:
    """The cells on the low (0) or high (1) side of faces."""
    cells = [part - (a == axis and side == 0) for a, part in enumerate(index)]
    return cells[0], cells[1], cells[2]


class _Rim:
    """The plate between an opening's rim and the edge of its flange."""

    def __init__(self, mouth: Mouth):
        self.mouth, self.outer = mouth, mouth.frame.grown(mouth.flange)

    def corners(self) -> np.ndarray:
        return self.outer.corners()

    def height(self, points) -> np.ndarray:
        return self.mouth.frame.height(points)

    def holds(self, points) -> np.ndarray:
        return self.outer.holds(points)


def _close_sides(scene: Scene, made: Cut) -> None:
    low, high = scene.surroundings.bounds
    for axis in range(3):
        for side, (place, edge) in enumerate(((low, made.grid.low), (high, made.grid.high))):
            if abs(place[axis] - edge[axis]) < 1e-9:
                made.codes[axis][end(axis, side)] = WALL


def _fill(scene: Scene, made: Cut) -> None:
    """Solid blocks, and the hoods behind their openings."""
    for block in scene.blocks:
        window = made.grid.window(block.corners())
        made.solid[window] |= block.fills(made.grid.cell_centres(window))
    for mouth in scene.mouths:
        made.openings.append(_opening(mouth, made))


def _opening(mouth: Mouth, made: Cut) -> "Opening":
    """The faces of a hood opening; the body behind becomes solid."""
    frame, grid = mouth.frame, made.grid
    found = [*_on_the_side(mouth, made)]
    if not found:
        wide = frame.scaled(WIDER)
        found = list(crossings(grid, wide.corners(), wide.height, wide.holds))
    scale = _true_to_area(mouth, grid, found)
    kept = []
    for axis, index, points in found:
        on = frame.ring(points) <= scale
        index, points = (index[0][on], index[1][on], index[2][on]), points[on]
        forward = int(frame.normal[axis] > 0)
        behind = beside(axis, index, 1 - forward)
        within = (behind[axis] >= 0) & (behind[axis] < grid.shape[axis])
        made.solid[tuple(part[within] for part in behind)] = True
        kept.append((axis, index, points))
    corners = np.concatenate([frame.grown(max(0.0, (mouth.throat or (0, 0))[1] - mouth.shorter) / 2).corners()] * 2)
    corners[4:] -= mouth.depth * frame.normal
    window = grid.window(corners)
    made.solid[window] |= mouth.fills(grid.cell_centres(window), scale)
    return Opening(scale, kept)


def _true_to_area(mouth: Mouth, grid: Grid, found: list[tuple[int, Index, np.ndarray]]) -> float:
    """The factor on the sides for which the faces that are taken, seen along the axis, have the area of the opening."""
    rings = [mouth.frame.ring(points) for _, _, points in found]
    areas = [abs(mouth.frame.normal[axis]) * areas_of(grid, axis, index) for axis, index, _ in found]
    ring, area = np.concatenate([[0.0], *rings]), np.concatenate([[0.0], *areas])
    order = np.argsort(ring)
    ring, total = ring[order], np.cumsum(area[order])
    last = np.flatnonzero(np.diff(ring, append=np.inf) > 1e-6)  # faces at one distance stay together
    best = last[np.argmin(np.abs(total[last] - mouth.area))]
    after = ring[best + 1] if best + 1 < len(ring) else WIDER
    return float((ring[best] + after) / 2) if not ring[best] <= 1 <= after else 1.0


def _on_the_side(mouth: Mouth, made: Cut) -> Iterator[tuple[int, Index, np.ndarray]]:
    """The faces of an opening that lies in a wall of the room."""
    frame, grid = mouth.frame, made.grid
    axis = int(np.argmax(np.abs(frame.normal)))
    side = int(frame.normal[axis] < 0)
    if abs((grid.low, grid.high)[side][axis] - frame.centre[axis]) > 1e-9:
        return
    shape = [1 if a == axis else n for a, n in enumerate(grid.shape)]
    index = [part.ravel() for part in np.indices(shape)]
    index[axis] = index[axis] + side * grid.shape[axis]
    points = grid.face_centres(axis, (index[0], index[1], index[2]))
    on = frame.scaled(WIDER).holds(points)
    yield axis, (index[0][on], index[1][on], index[2][on]), points[on]


def _close_solids(made: Cut) -> None:
    for axis, code in enumerate(made.codes):
        code[inner(axis)][made.solid[below(axis)] | made.solid[above(axis)]] = WALL
        for side in (0, 1):
            code[end(axis, side)][made.solid[end(axis, side)]] = WALL


def _mouth_faces(mouth: Mouth, number: int, made: Cut) -> list[Faces]:
    """Velocities of a unit flow into a hood, by the profile of its face."""
    grid, normal, opening = made.grid, mouth.frame.normal, made.openings[number]
    parts, total = [], 0.0
    for axis, index, points in opening.found:
        front = beside(axis, index, int(normal[axis] > 0))
        free = np.flatnonzero(~made.solid[front])
        index, points = (index[0][free], index[1][free], index[2][free]), points[free]
        weight = abs(normal[axis]) * _mean_over_faces(mouth, grid, axis, index, points, opening.scale)
        total += float(np.sum(weight * areas_of(grid, axis, index)))
        parts.append((axis, index, -np.sign(normal[axis]) * weight))
        made.codes[axis][index] = mouth_code(number)
    if total <= 0:
        raise InputError(
            f"{mouth.name}: its opening faces straight into something solid, so it can draw no air; "
            "turn it round, or move it away"
        )
    return [Faces(axis, index, velocity / total) for axis, index, velocity in parts]


def _mean_over_faces(mouth: Mouth, grid: Grid, axis: int, index: Index, points: np.ndarray, scale: float) -> np.ndarray:
    """Mean of face velocity over its mean, over the part of each face that lies in the opening."""
    first, second = (a for a in range(3) if a != axis)
    total = np.zeros(len(points))
    for s in PARTS:
        for t in PARTS:
            place = points.copy()
            place[:, first] += s * grid.widths[first][index[first]]
            place[:, second] += t * grid.widths[second][index[second]]
            total += mouth.speed_ratio(place, scale)
    return total / len(PARTS) ** 2


def areas_of(grid: Grid, axis: int, index: Index) -> np.ndarray:
    """Areas of faces."""
    first, second = (a for a in range(3) if a != axis)
    return grid.widths[first][index[first]] * grid.widths[second][index[second]]


def _vent_faces(vent: Vent, made: Cut) -> list[Faces]:
    """Velocities of a unit flow into the room; the faces of a free vent are opened."""
    grid, axis = made.grid, vent.axis
    shape = [1 if a == axis else n for a, n in enumerate(grid.shape)]
    index = [part.ravel() for part in np.indices(shape)]
    index[axis] = index[axis] + vent.side * grid.shape[axis]
    everywhere = (index[0], index[1], index[2])
    clear = ~made.solid[beside(axis, everywhere, 1 - vent.side)]
    on = np.flatnonzero(vent.holds(grid.face_centres(axis, everywhere)) & clear)
    if not len(on):
        raise InputError(f"{vent.name}: no air reaches it from the room; move it, or what stands before it")
    chosen = (everywhere[0][on], everywhere[1][on], everywhere[2][on])
    if vent.free:
        made.codes[axis][chosen] = OPEN
    area = areas_of(grid, axis, chosen)
    inward = 1.0 if vent.side == 0 else -1.0
    return [Faces(axis, chosen, np.full(len(on), inward / area.sum()))]
