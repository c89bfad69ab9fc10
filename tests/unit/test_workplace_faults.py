"""Faults of a workplace file, each with the exact words its writer reads."""

import pytest

from hoodwright.errors import WorkplaceError
from hoodwright.workplace import parse_workplace, read_workplace
from two_hoods import TWO_HOODS

DEMO = TWO_HOODS

LINK = "{name: link, from: filter, to: roof fan, round: 125 mm, length: 1.0 m}"
STACK = "  - {name: stack, from: roof fan, to: outside, round: 125 mm, length: 3.0 m}\n"
ELBOW = "{elbow: 90 deg, radius: 1.5, pieces: 5}"
FLOW = "intended_flow: 320 m3/h"

HOOD_KEYS = (
    "name, type, serves, opening, at, facing, along, entry, filter, intended_flow, commissioned, today, flange, "
    "bell_mouth, form, push"
)
FILE_KEYS = (
    "hoodwright, name, about, units, air, room, uncertainty, people, contaminants, surfaces, sources, hoods, ducts, "
    "cleaners, fans, scenarios, prices"
)
HAZARDS = (
    "asthmagen, carcinogen, isocyanate, asbestos, lead, silica, flammable, explosible dust, sparks, "
    "aluminium or magnesium, acid, cyanide, hypochlorite, perchloric, oxidiser, organic"
)


def faults_of(text: str) -> list[str]:
    with pytest.raises(WorkplaceError) as caught:
        parse_workplace(text, "bench.yaml")
    return [str(fault) for fault in caught.value.faults]


def demo_with(*changes: tuple[str, str]) -> str:
    text = DEMO
    for old, new in changes:
        assert old in text
        text = text.replace(old, new, 1)
    return text


