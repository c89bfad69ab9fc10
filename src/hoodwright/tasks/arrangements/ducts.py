"""A plain duct and a fan for the one hood of an arrangement: the computed air needs to know how wide the duct is."""

import math

from hoodwright.tasks.hood_entry import duct_of
from hoodwright.units import write
from hoodwright.workplace.model import CapturingHood, Hood, Workplace

DUCT_SPEED = 10.0  # m/s in a duct that the file does not tell of
SIZE_STEP, SMALLEST = 0.01, 0.05  # m
LONG = "3 m"


def ducts_for(hood: Hood, workplace: Workplace, flow: float, name: str, taken: set[str]) -> dict[str, list]:
    """Ducts and fans of the file for a hood of this name, as wide as the duct of `hood`; all other names are free."""
    pipe, stack, fan = (free_name(one, taken) for one in ("pipe", "stack", "fan"))
    own = duct_of(hood, workplace)
    wide = write(own.round if own is not None and own.round else _size(hood, flow), "length", "SI")
    return {
        "ducts": [
            {"name": pipe, "from": name, "to": fan, "round": wide, "length": LONG},
            {"name": stack, "from": fan, "to": "outside", "round": wide, "length": LONG},
        ],
        "fans": [{"name": fan, "efficiency": "55 %"}],
    }


def free_name(name: str, taken: set[str]) -> str:
    """A name that no other part has."""
    numbered = (f"{name} {number}" for number in range(2, len(taken) + 3))
    return next(one for one in (name, *numbered) if one not in taken)


def _size(hood: Hood, flow: float) -> float:
    wide = math.sqrt(4 * flow / (math.pi * DUCT_SPEED))
    size = max(SMALLEST, math.ceil(wide / SIZE_STEP - 1e-6) * SIZE_STEP)
    return min(size, hood.opening.sides[0]) if isinstance(hood, CapturingHood) and hood.opening.is_round else size
