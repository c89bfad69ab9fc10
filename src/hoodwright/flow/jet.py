"""A stream that leaves a source: a jet from a nozzle, warm air from a hot face, or both in one.

The stream is followed along its bent path by what it carries: volume, momentum and buoyancy. It takes in air; how much
depends on whether its momentum (a jet) or its heat (a plume) keeps it going. The profile is a bell. Valid in still or
slowly moving air, without layers of warm air and without a plate in its way.
"""

from dataclasses import dataclass
from math import pi, sqrt

import numpy as np

from hoodwright.errors import InputError
from hoodwright.kernels.jet_path import COLUMNS, follow_jet
from hoodwright.kernels.moving import BOX, move
from hoodwright.ranges import gas_temperature, not_above, not_negative, numbers, positive, within

GRAVITY = 9.81  # m/s2
HEAT_CAPACITY = 1005.0  # J/(kg K), of air
JET_ENTRAINMENT, PLUME_ENTRAINMENT, SIDE_ENTRAINMENT = 0.055, 0.085, 0.5  # of a bell; of side wind, of an even disc
HEAT_WIDTH = 1.16  # how much wider the bell of the heat is than that of the speed
HEAT_SHARE = (1 + HEAT_WIDTH**2) / 2  # by which buoyancy acts more than in an even stream
CORE = 1 / (2 * sqrt(2) * JET_ENTRAINMENT)  # 6.4 diameters: so far the axis of a jet keeps its speed
# Turbulence over the speed on the axis: smoke then spreads 1.2 times as wide as the speed, as measured in free jets.
# Not fitted to captured fractions.
JET_UNREST = 0.27
ORIGIN_DEPTH = 1.9  # diameters below a hot face: where its plume seems to begin
LONGEST_PATH, MOST_STATIONS, WORK = 12.0, 1500, (7, 16)  # m
SLOWEST, FASTEST, HOTTEST = 1e-3, 100.0, 2000.0  # m/s, m/s, K
LEVEL = 1e-9


@dataclass(frozen=True)
class Jet:
    """A stream where it begins: place, direction, flow and speed as air of the room, buoyancy and core."""

    place: tuple[float, float, float]
    direction: tuple[float, float, float]
    flow: float  # m3/s
    speed: float  # m/s: momentum flow over flow
    buoyancy: float = 0.0  # m4/s3
    core: float = 0.0  # m: length over which the bell forms; 0 for a plume
    radius: float = 0.0  # m: of the opening or the hot face, over which particles start
    width: float = 0.0  # m: length of a sheet, such as spills over an edge: it takes in air along all of it

    @property
    def row(self) -> np.ndarray:
        """What a kernel takes: place, flow, momentum, core, buoyancy, width."""
        momentum = self.flow * self.speed * np.asarray(self.direction)
        return np.array([*self.place, self.flow, *momentum, self.core, self.buoyancy, self.width])


@dataclass(frozen=True)
class JetPath:
    """The path of a stream, station by station: places, bell radius, speed above the air's on the axis, flow."""

    places: np.ndarray  # (n, 3) m
    radius: np.ndarray  # (n,) m: at which the speed has fallen to 1/e
    excess: np.ndarray  # (n, 3) m/s
    flow: np.ndarray  # (n,) m3/s
    direction: np.ndarray  # (n, 3)
    inflow: np.ndarray  # (n,) speed at which air is drawn to its rim, over that on the axis
    spread: np.ndarray  # (n,) by which the radius grows along the path
    ended: str  # "hood", "wall", "edge" of the computed box, or "spent"

    @property
    def axis_speed(self) -> np.ndarray:
        """Speed on the axis above that of the air around [m/s]."""
        return np.linalg.norm(self.excess, axis=1)

    @property
    def travelled(self) -> np.ndarray:
        """Length of the path up to each station [m]."""
        return np.concatenate([[0.0], np.cumsum(np.linalg.norm(np.diff(self.places, axis=0), axis=1))])


def nozzle_jet(place, direction, area, speed, temperature, air_temperature):
    """Jet from an opening, perhaps of warm or cold air.

    Parameters
    ----------
    place : three floats [m]
        Middle of the opening.
    direction : three floats, of any length [1]
    area : float [m2]
    speed : float [m/s]
        Mean speed in the opening.
    temperature, air_temperature : float [K]
        Of the jet and of the room.

    Returns
    -------
    jet : Jet
        Flow and momentum as those of room air with the same mass [m3/s, m4/s2].

    Valid: area above 0, 0.001 to 100 m/s, 150 to 2000 K; else RangeError is raised. A gas of about the density of air.
    Source: [plume-theory, definition]
    """
    v = float(within("speed of the release", speed, SLOWEST, FASTEST, "m/s", "; give the speed in the opening"))
    ratio = float(gas_temperature(air_temperature, "air temperature") / gas_temperature(temperature, "temperature"))
    a = float(positive("area of the opening", area, "m2"))
    flow = a * v * ratio
    radius = sqrt(a / pi)
    buoyancy = GRAVITY * a * v * (1 - ratio)
    return Jet(_point(place), _unit(direction), flow, v, buoyancy, CORE * 2 * radius * sqrt(ratio), radius)


