"""How much air a capturing hood needs for each source it serves, by every published equation that holds there."""

import math
from dataclasses import dataclass, replace

import numpy as np

from hoodwright.hoods import SLOT_LARGEST_SIDE_RATIO, centreline, line_sink_aside
from hoodwright.ranges import SLACK
from hoodwright.tasks.assessment import Bound, LawNeed, Line, SourceNeed
from hoodwright.tasks.capturing.form_reach import out_of_form
from hoodwright.tasks.capturing.laws import laws_at
from hoodwright.tasks.capturing.planes import ALONG, Planes, foot_of, planes_about, rests_on
from hoodwright.tasks.capturing.push_pull import pushed
from hoodwright.tasks.capturing.rest_laws import rest_laws_at
from hoodwright.tasks.capturing.slot_laws import slot_laws_at
from hoodwright.tasks.capturing.table_laws import by_table, form_law, welding_laws
from hoodwright.tasks.capturing.tank_laws import far_middle, own_part, tank_law
from hoodwright.tasks.hood_shapes import frame_of
from hoodwright.tasks.lines import digits
from hoodwright.tasks.release import capture_velocity_of
from hoodwright.tasks.shapes import half_size, within
from hoodwright.units import show
from hoodwright.workplace.model import CapturingHood, Hood, Source, Workplace

Xyz = tuple[float, float, float]

OFF_AXIS_LIMIT = math.radians(30)
FAR_FIELD = "potential-flow, far-field bound"


@dataclass(frozen=True)
class Place:
    """Where a source lies as its hood sees it: straight distance, and angle from the axis [rad].

    Of a slot both are square to it, and `aside` is how far along the slot from its middle.
    """

    distance: float
    off_axis: float
    aside: float = 0.0


def slot_axis(hood: Hood) -> Xyz | None:
    """Direction of the long side, where the opening is so long that it draws like a line; else None."""
    width, height = hood.opening.sides
    if hood.opening.is_round or min(width, height) > SLOT_LARGEST_SIDE_RATIO * max(width, height) * (1 - SLACK):
        return None if not hood.opening.is_slot else frame_of(hood)[0]
    return frame_of(hood)[0 if width >= height else 1]


def place_of(hood: Hood, point: Xyz) -> Place:
    """Distance from the centre of the opening to a point, and the angle between that line and the axis."""
    line = np.subtract(point, hood.at)
    aside = 0.0
    axis = slot_axis(hood)
    if axis is not None:
        aside = round(float(np.dot(line, axis)), 9)
        line = line - aside * np.asarray(axis)
    distance = float(np.linalg.norm(line))
    if distance == 0:
        return Place(0.0, 0.0, abs(aside))
    cosine = float(np.dot(line, hood.facing)) / distance
    return Place(distance, math.acos(max(-1.0, min(1.0, cosine))), abs(aside))


def farthest_place(hood: Hood, source: Source) -> tuple[Xyz, Place]:
    """The point of a source that asks most of the hood, and where it lies: the farthest, or off the end of a slot."""
    length = max(hood.opening.sides) if slot_axis(hood) is not None else None

    def asked(place: Place) -> float:
        if length is None or place.distance == 0:
            return place.distance
        drawn = float(line_sink_aside(place.distance, place.aside, length))
        return 1 / drawn if drawn > 0 else math.inf

    places = ((point, place_of(hood, point)) for point in source.points)
    return max(places, key=lambda seen: (round(asked(seen[1]), 9), seen[1].distance, seen[1].aside))


def _at(hood: Hood, point: Xyz) -> tuple[Xyz, Place]:
    return point, place_of(hood, point)


def looks_away(off_axis: float) -> bool:
    """Whether a source lies so far off the axis that no equation holds."""
    return not within(off_axis, OFF_AXIS_LIMIT)


def need_of(
    hood: CapturingHood, source: Source, workplace: Workplace, design_flow: float | None, system: str
) -> SourceNeed:
    """What a source asks of a capturing hood, judged at its farthest point; the velocity there at the design flow."""
    whole, source = source, own_part(hood, source, workplace)
    tank = tank_law(hood, source)
    point, place = farthest_place(hood, source) if tank is None else _at(hood, far_middle(hood, source))
    velocity, basis, basis_source = capture_velocity_of(source, workplace, system)
    if hood.form is not None:
        basis += "; the table of its form does not ask for it"
    bound = _bound(hood, place, velocity, planes_about(hood, point, workplace))
    out = out_of_form(hood, source, system)
    laws = (*([tank] if tank else []), *(() if out else _laws(hood, source, workplace, place, velocity, bound.least)))
    end = f"the {'middle' if source is not whole else 'far end'} of" if len(source.points) > 1 else ""
    need = SourceNeed(
        source=source.name,
        distance=place.distance,
        off_axis=place.off_axis,
        capture_velocity=velocity,
        basis=basis,
        basis_source=basis_source,
        laws=laws,
        bound=bound,
        velocity=None,
        place=f"{show(place.distance, 'length', system)} from {end}".rstrip(),
        untold=out or (bound.why if looks_away(place.off_axis) and not laws else ""),
    )
    return pushed(need, hood, source, workplace) or _with_velocity(need, design_flow)


def _laws(
    hood: CapturingHood, source: Source, workplace: Workplace, place: Place, velocity: float, least: float
) -> tuple[LawNeed, ...]:
    """Every equation that holds at a place: a form has its table alone, and what the axis does not face has none.

    A law of slots that asks less than the `least` flow that is certain has left its range.
    """
    table = form_law(hood, source, workplace)
    if table:
        return (table,)
    if looks_away(place.off_axis):
        return ()
    rests, axis = rests_on(hood, source.points, workplace), slot_axis(hood)
    if axis is not None:
        lying = tuple(rest for rest in rests if abs(float(np.dot(rest.up, axis))) < ALONG)[:1]
        found = slot_laws_at(hood, place.distance, place.aside, velocity, lying)
        return tuple(law for law in found if law.flow >= least * (1 - SLACK))
    if rests:
        foot = foot_of(hood, rests)
        distance = max(place.distance, *(math.dist(foot, point) for point in source.points))
        return tuple(rest_laws_at(hood, distance, velocity, rests))
    return (*laws_at(hood, place.distance, velocity), *welding_laws(hood, source, place.distance))


def _with_velocity(need: SourceNeed, design_flow: float | None) -> SourceNeed:
    """The need with the velocity that the design flow brings to the source; a table tells none."""
    asked = max((law.flow for law in need.laws if not by_table(law)), default=0.0 if need.laws else need.flow)
    if design_flow is None or asked == 0:
        return need
    reached = need.capture_velocity * design_flow / asked
    return replace(need, velocity=reached) if need.laws else replace(need, velocity_at_most=reached)


def _bound(hood: CapturingHood, place: Place, velocity: float, planes: Planes) -> Bound:
    """Certain limits of the flow. Parts of the opening are at least `near` and at most `far` from the source."""
    ahead, aside = place.distance * math.cos(place.off_axis), place.distance * math.sin(place.off_axis)
    ahead = 0.0 if abs(ahead) <= SLACK * place.distance else ahead  # in the plane of the opening
    half = half_size(hood.opening)
    near, far = math.hypot(ahead, max(0.0, aside - half)), math.hypot(ahead, aside + half + place.aside)
    least = velocity * float(centreline.far_field_least_flow(near, planes.image_offsets))
    most = None
    if ahead > 0 and not planes.blocked:
        most = velocity * float(centreline.far_field_most_flow(ahead, aside + half + place.aside))
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
