"""Solve the computed air of a scene: one flow per hood opening and vent, and three draughts, all at once.

Flows and draughts are weights of these bases, so a change of either needs no new solution.
"""

import threading
from collections import OrderedDict
from collections.abc import Callable
from dataclasses import replace
from typing import Protocol

import numpy as np

from hoodwright.errors import InputError
from hoodwright.flow.bases import Bases, SolveReport
from hoodwright.flow.grids.choose import Resolution, box_round, grid_for
from hoodwright.flow.grids.cut import WALL, Cut, Faces, areas_of, beside, cut
from hoodwright.flow.grids.facing import refuse_blocked
from hoodwright.flow.grids.grid import end
from hoodwright.flow.grids.sealed import close_still_air
from hoodwright.flow.linear.coarse import potential_of_room
from hoodwright.flow.linear.multigrid import Multigrid, Settled
from hoodwright.flow.linear.outer import draughts, open_air, prescribed_sides
from hoodwright.flow.linear.system import Side, System, assemble, face_velocities, right_hand_sides
from hoodwright.flow.scene import ENDLESS, Scene

RESIDUAL = 1e-7  # relative, of every right-hand side
KEPT = 6  # solved scenes
NEAR = 6  # longer sides of the greatest opening from there to the side of a local box
ROOM = Resolution(cells_across=3, growth=1.4)  # of the coarse answer for the whole room

_kept: OrderedDict[str, Bases] = OrderedDict()
_lock = threading.Lock()  # of the two tables
_turns: dict[str, threading.Lock] = {}  # of what is being solved


class Reporting(Protocol):
    """What is needed of a jobs.Progress; it raises Cancelled when the work shall stop."""

    def report(self, fraction: float, doing: str) -> None: ...


def solve(scene: Scene, resolution: Resolution | None = None, progress: Reporting | None = None) -> Bases:
    """The flow of a scene on one grid: the box round all its openings, within the walls of the room.

    Parameters
    ----------
    scene : Scene [m]
        The geometry. Flows and draughts come later, as weights.
    resolution : Resolution, optional [m]
        How fine and how far; 10 cells across an opening when not told.
    progress : jobs.Progress, optional
        Told how far the work is; may stop it.

    Returns
    -------
    bases : Bases [m/s per m3/s]

    Valid: no wakes, no recirculation; 2 to 64 cells across an opening; RangeError above four million cells.
    Source: [potential-flow, finite volumes; limits in docs/limits.md]
    """
    resolution = resolution or Resolution()
    return _cached(
        f"{scene!r} {resolution!r}", lambda: _one_grid(scene, resolution, box_round(scene, resolution), progress)
    )


def solve_near(
    scene: Scene,
    names: tuple[str, ...],
    resolution: Resolution | None = None,
    progress: Reporting | None = None,
) -> Bases:
    """The flow near some hoods of a scene: a fine local box, whose sides take a coarse answer for the whole room.

    Parameters
    ----------
    scene : Scene [m]
        The whole room.
    names : tuple of str
        The hoods in the local box; all others draw through its sides.
    resolution : Resolution, optional [m]
        Of the local box.
    progress : jobs.Progress, optional
        Told how far the work is; may stop it.

    Returns
    -------
    bases : Bases [m/s per m3/s]

    Valid: as `solve`; velocities within 2 % of one fine grid where a named hood draws more than a tenth of its face.
    Source: [potential-flow, finite volumes; limits in docs/limits.md]
    """
    resolution = resolution or Resolution()
    unknown = sorted(set(names) - {mouth.name for mouth in scene.mouths})
    if unknown or not names:
        raise InputError(f"scene: there is no hood {', '.join(unknown) or 'named'}; name hoods of the scene")
    whole = replace(scene, watch=()) if scene.surroundings.closed else scene  # one answer for the room, whoever asks
    first, last = (_Part(progress, start) if progress else None for start in (0.0, 0.5))
    room = _cached(f"{whole!r} room", lambda: _one_grid(whole, ROOM, _whole(whole), first))
    longest = max(mouth.longer for mouth in scene.mouths if mouth.name in names)
    reach = resolution.reach or max(NEAR * longest, 0.5)
    box = box_round(scene, replace(resolution, reach=reach), names)
    outer = potential_of_room(scene, room)
    key = f"{scene!r} {resolution!r} {names!r}"
    return _cached(key, lambda: _one_grid(scene, resolution, box, last, outer))


class _Part:
    """Half of a progress: the room first, then the box."""

    def __init__(self, whole: Reporting, start: float):
        self.whole, self.start = whole, start

    def report(self, fraction: float, doing: str) -> None:
        self.whole.report(self.start + fraction / 2, doing)


def _whole(scene: Scene) -> tuple[np.ndarray, np.ndarray]:
    """The box of the room; where it has no wall, far out."""
    far = box_round(scene, Resolution(reach=max(20 * max(m.longer for m in scene.mouths), 2.0)))
    low, high = scene.surroundings.bounds
    return np.where(low > -ENDLESS, low, far[0]), np.where(high < ENDLESS, high, far[1])


