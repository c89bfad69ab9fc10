"""In which order to set the dampers, and to which reading: each is set once and stays."""

from dataclasses import dataclass, replace

from scipy.optimize import brentq

from hoodwright.ducts import DuctSystem
from hoodwright.errors import NoSolution
from hoodwright.tasks.as_built.answers import BuiltAnswer, BuiltHood
from hoodwright.tasks.as_built.fans import solved_anyhow
from hoodwright.tasks.as_built.network import BuiltSystem, as_built, system_of
from hoodwright.tasks.as_built.parts import hoods_of
from hoodwright.tasks.streams import way_from
from hoodwright.units import show
from hoodwright.workplace.model import Duct, Workplace

AGREES = 1e-4  # of a share
MOST_ROUNDS = 200
SLOWEST, FASTEST = 0.3, 2.0  # of the speed a fan runs at


@dataclass(frozen=True)
class BalanceStep:
    """One damper, in the order of setting: throttle until `hood` reads `suction`, with the later ones wide open.

    `flow` is the hood's flow at that moment, `final_flow` once all are set; `loss` is where the damper then stands
    [velocity pressures of its duct].
    """

    duct: str
    hood: str
    suction: float
    flow: float
    final_flow: float
    loss: float
    words: str


@dataclass(frozen=True)
class BalancingOrder:
    """Dampers in order; `share` of what is intended that every hood with one then gets at least.

    `speed` is what every fan must run at, over its present speed, so that the hood served least gets just what was
    intended; None where no speed does. `index` is that hood.
    """

    steps: tuple[BalanceStep, ...]
    index: str
    share: float
    speed: float | None
    words: str


def balancing_order(workplace: Workplace, *, loaded: bool | float = False, system: str | None = None) -> BalancingOrder:
    """Open all dampers, then set them one after the other so that all hoods get the same share of what is intended.

    Only ducts with a damper in the file take part; a hood is held by the first damper on its way.
    """
    units = system or workplace.units
    held = _held(workplace, loaded)
    opened = dict.fromkeys(held, 0.0)
    before = as_built(workplace, loaded=loaded, dampers=opened, points=False)
    built = system_of(workplace, loaded=loaded, dampers=opened)
    final = _even(workplace, built, held)
    after = as_built(workplace, loaded=loaded, dampers=final, points=False)
    order = sorted(held, key=lambda duct: -_share(held[duct], before))
    steps, standing = list[BalanceStep](), dict(opened)
    for duct in order:
        if final[duct] > 0:
            standing[duct] = final[duct]
            now = hoods_of(workplace, built, solved_anyhow(_throttled(built.system, standing), built.start))
            steps.append(_step(duct, held[duct], now, after, final[duct], units))
    index = min(after.hoods, key=lambda hood: hood.share)
    speed = _speed(workplace, final, loaded)
    words = _words(steps, bool(held), index.name, index.share, speed, units)
    return BalancingOrder(tuple(steps), index.name, index.share, speed, words)


def _held(workplace: Workplace, loaded: bool | float) -> dict[str, tuple[str, ...]]:
    """Hoods by the first damper on their way."""
    held: dict[str, tuple[str, ...]] = {}
    built = system_of(workplace, loaded=loaded)
    for hood in workplace.hoods:
        way = way_from(workplace, hood).values() if hood.name in built.hood_runs else ()
        damper = next((duct.name for duct in way if _has_damper(duct)), None)
        if damper is not None:
            held[damper] = (*held.get(damper, ()), hood.name)
    return held


def _has_damper(duct: Duct) -> bool:
    return any(one.damper is not None or one.damper_loss is not None for one in duct.fittings)


def _share(hoods: tuple[str, ...], answer: BuiltAnswer) -> float:
    return min(answer.hood(name).share for name in hoods)


def _even(workplace: Workplace, built: BuiltSystem, held: dict[str, tuple[str, ...]]) -> dict[str, float]:
    """Where the dampers end: every one that throttles leaves its hoods the share of the hood served least."""
    losses, start = dict.fromkeys(held, 0.0), built.start
    for _ in range(MOST_ROUNDS):
        solved = solved_anyhow(_throttled(built.system, losses), start)
        start = solved.flow
        shares = {hood.name: hood.share for hood in hoods_of(workplace, built, solved)}
        least, moved = min(shares.values()), 0.0
        for duct, hoods in held.items():
            at = solved.at(duct)
            excess = (min(shares[name] for name in hoods) / max(least, AGREES)) ** 2 - 1
            taken = -float(solved.p_static_end[at]) / max(float(solved.p_velocity[at]), AGREES)
            changed = max(0.0, losses[duct] + taken * excess)
            moved = max(moved, abs(excess) if changed > 0 else 0.0)
            losses[duct] = changed
        if moved < AGREES:
            return losses
    raise NoSolution(
        f"the dampers did not come to rest in {MOST_ROUNDS} rounds: shares still differ by {moved / 2:.2g}; set them "
        "by hand, or balance by size"
    )


def _throttled(system: DuctSystem, losses: dict[str, float]) -> DuctSystem:
    """The system with open dampers, each throttled by its loss."""
    runs = [replace(run, loss=run.loss + losses[run.name]) if run.name in losses else run for run in system.runs]
    return replace(system, runs=runs)


def _step(
    duct: str, hoods: tuple[str, ...], now: tuple[BuiltHood, ...], after: BuiltAnswer, loss: float, units: str
) -> BalanceStep:
    name = min(hoods, key=lambda one: after.hood(one).share)
    hood, end = next(one for one in now if one.name == name), after.hood(name)
    suction, flow = show(hood.suction, "pressure", units), show(hood.flow, "flow", units)
    words = (
        f"damper in {duct}: throttle until the hood suction of {name} is {suction} ({flow}); it ends at "
        f"{show(end.flow, 'flow', units)}"
    )
    return BalanceStep(duct, name, hood.suction, hood.flow, end.flow, loss, words)


def _speed(workplace: Workplace, dampers: dict[str, float], loaded: bool | float) -> float | None:
    ratios = {fan.name: fan.speed_ratio for fan in workplace.fans if fan.curve is not None}

    def spare(factor: float) -> float:
        speeds = {name: ratio * factor for name, ratio in ratios.items()}
        answer = as_built(workplace, loaded=loaded, dampers=dampers, speeds=speeds, points=False)
        return min(hood.share for hood in answer.hoods) - 1

    if spare(SLOWEST) > 0 or spare(FASTEST) < 0:
        return None
    return float(brentq(spare, SLOWEST, FASTEST, xtol=1e-5))


def _words(
    steps: list[BalanceStep], any_damper: bool, index: str, share: float, speed: float | None, units: str
) -> str:
    got = show(share, "share", units)
    if not any_damper:
        text = f"No duct has a damper, so nothing can be set; {index} is served least, with {got} of what is intended"
    elif not steps:
        text = f"With every damper wide open {index} is served least, with {got}; there is nothing to throttle"
    else:
        text = f"Open every damper, then set them in this order; {index} is served least and ends with {got}"
    if speed is None:
        return f"{text}. No speed of the fan from {SLOWEST:g} to {FASTEST:g} times the present one gives all they need"
    return f"{text}. At {show(speed, 'share', units)} of its present speed the fan would give it just what is intended"
