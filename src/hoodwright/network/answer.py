"""What a network solver returns."""

from dataclasses import dataclass

import numpy as np


@dataclass(frozen=True, eq=False)
class NetworkAnswer:
    """Flows and pressures of a network at rest.

    `loss` is what a branch itself loses from start to end, less head and fan; `junction_loss` what follows behind its
    end. `residual` (Pa) is the greatest fault of any balance of pressure, `imbalance` (kg/s) of any node.
    """

    mass_flow: np.ndarray  # (branches,) kg/s
    start_pressure: np.ndarray  # (branches,) Pa, total
    loss: np.ndarray  # (branches,) Pa
    junction_loss: np.ndarray  # (branches,) Pa
    residual: float
    imbalance: float
    steps: int

    @property
    def end_pressure(self) -> np.ndarray:
        """Total pressure at the end of each branch, before its junction [Pa]."""
        return self.start_pressure - self.loss
