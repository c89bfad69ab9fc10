"""How much air a capturing hood needs for each source it serves, by every published equation that holds there."""

import math
from dataclasses import dataclass, replace

import numpy as np

from hoodwright.hoods import capturing, centreline
from hoodwright.ranges import SLACK
from hoodwright.tasks.assessment import Bound, LawNeed, Line, SourceNeed
from hoodwright.tasks.lines import digits
from hoodwright.workplace.model import Hood, Source, Surface, Workplace

HIGH_HAZARDS = ("asthmagen", "carcinogen", "isocyanate", "asbestos", "lead", "silica")
OFF_AXIS_LIMIT = math.radians(30)


@dataclass(frozen=True)
class Place:
    """Where a source lies as its hood sees it: straight distance, and angle from the axis [rad]."""

    distance: float
    off_axis: float


def place_of(hood: Hood, source: Source) -> Place:
    """Distance from the centre of the opening to the source, and the angle between that line and the axis."""
    line = np.subtract(source.at, hood.at)
    distance = float(np.linalg.norm(line))
    if distance == 0:
        return Place(0.0, 0.0)
    cosine = float(np.dot(line, hood.facing)) / distance
    return Place(distance, math.acos(max(-1.0, min(1.0, cosine))))


def needs_of(hood: Hood, workplace: Workplace, design_flow: float | None = None) -> tuple[SourceNeed, ...]:
    """What each source served asks of the hood; the velocity at the source is at the design flow."""
    return tuple(_need(hood, workplace.source(name), workplace, design_flow) for name in hood.serves)


def opening_area(hood: Hood) -> float:
    """Open area of the hood."""
    if hood.opening.round is not None:
        return math.pi / 4 * hood.opening.round**2
    return hood.opening.rectangle[0] * hood.opening.rectangle[1]


def looks_away(off_axis: float) -> bool:
    """Whether a source lies so far off the axis that no equation holds."""
    return not _within(off_axis, OFF_AXIS_LIMIT)


def has_full_flange(hood: Hood) -> bool:
    """Whether the flange is as wide as the flanged equations suppose."""
    return hood.flange >= centreline.full_flange_width(opening_area(hood)) * (1 - 1e-9)


def _need(hood: Hood, source: Source, workplace: Workplace, design_flow: float | None) -> SourceNeed:
    place = place_of(hood, source)
    velocity, basis, basis_source = _capture_velocity(source, workplace)
    laws = () if looks_away(place.off_axis) else tuple(_laws(hood, place, velocity))
    bound = _bound(hood, place, velocity, workplace.surfaces)
    need = SourceNeed(source.name, place.distance, place.off_axis, velocity, basis, basis_source, laws, bound, None)
    if design_flow is None or need.flow == 0:
        return need
    reached = velocity * design_flow / need.flow
    return replace(need, velocity=reached) if laws else replace(need, velocity_at_most=reached)


def _capture_velocity(source: Source, workplace: Workplace) -> tuple[float, str, str]:
    if source.capture_velocity is not None:
        return source.capture_velocity, "stated in the workplace file", "stated by the user"
    low, high = capturing.capture_velocity_range(source.dispersion)
    hazards = workplace.contaminant(source.contaminant).hazards
    grave = next((hazard for hazard in hazards if hazard in HIGH_HAZARDS), None)
    span = f"{source.dispersion} release, {low:g} to {high:g} m/s"
    if grave:
        return high, f"{span}; upper end taken for the hazard '{grave}'", "capture-table, table 2.3"
    return low, f"{span}; lower end taken", "capture-table, table 2.3"


def _laws(hood: Hood, place: Place, velocity: float):
    """Every equation whose range holds the place; a narrow flange counts as none."""
    area, x = opening_area(hood), place.distance
    flanged = has_full_flange(hood)
    if hood.opening.round is not None:
        yield from _round_laws(hood.opening.round, area, x, velocity, flanged)
    else:
        yield from _rectangle_laws(hood.opening.rectangle, area, x, velocity, flanged)


def _round_laws(diameter: float, area: float, x: float, v: float, flanged: bool):
    if not _within(x, centreline.dallavalle_reach(diameter)):
        return
    yield _dallavalle(area, x, v, flanged)
    if not flanged:
        return
    per_flow = centreline.flanged_disc_uniform(x, diameter)
    shape = f"{digits(diameter / 2)}"
    yield _law(
        "round opening in an infinite flange, even suction",
        capturing.required_flow(v, per_flow),
        "Q = V pi R² / (1 - X / sqrt(X² + R²))",
        f"{digits(v)} x pi x {shape}² / (1 - {digits(x)} / sqrt({digits(x)}² + {shape}²))",
        "potential-flow, even suction over a disc",
    )
    if x >= 0.5 * diameter:
        per_flow = centreline.flanged_disc_aperture(x, diameter)
        yield _law(
            "round opening in an infinite flange, ideal potential",
            capturing.required_flow(v, per_flow),
            "Q = V 2 pi (R² + X²)",
            f"{digits(v)} x 2 pi x ({shape}² + {digits(x)}²)",
            "potential-flow, disc aperture",
        )


