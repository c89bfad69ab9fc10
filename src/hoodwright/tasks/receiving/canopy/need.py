"""How much air a canopy needs for a source below it."""

from dataclasses import replace

from hoodwright.errors import RangeError
from hoodwright.tasks.assessment import Bound, LawNeed, SourceNeed
from hoodwright.tasks.lines import digits
from hoodwright.tasks.receiving.canopy.cold import cold_law
from hoodwright.tasks.receiving.canopy.hot import plume_of
from hoodwright.tasks.receiving.canopy.hot_laws import hot_laws, rising_flow
from hoodwright.tasks.receiving.canopy.work import Work, height_above, work_of, work_together
from hoodwright.tasks.release import capture_velocity_of
from hoodwright.tasks.shapes import area_of
from hoodwright.units import show
from hoodwright.workplace.model import ReceivingHood, Source, Workplace

HOT_BASIS = "canopy-hot, high canopies, from memory"


def need_of(
    hood: ReceivingHood, source: Source, workplace: Workplace, design_flow: float | None, system: str
) -> SourceNeed:
    """What a source asks of a canopy: inflow at its open sides where it is cold, its whole plume where it is hot."""
    work = work_of(source)
    height = height_above(hood, work)
    if height <= 0:
        return _untold(hood, source, height, workplace, system, "it does not lie below the rim of the canopy")
    if source.heat is None:
        return _cold(hood, source, work, height, workplace, design_flow, system)
    try:
        plume = plume_of(source.heat, work, height, workplace)
    except RangeError as error:
        return _untold(hood, source, height, workplace, system, f"its convective heat cannot be told: {error}")
    others = _other_plumes(hood, source, workplace)
    laws = tuple(_with_others(law, others) for law in hot_laws(hood, source.heat, work, plume))
    face = show(plume.face_velocity, "velocity", system)
    heat = show(plume.heat, "power", system, 2)
    basis = f"the plume of {heat} convective heat, and {face} through the part of the face that it leaves free"
    most = max(law.flow for law in laws)
    need = _need(source, height, most / area_of(hood.opening), basis, HOT_BASIS, laws, system)
    return _with_velocity(replace(need, velocity_kind="face velocity"), design_flow)


def _cold(
    hood: ReceivingHood,
    source: Source,
    work: Work,
    height: float,
    workplace: Workplace,
    design_flow: float | None,
    system: str,
) -> SourceNeed:
    velocity, basis, basis_source = capture_velocity_of(source, workplace, system)
    cold = [other for name in hood.serves if (other := workplace.source(name)).heat is None]
    law = cold_law(hood, work_together(cold), height, velocity)
    return _with_velocity(_need(source, height, velocity, basis, basis_source, (law,), system), design_flow)


def _other_plumes(hood: ReceivingHood, source: Source, workplace: Workplace) -> dict[str, float]:
    """What rises from the other hot work below the canopy, by the name of its source."""
    found = {}
    for other in map(workplace.source, hood.serves):
        if other.name == source.name or other.heat is None or height_above(hood, work_of(other)) <= 0:
            continue
        try:
            plume = plume_of(other.heat, work_of(other), height_above(hood, work_of(other)), workplace)
            found[other.name] = rising_flow(other.heat, work_of(other), plume)
        except RangeError:
            continue
    return found


def _with_others(law: LawNeed, others: dict[str, float]) -> LawNeed:
    """The flow of one hot source, with what rises from the others into the same canopy."""
    if not others:
        return law
    flow = law.flow + sum(others.values())
    names, added = " and the ".join(others), " + ".join(map(digits, others.values()))
    filled = f"{law.line.filled}; with what rises from the {names} {digits(law.flow)} + {added} = {digits(flow)} m3/s"
    return replace(law, flow=flow, line=replace(law.line, filled=filled))


def _need(
    source: Source,
    height: float,
    velocity: float,
    basis: str,
    basis_source: str,
    laws: tuple[LawNeed, ...],
    system: str,
) -> SourceNeed:
    return SourceNeed(
        source=source.name,
        distance=height,
        off_axis=0.0,
        capture_velocity=velocity,
        basis=basis,
        basis_source=basis_source,
        laws=laws,
        bound=Bound(0.0, None, "", ""),
        velocity=None,
        place=f"{show(height, 'length', system)} above",
    )


def _with_velocity(need: SourceNeed, design_flow: float | None) -> SourceNeed:
    """The need with the velocity that the design flow brings: it is proportional to the flow."""
    if design_flow is None:
        return need
    return replace(need, velocity=need.capture_velocity * design_flow / need.flow)


def _untold(
    hood: ReceivingHood, source: Source, height: float, workplace: Workplace, system: str, why: str
) -> SourceNeed:
    velocity, basis, basis_source = capture_velocity_of(source, workplace, system)
    need = _need(source, abs(height), velocity, basis, basis_source, (), system)
    place = need.place if height > 0 else "beside"
    return replace(need, bound=Bound(0.0, None, why, ""), untold=why, place=place)
