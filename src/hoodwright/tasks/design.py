"""What every job begins with: the air of the room, and the flow that each hood is meant to get."""

from hoodwright.air import density, viscosity
from hoodwright.tasks.assessment import AirAnswer, SourceNeed
from hoodwright.tasks.need import needs_of
from hoodwright.tasks.shapes import area_of
from hoodwright.workplace.model import AirState, Hood, Workplace
from hoodwright.workplace.moisture import humidity_ratio_of, pressure_of


def air_of(state: AirState) -> AirAnswer:
    """Pressure, moisture, density and viscosity of the room's air."""
    p_abs, moisture = pressure_of(state), humidity_ratio_of(state)
    return AirAnswer(
        temperature=state.temperature,
        p_abs=p_abs,
        humidity_ratio=moisture,
        density=float(density(state.temperature, p_abs, moisture)),
        viscosity=float(viscosity(state.temperature)),
    )


def design_flow(hood: Hood, workplace: Workplace) -> float:
    """The intended flow, or the flow needed where none is intended.

    Outside every range the flow needed at least stands in, or more: what brings the capture velocity to the opening.
    """
    return hood.intended_flow or max(_asked(need, area_of(hood.opening)) for need in needs_of(hood, workplace))


def _asked(need: SourceNeed, area: float) -> float:
    return need.flow if need.in_range else max(need.flow, need.capture_velocity * area)
