"""The 3-D picture of a workplace: a plain Picture in; out come what was clicked and which keys moved it."""

import math
from collections.abc import Callable
from dataclasses import asdict, dataclass
from pathlib import Path

import nicegui.elements.scene  # noqa: F401  its three.js is what scene.js imports
from nicegui import ui

from hoodwright.tasks.arrangements.view import Stance
from hoodwright.tasks.assessment import Assessment, SourceNeed
from hoodwright.tasks.picture import Picture, Xyz
from hoodwright.workplace.model import Hood, ReceivingHood, Source, Workplace


@dataclass(frozen=True)
class Dimension:
    """A dimension line between two points, with its words, beside the rim of a hood."""

    start: Xyz
    end: Xyz
    words: str
    hood: str


FASTEST_FRAME, MOST_FRAMES = 0.02, 240  # s between two frames; frames of one animation
PATIENCE = 60.0  # s: drawing in software is slow
LOOK = Path(__file__).with_name("scene.css")


class Scene(ui.element, component="scene.js", esm={"hoodwright-scene": "scene_parts"}):
    """Draws when something changed; besides, only smoke moves, and only while it runs.

    Events of the live smoke, for `on`: "moved" {name, at} when a drag ends, "share" (the captured share, as the server
    told it), "field_ready" (there is air to draw), "doing" {fraction, words}, "layer" {layer, words}, "fault" {words}.
    """

    def __init__(
        self,
        on_choose: Callable[[str], None],
        on_step: Callable[[Xyz], None],
        on_blind: Callable[[], None],
    ):
        super().__init__()
        ui.add_css(LOOK)
        self.on("choose", lambda e: on_choose(e.args))
        self.on("step", lambda e: on_step(tuple(e.args)))
        self.on("blind", lambda _: on_blind())

    def show(self, picture: Picture, chosen: str, dimensions: list[Dimension], draught: str, about: str) -> None:
        """Draw this picture; `about` is what a screen reader says of it."""
        self.props["picture"] = asdict(picture)
        self.props["chosen"] = chosen
        self.props["dimensions"] = [asdict(line) for line in dimensions]
        self.props["draught"] = draught
        self.props["about"] = about

    def stand_at(self, stance: Stance) -> None:
        """Look at a place near by from a way of the page's own."""
        self.props["stance"] = asdict(stance)

    def live(
        self,
        url: str,
        hood: str,
        source: str,
        flow: float | None = None,
        draught: Xyz | None = None,
        layers: list[str] | None = None,
        plane: str = "level",
        running: bool = True,
        smoke: bool = True,
        fixed: bool = False,
        said: str = "",
    ) -> None:
        """Ask `url` for the air of one hood and source, and show its smoke.

        `flow` in m3/s, `draught` in m/s; None: as in the draft. `layers`: of "streamlines", "speed" and "map", the last
        two on the "level" or "upright" `plane`. An empty `url` takes all of it away. Asks again when
        anything changed. `running`: whether smoke moves, unless the viewer wants less motion.
        `fixed`: nothing can be dragged. `said`: what the page finds, in place of a share that cannot be told.
        """
        self.props["live"] = {
            "url": url,
            "hood": hood,
            "source": source,
            "flow": flow,
            "draught": draught,
            "layers": list(layers or ()),
            "plane": plane,
            "running": running,
            "smoke": smoke,
            "fixed": fixed,
            "said": said,
        }

    def ask_again(self) -> None:
        """The draft changed in a way that the picture does not show, such as a bench: ask for the air anew."""
        self.run_method("ask_air", True)

    async def still(self) -> str:
        """What is seen now as a PNG data URL, smoke included; empty where there is no WebGL."""
        return await self.run_method("still", timeout=PATIENCE) or ""

    async def frames(self, count: int, every_s: float, width: int = 640) -> list[str]:
        """JPEG data URLs of smoke at even times, the first one now; they take longer to draw than to see."""
        count, every_s = min(max(count, 1), MOST_FRAMES), max(every_s, FASTEST_FRAME)
        return await self.run_method("frames", count, every_s, width, timeout=PATIENCE + count) or []


def dimensions(workplace: Workplace, assessment: Assessment, chosen: str) -> list[Dimension]:
    """Lines from the chosen hood to its sources, or from the chosen source to its hoods."""
    answers = {answer.name: answer for answer in assessment.hoods}
    return [
        _line(hood, workplace.source(need.source), need)
        for hood in workplace.hoods
        if chosen == hood.name or chosen in hood.serves
        for need in answers[hood.name].needs
        if hood.type != "enclosing" and need.place[:1].isdigit()
    ]


def measured(need: SourceNeed) -> str:
    """The place of a hood as a dimension line says it: '100 mm', '600 mm above', '1.2 m, far end'."""
    words, _, rest = need.place.partition(" from")
    return f"{words}, far end" if "far end" in rest else words


def _line(hood: Hood, source: Source, need: SourceNeed) -> Dimension:
    """To the middle of the opening: under a canopy straight up to its plane, from a wheel's rim, from a far end."""
    start, end = source.farthest_from(hood.at), hood.at
    if isinstance(hood, ReceivingHood) and hood.is_canopy:
        start = source.centre
        end = (*start[:2], hood.at[2])
    elif source.wheel is not None and math.dist(start, end) > 0:
        part = need.distance / math.dist(start, end)
        x, y, z = (e + part * (s - e) for s, e in zip(start, end, strict=True))
        start = (x, y, z)
    return Dimension(start, end, measured(need), hood.name)
