"""The same ductwork in other states: filters clean and dirty, gates shut, hoods in use."""

from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass, replace

import numpy as np
from scipy.interpolate import CubicSpline
from scipy.optimize import brentq

from hoodwright.tasks.as_built.answers import BuiltAnswer, BuiltDuct
from hoodwright.tasks.as_built.fans import solved_anyhow
from hoodwright.tasks.as_built.network import BuiltSystem, as_built, system_of
from hoodwright.tasks.as_built.parts import cleaners_of, hoods_of
from hoodwright.tasks.streams import fan_of, way_from
from hoodwright.units import show
from hoodwright.workplace.model import Workplace

ENOUGH = 1 - 1e-9  # of what was intended
LOADS = 17  # at which flows are computed between clean and dirty


@dataclass(frozen=True)
class FallsShort:
    """When a hood begins to get less than intended as the filters load.

    `load` is 0 where it does with clean filters, None where it never does. `cleaner` is the one on its way that then
    takes most, and `pressure` what it takes [Pa].
    """

    hood: str
    load: float | None
    cleaner: str | None
    pressure: float | None


@dataclass(frozen=True)
class CleanerWindow:
    """The ductwork with clean and with dirty filters, and the hoods in the order in which they fall short."""

    clean: BuiltAnswer
    dirty: BuiltAnswer
    order: tuple[FallsShort, ...]
    words: str

    @property
    def first(self) -> FallsShort | None:
        """The hood that falls short first; None where none does."""
        return self.order[0] if self.order and self.order[0].load is not None else None


def cleaner_window(workplace: Workplace, *, system: str | None = None, **state) -> CleanerWindow:
    """Flows with clean and dirty filters, and which hood falls short first as they load, at which pressure.

    `state` is that of `system_of`, without `loaded`. All filters load together.
    """
    clean, dirty = (as_built(workplace, loaded=load, system=system, **state) for load in (False, True))
    ends = system_of(workplace, loaded=False, **state), system_of(workplace, loaded=True, **state)
    order = list(_falls_short(workplace, clean, ends))
    order.sort(key=lambda one: (np.inf if one.load is None else one.load, clean.hood(one.hood).share))
    return CleanerWindow(clean, dirty, tuple(order), _window_words(order, clean, clean.system))


def at_load(ends: tuple[BuiltSystem, BuiltSystem], load: float) -> BuiltSystem:
    """The system between clean and dirty."""
    clean, dirty = ends
    runs = [
        replace(low, coefficient=low.coefficient + load * (high.coefficient - low.coefficient))
        for low, high in zip(clean.system.runs, dirty.system.runs, strict=True)
    ]
    return replace(clean, system=replace(clean.system, runs=runs), state=replace(clean.state, load=load))


def _falls_short(workplace: Workplace, clean: BuiltAnswer, ends) -> Iterator[FallsShort]:
    """Flows and pressures at several loads, a smooth curve through each, and where it comes down to what is meant."""
    flows, pressures, start = [], [], ends[0].start
    loads = np.linspace(0.0, 1.0, LOADS) if clean.cleaners else np.array([0.0])
    for load in loads:
        built = at_load(ends, float(load))
        solved = solved_anyhow(built.system, start)
        start = solved.flow
        flows.append([hood.flow for hood in hoods_of(workplace, built, solved)])
        pressures.append({one.name: one.pressure for one in cleaners_of(built, solved)})
    hoods = {hood.name: hood for hood in workplace.hoods}
    for at, one in enumerate(clean.hoods):
        load = _load_at(loads, np.array(flows)[:, at], one.intended)
        passed = [one.name, *(duct.start for duct in way_from(workplace, hoods[one.name]).values())]
        most = max(
            (name for name in passed if name in pressures[0]), key=lambda name: pressures[-1][name], default=None
        )
        if load is None or most is None:
            yield FallsShort(one.name, load, None, None)
            continue
        taken = [found[most] for found in pressures]
        yield FallsShort(one.name, load, most, float(CubicSpline(loads, taken)(load)))


def _load_at(loads: np.ndarray, flows: np.ndarray, meant: float) -> float | None:
    """The least load at which a flow is below what is meant; None where it never is."""
    if flows[0] < meant * ENOUGH:
        return 0.0
    below = np.flatnonzero(flows < meant * ENOUGH)
    if not below.size:
        return None
    curve = CubicSpline(loads, flows)
    return float(brentq(lambda load: curve(load) - meant, loads[below[0] - 1], loads[below[0]], xtol=1e-9))


def _window_words(order: list[FallsShort], clean: BuiltAnswer, system: str) -> str:
    if not clean.cleaners:
        return "There is no filter: flows stay as they are, until something else changes"
    short = [one for one in order if one.load is not None]
    if not short:
        return "From clean to dirty filters every hood gets what was intended"
    already = [one.hood for one in short if one.load == 0]
    if already:
        told = f"Even with clean filters {_listed(already)} {'gets' if len(already) == 1 else 'get'} less than intended"
        rest = short[len(already) :]
        return f"{told}. {_next(rest[0], system, 'next')}" if rest else told
    return _next(short[0], system, "first")


def _next(one: FallsShort, system: str, when: str) -> str:
    pressure = show(one.pressure or 0.0, "pressure", system)
    return f"As the filters load, {one.hood} falls short {when}, once {one.cleaner} takes {pressure}"


def _listed(names: list[str]) -> str:
    return names[0] if len(names) == 1 else f"{', '.join(names[:-1])} and {names[-1]}"


@dataclass(frozen=True)
class ScenarioAnswer:
    """The ductwork in one way of use."""

    name: str
    closed: tuple[str, ...]
    dampers: Mapping[str, float]
    answer: BuiltAnswer

    @property
    def mains(self) -> tuple[BuiltDuct, ...]:
        """Ducts that carry the air of several hoods, or of one behind its first duct."""
        own = {hood.duct for hood in self.answer.hoods}
        return tuple(duct for duct in self.answer.ducts if duct.name not in own)

    @property
    def settling(self) -> tuple[BuiltDuct, ...]:
        """Ducts that are then too slow for what they carry."""
        return tuple(duct for duct in self.answer.ducts if duct.settles)


def scenarios(workplace: Workplace, *, loaded: bool | float = False, system: str | None = None):
    """Every scenario of the file, as built."""
    return tuple(
        _scenario(workplace, one.name, one.closed, dict(one.dampers), loaded, system) for one in workplace.scenarios
    )


def gates_shut(workplace: Workplace, *, loaded: bool | float = False, system: str | None = None):
    """One scenario for each hood that shares its fan, with its gate shut and all others as they stand."""
    built = system_of(workplace, loaded=loaded).hood_runs
    fans = {hood.name: fan_of(workplace, hood) for hood in workplace.hoods if hood.name in built}
    shared = [name for name, fan in fans.items() if list(fans.values()).count(fan) > 1]
    return tuple(_scenario(workplace, f"{name} shut", (name,), {}, loaded, system) for name in shared)


def _scenario(
    workplace: Workplace,
    name: str,
    closed: Collection[str],
    dampers: dict[str, float],
    loaded: bool | float,
    system: str | None,
) -> ScenarioAnswer:
    state = {"closed": closed, "dampers": dampers, "points": False, "system": system}
    return ScenarioAnswer(name, tuple(closed), dampers, as_built(workplace, loaded=loaded, **state))  # type: ignore[arg-type]
