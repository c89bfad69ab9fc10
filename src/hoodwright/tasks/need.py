"""How much air a hood needs for each source it serves; each type of hood has its own equations."""

from hoodwright.tasks.assessment import SourceNeed
from hoodwright.tasks.hood_types import of
from hoodwright.workplace.model import Hood, Workplace


def needs_of(
    hood: Hood, workplace: Workplace, design_flow: float | None = None, system: str = "SI"
) -> tuple[SourceNeed, ...]:
    """What each source served asks of the hood; the velocity at the source is at the design flow."""
    need_of = of(hood).need_of
    return tuple(need_of(hood, workplace.source(name), workplace, design_flow, system) for name in hood.serves)
