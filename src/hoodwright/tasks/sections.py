"""One duct at its flow: what it carries, how fast, in which air, and what it loses."""

from dataclasses import dataclass, replace
from functools import lru_cache

from hoodwright import ducts as d
from hoodwright.air import density, velocity_pressure, viscosity
from hoodwright.tasks.assessment import AirAnswer
from hoodwright.tasks.fitting_losses import Loss, losses_of
from hoodwright.tasks.shapes import area_of, hydraulic_diameter_of
from hoodwright.workplace.model import Duct, Hood, Workplace

# Our reading: the table has no row for mist, so the faster fume row is taken.
TRANSPORT_BY_KIND = {
    "gas": "vapour",
    "vapour": "vapour",
    "smoke": "fume",
    "fume": "fume",
    "mist": "fume",
    "dust": "workshop dust",
}
CLEANED = "cleaned air"  # behind an air cleaner that works
NEVER_SETTLES = ("vapour", CLEANED)
SAME = 1e-9  # K: streams of one temperature


@dataclass(frozen=True)
class Section:
    """A duct at its flow, before pressures are known along it."""

    duct: Duct
    flow: float
    carries: str
    air: AirAnswer
    velocity: float
    p_velocity: float
    diameter: float
    reynolds: float
    friction_factor: float
    friction: float
    fittings: tuple[Loss, ...]
    loss: float

    @property
    def mass_flow(self) -> float:
        """Kilograms a second."""
        return self.flow * self.air.density

    @property
    def coefficients(self) -> float:
        """All fittings together, in velocity pressures."""
        return sum(loss.coefficient for loss in self.fittings)

    @property
    def fixed(self) -> float:
        """What dampers take [Pa]."""
        return sum(loss.fixed or 0.0 for loss in self.fittings)


def first_section(duct: Duct, flow: float, carries: str, room: AirAnswer) -> Section:
    """The duct behind a hood; the flow of the hood is that of the air in this duct."""
    return section_at(duct, flow, carries, _air_at(room, duct.temperature))


def next_section(duct: Duct, inflow: list[Section], room: AirAnswer, *, cleaned: bool) -> Section:
    """A duct that takes what arrives at its start. Mass is kept; a changed temperature changes the flow."""
    carries = CLEANED if cleaned else fastest([s.carries for s in inflow])
    mixed = duct.temperature
    if mixed is None:
        temperatures = [s.air.temperature for s in inflow]
        if max(temperatures) - min(temperatures) < SAME:
            return section_at(duct, sum(s.flow for s in inflow), carries, inflow[0].air)
        mixed = float(d.mixed_temperature([s.mass_flow for s in inflow], temperatures))
    air = _air_at(room, mixed)
    return section_at(duct, sum(s.mass_flow for s in inflow) / air.density, carries, air)


def carried(workplace: Workplace, hood: Hood) -> str:
    """What a hood's duct carries, of all that its sources give off the one that must move fastest."""
    found = [workplace.contaminant(workplace.source(name).contaminant) for name in hood.serves]
    return fastest([c.transport or TRANSPORT_BY_KIND[c.kind] for c in found])


def fastest(kinds: list[str]) -> str:
    """The kind that needs the highest transport velocity."""
    return max(kinds, key=lambda kind: (kind != CLEANED, least_velocity(kind)))


def least_velocity(carries: str) -> float:
    """Transport velocity of what a duct carries; of cleaned air that of vapour, which settles at no speed."""
    return d.transport_velocity_range("vapour" if carries == CLEANED else carries)[0]


def keeps_moving(carries: str, velocity: float) -> bool:
    """Whether a velocity keeps what a duct carries airborne."""
    return carries in NEVER_SETTLES or velocity >= least_velocity(carries)


@lru_cache(maxsize=256)
def _air_at(room: AirAnswer, temperature: float | None) -> AirAnswer:
    """The room's air, with its moisture, at another temperature."""
    if temperature is None or temperature == room.temperature:
        return room
    rho, mu = float(density(temperature, room.p_abs, room.humidity_ratio)), float(viscosity(temperature))
    return replace(room, temperature=temperature, density=rho, viscosity=mu)


@lru_cache(maxsize=4096)
def section_at(duct: Duct, flow: float, carries: str, air: AirAnswer) -> Section:
    """A duct at a flow and in an air."""
    velocity = flow / area_of(duct)
    vp = float(velocity_pressure(velocity, air.density))
    diameter = hydraulic_diameter_of(duct)
    reynolds = float(d.reynolds_number(velocity, diameter, air.density, air.viscosity))
    factor = float(d.friction_factor(reynolds, d.roughness(duct.material) / diameter))
    fittings = tuple(losses_of(duct, reynolds, factor))
    coefficients = sum(loss.coefficient for loss in fittings)
    fixed = sum(loss.fixed or 0.0 for loss in fittings)
    return Section(
        duct=duct,
        flow=flow,
        carries=carries,
        air=air,
        velocity=velocity,
        p_velocity=vp,
        diameter=diameter,
        reynolds=reynolds,
        friction_factor=factor,
        friction=float(d.pressure_loss(factor, duct.length, diameter, vp)),
        fittings=fittings,
        loss=float(d.duct_static_loss(vp, factor, duct.length, diameter, coefficients)) + fixed,
    )
