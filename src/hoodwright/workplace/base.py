"""What every part of the workplace file is built from: no unknown keys, one shape each, never changed."""

from pydantic import BaseModel, ConfigDict, model_validator

from hoodwright.workplace import quantities as q


def as_list(value):
    """The value, if it is a list; else ValueError says how a list is written."""
    if not isinstance(value, list):
        raise ValueError(f"a list is needed, got {q.said(value)}; begin each entry with '- '")
    return value


def one_of(part: BaseModel, names: tuple[str, ...], example: str) -> str:
    """The one name that is given; ValueError where none or more than one is."""
    given = [name for name in names if getattr(part, name) is not None]
    if len(given) != 1:
        got = " and ".join(given) if given else "none of them"
        raise ValueError(f"got {got}; one of {', '.join(names)} is needed, for example {example}; keep one")
    return given[0]


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


class FlowReading(Part):
    """A flow read on site, with the half width of its 95 % interval."""

    flow: q.FlowRead
    uncertainty: q.Share | None = None
    date: q.Text | None = None


class Resistance(Part):
    """Pressure an air cleaner or filter takes, clean and dirty, at one flow; it grows with flow to a power."""

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
