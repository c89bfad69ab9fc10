"""Where compiled kernels are kept between runs, and how two processes avoid compiling twice."""

import atexit
import os
import shutil
import sqlite3
import sys
import tempfile
from collections.abc import Iterator
from contextlib import closing, contextmanager, suppress
from functools import cache
from hashlib import sha256
from importlib.metadata import version
from pathlib import Path

from platformdirs import user_cache_path

__all__ = ["cache_folder", "cache_root", "is_kept", "one_process_at_a_time"]

TEMPORARY = "hoodwright-kernels-"
LONGEST_WAIT = 300.0  # s, for another process to finish compiling


@cache
def cache_root() -> Path:
    """The folder of all compiled kernels: NUMBA_CACHE_DIR, the user's cache, or a temporary one."""
    wanted = os.environ.get("NUMBA_CACHE_DIR") or user_cache_path("hoodwright") / "kernels"
    folder = Path(wanted)
    return folder if folder.is_absolute() and _can_write(folder) else _temporary()


def is_kept() -> bool:
    """Whether compiled kernels outlast this process; not so where no folder could be written."""
    return not cache_root().name.startswith(TEMPORARY)


def cache_folder(source: Path) -> Path:
    """The folder for kernels of one source file.

    A cached kernel does not notice that another file which it calls has changed. So the name is a
    hash of every file below kernels/, of those beside the source, and of the versions in use.
    """
    digest = sha256(" ".join(_versions()).encode())
    for file in sorted({*Path(__file__).parent.rglob("*.py"), *source.parent.glob("*.py")}):
        digest.update(os.fsencode(file))
        digest.update(file.read_bytes())
    return cache_root() / digest.hexdigest()[:16]


@contextmanager
def one_process_at_a_time() -> Iterator[None]:
    """Wait until no other process compiles. Without a working lock both compile, which only costs time.

    The lock is SQLite's: it works on every system and ends with the process that holds it.
    """
    with closing(sqlite3.connect(cache_root() / "lock", timeout=LONGEST_WAIT, isolation_level=None)) as lock:
        with suppress(sqlite3.Error):
            lock.execute("BEGIN EXCLUSIVE")
        yield


def _versions() -> list[str]:
    return [sys.version, *(f"{package} {version(package)}" for package in ("numba", "numpy"))]


def _can_write(folder: Path) -> bool:
    try:
        folder.mkdir(parents=True, exist_ok=True)
        with tempfile.TemporaryFile(dir=folder):
            return True
    except OSError:
        return False


def _temporary() -> Path:
    """A folder of this process alone: cached kernels are code, and must not come from a shared place."""
    folder = Path(tempfile.mkdtemp(prefix=TEMPORARY))
    atexit.register(shutil.rmtree, folder, ignore_errors=True)
    return folder
