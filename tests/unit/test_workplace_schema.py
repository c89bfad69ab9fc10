"""The JSON Schema names every key, and the starters keep to it."""

import re

import pytest

from hoodwright.workplace import json_schema, model
from hoodwright.workplace.starters import starter_text
from hoodwright.workplace.tree import read_tree
from two_hoods import TWO_HOODS

SCHEMA = json_schema()
TYPES = {
    "object": dict,
    "array": list,
    "string": str,
    "number": int | float,
    "integer": int,
    "boolean": bool,
    "null": type(None),
}


def offences(value, schema: dict, at: str = "file") -> list[str]:
    """Where a value leaves the schema: the few words of JSON Schema that ours uses."""
    if "$ref" in schema:
        return offences(value, SCHEMA["$defs"][schema["$ref"].removeprefix("#/$defs/")], at)
    if "discriminator" in schema:
        chosen = schema["discriminator"]["mapping"][value["type"]]
        return offences(value, {"$ref": chosen}, at)
    if "anyOf" in schema:
        found = [offences(value, option, at) for option in schema["anyOf"]]
        return [] if [] in found else found[0]
    if "enum" in schema or "const" in schema:
        return [] if value in schema.get("enum", [schema.get("const")]) else [f"{at}: {value!r}"]
    types = [schema["type"]] if isinstance(schema["type"], str) else schema["type"]
    if not any(isinstance(value, TYPES[name]) for name in types):
        return [f"{at}: {value!r} is no {types}"]
    if isinstance(value, dict):
        known = schema["properties"]
        wrong = [f"{at}.{key}: unknown" for key in value if key not in known]
        wrong += [f"{at}.{key}: missing" for key in schema.get("required", []) if key not in value]
        return wrong + [o for key in value if key in known for o in offences(value[key], known[key], f"{at}.{key}")]
    if isinstance(value, list):
        if not schema.get("minItems", 0) <= len(value) <= schema.get("maxItems", 1e9):
            return [f"{at}: {len(value)} entries"]
        items = schema.get("prefixItems") or [schema["items"]] * len(value)
        return [o for i, item in enumerate(value) for o in offences(item, items[i], f"{at}[{i}]")]
    return []


@pytest.mark.parametrize("name", ["demo", "starter"])
def test_starters_keep_to_the_schema(name):
    assert offences(read_tree(starter_text(name)).data, SCHEMA) == []


@pytest.mark.parametrize(
    "old, new",
    [
        ("flange: 100 mm", "flnage: 100 mm"),
        ("dispersion: gentle", "dispersion: gentel"),
        ("at: [2.0 m, 1.80 m, 1.06 m]", "at: [2.0 m, 1.80 m]"),
        ("length: 4.0 m", "length: 4.0"),
        ("    dispersion: still\n", ""),
        ("serves: [solder joint]", "serves: []"),
        ("flange: 100 mm", "bell_mouth: wide"),
    ],
)
def test_the_schema_sees_a_fault(old, new):
    assert len(offences(read_tree(TWO_HOODS.replace(old, new, 1)).data, SCHEMA)) == 1


def test_a_share_may_be_a_plain_number():
    text = TWO_HOODS.replace("relative_humidity: 45 %", "relative_humidity: 0.45")
    assert offences(read_tree(text).data, SCHEMA) == []


def leaves(part: type) -> list[type]:
    """Classes below `part` that nothing is built on."""
    below = part.__subclasses__()
    return [leaf for child in below for leaf in leaves(child)] or [part]


def test_the_schema_names_every_key_and_no_other():
    parts = {part.__name__: part for part in leaves(model.Part) if part is not model.Workplace}
    assert set(SCHEMA["$defs"]) == set(parts)
    for name, part in (parts | {"": model.Workplace}).items():
        found = SCHEMA["$defs"][name] if name else SCHEMA
        assert set(found["properties"]) == {field.alias or key for key, field in part.model_fields.items()}
        assert found["additionalProperties"] is False


def test_every_quantity_tells_what_to_write():
    lengths = SCHEMA["$defs"]["Duct"]["properties"]["length"]
    assert lengths["description"] == "length with its unit, for example '150 mm' or '6 in'"


def test_the_schema_says_which_schema_it_is():
    assert SCHEMA["$schema"] == "https://json-schema.org/draft/2020-12/schema"
    assert re.fullmatch(r"hoodwright workplace file, format \d+", SCHEMA["title"])
