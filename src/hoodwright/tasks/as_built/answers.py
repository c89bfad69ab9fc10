"""The ductwork as built, as frozen plain data in SI.

Static and total pressures are signed gauge pascals, suction negative; `suction` of a hood is a positive magnitude.
"""

from dataclasses import dataclass

from hoodwright.results import Caution


@dataclass(frozen=True)
class BuiltDuct:
    """One duct: what flows, how fast, pressures at both ends, and what it loses itself.

    `leak` is what its seams let in [m3/s], below zero where they let out. `settles` where it carries what needs a
    higher velocity. Flow and velocity are below zero where the air runs backwards.
    """

    name: str
    start: str
    to: str
    flow: float
    velocity: float
    velocity_pressure: float
    static_pressure_start: float
    static_pressure: float
    total_pressure_start: float
    total_pressure: float
    loss: float
    buoyancy: float
    damper: float
    leak: float
    transport_velocity: float
    carries: str
    settles: bool
    temperature: float
    density: float


@dataclass(frozen=True)
class BuiltHood:
    """One hood: the flow meant for it and the flow as built. `stated` where the file gives that meant flow."""

    name: str
    duct: str
    flow: float
    intended: float
    stated: bool
    suction: float

    @property
    def share(self) -> float:
        """Flow as built over the flow meant."""
        return self.flow / self.intended

    @property
    def blows_out(self) -> bool:
        """Whether the air runs out of the hood into the room."""
        return self.flow < 0


@dataclass(frozen=True)
class BuiltSide:
    """A duct that arrives at a junction: pressures at its end, and the total pressure lost in the junction."""

    duct: str
    flow: float
    static_pressure: float
    total_pressure: float
    loss: float


@dataclass(frozen=True)
class BuiltJunction:
    """Where ducts meet. `imbalance` is what arrives less what leaves [kg/s]: the fault of the computation."""

    name: str
    to: str
    sides: tuple[BuiltSide, ...]
    imbalance: float


@dataclass(frozen=True)
class BuiltCleaner:
    """An air cleaner, or the filter in a hood: its flow and the pressure it takes."""

    name: str
    flow: float
    pressure: float


@dataclass(frozen=True)
class FanPoint:
    """One flow at which fan and system agree; total pressure at the density at hand. `runs` where it is found now."""

    flow: float
    total_pressure: float
    stable: bool
    runs: bool


@dataclass(frozen=True)
class BuiltFan:
    """One fan where it runs now. Pressures are at the density of its air, efficiency is by total pressure.

    `speed` is over the speed of its curve; the curve `swings` where it rises between points that do not. `margin` is
    the share of the motor's rating left, below zero where it is too small. What the file does not allow to tell is
    None.
    """

    name: str
    flow: float
    total_pressure: float
    static_pressure: float
    density: float
    speed: float
    points: tuple[FanPoint, ...]
    beyond_curve: bool
    swings: bool
    air_power: float
    efficiency: float | None = None
    shaft_power: float | None = None
    motor_power: float | None = None
    motor: float | None = None
    margin: float | None = None
    energy: float | None = None  # kWh in a year
    cost: float | None = None  # in a year

    @property
    def stable(self) -> bool:
        """Whether it stays where it runs; True where no other point was looked for."""
        return all(point.stable for point in self.points if point.runs)


@dataclass(frozen=True)
class BuiltAnswer:
    """The whole ductwork as built, in one state.

    `load` is 0 with clean filters, 1 with dirty ones. `left_out` are hoods whose fan has no curve, or that no duct
    leads from. `law` is that of the junctions.
    """

    workplace: str
    system: str
    version: str
    load: float
    law: str
    hoods: tuple[BuiltHood, ...]
    ducts: tuple[BuiltDuct, ...]
    junctions: tuple[BuiltJunction, ...]
    cleaners: tuple[BuiltCleaner, ...]
    fans: tuple[BuiltFan, ...]
    cautions: tuple[Caution, ...]
    left_out: tuple[str, ...]
    residual: float
    steps: int
    currency: str = ""

    def hood(self, name: str) -> BuiltHood:
        """The hood of that name."""
        return next(hood for hood in self.hoods if hood.name == name)

    def duct(self, name: str) -> BuiltDuct:
        """The duct of that name."""
        return next(duct for duct in self.ducts if duct.name == name)

    def fan(self, name: str) -> BuiltFan:
        """The fan of that name."""
        return next(fan for fan in self.fans if fan.name == name)
