"""What a fan can do and what the ducts ask of it, as two curves with every point where they cross."""

from dataclasses import dataclass

import numpy as np

from hoodwright import ducts as d
from hoodwright.jobs import Progress
from hoodwright.tasks.as_built.answers import BuiltAnswer, BuiltFan, FanPoint
from hoodwright.tasks.as_built.live import Tried
from hoodwright.tasks.as_built.network import answer_of, system_of
from hoodwright.workplace.model import Workplace

SAMPLES, FINE = 25, 81
ROOM = 1.08  # how much farther than the curve or the point the drawing goes


@dataclass(frozen=True)
class FanCurves:
    """Pairs of flow [m3/s] and total pressure [Pa], in the state asked for, at the density of the fan's air."""

    name: str
    gives: tuple[tuple[float, float], ...]
    asked: tuple[tuple[float, float], ...]
    rated: tuple[tuple[float, float], ...]  # points of the sheet, at the speed now
    points: tuple[FanPoint, ...]
    fan: BuiltFan


@dataclass(frozen=True)
class Curved:
    """The answer with every operating point, and the curves."""

    answer: BuiltAnswer
    fans: tuple[FanCurves, ...]


def fan_curves(progress: Progress, workplace: Workplace, tried: Tried, system: str | None = None) -> Curved:
    """Of every fan with a curve; fans beside it run as they do now."""
    built = system_of(workplace, loaded=tried.load, closed=tried.closed, dampers=tried.dampers, speeds=tried.speeds)
    progress.report(0.1, "looking for every operating point")
    answer = answer_of(workplace, built, points=True, system=system)
    solved = d.solve_system(built.system, built.start)
    found = []
    for i, fan in enumerate(answer.fans):
        progress.report(0.5 + 0.5 * i / len(answer.fans), f"the system curve of the {fan.name}")
        run = built.system.runs[solved.at(fan.name)]
        share = fan.density / d.STANDARD_DENSITY
        curve = run.fan.scaled(pressure=share)
        most = ROOM * max(curve.end, fan.flow)
        asked = d.asked_of_fan(built.system, solved, fan.name)
        marks = np.unique([*np.clip(curve.cubics[:, 0], 0.0, curve.end).tolist(), curve.end])
        found.append(
            FanCurves(
                name=fan.name,
                gives=tuple((q, float(curve.rise(q))) for q in _steps(most, FINE)),
                asked=tuple((q, float(asked(q))) for q in _steps(most, SAMPLES)),
                rated=tuple((float(q), float(curve.rise(q))) for q in marks),
                points=fan.points,
                fan=fan,
            )
        )
    return Curved(answer, tuple(found))


def _steps(most: float, count: int) -> list[float]:
    return np.linspace(0.0, most, count).tolist()
