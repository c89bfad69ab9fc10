"""The button "Capture against distance": it computes off the event loop, and shows the plot and its table."""

from collections.abc import Callable

from hoodwright import units
from hoodwright.errors import HoodwrightError
from hoodwright.jobs import Progress
from hoodwright.tasks.along_axis import beside_axis, distances_for, is_off_axis
from hoodwright.tasks.capture.job import BANNER, CaptureReport, capture_of
from hoodwright.tasks.edits import distance_along_axis
from hoodwright.web.components.capture_plot import Now, capture_plot, capture_table, sentence_of
from hoodwright.web.components.job_line import JobLine
from hoodwright.web.components.words import Words, block, button
from hoodwright.workplace.model import Workplace

ENCLOSED = "An enclosure is judged by the inward velocity of its openings, not by a distance."
CAPTION = f"Shaded: interval. The source is moved along the hood's axis. Computed air, {BANNER}."


class CaptureDistance:
    """Folded until it is asked for; greyed when the air changed since."""

    def __init__(self, case: Callable[[], tuple[Workplace, str, str, str]]):
        self.case = case
        self.figure = block("section", "against-distance")
        self.figure.props["aria-label"] = "Capture against distance"
        self.figure.set_visibility(False)
        self.line = JobLine()

    def ask(self) -> None:
        """Compute for the air as it is tried now."""
        try:
            workplace, hood, source, system = self.case()
        except HoodwrightError as error:
            self.line.say(str(error))
            return
        if next(one for one in workplace.hoods if one.name == hood).type == "enclosing":
            self.line.say(ENCLOSED)
            return
        asked = (workplace, hood, source, system)
        self.line.begin(
            "computing the air at several distances",
            _series,
            *asked,
            done=lambda report: self._show(report, *asked),
            nothing="cancelled; nothing was computed",
        )

    def grey(self) -> None:
        """The air changed: what is shown belongs to an earlier moment."""
        self.figure.classes(add="old")

    def clear(self) -> None:
        """Another hood or source."""
        self.line.cancel()
        self.line.say("")
        self.figure.set_visibility(False)

    def _show(self, report: CaptureReport, workplace: Workplace, hood: str, source: str, system: str) -> None:
        one = next(h for h in workplace.hoods if h.name == hood)
        from_source = workplace.source(source)
        beside = beside_axis(one, from_source) if is_off_axis(one, from_source) else None
        now = Now(distance_along_axis(one, from_source), beside)
        self.figure.classes(remove="old")
        self.figure.set_visibility(True)
        self.figure.clear()
        with self.figure:
            with block("div", "short-head"):
                Words("h3", f"Capture against distance, {units.show(report.answers[0].flow, 'flow', system)}")
                button("Close", self.clear).props["aria-label"] = "Close capture against distance"
            Words("p", sentence_of(report, system)).mark("against distance")
            capture_plot(report, now, system)
            aside = f" It now stands {units.show(beside, 'length', system)} beside the axis." if beside else ""
            Words("p", CAPTION + aside, "because")
            with block("details"):
                Words("summary", "The same as a table")
                capture_table(report, now, system)


def _series(progress: Progress, workplace: Workplace, hood: str, source: str, system: str) -> CaptureReport:
    one = next(h for h in workplace.hoods if h.name == hood)
    distances = distances_for(one, workplace.source(source), workplace, system)
    return capture_of(workplace, source, hood, distances, progress=progress)
