"""Cautions on how the air enters the duct of a hood, and where its suction is read."""

from collections.abc import Iterator

from hoodwright.hoods import EVEN_FLOW_RATIO, FACE_AREA_LEAST, even_flow_ratio, face_area_ratio, tap_distance_range
from hoodwright.results import Caution
from hoodwright.tasks.assessment import HoodAnswer
from hoodwright.tasks.hood_entry import duct_of, entry_loss, filter_loss
from hoodwright.tasks.run import Run
from hoodwright.tasks.shapes import area_of, within
from hoodwright.units import show
from hoodwright.workplace.model import Duct, Hood, Workplace

PRACTICE = "common-practice"


def entry_cautions(hood: Hood, answer: HoodAnswer, workplace: Workplace, run: Run, system: str) -> Iterator[Caution]:
    """Every caution on the entry of one hood; none where no duct leads from it."""
    duct = duct_of(hood, workplace)
    if duct is None or answer.suction is None:
        return
    entry = entry_loss(hood, duct, workplace)
    if entry.assumed:
        loss = entry.behind or entry.coefficient
        taken, semicolon, advice = entry.assumed.partition(";")
        text = f"how its air enters the duct is not stated in full: {taken} (F = {loss:g}){semicolon}{advice}"
        yield Caution(hood.name, text, entry.source)
    if entry.tapered and hood.entry and hood.entry.taper:
        yield from _narrow_face(hood, duct)
    if entry.plenum_area and entry.slot_area:
        yield from _uneven(hood, entry.slot_area, entry.plenum_area)
    if hood.filter is not None:
        clean = answer.suction - filter_loss(hood, answer.design_flow, loaded=True)
        clean += filter_loss(hood, answer.design_flow, loaded=False)
        dirty, new = show(answer.suction, "pressure", system), show(clean, "pressure", system)
        text = f"its suction is {dirty} with a dirty filter and {new} with a clean one at the same flow: read both"
        yield Caution(hood.name, text, PRACTICE)
    yield from _tap(hood, answer, duct, run, system, tapered=entry.tapered)


def _narrow_face(hood: Hood, duct: Duct):
    ratio = float(face_area_ratio(area_of(hood.opening), area_of(duct)))
    if not within(FACE_AREA_LEAST, ratio):
        text = (
            f"its face has {ratio:.2g} times the area of its duct; the losses of tapered hoods hold from "
            f"{FACE_AREA_LEAST:g} times. Hoods of 90 degrees were measured to lose 0.17 to 1.85 velocity pressures, "
            "more the smaller that ratio"
        )
        yield Caution(hood.name, text, "entry-loss-93, abstract")


def _uneven(hood: Hood, slot_area: float, plenum_area: float):
    ratio = float(even_flow_ratio(slot_area, plenum_area))
    if not within(EVEN_FLOW_RATIO, ratio):
        text = (
            f"the air in its slots is {ratio:.2g} times as fast as in the plenum behind; below {EVEN_FLOW_RATIO:g} "
            "times a slot draws unevenly: narrow the slots or deepen the plenum"
        )
        yield Caution(hood.name, text, "even-flow, plenum velocity at most half the slot velocity")


def _tap(hood: Hood, answer: HoodAnswer, duct: Duct, run: Run, system: str, *, tapered: bool):
    """A tap stands some way along the duct, where friction is in the reading too."""
    near, far = tap_distance_range("tapered" if tapered else "flat", min(duct.sides))
    place, count = (near + far) / 2, round((near + far) / 2 / min(duct.sides))
    suction = answer.suction or 0.0
    friction = next(found for found in run.ducts if found.name == duct.name).friction_per_length
    behind, there = (show(p, "pressure", system) for p in (suction, suction + friction * place))
    text = (
        f"{behind} is right behind its opening; a tap {count} diameters along {duct.name} reads about {there}. "
        "Take that friction off before telling a flow from it; no elbow or damper between; void once the hood was "
        "altered, dented or blocked"
    )
    yield Caution(hood.name, text, PRACTICE)
    if duct.length < near:
        length, least = show(duct.length, "length", system), show(near, "length", system)
        text = f"{duct.name} is {length} long; suction is read from {least} on: there is no good place for a tap"
        yield Caution(hood.name, text, "tap-rule, diameters behind the hood")