def heat_plume(place, area, heat, air_temperature, density):
    """Warm air above a hot face, as if it came from a point 1.9 diameters below.

    Parameters
    ----------
    place : three floats [m]
        Middle of the face.
    area : float [m2]
    heat : float [W]
        The convective part alone.
    air_temperature : float [K]
    density : float [kg/m3]
        Of the air around.

    Returns
    -------
    jet : Jet
        Flow and speed at the face [m3/s, m/s].

    Valid: all above 0, 150 to 2000 K, up to 1 MW; else RangeError is raised. Above flames, not in them.
    Source: [plume-theory, similarity solution; room-plume, virtual origin of a disc]
    """
    size = float(positive("area of the hot face", area, "m2"))
    warm = positive("convective heat", heat, "W")
    warm = float(not_above("convective heat", warm, 1e6, "W", ", the limit of this plume; give watts, not milliwatts"))
    air = float(gas_temperature(air_temperature, "air temperature"))
    buoyancy = GRAVITY * warm / (float(positive("density", density, "kg/m3")) * HEAT_CAPACITY * air)
    depth = ORIGIN_DEPTH * 2 * sqrt(size / pi)
    flow = plume_constant() * np.cbrt(buoyancy) * depth ** (5 / 3)
    even = sqrt(2) * PLUME_ENTRAINMENT
    speed = flow / (pi * (6 * even * depth / 5) ** 2)
    return Jet(_point(place), (0.0, 0.0, 1.0), float(flow), float(speed), buoyancy, 0.0, sqrt(size / pi))


def spill_sheet(place, width, flow, heat, air_temperature, density):
    """Warm air that spills over an edge and rises free on both sides, such as from a furnace door.

    Parameters
    ----------
    place : three floats [m]
        Middle of the edge.
    width : float [m]
        Of the edge.
    flow : float [m3/s]
        Of warm air over the edge, as air of the room with the same mass.
    heat : float [W]
        The convective part alone.
    air_temperature : float [K]
    density : float [kg/m3]
        Of the air around.

    Returns
    -------
    jet : Jet
        Rising at the speed that its heat keeps up in a sheet [m3/s, m/s].

    Valid: all above 0, 150 to 2000 K; else RangeError is raised. One that clings to a wall carries less.
    Source: [plume-theory, balance of mass, momentum and buoyancy]
    """
    w, q = float(positive("width of the edge", width, "m")), float(positive("flow over the edge", flow, "m3/s"))
    air = float(gas_temperature(air_temperature, "air temperature"))
    warm = float(positive("convective heat", heat, "W")) / float(positive("density", density, "kg/m3"))
    buoyancy = GRAVITY * warm / (HEAT_CAPACITY * air)
    speed = float(np.cbrt(buoyancy / w * HEAT_SHARE / (2 * sqrt(2) * PLUME_ENTRAINMENT)))
    return Jet(_point(place), (0.0, 0.0, 1.0), q, speed, buoyancy, 0.0, sqrt(q / speed / pi), w)


def supply_jet(place, direction, area, flow, free_share):
    """Jet of room air from a supply grille, for the draught that it makes at a hood.

    Parameters
    ----------
    place : three floats [m]
    direction : three floats, of any length [1]
    area : float [m2]
        Of the grille as it is seen.
    flow : float [m3/s]
    free_share : float [1]
        Open share of its area: the air is that much faster.

    Returns
    -------
    jet : Jet
        Its momentum is that of the faster air [m3/s, m/s].

    Valid: all above 0, free share up to 1, 0.001 to 100 m/s; else RangeError is raised. Not along a wall or ceiling.
    Source: [plume-theory, definition]
    """
    share = not_above(
        "free share", positive("free share", free_share, ""), 1.0, "", ", all of the grille; give a share"
    )
    a = float(positive("area of the grille", area, "m2") * share)
    speed = float(positive("flow", flow, "m3/s")) / a
    return nozzle_jet(place, direction, a, speed, 293.15, 293.15)


def plume_constant():
    """Constant c of the flow of this plume: c B^(1/3) z^(5/3), with the heat's wider bell.

    Returns
    -------
    constant : float [1]

    Valid: always; air little warmer than the room.
    Source: [plume-theory, similarity solution]
    """
    even = sqrt(2) * PLUME_ENTRAINMENT
    return float(6 * even / 5 * np.cbrt(0.9 * even * HEAT_SHARE) * pi ** (2 / 3))


