"""One package for each type of hood, and what each must be able to tell."""

from collections.abc import Iterator
from importlib import import_module
from typing import Any, Protocol, cast

from hoodwright.results import Caution, Hint
from hoodwright.tasks.assessment import HoodAnswer, SourceNeed
from hoodwright.workplace.model import Hood, Source, Workplace


class HoodType(Protocol):
    """What `tasks.capturing`, `tasks.receiving` and `tasks.enclosing` each tell of their hoods."""

    def need_of(
        self, hood: Any, source: Source, workplace: Workplace, design_flow: float | None, system: str
    ) -> SourceNeed:
        """What a source asks of the hood, by every published equation that holds."""

    def head(self, hood: Any, need: SourceNeed, system: str) -> str:
        """Beginning of the sentence about a hood, up to its verb: 'The bench nozzle, 100 mm from the joint,'."""

    def refusal(self, hood: Any, source: Source, workplace: Workplace) -> str | None:
        """Why no flow of this hood can be called enough for the source; None where one can."""

    def disturbance(self, need: SourceNeed, hood: Any, workplace: Workplace, system: str) -> str | None:
        """What takes away the air that the equations suppose, such as a draught; None where nothing does."""

    def hints(self, case: Any) -> tuple[Hint, ...]:
        """What would help most, for the source that asks most; `case` is of `tasks.hint_tools`."""

    def cautions(self, hood: Any, answer: HoodAnswer, workplace: Workplace, system: str) -> Iterator[Caution]:
        """Warnings that belong to the hood."""


def of(hood: Hood) -> HoodType:
    """The package of the hood's type. It is loaded here, since its hints ask for needs in turn."""
    return cast(HoodType, import_module(f"hoodwright.tasks.{hood.type}"))
