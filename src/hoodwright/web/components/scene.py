"""The 3-D picture of a workplace: a plain Picture in; out come what was clicked and which keys moved it."""

import math
from collections.abc import Callable
from dataclasses import asdict, dataclass

import nicegui.elements.scene  # noqa: F401  its three.js is what scene.js imports
from nicegui import ui

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


class Scene(ui.element, component="scene.js", esm={"hoodwright-scene": "scene_parts"}):
    """Draws when something changed and only then; nothing moves by itself."""

    def __init__(
        self,
        on_choose: Callable[[str], None],
        on_step: Callable[[Xyz], None],
        on_blind: Callable[[], None],
    ):
        super().__init__()
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
