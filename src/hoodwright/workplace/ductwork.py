"""Ductwork of the workplace file: ducts with their fittings, air cleaners and fans."""

from typing import Annotated, Literal

from pydantic import BeforeValidator, ConfigDict, Field, model_validator

from hoodwright.workplace import quantities as q
from hoodwright.workplace.base import Part, Resistance, Shaped, as_list, one_of

NARROWEST_HOSE = 0.03  # m; below, its ridges are too high for the friction law
WIDEST_SMOOTH, WIDEST_BEND = 2.5, 20.0  # radius over diameter: end of the elbow table, and of the bend formula
SMALLEST_RADIUS = {3: 0.5, 4: 0.75, 5: 0.75}  # rows of the elbows of pieces
WIDEST_PIECES, WIDEST_RECTANGULAR = 2.0, 1.5

Material = Literal["galvanised", "medium smooth", "black iron", "stainless", "PVC", "flexible"]


class Fitting(Part):
    """An elbow, a damper, a weather cap, or another loss given as a number of velocity pressures."""

    elbow: q.Turn | None = None
    radius: q.Number = 1.5
    pieces: Literal[3, 4, 5] | None = None
    mitred: bool = False
    damper: q.Pressure | None = None
    weather_cap: q.Gap | None = None
    loss: q.Number | None = None
    name: q.Text | None = None

    @model_validator(mode="after")
    def _one_kind(self):
        kind = one_of(self, ("elbow", "loss", "damper", "weather_cap"), "'elbow: 90 deg' or 'loss: 0.3'")
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
    fittings: Annotated[tuple[Fitting, ...], BeforeValidator(as_list)] = ()
    joins_at: q.Entry | None = None
    taper: q.Cone | None = None
    temperature: q.DuctTemperature | None = None

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


class Fan(Part):
    """A fan between the collecting duct and the discharge; `drive_loss` is what its belts take of the motor's power."""

    name: q.Name
    efficiency: q.Efficiency | None = None
    drive_loss: q.DriveLoss | None = None
