"""Compile the computed air ahead of the first question: for `hoodwright warm`, and behind the page while it serves.

Behind the page a process of its own compiles, so that pages answer meanwhile; then this one loads what was kept.
"""

import atexit
import os
import subprocess
import sys
import threading
from dataclasses import dataclass
from importlib import import_module
from pkgutil import walk_packages

from hoodwright.errors import HoodwrightError
from hoodwright.jobs import Progress
from hoodwright.kernels import Warmed, warm
from hoodwright.kernels.cache import cache_root, is_kept

__all__ = ["Ready", "compile_all", "kept_in", "start", "state", "wait"]

PACKAGES = ("hoodwright.kernels", "hoodwright.flow", "hoodwright.ducts")  # where kernels are declared
PREPARING = "preparing the computed air: the first run on a machine compiles it"
ASLEEP = "the computed air compiles when it is first asked"
LOOK_AGAIN = 0.2  # s


@dataclass(frozen=True)
class Ready:
    """Whether the computed air can answer at once, what is being done, and how far that is (0 to 1)."""

    ready: bool
    words: str
    fraction: float


def compile_all(progress: Progress | None = None) -> list[Warmed]:
    """Compile every kernel of the house, or load it where it was kept; raises Cancelled when told to stop."""
    for name in PACKAGES:
        package = import_module(name)
        for part in walk_packages(package.__path__, f"{name}."):
            import_module(part.name)
    return warm(progress)


def kept_in() -> str:
    """Where compiled code is kept between runs, in words."""
    if is_kept():
        return f"Compiled code is kept in {cache_root()}; it may be deleted at any time."
    return "No folder for compiled code can be written: it compiles at each start. Name one with NUMBA_CACHE_DIR."


def start() -> None:
    """Begin in the background, once for this process; at once back."""
    with _begin:
        if _now.ready and not _done.is_set():
            _tell(Ready(False, PREPARING, 0.0))
            threading.Thread(target=_prepare, name="hoodwright warm-up", daemon=True).start()


def state() -> Ready:
    """How far it is; never waits. Where nothing was started, kernels compile at their first call."""
    return _now


def wait(progress: Progress) -> None:
    """Wait until all is ready, and report what is being done; for the thread of a job, never for an event loop."""
    while not (now := state()).ready:
        progress.report(0.0, now.words)
        _done.wait(LOOK_AGAIN)


_begin = threading.Lock()
_done = threading.Event()
_now = Ready(True, ASLEEP, 1.0)


def _tell(now: Ready) -> None:
    global _now
    _now = now


def _prepare() -> None:
    """The work behind the page. Whatever goes wrong is told in words: a first question then says the same."""
    try:
        if _in_a_process_of_its_own():
            compile_all()
            _tell(Ready(True, "the computed air is ready", 1.0))
        else:
            _tell(Ready(True, ASLEEP, 1.0))
    except (HoodwrightError, OSError) as error:
        _tell(Ready(True, f"the computed air was not compiled ahead: {error}", 1.0))
    finally:
        _done.set()


def _in_a_process_of_its_own() -> bool:
    """Compile in another process and follow how far it is; False when that was stopped."""
    command = [sys.executable, "-m", "hoodwright.tasks.warm_up"]
    where = os.environ | {"NUMBA_CACHE_DIR": str(cache_root())}
    with subprocess.Popen(
        command, env=where, stdin=subprocess.DEVNULL, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL, text=True
    ) as process:
        atexit.register(process.terminate)
        assert process.stdout
        for line in process.stdout:
            _tell(Ready(False, PREPARING, float(line)))
    atexit.unregister(process.terminate)
    return process.returncode >= 0


def _main() -> None:
    """What the other process does: compile, giving way to the page, and print how far it is."""
    if hasattr(os, "nice"):
        os.nice(5)
    compile_all(Progress(lambda now: print(f"{now.fraction:.3f}", flush=True)))


if __name__ == "__main__":
    _main()
