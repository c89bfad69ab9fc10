"""Run with `python -m benchmarks.computed_air`: how long the computed air takes, and how that grows with the cells.

One scene, a flanged nozzle over a bench, on three grids; every figure is the fastest and the median of some runs. Where
NGSolve is installed (`pip install ngsolve`) the same scene is solved with its finite elements in the same run. The last
lines tell what a visitor of the demo waits for.
"""

import math
import os
import statistics
import time
from collections.abc import Callable
from pathlib import Path

import numpy as np

from benchmarks import demo_answers
from benchmarks.__main__ import machine
from hoodwright import __version__
from hoodwright.flow import Mouth, Plate, Resolution, Scene, Surroundings, solve
from hoodwright.flow.grids.choose import box_round, grid_for
from hoodwright.flow.grids.cut import cut
from hoodwright.flow.grids.sealed import close_still_air
from hoodwright.flow.linear.multigrid import Multigrid
from hoodwright.flow.linear.outer import open_air
from hoodwright.flow.linear.system import assemble, right_hand_sides
from hoodwright.kernels.velocity import velocities

LAST = Path(__file__).with_name("last_computed_air.md")
RESIDUAL = 1e-7
GRIDS = [(Resolution(11.5, 1.172, 1.0), 4), (Resolution(19.5, 1.112, 1.0), 2), (Resolution(32.5, 1.071, 1.0), 1)]
ROUNDS = 4  # of so many runs on each grid, in turn: a slow moment of the machine touches all alike
POINTS = 200_000
NOZZLE = Mouth("nozzle", (2.0, 1.95, 1.05), (0, -1, 0), (0.1, 0.1), flange=0.1, body=0.4)
BENCH = Plate("bench", (1.2, 1.5, 0.9), (1.6, 0, 0), (0, 0.7, 0))
SCENE = Scene((NOZZLE,), (BENCH,), surroundings=Surroundings.over_floor(), watch=((2.0, 1.8, 0.95),))


def main() -> None:
    """Time every grid and write the table."""
    solve(SCENE, Resolution(5, 1.4, 0.4))  # compiles
    rows = on_grids()
    wall, busy = ([exponent(rows, kind + key) for key in ("setup", "both")] for kind in ("", "busy "))
    lines = [f"# The computed air: last timings, hoodwright {__version__}", "", machine(), ""]
    lines += ["| cells | steps | residual | set-up s | four bases s | one basis s |", "|---|---|---|---|---|---|"]
    for row in rows:
        times = [f"{min(row[k]):.3f} ({statistics.median(row[k]):.3f})" for k in ("setup", "solve")]
        told = f"{row['residual']:.0e} | {times[0]} | {times[1]} | {min(row['solve']) / 4:.3f}"
        lines.append(f"| {row['cells']} | {row['steps']} | {told} |")
    lines += [
        "",
        f"Fastest, and median in brackets. Growth with cells: set-up {wall[0]:.2f}, with solution {wall[1]:.2f}; in "
        f"processor time, which others on the machine disturb less, {busy[0]:.2f} and {busy[1]:.2f}.",
    ]
    lines += ["", *answers(), "", *demo_answers.told()]
    lines += ["", f"Load of the machine over the last 15 minutes: {os.getloadavg()[2]:.1f} (alone, it is about 2)."]
    LAST.write_text("\n".join(lines) + "\n", encoding="utf-8")
    print("\n".join(lines))


def on_grids() -> list[dict]:
    """For every grid cells, steps, and the times of set-up and solution, on the clock and of processors."""
    prepared = [prepare(resolution) for resolution, _ in GRIDS]
    rows: list[dict] = [{"cells": cells} for cells, _, _ in prepared]
    for _ in range(ROUNDS):
        for row, (_, matrix, right), (_, runs) in zip(rows, prepared, GRIDS, strict=True):
            for _ in range(runs):
                on_grid(row, matrix, right)
    return rows


def prepare(resolution: Resolution) -> tuple:
    """Cells, matrix and right-hand sides."""
    made = cut(SCENE, grid_for(SCENE, resolution, box_round(SCENE, resolution)))
    sides = open_air(SCENE, close(made))
    system = assemble(made, sides, np.zeros(made.grid.shape, dtype=int))
    return made.grid.cells, system.matrix, right_hand_sides(made, system, [*made.mouths, [], [], []], sides)


def on_grid(row: dict, matrix, right: np.ndarray) -> None:
    """Add one run to the times of a grid."""
    busy = time.process_time()
    multigrid, setup = timed(lambda: Multigrid(matrix))
    busy_setup = time.process_time() - busy
    settled, solution = timed(lambda: multigrid.solve(right, RESIDUAL))
    busy_both = time.process_time() - busy
    row |= {"steps": settled.steps, "residual": settled.residual}
    found = {"setup": setup, "solve": solution, "both": setup + solution}
    for key, seconds in (found | {"busy setup": busy_setup, "busy both": busy_both}).items():
        row.setdefault(key, []).append(seconds)


def close(made):
    """The cut grid, without air that nothing reaches."""
    close_still_air(SCENE, made)
    return made


def answers() -> list[str]:
    """Whole answers: from the scene to the bases, and velocities at points; NGSolve beside them."""
    whole = [timed(lambda n=n: solve(SCENE, Resolution(10, 1.2, 1.0 + n * 1e-6)))[1] for n in range(5)]
    air = solve(SCENE, Resolution(10, 1.2, 1.0)).field({"nozzle": 0.09}, (0.1, 0, 0))
    points = np.random.default_rng(0).uniform((1.7, 1.5, 0.92), (2.3, 1.95, 1.4), (POINTS, 3))
    out = np.empty_like(points)
    per_point = min(timed(lambda: velocities(air.bases.arrays, air.weights, points, out))[1] for _ in range(5)) / POINTS
    cells = air.bases.report.cells
    lines = [
        f"Whole answer of the scene at {cells} cells, from geometry to four bases: {min(whole):.2f} s "
        f"({statistics.median(whole):.2f}); velocity at a point, four bases: {1e6 * per_point:.2f} us."
    ]
    return [*lines, "", by_elements(min(whole), per_point)]


def by_elements(whole: float, per_point: float) -> str:
    """The same scene with NGSolve: flux elements of order 1 (RT1), hybrid, one right-hand side."""
    try:
        from benchmarks.computed_air_elements import solve_by_elements
    except ImportError:
        return "NGSolve is not installed: no comparison."
    found = solve_by_elements(NOZZLE, BENCH)
    return (
        f"NGSolve RT1, {found['elements']} elements: {found['seconds']:.2f} s for one right-hand side "
        f"({found['seconds'] / whole:.1f} x the whole answer above), {1e6 * found['per_point']:.1f} us a point "
        f"({found['per_point'] / per_point:.0f} x); velocity 100 mm before the hood over ours "
        f"{found['speed'] / ours():.3f}."
    )


def ours() -> float:
    """Our velocity 100 mm before the nozzle, at one metre per second in its face."""
    air = solve(SCENE, Resolution(10, 1.2, 1.0)).field({"nozzle": NOZZLE.area})
    return float(np.linalg.norm(air.velocity((2.0, 1.85, 1.05))))


def exponent(rows: list[dict], key: str) -> float:
    """Slope of log time against log cells, least squares."""
    x = [math.log(row["cells"]) for row in rows]
    y = [math.log(min(row[key])) for row in rows]
    return float(np.polyfit(x, y, 1)[0])


def timed(work: Callable) -> tuple:
    """What the work gives, and its seconds."""
    start = time.perf_counter()
    found = work()
    return found, time.perf_counter() - start


if __name__ == "__main__":
    main()
