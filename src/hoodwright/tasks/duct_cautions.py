"""Cautions of ducts, junctions, fans and readings of hood suction."""

from collections.abc import Iterator

from hoodwright.ducts import CORRECT_FROM, LEAVE_ABOVE
from hoodwright.results import Caution
from hoodwright.tasks.assessment import DuctAnswer, HoodAnswer, JunctionAnswer
from hoodwright.tasks.entry_cautions import entry_cautions
from hoodwright.tasks.fitting_losses import WIDEST_SMOOTH
from hoodwright.tasks.run import FASTEST_USUAL, Run
from hoodwright.tasks.sections import NEVER_SETTLES
from hoodwright.tasks.streams import way_from
from hoodwright.units import show
from hoodwright.workplace.model import Duct, Fitting, Hood, Workplace

PRACTICE = "common-practice"
NO_DAMPER = ("explosible dust", "aluminium or magnesium", "asbestos")
FLATTEST = 2.0  # long side over short side: the end of the table of rectangular elbows
MOULDED = "PVC"  # its elbows come smooth
NEARLY_ALL = 1.001  # a main without any other side has no air left to tell of


def duct_cautions(workplace: Workplace, hoods: tuple[HoodAnswer, ...], run: Run, system: str) -> Iterator[Caution]:
    """Every caution of the ductwork, in the order of the air."""
    for hood, answer in zip(workplace.hoods, hoods, strict=True):
        yield from entry_cautions(hood, answer, workplace, run, system)
    yield from (caution for duct in workplace.ducts for caution in _made_of(duct))
    yield from (caution for duct in workplace.ducts for caution in _dampers(duct, workplace, run, system))
    yield from (caution for duct in run.ducts for caution in _hot(duct, workplace, system))
    yield from (caution for duct in run.ducts for caution in _too_fast(duct, system))
    yield from _no_entry_loss(workplace)
    yield from (caution for junction in run.junctions for caution in _unbalanced(junction, system))
    yield from _governing(workplace, run)
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


def _made_of(duct: Duct):
    if duct.material == "flexible":
        text = (
            "flexible hose: sag and bends make its loss two to three times that of the straight, stretched hose shown"
        )
        yield Caution(duct.name, text, PRACTICE)
    if duct.is_round and duct.material != MOULDED and any(_counts_as_smooth(fitting) for fitting in duct.fittings):
        text = (
            "an elbow without 'pieces' is counted as smooth; elbows made of four or five pieces, as most are here, "
            "lose about 0.25 velocity pressures instead of 0.15"
        )
        yield Caution(duct.name, text, "fitting-table, table A-7B")
    if not duct.is_round and max(duct.sides) > FLATTEST * min(duct.sides) and any(f.elbow for f in duct.fittings):
        text = "flatter than 2 to 1: its elbows are counted as those of 2 to 1, the end of the table"
        yield Caution(duct.name, text, "duct-loss-table, rectangular elbow")


def _counts_as_smooth(fitting: Fitting) -> bool:
    is_smooth = fitting.pieces is None and not fitting.mitred and fitting.radius <= WIDEST_SMOOTH
    return fitting.elbow is not None and is_smooth


def _dampers(duct: Duct, workplace: Workplace, run: Run, system: str):
    """A damper moves: it wants a lock, a mark, and a main that still carries its dust when it is shut."""
    if all(fitting.damper is None and fitting.damper_loss is None for fitting in duct.fittings):
        return
    text = "its damper: lock it, mark its position and write it down; it wears and gets moved"
    slowest = _slowest_when_shut(duct, workplace, run)
    if slowest is not None:
        name, velocity, least = slowest
        shut, needed = (show(v, "velocity", system) for v in (velocity, least))
        verdict = "enough" if velocity >= least else "too slow"
        text += f". With it shut, all else as intended, {name} runs at {shut}: {verdict} for the {needed} it needs"
    yield Caution(duct.name, text, PRACTICE)
    hazards = {
        h for hood in workplace.hoods if duct.name in way_from(workplace, hood) for h in _hazards(workplace, hood)
    }
    for hazard in NO_DAMPER:
        if hazard in hazards:
            text = f"a damper where {hazard} passes: deposits and plugging; many rules forbid it: balance by size"
            yield Caution(duct.name, text, PRACTICE)


