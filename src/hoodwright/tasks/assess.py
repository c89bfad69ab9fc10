"""The assess job: a workplace goes in, an answer for every hood, duct and fan comes out.

Two questions are kept apart: is what was intended enough, and is it met today?
"""

from dataclasses import replace

from hoodwright import __version__
from hoodwright.results import Hint
from hoodwright.sources import all_sources
from hoodwright.tasks.assessment import AirAnswer, Assessment, HoodAnswer, SourceNeed
from hoodwright.tasks.cautions import cautions_for
from hoodwright.tasks.design import air_of, design_flow
from hoodwright.tasks.hint_tools import Case
from hoodwright.tasks.hood_types import of
from hoodwright.tasks.judge import gravest, hints_hold, is_enough, is_met, reading, refused_stream, sentence
from hoodwright.tasks.materials import materials_of
from hoodwright.tasks.need import needs_of
from hoodwright.tasks.opening_answers import entry_lines_of, openings_of
from hoodwright.tasks.run import Effect, effect_of, run_of, suction_of
from hoodwright.tasks.today import with_today
from hoodwright.workplace.model import Hood, ReceivingHood, Workplace

__all__ = ["air_of", "assess", "design_flow"]

INSTEAD = ("enclose", "another hood")  # hints that do not keep the hood as it is


def assess(workplace: Workplace, system: str | None = None) -> Assessment:
    """Answer both questions for every hood, and follow the air through the ducts to the fan.

    `system`, SI or US, chooses the units of the words; every number is SI. By default the file's own choice holds.
    """
    system = system or workplace.units
    workplace = workplace.model_copy(update={"units": system})  # what speaks of the file's units then means these
    workplace = with_today(workplace)
    air = air_of(workplace.air)
    flows = {hood.name: design_flow(hood, workplace) for hood in workplace.hoods}
    run = run_of(workplace, flows, air, system)
    hoods = tuple(_hood_answer(hood, workplace, flows, air, system) for hood in workplace.hoods)
    answer = Assessment(
        workplace=workplace.name,
        about=workplace.about or "",
        system=system,
        version=__version__,
        air=air,
        hoods=hoods,
        ducts=run.ducts,
        junctions=run.junctions,
        fans=run.fans,
        cautions=cautions_for(workplace, hoods, run, system),
        sources=(),
        materials=materials_of(workplace),
    )
    return _with_sources(answer)


def _hood_answer(hood: Hood, workplace: Workplace, flows: dict[str, float], air: AirAnswer, system: str) -> HoodAnswer:
    needs = needs_of(hood, workplace, flows[hood.name], system)
    worst = max(needs, key=lambda need: need.flow)
    suction, suction_line = suction_of(hood, workplace, flows[hood.name], air)

    def effect_at(changed: Hood, flow: float) -> Effect:
        hoods = tuple(changed if other.name == hood.name else other for other in workplace.hoods)
        return effect_of(workplace.model_copy(update={"hoods": hoods}), hood, flows | {hood.name: flow}, air)

    case = Case(hood, worst, workplace, effect_at, system)
    return HoodAnswer(
        name=hood.name,
        type=hood.type,
        needs=needs,
        design_flow=flows[hood.name],
        intended=hood.intended_flow,
        commissioned=reading(hood.commissioned) if hood.commissioned else None,
        today=reading(hood.today) if hood.today else None,
        suction=suction,
        suction_line=suction_line,
        enough=is_enough(hood, needs, workplace, system),
        met=is_met(hood, needs, workplace, system),
        sentence=sentence(hood, gravest(hood, needs, system), system),
        hints=_hints(case, needs),
        openings=openings_of(hood, workplace, flows[hood.name], system),
        entry_lines=entry_lines_of(hood, workplace, flows[hood.name]),
    )


def _hints(case: Case, needs: tuple[SourceNeed, ...]) -> tuple[Hint, ...]:
    """All hints, or those that name another hood where no flow of this one can be promised to be enough.

    Hints for canopies look at refusal and disturbance for themselves.
    """
    found = of(case.hood).hints(case)
    is_canopy = isinstance(case.hood, ReceivingHood) and case.hood.is_canopy
    if is_canopy or hints_hold(case.hood, needs, case.workplace):
        return found
    if refused_stream(case.hood, case.workplace):
        return ()
    return tuple(one for one in found if one.change in INSTEAD)


def _with_sources(answer: Assessment) -> Assessment:
    """The answer with every source it leans on, in the order of the list of sources."""
    needs = [need for hood in answer.hoods for need in hood.needs]
    lines = [law.line for need in needs for law in need.laws]
    lines += [line for duct in answer.ducts for line in duct.lines]
    lines += [line for fan in answer.fans for line in fan.lines]
    lines += [line for junction in answer.junctions for side in junction.sides for line in side.lines]
    lines += [hood.suction_line for hood in answer.hoods if hood.suction_line]
    cited = [line.source for line in lines]
    cited += [need.basis_source for need in needs]
    cited += [need.bound.source for need in needs if not need.in_range and need.bound.source]
    cited += [junction.source for junction in answer.junctions]
    cited += [caution.source for caution in answer.cautions]
    cited += ["dallavalle"] * any(law.equation.startswith("DallaValle") for need in needs for law in need.laws)
    cited += ["transport-table", "us-atmosphere-76"] * bool(answer.ducts)
    keys = {piece.split(",")[0].strip() for citation in ["ashrae-f17", *cited] for piece in citation.split(";")}
    return replace(answer, sources=tuple(key for key in all_sources() if key in keys))
