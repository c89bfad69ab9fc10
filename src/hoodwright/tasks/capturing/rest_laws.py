"""The equations of openings that rest on a surface, or in the corner of two: those of the opening with its images."""

from collections.abc import Iterator
from dataclasses import replace

import numpy as np

from hoodwright.hoods import centreline, resting
from hoodwright.tasks.assessment import LawNeed
from hoodwright.tasks.capturing.laws import Asked, even_rectangle, fletcher, fletcher_holds
from hoodwright.tasks.capturing.planes import ALONG, Rest
from hoodwright.tasks.hood_shapes import frame_of
from hoodwright.tasks.lines import digits
from hoodwright.tasks.shapes import area_of, has_full_flange, within
from hoodwright.workplace.model import CapturingHood


def rest_laws_at(hood: CapturingHood, distance: float, velocity: float, rests: tuple[Rest, ...]) -> Iterator[LawNeed]:
    """Every equation whose range holds the place for the opening with its images, each asked for its own share."""
    at, flanged, images = (
        Asked(hood.opening, area_of(hood.opening), distance, velocity),
        has_full_flange(hood),
        2 ** len(rests),
    )
    whole = whole_of(hood, distance, velocity, rests)
    reach = float(centreline.dallavalle_reach(centreline.equal_area_diameter(images * at.area)))
    near, sides = within(distance, reach), whole.opening.sides
    if near and (whole.opening.is_round or min(sides) >= centreline.DALLAVALLE_SMALLEST_SIDE_RATIO * max(sides)):
        yield _resting(at, len(rests), reach, flanged=flanged)
    if whole.opening.is_round:
        return
    if near and flanged:
        yield shared(even_rectangle(whole), images)
    if not flanged and fletcher_holds(whole):
        yield shared(fletcher(whole), images)


def whole_of(hood: CapturingHood, distance: float, velocity: float, rests: tuple[Rest, ...]) -> Asked:
    """The opening with its images: twice as long across each surface. A round one has no such shape and stays alone."""
    if hood.opening.is_round:
        return Asked(hood.opening, area_of(hood.opening), distance, velocity)
    sides = [
        side * 2 ** sum(abs(float(np.dot(rest.up, way))) > 1 - ALONG for rest in rests)
        for side, way in zip(hood.opening.sides, frame_of(hood), strict=True)
    ]
    opening = hood.opening.model_copy(update={"rectangle": tuple(sides), "slot": None})
    return Asked(opening, area_of(opening), distance, velocity)


def shared(law: LawNeed, images: int) -> LawNeed:
    """The share of one opening in the flow that a law asks of it and its images together."""
    if images == 1:
        return law
    asked, flow = law.line.filled.rpartition(" = ")[0], law.flow / images
    line = replace(
        law.line,
        formula=f"{law.line.formula}; for the opening with its images, of which it is one of {images}",
        filled=f"{asked} / {images} = {digits(flow)} m3/s",
    )
    return replace(law, equation=f"{law.equation}, with its image{'s' * (images > 2)}", flow=flow, line=line)


def _resting(at: Asked, surfaces: int, reach: float, *, flanged: bool) -> LawNeed:
    where = "on a surface" if surfaces == 1 else "in a corner"
    coefficient = 10 / 2**surfaces
    share, spoken = ("0.75 ", "0.75 x ") if flanged else ("", "")
    law = resting.resting_flanged if flanged else resting.resting_plain
    kind = "flanged" if flanged else "plain"
    line = (
        f"Q = {share}V ({coefficient:g} X² + A)",
        f"{spoken}{digits(at.v)} x ({coefficient:g} x {digits(at.x)}² + {digits(at.area)})",
        f"dallavalle, {kind} opening with mirror images",
    )
    per_flow = float(law(min(at.x, reach), at.area, surfaces))
    told = f"up to 1.5 diameters of the opening with its images, here {digits(reach, 3)} m; X from its foot there"
    return at.law(f"DallaValle, {kind}, {where}", per_flow, line, told)
