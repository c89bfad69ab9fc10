"""Field types of the workplace file: text with a unit in the file, SI floats in the model."""

import math
import re
from dataclasses import dataclass
from difflib import get_close_matches
from typing import Annotated, Any

from pydantic import BeforeValidator, GetCoreSchemaHandler, GetJsonSchemaHandler
from pydantic_core import CoreSchema, core_schema

from hoodwright import units
from hoodwright.errors import UnitError
from hoodwright.tables import load_table

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


@dataclass(frozen=True)
class Measure:
    """How a field reads a quantity: its kind, the unit to suggest for a bare number, and what is allowed [SI].

    It stands beside `float` in an annotation; pydantic asks it for the reader and for the JSON Schema.
    """

    kind: str
    unit: str = ""
    above: float | None = None
    least: float | None = None
    most: float | None = None
    bare_zero: bool = False
    example: str = ""
    decimals: int | None = None

    def read(self, value: Any) -> float:
        """The SI value of what the file says; ValueError says what, got, allowed, and what to do."""
        example = self.example or EXAMPLES[self.kind]
        if isinstance(value, int | float) and not isinstance(value, bool):
            value = repr(value)
        if not isinstance(value, str):
            article = "an" if self.kind == "angle" else "a"
            raise ValueError(f"{article} {self.kind} is needed, got {said(value)}; write for example {example}")
        if self.bare_zero and value.strip() in ("0", "0.0"):
            return 0.0
        if self.unit and BARE_NUMBER.fullmatch(value.strip()):
            raise ValueError(f"{value.strip()} has no unit; write for example {value.strip()} {self.unit}")
        try:
            found = units.parse(value, self.kind)
        except UnitError as error:
            raise ValueError(str(error)) from None
        if not self._allows(found):
            raise ValueError(f"got {said(value)}; allowed: {self._span()}; write for example {example}")
        return found if self.decimals is None else round(found, self.decimals) + 0.0

    def _allows(self, value: float) -> bool:
        above = -math.inf if self.above is None else self.above
        least = -math.inf if self.least is None else self.least
        most = math.inf if self.most is None else self.most
        return above < value and least <= value <= most

    def _span(self) -> str:
        limits = (("more than", self.above), ("at least", self.least), ("at most", self.most))
        return ", ".join(f"{words} {plain(limit, self.kind)}" for words, limit in limits if limit is not None)

    def __get_pydantic_core_schema__(self, source: Any, handler: GetCoreSchemaHandler) -> CoreSchema:
        return core_schema.no_info_before_validator_function(self.read, handler(source))

    def __get_pydantic_json_schema__(self, schema: CoreSchema, handler: GetJsonSchemaHandler) -> dict[str, Any]:
        bare = units.KINDS[self.kind].bare or self.bare_zero
        return {
            "type": ["string", "number"] if bare else "string",
            "title": self.kind,
            "description": f"{self.kind} with its unit, for example {self.example or EXAMPLES[self.kind]}",
        }


FEW_ROWS, MOST_ROWS = 8, 20  # that a message lists, with and without near ones


@dataclass(frozen=True)
class Row:
    """A field that names a row of a published table. It stands beside `str` in an annotation."""

    table: str
    column: str

    @property
    def words(self) -> list[str]:
        """The rows that may be named, in the order of the table."""
        return list(dict.fromkeys(load_table(self.table).columns[self.column]))

    def read(self, value: Any) -> str:
        """The row's name; ValueError says what is allowed, the nearest first."""
        words = self.words
        text = " ".join(value.split()) if isinstance(value, str) else None
        if text in words:
            return text
        close = get_close_matches(text or "", words, n=3, cutoff=0.5)
        shown = words
        if len(words) > (FEW_ROWS if close else MOST_ROWS):
            shown = [*(close or words[:MOST_ROWS]), f"and {len(words)} rows in all"]
        advice = f"did you mean {close[0]!r}?" if close else "choose one of these"
        raise ValueError(f"got {said(value)}; allowed: {', '.join(shown)}; {advice}")

    def __get_pydantic_core_schema__(self, source: Any, handler: GetCoreSchemaHandler) -> CoreSchema:
        return core_schema.no_info_before_validator_function(self.read, handler(source))

    def __get_pydantic_json_schema__(self, schema: CoreSchema, handler: GetJsonSchemaHandler) -> dict[str, Any]:
        return {"type": "string", "enum": self.words}


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
    "power": "'2.5 kW'",
    "mass rate": "'3 kg/h' or '50 g/min'",
    "density": "'2600 kg/m3' or '160 lb/ft3'",
    "speed of rotation": "'1450 rpm'",
    "time": "'2000 h'",
}


