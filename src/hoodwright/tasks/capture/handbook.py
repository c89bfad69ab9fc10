"""The handbook's answer for one source before one hood, at the place where the computed air is asked."""

from dataclasses import dataclass

from hoodwright.errors import InputError
from hoodwright.results import Outcome, Verdict
from hoodwright.tasks.assessment import SourceNeed
from hoodwright.tasks.judge import is_enough, is_met
from hoodwright.tasks.need import needs_of
from hoodwright.workplace.model import Hood, Source, Workplace


@dataclass(frozen=True)
class Handbook:
    """Its outcome, and what it asks; `need` is None where its equations do not take this source."""

    outcome: Outcome
    need: SourceNeed | None


def handbook_at(hood: Hood, source: Source, workplace: Workplace, flow: float, *, today: bool = False) -> Handbook:
    """Whether the hood's flow is enough for this source alone, where it stands now; with `today` the flow read last."""
    one = hood.model_copy(update={"serves": (source.name,)})
    sources = tuple(source if other.name == source.name else other for other in workplace.sources)
    hoods = tuple(one if other.name == hood.name else other for other in workplace.hoods)
    there, system = workplace.model_copy(update={"sources": sources, "hoods": hoods}), workplace.units
    try:
        needs = needs_of(one, there, flow, system)
        judge = is_met if today and hood.today is not None else is_enough
        return Handbook(judge(one, needs, there, system), needs[0])
    except InputError as error:
        return Handbook(Outcome(Verdict.CANNOT_TELL, str(error)), None)
