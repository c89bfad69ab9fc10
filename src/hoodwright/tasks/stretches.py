"""The run as a plot needs it: every duct, the way left to its discharge, the pressures at its ends."""

from dataclasses import dataclass

from hoodwright.tasks.assessment import Assessment, DuctAnswer
from hoodwright.workplace.model import Workplace


@dataclass(frozen=True)
class Stretch:
    """One duct: way left to the discharge at its two ends [m], signed gauge pressures there [Pa]."""

    name: str
    start_from: str
    to: str
    begins: float
    ends: float
    static: tuple[float, float]
    total: tuple[float, float]
    from_hood: bool


def stretches(workplace: Workplace, assessment: Assessment) -> tuple[Stretch, ...]:
    """Every duct of the workplace as a stretch, in the order of the answer."""
    lengths = {duct.name: duct.length for duct in workplace.ducts}
    follow = {duct.start_from: duct for duct in assessment.ducts}
    hoods = {hood.name for hood in workplace.hoods}
    return tuple(_stretch(duct, lengths, follow, hoods) for duct in assessment.ducts)


def _stretch(duct: DuctAnswer, lengths: dict[str, float], follow: dict[str, DuctAnswer], hoods: set[str]) -> Stretch:
    left, onward = 0.0, follow.get(duct.to)
    while onward is not None:
        left += lengths[onward.name]
        onward = follow.get(onward.to)
    return Stretch(
        duct.name,
        duct.start_from,
        duct.to,
        left + lengths[duct.name],
        left,
        (duct.static_pressure_start, duct.static_pressure),
        (duct.total_pressure_start, duct.total_pressure),
        duct.start_from in hoods,
    )
