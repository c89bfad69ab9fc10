"""Fans of the workplace file: curve, speed, efficiency and motor, as the maker states them."""

from dataclasses import dataclass
from itertools import pairwise
from typing import Annotated, Any, Literal

import numpy as np
from pydantic import AfterValidator, BeforeValidator, GetCoreSchemaHandler, GetJsonSchemaHandler, model_validator
from pydantic_core import CoreSchema, core_schema

from hoodwright.workplace import quantities as q
from hoodwright.workplace.base import Part, Shaped, as_list

HOUR = 3600.0
SHARE = q.Measure("share", least=0.05, most=1.0)
FLOW = q.Measure("flow", least=0.0, most=1000.0)

Speed = Annotated[float, q.Measure("speed of rotation", least=0.1, most=2000.0, example="'1450 rpm'")]
AirDensity = Annotated[float, q.Measure("density", least=0.3, most=2.0, example="'1.2 kg/m3'")]
Lost = Annotated[float, q.Measure("number", least=0.0, most=20.0)]


def _pair(value: Any, what: str, example: str) -> list:
    if not isinstance(value, list) or len(value) != 2:
        raise ValueError(f"{what} are needed, got {q.said(value)}; write for example {example}")
    return value


def _point(value: Any) -> list:
    return _pair(value, "a flow and a pressure", "[1500 m3/h, 2500 Pa]")


def _per_year(value: Any) -> Any:
    """'2000 h' and '2000 h/year' mean the same."""
    return value.removesuffix("/year").removesuffix("a year").strip() if isinstance(value, str) else value


def _sound_curve(points: tuple[tuple[float, float], ...]):
    if len(points) < 3:
        raise ValueError(f"got {len(points)} points; three or more are needed, from the maker's curve: add some")
    flows, pressures = np.array(points).T
    if np.any(np.diff(flows) <= 0):
        at = int(np.argmax(np.diff(flows) <= 0))
        before, here = (q.plain(flows[i], "flow") for i in (at, at + 1))
        raise ValueError(f"flow {here} follows {before}; the points go from no flow to the most: put them in order")
    rises = np.diff(pressures) > 0
    if np.count_nonzero(np.diff(np.concatenate([[False], rises])) & rises) > 1:
        raise ValueError("the pressure rises, falls and rises again; a fan's curve rises once at most: read it again")
    if rises[-1]:
        raise ValueError("the pressure rises up to the last point; a fan's curve falls in the end: add its end")
    return points


CurvePoint = Annotated[tuple[q.FlowRead, q.Pressure], BeforeValidator(_point)]
FanCurve = Annotated[tuple[CurvePoint, ...], AfterValidator(_sound_curve), BeforeValidator(as_list)]
YearlyTime = Annotated[
    float, q.Measure("time", least=0.0, most=8784 * HOUR, example="'2000 h'"), BeforeValidator(_per_year)
]


@dataclass(frozen=True)
class ByFlow:
    """A share, or points of flow and share: [[1000 m3/h, 55 %], [2000 m3/h, 62 %]]."""

    def read(self, value: Any) -> float | tuple[tuple[float, float], ...]:
        """The share, or its points; ValueError says how they are written."""
        if not isinstance(value, list):
            return SHARE.read(value)
        pairs = [_pair(one, "a flow and a share", "[1500 m3/h, 60 %]") for one in value]
        points = tuple((FLOW.read(flow), SHARE.read(share)) for flow, share in pairs)
        if len(points) < 2 or any(b[0] <= a[0] for a, b in pairwise(points)):
            raise ValueError("two points or more are needed, each with more flow than the one before; mend the list")
        return points

    def __get_pydantic_core_schema__(self, source: Any, handler: GetCoreSchemaHandler) -> CoreSchema:
        return core_schema.no_info_plain_validator_function(self.read)

    def __get_pydantic_json_schema__(self, schema: CoreSchema, handler: GetJsonSchemaHandler) -> dict[str, Any]:
        return {"type": ["string", "number", "array"], "description": "a share, or points of flow and share"}


class Outlet(Shaped):
    """Section of a fan's outlet."""

    round: q.DuctSize | None = None
    rectangle: q.DuctRectangle | None = None


class SystemEffect(Part):
    """What a fan loses in its place: velocity pressures at its inlet and outlet, from the user's own tables."""

    inlet: Lost = 0.0
    outlet: Lost = 0.0


class Fan(Part):
    """A fan between the collecting duct and the discharge; `drive_loss` is what its belts take of the motor's power."""

    name: q.Name
    efficiency: Annotated[float | tuple[tuple[float, float], ...] | None, ByFlow()] = None
    drive_loss: q.DriveLoss | None = None
    pressure: Literal["static", "total"] | None = None
    curve: FanCurve | None = None
    density: AirDensity = 1.2
    speed: Speed | None = None
    runs_at: Speed | None = None
    outlet: Outlet | None = None
    system_effect: SystemEffect = SystemEffect()
    motor: q.Power | None = None
    motor_efficiency: q.Efficiency | None = None
    hours: YearlyTime | None = None

    @model_validator(mode="after")
    def _curve_is_told_whole(self):
        if self.curve is not None and self.pressure is None:
            raise ValueError(
                "a curve says static or total pressure, and the two differ; add 'pressure: static' or 'pressure: total'"
            )
        if self.curve is None and (self.pressure or self.speed or self.runs_at):
            raise ValueError("'pressure', 'speed' and 'runs_at' belong to a curve, and there is none; add 'curve'")
        if self.runs_at is not None and self.speed is None:
            raise ValueError("'runs_at' is held against the speed of the curve; add 'speed', as on its sheet")
        return self

    @property
    def speed_ratio(self) -> float:
        """The speed it runs at over that of its curve."""
        return self.runs_at / self.speed if self.runs_at is not None and self.speed else 1.0

    def efficiency_at(self, flow: float) -> float | None:
        """Efficiency at a flow [m3/s]; straight lines between the points, and level beyond them."""
        if self.efficiency is None or isinstance(self.efficiency, float):
            return self.efficiency
        flows, shares = zip(*self.efficiency, strict=True)
        return float(np.interp(flow, np.array(flows) * self.speed_ratio, shares))
