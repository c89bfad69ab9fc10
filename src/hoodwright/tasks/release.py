"""How fast the air must move at a source: by its release class, or as the file says."""

from hoodwright.hoods import capturing
from hoodwright.units import show, show_number
from hoodwright.workplace.model import Source, Workplace

HIGH_HAZARDS = ("asthmagen", "carcinogen", "isocyanate", "asbestos", "lead", "silica", "cyanide")


def grave_hazard(source: Source, workplace: Workplace) -> str | None:
    """The first hazard of a source for which the upper end of a range is taken; None where there is none."""
    hazards = workplace.contaminant(source.contaminant).hazards
    return next((hazard for hazard in hazards if hazard in HIGH_HAZARDS), None)


def capture_velocity_of(source: Source, workplace: Workplace, system: str) -> tuple[float, str, str]:
    """Capture velocity, what it rests on in words, and its source."""
    if source.capture_velocity is not None:
        return source.capture_velocity, "stated in the workplace file", "stated by the user"
    low, high = capturing.capture_velocity_range(source.dispersion)
    grave = grave_hazard(source, workplace)
    span = f"{source.dispersion} release, {show_number(low, 'velocity', system)} to {show(high, 'velocity', system)}"
    if grave:
        return high, f"{span}; upper end taken for the hazard '{grave}'", "capture-table, table 2.3"
    return low, f"{span}; lower end taken", "capture-table, table 2.3"
