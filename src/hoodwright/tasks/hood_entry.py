"""How the air gets from the room into the duct of a hood, and the suction that this takes there.

What the file does not state is taken by the type of the hood, and said: `EntryLoss.assumed`.
"""

import math
from dataclasses import dataclass

from hoodwright import hoods
from hoodwright.tasks.assessment import Line
from hoodwright.tasks.lines import digits
from hoodwright.tasks.shapes import area_of, has_full_flange
from hoodwright.workplace.model import (
    CapturingHood,
    Duct,
    EnclosingHood,
    Hood,
    ReceivingHood,
    Resistance,
    Slots,
    Workplace,
)

BUTTED = "flanged"  # a duct butted into the back of a hood enters like a flanged pipe end
STATED = "stated by the user"
OPENINGS = ("plain", "flanged", "bell mouth")


@dataclass(frozen=True)
class EntryLoss:
    """What air loses on entering a hood, in velocity pressures of its duct, and in words what was taken.

    `coefficient` counts slots, plenum and duct; `behind` what is lost from the plenum into the duct alone.
    """

    coefficient: float
    name: str
    source: str
    lines: tuple[Line, ...] = ()
    slot_area: float | None = None
    plenum_area: float | None = None
    behind: float = 0.0
    tapered: bool = False
    assumed: str = ""


def duct_of(hood: Hood, workplace: Workplace) -> Duct | None:
    """The duct that leads away from a hood."""
    return next((duct for duct in workplace.ducts if duct.start == hood.name), None)


def entry_loss(hood: Hood, duct: Duct, workplace: Workplace) -> EntryLoss:
    """How the air enters the duct of a hood: as the file states it, else as is usual for its type."""
    stated = hood.entry
    if stated is None:
        return _usual(hood, duct, workplace)
    if stated.slots is not None:
        slots = "1 slot" if stated.slots.count == 1 else f"{stated.slots.count} slots"
        area = stated.slots.count * math.prod(stated.slots.size)
        return _slots(duct, f"{slots} before a plenum", area, *_behind(stated.slots), math.prod(stated.slots.plenum))
    if stated.like is not None:
        return _row(stated.like)
    if stated.loss is not None:
        return EntryLoss(stated.loss, "entry as stated", STATED)
    return _taper(stated.taper or 0.0, rectangular=not hood.opening.is_round)


def _taper(included: float, *, rectangular: bool) -> EntryLoss:
    angle = round(math.degrees(included), 9)
    loss = float(hoods.taper_entry_loss(angle, rectangular=rectangular))
    name = f"{'rectangular' if rectangular else 'round'} taper of {angle:.4g} deg"
    return EntryLoss(loss, name, hoods.taper_entry_source(angle), tapered=True)


def _behind(slots: Slots) -> tuple[EntryLoss, str]:
    """How the duct leaves the plenum, and what was taken where the file does not say."""
    stated = slots.take_off
    if stated is None:
        return _row(BUTTED), "its duct is taken as butted into the plenum; a tapered take-off loses less"
    if stated.like is not None:
        return _row(stated.like), ""
    if stated.loss is not None:
        return EntryLoss(stated.loss, "take-off as stated", STATED), ""
    return _taper(stated.taper or 0.0, rectangular=True), ""


def _row(row: str, assumed: str = "", name: str = "") -> EntryLoss:
    name = name or (f"{row} opening" if row in OPENINGS else row)
    loss, source = hoods.entry_loss_coefficient(row), hoods.entry_loss_source(row)
    return EntryLoss(loss, name, source, tapered=row == "bell mouth", assumed=assumed)


def _slots(
    duct: Duct, name: str, area: float, take_off: EntryLoss, assumed: str, plenum: float | None = None
) -> EntryLoss:
    behind, duct_area = take_off.coefficient, area_of(duct)
    loss = float(hoods.compound_entry_loss(area, duct_area, behind))
    share = (duct_area / area) ** 2
    more = max(share, 1.0)
    source = f"hood-figure, compound hoods; {take_off.source}"
    name += f", {take_off.name}" if not assumed else ""
    lines = (
        Line(
            "r = VP of the slots / VP of the duct = (A duct / A slots)²",
            f"({digits(duct_area)} / {digits(area)})² = {digits(share)}",
            "continuity",
        ),
        Line(
            f"F = {hoods.SLOT_LOSS:g} r + F into the duct + the greater of r and 1 - 1",
            f"{hoods.SLOT_LOSS:g} x {digits(share)} + {digits(behind)} + {digits(more)} - 1 = {digits(loss)}",
            source,
        ),
    )
    return EntryLoss(loss, name, source, lines, area, plenum, behind, tapered=take_off.tapered, assumed=assumed)


def _usual(hood: Hood, duct: Duct, workplace: Workplace) -> EntryLoss:
    """What is taken where the file does not say; never the kindest case."""
    if isinstance(hood, CapturingHood) and hood.bell_mouth:
        return _row("bell mouth")
    if hood.opening.is_slot:
        assumed = "it is taken as a slot before a plenum, with its duct butted into that"
        return _slots(duct, "1 slot before a plenum", area_of(hood.opening), _row(BUTTED), assumed)
    if isinstance(hood, CapturingHood):
        return _row("flanged" if has_full_flange(hood) else "plain")
    if isinstance(hood, ReceivingHood) and any(workplace.source(name).wheel for name in hood.serves):
        return _row("grinding straight", "a straight take-off of a wheel hood is taken")
    place = "the enclosure" if isinstance(hood, EnclosingHood) else "the hood"
    assumed = f"a duct butted into the back of {place} is taken, which loses as a flanged opening"
    return _row(BUTTED, assumed, "duct butted into the back")


def resistance_at(resistance: Resistance, flow: float, *, loaded: bool) -> float:
    """Pressure that a cleaner or filter takes at a flow, loaded or clean."""
    rated = resistance.dirty if loaded else resistance.clean
    return float(hoods.hood_filter_loss(flow, rated, resistance.at, resistance.exponent))


def resistance_line(name: str, resistance: Resistance, flow: float) -> Line:
    """The resistance of a loaded cleaner or filter with its numbers filled in."""
    ratio = f"({digits(flow)} / {digits(resistance.at)})^{resistance.exponent:g}"
    loss = digits(resistance_at(resistance, flow, loaded=True))
    return Line(f"{name}, dirty = rated x (Q / Q rated)^n", f"{digits(resistance.dirty)} x {ratio} = {loss} Pa", STATED)


def filter_loss(hood: Hood, flow: float, *, loaded: bool) -> float:
    """Pressure that the filter or screen in a hood takes, dirty or clean; 0 where there is none."""
    return 0.0 if hood.filter is None else resistance_at(hood.filter, flow, loaded=loaded)
