"""The published equations of a capturing hood, each with its range and its numbers filled in."""

import math
from collections.abc import Iterator
from dataclasses import dataclass

from hoodwright.hoods import capturing, centreline
from hoodwright.hoods.nozzle import GARRISON_1983_DIAMETERS, garrison_1983_flanged, garrison_1983_plain
from hoodwright.tasks.assessment import LawNeed, Line
from hoodwright.tasks.lines import digits
from hoodwright.tasks.shapes import area_of, has_full_flange, within
from hoodwright.workplace.model import CapturingHood, Shaped


def laws_at(hood: CapturingHood, distance: float, velocity: float) -> Iterator[LawNeed]:
    """Every equation for a free round or rectangular opening whose range holds the place.

    A narrow flange counts as none.
    """
    near = within(distance, centreline.dallavalle_reach(centreline.equal_area_diameter(area_of(hood.opening))))
    at = Asked(hood.opening, area_of(hood.opening), distance, velocity)
    flanged = has_full_flange(hood)
    long_side, short_side = max(hood.opening.sides), min(hood.opening.sides)
    if near and short_side >= centreline.DALLAVALLE_SMALLEST_SIDE_RATIO * long_side:
        yield _dallavalle_flanged(at) if flanged else _dallavalle_plain(at)
    if near and flanged and hood.opening.is_round:
        yield _even_disc(at)
        if within(0.5 * long_side, distance):
            yield _disc_aperture(at)
    if near and flanged and not hood.opening.is_round:
        yield even_rectangle(at)
    if not flanged and not hood.opening.is_round and fletcher_holds(at):
        yield fletcher(at)
    if hood.opening.is_round and within(distance, GARRISON_1983_DIAMETERS * long_side):
        yield _garrison(at, GARRISON_1983_DIAMETERS * long_side, flanged=flanged)


@dataclass(frozen=True)
class Asked:
    """What every equation is asked: an opening, its area, the distance and the capture velocity."""

    opening: Shaped
    area: float
    x: float
    v: float

    def law(self, equation: str, per_flow: float, line: tuple[str, str, str], reach: str) -> LawNeed:
        """The flow that an equation asks for; `line` is formula, filled numbers and source."""
        flow = float(capturing.required_flow(self.v, per_flow))
        formula, filled, source = line
        return LawNeed(equation, flow, Line(formula, f"{filled} = {digits(flow)} m3/s", source), reach)

    @property
    def reach(self) -> str:
        """Range of the equations for round and nearly square openings."""
        limit = digits(float(centreline.dallavalle_reach(centreline.equal_area_diameter(self.area))), 3)
        return f"up to 1.5 diameters of equal area, here {limit} m"


def _dallavalle_plain(at: Asked) -> LawNeed:
    filled = f"{digits(at.v)} x (10 x {digits(at.x)}² + {digits(at.area)})"
    line = ("Q = V (10 X² + A)", filled, "exam-equations, plain opening")
    return at.law("DallaValle, plain", centreline.dallavalle_plain(at.x, at.area), line, at.reach)


def _dallavalle_flanged(at: Asked) -> LawNeed:
    filled = f"0.75 x {digits(at.v)} x (10 x {digits(at.x)}² + {digits(at.area)})"
    line = ("Q = 0.75 V (10 X² + A)", filled, "exam-equations, flanged opening")
    return at.law("DallaValle, flanged", centreline.dallavalle_flanged(at.x, at.area), line, at.reach)


