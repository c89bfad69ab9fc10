"""Ductwork of the workplace file: ducts with their fittings, air cleaners, and the states they are used in."""

from typing import Annotated, Literal

from pydantic import BeforeValidator, ConfigDict, Field, model_validator

from hoodwright.workplace import quantities as q
from hoodwright.workplace.base import Part, Resistance, Shaped, as_list, one_of
from hoodwright.workplace.fans import Fan, Outlet, SystemEffect
from hoodwright.workplace.states import DAMPER_LOSS, Positions, Price

__all__ = [
    "NARROWEST_HOSE",
    "Cleaner",
    "Duct",
    "Fan",
    "Fitting",
    "Leak",
    "Material",
    "Outlet",
    "Prices",
    "Scenario",
    "SystemEffect",
]

NARROWEST_HOSE = 0.03  # m; below, its ridges are too high for the friction law
WIDEST_SMOOTH, WIDEST_BEND = 2.5, 20.0  # radius over diameter: end of the elbow table, and of the bend formula
SMALLEST_RADIUS = {3: 0.5, 4: 0.75, 5: 0.75}  # rows of the elbows of pieces
WIDEST_PIECES, WIDEST_RECTANGULAR = 2.0, 1.5

DamperLoss = Annotated[float, DAMPER_LOSS]
Rise = Annotated[float, q.Measure("length", "m", least=-300.0, most=300.0, bare_zero=True)]
Material = Literal["galvanised", "medium smooth", "black iron", "stainless", "PVC", "flexible"]


class Fitting(Part):
    """An elbow, a damper, a weather cap, or another loss given as a number of velocity pressures."""

    elbow: q.Turn | None = None
    radius: q.Number = 1.5
    pieces: Literal[3, 4, 5] | None = None
    mitred: bool = False
    damper: q.Pressure | None = None
    damper_loss: DamperLoss | None = None
    weather_cap: q.Gap | None = None
    loss: q.Number | None = None
    name: q.Text | None = None

    @model_validator(mode="after")
    def _one_kind(self):
        kind = one_of(self, ("elbow", "loss", "damper", "damper_loss", "weather_cap"), "'elbow: 90 deg' or 'loss: 0.3'")
        if kind != "elbow" and (self.pieces is not None or self.mitred):
            raise ValueError(f"'pieces' and 'mitred' belong to an elbow, and this is a {kind}; remove them")
        if self.mitred and self.pieces is not None:
            raise ValueError("a mitred elbow is of two pieces; keep 'mitred' or 'pieces', not both")
        return self

    @model_validator(mode="after")
    def _tabulated_radius(self):
        low, high, what = 0.5, WIDEST_BEND, "round elbows and bends are known"
        if self.pieces is not None:
            low, high, what = (
                SMALLEST_RADIUS[self.pieces],
                WIDEST_PIECES,
                f"elbows of {self.pieces} pieces are tabulated",
            )
        if self.elbow is not None and not self.mitred and not low <= self.radius <= high:
            raise ValueError(
                f"got radius {self.radius:g}; {what} for radius {low:g} to {high:g} diameters: choose one inside, or "
                "give its 'loss'"
            )
        return self


class Leak(Part):
    """What a duct lets through its seams: a flow at one difference of pressure."""

    flow: q.Flow
    at: Annotated[float, q.Measure("pressure", least=1.0, most=100000.0)]


class Duct(Shaped):
    """A straight run of one size, from a hood, junction, cleaner or fan to the next or outside."""

    model_config = ConfigDict(extra="forbid", frozen=True, populate_by_name=True, hide_input_in_errors=True)

    name: q.Name
    start: q.Name = Field(alias="from")
    to: q.Name
    round: q.DuctSize | None = None
    rectangle: q.DuctRectangle | None = None
    oval: q.DuctRectangle | None = None
    length: q.Run
    rise: Rise = 0.0
    material: Material = "galvanised"
    fittings: Annotated[tuple[Fitting, ...], BeforeValidator(as_list)] = ()
    joins_at: q.Entry | None = None
    taper: q.Cone | None = None
    temperature: q.DuctTemperature | None = None
    leak: Leak | None = None

    @property
    def sides(self) -> tuple[float, float]:
        """Width and height; the diameter two times where it is round."""
        return self.oval or super().sides

    @model_validator(mode="after")
    def _one_shape(self):
        given = [name for name in ("round", "rectangle", "oval") if getattr(self, name) is not None]
        if len(given) != 1:
            got = "none" if not given else "both" if "oval" not in given else " and ".join(given)
            raise ValueError(f"got {got}; one shape is needed: 'round: 100 mm' or 'rectangle: [300 mm, 200 mm]'")
        if self.oval is not None and self.oval[0] < self.oval[1]:
            long, short = (q.plain(side, "length") for side in self.oval)
            raise ValueError(f"got oval [{long}, {short}]; its longer side comes first: exchange the two")
        return self

    @model_validator(mode="after")
    def _rises_no_more_than_it_is_long(self):
        if abs(self.rise) > self.length * (1 + 1e-9):
            rise, length = q.plain(self.rise, "length"), q.plain(self.length, "length")
            raise ValueError(f"got rise {rise} over a length of {length}; a duct rises no more than it is long")
        return self

    @model_validator(mode="after")
    def _hose_is_wide_enough(self):
        narrow = min(self.sides)
        if self.material == "flexible" and narrow < NARROWEST_HOSE:
            got, least = q.plain(narrow, "length"), q.plain(NARROWEST_HOSE, "length")
            raise ValueError(f"got a flexible hose of {got}; its friction is known from {least}: choose a wider one")
        return self

    @model_validator(mode="after")
    def _fittings_fit(self):
        for fitting in self.fittings:
            if fitting.weather_cap is not None and self.to != "outside":
                raise ValueError(
                    f"a weather cap stands on the stack, and {self.name!r} leads to {self.to!r}; move the cap"
                )
            if not self.is_round and fitting.elbow is not None:
                self._rectangular_elbow(fitting)
        return self

    def _rectangular_elbow(self, fitting: Fitting) -> None:
        if self.oval is not None:
            raise ValueError("no table has elbows of oval ducts; give its 'loss' instead, from the maker")
        if fitting.pieces is not None:
            raise ValueError(
                "elbows of pieces are round, and this duct is rectangular; remove 'pieces', or give the 'loss'"
            )
        if not fitting.mitred and fitting.radius > WIDEST_RECTANGULAR:
            raise ValueError(
                f"got radius {fitting.radius:g} in a rectangular duct; its elbows are tabulated for radius 0.5 to "
                f"{WIDEST_RECTANGULAR:g} sides: choose one inside, or give its 'loss'"
            )


class Cleaner(Part):
    """An air cleaner between two ducts."""

    name: q.Name
    resistance: Resistance


class Scenario(Part):
    """A way the system is used: which hoods are shut off, and how dampers stand [velocity pressures of their duct]."""

    name: q.Name
    closed: Annotated[tuple[q.Name, ...], BeforeValidator(as_list)] = ()
    dampers: Annotated[tuple[tuple[str, float], ...], Positions()] = ()


class Prices(Part):
    """The user's own prices, in one currency."""

    energy: Annotated[float | None, Price("kWh")] = None
    sheet: Annotated[float | None, Price("m2")] = None
    years: Annotated[float, q.Measure("number", above=0.0, most=50.0, example="10")] = 10.0
    currency: q.Name | None = None