def _rectangle_laws(sides: tuple[float, float], area: float, x: float, v: float, flanged: bool):
    long_side, short_side = max(sides), min(sides)
    near = _within(x, centreline.dallavalle_reach(centreline.equal_area_diameter(area)))
    if near and short_side >= centreline.DALLAVALLE_SMALLEST_SIDE_RATIO * long_side:
        yield _dallavalle(area, x, v, flanged)
    if flanged and near:
        per_flow = centreline.flanged_rectangle(x, long_side, short_side)
        a, b = digits(long_side / 2), digits(short_side / 2)
        root = f"sqrt({a}² + {b}² + {digits(x)}²)"
        yield _law(
            "rectangle in an infinite flange, even suction",
            capturing.required_flow(v, per_flow),
            "Q = V pi A / (2 atan(a b / (X sqrt(a² + b² + X²)))), half sides a, b",
            f"{digits(v)} x pi x {digits(area)} / (2 atan({a} x {b} / ({digits(x)} x {root})))",
            "potential-flow, solid angle of a rectangle",
        )
    if not flanged and _fletcher_holds(x, area, long_side / short_side):
        per_flow = centreline.fletcher_1977_plain(x, long_side, short_side)
        root = math.sqrt(area)
        b = 0.2 * (x / root) ** (-1 / 3)
        a = (x / root) * (short_side / long_side) ** -b
        yield _law(
            "Fletcher 1977, plain rectangle",
            capturing.required_flow(v, per_flow),
            "Q = V A (0.93 + 8.58 a²), a = (X / sqrt A) (W / L)^-b, b = 0.2 (X / sqrt A)^(-1/3)",
            f"b = {digits(b)}, a = {digits(a)}: {digits(v)} x {digits(area)} x (0.93 + 8.58 x {digits(a)}²)",
            "fletcher77, centreline formula",
        )


def _within(x: float, reach: float) -> bool:
    """Whether x is not beyond reach; the difference of two typed coordinates carries rounding."""
    return bool(x <= reach * (1 + SLACK))


def _fletcher_holds(x: float, area: float, aspect: float) -> bool:
    nearest, farthest = centreline.fletcher_1977_reach(area)
    return _within(nearest, x) and _within(x, farthest) and aspect <= centreline.FLETCHER_1977_LARGEST_ASPECT


def _dallavalle(area: float, x: float, v: float, flanged: bool) -> LawNeed:
    filled = f"{digits(v)} x (10 x {digits(x)}² + {digits(area)})"
    if flanged:
        per_flow = centreline.dallavalle_flanged(x, area)
        return _law(
            "DallaValle, flanged",
            capturing.required_flow(v, per_flow),
            "Q = 0.75 V (10 X² + A)",
            f"0.75 x {filled}",
            "exam-equations, flanged opening",
        )
    per_flow = centreline.dallavalle_plain(x, area)
    return _law(
        "DallaValle, plain",
        capturing.required_flow(v, per_flow),
        "Q = V (10 X² + A)",
        filled,
        "exam-equations, plain opening",
    )


def _law(equation: str, flow: float, formula: str, filled: str, source: str) -> LawNeed:
    flow = float(flow)
    return LawNeed(equation, flow, Line(formula, f"{filled} = {digits(flow)} m3/s", source))


def _bound(hood: Hood, place: Place, velocity: float, surfaces: tuple[Surface, ...]) -> Bound:
    """Certain limits of the flow. Parts of the opening are at least `near` and at most `far` from the source."""
    half = _half_diagonal(hood)
    ahead, aside = place.distance * math.cos(place.off_axis), place.distance * math.sin(place.off_axis)
    ahead = 0.0 if abs(ahead) <= SLACK * place.distance else ahead  # in the plane of the opening
    near = math.hypot(ahead, max(0.0, aside - half))
    alongside = sum(1 for surface in surfaces if _distance_to(surface, hood.at) <= place.distance)
    least = velocity * float(centreline.far_field_least_flow(near, surfaces=min(alongside, 2)))
    most = velocity * float(centreline.far_field_most_flow(ahead, aside + half)) if ahead > 0 else None
    if looks_away(place.off_axis):
        why = f"it lies {math.degrees(place.off_axis):.0f} degrees off the hood's axis, where no equation holds"
    else:
        why = "it lies outside the equations' range"
    return Bound(least, most, why, "potential-flow, far-field bound")


def _half_diagonal(hood: Hood) -> float:
    return hood.opening.round / 2 if hood.opening.round is not None else math.hypot(*hood.opening.rectangle) / 2


def _distance_to(surface: Surface, point: tuple[float, float, float]) -> float:
    """Distance from a point to the nearest point of a flat parallelogram."""
    a, b = (np.asarray(side) for side in surface.sides)
    offset = np.subtract(point, surface.corner)
    (s, t), *_ = np.linalg.lstsq(np.column_stack([a, b]), offset, rcond=None)
    nearest = np.clip(s, 0, 1) * a + np.clip(t, 0, 1) * b
    return float(np.linalg.norm(offset - nearest))
