"""Cautions of wheel hoods: sparks, metal dust, how close, what reaches outside, branch speed, examination."""

import math
from collections.abc import Iterator

from hoodwright import hoods
from hoodwright.errors import RangeError
from hoodwright.results import Caution
from hoodwright.tasks.assessment import HoodAnswer
from hoodwright.tasks.receiving.thrown import flight_cautions
from hoodwright.tasks.shapes import area_of
from hoodwright.units import show
from hoodwright.workplace.model import ReceivingHood, Source, Wheel, Workplace

PRACTICE = "common-practice"
INLET_VELOCITY = 10.0  # m/s at the inlets round the wheel, [hse-sr21]
TONGUE = 0.0064  # m, a quarter of an inch


def cautions(hood: ReceivingHood, answer: HoodAnswer, workplace: Workplace, system: str) -> Iterator[Caution]:
    """Every caution of one wheel hood."""
    for need in answer.needs:
        source = workplace.source(need.source)
        assert source.wheel is not None
        yield from _fire(source, workplace)
        yield from _close(hood, source.wheel, answer, system)
        yield from _table(hood, source)
        yield from flight_cautions(hood, source, workplace, system)
    yield from _branch(hood, answer, workplace, system)
    if all(workplace.source(need.source).process for need in answer.needs):
        return  # the guide tells the interval of a named process
    text = (
        "where metal is ground or polished dry for more than 12 hours a week, Great Britain asks for a thorough "
        "examination every 6 months"
    )
    yield Caution(workplace.name, text, "coshh-2002, Schedule 4")


def _fire(source: Source, workplace: Workplace) -> Iterator[Caution]:
    """Sparks and dust that burns, unless the file names them and they are cautioned there."""
    hazards = workplace.contaminant(source.contaminant).hazards
    assert source.wheel is not None
    named = {"explosible dust", "aluminium or magnesium"} & set(hazards)
    if source.wheel.work in ("grinding", "cutting off", "belt") and not named and "sparks" not in hazards:
        text = (
            "if it comes from iron or steel on a wheel or belt, sparks fly with it: name the hazard 'sparks', and trap "
            "them before a filter that can burn"
        )
        yield Caution(source.contaminant, text, PRACTICE)
    if not named:
        text = (
            "fine metal dust, lint and oily fibres can catch fire by themselves, aluminium and magnesium can explode: "
            "never let them meet sparks of steel in one duct; name the hazard where it holds"
        )
        yield Caution(source.contaminant, text, "hse-sr21, design and equipment")


def _close(hood: ReceivingHood, wheel: Wheel, answer: HoodAnswer, system: str) -> Iterator[Caution]:
    if wheel.work in ("grinding", "cutting off"):
        gap = show(TONGUE, "length", system, 2)
        text = (
            f"keep its tongue within {gap} of the wheel as it wears, and the work rest close: the hood is also the "
            "guard that holds a bursting wheel"
        )
        yield Caution(hood.name, text, "us-1910-215, exposure adjustment")
    elif wheel.work in ("buffing", "polishing", "scratch brushing"):
        text = "close it round the wheel with an adjustable tongue at the top, and reset it as the wheel wears"
        yield Caution(hood.name, text, PRACTICE)
    face = answer.design_flow / area_of(hood.opening)
    if face < INLET_VELOCITY:
        asked, got = show(INLET_VELOCITY, "velocity", system), show(face, "velocity", system, 2)
        text = f"guidance asks for {asked} at the inlets round a wheel; its opening has {got} at the design flow"
        yield Caution(hood.name, text, "hse-sr21, design and equipment")


def _table(hood: ReceivingHood, source: Source) -> Iterator[Caution]:
    """What the table's flow supposes, and where it was read more widely than it is written."""
    wheel = source.wheel
    assert wheel is not None
    text = f"work that reaches outside the hood of the {source.name} asks for more air than the table's least flow"
    yield Caution(hood.name, text, "us-1910-94, (b)(3)(ix)")
    try:
        if _is_stretched(wheel):
            text = "the rule for wider wheels is written for grinding wheels; for this one it is our reading"
            yield Caution(hood.name, text, "us-1910-94, table G-4")
        if "vertical" in wheel.work and wheel.diameter:
            count = float(hoods.disc_outlets(wheel.work, wheel.diameter))
            text = f"spread its flow over {count:.0f} outlets round the rim, or as evenly by other means"
            yield Caution(hood.name, text, "cal-5152, table V-4")
    except RangeError:
        return


def _is_stretched(wheel: Wheel) -> bool:
    """Whether the rule for wider grinding wheels is used for another kind of wheel."""
    if wheel.width is None or wheel.diameter is None or wheel.work in ("grinding", "cutting off"):
        return False
    return wheel.width > float(hoods.wheel_table_width(wheel.work, wheel.diameter)) * (1 + 1e-9)


def _branch(hood: ReceivingHood, answer: HoodAnswer, workplace: Workplace, system: str) -> Iterator[Caution]:
    """A branch duct slower than the regulation recommends for wheels."""
    duct = next((duct for duct in workplace.ducts if duct.start == hood.name), None)
    if duct is None:
        return
    velocity, asked = answer.design_flow / area_of(duct), hoods.WHEEL_BRANCH_VELOCITY
    if velocity >= asked * (1 - 1e-3):
        return
    widest = math.floor(1000 * float(hoods.wheel_branch_diameter(answer.design_flow))) / 1000
    got, least, size = (
        show(velocity, "velocity", system),
        show(asked, "velocity", system),
        show(widest, "length", system),
    )
    text = f"{duct.name} runs at {got}; {least} is recommended for wheels: it may be {size} across at most"
    yield Caution(hood.name, text, "us-1910-94, (b)(3)(ii)")
