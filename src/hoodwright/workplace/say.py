"""Faults found by the model, said in the words of the file's writer: what, got, allowed, what to do."""

import re
from collections.abc import Mapping
from difflib import get_close_matches
from typing import Any

from hoodwright.errors import Fault
from hoodwright.workplace import model
from hoodwright.workplace.hoods import HOOD_TYPES, hood_type
from hoodwright.workplace.quantities import said
from hoodwright.workplace.tree import Path, Tree


def place_of(detail: Mapping[str, Any]) -> Path:
    """Where in the file an error lies: its location, without the hood's type that pydantic puts in."""
    loc: Path = tuple(detail["loc"])
    inside = loc[:1] == ("hoods",) and len(loc) > 2 and loc[2] in HOOD_TYPES
    return (*loc[:2], *loc[3:]) if inside else loc


def say_fault(detail: Mapping[str, Any], data: dict, tree: Tree) -> Fault:
    """One pydantic error as a fault at its place in the file."""
    path = place_of(detail)
    kind = detail["type"]
    if kind == "union_tag_not_found":
        return _missing((*path, "type"), tree)
    if kind == "union_tag_invalid":
        return _wrong_type(path, data, tree)
    if kind == "missing":
        if path and isinstance(path[-1], int):
            return tree.fault(path[:-1], f"entry {path[-1] + 1} is missing; add it")
        return _missing(path, tree)
    if kind == "extra_forbidden":
        return _unknown_key(path, data, tree)
    return tree.fault(path, _message(kind, detail))


def _missing(path: Path, tree: Tree) -> Fault:
    place = tree.place(path[:-1])
    words = [step for step in path if isinstance(step, str)]
    example = MISSING_EXAMPLES.get(".".join(words[-2:])) or MISSING_EXAMPLES.get(words[-1])
    advice = f"add '{path[-1]}: {example}'" if example else f"add '{path[-1]}:'"
    return Fault(place.line, place.column, tree.label(path), f"missing; {advice}")


MISSING_EXAMPLES = {
    "hoodwright": "1",
    "name": "a name of its own",
    "size": "[9 m, 6 m, 3.2 m]",
    "at": "[2 m, 1.5 m, 0.9 m]",
    "facing": "[0, -1, 0]",
    "push.slot": "[1.2 m, 6 mm]",
    "slots.size": "[600 mm, 20 mm]",
    "plenum": "[600 mm, 300 mm]",
    "form": "spray booth",
    "work": "grinding",
    "hazard": "B",
    "evolution": "2",
    "grain": "100 um",
    "grain_density": "2600 kg/m3",
    "bulk_density": "800 kg/m3",
    "rate": "600 kg/h",
    "height": "1.2 m",
    "type": "capturing",
    "opening": "{round: 100 mm}",
    "dispersion": "gentle",
    "kind": "fume",
    "length": "3 m",
    "room": "{size: [9 m, 6 m, 3.2 m]}",
    "from": "a hood or junction",
    "to": "a junction, fan or outside",
    "serves": "[a source]",
    "contaminant": "a contaminant's name",
    "people.at": "[2 m, 1.2 m]",
    "openings.at": "[2 m, 1.05 m]",
    "wall": "west",
    "openings.kind": "door",
    "resistance": "{clean: 250 Pa, dirty: 500 Pa, at: 600 m3/h}",
    "resistance.at": "600 m3/h",
    "leak.at": "500 Pa",
    "filter.at": "600 m3/h",
    "clean": "250 Pa",
    "dirty": "500 Pa",
    "flow": "300 m3/h",
    "towards": "[1, 0, 0]",
    "speed": "0.15 m/s",
    "corner": "[2 m, 1.5 m, 0.9 m]",
    "sides": "[[1.6 m, 0 m, 0 m], [0 m, 0.7 m, 0 m]]",
}


def _wrong_type(path: Path, data: dict, tree: Tree) -> Fault:
    got, allowed = _at(data, path).get("type"), list(HOOD_TYPES)
    close = get_close_matches(str(got), allowed, n=1, cutoff=0.6)
    advice = f"did you mean {close[0]!r}?" if close else WHICH_TYPE
    return tree.fault((*path, "type"), f"got {said(got)}; allowed: {', '.join(allowed)}; {advice}")


WHICH_TYPE = (
    "a canopy or a wheel hood is 'receiving', a booth, cabinet or cupboard is 'enclosing', a nozzle, slot, arm or "
    "bench is 'capturing'"
)


