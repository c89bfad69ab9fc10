"""The ductwork of a workplace as built: which air really flows, once every fan runs on its curve."""

from collections.abc import Collection, Mapping
from dataclasses import dataclass
from typing import Unpack

import numpy as np

from hoodwright import __version__
from hoodwright.ducts.system import DuctSystem, RoomAir, SystemAnswer
from hoodwright.errors import InputError
from hoodwright.tasks.as_built.answers import BuiltAnswer
from hoodwright.tasks.as_built.cautions import built_cautions
from hoodwright.tasks.as_built.fans import built_fan, settled, solved_anyhow
from hoodwright.tasks.as_built.parts import cleaners_of, ducts_of, hoods_of, junctions_of
from hoodwright.tasks.as_built.runs import ROOM, Asked, Builder, State
from hoodwright.tasks.design import air_of, design_flow
from hoodwright.tasks.walk import Walk
from hoodwright.workplace.check import OUTSIDE
from hoodwright.workplace.model import Duct, Workplace

LAWS = ("momentum", "tabulated")


@dataclass(frozen=True, eq=False)
class BuiltSystem:
    """Runs and meetings of a workplace, and which of them belongs to what.

    A duct's run has the duct's name. `design` are the flows meant for the hoods [m3/s], `start` the flows of all runs
    at those, to start from.
    """

    system: DuctSystem
    walk: Walk
    ducts: tuple[Duct, ...]
    hood_runs: dict[str, str]  # of the hood's entry, by hood
    fan_runs: dict[str, str]
    cleaner_runs: dict[str, str]  # filters in hoods too, by cleaner or hood
    leak_runs: dict[str, str]  # by duct
    design: dict[str, float]
    start: np.ndarray  # (runs,) m3/s
    state: State
    left_out: tuple[str, ...]


def system_of(
    workplace: Workplace,
    *,
    loaded: bool | float = True,
    closed: Collection[str] = (),
    dampers: Mapping[str, float] | None = None,
    speeds: Mapping[str, float] | None = None,
    law: str = "momentum",
    leaks: bool = True,
) -> BuiltSystem:
    """Everything that drives a fan with a curve, as runs and meetings.

    `loaded` is the state of the filters: clean, dirty, or a share between. `closed` names hoods or ducts whose gate is
    shut; `dampers` sets dampers by their duct, in velocity pressures of it; `speeds` are of fans, over the speed of
    their curve. `law` is that of junctions, momentum or tabulated; `leaks` counts the leaks that the file gives.
    """
    state = State(float(loaded), frozenset(closed), dict(dampers or {}), dict(speeds or {}), law, leaks)
    _check_state(state, workplace)
    ducts, left_out = _driven(workplace)
    if not ducts:
        raise InputError(_no_curve(workplace))
    return _built(workplace, state, ducts, left_out)


def _built(workplace: Workplace, state: State, ducts: tuple[Duct, ...], left_out: tuple[str, ...]) -> BuiltSystem:
    air = air_of(workplace.air)
    design = {hood.name: design_flow(hood, workplace) for hood in workplace.hoods}
    walk = Walk(workplace, design, air, loaded=bool(state.load))
    built = Builder(walk, ducts, state)
    names = {run.name for run in built.runs}
    hoods = [hood.name for hood in workplace.hoods if f"{hood.name}, entry" in names]
    pressures = {OUTSIDE: 0.0, ROOM: 0.0} | dict.fromkeys(hoods, 0.0)
    room = RoomAir(air.temperature, air.p_abs, air.humidity_ratio)
    filters = {name: f"{name}, filter" for name in hoods if f"{name}, filter" in names}
    return BuiltSystem(
        system=DuctSystem(built.runs, pressures, built.meetings, room),
        walk=walk,
        ducts=ducts,
        hood_runs={name: f"{name}, entry" for name in hoods},
        fan_runs={fan.name: fan.name for fan in workplace.fans if fan.name in names},
        cleaner_runs=filters | {c.name: c.name for c in workplace.cleaners if c.name in names},
        leak_runs={duct.name: f"{duct.name}, leak" for duct in ducts if f"{duct.name}, leak" in names},
        design={name: design[name] for name in hoods},
        start=np.array(built.flows),
        state=state,
        left_out=left_out,
    )