# What is changed in the demo, and the one fault that follows.
ONE_FAULT = {
    "a misspelled key": (
        ("flange: 100 mm", "flnage: 100 mm"),
        f"38:5: hoods[bench nozzle].flnage: unknown key; allowed here: {HOOD_KEYS}; did you mean 'flange'?",
    ),
    "a misspelled section": (
        ("people:", "peoples:"),
        f"12:1: peoples: unknown key; allowed here: {FILE_KEYS}; did you mean 'people'?",
    ),
    "an unknown key deep inside": (
        ("pieces: 5", "gores: 5"),
        "53:114: ducts[A1].fittings[#1].gores: unknown key; allowed here: elbow, radius, pieces, mitred, damper, "
        "damper_loss, weather_cap, loss, name; remove it or mend its spelling",
    ),
    "a key given twice": (
        ("flange: 100 mm", "flange: 100 mm\n    flange: 90 mm"),
        "39:5: hoods[bench nozzle].flange: given twice (first in line 38); keep one of the two",
    ),
    "a length for a flow": (
        (FLOW, "intended_flow: 3 m"),
        "41:20: hoods[bench nozzle].intended_flow: 3 m is a length; a flow is needed, "
        "for example 300 m3/h or 180 cfm",
    ),
    "a flow without its unit": (
        (FLOW, "intended_flow: 320"),
        "41:20: hoods[bench nozzle].intended_flow: 320 has no unit; write for example 320 m3/h",
    ),
    "an altitude without its unit": (
        ("altitude: 230 m", "altitude: 230.5"),
        "6:64: air.altitude: 230.5 has no unit; write for example 230.5 m",
    ),
    "a standard flow": (
        (FLOW, "intended_flow: 188 scfm"),
        "41:20: hoods[bench nozzle].intended_flow: 188 scfm is a standard flow, counted at 70 degF (21.1 degC) and "
        "101325 Pa; a flow at actual conditions is needed: convert it to the temperature and pressure of the air "
        "there and write for example 300 m3/h or 180 cfm",
    ),
    "a comma in a number": (
        (FLOW, "intended_flow: '1,320 m3/h'"),
        "41:20: hoods[bench nozzle].intended_flow: 1,320 m3/h has a comma; write 1320 m3/h if it parts thousands, "
        "or 1.320 m3/h",
    ),
    "a group for a quantity": (
        (FLOW, "intended_flow: {value: 320}"),
        "41:20: hoods[bench nozzle].intended_flow: a flow is needed, got a group of keys; write for example "
        "'300 m3/h' or '180 cfm'",
    ),
    "nothing behind a key": (
        ("flange: 100 mm", "flange:"),
        "38:5: hoods[bench nozzle].flange: a length is needed, got nothing; write for example '150 mm' or '6 in'",
    ),
    "a source that is not there": (
        ("serves: [solder joint]", "serves: [solder join]"),
        "36:14: hoods[bench nozzle].serves[#1]: no source is named 'solder join'; there is: solder joint, "
        "open lacquer jar; did you mean 'solder joint'?",
    ),
    "a contaminant that is not there": (
        ("contaminant: flux fume", "contaminant: argon"),
        "25:18: sources[solder joint].contaminant: no contaminant is named 'argon'; there is: flux fume, "
        "lacquer thinner; add that contaminant or mend the name",
    ),
    "a hood that is not there": (
        ("from: bench nozzle", "from: bench nozle"),
        "53:22: ducts[A1].from: no hood, junction, cleaner or fan is named 'bench nozle'; there is: bench nozzle, "
        "table hood, filter, roof fan, J1; did you mean 'bench nozzle'?",
    ),
    "a duct that leads nowhere": (
        ("from: bench nozzle, to: J1", "from: bench nozzle, to: J9"),
        "53:40: ducts[A1].to: no duct leads on from 'J9'; add the duct that leads on from it, or write 'outside'",
    ),
    "a duct that nearly leads somewhere": (
        ("from: bench nozzle, to: J1", "from: bench nozzle, to: filtre"),
        "53:40: ducts[A1].to: no duct leads on from 'filtre'; did you mean 'filter'?",
    ),
    "a duct that leads to a hood": (
        ("from: bench nozzle, to: J1", "from: bench nozzle, to: table hood"),
        "53:40: ducts[A1].to: 'table hood' is a hood; ducts lead away from hoods: exchange from and to",
    ),
    "a name used for two parts": (
        ("name: touch-up table", "name: solder joint"),
        "24:11: sources[solder joint].name: 'solder joint' is already the name of another part (line 21); "
        "give each part its own",
    ),
    "a part named outside": (
        ("name: at the solder bench", "name: outside"),
        "13:12: people[outside].name: 'outside' means the open air; choose another name",
    ),
    "a name that is a number": (
        ("name: at the solder bench", "name: 12"),
        "13:12: people[#1].name: a text is needed, got '12'; put it in quotes",
    ),
    "a negative length": (
        ("length: 3.2 m", "length: -3.2 m"),
        "53:67: ducts[A1].length: got '-3.2 m'; allowed: at least 0 mm, at most 1000 m; write for example "
        "'150 mm' or '6 in'",
    ),
    "a duct too thin to have a friction": (
        ("to: J1, round: 100 mm, length: 3.2 m", "to: J1, round: 1 mm, length: 3.2 m"),
        "53:51: ducts[A1].round: got '1 mm'; allowed: at least 10 mm, at most 10 m; write for example "
        "'150 mm' or '6 in'",
    ),
    "a hose too thin to have a friction": (
        ("to: J1, round: 100 mm, length: 3.2 m", "to: J1, round: 25 mm, material: flexible, length: 3.2 m"),
        "53:5: ducts[A1]: got a flexible hose of 25 mm; its friction is known from 30 mm: choose a wider one",
    ),
    "more than saturated air": (
        ("relative_humidity: 45 %", "relative_humidity: 140 %"),
        "6:48: air.relative_humidity: got '140 %'; allowed: at least 0 %, at most 100 %; write for example '45 %'",
    ),
    "per cent without the sign": (
        ("relative_humidity: 45 %", "relative_humidity: 45"),
        "6:48: air.relative_humidity: 45 has no unit and is above 1; write 45 % or a fraction such as 0.45",
    ),
    "a wet bulb above the dry bulb": (
        ("relative_humidity: 45 %", "wet_bulb: 25 degC"),
        "6:6: air: wet_bulb 25 degC is above the air's 21 degC; it can be at most equal: read both again",
    ),
    "a wet bulb colder than dry air can make it": (
        ("temperature: 21 degC, relative_humidity: 45 %", "temperature: 60 degC, wet_bulb: 2 degC"),
        "6:39: air.wet_bulb: humidity ratio -0.0181055 is below 0: no air is this dry; check the wet-bulb reading "
        "against [ashrae-f17, ch. 1, eq. 33 and 35]",
    ),
    "humidity given twice": (
        ("relative_humidity: 45 %", "relative_humidity: 45 %, dew_point: 9 degC"),
        "6:6: air: humidity is given 2 times (relative_humidity, dew_point); keep one",
    ),
    "altitude and pressure": (
        ("altitude: 230 m", "altitude: 230 m, pressure: 990 hPa"),
        "6:6: air: altitude and pressure both say how thick the air is; keep one",
    ),
    "air below absolute zero": (
        ("temperature: 21 degC", "temperature: -300 degC"),
        "6:20: air.temperature: -300 degC is below absolute zero (-273.15 degC); check the sign and the unit",
    ),
    "air hotter than a room": (
        ("temperature: 21 degC", "temperature: 210 degC"),
        "6:20: air.temperature: got '210 degC'; allowed: at least -100 degC, at most 100 degC; write for example "
        "'21 degC' or '70 degF'",
    ),
    "a point of two numbers": (
        ("at: [2.0 m, 1.80 m, 1.06 m]", "at: [2.0 m, 1.80 m]"),
        "26:9: sources[solder joint].at: 3 lengths are needed, got a list of 2; write for example "
        "[2 m, 1.5 m, 0.9 m]",
    ),
    "a rectangle of one side": (
        ("opening: {round: 100 mm}", "opening: {rectangle: [100 mm]}"),
        "37:26: hoods[bench nozzle].opening.rectangle: 2 lengths are needed, got a list of 1; write for example "
        "[300 mm, 200 mm]",
    ),
    "two shapes": (
        ("opening: {round: 100 mm}", "opening: {round: 100 mm, rectangle: [100 mm, 80 mm]}"),
        "37:14: hoods[bench nozzle].opening: got both; one shape is needed: 'round: 100 mm', "
        "'rectangle: [300 mm, 200 mm]' or 'slot: [600 mm, 25 mm]'",
    ),
    "a direction of length zero": (
        ("facing: [0, -1, 0]", "facing: [0, 0, 0]"),
        "40:13: hoods[bench nozzle].facing: a direction of length zero points nowhere; write for example [0, -1, 0]",
    ),
    "a direction with units": (
        ("facing: [0, -1, 0]", "facing: [0 m, -1 m, 0 m]"),
        "40:13: hoods[bench nozzle].facing: a direction is three plain numbers without a unit; write for example "
        "[0, -1, 0]",
    ),
    "a misspelled release class": (
        ("dispersion: gentle", "dispersion: gentel"),
        "27:17: sources[solder joint].dispersion: got 'gentel'; allowed: still, gentle, driven, thrown; "
        "did you mean 'gentle'?",
    ),
    "an unknown release class": (
        ("dispersion: gentle", "dispersion: brisk"),
        "27:17: sources[solder joint].dispersion: got 'brisk'; allowed: still, gentle, driven, thrown; "
        "choose one of these",
    ),
    "an unknown hazard": (
        ("hazards: [asthmagen]", "hazards: [magnesium]"),
        f"16:45: contaminants[flux fume].hazards[#1]: got 'magnesium'; allowed: {HAZARDS}; choose one of these",
    ),
    "a hazard outside a list": (
        ("hazards: [asthmagen]", "hazards: asthmagen"),
        "16:44: contaminants[flux fume].hazards: a list is needed, got 'asthmagen'; begin each entry with '- '",
    ),
    "a required key left out": (
        ("    dispersion: still\n", ""),
        "28:5: sources[open lacquer jar].dispersion: missing; add 'dispersion: gentle'",
    ),
    "a person nowhere": (
        ("at: [2.0 m, 1.2 m], ", ""),
        "13:5: people[at the solder bench].at: missing; add 'at: [2 m, 1.2 m]'",
    ),
    "a resistance at no flow": (
        ("dirty: 500 Pa, at: 600 m3/h", "dirty: 500 Pa"),
        "60:32: cleaners[filter].resistance.at: missing; add 'at: 600 m3/h'",
    ),
    "a cleaner that is lighter dirty than clean": (
        ("clean: 250 Pa, dirty: 500 Pa", "clean: 500 Pa, dirty: 250 Pa"),
        "60:32: cleaners[filter].resistance: dirty 250 Pa is below clean 500 Pa; exchange them or read them again",
    ),
    "ducts in a circle": (
        ("to: outside", "to: J1"),
        "55:5: ducts[main]: runs in a circle: J1 > filter > roof fan > J1; lead it to a fan",
    ),
    "a run that forks": (
        ("  - " + LINK, "  - {name: more, from: J1, to: roof fan, round: 80 mm, length: 1 m}\n  - " + LINK),
        "56:24: ducts[more].from: a second duct leads away from 'J1'; this version reads runs that converge only: "
        "join them",
    ),
    "a fan that nothing is joined to": (
        ("- {name: roof fan, efficiency: 55 %}", "- {name: roof fan, efficiency: 55 %}\n  - {name: spare}"),
        "64:12: fans[spare].name: no duct leads to 'spare'; add one, or remove the part",
    ),
    "a source outside the room": (
        ("at: [2.0 m, 1.80 m, 1.06 m]", "at: [2.0 m, 18 m, 1.06 m]"),
        "26:9: sources[solder joint].at: [2, 18, 1.06] m is outside the room of 9 x 6 x 3.2 m; move the source "
        "or mend the room",
    ),
    "an elbow of more than a right angle": (
        ("elbow: 90 deg", "elbow: 120 deg"),
        "53:93: ducts[A1].fittings[#1].elbow: got '120 deg'; allowed: at least 20 deg, at most 90 deg; "
        "write for example '90 deg'",
    ),
    "an elbow of six pieces": (
        ("pieces: 5", "pieces: 6"),
        "53:122: ducts[A1].fittings[#1].pieces: got '6'; allowed: 3, 4, 5; choose one of these",
    ),
    "an elbow too wide for its table": (
        (ELBOW, "{elbow: 90 deg, radius: 30}"),
        "53:85: ducts[A1].fittings[#1]: got radius 30; round elbows and bends are known for radius 0.5 to 20 "
        "diameters: choose one inside, or give its 'loss'",
    ),
    "an efficiency of nothing": (
        ("efficiency: 55 %", "efficiency: 0 %"),
        "63:34: fans[roof fan].efficiency: got '0 %'; allowed: at least 5 %, at most 100 %; write for example '45 %'",
    ),
    "neither true nor false": (
        ("flange: 100 mm", "bell_mouth: wide"),
        "38:17: hoods[bench nozzle].bell_mouth: true or false is needed, got 'wide'; write one of the two",
    ),
    "unknown units": (
        ("units: SI", "units: metric"),
        "5:8: units: got 'metric'; allowed: SI, US; choose one of these",
    ),
    "a merge key": (
        ("air: {", "air: {<<: {altitude: 3 m}, "),
        "6:7: air.<<: unknown key; allowed here: temperature, relative_humidity, wet_bulb, dew_point, altitude, "
        "pressure; remove it or mend its spelling",
    ),
    "a control character in a text": (
        ("about: Invented", 'about: "\\e[31mInvented"  # Invented'),
        "4:8: about: a text without control characters is needed; remove them",
    ),
    "a newer format": (
        ("hoodwright: 1", "hoodwright: 7"),
        "2:13: hoodwright: format 7 is newer than this hoodwright, which reads up to 1; update hoodwright",
    ),
    "a format that never was": (
        ("hoodwright: 1", "hoodwright: 0"),
        "2:13: hoodwright: format 0 is not known; allowed: 1; write the number it was made with",
    ),
    "a format in words": (
        ("hoodwright: 1", "hoodwright: one"),
        "2:13: hoodwright: a whole number is needed, got 'one'; write 'hoodwright: 1'",
    ),
    "no format": (
        ("hoodwright: 1\n", ""),
        "2:1: hoodwright: missing; add 'hoodwright: 1' as the first line",
    ),
    "a bracket that is not closed": (
        ("hazards: [asthmagen]}", "hazards: [asthmagen}"),
        "16:54: file: cannot be read as YAML: expected ',' or ']', but got '}'; check indents, colons and brackets "
        "here",
    ),
    "a colon too many": (
        ("name: Bell and", "name: Bell: and"),
        "3:11: file: cannot be read as YAML: mapping values are not allowed here; check indents, colons and "
        "brackets here",
    ),
    "a tab for an indent": (
        ("  size: [9 m", "\tsize: [9 m"),
        "9:1: file: cannot be read as YAML: found character '\\t' that cannot start any token; check indents, "
        "colons and brackets here",
    ),
    "a bell in the text": (
        ("Bell and", "Bell\x07 and"),
        "3:11: file: character 0x0007 cannot stand in YAML; remove it",
    ),
    "nested too deep": (
        ("units: SI", "units: " + "[" * 40 + "]" * 40),
        "5:31: file: nested too deep; at most 24 levels are read: write it out plainly",
    ),
}  # fmt: skip


