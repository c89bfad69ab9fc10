"""The workplace as a model: every quantity an SI float, every name a text.

A model is made by `read.py` from the file's text and is never changed. Axes are right-handed with z up and the
origin in a floor corner; `facing` is the direction a hood's opening looks, out of the hood and into the room.
"""

from typing import Annotated, Literal

from pydantic import BaseModel, BeforeValidator, ConfigDict, Field, model_validator

from hoodwright.workplace import quantities as q

FORMAT = 1
NARROWEST_HOSE = 0.03  # m; below, its ridges are too high for the friction law

Release = Literal["still", "gentle", "driven", "thrown"]
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
Material = Literal["galvanised", "medium smooth", "flexible"]


def _as_list(value):
    if not isinstance(value, list):
        raise ValueError(f"a list is needed, got {q.said(value)}; begin each entry with '- '")
    return value


class Part(BaseModel):
    """Base of every part of the file: no unknown keys, never changed."""

    model_config = ConfigDict(extra="forbid", frozen=True, hide_input_in_errors=True)


class Shaped(Part):
    """Base of what has a round or a rectangular section."""

    round: float | None = None
    rectangle: tuple[float, float] | None = None

    @property
    def is_round(self) -> bool:
        """Whether the section is round."""
        return self.round is not None

    @property
    def sides(self) -> tuple[float, float]:
        """Width and height; the diameter two times where it is round."""
        return self.rectangle or (self.round or 0.0, self.round or 0.0)

    @model_validator(mode="after")
    def _one_shape(self):
        if (self.round is None) == (self.rectangle is None):
            got = "none" if self.round is None else "both"
            raise ValueError(f"got {got}; one shape is needed: 'round: 100 mm' or 'rectangle: [300 mm, 200 mm]'")
        return self


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


class Draught(Part):
    """A cross-draught through the work space."""

    towards: q.Direction
    speed: q.Speed
    wander: q.Speed = 0.0


class Room(Part):
    """Inner size of the room, x by y by z, and its draught."""

    size: q.Box
    draught: Draught | None = None


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
    hazards: Annotated[tuple[Hazard, ...], BeforeValidator(_as_list)] = ()
    transport: Transport | None = None
    reviewed_by: q.Text | None = None


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


class Source(Part):
    """A point that gives off a contaminant, and how briskly."""

    name: q.Name
    contaminant: q.Name
    at: q.Point
    dispersion: Release
    capture_velocity: q.CaptureSpeed | None = None


class Opening(Shaped):
    """A hood's opening or a duct's section: round or rectangular."""

    round: q.Size | None = None
    rectangle: q.Rectangle | None = None


class FlowReading(Part):
    """A flow read on site, with the half width of its 95 % interval."""

    flow: q.FlowRead
    uncertainty: q.Share | None = None
    date: q.Text | None = None


class Hood(Part):
    """A capturing hood: opening, place, direction, and its flow at four times of its life."""

    name: q.Name
    type: Literal["capturing"]
    serves: Annotated[tuple[q.Name, ...], Field(min_length=1), BeforeValidator(_as_list)]
    opening: Opening
    flange: q.Width = 0.0
    bell_mouth: bool = False
    at: q.Point
    facing: q.Direction
    intended_flow: q.Flow | None = None
    commissioned: FlowReading | None = None
    today: FlowReading | None = None


class Fitting(Part):
    """An elbow, or another loss given as a number of velocity pressures."""

    elbow: q.Turn | None = None
    radius: q.Number = 1.5
    pieces: Literal[4, 5] | None = None
    loss: q.Number | None = None
    name: q.Text | None = None

    @model_validator(mode="after")
    def _one_kind(self):
        if (self.elbow is None) == (self.loss is None):
            raise ValueError("one of the two is needed: 'elbow: 90 deg' or 'loss: 0.3' (velocity pressures); keep one")
        if self.pieces is not None and self.radius != 1.5:
            raise ValueError(
                f"got radius {self.radius:g}; elbows of pieces are tabulated at radius 1.5 only: "
                "write 'radius: 1.5' or leave out pieces"
            )
        if self.pieces is None and self.elbow is not None and not 0.5 <= self.radius <= 2.5:
            raise ValueError(
                f"got radius {self.radius:g}; smooth elbows are tabulated for radius 0.5 to 2.5 diameters: "
                "choose one inside, or give its 'loss'"
            )
        return self


class Duct(Shaped):
    """A straight run of one size, from a hood, junction, cleaner or fan to the next or outside."""

    model_config = ConfigDict(extra="forbid", frozen=True, populate_by_name=True, hide_input_in_errors=True)

    name: q.Name
    start: q.Name = Field(alias="from")
    to: q.Name
    round: q.DuctSize | None = None
    rectangle: q.DuctRectangle | None = None
    length: q.Run
    material: Material = "galvanised"
    fittings: Annotated[tuple[Fitting, ...], BeforeValidator(_as_list)] = ()
    joins_at: q.Entry | None = None

    @model_validator(mode="after")
    def _hose_is_wide_enough(self):
        narrow = min(self.sides)
        if self.material == "flexible" and narrow < NARROWEST_HOSE:
            got, least = q.plain(narrow, "length"), q.plain(NARROWEST_HOSE, "length")
            raise ValueError(f"got a flexible hose of {got}; its friction is known from {least}: choose a wider one")
        return self


class Resistance(Part):
    """Pressure an air cleaner takes, clean and dirty, at one flow; it grows with flow to a power."""

    clean: q.Pressure
    dirty: q.Pressure
    at: q.Flow
    exponent: q.Exponent = 1.0

    @model_validator(mode="after")
    def _dirty_is_more(self):
        if self.dirty < self.clean:
            dirty, clean = q.plain(self.dirty, "pressure"), q.plain(self.clean, "pressure")
            raise ValueError(f"dirty {dirty} is below clean {clean}; exchange them or read them again")
        return self


class Cleaner(Part):
    """An air cleaner between two ducts."""

    name: q.Name
    resistance: Resistance


class Fan(Part):
    """A fan between the collecting duct and the discharge."""

    name: q.Name
    efficiency: q.Efficiency | None = None


class Workplace(Part):
    """One workplace file."""

    hoodwright: int
    name: q.Name
    about: q.Text | None = None
    units: Literal["SI", "US"] = "SI"
    air: AirState = AirState()
    room: Room
    people: Annotated[tuple[Person, ...], BeforeValidator(_as_list)] = ()
    contaminants: Annotated[tuple[Contaminant, ...], BeforeValidator(_as_list)]
    surfaces: Annotated[tuple[Surface, ...], BeforeValidator(_as_list)] = ()
    sources: Annotated[tuple[Source, ...], BeforeValidator(_as_list)]
    hoods: Annotated[tuple[Hood, ...], BeforeValidator(_as_list)]
    ducts: Annotated[tuple[Duct, ...], BeforeValidator(_as_list)] = ()
    cleaners: Annotated[tuple[Cleaner, ...], BeforeValidator(_as_list)] = ()
    fans: Annotated[tuple[Fan, ...], BeforeValidator(_as_list)] = ()

    def source(self, name: str) -> Source:
        """The source of that name."""
        return next(s for s in self.sources if s.name == name)

    def contaminant(self, name: str) -> Contaminant:
        """The contaminant of that name."""
        return next(c for c in self.contaminants if c.name == name)
