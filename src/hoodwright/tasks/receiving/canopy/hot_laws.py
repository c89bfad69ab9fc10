"""The equations of canopies over hot work, each with its numbers filled in.

Each takes the plume, and air through the part of the face that the plume leaves free. They are printed in feet and
degrees Fahrenheit; the lines show their SI twins.
"""

import math
from collections.abc import Iterator

from hoodwright import hoods
from hoodwright.hoods import receiving
from hoodwright.tasks.assessment import LawNeed, Line
from hoodwright.tasks.lines import digits
from hoodwright.tasks.receiving.canopy.hot import Plume, is_low, is_sheet
from hoodwright.tasks.receiving.canopy.work import Work
from hoodwright.tasks.shapes import area_of
from hoodwright.workplace.model import Heat, ReceivingHood

MEMORY = "canopy-hot, {} canopies, from memory"


def hot_laws(hood: ReceivingHood, heat: Heat, work: Work, plume: Plume) -> Iterator[LawNeed]:
    """Every equation that holds at the height of the canopy, and what leaves the source where they ask less."""
    face = area_of(hood.opening)
    low, at_the_source = is_low(work, plume.height), _boiling if heat.boils_off else _top_of_the_body
    if low and plume.excess is not None:
        yield _low(hood, work, plume.excess)
    if not low and plume.excess is not None:
        yield _high(work, plume, plume.excess, face)
    if not low:
        yield _sheet(work, plume, face) if is_sheet(work) else _column(work, plume, face)
    if low or _leaving(heat, work, plume) > _grown(work, plume):
        yield at_the_source(heat, work, plume, face)


def rising_flow(heat: Heat, work: Work, plume: Plume) -> float:
    """Warm air alone that arrives at a height above hot work, by the most demanding equation that holds there."""
    if is_low(work, plume.height):
        return _leaving(heat, work, plume)
    driven = 0.0 if plume.excess is None else plume.velocity * plume.area
    return max(driven, _grown(work, plume), _leaving(heat, work, plume))


def _leaving(heat: Heat, work: Work, plume: Plume) -> float:
    """The plume where it leaves its source, above which it only grows."""
    if heat.boils_off:
        return float(hoods.boiling_tank_flow(heat.boils_off, work.long_side, work.area, plume.p_abs))
    return float(hoods.hot_body_flow(plume.heat, _climb(heat, work), work.area, plume.p_abs))


def _climb(heat: Heat, work: Work) -> float:
    """L of a hot body: its height, the diameter of a level cylinder, the longer side of a face."""
    return heat.height or (heat.sides[1] if heat.form == "cylinder" else work.long_side)


def _grown(work: Work, plume: Plume) -> float:
    """The plume as it has grown on its way up from its virtual origin."""
    if is_sheet(work):
        depth = float(hoods.virtual_origin_depth(work.short_side)[1])
        return float(hoods.room_line_plume_flow(plume.heat, work.long_side, plume.height + depth))
    depth = float(hoods.virtual_origin_depth(_equal_diameter(work))[1])
    return float(hoods.room_plume_flow(plume.heat, plume.height + depth))


def _low(hood: ReceivingHood, work: Work, excess: float) -> LawNeed:
    """The equation of low canopies, for the canopy as it is and no less than 1 ft larger than the source."""
    reach = f"up to 3 ft and no higher than the source is wide, here {digits(_low_reach(work), 3)} m"
    warm = f"{digits(excess)}^0.42"
    if hood.opening.is_round:
        d = max(hood.opening.sides[0], float(hoods.low_canopy_side(work.long_side)))
        flow = float(hoods.low_canopy_flow_round(d, excess))
        filled = f"{digits(receiving.LOW_ROUND)} x {digits(d)}^2.33 x {warm} = {digits(flow)} m3/s"
        formula = "Q = 4.7 D^2.33 dT^0.42 (cfm, ft, degF), in SI 0.0452 D^2.33 dT^0.42"
        return LawNeed("low canopy, round", flow, Line(formula, filled, MEMORY.format("low")), reach)
    sides = sorted(hood.opening.sides)
    b, length = (
        max(side, float(hoods.low_canopy_side(own)))
        for side, own in zip(sides, (work.short_side, work.long_side), strict=True)
    )
    flow = float(hoods.low_canopy_flow_rectangular(length, b, excess))
    filled = f"{digits(receiving.LOW_RECTANGULAR)} x {digits(length)} x {digits(b)}^1.33 x {warm} = {digits(flow)} m3/s"
    formula = "Q = 6.2 L b^1.33 dT^0.42 (cfm, ft, degF), in SI 0.0597 L b^1.33 dT^0.42"
    return LawNeed("low canopy, rectangular", flow, Line(formula, filled, MEMORY.format("low")), reach)


def _low_reach(work: Work) -> float:
    return float(hoods.low_canopy_reach(work.short_side))


def _top_of_the_body(heat: Heat, work: Work, plume: Plume, face: float) -> LawNeed:
    """The plume where it leaves the hot body, and air through the rest of the face."""
    length, start = _climb(heat, work), _leaving(heat, work, plume)
    flow = float(hoods.canopy_flow(start, work.area, face, plume.face_velocity))
    constant = digits(float(hoods.hot_body_constant(plume.p_abs)))
    filled = (
        f"q = {digits(plume.heat)} W, L = {digits(length)} m, A = {digits(work.area)} m2: "
        f"{constant} x ({digits(plume.heat)} x {digits(length)} x {digits(work.area)}²)^(1 / 3)"
        f"{_rest(plume, work.area, face)} = {digits(flow)} m3/s"
    )
    formula = "Q = (2 g R / (p cp))^(1/3) (q L A²)^(1/3) + V (face - A), 0.0381 at sea level"
    reach = f"close above the hot body, here up to {digits(_low_reach(work), 3)} m; higher up the plume only grows"
    return LawNeed("plume at the top of the hot body", flow, Line(formula, filled, "ashrae-a99, ch. 29, eq. 20"), reach)


