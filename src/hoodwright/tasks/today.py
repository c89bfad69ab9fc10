"""The flow of today where nobody read one: computed as built, from the curve of the fan."""

from dataclasses import dataclass

from hoodwright.errors import HoodwrightError
from hoodwright.results import Quantity
from hoodwright.tasks.as_built.network import as_built, has_curve
from hoodwright.workplace.model import Workplace

COMPUTED = "computed as built"
DIRTY = f"{COMPUTED}, with dirty filters"


@dataclass(frozen=True)
class ComputedFlow:
    """A flow computed as built, in the place of a reading; `uncertainty` is what the file says of its flows."""

    flow: float
    uncertainty: float
    how: str
    date: None = None


def with_today(workplace: Workplace) -> Workplace:
    """The workplace with the flow as built at every hood without a reading; itself where no fan has a curve.

    Filters count as dirty. A hood that blows out gets no flow. Where nothing settles, nothing is told.
    """
    if all(hood.today is not None for hood in workplace.hoods) or not has_curve(workplace):
        return workplace
    try:
        answer = as_built(workplace, loaded=True, points=False)
    except HoodwrightError:
        return workplace
    how = DIRTY if answer.cleaners else COMPUTED
    found = {hood.name: ComputedFlow(max(hood.flow, 0.0), workplace.uncertainty.flow, how) for hood in answer.hoods}
    hoods = tuple(
        hood.model_copy(update={"today": found[hood.name]}) if hood.today is None and hood.name in found else hood
        for hood in workplace.hoods
    )
    return workplace.model_copy(update={"hoods": hoods})


def is_computed(today: object) -> bool:
    """Whether today's flow was computed, as a reading of a hood or as a quantity of an answer."""
    if isinstance(today, Quantity):
        return (today.source or "").startswith(COMPUTED)
    return isinstance(today, ComputedFlow)
