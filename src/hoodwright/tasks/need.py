"""How much air a capturing hood needs for each source it serves, by every published equation that holds there."""

import math
from dataclasses import dataclass, replace

import numpy as np

from hoodwright.hoods import capturing, centreline
from hoodwright.ranges import SLACK
from hoodwright.tasks.assessment import Bound, Line, SourceNeed
from hoodwright.tasks.laws import laws_at, within
from hoodwright.tasks.lines import digits
from hoodwright.tasks.planes import Planes, half_size, planes_about
from hoodwright.units import show, show_number
from hoodwright.workplace.model import Hood, Source, Workplace

HIGH_HAZARDS = ("asthmagen", "carcinogen", "isocyanate", "asbestos", "lead", "silica", "cyanide")
OFF_AXIS_LIMIT = math.radians(30)
FAR_FIELD = "potential-flow, far-field bound"


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


def needs_of(
    hood: Hood, workplace: Workplace, design_flow: float | None = None, system: str = "SI"
) -> tuple[SourceNeed, ...]:
    """What each source served asks of the hood; the velocity at the source is at the design flow."""
    return tuple(_need(hood, workplace.source(name), workplace, design_flow, system) for name in hood.serves)


def looks_away(off_axis: float) -> bool:
    """Whether a source lies so far off the axis that no equation holds."""
    return not within(off_axis, OFF_AXIS_LIMIT)


def _need(hood: Hood, source: Source, workplace: Workplace, design_flow: float | None, system: str) -> SourceNeed:
    place = place_of(hood, source)
    velocity, basis, basis_source = _capture_velocity(source, workplace, system)
    laws = () if looks_away(place.off_axis) else tuple(laws_at(hood, place.distance, velocity))
    bound = _bound(hood, place, velocity, planes_about(hood, source, workplace))
    need = SourceNeed(source.name, place.distance, place.off_axis, velocity, basis, basis_source, laws, bound, None)
    if design_flow is None or need.flow == 0:
        return need
    reached = velocity * design_flow / need.flow
    return replace(need, velocity=reached) if laws else replace(need, velocity_at_most=reached)


def _capture_velocity(source: Source, workplace: Workplace, system: str) -> tuple[float, str, str]:
    if source.capture_velocity is not None:
        return source.capture_velocity, "stated in the workplace file", "stated by the user"
    low, high = capturing.capture_velocity_range(source.dispersion)
    hazards = workplace.contaminant(source.contaminant).hazards
    grave = next((hazard for hazard in hazards if hazard in HIGH_HAZARDS), None)
    span = f"{source.dispersion} release, {show_number(low, 'velocity', system)} to {show(high, 'velocity', system)}"
    if grave:
        return high, f"{span}; upper end taken for the hazard '{grave}'", "capture-table, table 2.3"
    return low, f"{span}; lower end taken", "capture-table, table 2.3"


def _bound(hood: Hood, place: Place, velocity: float, planes: Planes) -> Bound:
    """Certain limits of the flow. Parts of the opening are at least `near` and at most `far` from the source."""
    ahead, aside = place.distance * math.cos(place.off_axis), place.distance * math.sin(place.off_axis)
    ahead = 0.0 if abs(ahead) <= SLACK * place.distance else ahead  # in the plane of the opening
    half = half_size(hood)
    near, far = math.hypot(ahead, max(0.0, aside - half)), math.hypot(ahead, aside + half)
    least = velocity * float(centreline.far_field_least_flow(near, planes.image_offsets))
    most = None
    if ahead > 0 and not planes.blocked:
        most = velocity * float(centreline.far_field_most_flow(ahead, aside + half))
    if looks_away(place.off_axis):
        why = f"it lies {math.degrees(place.off_axis):.0f} degrees off the hood's axis, where no equation holds"
    else:
        why = "it lies outside the equations' range"
    lines = _bound_lines(velocity, (near, ahead, far), planes.image_offsets, least, most)
    return Bound(least, most, why, FAR_FIELD, lines)


def _bound_lines(
    velocity: float, lengths: tuple[float, float, float], offsets: tuple[float, ...], least: float, most: float | None
) -> tuple[Line, ...]:
    near, ahead, far = (digits(length) for length in lengths)
    alone = velocity * float(centreline.far_field_least_flow(lengths[0]))
    formula = "Q at least 2 pi x² V, x to the nearest part of the opening"
    filled = f"2 pi x {near}² x {digits(velocity)}"
    if offsets and least > 0:
        aside = ", ".join(f"{digits(offset, 3)} m" for offset in offsets)
        formula += f"; divided by what the mirror images in surfaces alongside add ({aside} aside)"
        filled += f" / {digits(alone / least)}"
    lowest = Line(formula, f"{filled} = {digits(least)} m3/s", FAR_FIELD)
    if most is None:
        return (lowest,)
    filled = f"4 pi x {far}³ x {digits(velocity)} / {ahead} = {digits(most)} m3/s"
    return lowest, Line("Q at most 4 pi s³ V / X, s to the farthest part of the opening", filled, FAR_FIELD)
