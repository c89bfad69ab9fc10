"""The plume of hot work at the height of its canopy: how much heat drives it, how wide it is, how fast it rises."""

import math
from dataclasses import dataclass

from hoodwright import hoods
from hoodwright.tasks.receiving.canopy.work import Work
from hoodwright.workplace.model import Heat, Workplace
from hoodwright.workplace.moisture import pressure_of

LINE_ASPECT = 5.0  # from which a long source sends up a sheet, not a column
CALM = 0.25  # m/s, half the usual face velocity; in more draught the face velocity is doubled


@dataclass(frozen=True)
class Plume:
    """Hot work and its plume where it meets the canopy; lengths in metres.

    `excess` is of the surface over the air, None where only the heat is known. `width` is across the shorter side.
    """

    heat: float
    excess: float | None
    height: float
    origin: float
    width: float
    long_width: float
    area: float
    velocity: float
    face_velocity: float
    p_abs: float

    @property
    def distance(self) -> float:
        """From the virtual origin."""
        return self.origin + self.height


def convective_heat(heat: Heat, workplace: Workplace) -> float:
    """Heat that the air takes up, stated or from the temperature of the surface; RangeError where none holds."""
    if heat.convective is not None:
        return heat.convective
    if heat.boils_off is not None:
        return float(hoods.heat_of_steam(heat.boils_off))
    assert heat.temperature is not None
    hot, air, p_abs = heat.temperature, workplace.air.temperature, pressure_of(workplace.air)
    length, width = heat.sides
    if heat.form == "cylinder":
        return float(hoods.heat_of_level_cylinder(length, width, hot, air, p_abs))
    area = math.pi / 4 * length**2 if heat.is_round else length * width
    rim = math.pi * length if heat.is_round else 2 * (length + width)
    if heat.form == "body":
        return float(hoods.heat_of_body(area, rim, heat.height, hot, air, p_abs))
    return float(hoods.heat_of_face_up(area, rim, hot, air, p_abs))


def plume_of(heat: Heat, work: Work, height: float, workplace: Workplace) -> Plume:
    """The plume where it meets a canopy at a height above the work."""
    q = convective_heat(heat, workplace)
    origin = float(hoods.high_canopy_origin(work.short_side))
    width = float(hoods.high_canopy_plume_width(origin + height))
    width = max(width, work.short_side)
    long_width = width + work.long_side - work.short_side
    area = math.pi / 4 * width**2 if work.is_round else width * long_width
    draught = workplace.room.draught
    gust = draught.speed + draught.wander if draught else 0.0
    face = hoods.receiving.FACE_VELOCITY * (2.0 if gust > CALM else 1.0)
    excess = None if heat.temperature is None else heat.temperature - workplace.air.temperature
    rise = _rise(q, excess, work, origin + height, area)
    return Plume(q, excess, height, origin, width, long_width, area, rise, face, pressure_of(workplace.air))


def is_low(work: Work, height: float) -> bool:
    """Whether the canopy hangs so close that the equations of low canopies hold."""
    return height <= float(hoods.low_canopy_reach(work.short_side)) * (1 + 1e-9)


def is_sheet(work: Work) -> bool:
    """Whether the source is so long that its plume is a sheet."""
    return work.long_side >= LINE_ASPECT * work.short_side


def _rise(q: float, excess: float | None, work: Work, distance: float, area: float) -> float:
    """Mean velocity of the plume at the canopy: by the equation of high canopies, or from its flow and area."""
    if excess is not None:
        return float(hoods.high_canopy_plume_velocity(work.area, excess, distance))
    if is_sheet(work):
        return float(hoods.room_line_plume_flow(q, work.long_side, distance)) / area
    return float(hoods.room_plume_flow(q, distance)) / area
