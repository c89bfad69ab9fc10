"""Where the browser has no WebGL: the captured share is asked here, and stills of the smoke stand in for it."""

import json
from collections.abc import Callable

from hoodwright.jobs import Progress
from hoodwright.tasks import warm_up
from hoodwright.tasks.air.live import LiveAir
from hoodwright.tasks.picture import picture
from hoodwright.web import wire
from hoodwright.web.components.job_line import JobLine
from hoodwright.workplace.model import Workplace

VIEWS = ("side", "above")


class AirStill:
    """Off until the scene says that it cannot draw. `told` takes a share, `drawn` the stills as SVG."""

    def __init__(self, told: Callable[[dict], None], drawn: Callable[[str], None]):
        self.told, self.drawn, self.on = told, drawn, False
        self.line = JobLine()

    def ask(self, workplace: Workplace, hood: str, source: str) -> None:
        """The share and the stills of this air; the newest question wins."""
        self.line.begin(
            "computing the air",
            _answer,
            workplace,
            hood,
            source,
            done=self._show,
            nothing="cancelled; what is shown is of an earlier moment",
        )

    def _show(self, found: tuple[dict, str]) -> None:
        share, stills = found
        self.told(share)
        self.drawn(stills)


def _answer(progress: Progress, workplace: Workplace, hood: str, source: str) -> tuple[dict, str]:
    """The share as the websocket tells it, and stills from two sides."""
    from hoodwright.reports import smoke_svg
    from hoodwright.tasks.air.smoke_still import still_of

    warm_up.wait(progress)
    live = LiveAir(workplace, hood, source)
    share = live.share(live.air(progress=progress.part(0.0, 0.5)), progress.part(0.5, 0.7))
    still = still_of(workplace, hood, source, progress=progress.part(0.7, 1.0))
    drawn = [smoke_svg(picture(workplace), still, workplace.units, view) for view in VIEWS]
    return json.loads(wire.share(None, share)), "".join(drawn)