@pytest.mark.parametrize("change, fault", ONE_FAULT.values(), ids=ONE_FAULT.keys())
def test_one_fault_is_told_in_these_words(change, fault):
    assert faults_of(demo_with(change)) == [f"bench.yaml:{fault}"]


@pytest.mark.parametrize("text", ["", "\n", "# only a remark\n", "---\n"])
def test_an_empty_file(text):
    assert faults_of(text) == [
        "bench.yaml:1:1: file: an empty file; begin with 'hoodwright: 1', or run 'hoodwright new' for a starter"
    ]


@pytest.mark.parametrize("text", ["hello\n", "- hoodwright: 1\n"])
def test_a_file_without_keys(text):
    assert faults_of(text) == [
        "bench.yaml:1:1: file: no keys on the first level; begin with 'hoodwright: 1', or run 'hoodwright new' for a "
        "starter"
    ]


def test_a_room_size_without_units_has_a_fault_for_each_side():
    assert faults_of(demo_with(("size: [9 m, 6 m, 3.2 m]", "size: [9, 6, 3.2]"))) == [
        "bench.yaml:9:10: room.size[#1]: 9 has no unit; write for example 9 m",
        "bench.yaml:9:13: room.size[#2]: 6 has no unit; write for example 6 m",
        "bench.yaml:9:16: room.size[#3]: 3.2 has no unit; write for example 3.2 m",
    ]


