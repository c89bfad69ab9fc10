"""Cautions of canopies: size, draughts, closed sides, what hot equations do not know, and what is measured."""

from collections.abc import Iterator

from hoodwright import hoods
from hoodwright.hoods import capture_velocity_range
from hoodwright.results import Caution
from hoodwright.tasks.assessment import HoodAnswer, SourceNeed
from hoodwright.tasks.hood_cautions import draughts, spreads
from hoodwright.tasks.receiving.canopy.hot import Plume, is_low
from hoodwright.tasks.receiving.canopy.refuse import REFUSED, hot_plume, plume_overhang
from hoodwright.tasks.receiving.canopy.work import Work, height_above, overhang, work_of
from hoodwright.tasks.release import grave_hazard
from hoodwright.units import show
from hoodwright.workplace.model import ReceivingHood, Source, Workplace

PRACTICE = "common-practice"
COLD_OVERHANG = 0.4  # of the height, on each side
MARGIN = 1.2
NEAR_RIM = 0.25  # of the height
WARM = 30.0  # K, from which the warmth of the exhaust matters to ducts and fan


def cautions(hood: ReceivingHood, answer: HoodAnswer, workplace: Workplace, system: str) -> Iterator[Caution]:
    """Every caution of one canopy."""
    for need in answer.needs:
        source = workplace.source(need.source)
        yield from _toxic(hood, source, workplace)
        plume = hot_plume(hood, source, workplace)
        if plume is None:
            yield from _cold(hood, need, source, system)
        else:
            yield from _hot(hood, source, plume, answer, system)
    cold = tuple(need for need in answer.needs if workplace.source(need.source).heat is None)
    if cold:
        yield from draughts(answer, workplace, system)
    yield from spreads(answer)


def _toxic(hood: ReceivingHood, source: Source, workplace: Workplace) -> Iterator[Caution]:
    """Hazards that do not refuse a canopy by themselves, but must not pass a face."""
    grave = grave_hazard(source, workplace)
    if grave is not None and grave not in REFUSED:
        text = (
            f"the {source.name} gives off {grave}: a canopy only where nobody ever bends over the work; sample the air"
        )
        yield Caution(hood.name, text, PRACTICE)


def _cold(hood: ReceivingHood, need: SourceNeed, source: Source, system: str) -> Iterator[Caution]:
    if need.untold or source.heat is not None:
        return
    work = work_of(source)
    spare, wanted = overhang(hood, work.edges), COLD_OVERHANG * need.distance
    if 0 <= spare < wanted * (1 - 1e-9):
        has, asked = show(spare, "length", system, 2), show(wanted, "length", system, 2)
        text = f"it reaches {has} past the {source.name}; 0.4 of the height, {asked}, is usual on every side"
        yield Caution(hood.name, text, "canopy-hot, cold canopies, from memory")
    if hood.open_sides == 3:
        text = "no published equation is known for three open sides; that of four, over the open sides, is our reading"
        yield Caution(hood.name, text, PRACTICE)
    yield from _lower_end(hood, need, source, system)


def _lower_end(hood: ReceivingHood, need: SourceNeed, source: Source, system: str) -> Iterator[Caution]:
    low, high = capture_velocity_range(source.dispersion)
    if source.capture_velocity is not None or need.capture_velocity > low:
        return
    upper, flow = show(high, "velocity", system), show(need.flow * high / low, "flow", system)
    text = f"for the {source.name} the lower end of its class was taken; its upper end, {upper}, takes {flow}"
    yield Caution(hood.name, text, "capture-table, table 2.3")


def _hot(hood: ReceivingHood, source: Source, plume: Plume, answer: HoodAnswer, system: str) -> Iterator[Caution]:
    work = work_of(source)
    yield from _size(hood, source, work, plume, system)
    warmer = plume.heat / (hoods.plume.HEAT_CAPACITY * 1.2 * answer.design_flow)
    if warmer > WARM:
        text = (
            f"its exhaust is about {warmer:.0f} degC warmer than the room ({1.8 * warmer:.0f} degF) at its design "
            "flow; ducts and fan are counted with the air of the room"
        )
        yield Caution(hood.name, text, PRACTICE)
    margin = show(MARGIN * answer.worst.flow, "flow", system)
    text = (
        f"the equations for the plume of the {source.name} know no bursts, no charging and no warm layer under the "
        f"roof: leave a margin of a fifth or more, {margin}, and look with smoke"
    )
    yield Caution(hood.name, text, PRACTICE)
    yield from _measured(hood, source, work, system)


def _measured(hood: ReceivingHood, source: Source, work: Work, system: str) -> Iterator[Caution]:
    """What was found where a plume rises near the rim."""
    near = NEAR_RIM * height_above(hood, work)
    if overhang(hood, work.edges) >= near:
        return
    low, high = (hoods.measured_capture(row) for row in ("front, flat hood", "front, deep hood"))
    shares = f"{100 * low[0]:.0f} to {100 * low[1]:.0f} %, deep ones {100 * high[0]:.0f} to {100 * high[1]:.0f} %"
    text = f"the {source.name} lies near its rim; flat kitchen hoods were found to catch {shares} of such a plume"
    yield Caution(hood.name, text, "kitchen-capture, abstract")


def _size(hood: ReceivingHood, source: Source, work: Work, plume: Plume, system: str) -> Iterator[Caution]:
    """A canopy that covers the plume, but is smaller than the published size."""
    height = height_above(hood, work)
    if is_low(work, height):
        spare, wanted = overhang(hood, work.edges), hoods.receiving.LOW_LARGER / 2
        what = f"the {source.name}"
    else:
        spare, wanted = plume_overhang(hood, work, plume), hoods.receiving.HIGH_GROWTH * height / 2
        what = f"the plume of the {source.name}"
    if 0 <= spare < wanted * (1 - 1e-9):
        has, asked = show(spare, "length", system, 2), show(wanted, "length", system, 2)
        text = f"it reaches {has} past {what}; {asked} on every side is the published size"
        yield Caution(hood.name, text, "canopy-hot, low and high canopies, from memory")
