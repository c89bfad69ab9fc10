"""Grid lines along one axis: fine where it matters, growing away from it, and snapped to given places."""

from dataclasses import dataclass, field
from itertools import pairwise

import numpy as np

CLOSEST = 0.3  # of the cell size wanted: two snapped lines are never closer
SAMPLES = 64  # per gap between snapped lines


@dataclass
class Axis:
    """What is wanted along one axis. Lines are snapped in the order in which they are asked for."""

    low: float
    high: float
    growth: float
    largest: float
    snaps: list[float] = field(default_factory=list)
    zones: list[tuple[float, float, float]] = field(default_factory=list)  # from, to, cell size

    def refine(self, start: float, stop: float, size: float) -> None:
        """Cells no greater than `size` between start and stop."""
        self.zones.append((start, stop, size))

    def size(self, x) -> np.ndarray:
        """Cell size wanted at places."""
        x = np.asarray(x, dtype=float)
        wanted = np.full(x.shape, self.largest)
        for start, stop, size in self.zones:
            away = np.maximum(np.maximum(start - x, x - stop), 0.0)
            wanted = np.minimum(wanted, size + (self.growth - 1) * away)
        return wanted

    def lines(self) -> np.ndarray:
        """The grid lines, from low to high."""
        fixed = [self.low, self.high]
        for place in self.snaps:
            room = CLOSEST * float(self.size(place))
            if self.low < place < self.high and min(abs(place - other) for other in fixed) > room:
                fixed.append(place)
        fixed.sort()
        self.zones += [(a, b, b - a) for a, b in pairwise(fixed)]
        parts = [self._between(a, b) for a, b in pairwise(fixed)]
        return np.concatenate([[self.low], *parts])

    def _between(self, start: float, stop: float) -> np.ndarray:
        x = np.linspace(start, stop, SAMPLES + 1)
        per_metre = 1 / self.size(x)
        count = np.concatenate([[0.0], np.cumsum((per_metre[1:] + per_metre[:-1]) / 2 * np.diff(x))])
        cells = max(1, int(np.ceil(count[-1] - 0.05)))
        lines = np.interp(np.linspace(0, count[-1], cells + 1)[1:], count, x)
        lines[-1] = stop
        return lines