def _garrison(at: Asked, end: float, *, flanged: bool) -> LawNeed:
    diameter, z = at.opening.sides[0], min(at.x / at.opening.sides[0], GARRISON_1983_DIAMETERS)
    near = f"1.1 x 0.0{7 if flanged else 6}^(X / D)"
    far = "0.10 (X / D)^-1.6" if flanged else "0.08 (X / D)^-1.7"
    piece = near if z <= 0.5 else far
    law = garrison_1983_flanged if flanged else garrison_1983_plain
    share = float(law(min(at.x, end), diameter)) * at.area
    line = (
        f"Q = V A / share, share = {piece} of the face velocity",
        f"X / D = {digits(z)}, share = {digits(share)}: {digits(at.v)} x {digits(at.area)} / {digits(share)}",
        f"garrison83, {'flanged' if flanged else 'plain'} round nozzle",
    )
    name = f"Garrison 1983, {'flanged' if flanged else 'plain'} round nozzle"
    return at.law(name, share / at.area, line, f"up to 1.5 diameters, here {digits(end, 3)} m")


def _even_disc(at: Asked) -> LawNeed:
    diameter, x = at.opening.sides[0], digits(at.x)
    radius = digits(diameter / 2)
    line = (
        "Q = V pi R² / (1 - X / sqrt(X² + R²))",
        f"{digits(at.v)} x pi x {radius}² / (1 - {x} / sqrt({x}² + {radius}²))",
        "potential-flow, even suction over a disc",
    )
    per_flow = centreline.flanged_disc_uniform(at.x, diameter)
    return at.law("round opening in an infinite flange, even suction", per_flow, line, f"exact; used {at.reach}")


def _disc_aperture(at: Asked) -> LawNeed:
    diameter = at.opening.sides[0]
    filled = f"{digits(at.v)} x 2 pi x ({digits(diameter / 2)}² + {digits(at.x)}²)"
    line = ("Q = V 2 pi (R² + X²)", filled, "potential-flow, disc aperture")
    per_flow = centreline.flanged_disc_aperture(at.x, diameter)
    reach = f"exact; used from half a diameter {at.reach}"
    return at.law("round opening in an infinite flange, ideal potential", per_flow, line, reach)


def even_rectangle(at: Asked) -> LawNeed:
    long_side, short_side = max(at.opening.sides), min(at.opening.sides)
    a, b, x = digits(long_side / 2), digits(short_side / 2), digits(at.x)
    root = f"sqrt({a}² + {b}² + {x}²)"
    line = (
        "Q = V pi A / (2 atan(a b / (X sqrt(a² + b² + X²)))), half sides a, b",
        f"{digits(at.v)} x pi x {digits(at.area)} / (2 atan({a} x {b} / ({x} x {root})))",
        "potential-flow, solid angle of a rectangle",
    )
    per_flow = centreline.flanged_rectangle(at.x, long_side, short_side)
    return at.law("rectangle in an infinite flange, even suction", per_flow, line, f"exact; used {at.reach}")


def fletcher(at: Asked) -> LawNeed:
    long_side, short_side = max(at.opening.sides), min(at.opening.sides)
    z = at.x / math.sqrt(at.area)
    b = 0.2 * z ** (-1 / 3)
    a = digits(z * (short_side / long_side) ** -b)
    line = (
        "Q = V A (0.93 + 8.58 a²), a = (X / sqrt A) (W / L)^-b, b = 0.2 (X / sqrt A)^(-1/3)",
        f"b = {digits(b)}, a = {a}: {digits(at.v)} x {digits(at.area)} x (0.93 + 8.58 x {a}²)",
        "fletcher77, centreline formula",
    )
    nearest, farthest = (digits(float(limit), 3) for limit in centreline.fletcher_1977_reach(at.area))
    per_flow = centreline.fletcher_1977_plain(at.x, long_side, short_side)
    reach = f"sides 1:1 to 1:16, X / sqrt A 0.05 to 3, here {nearest} to {farthest} m"
    return at.law("Fletcher 1977, plain rectangle", per_flow, line, reach)


def fletcher_holds(at: Asked) -> bool:
    nearest, farthest = centreline.fletcher_1977_reach(at.area)
    aspect = max(at.opening.sides) / min(at.opening.sides)
    inside = within(nearest, at.x) and within(at.x, farthest)
    return inside and within(aspect, centreline.FLETCHER_1977_LARGEST_ASPECT)