def test_a_second_fan_is_told_for_each_hood():
    booster = "{name: link, from: filter, to: booster, round: 125 mm, length: 1 m}\n  - {name: l2, from: booster, "
    text = demo_with(
        (LINK, booster + "to: roof fan, round: 125 mm, length: 1 m}"), ("fans:\n", "fans:\n  - {name: booster}\n")
    )
    assert faults_of(text) == [
        "bench.yaml:53:22: ducts[A1].from: 2 fans are on the way from 'bench nozzle' to outside; "
        "this version reads exactly one",
        "bench.yaml:54:22: ducts[B1].from: 2 fans are on the way from 'table hood' to outside; "
        "this version reads exactly one",
    ]


def test_no_fan_on_the_way():
    text = demo_with((LINK, LINK.replace("roof fan", "outside")), (STACK, ""), ("fans:\n  - {name: roof fan, ", "#"))
    assert faults_of(text) == [
        "bench.yaml:53:22: ducts[A1].from: no fan is on the way from 'bench nozzle' to outside; "
        "this version reads exactly one",
        "bench.yaml:54:22: ducts[B1].from: no fan is on the way from 'table hood' to outside; "
        "this version reads exactly one",
    ]


def test_a_hood_that_is_the_end_of_its_own_duct():
    assert faults_of(demo_with(("from: bench nozzle, to: J1", "from: bench nozzle, to: bench nozzle"))) == [
        "bench.yaml:53:5: ducts[A1]: runs in a circle: bench nozzle > bench nozzle; lead it to a fan",
        "bench.yaml:53:40: ducts[A1].to: 'bench nozzle' is a hood; ducts lead away from hoods: exchange from and to",
    ]


