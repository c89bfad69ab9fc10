"""Lateral exhaust of an open tank: a hood along one side of it, by the withdrawn table of the United States.

The table knows the tank's class and its width over its length, no distance. A tank between two hoods that face each
other is shared at its middle: each hood draws over its own half.
"""

import math
from typing import NamedTuple

from hoodwright import hoods as h
from hoodwright.tables import load_table
from hoodwright.tasks.assessment import LawNeed, Line
from hoodwright.tasks.capturing.table_laws import TABLE
from hoodwright.tasks.hood_shapes import frame_of
from hoodwright.tasks.lines import digits
from hoodwright.tasks.shapes import within
from hoodwright.units import show
from hoodwright.workplace.model import CapturingHood, Source, Tank, Workplace

CITED = "us-1910-94-d, tables G-14 and G-15, from memory"
EQUATION = f"{TABLE}lateral exhaust of a tank"
SQUARE = math.cos(math.radians(10))  # how exactly the hood looks across the tank
OVERLAP = 0.02  # m, that the opening may reach in over the liquid
SET_BACK = 0.3  # m, from the opening to the liquid's edge; it counts as width of the tank
HIGHEST = 0.3  # m, from the liquid to the middle of the opening
LONG_ENOUGH = 0.9  # of the tank's side


class Across(NamedTuple):
    """A tank as the hood at its side sees it, in metres: the width it draws over, and the length along it."""

    width: float
    length: float
    set_back: float

    @property
    def ratio(self) -> float:
        """Width over length."""
        return self.width / self.length


def has_row(tank: Tank) -> bool:
    """Whether the table asks for lateral exhaust; the mildest classes need general ventilation only."""
    return tank.name in load_table("tank_control_velocity").columns["class"]


def tank_law(hood: CapturingHood, source: Source) -> LawNeed | None:
    """What the table asks of a hood along the side of a tank; None without one, and where it does not hold."""
    if source.tank is None or tank_trouble(hood, source, "SI"):
        return None
    tank, size = source.tank, across(hood, source)
    flow = h.lateral_exhaust_flow(tank.name, size.length, size.width, against_wall=tank.baffled)
    rate = flow / (size.width * size.length)
    speed = h.tank_control_velocity(tank.name) / h.tanks.FPM
    where = "against a wall or baffle" if tank.baffled else "standing free"
    told = f"class {tank.name}, {speed:.0f} fpm, W / L = {digits(size.ratio, 3)}, {where}"
    filled = f"{told}: {digits(rate)} x {digits(size.width)} x {digits(size.length)} = {digits(flow)} m3/s"
    reach = f"up to a width of 2 lengths, here {digits(size.ratio, 3)}; an undisturbed place"
    formula = f"Q = q W L, q of the table: {rate / h.tanks.CFM_A_SQUARE_FOOT:.0f} cfm for each square foot"
    return LawNeed(EQUATION, flow, Line(formula, filled, CITED), reach)


def tank_trouble(hood: CapturingHood, source: Source, system: str) -> str | None:
    """Why the table does not hold for a hood at a tank; None where it does, and for a source that is no tank."""
    if source.tank is None or hood.form is not None:
        return None
    if not has_row(source.tank):
        return f"class {source.tank.name} asks for general ventilation only; the table has no lateral exhaust for it"
    if max(abs(hood.facing[0]), abs(hood.facing[1])) < SQUARE:
        return f"the table is for a hood that looks level and square across the {source.name}"
    size = across(hood, source)
    if not -OVERLAP <= size.set_back <= SET_BACK or not _low(hood, source):
        far = show(SET_BACK, "length", system)
        return f"the table is for a hood at the edge of the {source.name}, within {far} of its side and its surface"
    if not _covers(hood, source, size.length):
        return f"the table is for a hood as long as the side of the {source.name}: lengthen it, or use several"
    if not within(size.ratio, h.tanks.WIDEST):
        return (
            f"the {source.name} is {digits(size.ratio, 2)} times as wide as it is long, seen from the hood; the table "
            "ends at 2: draw along its longer sides"
        )
    return None


def across(hood: CapturingHood, source: Source) -> Across:
    """Width from the opening to the far edge, and length of the side, for a hood that looks along x or y."""
    axis = 0 if abs(hood.facing[0]) > abs(hood.facing[1]) else 1
    sign = math.copysign(1.0, hood.facing[axis])
    edges = sorted(sign * (point[axis] - hood.at[axis]) for point in source.points)
    return Across(edges[-1], source.plan[1 - axis], edges[0])


def far_middle(hood: CapturingHood, source: Source) -> tuple[float, float, float]:
    """Middle of the liquid's far edge, where the laws that know a distance are asked."""
    axis = 0 if abs(hood.facing[0]) > abs(hood.facing[1]) else 1
    place = list(source.centre)
    place[axis] = max((point[axis] for point in source.points), key=lambda at: abs(at - hood.at[axis]))
    return place[0], place[1], place[2]


def own_part(hood: CapturingHood, source: Source, workplace: Workplace) -> Source:
    """The part of a tank that is the hood's own: the near half, where another hood draws from the other side."""
    if source.tank is None or source.box is None or not _faced(hood, source, workplace):
        return source
    axis = 0 if abs(hood.facing[0]) > abs(hood.facing[1]) else 1
    low, high = (list(corner) for corner in (map(min, *source.box), map(max, *source.box)))
    (high if hood.facing[axis] > 0 else low)[axis] = source.centre[axis]
    return source.model_copy(update={"box": (tuple(low), tuple(high))})


def _faced(hood: CapturingHood, source: Source, workplace: Workplace) -> bool:
    """Whether another hood for the same tank faces this one from its other side, both looking square across it."""
    if tank_trouble(hood, source, "SI"):
        return False
    return any(
        isinstance(other, CapturingHood)
        and source.name in other.serves
        and sum(a * b for a, b in zip(hood.facing, other.facing, strict=True)) < -SQUARE
        and tank_trouble(other, source, "SI") is None
        for other in workplace.hoods
        if other.name != hood.name
    )


def _low(hood: CapturingHood, source: Source) -> bool:
    surface = max(point[2] for point in source.points)
    return -OVERLAP <= hood.at[2] - surface <= HIGHEST


def _covers(hood: CapturingHood, source: Source, length: float) -> bool:
    """Whether the opening runs along nearly all of the tank's side."""
    first, second = frame_of(hood)
    along = 1 if abs(hood.facing[0]) > abs(hood.facing[1]) else 0
    half = sum(abs(way[along]) * side / 2 for way, side in zip((first, second), hood.opening.sides, strict=True))
    low, high = (pick(point[along] for point in source.points) for pick in (min, max))
    shared = min(high, hood.at[along] + half) - max(low, hood.at[along] - half)
    return within(LONG_ENOUGH * length, shared)
