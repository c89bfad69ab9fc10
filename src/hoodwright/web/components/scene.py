"""The 3-D picture of a workplace: a plain Picture in; out come what was clicked and which keys moved it."""

from collections.abc import Callable
from dataclasses import asdict, dataclass

import nicegui.elements.scene  # noqa: F401  its three.js is what scene.js imports
from nicegui import ui

from hoodwright import units
from hoodwright.tasks.assessment import Assessment
from hoodwright.tasks.picture import Picture, Xyz
from hoodwright.workplace.model import Workplace


@dataclass(frozen=True)
class Dimension:
    """A dimension line between two points, with its words."""

    start: Xyz
    end: Xyz
    words: str


class Scene(ui.element, component="scene.js"):
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
        Dimension(workplace.source(need.source).at, hood.at, units.show(need.distance, "length", assessment.system))
        for hood in workplace.hoods
        if chosen == hood.name or chosen in hood.serves
        for need in answers[hood.name].needs
    ]
