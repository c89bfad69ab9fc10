"""The workplace as a model: every quantity an SI float, every name a text.

A model is made by `read.py` from the file's text and is never changed. Axes are right-handed with z up and the
origin in a floor corner; `facing` is the direction a hood's opening looks, out of the hood and into the room.
"""

from typing import Annotated, Literal

from pydantic import BeforeValidator, Field, model_validator

from hoodwright.workplace import quantities as q
from hoodwright.workplace.base import FlowReading, Part, Resistance, Shaped, as_list
from hoodwright.workplace.ductwork import (
    NARROWEST_HOSE,
    Cleaner,
    Duct,
    Fan,
    Fitting,
    Leak,
    Material,
    Outlet,
    Prices,
    Scenario,
    SystemEffect,
)
from hoodwright.workplace.giving_off import Falls, Heat, Release, Source, Stream, StreamOpening, Tank, Throws, Wheel
from hoodwright.workplace.hoods import (
    CapturingHood,
    EnclosingHood,
    Hood,
    HoodEntry,
    Opening,
    OtherOpening,
    PushNozzle,
    ReceivingHood,
    Slots,
    TakeOff,
)
from hoodwright.workplace.room import Draught, Room, RoomOpening

__all__ = [
    "FORMAT",
    "NARROWEST_HOSE",
    "AirState",
    "CapturingHood",
    "Cleaner",
    "Contaminant",
    "Draught",
    "Duct",
    "EnclosingHood",
    "Falls",
    "Fan",
    "Fitting",
    "FlowReading",
    "Hazard",
    "Heat",
    "Hood",
    "HoodEntry",
    "Kind",
    "Leak",
    "Material",
    "Opening",
    "OtherOpening",
    "Outlet",
    "Part",
    "Person",
    "Prices",
    "PushNozzle",
    "ReceivingHood",
    "Release",
    "Resistance",
    "Room",
    "RoomOpening",
    "Scenario",
    "Shaped",
    "Slots",
    "Source",
    "Stream",
    "StreamOpening",
    "Surface",
    "SystemEffect",
    "TakeOff",
    "Tank",
    "Throws",
    "Transport",
    "Uncertainty",
    "Wheel",
    "Workplace",
]

FORMAT = 1

Kind = Literal["gas", "vapour", "smoke", "fume", "mist", "dust"]
Hazard = Literal[
    "asthmagen",
    "carcinogen",
    "isocyanate",
    "asbestos",
    "lead",
    "silica",
    "flammable",
    "explosible dust",
    "sparks",
    "aluminium or magnesium",
    "acid",
    "cyanide",
    "hypochlorite",
    "perchloric",
    "oxidiser",
    "organic",
]
Transport = Literal["vapour", "fume", "fine dust", "dry dust", "workshop dust", "heavy dust", "moist dust"]


class AirState(Part):
    """Air of the room. Humidity in one of three ways, pressure by altitude or directly."""

    temperature: q.AirTemperature = 293.15
    relative_humidity: q.Share | None = None
    wet_bulb: q.AirTemperature | None = None
    dew_point: q.AirTemperature | None = None
    altitude: q.Altitude | None = None
    pressure: q.AirPressure | None = None

    @model_validator(mode="after")
    def _one_way_each(self):
        humid = [n for n in ("relative_humidity", "wet_bulb", "dew_point") if getattr(self, n) is not None]
        if len(humid) > 1:
            raise ValueError(f"humidity is given {len(humid)} times ({', '.join(humid)}); keep one")
        if self.altitude is not None and self.pressure is not None:
            raise ValueError("altitude and pressure both say how thick the air is; keep one")
        for name in ("wet_bulb", "dew_point"):
            if getattr(self, name) is not None and getattr(self, name) > self.temperature:
                got, most = q.plain(getattr(self, name), "temperature"), q.plain(self.temperature, "temperature")
                raise ValueError(f"{name} {got} is above the air's {most}; it can be at most equal: read both again")
        return self


class Person(Part):
    """Someone at work: where they stand, and where they look."""

    name: q.Name
    at: q.FloorPoint
    facing: q.Direction = (0.0, 1.0, 0.0)
    breathing_height: q.Height = 1.5


class Contaminant(Part):
    """What is given off, and what it can do."""

    name: q.Name
    kind: Kind
    hazards: Annotated[tuple[Hazard, ...], BeforeValidator(as_list)] = ()
    transport: Transport | None = None
    reviewed_by: q.Text | None = None
    relative_density: q.RelativeDensity | None = None


class Surface(Part):
    """A flat rectangle such as a bench top: one corner and two sides."""

    name: q.Name
    corner: q.Point
    sides: tuple[q.Point, q.Point]

    @model_validator(mode="after")
    def _has_area(self):
        a, b = self.sides
        cross = (a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0])
        if sum(c * c for c in cross) < 1e-12:
            raise ValueError("the two sides span no area; give two sides in different directions")
        return self


class Uncertainty(Part):
    """How well the inputs of the computed air are known: the half width of the 95 % interval of each."""

    flow: Annotated[float, q.Measure("share", least=0.0, most=0.9)] = 0.10
    position: Annotated[float, q.Measure("length", least=0.0, most=1.0)] = 0.05
    draught: Annotated[float, q.Measure("velocity", least=0.0, most=2.0)] = 0.05
    release: Annotated[float, q.Measure("share", least=0.0, most=0.9)] = 0.10


class Workplace(Part):
    """One workplace file."""

    hoodwright: int
    name: q.Name
    about: q.Text | None = None
    units: Literal["SI", "US"] = "SI"
    air: AirState = AirState()
    room: Room
    uncertainty: Uncertainty = Uncertainty()
    people: Annotated[tuple[Person, ...], BeforeValidator(as_list)] = ()
    contaminants: Annotated[tuple[Contaminant, ...], BeforeValidator(as_list)]
    surfaces: Annotated[tuple[Surface, ...], BeforeValidator(as_list)] = ()
    sources: Annotated[tuple[Source, ...], BeforeValidator(as_list)]
    hoods: Annotated[tuple[Annotated[Hood, Field(discriminator="type")], ...], BeforeValidator(as_list)]
    ducts: Annotated[tuple[Duct, ...], BeforeValidator(as_list)] = ()
    cleaners: Annotated[tuple[Cleaner, ...], BeforeValidator(as_list)] = ()
    fans: Annotated[tuple[Fan, ...], BeforeValidator(as_list)] = ()
    scenarios: Annotated[tuple[Scenario, ...], BeforeValidator(as_list)] = ()
    prices: Prices = Prices()

    def source(self, name: str) -> Source:
        """The source of that name."""
        return next(s for s in self.sources if s.name == name)

    def contaminant(self, name: str) -> Contaminant:
        """The contaminant of that name."""
        return next(c for c in self.contaminants if c.name == name)
