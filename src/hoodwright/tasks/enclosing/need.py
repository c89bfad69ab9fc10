"""How much air an enclosure needs: its open area times the face velocity of its form, and air for falling material."""

import math

from hoodwright import hoods as h
from hoodwright.tables import load_table
from hoodwright.tasks.assessment import Bound, LawNeed, Line, SourceNeed
from hoodwright.tasks.enclosing.openings import area_words, holds, open_area
from hoodwright.tasks.lines import digits
from hoodwright.tasks.release import grave_hazard
from hoodwright.units import show, show_number
from hoodwright.workplace.model import EnclosingHood, Falls, Source, Workplace

GLOVE_BOX = "glove box"
GLOVE_BOX_CHANGES = 20 / 3600  # 1/s
STATED = "stated by the user"
BULK = "usbm-dust-handbook, chapter 5"


def need_of(
    hood: EnclosingHood, source: Source, workplace: Workplace, design_flow: float | None, system: str
) -> SourceNeed:
    """What a source asks of its enclosure; `velocity` is that through every opening at the design flow."""
    velocity, basis, basis_source = face_velocity_of(hood, source, workplace, system)
    outside = next((point for point in source.points if not holds(hood, point)), None)
    untold = "" if outside is None else _outside(hood, source, system)
    falls = falls_air(hood, workplace)
    reached = None
    if design_flow is not None and not untold:
        reached = float(h.opening_velocity(max(0.0, design_flow - falls), open_area(hood)))
    return SourceNeed(
        source=source.name,
        distance=math.dist(hood.at, source.centre),
        off_axis=0.0,
        capture_velocity=velocity,
        basis=basis,
        basis_source=basis_source,
        laws=() if untold else tuple(_laws(hood, workplace, velocity, basis_source)),
        bound=Bound(0.0, None, untold, ""),
        velocity=reached,
        place="around",
        velocity_kind="face velocity",
        untold=untold,
    )


def head(hood: EnclosingHood, need: SourceNeed, system: str) -> str:
    """The sentence up to its verb: 'The lacquer booth, around the spray gun,'."""
    if need.untold:
        return f"The {hood.name} does not enclose the {need.source}: it"
    return f"The {hood.name}, {need.place} the {need.source},"


def face_velocity_of(hood: EnclosingHood, source: Source, workplace: Workplace, system: str) -> tuple[float, str, str]:
    """Face velocity, what it rests on in words, and its source."""
    if hood.face_velocity is not None:
        return hood.face_velocity, "stated in the workplace file", STATED
    low, high = h.face_velocity_range(hood.form)
    cited = load_table("face_velocity").row("form", hood.form)["source"]
    if low == high:
        return low, f"{hood.form}, {show(low, 'velocity', system)}", cited
    span = f"{hood.form}, {show_number(low, 'velocity', system)} to {show(high, 'velocity', system)}"
    grave = grave_hazard(source, workplace)
    if grave:
        return high, f"{span}; upper end taken for the hazard '{grave}'", cited
    return low, f"{span}; lower end taken", cited


def falling_into(hood: EnclosingHood, workplace: Workplace) -> list[Falls]:
    """Material that falls into the enclosure, of all sources it serves."""
    return [falls for name in hood.serves if (falls := workplace.source(name).falls) is not None]


def falls_air(hood: EnclosingHood, workplace: Workplace) -> float:
    """Air that falling material pushes out and drags in."""
    return sum(_air_of(falls, open_area(hood)) for falls in falling_into(hood, workplace))


def is_coarse(falls: Falls) -> bool:
    """Whether the grains are coarse enough for the equation of dragged air."""
    return bool(falls.grain >= h.FINEST_INDUCING * (1 - 1e-9))


def _air_of(falls: Falls, area: float) -> float:
    if not is_coarse(falls):
        return float(h.dumping_flow(falls.rate, falls.bulk_density))
    dragged = h.induced_flow(falls.rate, falls.height, falls.grain, area)
    return float(dragged + h.displaced_flow(falls.rate, falls.bulk_density))


def _laws(hood: EnclosingHood, workplace: Workplace, velocity: float, cited: str):
    area = open_area(hood)
    flow = float(h.enclosure_flow(area, velocity))
    formula, filled, sources = "Q = A V", f"{area_words(hood)} x {digits(velocity)}", [cited]
    if cited == STATED:
        sources = ["abulencia, example 20.4"]
    for falls in falling_into(hood, workplace):
        added, words = _falls_words(falls, area)
        flow += _air_of(falls, area)
        formula, filled = f"{formula} + {added}", f"{filled} + {words}"
        sources.append(BULK)
    line = Line(formula, f"{filled} = {digits(flow)} m3/s", "; ".join(dict.fromkeys(sources)))
    yield LawNeed("open area x face velocity", flow, line, "any enclosure whose openings draw in")
    if hood.form == GLOVE_BOX:
        yield _purge(hood)


def _falls_words(falls: Falls, area: float) -> tuple[str, str]:
    """Formula and filled numbers of the air that falling material takes."""
    rate, bulk = digits(falls.rate), digits(falls.bulk_density)
    if not is_coarse(falls):
        return "9.99 m / rho", f"9.99 x {rate} / {bulk}"
    fall, grain = digits(falls.height), digits(falls.grain)
    dragged = f"0.11951 x {digits(area)} x ({rate} x {fall}² / {grain})^(1/3)"
    return "0.11951 A (m S² / D)^(1/3) + m / rho", f"{dragged} + {rate} / {bulk}"


def _purge(hood: EnclosingHood) -> LawNeed:
    width, height, depth = hood.box
    flow = float(h.purge_flow(width * height * depth, GLOVE_BOX_CHANGES))
    filled = f"{digits(width)} x {digits(height)} x {digits(depth)} x 20 / 3600 = {digits(flow)} m3/s"
    line = Line("Q = volume x air changes, 20 an hour", filled, "cabinet-table, class III")
    return LawNeed("20 air changes an hour", flow, line, "glove boxes; more where heat or vapour asks for it")


def _outside(hood: EnclosingHood, source: Source, system: str) -> str:
    inside = " by ".join(show(side, "length", system) for side in hood.box)
    return f"it is not inside the {hood.name} ({inside} behind its opening); mend the places, or enclose it"