def _hazards(workplace: Workplace, hood: Hood) -> set[str]:
    return {h for name in hood.serves for h in workplace.contaminant(workplace.source(name).contaminant).hazards}


def _slowest_when_shut(duct: Duct, workplace: Workplace, run: Run) -> tuple[str, float, float] | None:
    """The duct further on that has least to spare once this one brings no air: name, velocity, least velocity."""
    answers = {answer.name: answer for answer in run.ducts}
    follow = {other.start: other for other in workplace.ducts}
    fans, here, onward = {fan.name for fan in workplace.fans}, duct.to, []
    while here in follow and here not in fans:
        onward.append(answers[follow[here].name])
        here = follow[here].to
    lost = answers[duct.name].flow
    left = [
        (d.name, d.velocity * (1 - lost / d.flow), d.transport_velocity) for d in onward if d.flow > lost * NEARLY_ALL
    ]
    settling = [found for found in left if answers[found[0]].carries not in NEVER_SETTLES]
    return min(settling, key=lambda found: found[1] / found[2], default=None)


def _hot(duct: DuctAnswer, workplace: Workplace, system: str):
    """Only where the file says so; colder and denser air further on is the mixture's, not that of cooled walls."""
    stated = next(d.temperature for d in workplace.ducts if d.name == duct.name)
    if stated is not None:
        warm, weighs = show(stated, "temperature", system), show(duct.density, "density", system)
        text = (
            f"air of {warm} weighs {weighs}; flows here are those of that air. Walls cool it further on: state the "
            "temperature there if it matters, start the fan cold, and check what heat does to seals and filters"
        )
        yield Caution(duct.name, text, PRACTICE)


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


def _unbalanced(junction: JunctionAnswer, system: str):
    if junction.ratio > LEAVE_ABOVE:
        return
    apart = f"static pressures differ (ratio {junction.ratio:.2f})"
    text = f"{apart}: left alone, {junction.governing} gets less than intended"
    if junction.ratio >= CORRECT_FROM:
        others = " and ".join(f"{name} must carry {show(flow, 'flow', system)}" for name, flow in junction.corrected)
        text += f"; to hold it, {others}, and the fan as much more. Main and fan are shown without that"
    else:
        text += "; resize one side, or find the flows as built, before the fan is ordered"
    differ = f"; {junction.editions_differ}" if junction.editions_differ else ""
    yield Caution(junction.name, f"{text}. Editions of the rule differ{differ}", junction.source)


def _governing(workplace: Workplace, run: Run):
    """Hoods on the governing side of junctions that are not in balance, each told once."""
    apart = [junction for junction in run.junctions if junction.ratio <= LEAVE_ABOVE]
    for hood in workplace.hoods:
        way = way_from(workplace, hood)
        names = [junction.name for junction in apart if junction.governing in way]
        if names:
            text = (
                f"its side of {' and '.join(names)} governs: until that is balanced it gets less than its intended flow"
            )
            yield Caution(hood.name, text, apart[0].source)


def _fans(run: Run, system: str):
    for fan in run.fans:
        losses = "belt and motor losses are" if fan.motor_power is None else "losses of the motor are"
        text = (
            f"system effect, {losses} not in its power; read its curve at the density shown, total "
            "pressure with total, static with static"
        )
        yield Caution(fan.name, text, PRACTICE)
        flow = show(fan.flow, "flow", system)
        text = f"{flow} leaves the room through it: as much must come in, planned and without draught at the hoods"
        yield Caution(fan.name, text, PRACTICE)
