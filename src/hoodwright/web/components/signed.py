"""Numbers with a sign for the eye: a true minus, and nothing for what is rounding noise."""

from hoodwright import units

NOISE = {"pressure": 0.05, "flow": 1e-6, "velocity": 1e-3}


def signed(value: float, kind: str, system: str) -> str:
    """The value with its unit."""
    quiet = 0.0 if abs(value) < NOISE.get(kind, 0.0) else value
    return units.show(quiet, kind, system).replace("-", "−")


def percent(share: float) -> str:
    """A share in whole per cent."""
    return f"{round(100 * share)} %"
