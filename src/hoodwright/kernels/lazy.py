"""Kernels that compile when they are first called, or all together by `warm`."""

import os
import threading
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Protocol

from hoodwright.errors import HoodwrightError
from hoodwright.kernels.cache import cache_folder, cache_root, one_process_at_a_time

__all__ = ["Kernel", "Warmed", "kernel", "warm"]


class Reporting(Protocol):
    """What `warm` needs of a jobs.Progress."""

    def report(self, fraction: float, doing: str) -> None: ...


@dataclass(frozen=True)
class Warmed:
    """How long one kernel took to be ready, and whether it came from the cache."""

    name: str
    seconds: float
    from_cache: bool


class Kernel:
    """A function that numba compiles at its declared signature when it is first called."""

    def __init__(self, function: Callable[..., Any], signature: str, options: dict[str, Any]):
        self.name = f"{function.__module__}.{function.__qualname__}"
        self.function = function
        self.signature = signature
        self.options = {"nogil": True, **options}
        self.__doc__ = function.__doc__
        self._compiled: Any = None

    def __call__(self, *arguments: Any) -> Any:
        return (self._compiled or self.compiled())(*arguments)

    def compiled(self) -> Any:
        """The compiled function, from the cache when it is there."""
        with _one_at_a_time():
            if self._compiled is None:
                self._compiled = self._compile()
            return self._compiled

    @property
    def _numba_type_(self) -> Any:
        """What numba asks for when one kernel calls another."""
        return _numba().types.Dispatcher(self.compiled())

    def _compile(self) -> Any:
        numba = _numba()
        source = Path(self.function.__code__.co_filename)
        kept = source.is_file()  # numba keeps nothing for a function typed at a prompt
        if kept:
            numba.config.CACHE_DIR = str(cache_folder(source))
        return numba.njit([self.signature], cache=kept, **self.options)(self.function)


def kernel(signature: str, **options: Any) -> Callable[[Callable[..., Any]], Kernel]:
    """Declare a kernel: `signature` in numba's words, `options` such as parallel=True."""

    def register(function: Callable[..., Any]) -> Kernel:
        made = Kernel(function, signature, options)
        _registered[made.name] = made
        return made

    return register


def warm(progress: Reporting | None = None) -> list[Warmed]:
    """Compile every kernel declared so far; the time of a kernel includes those it is first to call.

    Whoever calls a kernel meanwhile, in this process or another, waits until all are ready.
    """
    kernels = list(_registered.values())
    times = []
    with _one_at_a_time():
        for number, each in enumerate(kernels):
            if progress:
                progress.report(number / len(kernels), f"compiling {each.name}")
            began = time.perf_counter()
            hits = sum(each.compiled().stats.cache_hits.values())
            times.append(Warmed(each.name, time.perf_counter() - began, hits > 0))
    if progress:
        progress.report(1.0, "all kernels are ready")
    return times


_registered: dict[str, Kernel] = {}
_threads = threading.RLock()
_alone = False  # whether this process holds the lock between processes; guarded by _threads


@contextmanager
def _one_at_a_time() -> Iterator[None]:
    """One thread of one process compiles; a kernel compiles those it calls under the same lock."""
    global _alone
    with _threads:
        if _alone:
            yield
            return
        with one_process_at_a_time():
            _alone = True
            try:
                yield
            finally:
                _alone = False


def _numba() -> Any:
    """numba, told before its import where it may write."""
    os.environ["NUMBA_CACHE_DIR"] = str(cache_root())
    try:
        import numba
    except ImportError:
        raise HoodwrightError("kernels need numba, which is not installed; run: pip install numba") from None
    return numba