def _boiling(heat: Heat, work: Work, plume: Plume, face: float) -> LawNeed:
    """Warm, moist air just above a boiling tank, and air through the rest of the face."""
    steam = heat.boils_off or 0.0
    start = _leaving(heat, work, plume)
    flow = float(hoods.canopy_flow(start, work.area, face, plume.face_velocity))
    constant = digits(start / work.area / (steam / work.area * work.long_side) ** (1 / 3))
    filled = (
        f"L = {digits(work.long_side)} m, A = {digits(work.area)} m2, G = {digits(steam / work.area)} kg/(s m2): "
        f"{constant} x {digits(work.area)} x ({digits(steam / work.area)} x {digits(work.long_side)})^(1 / 3)"
        f"{_rest(plume, work.area, face)} = {digits(flow)} m3/s"
    )
    formula = "Q = 5 A (G L)^(1/3) + V (face - A), G the steam for each area"
    reach = f"close above the tank, here up to {digits(_low_reach(work), 3)} m; higher up the plume only grows"
    return LawNeed("boiling tank", flow, Line(formula, filled, "ashrae-a99, ch. 29, eq. 24"), reach)


def _high(work: Work, plume: Plume, excess: float, face: float) -> LawNeed:
    flow = float(hoods.canopy_flow(plume.velocity * plume.area, plume.area, face, plume.face_velocity))
    far = digits(plume.distance)
    vf = f"{digits(receiving.HIGH_VELOCITY)} x {digits(work.area)}^0.33 x {digits(excess)}^0.42 / {far}^0.25"
    filled = (
        f"z = {digits(plume.origin)} m, Xc = {far} m, {_plume_words(plume)}, Vf = {digits(plume.velocity)} m/s: "
        f"{vf} x {digits(plume.area)}{_rest(plume, plume.area, face)} = {digits(flow)} m3/s"
    )
    formula = (
        "Q = Vf Ac + V (face - Ac), Vf = 8 As^0.33 dT^0.42 / Xc^0.25, Dc = 0.5 Xc^0.88, Xc = y + (2 Ds)^1.138 "
        "(fpm, ft, degF)"
    )
    reach = f"above {digits(_low_reach(work), 3)} m, in air without a warm layer"
    return LawNeed("high canopy", flow, Line(formula, filled, MEMORY.format("high")), reach)


def _column(work: Work, plume: Plume, face: float) -> LawNeed:
    depth = float(hoods.virtual_origin_depth(_equal_diameter(work))[1])
    flow = float(hoods.canopy_flow(_grown(work, plume), plume.area, face, plume.face_velocity))
    filled = (
        f"q = {digits(plume.heat)} W, origin {digits(depth)} m below, {_plume_words(plume)}: "
        f"0.005 x {digits(plume.heat)}^(1 / 3) x ({digits(plume.height)} + {digits(depth)})^(5 / 3)"
        f"{_rest(plume, plume.area, face)} = {digits(flow)} m3/s"
    )
    formula = "Q = 0.005 q^(1/3) z^(5/3) + V (face - Ac), z from the virtual origin, 2.1 diameters below the source"
    reach = f"above {digits(_low_reach(work), 3)} m, in air of about 20 degC without a warm layer"
    return LawNeed("point plume", flow, Line(formula, filled, "room-plume, point source"), reach)


def _sheet(work: Work, plume: Plume, face: float) -> LawNeed:
    depth = float(hoods.virtual_origin_depth(work.short_side)[1])
    flow = float(hoods.canopy_flow(_grown(work, plume), plume.area, face, plume.face_velocity))
    length = digits(work.long_side)
    filled = (
        f"q = {digits(plume.heat)} W, origin {digits(depth)} m below, {_plume_words(plume)}: "
        f"0.014 x ({digits(plume.heat)} / {length})^(1 / 3) x ({digits(plume.height)} + {digits(depth)}) x {length}"
        f"{_rest(plume, plume.area, face)} = {digits(flow)} m3/s"
    )
    formula = "Q = 0.014 (q / L)^(1/3) z L + V (face - Ac), z from the virtual origin, 2.1 widths below the source"
    reach = f"sources 5 times as long as wide, above {digits(_low_reach(work), 3)} m, no warm layer"
    return LawNeed("line plume", flow, Line(formula, filled, "room-plume, line source"), reach)


def _rest(plume: Plume, taken: float, face: float) -> str:
    """Air through the part of the face that is left free."""
    free = face - taken
    return f" + {digits(plume.face_velocity)} x {digits(free)}" if free > 0 else ""


def _plume_words(plume: Plume) -> str:
    sides = digits(plume.width) if math.isclose(plume.width, plume.long_width) else ""
    wide = sides or f"{digits(plume.width)} by {digits(plume.long_width)}"
    return f"plume {wide} m wide, Ac = {digits(plume.area)} m2"


def _equal_diameter(work: Work) -> float:
    return float(hoods.equal_area_diameter(work.area))
