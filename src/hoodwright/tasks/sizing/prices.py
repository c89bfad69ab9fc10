"""What ducts and energy cost: the user's prices, and what is taken where the file has none."""

import math
from dataclasses import dataclass

from hoodwright.ducts.sizing import Prices
from hoodwright.workplace.model import Fan, Workplace

ENERGY = 0.25  # a kWh
SHEET = 60.0  # a m2 of duct, made and hung
HOURS = 2000.0  # a year
FAN, MOTOR = 0.6, 0.9  # efficiencies
FITTING = 1.0  # m of its duct that a fitting costs as much as
DAMPER = 3.0  # m2 of sheet that a damper costs as much as
HOUR = 3600.0
ASSUMED = "is taken, as the file does not say"


@dataclass(frozen=True)
class Bill:
    """Prices as numbers; `share` is the air power over what the fan draws from the mains."""

    energy: float
    sheet: float
    hours: float
    years: float
    share: float
    notes: tuple[str, ...]

    @property
    def per_watt(self) -> float:
        """Of air power, over the years that count."""
        return self.energy * self.hours * self.years / 1000 / self.share

    def yearly(self, power: float) -> float:
        """Cost of a year's energy for an air power [W]."""
        return self.energy * self.hours * power / self.share / 1000

    def prices(self, behind: float, *, dampers: bool) -> Prices:
        """As the sizing needs them."""
        return Prices(
            per_metre=lambda diameter: self.sheet * math.pi * diameter,
            per_piece=lambda diameter: self.sheet * math.pi * diameter * FITTING,
            damper=DAMPER * self.sheet if dampers else None,
            per_watt=self.per_watt,
            behind=behind,
        )


def bill_of(workplace: Workplace, fan: Fan) -> Bill:
    """The prices of the file, the hours of the fan, and its efficiencies."""
    told, notes = workplace.prices, []

    def given(value: float | None, instead: float, words: str) -> float:
        if value is None:
            notes.append(f"{words} {ASSUMED}")
        return instead if value is None else value

    energy = given(told.energy, ENERGY, f"{ENERGY:g} per kWh")
    sheet = given(told.sheet, SHEET, f"{SHEET:g} per m² of duct")
    hours = given(None if fan.hours is None else fan.hours / HOUR, HOURS, f"{HOURS:g} h a year for the {fan.name}")
    efficiency = fan.efficiency if isinstance(fan.efficiency, float) else _best(fan)
    own = given(efficiency, FAN, f"an efficiency of {100 * FAN:.0f} % for the {fan.name}")
    motor = given(fan.motor_efficiency, MOTOR, f"an efficiency of {100 * MOTOR:.0f} % for the motor of the {fan.name}")
    share = own * motor * (1 - (fan.drive_loss or 0.0))
    notes.append(
        f"a fitting costs as much as {FITTING:g} m of its duct, a damper as much as {DAMPER:g} m² of duct; energy "
        f"counts for {told.years:g} years"
    )
    return Bill(energy, sheet, hours, told.years, share, tuple(notes))


def _best(fan: Fan) -> float | None:
    """Of an efficiency by flow its best: a fan is chosen to run there."""
    return None if fan.efficiency is None else max(share for _, share in fan.efficiency)  # type: ignore[union-attr]