# To the nanometre, so that two places either coincide or lie apart.
Coordinate = Annotated[float, Measure("length", "m", least=-1000.0, most=1000.0, bare_zero=True, decimals=9)]
Side = Annotated[float, Measure("length", "m", above=0.0, most=1000.0)]
Height = Annotated[float, Measure("length", "m", above=0.0, most=10.0)]
Run = Annotated[float, Measure("length", "m", least=0.0, most=1000.0)]
Size = Annotated[float, Measure("length", least=0.001, most=100.0)]
DuctSize = Annotated[float, Measure("length", least=0.01, most=10.0)]
Width = Annotated[float, Measure("length", least=0.0, most=100.0)]
Altitude = Annotated[float, Measure("length", "m", least=-500.0, most=11000.0)]
Flow = Annotated[float, Measure("flow", least=1e-5, most=1000.0)]
FlowRead = Annotated[float, Measure("flow", least=0.0, most=1000.0)]
Speed = Annotated[float, Measure("velocity", least=0.0, most=100.0)]
CaptureSpeed = Annotated[float, Measure("velocity", least=0.01, most=100.0)]
Pressure = Annotated[float, Measure("pressure", least=0.0, most=100000.0)]
AirPressure = Annotated[float, Measure("pressure", least=20000.0, most=200000.0)]
AirTemperature = Annotated[float, Measure("temperature", least=173.15, most=373.15)]
Share = Annotated[float, Measure("share", least=0.0, most=1.0)]
Efficiency = Annotated[float, Measure("share", least=0.05, most=1.0)]
Turn = Annotated[float, Measure("angle", least=math.radians(20) - 1e-9, most=math.pi / 2 + 1e-9)]
Entry = Annotated[float, Measure("angle", least=math.radians(10) - 1e-9, most=math.pi / 2 + 1e-9)]
HotTemperature = Annotated[float, Measure("temperature", least=273.15, most=3273.15)]
Power = Annotated[float, Measure("power", above=0.0, most=1e7)]
MassRate = Annotated[float, Measure("mass rate", above=0.0, most=1000.0)]
SolidDensity = Annotated[float, Measure("density", least=1.0, most=25000.0)]
Grain = Annotated[float, Measure("length", "um", least=1e-8, most=0.05)]
StreamSpeed = Annotated[float, Measure("velocity", least=0.001, most=100.0)]
StreamTemperature = Annotated[float, Measure("temperature", least=173.15, most=1773.15)]
Eddy = Annotated[float, Measure("length", least=0.01, most=10.0)]
RelativeDensity = Annotated[float, Measure("number", least=0.05, most=20.0, example="1.5")]
ThrowSpeed = Annotated[float, Measure("velocity", above=0.0, most=300.0)]
Taper = Annotated[float, Measure("angle", least=math.radians(15) - 1e-9, most=math.pi + 1e-9)]
Cone = Annotated[
    float, Measure("angle", least=math.radians(5) - 1e-9, most=math.radians(60) + 1e-9, example="'30 deg'")
]
DuctTemperature = Annotated[float, Measure("temperature", least=233.15, most=1273.15, example="'80 degC'")]
DriveLoss = Annotated[float, Measure("share", least=0.0, most=0.5, example="'5 %'")]
Gap = Annotated[float, Measure("number", least=0.45, most=1.0, example="0.75")]
Number = Annotated[float, Measure("number", least=0.0, most=1000.0)]
Exponent = Annotated[float, Measure("number", least=0.0, most=3.0)]


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
WallPoint = Annotated[
    tuple[Coordinate, Coordinate], BeforeValidator(lambda v: _listed(v, 2, "lengths", "[2 m, 1.05 m]"))
]
Box = Annotated[tuple[Side, Side, Side], BeforeValidator(lambda v: _listed(v, 3, "lengths", "[9 m, 6 m, 3.2 m]"))]


Inside = Annotated[
    tuple[Size, Size, Size], BeforeValidator(lambda v: _listed(v, 3, "lengths", "[1.2 m, 0.8 m, 0.7 m]"))
]


def two_points(value: Any) -> Any:
    """A list of two points, or ValueError."""
    return _listed(value, 2, "points", "[[2 m, 1.5 m, 0.9 m], [3 m, 1.5 m, 0.9 m]]")


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


HoodForm = Annotated[str, Row("hood_forms", "form")]
EnclosureForm = Annotated[str, Row("face_velocity", "form")]
EntryRow = Annotated[str, Row("hood_entry_loss", "hood")]
Process = Annotated[str, Row("process_guide", "process")]
