"""The push nozzle of a capturing hood: where its jet carries a source to the hood, the hood must take the jet.

The law of the jet then stands in place of the laws of suction: these would ask for the reach that the jet gives.
"""

import math
from collections.abc import Iterator
from dataclasses import dataclass, replace

from hoodwright import hoods as h
from hoodwright.results import Caution
from hoodwright.tasks.assessment import HoodAnswer, LawNeed, Line, SourceNeed
from hoodwright.tasks.hood_shapes import frame_of
from hoodwright.tasks.lines import digits
from hoodwright.tasks.release import grave_hazard
from hoodwright.tasks.shapes import within
from hoodwright.units import show
from hoodwright.workplace.model import CapturingHood, PushNozzle, Source, Workplace

Xyz = tuple[float, float, float]

BESIDE = 0.1  # m: how far off its middle a jet still carries what lies alongside, before it spreads; common practice
SPREAD = math.tan(math.radians(10))
CORE = 5.2  # slot widths
EQUATION = "push-pull, the jet taken in"
PUSH, JET = "niosh-push-pull, abstract", "albertson50, slot jet"


@dataclass(frozen=True)
class InTheJet:
    """A point as the nozzle sees it: along the jet, along the slot, and off the jet's middle."""

    along: float
    aside: float
    off: float


def throw_of(hood: CapturingHood, push: PushNozzle) -> float:
    """From the nozzle to the middle of the hood's opening."""
    return math.dist(hood.at, push.at)


def pushed(need: SourceNeed, hood: CapturingHood, source: Source, workplace: Workplace) -> SourceNeed | None:
    """The need of a source that a push jet carries to the hood, in place of the need by suction; None without."""
    grave = grave_hazard(source, workplace) is not None
    law = push_law(hood, source, need.capture_velocity, high_hazard=grave)
    if law is None:
        return None
    found = jet_velocity(hood, source)
    return replace(need, laws=(law,), velocity=found, velocity_at_most=None, untold="", place="with a push jet over")


def by_push(need: SourceNeed) -> bool:
    """Whether the need of a source is that of its push jet."""
    return any(law.equation == EQUATION for law in need.laws)


def push_law(hood: CapturingHood, source: Source, velocity: float, *, high_hazard: bool) -> LawNeed | None:
    """Flow that takes the jet in, with what it carries; None where no jet carries the source at `velocity`."""
    if hood.push is None or trouble(hood, source, velocity, "SI"):
        return None
    throw, (_, width) = throw_of(hood, hood.push), hood.push.slot
    jet = float(h.plane_jet_flow(throw, width)) * hood.push.flow
    low, high = (float(flow) for flow in h.push_pull_exhaust(jet))
    factor, flow = (2, high) if high_hazard else (1.5, low)
    x, b, q = digits(throw), digits(width), digits(hood.push.flow)
    if throw < CORE * width:
        formula, filled = f"Q = {factor:g} (1 + 0.080 x / b) q", f"{factor:g} x (1 + 0.080 x {x} / {b}) x {q}"
    else:
        formula, filled = f"Q = {factor:g} x 0.62 sqrt(x / b) q", f"{factor:g} x 0.62 x sqrt({x} / {b}) x {q}"
    line = Line(formula, f"{filled} = {digits(flow)} m3/s", f"{PUSH}; {JET}")
    return LawNeed(EQUATION, flow, line, f"up to six slot lengths, here {digits(_reach(hood.push), 3)} m")


def jet_velocity(hood: CapturingHood, source: Source) -> float | None:
    """Velocity in the middle of the jet at the source's end farthest from the nozzle; None without a nozzle."""
    if hood.push is None:
        return None
    length, width = hood.push.slot
    far = max(max(0.0, _seen(hood, hood.push, point).along) for point in source.points)
    return float(h.plane_jet_velocity(far, width)) * hood.push.flow / (length * width)


def trouble(hood: CapturingHood, source: Source, velocity: float, system: str) -> str | None:
    """Why the jet does not carry the source to the hood at the capture velocity; None where it does."""
    push = hood.push
    if push is None:
        return "it has no push nozzle"
    throw = throw_of(hood, push)
    if not within(throw, _reach(push)):
        far, reach = show(throw, "length", system), show(_reach(push), "length", system)
        return f"its push nozzle is {far} away; {reach}, six times its slot's length, was found to work"
    if not all(_carried(_seen(hood, push, point), push, throw) for point in source.points):
        return f"the {source.name} does not lie in the jet of its push nozzle"
    found = jet_velocity(hood, source)
    assert found is not None
    if found < velocity * (1 - 1e-9):
        slow, asked = show(found, "velocity", system), show(velocity, "velocity", system)
        return f"its jet has slowed to {slow} at the far end of the {source.name}, where {asked} are asked"
    return None


def push_cautions(
    hood: CapturingHood, answer: HoodAnswer, sources: tuple[Source, ...], system: str
) -> Iterator[Caution]:
    """What a push nozzle needs to do its work, and what makes it spill."""
    if hood.push is None:
        return
    throw = throw_of(hood, hood.push)
    jet = float(h.plane_jet_flow(throw, hood.push.slot[1])) * hood.push.flow
    for need, source in zip(answer.needs, sources, strict=True):
        told = trouble(hood, source, need.capture_velocity, system)
        if told:
            yield Caution(hood.name, f"{told}; the laws of suction alone are asked", PUSH)
    if answer.design_flow < jet:
        brought, taken = show(jet, "flow", system), show(answer.design_flow, "flow", system)
        text = f"its jet arrives with {brought} and the hood takes {taken}: the rest spills, with what it has gathered"
        yield Caution(hood.name, text, PUSH)
    height = float(h.push_pull_hood_height(throw))
    if min(hood.opening.sides) < height * (1 - 1e-9) and not hood.opening.is_slot:
        text = f"the jet spreads to about {show(height, 'length', system)} on its way; its opening is lower than that"
        yield Caution(hood.name, text, "push-pull-figure, hood height")
    text = (
        "large objects in the jet turn it aside, and the push must stop with the exhaust: lock the nozzle to the fan, "
        "and watch smoke with the work in place"
    )
    yield Caution(hood.name, text, PUSH)


def _reach(push: PushNozzle) -> float:
    return float(h.push_reach(push.slot[0]))


def _carried(place: InTheJet, push: PushNozzle, throw: float) -> bool:
    between = -1e-9 <= place.along <= throw + 1e-9
    return between and within(place.aside, push.slot[0] / 2) and within(place.off, BESIDE + SPREAD * place.along)


def _seen(hood: CapturingHood, push: PushNozzle, point: Xyz) -> InTheJet:
    """The slot runs along the first side of the hood's opening."""
    throw = throw_of(hood, push)
    line = [p - a for p, a in zip(point, push.at, strict=True)]
    way = [(p - a) / throw for p, a in zip(hood.at, push.at, strict=True)] if throw > 0 else [0.0, 0.0, 0.0]
    across, _ = frame_of(hood)
    along = sum(a * b for a, b in zip(line, way, strict=True))
    aside = sum(a * b for a, b in zip(line, across, strict=True))
    rest = sum(part * part for part in line) - along**2 - aside**2
    return InTheJet(along, abs(aside), math.sqrt(max(0.0, rest)))
