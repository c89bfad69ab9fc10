"""What every job returns: never a bare number at an edge."""

from dataclasses import dataclass
from enum import StrEnum


class Verdict(StrEnum):
    """The three words an outcome may use."""

    MEETS = "meets the need"
    SHORT = "falls short"
    CANNOT_TELL = "cannot tell"


@dataclass(frozen=True)
class Quantity:
    """A value in SI with the kind of quantity it is (see units.KINDS) and where it comes from.

    `uncertainty` is the half width of the 95 % interval, in the same unit.
    """

    value: float
    kind: str
    uncertainty: float | None = None
    source: str | None = None


@dataclass(frozen=True)
class Outcome:
    """An answer in words: what was found, and why."""

    verdict: Verdict
    because: str
    shortfall: Quantity | None = None

    def __str__(self) -> str:
        return f"{self.verdict.value}: {self.because}"


@dataclass(frozen=True)
class Caution:
    """A warning that belongs to one place of the job."""

    about: str
    text: str
    source: str


@dataclass(frozen=True)
class Hint:
    """A change that would help, with the flow, fan power and make-up air it would then take."""

    change: str
    text: str
    flow: Quantity
    fan_power: Quantity | None = None
    make_up_air: Quantity | None = None