def test_a_long_list_of_names_is_cut():
    more = "".join(f"  - {{name: fume {i}, kind: fume}}\n" for i in range(20))
    (fault,) = faults_of(
        demo_with(("contaminants:\n", "contaminants:\n" + more), ("contaminant: flux fume", "contaminant: x"))
    )
    assert fault.endswith("fume 10, fume 11, and 10 more; add that contaminant or mend the name")


def test_a_key_cannot_break_the_line_or_colour_the_terminal():
    (fault,) = faults_of(demo_with(("units: SI", '"\\e[31m\\n' + "k" * 100 + '": SI')))
    assert fault.startswith("bench.yaml:5:1: ?[31m " + "k" * 51 + "...: unknown key; ")


def test_a_file_that_is_not_utf8(tmp_path):
    file = tmp_path / "bench.yaml"
    file.write_bytes(DEMO.encode().replace(b"Bell and", b"B\xe9ll and"))
    with pytest.raises(WorkplaceError) as caught:
        read_workplace(file)
    assert str(caught.value) == f"{file}:3:8: file: byte 0xe9 is not UTF-8 text; save the file as UTF-8"


def test_a_file_that_is_not_there(tmp_path):
    with pytest.raises(WorkplaceError) as caught:
        read_workplace(tmp_path / "none.yaml")
    assert str(caught.value) == (
        f"{tmp_path / 'none.yaml'}: no such file or directory; check the path and your rights to it"
    )


