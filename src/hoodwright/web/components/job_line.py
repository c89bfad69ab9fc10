"""A thin line for one piece of work: what is being done, how far it is, and a cancel."""

from collections.abc import Callable
from typing import Any

from nicegui import ui

from hoodwright.errors import Cancelled, HoodwrightError
from hoodwright.jobs import Job
from hoodwright.web.components.words import Words, block, button

LOOK_EVERY_S = 0.1


class JobLine:
    """One job at a time; a new one takes the place of the one at work."""

    def __init__(self):
        self.job: Job | None = None
        self._done: Callable[[Any], None] = lambda _: None
        self._nothing = "cancelled"
        with block("div", "progress") as self.line:
            self.line.props["role"] = "status"
            self.bar = ui.linear_progress(value=0, show_value=False, size="3px").props("instant-feedback")
            self.words = Words("span", "")
            self.stop = button("Cancel", self.cancel)
        self.line.set_visibility(False)
        self.timer = ui.timer(LOOK_EVERY_S, self._look, active=False)

    @property
    def busy(self) -> bool:
        """Whether a job is at work."""
        return self.job is not None

    def begin(
        self, words: str, work: Callable[..., Any], *arguments: Any, done: Callable[[Any], None], nothing: str
    ) -> None:
        """Start `work(progress, *arguments)` off the event loop; `done` takes its answer, `nothing` says a cancel."""
        if self.job:
            self.job.cancel()
        self._done, self._nothing = done, nothing
        self.bar.value = 0
        self.job = Job(work, *arguments).start()
        self.say(words, busy=True)

    def cancel(self) -> None:
        """Stop the job at its next report."""
        if self.job:
            self.job.cancel()

    def say(self, words: str, *, busy: bool = False) -> None:
        """Show a sentence on the line; empty hides it."""
        self.timer.active = busy
        self.words.text = words
        self.bar.set_visibility(busy)
        self.stop.set_visibility(busy)
        self.line.set_visibility(bool(words))

    def _look(self) -> None:
        job = self.job
        if job is None:
            return
        if not job.done:
            self.bar.value = job.progress.now.fraction
            self.words.text = job.progress.now.doing or self.words.text
            return
        self.job = None
        self.say("")
        try:
            answer = job.result()
        except Cancelled:
            self.say(self._nothing)
        except HoodwrightError as error:
            self.say(str(error))
        else:
            self._done(answer)
