"""The equations of slots, free or lying along a surface, for a place square to the slot and some way along it."""

from collections.abc import Iterator

from hoodwright.hoods import slots
from hoodwright.tasks.assessment import LawNeed
from hoodwright.tasks.capturing.laws import Asked, even_rectangle, fletcher, fletcher_holds
from hoodwright.tasks.capturing.planes import Rest
from hoodwright.tasks.capturing.rest_laws import shared, whole_of
from hoodwright.tasks.lines import digits
from hoodwright.tasks.shapes import area_of, has_full_flange, within
from hoodwright.workplace.model import CapturingHood

MIDDLE_SHARE = 0.25  # of its length to either side: where the laws for the middle of a slot are used


def slot_laws_at(
    hood: CapturingHood, distance: float, aside: float, velocity: float, lying: tuple[Rest, ...]
) -> Iterator[LawNeed]:
    """Every equation that holds; the image in the surface along which a slot is `lying` doubles what it draws."""
    length, width = max(hood.opening.sides), min(hood.opening.sides)
    at, whole = (
        Asked(hood.opening, area_of(hood.opening), distance, velocity),
        whole_of(hood, distance, velocity, lying),
    )
    middle, flanged, images = within(aside, MIDDLE_SHARE * length), has_full_flange(hood), 2 ** len(lying)
    beyond = within(width, distance)
    if middle and beyond and within(distance, float(slots.slot_reach(length))):
        yield _silverman(at, length, images, flanged=flanged)
    if middle and not flanged and fletcher_holds(whole):
        yield shared(fletcher(whole), images)
    if middle and flanged and not beyond:
        yield shared(even_rectangle(whole), images)
    if beyond and (flanged or not middle):
        yield _line(at, length, aside, images, flanged=flanged)


def _silverman(at: Asked, length: float, images: int, *, flanged: bool) -> LawNeed:
    coefficient = (2.6 if flanged else 3.7) / images
    law = slots.silverman_flanged if flanged else slots.silverman_plain
    kind = "flanged" if flanged else "plain"
    lying = ", along a surface" if images > 1 else ""
    reach = float(slots.slot_reach(length))
    line = (
        f"Q = {coefficient:g} L V X",
        f"{coefficient:g} x {digits(length)} x {digits(at.v)} x {digits(at.x)}",
        f"exam-equations, {kind} slot{', with its mirror image' if images > 1 else ''}",
    )
    per_flow = images * float(law(min(at.x, reach), length))
    told = f"before its middle half, from its width to half its length (our limits), here up to {digits(reach, 3)} m"
    told += "; the flanged one to 0.41 of it, where 2 pi X² V asks as much" * flanged
    return at.law(f"Silverman, {kind} slot{lying}", per_flow, line, told)


def _line(at: Asked, length: float, aside: float, images: int, *, flanged: bool) -> LawNeed:
    """Exact for a line in an endless flange; in open space it asks more than any slot with a duct behind it."""
    images *= 2 if flanged else 1
    per_flow = images * float(slots.line_sink_aside(at.x, aside, length))
    one, other = aside - length / 2, aside + length / 2
    x, ends = digits(at.x), (digits(other), digits(one))
    roots = " - ".join(f"({end}) / sqrt({x}² + ({end})²)" for end in ends)
    line = (
        f"Q = 4 pi X L V / ({images} (s2 / r2 - s1 / r1)), s from the place to the ends, r² = X² + s²",
        f"4 pi x {x} x {digits(length)} x {digits(at.v)} / ({images} x ({roots}))",
        "potential-flow, sink along a line of finite length",
    )
    name = "line in an infinite flange" if flanged else "line in open space"
    return at.law(name, per_flow, line, "exact for a line; used from one slot width on")