def test_a_file_too_large_to_be_a_workplace():
    assert faults_of("# " + "x" * 2_000_000) == ["bench.yaml:1:1: file: 2000002 characters; at most 2000000 are read"]


def test_a_dozen_faults_are_told_together_in_the_order_of_their_lines():
    text = demo_with(
        ("units: SI", "units: metric"),
        ("relative_humidity: 45 %", "relative_humidity: 140 %"),
        ("size: [9 m, 6 m, 3.2 m]", "size: [9 m, 6 m]"),
        ("towards: [1, 0, 0]", "towards: [0, 0, 0]"),
        ("breathing_height: 1.5 m", "breathing_height: 1.5"),
        ("kind: vapour", "kind: vapor"),
        ("contaminant: flux fume", "contaminant: fume"),
        ("dispersion: gentle ", "dispersion: gentel "),
        ("flange: 100 mm", "flnage: 100 mm"),
        ("intended_flow: 320 m3/h", "intended_flow: 3 m"),
        ("from: table hood", "from: table food"),
        ("length: 4.0 m", "length: -4.0 m"),
        ("efficiency: 55 %", "efficiency: 155 %"),
    )
    faults = faults_of(text)
    assert [fault.split(": ")[1] for fault in faults] == [
        "units",
        "air.relative_humidity",
        "room.size",
        "room.draught.towards",
        "people[at the solder bench].breathing_height",
        "contaminants[lacquer thinner].kind",
        "sources[solder joint].contaminant",
        "sources[solder joint].dispersion",
        "hoods[bench nozzle].flnage",
        "hoods[bench nozzle].intended_flow",
        "ducts[B1].from",
        "ducts[main].length",
        "fans[roof fan].efficiency",
    ]
    lines = [int(fault.split(":")[1]) for fault in faults]
    assert lines == sorted(lines)


def test_a_fault_in_one_part_hides_none_in_another_part_of_the_same_list():
    faults = faults_of(demo_with(("kind: fume", "kind: smog"), ("at: [5.0 m, 2.10 m, 1.10 m]", "at: [50 m, 2 m, 1 m]")))
    assert [fault.split(": ")[1] for fault in faults] == ["contaminants[flux fume].kind", "hoods[table hood].at"]
