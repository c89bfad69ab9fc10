"""The branches of a network, and what each does to the pressure."""

from collections.abc import Sequence
from dataclasses import dataclass, field, fields

import numpy as np

from hoodwright.errors import InputError, NoSolution, RangeError
from hoodwright.kernels.branch_loss import prepare
from hoodwright.network.curves import Curve, Curves
from hoodwright.ranges import numbers

FOLLOWS = 5  # columns that follow from the laws
LAW = ("density", "viscosity", "area", "diameter", "length", "roughness", "loss", "coefficient", "exponent", "head")
ABOVE_ZERO = {"density", "viscosity", "area", "diameter", "exponent"}
NEVER_BELOW = {"length", "roughness", "coefficient"}
SLOWEST_START = 0.1  # m/s: no branch starts from rest


@dataclass(frozen=True, eq=False)
class Branches:
    """All branches, each quantity one array of the same length.

    A branch loses friction over its length, `loss` velocity pressures, and `coefficient` |flow|^`exponent`; its
    `head` drives the flow on (hot air that rises), and so does the fan of its number. Negative losses are physical
    behind some junctions.
    """

    names: Sequence[str]
    density: np.ndarray  # kg/m3
    viscosity: np.ndarray  # Pa s
    area: np.ndarray  # m2
    diameter: np.ndarray  # m, hydraulic
    length: np.ndarray  # m
    roughness: np.ndarray  # m
    loss: np.ndarray  # velocity pressures
    coefficient: np.ndarray  # Pa/(m3/s)^exponent
    exponent: np.ndarray  # 1
    head: np.ndarray  # Pa
    fan: np.ndarray | None = None  # number of the curve, -1 for none
    curves: tuple[Curve, ...] = field(default=())

    def __post_init__(self):
        for name in LAW:
            self._check(name)
        fans = self.fan_numbers
        if fans.shape != (len(self),) or fans.max(initial=-1) >= len(self.curves):
            raise InputError(
                f"fan numbers of {len(fans)} branches, up to {fans.max(initial=-1)}: there are "
                f"{len(self)} branches and {len(self.curves)} curves; number them from 0"
            )

    def __len__(self) -> int:
        return len(self.names)

    def _check(self, name: str) -> None:
        values = np.asarray(getattr(self, name), dtype=float)
        if values.shape != (len(self),):
            raise InputError(f"{name}: got shape {values.shape} for {len(self)} branches; give one value for each")
        least = 0.0 if name in ABOVE_ZERO | NEVER_BELOW else -np.inf
        wrong = ~np.isfinite(values) | (values < least) | ((values == 0) & (name in ABOVE_ZERO))
        if wrong.any():
            at = int(np.argmax(wrong))
            allowed = "above 0" if name in ABOVE_ZERO else "0 or more" if name in NEVER_BELOW else "a finite number"
            raise RangeError(f"{self.names[at]}: {name} {values[at]:g} is not {allowed}; give its true size")

    @property
    def fan_numbers(self) -> np.ndarray:
        """One number per branch; -1 where there is no fan."""
        return np.full(len(self), -1, dtype=np.int64) if self.fan is None else np.asarray(self.fan, dtype=np.int64)

    @property
    def laws(self) -> np.ndarray:
        """(branches, 15), as the kernels take them: the laws themselves, and what follows from them."""
        found = np.empty((len(self), len(LAW) + FOLLOWS))
        for column, name in enumerate(LAW):
            found[:, column] = getattr(self, name)
        prepare(found)
        return found

    @property
    def fan_arrays(self) -> tuple[np.ndarray, np.ndarray, np.ndarray, np.ndarray]:
        """Curves and their branches, as the kernels take them."""
        joined = Curves.of(self.curves)
        return joined.first, self.fan_numbers, joined.cubics, joined.ends

    def changed(self, **new) -> "Branches":
        """The same branches with some quantities replaced."""
        kept = {f.name: getattr(self, f.name) for f in fields(self)}
        return Branches(**(kept | new))

    def only(self, numbers: np.ndarray) -> "Branches":
        """Some of the branches, in the order of their numbers."""
        if len(numbers) == len(self):
            return self
        names = [self.names[i] for i in numbers]
        return self.changed(names=names, fan=self.fan_numbers[numbers], **{n: getattr(self, n)[numbers] for n in LAW})

    def starting_flows(self, start) -> np.ndarray:
        """The given flows [kg/s], none of them at rest; without any, a metre per second everywhere."""
        unit = np.asarray(self.density, float) * np.asarray(self.area, float)
        if start is None:
            return unit.copy()
        given = np.array(numbers("starting flow", start), dtype=float)
        return np.where(np.abs(given) < SLOWEST_START * unit, SLOWEST_START * unit, given)

    def refuse(self, moved: np.ndarray, steps: int, residual: float) -> None:
        """Raise NoSolution: where the velocities [m/s] still move most, how far off, after how many steps."""
        worst = int(np.argmax(moved))
        raise NoSolution(
            f"the flows did not settle in {steps} steps: at {self.names[worst]} the velocity still moves by "
            f"{moved[worst]:.3g} m/s, and the pressures miss by {residual:.3g} Pa; check that branch, its damper and "
            "the fan curve"
        )
