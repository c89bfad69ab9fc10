"""A duct system as built: which air really flows, and at which pressures.

A `Run` is a stretch of one size, or a cleaner, a leak, a fan: whatever leads from one node to another. Nodes have
names. Where runs meet, a `Meeting` says by which law pressure is lost; without one the total pressure is the same.
"""

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from functools import cached_property

import numpy as np

from hoodwright.air import density, viscosity
from hoodwright.ducts.fan import STANDARD_DENSITY
from hoodwright.errors import InputError
from hoodwright.network import Branches, Curve, Graph, Junction

GRAVITY = 9.80665  # m/s2
OF_A_RUN = ("area", "diameter", "length", "roughness", "loss", "coefficient", "exponent")


@dataclass(frozen=True)
class Run:
    """What leads from one node to another. `loss` counts velocity pressures; a leak or cleaner takes
    `coefficient` |flow|^`exponent`; `rise` is how much higher it ends than it starts.
    """

    name: str
    start: str
    end: str
    area: float  # m2
    diameter: float  # m, hydraulic
    length: float = 0.0  # m
    roughness: float = 0.0  # m
    loss: float = 0.0  # velocity pressures
    coefficient: float = 0.0  # Pa/(m3/s)^exponent
    exponent: float = 1.0
    rise: float = 0.0  # m
    temperature: float | None = None  # K, where it is given; else what flows in
    fan: Curve | None = None  # at standard density
    leak: bool = False


@dataclass(frozen=True)
class Meeting:
    """Where runs come together: by the balance of momentum (angles), or as the hand method counts (coefficients)."""

    node: str
    law: str  # "momentum" or "tabulated"
    angles: Mapping[str, float] = field(default_factory=dict)  # rad to the run that leaves, by run; 0 where not named
    coefficients: Mapping[str, float] = field(default_factory=dict)  # velocity pressures, by run; 0 where not named


@dataclass(frozen=True)
class RoomAir:
    """The air that comes in."""

    temperature: float = 293.15  # K
    p_abs: float = 101325.0  # Pa
    humidity_ratio: float = 0.0  # kg/kg


