"""A fan whose speed follows a pressure: which speed holds it."""

from scipy.optimize import brentq

from hoodwright.errors import InputError, NoSolution
from hoodwright.tasks.as_built.answers import BuiltAnswer
from hoodwright.tasks.as_built.network import as_built
from hoodwright.units import show
from hoodwright.workplace.model import Workplace

SLOWEST, FASTEST = 0.2, 1.5  # of the speed of the curve


def speed_to_hold(workplace: Workplace, fan: str, duct: str, suction: float, **state) -> tuple[float, BuiltAnswer]:
    """The speed of a fan, over that of its curve, at which the static suction at the end of a duct is held [Pa].

    Comes with the ductwork as built at that speed. `state` is that of `as_built`; other fans keep their speed.
    """
    if suction <= 0:
        raise InputError(f"suction {suction:g} Pa is not above 0; give the magnitude to hold, such as 500")
    speeds = dict(state.pop("speeds", None) or {})

    def built(speed: float, *, points: bool = False) -> BuiltAnswer:
        return as_built(workplace, speeds=speeds | {fan: speed}, points=points, **state)

    def spare(speed: float) -> float:
        return -built(speed).duct(duct).static_pressure - suction

    if spare(SLOWEST) > 0 or spare(FASTEST) < 0:
        wanted = show(suction, "pressure", workplace.units)
        raise NoSolution(
            f"no speed of {fan} from {SLOWEST:g} to {FASTEST:g} times that of its curve holds {wanted} in {duct}; "
            "choose another pressure or place"
        )
    speed = float(brentq(spare, SLOWEST, FASTEST, xtol=1e-6))
    return speed, built(speed, points=True)