def _one_grid(
    scene: Scene,
    resolution: Resolution,
    box: tuple[np.ndarray, np.ndarray],
    progress: Reporting | None,
    outer: Callable | None = None,
) -> Bases:
    say = progress.report if progress else lambda fraction, doing: None
    say(0.0, "laying the grid")
    refuse_blocked(scene)
    made = cut(scene, grid_for(scene, resolution, box))
    parts = close_still_air(scene, made)
    sides = prescribed_sides(scene, made, outer) if outer else open_air(scene, made)
    say(0.1, f"setting up {made.grid.cells} cells")
    system = assemble(made, sides, parts)
    prescribed = _prescribed(scene, made, parts, leaky=not sides)
    settled = _solved(scene, made, system, right_hand_sides(made, system, prescribed, sides), say)
    say(0.95, "keeping the flow")
    faces = face_velocities(made, system, settled.solutions, prescribed, sides)
    report = SolveReport(
        made.grid.cells, made.grid.smallest, settled.residual, settled.steps, resolution, _notes(scene, made, sides)
    )
    return Bases(scene, made, faces, _potential(system, settled.solutions), report)


def _solved(scene: Scene, made: Cut, system: System, right: np.ndarray, say: Callable[[float, str], None]) -> Settled:
    """First guess: draughts pass undisturbed, so that only what the scene changes of them is solved for."""
    start = np.zeros(right.shape)
    start[:, -3:] = draughts(scene, made.grid.cell_centres()[~made.solid])
    change = right - system.matrix @ start
    found = Multigrid(system.matrix).solve(change, RESIDUAL, lambda done: say(0.3 + 0.65 * done, "solving for the air"))
    return replace(found, solutions=found.solutions + start)


def _prescribed(scene: Scene, made: Cut, parts: np.ndarray, *, leaky: bool) -> list[list[Faces]]:
    """The faces with a given flow, per basis: the opening or vent itself, and leaks of a closed room."""
    given = [*made.mouths, *(faces for vent, faces in zip(scene.vents, made.vents, strict=True) if not vent.free)]
    if leaky:
        given = [[*faces, *_leaks(made, parts, faces, number < len(made.mouths))] for number, faces in enumerate(given)]
    return [*given, [], [], []]


def _leaks(made: Cut, parts: np.ndarray, faces: list[Faces], inward: bool) -> list[Faces]:
    """A unit flow spread evenly over the walls of the part of the room that the faces belong to."""
    own = max(int(parts[beside(f.axis, _inside(made, f), s)].max(initial=-1)) for f in faces for s in (0, 1))
    walls = []
    for axis, code in enumerate(made.codes):
        for side in (0, 1):
            index = list(np.nonzero((code[end(axis, side)] == WALL) & (parts[end(axis, side)] == own)))
            index[axis] = index[axis] + side * made.grid.shape[axis]
            direction = (1.0 if side == 0 else -1.0) * (1.0 if inward else -1.0)
            walls.append(Faces(axis, (index[0], index[1], index[2]), np.full(len(index[0]), direction)))
    total = sum(float(areas_of(made.grid, wall.axis, wall.index).sum()) for wall in walls)
    return [Faces(wall.axis, wall.index, wall.velocity / total) for wall in walls]


def _inside(made: Cut, faces: Faces):
    """Face numbers moved off the outer ends, so that there is a cell on both sides."""
    index = list(faces.index)
    index[faces.axis] = np.clip(index[faces.axis], 1, made.grid.shape[faces.axis] - 1)
    return index[0], index[1], index[2]


def _potential(system: System, solutions: np.ndarray) -> np.ndarray:
    potential = np.zeros((*system.number.shape, solutions.shape[1]))
    potential[system.number >= 0] = solutions
    return potential


def _notes(scene: Scene, made: Cut, sides: list[Side]) -> tuple[str, ...]:
    notes = []
    if not sides:
        notes.append(
            "The room has no opening of its own: air comes in evenly through its walls, and no draught is computed."
        )
    away = [mouth.name for mouth, here in zip(scene.mouths, made.here, strict=True) if not here]
    if away:
        notes.append(f"Outside the box, drawing through its sides: {', '.join(away)}.")
    return tuple(notes)


def _cached(key: str, make: Callable[[], Bases]) -> Bases:
    """What is kept, or what is made now; who asks for the same meanwhile waits for it."""
    with _lock:
        turn = _turns.setdefault(key, threading.Lock())
    with turn:
        with _lock:
            if key in _kept:
                _turns.pop(key, None)
                _kept.move_to_end(key)
                return _kept[key]
        try:
            return _keep(key, make())
        finally:
            with _lock:
                _turns.pop(key, None)


def _keep(key: str, made: Bases) -> Bases:
    with _lock:
        _kept[key] = made
        while len(_kept) > KEPT:
            _kept.popitem(last=False)
    return made