def as_built(
    workplace: Workplace, *, points: bool = True, system: str | None = None, **state: Unpack[Asked]
) -> BuiltAnswer:
    """Flows and pressures as built, in the state that is asked for: see `system_of`.

    `points` looks for every operating point of each fan, which takes most of the time; without it the one that is
    found is told. `system`, SI or US, chooses the units of the words.
    """
    return answer_of(workplace, system_of(workplace, **state), points=points, system=system)


def answer_of(
    workplace: Workplace, built: BuiltSystem, *, points: bool = True, system: str | None = None
) -> BuiltAnswer:
    """Solve a system and say what it means."""
    solved, found = settled(built.system, built.start, tuple(built.fan_runs.values()), points=points)
    units = system or workplace.units
    fans = tuple(
        built_fan(fan, built, solved, found, workplace) for fan in workplace.fans if fan.name in built.fan_runs
    )
    hoods, ducts = hoods_of(workplace, built, solved), ducts_of(built, solved)
    return BuiltAnswer(
        workplace=workplace.name,
        system=units,
        version=__version__,
        load=built.state.load,
        law=built.state.law,
        hoods=hoods,
        ducts=ducts,
        junctions=junctions_of(built, solved),
        cleaners=cleaners_of(built, solved),
        fans=fans,
        cautions=tuple(built_cautions(hoods, ducts, fans, built.state.closed, units)),
        left_out=built.left_out,
        residual=solved.residual,
        steps=solved.steps,
        currency=workplace.prices.currency or "",
    )


def flows_as_built(workplace: Workplace, built: BuiltSystem, start: np.ndarray | None = None) -> SystemAnswer:
    """The solved system alone, for those who ask often."""
    return solved_anyhow(built.system, built.start if start is None else start)


def has_curve(workplace: Workplace) -> bool:
    """Whether any flow can be computed as built."""
    return (
        bool(workplace.ducts) and any(fan.curve is not None for fan in workplace.fans) and bool(_driven(workplace)[0])
    )


def _check_state(state: State, workplace: Workplace) -> None:
    hoods, ducts = {hood.name for hood in workplace.hoods}, {duct.name for duct in workplace.ducts}
    fans = {fan.name for fan in workplace.fans}
    for what, given, known in (
        ("gate", state.closed, hoods | ducts),
        ("damper", state.dampers, ducts),
        ("speed", state.speeds, fans),
    ):
        for name in given:
            if name not in known:
                raise InputError(f"{what} of {name!r}: there is no such part; there is {', '.join(sorted(known))}")
    if state.law not in LAWS:
        raise InputError(f"junction law {state.law!r} is not known; there is {' and '.join(LAWS)}")
    if not 0 <= state.load <= 1:
        raise InputError(f"filters loaded to {state.load:g}: 0 is clean and 1 is dirty; choose a share between")


def _driven(workplace: Workplace) -> tuple[tuple[Duct, ...], tuple[str, ...]]:
    """Ducts that hang together with fans that all have a curve; and the hoods that have no such duct."""
    group = _groups(workplace.ducts)
    fans = [fan for fan in workplace.fans if fan.name in group]
    ready = {group[fan.name] for fan in fans} - {group[fan.name] for fan in fans if fan.curve is None}
    ducts = tuple(duct for duct in workplace.ducts if group[duct.start] in ready)
    return ducts, tuple(hood.name for hood in workplace.hoods if group.get(hood.name) not in ready)


def _groups(ducts: tuple[Duct, ...]) -> dict[str, str]:
    """One node that stands for all that hang together, by node; the open air joins nothing."""
    above: dict[str, str] = {}

    def top(node: str) -> str:
        while above.setdefault(node, node) != node:
            above[node] = above[above[node]]
            node = above[node]
        return node

    for duct in ducts:
        first = top(duct.start)
        if duct.to != OUTSIDE:
            above[first] = top(duct.to)
    return {node: top(node) for node in above}


def _no_curve(workplace: Workplace) -> str:
    if not workplace.ducts:
        return "the file has no ducts; add 'ducts' and a fan, or ask for the hoods alone: hoodwright assess"
    if not workplace.fans:
        return "the file has no fan, and nothing drives the air; add one with its 'curve'"
    names = ", ".join(fan.name for fan in workplace.fans)
    return (
        f"no curve is given for {names}, so no flow can be computed as built; add it from the maker's sheet, for "
        "example 'pressure: static, curve: [[0 m3/h, 2000 Pa], [1500 m3/h, 1800 Pa], [3000 m3/h, 900 Pa]]'"
    )
