"""Openings of an enclosure: how fast air goes in, what works against it, and where it would spill first."""

from dataclasses import dataclass

import numpy as np

from hoodwright.flow import Hole, Plate, free_jet_velocity
from hoodwright.hoods import buoyancy_flux, rouse_1952_axis_velocity
from hoodwright.tasks.air.hoods import MAIN, wall_names
from hoodwright.tasks.air.solved import SolvedAir
from hoodwright.tasks.assess import air_of
from hoodwright.tasks.assessment import OpeningAnswer
from hoodwright.tasks.hood_shapes import Xyz
from hoodwright.tasks.receiving.canopy.hot import convective_heat
from hoodwright.tasks.shapes import area_of
from hoodwright.units import show
from hoodwright.workplace.model import EnclosingHood, Hood, Source, Workplace

ALIKE = 0.01  # of the inward velocity: margins so near are one
WIDENS = 0.2  # of its way: how far a stream has spread to each side


@dataclass(frozen=True)
class OpeningInward:
    """One opening: inward velocity by flow over open area, and what works against it there.

    `computed` is the mean velocity in the computed air, where the opening has a place in the file.
    """

    name: str
    velocity: float  # m/s
    computed: float | None  # m/s
    draught: float  # m/s
    stream: float  # m/s, of what the source sends at it

    @property
    def least(self) -> float:
        """The lower of the two inward velocities [m/s]."""
        return self.velocity if self.computed is None else min(self.velocity, self.computed)

    @property
    def margin(self) -> float:
        """How much faster air goes in than anything works against it [m/s]."""
        return self.least - max(self.draught, self.stream)


def openings_inward(
    hood: Hood, source: Source, workplace: Workplace, air: SolvedAir, by_area: tuple[OpeningAnswer, ...]
) -> tuple[OpeningInward, ...]:
    """Every opening of an enclosure; none for other hoods.

    The computed air shares the flow among openings that have a place, so it tells nothing while another has none.
    """
    if not isinstance(hood, EnclosingHood):
        return ()
    holes = {hole.name: (plate, hole) for plate, hole in _holes(hood, air)}
    complete = set(holes) == {one.name for one in by_area}
    told = workplace.room.draught
    gust = told.speed + told.wander if told else 0.0
    found = []
    for one in by_area:
        place = holes[one.name][1].centre if one.name in holes else None
        size = max(holes[one.name][1].sides) if place else 0.0
        stream = _stream_at(source, place, size, workplace) if place else 0.0
        found.append(
            OpeningInward(
                one.name, one.velocity, _mean(hood, air, *holes[one.name]) if complete else None, gust, stream
            )
        )
    return tuple(found)


def spills_first(openings: tuple[OpeningInward, ...], system: str) -> str | None:
    """The opening with the least margin, in words; None where there are no openings."""
    if not openings:
        return None
    worst = min(openings, key=lambda one: one.margin)
    alike = len(openings) > 1 and max(one.margin for one in openings) - worst.margin < ALIKE * worst.least
    where = "all its openings alike" if alike else f"the {worst.name}"
    inward, against = (show(v, "velocity", system) for v in (worst.least, max(worst.draught, worst.stream)))
    if max(worst.draught, worst.stream) <= 0:
        return f"slowest at {where}: {inward} inward, and the file tells of nothing that works against it"
    what = "the stream of the source" if worst.stream > worst.draught else "the draught"
    head = "it would spill first at" if worst.margin > 0 else "it would spill at"
    return f"{head} {where}: {inward} inward against {against} of {what}"


def _holes(hood: EnclosingHood, air: SolvedAir) -> list[tuple[Plate, Hole]]:
    own = {MAIN, *(other.name for other in hood.other_openings)}
    return [(plate, hole) for plate in _walls(hood, air) for hole in plate.holes if hole.name in own]


def _walls(hood: EnclosingHood, air: SolvedAir) -> list[Plate]:
    return [plate for plate in air.scene.plates if plate.name in wall_names(hood)]


def _mean(hood: EnclosingHood, air: SolvedAir, plate: Plate, hole: Hole) -> float:
    """Mean velocity into the enclosure through a hole, at no draught [m/s]."""
    middle = np.mean(
        [p.corners().mean(axis=0) for p in air.scene.plates if p.name.startswith(f"{hood.name}, ")], axis=0
    )
    inward = float(np.sign(plate.normal @ (middle - np.asarray(hole.centre))))
    return inward * air.bases.field(air.flows).flux_through(plate, hole) / plate.hole_frame(hole).area


def _stream_at(source: Source, place: Xyz, size: float, workplace: Workplace) -> float:
    """Speed on the axis of the source's stream where it reaches an opening; 0 where it passes it by [m/s]."""
    stream = source.release
    way = np.array([0.0, 0.0, 1.0] if stream is None else stream.towards)
    to = np.asarray(place) - np.asarray(source.centre)
    along = float(to @ way)
    aside = float(np.linalg.norm(to - along * way))
    if along <= 0 or aside > size / 2 + WIDENS * along:
        return 0.0
    if stream is not None:
        return float(free_jet_velocity(along, area_of(stream.opening), stream.speed))
    if source.heat is None:
        return 0.0
    heat, air = convective_heat(source.heat, workplace), air_of(workplace.air)
    return float(rouse_1952_axis_velocity(buoyancy_flux(heat, air.temperature, air.density), along))
