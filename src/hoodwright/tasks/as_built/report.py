"""Everything the ducts job tells: the flows as built, the filter's window, scenarios, balancing, indicators."""

from dataclasses import dataclass

from hoodwright.errors import InputError, NoSolution
from hoodwright.tasks.as_built.answers import BuiltAnswer, BuiltHood
from hoodwright.tasks.as_built.balancing import BalancingOrder, balancing_order
from hoodwright.tasks.as_built.indicator import Indicator, indicator
from hoodwright.tasks.as_built.network import has_curve, system_of
from hoodwright.tasks.as_built.states import (
    ENOUGH,
    CleanerWindow,
    ScenarioAnswer,
    cleaner_window,
    gates_shut,
    scenarios,
)
from hoodwright.units import show
from hoodwright.workplace.model import Workplace


@dataclass(frozen=True)
class DuctReport:
    """All answers of one file, with clean or with dirty filters."""

    answer: BuiltAnswer
    window: CleanerWindow
    scenarios: tuple[ScenarioAnswer, ...]
    gates: tuple[ScenarioAnswer, ...]
    balancing: BalancingOrder | None
    indicators: tuple[Indicator, ...]
    sentence: str


def duct_report(workplace: Workplace, *, dirty: bool = False, system: str | None = None) -> DuctReport:
    """The whole report; InputError where a hood has no duct, or where no fan has a curve."""
    check_joined(workplace)
    window = cleaner_window(workplace, system=system)
    answer = window.dirty if dirty else window.clean
    try:
        balancing = balancing_order(workplace, loaded=dirty, system=system)
    except NoSolution:
        balancing = None
    return DuctReport(
        answer=answer,
        window=window,
        scenarios=scenarios(workplace, loaded=dirty, system=system),
        gates=gates_shut(workplace, loaded=dirty, system=system),
        balancing=balancing,
        indicators=indicator(workplace, window, system=system),
        sentence=sentence_of(answer),
    )


def check_joined(workplace: Workplace) -> None:
    """InputError where something is missing without which no flow can be computed; one line for each."""
    joined = {duct.start for duct in workplace.ducts}
    faults = [
        f"hoods[{hood.name}]: no duct leads from this hood, so no fan draws on it; add one with 'from: {hood.name}', "
        "or take the hood out of this file"
        for hood in workplace.hoods
        if workplace.ducts and hood.name not in joined
    ]
    if faults:
        raise InputError("\n".join(faults))
    if not has_curve(workplace):
        system_of(workplace)  # says what is missing


def sentence_of(answer: BuiltAnswer) -> str:
    """How many hoods get what is meant for them, and which is served least."""
    filters = "" if not answer.cleaners else f"with {'dirty' if answer.load else 'clean'} filters "
    enough = [hood for hood in answer.hoods if hood.share >= ENOUGH]
    least = min(answer.hoods, key=lambda hood: hood.share)
    got = show(least.flow, "flow", answer.system)
    meant = show(least.intended, "flow", answer.system)
    count = f"{len(enough)} of {len(answer.hoods)} hoods get"
    if len(answer.hoods) == 1:
        count = "the hood gets" if enough else "the hood gets less than"
    told = f"As built, {filters}{count} what is {_meant(answer.hoods)}"
    if least.blows_out:
        return f"{told}; {least.name} even blows {show(-least.flow, 'flow', answer.system)} out into the room."
    return f"{told}; {least.name} is served least, {got} of {meant} ({show(least.share, 'share', answer.system)})."


def _meant(hoods: tuple[BuiltHood, ...]) -> str:
    return "intended" if all(hood.stated for hood in hoods) else "intended or needed"
