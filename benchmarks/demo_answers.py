"""What a visitor of the page waits for: the first answer of the demo scene, one after a drag, and a first run.

A first run finds no compiled code: the page answers at once, and what is compiled behind it takes some seconds.
"""

import os
import statistics
import sys
import tempfile
import time
from pathlib import Path

from benchmarks.__main__ import PROGRAM, command, page
from hoodwright.tasks.air.live import LiveAir
from hoodwright.workplace import read_workplace
from hoodwright.workplace.starters import write_starter

HOOD, SOURCE = "bench nozzle", "solder joint"
FIRST, DRAGS, COLD = 5, 40, 2  # runs
STEP = 0.002  # m, of a drag


def told() -> list[str]:
    """The figures, as sentences."""
    with tempfile.TemporaryDirectory() as folder:
        file = Path(folder) / "bell-workshop.yaml"
        write_starter("demo", file)
        live = LiveAir(read_workplace(file), HOOD, SOURCE)
        compiling, shown = [], []
        for number in range(COLD):
            cold_run(Path(folder) / f"cold {number}", folder, compiling, shown)
    first, drags, hood = visits(live)
    return [
        f"Demo scene, {HOOD} and {SOURCE}, {cells(live)} cells, program loaded. First answer with its interval: "
        f"{best(first)}. After a drag of the source, 1,024 particles and as many for the interval: {best(drags)}. "
        f"After a drag of the hood, which is solved anew: {best(hood)}.",
        f"A first run on a machine: everything compiled in {best(compiling)} (`hoodwright warm`); the page meanwhile "
        f"answers {best(shown)} after its start.",
    ]


def visits(live: LiveAir) -> tuple[list[float], list[float], list[float]]:
    """Seconds of first answers, of answers while the source is dragged, and of one while the hood is."""
    x, y, z = live.workplace.source(SOURCE).centre
    hx, hy, hz = next(hood.at for hood in live.workplace.hoods if hood.name == HOOD)
    answer(live)
    first, hood = [], []
    for number in range(FIRST):
        sys.modules["hoodwright.flow.solve"]._kept.clear()
        first.append(answer(live))
        hood.append(answer(live, hood_at=(hx + STEP * (number + 1), hy, hz)))
    answer(live)
    drags = [answer(live, source_at=(x + STEP * (number % 10), y, z)) for number in range(DRAGS)]
    return first, drags, hood


def answer(live: LiveAir, **asked) -> float:
    """Seconds from the question to the share with its interval."""
    start = time.perf_counter()
    live.share(live.air(**asked))
    return time.perf_counter() - start


def cells(live: LiveAir) -> int:
    """Cells of the demo scene."""
    return live.air().bases.report.cells


def cold_run(empty: Path, folder: str, compiling: list[float], shown: list[float]) -> None:
    """Compile everything, and open the page, each with an empty folder for compiled code."""
    before = os.environ.get("NUMBA_CACHE_DIR")
    try:
        os.environ["NUMBA_CACHE_DIR"] = f"{empty} page"
        shown.append(page(folder))
        os.environ["NUMBA_CACHE_DIR"] = f"{empty} warm"
        compiling.append(command([*PROGRAM, "warm"]))
    finally:
        os.environ.pop("NUMBA_CACHE_DIR")
        if before is not None:
            os.environ["NUMBA_CACHE_DIR"] = before


def best(seconds: list[float]) -> str:
    """Fastest, and median in brackets."""
    return f"{min(seconds):.2f} s ({statistics.median(seconds):.2f})"
