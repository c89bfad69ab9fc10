"""Sources of the workplace file: where something is given off, how briskly, how hot, and how it is thrown or falls."""

import math
from itertools import product
from typing import Annotated, Any, Literal

from pydantic import BeforeValidator, model_validator

from hoodwright.workplace import quantities as q
from hoodwright.workplace.base import Part, Shaped, as_list, one_of

Release = Literal["still", "gentle", "driven", "thrown"]
HeatForm = Literal["face", "body", "cylinder", "boiling tank"]
WHEELS = ("grinding", "cutting off", "buffing", "polishing", "scratch brushing")
WheelWork = Literal[
    "grinding",
    "cutting off",
    "buffing",
    "polishing",
    "scratch brushing",
    "single-spindle disc",
    "double-spindle disc",
    "covered vertical-spindle disc",
    "open vertical-spindle disc",
    "belt",
]
PLACES = ("at", "line", "box", "path")

Xyz = tuple[float, float, float]


class Heat(Shaped):
    """A hot process: its shape in plan, and how much heat its air carries.

    face: a level hot face, looking up. body: that face with vertical sides of `height`. cylinder: lies level,
    `rectangle` is its length and diameter. boiling tank: a liquid that gives off `boils_off` of steam.
    """

    form: HeatForm = "face"
    round: q.Size | None = None
    rectangle: q.Rectangle | None = None
    height: q.Size | None = None
    temperature: q.HotTemperature | None = None
    convective: q.Power | None = None
    boils_off: q.MassRate | None = None

    @model_validator(mode="after")
    def _one_strength(self):
        one_of(self, ("temperature", "convective", "boils_off"), "'temperature: 400 degC'")
        if (self.boils_off is not None) != (self.form == "boiling tank"):
            raise ValueError(f"form '{self.form}' and 'boils_off' do not fit: a boiling tank has it, nothing else does")
        if (self.form == "body") != (self.height is not None):
            raise ValueError(f"form '{self.form}' and 'height' do not fit: a body has one, nothing else does")
        if self.form == "cylinder" and self.is_round:
            raise ValueError("a cylinder lies level; give 'rectangle: [length, diameter]'")
        return self


class Wheel(Part):
    """A wheel, disc or belt that throws what it removes. A wheel has a diameter and a width, a disc the first only."""

    work: WheelWork
    diameter: q.Size | None = None
    width: q.Size | None = None

    @model_validator(mode="after")
    def _its_sizes(self):
        needed = {"diameter", "width"} if self.work in WHEELS else {"width" if self.work == "belt" else "diameter"}
        given = {name for name in ("diameter", "width") if getattr(self, name) is not None}
        if given != needed:
            got, asked = (" and ".join(sorted(names)) or "nothing" for names in (given, needed))
            raise ValueError(f"got {got}; '{self.work}' is told by its {asked} alone: give exactly that")
        return self


class Throws(Part):
    """A stream of thrown particles."""

    speed: q.ThrowSpeed
    grain: q.Grain
    grain_density: q.SolidDensity
    towards: q.Direction


class Falls(Part):
    """Material that falls into an enclosure, and carries air in with it."""

    rate: q.MassRate
    height: q.Size
    grain: q.Grain
    grain_density: q.SolidDensity
    bulk_density: q.SolidDensity

    @model_validator(mode="after")
    def _bulk_is_lighter(self):
        if self.bulk_density > self.grain_density:
            raise ValueError("bulk_density is above grain_density; air lies between grains: exchange them")
        return self


class StreamOpening(Shaped):
    """The opening that a stream leaves: a nozzle, a gap, the top of a pot."""

    round: q.Size | None = None
    rectangle: q.Rectangle | None = None


class Stream(Part):
    """A stream that leaves a source with a speed of its own, warm or cold."""

    opening: StreamOpening
    towards: q.Direction
    speed: q.StreamSpeed
    temperature: q.StreamTemperature | None = None


def _bends(value: Any) -> Any:
    if len(as_list(value)) < 2:
        example = "[[2 m, 1.5 m, 0.9 m], [3 m, 1.5 m, 0.9 m]]"
        raise ValueError(f"2 points or more are needed, got {len(value)}; write for example {example}")
    return value


class Tank(Part):
    """An open tank of liquid by its class: how bad what it gives off is (A the worst), and how fast (1 the fastest).

    baffled: behind its hood stands a wall, or an upright plate as long as the tank and as high as it is wide.
    """

    hazard: Literal["A", "B", "C", "D"]
    evolution: Literal[1, 2, 3, 4]
    baffled: bool = False

    @property
    def name(self) -> str:
        """The class as the tables write it."""
        return f"{self.hazard}-{self.evolution}"


class Source(Part):
    """A point, a line, a box or a path that gives off a contaminant, and how briskly."""

    name: q.Name
    contaminant: q.Name
    at: q.Point | None = None
    line: Annotated[tuple[q.Point, q.Point], BeforeValidator(q.two_points)] | None = None
    box: Annotated[tuple[q.Point, q.Point], BeforeValidator(q.two_points)] | None = None
    path: Annotated[tuple[q.Point, ...], BeforeValidator(_bends)] | None = None
    dispersion: Release
    capture_velocity: q.CaptureSpeed | None = None
    process: q.Process | None = None
    heat: Heat | None = None
    wheel: Wheel | None = None
    throws: Throws | None = None
    falls: Falls | None = None
    tank: Tank | None = None
    release: Stream | None = None

    @model_validator(mode="after")
    def _one_stream(self):
        if self.release is not None and self.heat is not None:
            raise ValueError("got both 'heat' and 'release'; the stream of hot work follows from its heat: keep one")
        return self

    @model_validator(mode="after")
    def _one_place(self):
        one_of(self, PLACES, "'at: [2 m, 1.5 m, 0.9 m]'")
        if self.tank is not None and (self.box is None or any(size <= 0 for size in self.plan)):
            raise ValueError(
                "'tank' needs the liquid's surface: give two opposite corners of it, for example "
                "'box: [[2 m, 1 m, 0.9 m], [3 m, 1.6 m, 0.9 m]]', in place of " + self.place_key
                if self.box is None
                else "'tank' needs a surface: the corners of its 'box' must differ in x and in y"
            )
        return self

    @property
    def plan(self) -> tuple[float, float]:
        """Its extent in x and y."""
        x, y = (max(p[i] for p in self.points) - min(p[i] for p in self.points) for i in (0, 1))
        return x, y

    @property
    def points(self) -> tuple[Xyz, ...]:
        """The point, the ends, the corners or the bends; the farthest of anything outside is among them."""
        if self.box is not None:
            return tuple(product(*zip(*self.box, strict=True)))  # type: ignore[arg-type]
        return ((self.at,) if self.at is not None else self.line or self.path) or ()

    @property
    def centre(self) -> Xyz:
        """The middle of its extent."""
        low, high = (tuple(pick(p[i] for p in self.points) for i in range(3)) for pick in (min, max))
        return tuple((a + b) / 2 for a, b in zip(low, high, strict=True))  # type: ignore[return-value]

    @property
    def place_key(self) -> str:
        """The key of the file that says where it is: at, line, box or path."""
        return next(key for key in PLACES if getattr(self, key) is not None)

    def farthest_from(self, point: Xyz) -> Xyz:
        """The place of the source that lies farthest from a point."""
        return max(self.points, key=lambda place: math.dist(place, point))