def _at(data: Any, path: Path) -> Any:
    """What the file says at a path."""
    for step in path:
        data = data[step]
    return data


def _unknown_key(path: Path, data: dict, tree: Tree) -> Fault:
    allowed = known_keys(path[:-1], data)
    close = get_close_matches(str(path[-1]), allowed, n=1, cutoff=0.6)
    advice = f"did you mean {close[0]!r}?" if close else "remove it or mend its spelling"
    elsewhere = [name for name, part in HOOD_TYPES.items() if path[-1] in part.model_fields]
    if elsewhere and len(path) > 1 and path[-3:-2] == ("hoods",):
        advice = f"only a hood of type '{elsewhere[0]}' has it: remove it, or change the type"
    return tree.fault(path, f"unknown key; allowed here: {', '.join(allowed)}; {advice}", at_key=True)


SECTIONS: dict[str, type[model.Part]] = {
    "air": model.AirState,
    "room": model.Room,
    "openings": model.RoomOpening,
    "uncertainty": model.Uncertainty,
    "draught": model.Draught,
    "people": model.Person,
    "contaminants": model.Contaminant,
    "surfaces": model.Surface,
    "sources": model.Source,
    "heat": model.Heat,
    "wheel": model.Wheel,
    "throws": model.Throws,
    "falls": model.Falls,
    "tank": model.Tank,
    "opening": model.Opening,
    "entry": model.HoodEntry,
    "slots": model.Slots,
    "take_off": model.TakeOff,
    "filter": model.Resistance,
    "push": model.PushNozzle,
    "other_openings": model.OtherOpening,
    "commissioned": model.FlowReading,
    "today": model.FlowReading,
    "ducts": model.Duct,
    "fittings": model.Fitting,
    "cleaners": model.Cleaner,
    "resistance": model.Resistance,
    "fans": model.Fan,
    "leak": model.Leak,
    "outlet": model.Outlet,
    "system_effect": model.SystemEffect,
    "scenarios": model.Scenario,
    "prices": model.Prices,
}


def known_keys(path: Path, data: dict) -> list[str]:
    """Keys allowed in the group at `path`; those of a hood hang on its type."""
    words = [step for step in path if isinstance(step, str)]
    part: type[model.Part] = model.Workplace
    if words and words[-1] == "hoods":
        part = HOOD_TYPES[hood_type(_at(data, path)) or "capturing"]
    elif words:
        part = SECTIONS[words[-1]]
    return [field.alias or name for name, field in part.model_fields.items()]


def _message(kind: str, detail: Mapping[str, Any]) -> str:
    got = said(detail.get("input"))
    if kind == "value_error":
        return str(detail["ctx"]["error"])
    if kind == "literal_error":
        allowed = re.findall(r"'([^']+)'|(\d+)", detail["ctx"]["expected"])
        allowed = [word or number for word, number in allowed]
        close = get_close_matches(str(detail.get("input")), allowed, n=1, cutoff=0.6)
        advice = f"did you mean {close[0]!r}?" if close else "choose one of these"
        return f"got {got}; allowed: {', '.join(allowed)}; {advice}"
    if kind in ("model_type", "model_attributes_type", "dict_type"):
        return f"a group of keys is needed, got {got}; write 'key: value' lines below it"
    if kind in ("bool_type", "bool_parsing"):
        return f"true or false is needed, got {got}; write one of the two"
    if kind in ("int_type", "int_parsing", "int_from_float", "int_parsing_size"):
        return f"a whole number is needed, got {got}; write for example 1"
    if kind in ("tuple_type", "list_type"):
        return f"a list is needed, got {got}; write for example [a, b]"
    if kind == "too_short":
        least, got_count = detail["ctx"]["min_length"], detail["ctx"]["actual_length"]
        if least > 1:
            return f"at least {least} entries are needed, got {got_count}; add more"
        return "at least one entry is needed, got none; add one"
    if kind in ("greater_than_equal", "less_than_equal"):
        limit = detail["ctx"].get("ge", detail["ctx"].get("le"))
        side = "at least" if kind == "greater_than_equal" else "at most"
        return f"got {got}; allowed: {side} {limit}; choose a number inside"
    if kind == "too_long":
        return (
            f"{detail['ctx']['max_length']} entries are needed, got {detail['ctx']['actual_length']}; remove the rest"
        )
    return f"got {got}; {detail['msg'].lower()}; mend it"
