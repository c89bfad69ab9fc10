"""Field types of the workplace file: text with a unit in the file, SI floats in the model."""

import math
import re
from typing import Annotated, Any

from pydantic import BeforeValidator, WithJsonSchema

from hoodwright import units
from hoodwright.errors import UnitError

Vector = tuple[float, float, float]
BARE_NUMBER = re.compile(r"[+-]?[\d.]+")


def said(value: Any) -> str:
    """A value as the file's writer would recognise it, kept short."""
    words = {None: "nothing", True: "true", False: "false"}
    if value is None or isinstance(value, bool):
        return words[value]
    if isinstance(value, list):
        return f"a list of {len(value)}"
    if isinstance(value, dict):
        return "a group of keys"
    text = " ".join(str(value).split())
    return repr(text if len(text) <= 40 else text[:37] + "...")


def _measure(value: Any, kind: str, unit: str, above: float | None, least: float | None, most: float | None) -> float:
    example = EXAMPLES[kind]
    if isinstance(value, int | float) and not isinstance(value, bool):
        value = repr(value)
    if not isinstance(value, str):
        article = "an" if kind == "angle" else "a"
        raise ValueError(f"{article} {kind} is needed, got {said(value)}; write for example {example}")
    if unit and BARE_NUMBER.fullmatch(value.strip()):
        raise ValueError(f"{value.strip()} has no unit; write for example {value.strip()} {unit}")
    try:
        found = units.parse(value, kind)
    except UnitError as error:
        raise ValueError(str(error)) from None
    too_low = (above is not None and found <= above) or (least is not None and found < least)
    if too_low or (most is not None and found > most):
        raise ValueError(f"got {said(value)}; allowed: {_span(kind, above, least, most)}; write for example {example}")
    return found


def _span(kind: str, above: float | None, least: float | None, most: float | None) -> str:
    parts = []
    if above is not None:
        parts.append(f"more than {plain(above, kind)}")
    if least is not None:
        parts.append(f"at least {plain(least, kind)}")
    if most is not None:
        parts.append(f"at most {plain(most, kind)}")
    return ", ".join(parts)


def plain(value: float, kind: str) -> str:
    """A value with its unit as it can be typed: 20 deg, not 20 °."""
    return units.show(value, kind, "SI").translate({ord("\u2009"): " ", ord("°"): "deg", ord("³"): "3"})


EXAMPLES = {
    "length": "'150 mm' or '6 in'",
    "flow": "'300 m3/h' or '180 cfm'",
    "velocity": "'0.5 m/s' or '100 fpm'",
    "pressure": "'800 Pa' or '3.2 in wg'",
    "temperature": "'21 degC' or '70 degF'",
    "share": "'45 %'",
    "angle": "'90 deg'",
    "number": "1.5",
}


def _quantity(kind: str, unit: str = "", *, above=None, least=None, most=None):
    schema = {"type": ["string", "number"] if units.KINDS[kind].bare else "string", "title": kind}
    schema["description"] = f"{kind} with its unit, for example {EXAMPLES[kind]}"
    return Annotated[
        float,
        BeforeValidator(lambda value: _measure(value, kind, unit, above, least, most)),
        WithJsonSchema(schema),
    ]


Coordinate = _quantity("length", "m", least=-1000.0, most=1000.0)
Side = _quantity("length", "m", above=0.0, most=1000.0)
Height = _quantity("length", "m", above=0.0, most=10.0)
Run = _quantity("length", "m", least=0.0, most=1000.0)
Size = _quantity("length", least=0.001, most=100.0)
DuctSize = _quantity("length", least=0.01, most=10.0)
Width = _quantity("length", least=0.0, most=100.0)
Altitude = _quantity("length", "m", least=-500.0, most=11000.0)
Flow = _quantity("flow", least=1e-5, most=1000.0)
FlowRead = _quantity("flow", least=0.0, most=1000.0)
Speed = _quantity("velocity", least=0.0, most=100.0)
CaptureSpeed = _quantity("velocity", least=0.01, most=100.0)
Pressure = _quantity("pressure", least=0.0, most=100000.0)
AirPressure = _quantity("pressure", least=20000.0, most=200000.0)
AirTemperature = _quantity("temperature", least=173.15, most=373.15)
Share = _quantity("share", least=0.0, most=1.0)
Efficiency = _quantity("share", least=0.05, most=1.0)
Turn = _quantity("angle", least=math.radians(20) - 1e-9, most=math.pi / 2 + 1e-9)
Entry = _quantity("angle", least=math.radians(10) - 1e-9, most=math.pi / 2 + 1e-9)
Number = _quantity("number", least=0.0, most=1000.0)
Exponent = _quantity("number", least=0.0, most=3.0)


def _listed(value: Any, count: int, what: str, example: str) -> Any:
    if not isinstance(value, list) or len(value) != count:
        raise ValueError(f"{count} {what} are needed, got {said(value)}; write for example {example}")
    return value


def _point(value: Any) -> Any:
    return _listed(value, 3, "lengths", "[2 m, 1.5 m, 0.9 m]")


def _direction(value: Any) -> Any:
    example = "[0, -1, 0]"
    numbers = _listed(value, 3, "numbers", example)
    if any(isinstance(n, bool) or not isinstance(n, int | float) or not math.isfinite(n) for n in numbers):
        raise ValueError(f"a direction is three plain numbers without a unit; write for example {example}")
    length = math.hypot(*(max(-1e6, min(1e6, n)) for n in numbers))
    if length < 1e-6:
        raise ValueError(f"a direction of length zero points nowhere; write for example {example}")
    return [max(-1e6, min(1e6, n)) / length for n in numbers]


Point = Annotated[tuple[Coordinate, Coordinate, Coordinate], BeforeValidator(_point)]
FloorPoint = Annotated[
    tuple[Coordinate, Coordinate], BeforeValidator(lambda v: _listed(v, 2, "lengths", "[2 m, 1.2 m]"))
]
Box = Annotated[tuple[Side, Side, Side], BeforeValidator(lambda v: _listed(v, 3, "lengths", "[9 m, 6 m, 3.2 m]"))]


def _sides(value: Any) -> Any:
    return _listed(value, 2, "lengths", "[300 mm, 200 mm]")


Rectangle = Annotated[tuple[Size, Size], BeforeValidator(_sides)]
DuctRectangle = Annotated[tuple[DuctSize, DuctSize], BeforeValidator(_sides)]
Direction = Annotated[tuple[float, float, float], BeforeValidator(_direction)]


def _text(value: Any) -> str:
    if not isinstance(value, str):
        raise ValueError(f"a text is needed, got {said(value)}; put it in quotes")
    if not value.strip() or len(value) > 2000:
        raise ValueError("a text of 1 to 2000 characters is needed; write a few words")
    if any(not c.isprintable() and c not in "\n\t" for c in value):
        raise ValueError("a text without control characters is needed; remove them")
    return value


Text = Annotated[str, BeforeValidator(_text)]


def _name(value: Any) -> str:
    text = _text(value)
    if len(text) > 60 or any(not c.isprintable() for c in text):
        raise ValueError("a name of at most 60 printed characters is needed; shorten it")
    return text.strip()


Name = Annotated[str, BeforeValidator(_name)]
