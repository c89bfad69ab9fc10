"""Cautions of ducts, junctions, fans and readings of hood suction."""

from collections.abc import Iterator

from hoodwright.ducts import CORRECT_FROM, LEAVE_ABOVE
from hoodwright.results import Caution
from hoodwright.tasks.assessment import DuctAnswer, HoodAnswer, JunctionAnswer
from hoodwright.tasks.run import FASTEST_USUAL, Run
from hoodwright.tasks.streams import way_from
from hoodwright.units import show
from hoodwright.workplace.model import Duct, Workplace

PRACTICE = "common-practice"
TAP_DIAMETERS = 5


def duct_cautions(workplace: Workplace, hoods: tuple[HoodAnswer, ...], run: Run, system: str) -> Iterator[Caution]:
    """Every caution of the ductwork, in the order of the air."""
    yield from (caution for answer in hoods for caution in _taps(answer, workplace, run, system))
    yield from (caution for duct in workplace.ducts for caution in _made_of(duct))
    yield from (caution for duct in run.ducts for caution in _too_fast(duct, system))
    yield from _no_entry_loss(workplace)
    yield from (caution for junction in run.junctions for caution in _unbalanced(junction, workplace, system))
    joined = {duct.start for duct in workplace.ducts}
    for hood in workplace.hoods if workplace.ducts else ():
        if hood.name not in joined:
            text = "no duct leads from it: its suction and its share of the fan are not computed"
            yield Caution(hood.name, text, PRACTICE)
    yield from _fans(run, system)
    if workplace.ducts:
        text = (
            "static or hood suction taps: mind lagging, explosible or toxic deposits, height and rotating parts before "
            "anyone drills or opens a duct"
        )
        yield Caution(workplace.name, text, PRACTICE)


def _taps(answer: HoodAnswer, workplace: Workplace, run: Run, system: str):
    """A tap stands some way along the duct, where friction is in the reading too."""
    duct = next((duct for duct in workplace.ducts if duct.start == answer.name), None)
    if duct is None or answer.suction is None:
        return
    friction = next(found for found in run.ducts if found.name == duct.name).friction_per_length
    at_tap = answer.suction + friction * TAP_DIAMETERS * duct.sides[0]
    behind, there = show(answer.suction, "pressure", system), show(at_tap, "pressure", system)
    text = (
        f"{behind} is right behind its opening; a tap {TAP_DIAMETERS} diameters along {duct.name} reads about {there}. "
        "Take that friction off before telling a flow from it; no elbow or damper between; void once the hood was "
        "altered, dented or blocked"
    )
    yield Caution(answer.name, text, PRACTICE)


def _made_of(duct: Duct):
    if duct.material == "flexible":
        text = (
            "flexible hose: sag and bends make its loss two to three times that of the straight, stretched hose shown"
        )
        yield Caution(duct.name, text, PRACTICE)
    if any(fitting.elbow is not None and fitting.pieces is None for fitting in duct.fittings):
        text = (
            "an elbow without 'pieces' is counted as smooth; elbows made of four or five pieces, as most are here, "
            "lose about 0.25 velocity pressures instead of 0.15"
        )
        yield Caution(duct.name, text, "lev-elbows, elbow loss by number of pieces")


def _too_fast(duct: DuctAnswer, system: str):
    if duct.velocity > FASTEST_USUAL:
        fast, usual = (show(v, "velocity", system) for v in (duct.velocity, FASTEST_USUAL))
        text = f"{fast} is faster than the {usual} that ducts usually carry: check its flow and its size"
        yield Caution(duct.name, text, PRACTICE)


def _no_entry_loss(workplace: Workplace):
    """All but one of the ducts that meet enter at an angle, and lose by it."""
    arriving: dict[str, list[Duct]] = {}
    for duct in workplace.ducts:
        arriving.setdefault(duct.to, []).append(duct)
    for node, ducts in arriving.items():
        straight = [duct.name for duct in ducts if duct.joins_at is None]
        if node != "outside" and len(straight) > 1:
            text = f"{' and '.join(straight)} meet here without 'joins_at', so no branch-entry loss is counted"
            yield Caution(node, f"{text}: say at which angle all but one of them join", "lev-elbows, branch entry")


def _unbalanced(junction: JunctionAnswer, workplace: Workplace, system: str):
    if junction.ratio > LEAVE_ABOVE:
        return
    apart = f"static pressures differ (ratio {junction.ratio:.2f})"
    text = f"{apart}: left alone, {junction.governing} gets less than intended"
    if junction.ratio >= CORRECT_FROM:
        others = " and ".join(f"{name} must carry {show(flow, 'flow', system)}" for name, flow in junction.corrected)
        text += f"; to hold it, {others}, and the fan as much more. Main and fan are shown without that"
    else:
        text += "; resize one side, or find the flows as built, before the fan is ordered"
    yield Caution(junction.name, f"{text}. Editions of the rule differ", junction.source)
    for hood in workplace.hoods:
        if junction.governing in way_from(workplace, hood):
            text = f"its side of {junction.name} governs: until that is balanced it gets less than its intended flow"
            yield Caution(hood.name, text, junction.source)


def _fans(run: Run, system: str):
    for fan in run.fans:
        text = (
            "system effect, belt and motor losses are not in its power; read its curve at the density shown, total "
            "pressure with total, static with static"
        )
        yield Caution(fan.name, text, PRACTICE)
        flow = show(fan.flow, "flow", system)
        text = f"{flow} leaves the room through it: as much must come in, planned and without draught at the hoods"
        yield Caution(fan.name, text, PRACTICE)
