"""Cautions of capturing hoods: flange, opening, distance, axis, and the end of the class that was taken."""

import math
from collections.abc import Iterator

from hoodwright.hoods import capture_velocity_range
from hoodwright.results import Caution
from hoodwright.tasks.assessment import HoodAnswer, SourceNeed
from hoodwright.tasks.capturing.place_cautions import place_cautions, upper_end_of_form
from hoodwright.tasks.capturing.push_pull import by_push, push_cautions
from hoodwright.tasks.capturing.table_laws import by_table
from hoodwright.tasks.hood_cautions import draughts, spreads
from hoodwright.tasks.shapes import area_of, has_full_flange
from hoodwright.units import show
from hoodwright.workplace.model import CapturingHood, Source, Workplace

PRACTICE = "common-practice"


def cautions(hood: CapturingHood, answer: HoodAnswer, workplace: Workplace, system: str) -> Iterator[Caution]:
    """Every caution of one capturing hood."""
    yield from _opening(hood, workplace, system)
    for need in answer.needs:
        yield from _lower_end(hood, need, workplace.source(need.source), system)
    yield from push_cautions(hood, answer, tuple(workplace.source(name) for name in hood.serves), system)
    yield from draughts(answer, workplace, system)
    yield from spreads(answer)
    for need in answer.needs:
        yield from _place(answer, need, system)
    yield from place_cautions(hood, answer, workplace, system)


def _opening(hood: CapturingHood, workplace: Workplace, system: str):
    if hood.flange > 0 and not has_full_flange(hood):
        width = show(math.sqrt(area_of(hood.opening)), "length", system)
        text = f"its flange is narrower than {width}, so it is counted as plain; a table top is not a flange"
        yield Caution(hood.name, text, "hood-course-21, flange dimension")
    duct = next((duct for duct in workplace.ducts if duct.start == hood.name), None)
    stated = hood.entry is not None or hood.opening.is_slot
    ratio = area_of(duct) / area_of(hood.opening) if duct and not stated else 1.0
    if ratio < 0.9:
        text = "its duct is narrower than its opening; the entry loss is that of a straight entry, not of a taper"
        yield Caution(hood.name, text, "exam-equations, hood-loss figure")
    if ratio > 1.1:
        text = "its duct is wider than its opening: the air speeds up there first, so its suction is higher than shown"
        yield Caution(hood.name, text, PRACTICE)


def _lower_end(hood: CapturingHood, need: SourceNeed, source: Source, system: str):
    """What the upper end of the class would ask, where the lower end was taken."""
    low, high = capture_velocity_range(source.dispersion)
    if source.capture_velocity is not None or need.capture_velocity > low or need.untold or by_push(need):
        return
    if hood.form is not None:
        yield from upper_end_of_form(hood, source, system)
        return
    least = "" if need.in_range else "at least "
    asked = [law.flow * (1 if by_table(law) else high / low) for law in need.laws] or [need.flow * high / low]
    if max(asked) <= need.flow * (1 + 1e-9):  # a table asks most, at either end
        return
    upper, flow = show(high, "velocity", system), show(max(asked), "flow", system)
    text = (
        f"for the {source.name} the lower end of its class was taken; draughts, a small hood or more output ask for "
        f"its upper end, {upper}, which takes {least}{flow}"
    )
    if source.dispersion == "still":
        text += "; later editions are said to begin the class at 0.38 m/s (75 fpm), from memory"
    yield Caution(hood.name, text, "capture-table, table 2.3")


def _place(answer: HoodAnswer, need: SourceNeed, system: str):
    if not need.in_range and not need.untold:
        distance = show(need.distance, "length", system)
        text = f"{distance} to the {need.source} is outside the equations' range; only certain bounds are given"
        yield Caution(answer.name, text, "potential-flow, far-field bound")
    if any(not by_table(law) for law in need.laws) and not by_push(need) and need.off_axis > math.radians(10):
        angle = f"{math.degrees(need.off_axis):.0f} degrees"
        text = f"the {need.source} lies {angle} off its axis; the straight distance is used"
        yield Caution(answer.name, text, PRACTICE)