@dataclass(frozen=True)
class DuctSystem:
    """Runs and meetings between nodes of given total pressure (rooms, outside)."""

    runs: Sequence[Run]
    pressures: Mapping[str, float]  # Pa by node
    meetings: Sequence[Meeting] = ()
    air: RoomAir = RoomAir()

    def __post_init__(self):
        twice = [name for name, count in Counter(self.names).items() if count > 1]
        if twice:
            raise InputError(f"the run {twice[0]!r} is there twice; give every run its own name")
        for meeting in self.meetings:
            arrive, leave = len(self.arriving(meeting.node)), len(self.leaving(meeting.node))
            if leave != 1 or not arrive:
                raise InputError(
                    f"{meeting.node}: {arrive} runs arrive and {leave} leave; a meeting needs one or more that arrive "
                    "and one that leaves"
                )

    @cached_property
    def names(self) -> tuple[str, ...]:
        """Of the runs, in their order."""
        return tuple(run.name for run in self.runs)

    @cached_property
    def nodes(self) -> dict[str, int]:
        """Numbers of the nodes."""
        found = dict.fromkeys(node for run in self.runs for node in (run.start, run.end))
        return {node: number for number, node in enumerate(found)}

    def arriving(self, node: str) -> tuple[int, ...]:
        """Numbers of the runs that end at a node."""
        return self._ends[1].get(node, ())

    def leaving(self, node: str) -> tuple[int, ...]:
        """Numbers of the runs that start at a node."""
        return self._ends[0].get(node, ())

    def graph(self, by_momentum: frozenset[str] = frozenset()) -> Graph:
        """Nodes and meetings by number; at the meetings named, momentum in place of the law they ask for."""
        start, end = (np.array([self.nodes[getattr(run, side)] for run in self.runs]) for side in ("start", "end"))
        pressure = np.array([self.pressures.get(node, np.nan) for node in self.nodes])
        return Graph(start, end, pressure, [self._junction(meeting, by_momentum) for meeting in self.meetings])

    def branches(self, temperature: np.ndarray) -> Branches:
        """What every run does to the pressure, at its temperature [K]."""
        rho, outside = self.densities(temperature), float(self.densities(np.array(self.air.temperature)))
        fans = [(number, run.fan) for number, run in enumerate(self.runs) if run.fan is not None]
        curves = tuple(fan.scaled(pressure=rho[number] / STANDARD_DENSITY) for number, fan in fans)
        numbers = np.full(len(self.runs), -1)
        numbers[[number for number, _ in fans]] = np.arange(len(fans))
        return Branches(
            names=self.names,
            density=rho,
            viscosity=viscosity(temperature),
            head=(outside - rho) * GRAVITY * np.array([run.rise for run in self.runs], dtype=float),
            fan=numbers,
            curves=curves,
            **{name: np.array([getattr(run, name) for run in self.runs], dtype=float) for name in OF_A_RUN},
        )

    def densities(self, temperature: np.ndarray) -> np.ndarray:
        """Of the air [kg/m3] at temperatures [K]."""
        return np.asarray(density(temperature, self.air.p_abs, self.air.humidity_ratio), dtype=float)

    def _junction(self, meeting: Meeting, by_momentum: frozenset[str]) -> Junction:
        arriving, leaving = self.arriving(meeting.node), self.leaving(meeting.node)
        names = [self.runs[i].name for i in arriving]
        leak = tuple(self.runs[i].leak for i in arriving)
        if meeting.node in by_momentum or meeting.law == "momentum":
            values = tuple(float(np.cos(meeting.angles.get(name, 0.0))) for name in names)
            return Junction("momentum", arriving, leaving[0], values, leak)
        values = tuple(meeting.coefficients.get(name, 0.0) for name in names)
        return Junction(meeting.law, arriving, leaving[0], values, leak)  # type: ignore[arg-type]

    @cached_property
    def _ends(self) -> tuple[dict[str, tuple[int, ...]], dict[str, tuple[int, ...]]]:
        found: tuple[dict, dict] = ({}, {})
        for number, run in enumerate(self.runs):
            for side, node in enumerate((run.start, run.end)):
                found[side][node] = (*found[side].get(node, ()), number)
        return found


@dataclass(frozen=True, eq=False)
class SystemAnswer:
    """Flows and pressures as built, one value per run in the order of `names`."""

    names: tuple[str, ...]
    flow: np.ndarray  # m3/s, at the density of the run
    velocity: np.ndarray  # m/s
    density: np.ndarray  # kg/m3
    temperature: np.ndarray  # K
    p_total_start: np.ndarray  # Pa
    p_total_end: np.ndarray  # Pa
    loss: np.ndarray  # Pa, of the run itself: without fan and buoyancy
    head: np.ndarray  # Pa, buoyancy
    rise: np.ndarray  # Pa, of the fan
    meeting_loss: np.ndarray  # Pa, behind its end
    turned_back: tuple[str, ...]  # where the tabulated law gave way to the balance of momentum
    residual: float
    steps: int

    def at(self, name: str) -> int:
        """The place of a run."""
        return self._places[name]

    @cached_property
    def _places(self) -> dict[str, int]:
        return {name: place for place, name in enumerate(self.names)}

    @property
    def p_velocity(self) -> np.ndarray:
        """Velocity pressure [Pa]."""
        return self.density * self.velocity**2 / 2

    @property
    def p_static_start(self) -> np.ndarray:
        """Static pressure at the start [Pa]."""
        return self.p_total_start - self.p_velocity

    @property
    def p_static_end(self) -> np.ndarray:
        """Static pressure at the end [Pa]."""
        return self.p_total_end - self.p_velocity
