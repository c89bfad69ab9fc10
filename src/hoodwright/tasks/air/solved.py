"""The solved air round one hood: its scene, its bases, the flows in it, and the plan that particles follow."""

import math
from dataclasses import dataclass, replace

import numpy as np

from hoodwright.flow import Bases, Plan, Resolution, Scene, escape_radius_for, solve, solve_near
from hoodwright.flow.grids.choose import box_round
from hoodwright.jobs import Progress
from hoodwright.tasks.air.hoods import walls_of
from hoodwright.tasks.air.scene import felt_from, group_of, scene_of
from hoodwright.tasks.assess import design_flow
from hoodwright.tasks.hood_shapes import Xyz, body_of
from hoodwright.tasks.shapes import half_size
from hoodwright.workplace.model import EnclosingHood, Hood, Source, Workplace

CELLS_ACROSS = 8
ALWAYS_IN = 0.4  # m from an opening, or so many of its longer sides: such a source lies in every box,
SIDES_IN = 6.0  # and so does its escape radius
RASTER = 0.5  # m: of the places that widen the box
LEAST_REACH = 0.8  # m of a box within a whole room, beyond the openings,
NEAR_SIDES, FAR_SIDES = 2.0, 6.0  # and so many longer sides of the greatest: at least, and where it is small
SMALL = 1.5  # m
PLAN = Plan()


@dataclass(frozen=True, eq=False)
class SolvedAir:
    """The air round a hood. `flows` holds every hood and opening of the room that the bases know."""

    group: tuple[Hood, ...]
    scene: Scene
    bases: Bases
    flows: dict[str, float]  # m3/s: drawn by hoods, brought by openings of the room
    notes: tuple[str, ...]

    def with_flows(self, flows: dict[str, float]) -> dict[str, float]:
        """The flows of this air, with some of them changed."""
        return self.flows | {name: flow for name, flow in flows.items() if name in self.flows}


def solved_air(
    hood: Hood, workplace: Workplace, points: tuple[Xyz, ...], flows: dict[str, float], progress: Progress | None = None
) -> SolvedAir:
    """Solve for the air round a hood and its neighbours, with sources at some points.

    Hoods farther away that are felt, openings of the room, and the draught past a hood whose box would fill the room
    come in through the sides of a smaller box, by a coarse answer for the whole room.
    """
    group, beyond, watch = group_of(hood, workplace), felt_from(hood, workplace), watched(hood, points)
    scene, notes = scene_of(group, workplace, watch, beyond)
    wide, names = Resolution(cells_across=CELLS_ACROSS), tuple(one.name for one in group)
    near = replace(wide, reach=_reach(group, hood, watch))
    shut_out = _fills_the_room(scene, wide) and not _fills_the_room(scene, near, names)
    if beyond or scene.vents or shut_out:
        bases = solve_near(scene, names, near, progress)
    else:
        bases = solve(scene, wide, progress)
    inside = {mouth.name for mouth in scene.mouths}
    own = {name: flow for name, flow in flows.items() if name in inside} | vent_flows(workplace)
    return SolvedAir(group, scene, bases, own, (*notes, *bases.report.notes))


def plan_for(hood: Hood, source: Source, plan: Plan = PLAN) -> Plan:
    """The plan with the escape radius that this source asks: 1.5 times its distance, or half of the opening.

    Of an enclosure, whose outlet it is measured from, it takes in the whole inside.
    """
    if isinstance(hood, EnclosingHood):
        panels, outlet = body_of(hood)
        within = (hood.at, *(point for panel in panels for point in panel))
        far = max(math.dist(outlet, point) for point in (*source.points, *within))
    else:
        far = max(math.dist(hood.at, point) for point in source.points)
    reach = float(escape_radius_for(max(far, half_size(hood.opening))))
    return replace(plan, escape_radius=max(plan.escape_radius, reach))


def watched(hood: Hood, points: tuple[Xyz, ...]) -> tuple[Xyz, ...]:
    """Places that widen the box, on a coarse raster: a source that is dragged a little asks no new box."""
    ample = max(ALWAYS_IN, 0.0 if isinstance(hood, EnclosingHood) else SIDES_IN * max(hood.opening.sides))
    away = (point for point in points if math.dist(hood.at, point) > ample and not _within(hood, point))
    far = (tuple(RASTER * round(c / RASTER) for c in point) for point in away)
    return tuple(sorted({(x, y, z) for x, y, z in far}))


def _within(hood: Hood, point: Xyz) -> bool:
    """Whether a point lies in the upright box round an enclosure, which is solved for as a whole."""
    if not isinstance(hood, EnclosingHood):
        return False
    corners = np.concatenate([plate.corners() for plate in walls_of(hood)])
    return bool(np.all(corners.min(axis=0) <= point) and np.all(corners.max(axis=0) >= point))


def flows_of(workplace: Workplace, *, today: bool = False) -> dict[str, float]:
    """The flow of every hood: intended, else needed; with `today` the one read last, where there is one."""
    return {
        hood.name: hood.today.flow if today and hood.today is not None else design_flow(hood, workplace)
        for hood in workplace.hoods
    }


def vent_flows(workplace: Workplace) -> dict[str, float]:
    """What each opening of the room brings in, below zero for an extract; doors take what is left over."""
    return {one.name: one.flow_in for one in workplace.room.openings if one.flow_in is not None}


def _fills_the_room(scene: Scene, resolution: Resolution, names: tuple[str, ...] = ()) -> bool:
    """Whether a box would end at every wall, and so shut out the draught."""
    box = box_round(scene, resolution, names)
    return all(np.allclose(*ends) for ends in zip(box, scene.surroundings.bounds, strict=True))


def _reach(group: tuple[Hood, ...], hood: Hood, watch: tuple[Xyz, ...]) -> float:
    """How far a box within a whole room goes beyond the openings: past every escape radius, and no farther than needed.

    Its sides take the coarse answer, so they stand two longer sides off or more, six where those are short.
    """
    longest = max(max(one.opening.sides) for one in group)
    far = max((math.dist(hood.at, point) for point in watch), default=0.0)
    sides = min(FAR_SIDES * longest, max(NEAR_SIDES * longest, SMALL))
    return max(LEAST_REACH, sides, float(escape_radius_for(far)))
