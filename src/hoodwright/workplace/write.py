"""A workplace model as the text of a workplace file, which reads back as the same model."""

from itertools import repeat
from types import UnionType
from typing import Annotated, Any, Union, get_args, get_origin

from hoodwright import units
from hoodwright.workplace.base import Part
from hoodwright.workplace.document import as_yaml
from hoodwright.workplace.model import Workplace
from hoodwright.workplace.quantities import Measure

SYSTEM = "SI"


def as_text(workplace: Workplace) -> str:
    """The text of a file that says what the workplace says; its comments are not known here."""
    return text_of(as_data(workplace))


def text_of(data: dict[str, Any]) -> str:
    """Keys of a workplace file and their values as text: one line for each part."""
    lines = []
    for key, value in data.items():
        if isinstance(value, list):
            lines += ["", f"{key}:", *(f"  - {as_yaml(item)}" for item in value)] if value else []
        else:
            lines.append(f"{key}: {as_yaml(value)}")
    return "\n".join(lines) + "\n"


def as_data(part: Part) -> dict[str, Any]:
    """A part of the model as the keys and words of the file; what was never said stays unsaid."""
    data = {}
    for name, field in type(part).model_fields.items():
        value = getattr(part, name)
        if name in part.model_fields_set and value is not None:
            kind = Annotated[(field.annotation, *field.metadata)] if field.metadata else field.annotation
            data[field.alias or name] = _said(value, kind)
    return data


def _said(value: Any, kind: Any) -> Any:
    """A value as the file says it; `kind` is how the model declares it."""
    if get_origin(kind) is Annotated:
        inner, *notes = get_args(kind)
        measure = next((note for note in notes if isinstance(note, Measure)), None)
        return _said(value, inner) if measure is None else _quantity(value, measure)
    if isinstance(value, Part):
        return as_data(value)
    if get_origin(kind) in (Union, UnionType):
        return _said(value, next(one for one in get_args(kind) if one is not type(None)))
    if isinstance(value, tuple):
        inner_kinds = get_args(kind)
        kinds = repeat(inner_kinds[0]) if inner_kinds[-1] is Ellipsis else iter(inner_kinds)
        return [_said(one, inner) for one, inner in zip(value, kinds, strict=False)]
    return value


def _quantity(value: float, measure: Measure) -> str | float:
    if measure.kind == "number":
        return value
    return units.write(value, measure.kind, SYSTEM)
