"""The answer of the assess job, as frozen plain data in SI.

Signs: static and total pressures are signed gauge pascals, suction negative; `hood_suction` is a positive magnitude.
"""

from dataclasses import dataclass

from hoodwright.results import Caution, Hint, Outcome, Quantity


@dataclass(frozen=True)
class Line:
    """One line a reader can recompute: the formula, and the same with its numbers filled in."""

    formula: str
    filled: str
    source: str


@dataclass(frozen=True)
class LawNeed:
    """Flow that one published equation asks for, and the range in which it holds."""

    equation: str
    flow: float
    line: Line
    reach: str = ""

    @property
    def source(self) -> str:
        """Citation of the equation."""
        return self.line.source


@dataclass(frozen=True)
class Bound:
    """Certain limits of the needed flow, used where no equation holds; `most` is None behind the opening."""

    least: float
    most: float | None
    why: str
    source: str
    lines: tuple[Line, ...] = ()


@dataclass(frozen=True)
class SourceNeed:
    """What one source asks of its hood.

    `velocity` is at the source and the design flow, by the most demanding equation; where none holds it is None, and
    `velocity_at_most` is the certain bound. `place` says in words where the hood is: "100 mm from", "600 mm above".
    `capture_velocity` is the air speed asked for, of the kind that `velocity_kind` names. `untold` says why nothing
    can be told of the flow, not even a bound.
    """

    source: str
    distance: float
    off_axis: float
    capture_velocity: float
    basis: str
    basis_source: str
    laws: tuple[LawNeed, ...]
    bound: Bound
    velocity: float | None
    velocity_at_most: float | None = None
    place: str = ""
    velocity_kind: str = "capture velocity"
    untold: str = ""

    @property
    def flow(self) -> float:
        """The most demanding equation; outside every range, the flow needed at least."""
        return max((law.flow for law in self.laws), default=self.bound.least)

    @property
    def in_range(self) -> bool:
        """Whether at least one equation holds at this place."""
        return bool(self.laws)

    @property
    def spread(self) -> float:
        """How far the least demanding equation lies below the most demanding one, as a share."""
        return 1 - min(law.flow for law in self.laws) / self.flow if self.laws else 0.0


@dataclass(frozen=True)
class OpeningAnswer:
    """One opening of an enclosure, or `count` of one size: area of one, and the mean velocity inward.

    `velocity` is at the design flow, `velocity_today` at today's; both are the same for all openings together.
    """

    name: str
    size: str
    count: int
    area: float
    velocity: float
    velocity_today: float | None


@dataclass(frozen=True)
class HoodAnswer:
    """One hood: what is needed, what it was meant to get, what it gets, and both outcomes."""

    name: str
    type: str
    needs: tuple[SourceNeed, ...]
    design_flow: float
    intended: float | None
    commissioned: Quantity | None
    today: Quantity | None
    suction: float | None
    suction_line: Line | None
    enough: Outcome
    met: Outcome
    sentence: str
    hints: tuple[Hint, ...]
    openings: tuple[OpeningAnswer, ...] = ()
    entry_lines: tuple[Line, ...] = ()

    @property
    def worst(self) -> SourceNeed:
        """The source that asks most."""
        return max(self.needs, key=lambda need: need.flow)


@dataclass(frozen=True)
class DuctAnswer:
    """One duct at the design flow. Static pressure is read at the end towards the discharge; `start` at the other."""

    name: str
    start_from: str
    to: str
    size: str
    flow: float
    velocity: float
    velocity_pressure: float
    static_pressure_start: float
    static_pressure: float
    transport_velocity: float
    carries: str
    transport: Outcome
    lines: tuple[Line, ...]
    friction_per_length: float = 0.0
    temperature: float = 0.0
    density: float = 0.0

    @property
    def total_pressure_start(self) -> float:
        """Total pressure at the end where the air comes in."""
        return self.static_pressure_start + self.velocity_pressure

    @property
    def total_pressure(self) -> float:
        """Total pressure at the end towards the discharge."""
        return self.static_pressure + self.velocity_pressure


@dataclass(frozen=True)
class SideAdvice:
    """A side of a junction with less suction than the governing one, and three ways to bring it up to that.

    Another size at the same flow: `diameter` exactly, `size` the nearest of the series with its velocity and the ratio
    it reaches (None where no size does). More flow: `flow`, and what main and fan carry once every side is corrected.
    A damper: `damper` [Pa], `damper_vp` in velocity pressures of the side. `words` says the three, in that order.
    """

    name: str
    ratio: float
    advice: str
    diameter: float | None
    size: float | None
    size_velocity: float | None
    size_ratio: float | None
    size_holds: bool
    flow: float
    main_flow: float
    fan_flow: float | None
    damper: float
    damper_vp: float
    words: tuple[str, str, str]
    lines: tuple[Line, ...] = ()


@dataclass(frozen=True)
class JunctionAnswer:
    """Two or more ducts that meet: which governs, how far apart the others are, and what the hand method advises."""

    name: str
    governing: str
    pressures: tuple[tuple[str, float], ...]
    ratio: float
    advice: str
    corrected: tuple[tuple[str, float], ...]
    source: str
    sides: tuple[SideAdvice, ...] = ()
    editions_differ: str = ""


@dataclass(frozen=True)
class FanAnswer:
    """What the fan must do at the design flow, with clean and with loaded cleaners.

    Pressures and power are at the density of its air; the `_standard` ones are what a catalogue at 1.2 kg/m3 must show.
    """

    name: str
    flow: float
    static_pressure: float
    total_pressure: float
    total_pressure_clean: float
    air_power: float
    efficiency: float | None
    power: float | None
    lines: tuple[Line, ...]
    density: float = 0.0
    static_pressure_standard: float = 0.0
    total_pressure_standard: float = 0.0
    power_standard: float | None = None
    motor_power: float | None = None

    @property
    def has_cleaners(self) -> bool:
        """Whether cleaners on the way make loaded and clean differ."""
        return self.total_pressure != self.total_pressure_clean


@dataclass(frozen=True)
class Material:
    """One line of the list of materials: what, of which size and make, how many or how long."""

    item: str
    size: float | None
    make: str
    count: int
    length: float | None = None
    sheet: float | None = None


@dataclass(frozen=True)
class AirAnswer:
    """The air the answer was computed for."""

    temperature: float
    p_abs: float
    humidity_ratio: float
    density: float
    viscosity: float


@dataclass(frozen=True)
class Assessment:
    """The whole answer for one workplace file."""

    workplace: str
    about: str
    system: str
    version: str
    air: AirAnswer
    hoods: tuple[HoodAnswer, ...]
    ducts: tuple[DuctAnswer, ...]
    junctions: tuple[JunctionAnswer, ...]
    fans: tuple[FanAnswer, ...]
    cautions: tuple[Caution, ...]
    sources: tuple[str, ...]
    materials: tuple[Material, ...] = ()