def free_jet_velocity(distance, area, speed):
    """Speed on the axis of a jet in still air: that of the opening in the core, then 6.4 d / x of it.

    Parameters
    ----------
    distance : float or array [m]
        From the opening.
    area : float or array, broadcast with `distance` [m2]
    speed : float or array, broadcast with the others [m/s]
        In the opening.

    Returns
    -------
    velocity : broadcast shape [m/s]

    Valid: distance of 0 or more, area and speed above 0; else RangeError is raised. Air of the room, far from walls.
    Source: [plume-theory, momentum of a bell-shaped jet]
    """
    d = np.sqrt(4 * positive("area of the opening", area, "m2") / pi)
    away = not_negative("distance", distance, "m") / d
    return positive("speed in the opening", speed, "m/s") * np.minimum(1.0, CORE / np.maximum(away, 1e-12))


def free_jet_at(jet, places):
    """Velocity of a straight jet in still air at places, and its turbulence there: a bell of constant momentum.

    Parameters
    ----------
    jet : Jet
        Its buoyancy and width are left out.
    places : array (..., 3) [m]

    Returns
    -------
    velocity : array (..., 3) [m/s]
        None behind the opening.
    turbulence : array (...) [m/s]
        Standard deviation in each direction.

    Valid: air of the room, far from walls and plates; else it is too fast on the axis, or reaches too short.
    Source: [plume-theory, momentum of a bell-shaped jet]
    """
    away = numbers("places", places) - np.asarray(jet.place)
    ahead = away @ np.asarray(jet.direction)
    aside = np.linalg.norm(away - ahead[..., None] * np.asarray(jet.direction), axis=-1)
    length = CORE * 2 * sqrt(jet.flow / jet.speed / pi)
    share = np.minimum(1.0, length / np.maximum(ahead, 1e-12)) * (ahead >= 0)
    square = (aside / (2 * JET_ENTRAINMENT * np.maximum(ahead, length))) ** 2
    speed = jet.speed * share * np.exp(-square)
    return speed[..., None] * np.asarray(jet.direction), JET_UNREST * jet.speed * share * np.exp(-square / 2)


def jet_laws(pressure=True):
    """The constants that a stream obeys, in the order the kernel takes them.

    Parameters
    ----------
    pressure : bool
        Whether the pressure of the moving air around acts on it.

    Returns
    -------
    laws : array (8,) [1, and lengths in m]

    Valid: always.
    Source: [plume-theory, entrainment]
    """
    laws = [JET_ENTRAINMENT, PLUME_ENTRAINMENT, SIDE_ENTRAINMENT, HEAT_SHARE, 0.0, float(pressure), LONGEST_PATH, 0.0]
    return np.array(laws)


def follow(arrays, weights, jet, pressure=True):
    """Follow a stream through moving air, until a wall, a hood, the edge of the grid or its end.

    Parameters
    ----------
    arrays : tuple of arrays [m, m/s]
        Of the computed air: `bases.arrays`.
    weights : array (n_bases,) [m3/s, m/s]
        How much of each basis flows: `bases.weights(flows, draught)`.
    jet : Jet
    pressure : bool
        Whether the pressure of the air around acts on it; without it a stream beside a hood bends too little.

    Returns
    -------
    path : JetPath [m, m/s, m3/s]

    Valid: a jet that begins in open air; else InputError is raised. Air around by a flow without friction.
    Source: [plume-theory, balance of mass, momentum and buoyancy]
    """
    laws, row, room = jet_laws(pressure), jet.row, np.empty((MOST_STATIONS, COLUMNS))
    laws[4], laws[7] = row[8], row[9]
    n = follow_jet(
        arrays, np.asarray(weights, np.float32), row[:7].copy(), laws, row[7], LONGEST_PATH, np.empty(WORK), room
    )
    if n < 2:
        raise InputError(f"the stream at {_told(jet.place)} meets a wall at once; move it into open air or turn it")
    room = room[:n]
    columns = (room[:, :3], room[:, 3], room[:, 4:7], room[:, 7], room[:, 8:11], room[:, 11], room[:, 12])
    return JetPath(*columns, _ended(arrays, room[-1]))


def _ended(arrays, last) -> str:
    """What a stream meets next after its last station."""
    ahead = max(float(last[3]), 1e-3) * last[8:11]
    *_, back_x, back_y, back_z, met = move(arrays, *last[:3], *ahead)
    if met < 0:
        return "hood"
    if min(back_x, back_y, back_z) < 0:
        return "wall"
    return "edge" if met == BOX else "spent"


def _point(place) -> tuple[float, float, float]:
    x, y, z = (float(p) for p in numbers("place of the release", place))
    return x, y, z


def _unit(direction) -> tuple[float, float, float]:
    way = numbers("direction of the release", direction)
    length = float(np.linalg.norm(way))
    if length < LEVEL:
        raise InputError(
            "direction of the release: all three parts are 0; give where the stream goes, such as [0, 0, 1]"
        )
    x, y, z = (float(p) for p in way / length)
    return x, y, z


def _told(place) -> str:
    return "(" + ", ".join(f"{p:.3g}" for p in place) + ") m"
