"""Hints that change more than the place of a capturing hood: a plate beside it, a cabinet, suction on the tool."""

import math

import numpy as np

from hoodwright import hoods
from hoodwright.results import Hint, Quantity
from hoodwright.tasks.capturing.push_pull import by_push
from hoodwright.tasks.guide import entry
from hoodwright.tasks.hint_tools import Case, flow_needed, hint, rounded
from hoodwright.tasks.hood_shapes import Xyz, frame_of, plus
from hoodwright.tasks.release import grave_hazard
from hoodwright.tasks.shapes import area_of
from hoodwright.units import show
from hoodwright.workplace.model import CapturingHood, Source, Surface

ELBOW_ROOM = 0.1  # m on every side of the source, in a cabinet; ours
SMALLEST_FRONT = (0.4, 0.3)  # m, opening of a cabinet that hands can work through; ours
ON_THE_TOOL = {"extraction on the torch": "on-torch", "shroud on the tool": "on-tool grinder"}


def plate(case: Case) -> Hint | None:
    """A bench or a plate along the edge of the opening where it helps most; it mirrors the opening."""
    if not isinstance(case.hood, CapturingHood) or not case.worst.in_range or by_push(case.worst):
        return None
    flows = [flow for flow in (_flow_beside(case, one) for one in _plates(case, case.hood)) if flow is not None]
    if not flows or min(flows) >= case.worst.flow:
        return None
    flow = rounded(min(flows), "flow", case.system, math.ceil)
    text = (
        f"with a bench or a plate along one edge of its opening, out past the {case.worst.source}, "
        f"{show(flow, 'flow', case.system)} would be enough at the same place"
    )
    return hint(case, "plate", text, flow)


def cabinet(case: Case) -> Hint | None:
    """The source inside a cabinet with an open front: the air then has one way in."""
    source = case.workplace.source(case.worst.source)
    if case.worst.untold:
        return None
    grave = grave_hazard(source, case.workplace) is not None
    velocity = hoods.face_velocity_range("cabinet")[1 if grave else 0]
    width, height = _front(source)
    flow = float(hoods.enclosure_flow(width * height, velocity))
    if flow >= case.worst.flow:
        return None
    flow = rounded(flow, "flow", case.system, math.ceil)
    size = " by ".join(show(side, "length", case.system) for side in (width, height))
    text = (
        f"in a cabinet round the {source.name}, open {size} at the front, {show(flow, 'flow', case.system)} brings "
        f"{show(velocity, 'velocity', case.system)} through its opening"
    )
    return hint(case, "enclose", text, flow)


def on_the_tool(case: Case) -> Hint | None:
    """Suction on torch or tool, where the process guide names it for the source's process."""
    source = case.workplace.source(case.worst.source)
    choices = [choice.form for choice in entry(source.process).hoods] if source.process else []
    words = next((choice for choice in choices if choice in ON_THE_TOOL), None)
    wheel = source.wheel.diameter if source.wheel else None
    has_table = isinstance(case.hood, CapturingHood) and case.hood.form is not None
    if words is None or has_table or (words == "shroud on the tool" and wheel is None):
        return None
    end = 1 if grave_hazard(source, case.workplace) else 0
    flow = hoods.form_flow_range(ON_THE_TOOL[words], area_of(case.hood.opening), wheel or 1.0)[end]
    if flow >= case.worst.flow:
        return None
    flow = rounded(flow, "flow", case.system, math.ceil)
    text = (
        f"{words} itself takes {show(flow, 'flow', case.system)} instead, from a vacuum of its own, not from this fan"
    )
    return Hint("another hood", text, Quantity(flow, "flow"), None, Quantity(flow, "flow"))


def _plates(case: Case, hood: CapturingHood) -> tuple[Surface, ...]:
    """A plate along each of the four edges that hides no source, well past the farthest place that the hood serves."""
    across, up = frame_of(hood)
    w, h = (side / 2 for side in hood.opening.sides)
    points = [point for name in hood.serves for point in case.workplace.source(name).points]
    far = max(math.dist(hood.at, point) for point in points) + w + h
    edges = [(up, h, across), (_back(up), h, across), (across, w, up), (_back(across), w, up)]
    return tuple(
        _plate(plus(hood.at, (way, half), (beside, -far)), hood.facing, beside, far)
        for way, half, beside in edges
        if all(float(np.dot(np.subtract(point, hood.at), way)) <= half for point in points)
    )


def _back(way: Xyz) -> Xyz:
    return -way[0], -way[1], -way[2]


def _plate(corner: Xyz, facing: Xyz, beside: Xyz, far: float) -> Surface:
    ahead, along = (tuple(float(x) for x in np.asarray(way) * size) for way, size in ((facing, far), (beside, 2 * far)))
    return Surface.model_construct(name="plate", corner=corner, sides=(ahead, along))


def _flow_beside(case: Case, surface: Surface) -> float | None:
    surfaces = (*case.workplace.surfaces, surface)
    return flow_needed(case.hood, case.workplace.model_copy(update={"surfaces": surfaces}))


def _front(source: Source) -> tuple[float, float]:
    """Width and height of an open front: the source's extent with room for the hands."""
    low, high = (np.asarray(pick(np.asarray(source.points), axis=0)) for pick in (np.min, np.max))
    extent = high - low
    wide, tall = float(max(extent[0], extent[1])), float(extent[2])
    return max(SMALLEST_FRONT[0], wide + 2 * ELBOW_ROOM), max(SMALLEST_FRONT[1], tall + 2 * ELBOW_ROOM)
