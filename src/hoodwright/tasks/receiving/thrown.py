"""Hoods that stand in the way of a thrown stream without a wheel: whether it meets them, since no flow is published."""

import math
from collections.abc import Iterator
from typing import cast

from hoodwright.results import Caution, Hint
from hoodwright.tasks.assessment import Bound, HoodAnswer, SourceNeed
from hoodwright.tasks.hint_tools import Case, down, hint, rounded
from hoodwright.tasks.receiving.stream import FINE, Path, flight_words, path_of, reach_of
from hoodwright.tasks.release import capture_velocity_of
from hoodwright.units import show
from hoodwright.workplace.model import ReceivingHood, Source, Workplace

PRACTICE = "common-practice"
DRAG = "barati14, first formula, integrated over the way"
ROOM = math.radians(15)  # to each side, that a hint leaves for a stream to spread


def need_of(
    hood: ReceivingHood, source: Source, workplace: Workplace, design_flow: float | None, system: str
) -> SourceNeed:
    """What is known of a thrown stream before its hood: how far it flies and whether it meets the opening. No flow."""
    velocity, basis, basis_source = capture_velocity_of(source, workplace, system)
    path = path_of(hood, source) if source.throws else None
    distance = math.dist(hood.at, source.farthest_from(hood.at))
    away = show(path.length if path else distance, "length", system)
    why = _why(source, path, workplace, system)
    return SourceNeed(
        source=source.name,
        distance=distance,
        off_axis=0.0,
        capture_velocity=velocity,
        basis=basis,
        basis_source=basis_source,
        laws=(),
        bound=Bound(0.0, None, why, ""),
        velocity=None,
        place=f"{away} along the stream from" if path else f"{away} from",
        untold=why,
    )


def refusal(hood: ReceivingHood, source: Source, workplace: Workplace) -> str | None:
    """Nothing is refused that `need_of` does not tell already."""
    return None


def disturbance(need: SourceNeed, hood: ReceivingHood, workplace: Workplace, system: str) -> str | None:
    """No equation supposes anything that could be taken away."""
    return None


def hints(case: Case) -> tuple[Hint, ...]:
    """How the hood would meet the stream; the flow stays as intended, since none is published."""
    source, hood = case.workplace.source(case.worst.source), cast(ReceivingHood, case.hood)
    if source.throws is None or hood.intended_flow is None:
        return ()
    path, reach = path_of(hood, source), reach_of(source.throws, case.workplace)
    if path is None:
        return (_turned(case, hood),)
    found = [_wider(case, hood, path), _closer(case, hood, path, reach)]
    return tuple(one for one in found if one is not None)


def cautions(hood: ReceivingHood, answer: HoodAnswer, workplace: Workplace, system: str) -> Iterator[Caution]:
    """How far grains and fine dust fly, for every source that says what it throws."""
    for need in answer.needs:
        yield from flight_cautions(hood, workplace.source(need.source), workplace, system)


def flight_cautions(hood: ReceivingHood, source: Source, workplace: Workplace, system: str) -> Iterator[Caution]:
    """The stopping distance with its line, the fine dust of the same throw, and the room for the stream to spread."""
    if source.throws is None:
        return
    reach = reach_of(source.throws, workplace)
    if reach is not None:
        text = (
            f"in still air one grain of the {source.name} flies {show(reach, 'length', system)} before it stops: "
            f"{flight_words(source.throws, workplace, reach)}. Many grains together drag air along and fly farther"
        )
        yield Caution(hood.name, text, DRAG)
    path = path_of(hood, source)
    if path is not None and reach is not None and reach < path.length and source.wheel is not None:
        far, away = show(reach, "length", system), show(path.length, "length", system)
        text = f"the grains of the {source.name} stop after {far}, short of its opening {away} away: bring it closer"
        yield Caution(hood.name, text, DRAG)
    fine = reach_of(source.throws, workplace, FINE)
    if fine is not None and source.throws.grain > FINE and path is not None and fine < path.length:
        far = show(fine, "length", system, 2)
        text = (
            f"fine dust (10 µm) thrown with the {source.name} stops after {far}: only the air that is drawn or "
            "dragged along brings it to the hood"
        )
        yield Caution(hood.name, text, DRAG)
    if path is not None and path.spare >= 0 and path.angle < ROOM:
        text = (
            f"the stream of the {source.name} may spread {math.degrees(path.angle):.0f} degrees to each side and no "
            "more to meet the opening: look how wide it is"
        )
        yield Caution(hood.name, text, PRACTICE)


def missed(hood: ReceivingHood, source: Source, system: str) -> str | None:
    """Why a stream does not meet the opening; None where it does, or where the file does not say what is thrown."""
    if source.throws is None:
        return None
    path = path_of(hood, source)
    if path is None:
        return f"the stream of the {source.name} does not fly towards the opening: turn the hood to face it"
    if path.spare < -1e-9:
        past = show(-path.spare, "length", system)
        return f"the stream of the {source.name} misses the opening by {past}: move it or make it wider"
    return None


def _why(source: Source, path: Path | None, workplace: Workplace, system: str) -> str:
    if source.dispersion != "thrown" and source.throws is None:
        return (
            "no published equation is known for a receiving hood that does not hang above its work; a capturing or an "
            "enclosing hood has some"
        )
    if source.throws is None:
        return (
            "no published equation gives the flow for a thrown stream; add 'throws' to the source to see whether its "
            "hood stands in the way"
        )
    if path is None:
        return "its stream does not fly towards the opening: turn the hood to face it"
    if path.spare < -1e-9:
        return f"its stream misses the opening by {show(-path.spare, 'length', system)}: move the hood or make it wider"
    reach, away = reach_of(source.throws, workplace), show(path.length, "length", system)
    if reach is None:
        return (
            f"its stream flies into the opening, {away} away, but no published equation gives the flow to keep it there"
        )
    far = show(reach, "length", system)
    if reach < path.length:
        return f"its grains stop after {far}, short of the opening {away} away: what is left must be captured"
    return (
        f"its stream flies into the opening, {away} away where its grains fly {far}, but no published equation gives "
        "the flow to keep it there"
    )


def _turned(case: Case, hood: ReceivingHood) -> Hint:
    flow = cast(float, hood.intended_flow)
    text = f"turned and moved so that the stream of the {case.worst.source} flies straight into its opening"
    return hint(case, "turn", text, flow)


def _wider(case: Case, hood: ReceivingHood, path: Path) -> Hint | None:
    """An opening that leaves room for the stream to spread."""
    lacking = path.length * math.tan(ROOM) - path.spare
    if lacking <= 1e-9:
        return None
    sides = [rounded(side + 2 * lacking, "length", case.system, math.ceil) for side in hood.opening.sides]
    words = [show(side, "length", case.system) for side in sides]
    size = f"{words[0]} across" if hood.opening.is_round else " by ".join(words)
    text = (
        f"an opening of {size} would take the stream of the {case.worst.source} with {math.degrees(ROOM):.0f} degrees "
        "of spread to each side; the same flow through a larger opening is slower there"
    )
    return hint(case, "wider", text, cast(float, hood.intended_flow))


def _closer(case: Case, hood: ReceivingHood, path: Path, reach: float | None) -> Hint | None:
    """Where the grains would still fly in."""
    if reach is None or reach >= path.length:
        return None
    where = show(rounded(reach / 2, "length", case.system, down), "length", case.system)
    text = f"at {where} along the stream from the {case.worst.source}, half of what its grains fly, they would fly in"
    return hint(case, "closer", text, cast(float, hood.intended_flow))
