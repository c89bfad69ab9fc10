"""A long job: how far it is, how to stop it, and "the latest request wins".

The work of a job is any function whose first argument is a `Progress`. It reports now and then; that
is also where it stops when it was told to. Nothing here knows of an event loop or a screen.
"""

import threading
from collections.abc import Callable
from concurrent.futures import Future
from dataclasses import dataclass
from typing import Any

from hoodwright.errors import Cancelled

__all__ = ["Job", "Latest", "Progress", "Report"]


@dataclass(frozen=True)
class Report:
    """How far a job is: the fraction done (0 to 1), and what is being done."""

    fraction: float = 0.0
    doing: str = ""


class Progress:
    """Where work reports to. `listener` is called with each Report, in the thread of the work."""

    def __init__(self, listener: Callable[[Report], None] | None = None):
        self.now = Report()
        self._listener = listener
        self._cancelled = threading.Event()

    def report(self, fraction: float, doing: str = "") -> None:
        """Say how far the work is; never goes back. Raises Cancelled when the work shall stop."""
        self.check()
        self.now = Report(min(max(fraction, self.now.fraction), 1.0), doing or self.now.doing)
        if self._listener:
            self._listener(self.now)

    def check(self) -> None:
        """Raise Cancelled when the work shall stop."""
        if self.cancelled:
            raise Cancelled("the job was cancelled before it had an answer")

    def cancel(self) -> None:
        """Ask the work to stop at its next report."""
        self._cancelled.set()

    @property
    def cancelled(self) -> bool:
        """Whether the work was asked to stop."""
        return self._cancelled.is_set()

    def part(self, start: float, stop: float) -> "Progress":
        """The progress of one stage, whose 0 to 1 is `start` to `stop` of this one."""
        return Progress(lambda now: self.report(start + (stop - start) * now.fraction, now.doing))


class Job:
    """One piece of work. Cancelled before it is done, it has no answer, even if the work never looked."""

    def __init__(self, work: Callable[..., Any], *arguments: Any, listener: Callable[[Report], None] | None = None):
        self.progress = Progress(listener)
        self.future: Future[Any] = Future()
        self.future.set_running_or_notify_cancel()  # only `cancel` below may end it
        self._work = work
        self._arguments = arguments
        self._lock = threading.Lock()
        self._begun = False

    def start(self) -> "Job":
        """Begin in the background; at once back with the job itself."""
        threading.Thread(target=self.run, name="hoodwright job", daemon=True).start()
        return self

    def run(self) -> None:
        """Do the work in this thread. A job runs once; later calls do nothing."""
        if not self._claim():
            return
        try:
            answer = self._work(self.progress, *self._arguments)
            self.progress.check()
        except BaseException as error:
            self.future.set_exception(error)
        else:
            self.future.set_result(answer)

    def cancel(self) -> None:
        """Stop at the next report, or at once when it has not begun."""
        self.progress.cancel()
        if self._claim():
            self.future.set_exception(Cancelled("the job was cancelled before it began"))

    def result(self, timeout: float | None = None) -> Any:
        """Wait for the answer; raises what the work raised, Cancelled, or TimeoutError."""
        return self.future.result(timeout)

    @property
    def done(self) -> bool:
        """Whether there is an answer or an error."""
        return self.future.done()

    def _claim(self) -> bool:
        with self._lock:
            first, self._begun = not self._begun, True
        return first


class Latest:
    """Runs the newest request only: one at work, one waiting; a newer one takes the waiting place.

    The one at work is cancelled. With `finish_running` it may finish and keep its answer, which suits
    a drag on the screen: something is always shown, and the last position comes last.
    """

    def __init__(self, work: Callable[..., Any], *, finish_running: bool = False):
        self._work = work
        self._finish_running = finish_running
        self._lock = threading.Lock()
        self._running: Job | None = None
        self._waiting: Job | None = None

    def ask(self, *arguments: Any, listener: Callable[[Report], None] | None = None) -> Job:
        """A new request; the job that answers it raises Cancelled when a still newer one comes."""
        job = Job(self._work, *arguments, listener=listener)
        with self._lock:
            running, replaced = self._running, self._waiting
            if running:
                self._waiting = job
            else:
                self._running = job
        if replaced:
            replaced.cancel()
        if not running:
            self._start(job)
        elif not self._finish_running:
            running.cancel()
        return job

    def cancel(self) -> None:
        """Stop everything asked so far."""
        with self._lock:
            jobs, self._waiting = (self._running, self._waiting), None
        for job in jobs:
            if job:
                job.cancel()

    def _start(self, job: Job) -> None:
        job.future.add_done_callback(lambda _: self._next())
        job.start()

    def _next(self) -> None:
        with self._lock:
            self._running, self._waiting = self._waiting, None
            job = self._running
        if job:
            self._start(job)
