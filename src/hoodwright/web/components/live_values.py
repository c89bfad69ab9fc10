"""What one tab tries out in the air: a flow, a draught, and what is drawn. The file is left alone until it is kept."""

from dataclasses import dataclass, field

from hoodwright.tasks.air_edits import with_live_air
from hoodwright.tasks.bearing import Xyz, draught_with, towards
from hoodwright.workplace import Document
from hoodwright.workplace.model import Workplace

LAYERS = {"smoke": "Smoke", "streamlines": "Streamlines", "speed": "Speed lines", "map": "Capture map"}
PLANES = {"level": "level", "upright": "upright"}


@dataclass
class LiveValues:
    """Values of one tab; None: as the file says."""

    flow: float | None = None  # m3/s, of the chosen hood
    speed: float | None = None  # m/s, of the draught
    bearing: float | None = None  # degrees, see tasks.bearing
    layers: set[str] = field(default_factory=lambda: {"smoke"})
    plane: str = "level"

    @property
    def tried(self) -> bool:
        """Whether anything differs from the file."""
        return any(value is not None for value in (self.flow, self.speed, self.bearing))

    def reset(self) -> None:
        """Back to what the file says."""
        self.flow = self.speed = self.bearing = None

    def draught(self, workplace: Workplace) -> Xyz | None:
        """The draught that is tried [m/s]."""
        return draught_with(workplace, self.speed, self.bearing)

    def kept_in(self, document: Document, workplace: Workplace, hood: str) -> Document:
        """The document that says what is tried."""
        way = None if self.bearing is None else towards(self.bearing)
        return with_live_air(document, hood, self.flow, self.draught(workplace), way)
