"""What can be changed on a source: how it gives off, where, how hot, and how it throws or falls."""

from typing import get_args

from hoodwright.web.components.fields import Fields
from hoodwright.workplace.giving_off import WheelWork
from hoodwright.workplace.model import Source
from hoodwright.workplace.tree import Path

RELEASES = {
    "still": "still: it seeps off by itself",
    "gentle": "gentle: it leaves slowly",
    "driven": "driven: it is pushed out",
    "thrown": "thrown: it is flung off",
}
PLACES = {"line": ("First end: ", "Other end: "), "box": ("One corner: ", "Opposite corner: ")}
GROUPS = {
    "heat": "How hot is it?",
    "wheel": "What wheel is it?",
    "throws": "How does it throw?",
    "falls": "What falls in?",
}
TANK = {
    "hazard": {"A": "A: the worst", "B": "B", "C": "C", "D": "D: the least"},
    "evolution": {"1": "1: the fastest", "2": "2", "3": "3", "4": "4: the slowest"},
}
NUMBERS = {
    "heat": (
        ("round", "Diameter of what is hot", "length"),
        ("rectangle", "of what is hot", "length"),
        ("height", "Height of its hot sides", "length"),
        ("temperature", "Temperature", "temperature"),
        ("convective", "Heat that its air carries", "power"),
        ("boils_off", "Steam boiled off", "mass rate"),
    ),
    "wheel": (("diameter", "Wheel diameter", "length"), ("width", "Wheel width", "length")),
    "throws": (
        ("speed", "Speed of the throw", "velocity"),
        ("grain", "Grain size", "length"),
        ("grain_density", "Density of a grain", "density"),
    ),
    "falls": (
        ("rate", "Rate", "mass rate"),
        ("height", "Height of the fall", "length"),
        ("grain", "Grain size", "length"),
        ("grain_density", "Density of a grain", "density"),
        ("bulk_density", "Density in bulk", "density"),
    ),
}


def layout_of_source(source: Source) -> tuple:
    """What decides which fields there are."""
    given = tuple(key for name in GROUPS for key, *_ in NUMBERS[name] if _value(source, name, key) is not None)
    return source.place_key, len(source.points), given, source.tank is None


def source_fields(fields: Fields, source: Source, path: Path) -> None:
    """All fields of a source."""
    with fields.group("How is it given off?"):
        release = (*path, "dispersion")
        fields.radio("Release", RELEASES, lambda: fields.says(release), lambda doc, chosen: doc.set(release, chosen))
        fields.optional((*path, "capture_velocity"), "Capture velocity, stated", "velocity")
    with fields.group("Where is it?"):
        _place(fields, source, path)
    for name, title in GROUPS.items():
        if getattr(source, name) is not None:
            with fields.group(title):
                _numbers(fields, source, (*path, name), name)
    if source.tank is not None:
        with fields.group("What class of tank is it?"):
            _tank(fields, (*path, "tank"))


def _place(fields: Fields, source: Source, path: Path) -> None:
    key = source.place_key
    if key == "at":
        fields.point((*path, "at"))
        return
    count = len(source.path or ()) or 2
    for index in range(count):
        of = PLACES[key][index] if key in PLACES else f"Point {index + 1}: "
        fields.point((*path, key, index), of)


def _tank(fields: Fields, path: Path) -> None:
    hazard, evolution = (*path, "hazard"), (*path, "evolution")
    fields.radio("Hazard", TANK["hazard"], lambda: fields.says(hazard), lambda doc, chosen: doc.set(hazard, chosen))
    fields.radio(
        "How fast it gives off",
        TANK["evolution"],
        lambda: fields.says(evolution),
        lambda doc, chosen: doc.set(evolution, int(chosen)),
    )


def _numbers(fields: Fields, source: Source, path: Path, name: str) -> None:
    for key, label, kind in NUMBERS[name]:
        value = _value(source, name, key)
        if value is None:
            continue
        if isinstance(value, tuple):
            for side, word in enumerate(("Length", "Width")):
                fields.text((*path, key, side), f"{word} {label}", kind)
        else:
            fields.text((*path, key), label, kind)
    if name == "wheel":
        fields.rows((*path, "work"), "Work", get_args(WheelWork), optional=False)
    if name == "throws":
        fields.direction((*path, "towards"), "Towards, as three numbers")


def _value(source: Source, name: str, key: str):
    return getattr(getattr(source, name), key, None)
