"""Fans of a duct system as built: every operating point, power, motor, energy and cost."""

from __future__ import annotations

from contextlib import suppress
from dataclasses import replace
from typing import TYPE_CHECKING

import numpy as np

from hoodwright import ducts as d
from hoodwright.ducts.as_built import solve_system
from hoodwright.ducts.system import DuctSystem, SystemAnswer
from hoodwright.errors import NoSolution
from hoodwright.network import Curve, OperatingPoint, fan_curve
from hoodwright.tasks.as_built.answers import BuiltFan, FanPoint
from hoodwright.workplace.fans import HOUR
from hoodwright.workplace.model import Fan, Workplace

if TYPE_CHECKING:
    from hoodwright.tasks.as_built.network import BuiltSystem

SAME = 1e-4  # of the flow: a point of the scan is the one that was solved
SPREAD = 1e-3
SAMPLES = 400  # of a curve
OTHER_STARTS = (1.0, 0.5, 1.5, 0.25, 2.5, 0.1)  # of the flows to start from

Points = dict[str, tuple[OperatingPoint, ...]]


def settled(
    system: DuctSystem, start: np.ndarray, fans: tuple[str, ...], *, points: bool
) -> tuple[SystemAnswer, Points]:
    """The system solved, and every point of each fan. A fan found where it cannot stay is sent to where it can."""
    solved = solved_anyhow(system, start)
    if not points:
        return solved, {}
    found = {name: d.fan_points(system, solved, name) for name in fans}
    for name, own in found.items():
        stays = [point.flow for point in own if point.stable]
        flow = float(solved.flow[solved.at(name)])
        if stays and min(abs(flow - q) for q in stays) > SPREAD * max(stays):
            again = solved_anyhow(system, np.abs(solved.flow) * max(stays) / max(abs(flow), 1e-6))
            reached = float(again.flow[again.at(name)])
            if min(abs(reached - q) for q in stays) <= SPREAD * max(stays):
                solved = again
    return solved, found


def solved_anyhow(system: DuctSystem, start: np.ndarray) -> SystemAnswer:
    """The system solved from other starts too: beside a stall Newton's method may go to and fro from one of them."""
    for share in OTHER_STARTS:
        with suppress(NoSolution):
            return solve_system(system, share * start)
    return solve_system(system, _from_the_points(system, start))


def _from_the_points(system: DuctSystem, start: np.ndarray) -> np.ndarray:
    """Flows at the greatest stable point of each fan, found with fans that only fall, which settle from anywhere."""
    falling = [run if run.fan is None else replace(run, fan=_falling(run.fan)) for run in system.runs]
    solved = solve_system(replace(system, runs=falling), start)
    flows = np.array(solved.flow)
    for run in system.runs:
        if run.fan is not None:
            stays = [point.flow for point in d.fan_points(system, solved, run.name) if point.stable]
            at = solved.at(run.name)
            flows = flows * (max(stays) / flows[at]) if stays and flows[at] > 0 else flows
    return flows


def _falling(curve: Curve) -> Curve:
    """A straight line from the most pressure of a curve to none at its end."""
    most = float(np.max(curve.rise(np.linspace(0.0, curve.end, SAMPLES))))
    return fan_curve([0.0, curve.end], [most, 0.0])


def _swings(curve: Curve) -> bool:
    """Whether the smooth curve through the points rises more than once, or at its end."""
    rises = np.diff(curve.rise(np.linspace(0.0, curve.end, SAMPLES))) > 0
    return bool(rises[-1] or np.count_nonzero(np.diff(np.concatenate([[False], rises])) & rises) > 1)


def built_fan(fan: Fan, built: BuiltSystem, solved: SystemAnswer, found: Points, workplace: Workplace) -> BuiltFan:
    """One fan where it runs, with what the file allows to tell."""
    at = solved.at(fan.name)
    flow, rise, density = (float(value[at]) for value in (solved.flow, solved.rise, solved.density))
    run = built.system.runs[at]
    speed = built.state.speeds.get(fan.name, fan.speed_ratio)
    moving = max(flow, 0.0)
    told = BuiltFan(
        name=fan.name,
        flow=flow,
        total_pressure=rise,
        static_pressure=rise - density * (flow / run.area) ** 2 / 2,
        density=density,
        speed=speed,
        points=_points(flow, rise, found.get(fan.name, ())),
        beyond_curve=run.fan is not None and flow > run.fan.end,
        swings=run.fan is not None and _swings(run.fan),
        air_power=moving * max(rise, 0.0),
        motor=fan.motor,
    )
    return _powered(told, fan, workplace, speed)


def _points(flow: float, rise: float, found: tuple[OperatingPoint, ...]) -> tuple[FanPoint, ...]:
    nearest = min((abs(one.flow - flow) for one in found), default=np.inf)
    if nearest > SPREAD * max(abs(flow), SAME):
        own = (FanPoint(flow, rise, stable=True, runs=True),)
        return own + tuple(FanPoint(one.flow, one.pressure, one.stable, runs=False) for one in found)
    return tuple(FanPoint(one.flow, one.pressure, one.stable, runs=abs(one.flow - flow) == nearest) for one in found)


def _powered(told: BuiltFan, fan: Fan, workplace: Workplace, speed: float) -> BuiltFan:
    at_rated = max(told.flow, 0.0) / speed * fan.speed_ratio
    efficiency = fan.efficiency_at(at_rated)
    if efficiency is None:
        return told
    shaft = told.air_power / efficiency
    motor = shaft / (1 - (fan.drive_loss or 0.0))
    energy = None
    if fan.hours is not None:
        energy = float(d.yearly_energy(motor, fan.hours / HOUR, fan.motor_efficiency or 1.0))
    price = workplace.prices.energy
    return replace(
        told,
        efficiency=efficiency,
        shaft_power=shaft,
        motor_power=motor,
        margin=None if fan.motor is None else float(d.motor_margin(fan.motor, motor)),
        energy=energy,
        cost=None if energy is None or price is None else energy * price,
    )
