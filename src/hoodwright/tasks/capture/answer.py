"""The answer of the capture job, as frozen plain data in SI."""

from dataclasses import dataclass

from hoodwright.flow import Spreads, shown_share
from hoodwright.results import Outcome
from hoodwright.tasks.air.layers import AxisSpeed
from hoodwright.tasks.capture.openings import OpeningInward
from hoodwright.tasks.hood_shapes import Xyz

BANNER = "not validated for capture"
CAPTURED = "captured"
CANNOT = "cannot tell"
APART = 0.05  # of a share: a farthest place that differs by more is told beside the average


@dataclass(frozen=True)
class Definition:
    """What a captured fraction means here."""

    escape_radius: float  # m
    time_limit: float  # s
    realisations: int
    particles: int
    seed: int
    cells: int
    smallest_cell: float  # m
    spreads: Spreads


@dataclass(frozen=True)
class Farthest:
    """What is caught of what leaves the place of a source that is farthest from the hood."""

    place: Xyz  # m
    captured: float
    low: float
    high: float

    @property
    def shown(self) -> str:
        """The captured fraction as it is shown, where a per cent may be claimed."""
        return shown_share(self.captured)

    @property
    def shown_interval(self) -> str:
        """Its interval as it is shown."""
        return interval_shown(self.low, self.high)


@dataclass(frozen=True)
class CaptureAnswer:
    """One source before one hood: the captured fraction with its interval, and what may be claimed of it."""

    source: str
    hood: str
    distance: float  # m
    flow: float  # m3/s
    captured: float
    low: float
    high: float
    by_hood: dict[str, float]
    plume_limited: bool
    claim: str
    definition: Definition
    handbook: Outcome  # asked at this very place, for this source
    differs: str | None
    openings: tuple[OpeningInward, ...]
    notes: tuple[str, ...]
    sentence: str
    moved: bool = False  # whether it stands elsewhere than in the file
    farthest: Farthest | None = None  # of a line, a box or a path
    spills: str | None = None  # of an enclosure: where it would spill first
    centreline: tuple[AxisSpeed, ...] = ()  # on the hood's axis, without any draught

    @property
    def told(self) -> bool:
        """Whether a per cent may be shown."""
        return self.claim == CAPTURED

    @property
    def shown(self) -> str:
        """The captured fraction as it is shown."""
        return shown_share(self.captured) if self.told else CANNOT

    @property
    def shown_interval(self) -> str:
        """Its interval as it is shown."""
        return interval_shown(self.low, self.high) if self.told else "-"

    @property
    def told_farthest(self) -> Farthest | None:
        """The farthest place, where it tells something else than the average."""
        apart = self.farthest is not None and abs(self.farthest.captured - self.captured) > APART
        return self.farthest if self.told and apart else None


@dataclass(frozen=True)
class CaptureReport:
    """The answer of the capture job."""

    workplace: str
    system: str
    version: str
    flow: str  # design or today
    answers: tuple[CaptureAnswer, ...]


def interval_shown(low: float, high: float) -> str:
    """An interval as it is shown: one word where both ends are the same."""
    ends = shown_share(low), shown_share(high)
    return ends[0] if ends[0] == ends[1] else f"{ends[0]} to {ends[1]}"
