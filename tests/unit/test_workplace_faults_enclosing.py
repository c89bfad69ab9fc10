"""Faults of enclosing hoods, of falling material and of push nozzles, each with the exact words its writer reads."""

import pytest

from hoodwright.errors import WorkplaceError
from hoodwright.workplace import parse_workplace

BOX = """\
hoodwright: 1
name: Test room
room: {size: [8 m, 6 m, 3 m]}
contaminants: [{name: powder, kind: dust}]
sources:
  - name: sack
    contaminant: powder
    at: [4 m, 3.3 m, 1.2 m]
    dispersion: driven
    falls: {rate: 600 kg/h, height: 0.8 m, grain: 90 um, grain_density: 1540 kg/m3, bulk_density: 620 kg/m3}
hoods:
  - name: box
    type: enclosing
    form: powder booth
    serves: [sack]
    opening: {rectangle: [1.0 m, 0.5 m]}
    other_openings: [{name: chute, round: 200 mm}]
    inside: [1.0 m, 0.8 m, 0.6 m]
    face_velocity: 0.5 m/s
    at: [4 m, 3 m, 1.2 m]
    facing: [0, -1, 0]
"""
TANK = """\
hoodwright: 1
name: Test room
room: {size: [8 m, 6 m, 3 m]}
contaminants: [{name: mist, kind: mist}]
sources: [{name: tank, contaminant: mist, box: [[3 m, 3 m, 1 m], [4.2 m, 4 m, 1 m]], dispersion: gentle}]
hoods:
  - name: far side
    type: capturing
    serves: [tank]
    opening: {slot: [1.2 m, 0.2 m]}
    at: [3.6 m, 4.1 m, 1.1 m]
    facing: [0, -1, 0]
    push: {at: [3.6 m, 2.9 m, 1.05 m], slot: [1.2 m, 6 mm], flow: 120 m3/h}
"""
HOOD_KEYS = (
    "name, type, serves, opening, at, facing, along, entry, filter, intended_flow, commissioned, today, form, inside, "
    "sill, other_openings, face_velocity"
)
ONLY_CAPTURING = "only a hood of type 'capturing' has it: remove it, or change the type"
CHUTE = "{name: chute, round: 200 mm}"
SHAPE = "one shape is needed: 'round: 100 mm' or 'rectangle: [300 mm, 200 mm]'"

SILL_LEVEL = "12:5: hoods[box]: 'sill' is for an opening that looks level, with 'along' level too: leave it out here"
SILL = ("    face_velocity: 0.5 m/s\n", "    face_velocity: 0.5 m/s\n    sill: {}\n")

ONE_FAULT = {
    "a sill too high": (
        (SILL[0], SILL[1].format("400 mm")),
        "12:5: hoods[box]: its sill and its opening reach 900 mm up, and inside it is 800 mm high: read both again",
    ),
    "a sill below the floor": (
        (SILL[0], SILL[1].format("-100 mm")),
        "20:11: hoods[box].sill: got '-100 mm'; allowed: at least 0 mm, at most 100 m; "
        "write for example '150 mm' or '6 in'",
    ),
    "no form": (("    form: powder booth\n", ""), "12:5: hoods[box].form: missing; add 'form: spray booth'"),
    "a misspelled form": (
        ("powder booth", "powder boot"),
        "14:11: hoods[box].form: got 'powder boot'; allowed: powder booth, spray booth, walk-in booth, and 17 rows "
        "in all; did you mean 'powder booth'?",
    ),
    "an unknown form": (
        ("powder booth", "shed"),
        "14:11: hoods[box].form: got 'shed'; allowed: spray booth, spray room, spray booth electrostatic, metal "
        "spraying booth, walk-in booth, machine enclosure, transfer point, cabinet, laboratory cupboard, infection or "
        "isotope cupboard, biological cabinet class I, balance enclosure, glove box, powder booth, blast cabinet, "
        "blast room, total enclosure; choose one of these",
    ),
    "a flange": (
        ("form: powder booth", "form: powder booth\n    flange: 100 mm"),
        f"15:5: hoods[box].flange: unknown key; allowed here: {HOOD_KEYS}; {ONLY_CAPTURING}",
    ),
    "two inner sides": (
        ("[1.0 m, 0.8 m, 0.6 m]", "[1.0 m, 0.8 m]"),
        "18:13: hoods[box].inside: 3 lengths are needed, got a list of 2; write for example [1.2 m, 0.8 m, 0.7 m]",
    ),
    "an inside narrower than the opening": (
        ("[1.0 m, 0.8 m, 0.6 m]", "[0.9 m, 0.8 m, 0.6 m]"),
        "12:5: hoods[box]: its opening is 1000 mm wide, and inside it is 900 mm: read both again",
    ),
    "an inside lower than the opening": (
        ("[1.0 m, 0.8 m, 0.6 m]", "[1.0 m, 0.4 m, 0.6 m]"),
        "12:5: hoods[box]: its opening is 500 mm high, and inside it is 400 mm: read both again",
    ),
    "no depth": (
        ("0.8 m, 0.6 m]", "0.8 m, 0 m]"),
        "18:28: hoods[box].inside[#3]: got '0 m'; allowed: at least 1 mm, at most 100 m; write for example '150 mm' or "
        "'6 in'",
    ),
    "a face velocity without a unit": (
        ("face_velocity: 0.5 m/s", "face_velocity: 0.5"),
        "19:20: hoods[box].face_velocity: 0.5 has no unit; write for example 0.5 m/s",
    ),
    "no face velocity at all": (
        ("face_velocity: 0.5 m/s", "face_velocity: 0 m/s"),
        "19:20: hoods[box].face_velocity: got '0 m/s'; allowed: at least 0.01 m/s, at most 100 m/s; write for example "
        "'0.5 m/s' or '100 fpm'",
    ),
    "a flow for a face velocity": (
        ("face_velocity: 0.5 m/s", "face_velocity: 900 m3/h"),
        "19:20: hoods[box].face_velocity: 900 m3/h is a flow; a velocity is needed, for example 0.5 m/s or 100 fpm",
    ),
    "other openings that are no list": (
        (f"[{CHUTE}]", CHUTE),
        "17:21: hoods[box].other_openings: a list is needed, got a group of keys; begin each entry with '- '",
    ),
    "an opening without a name": (
        (CHUTE, "{round: 200 mm}"),
        "17:22: hoods[box].other_openings[#1].name: missing; add 'name: a name of its own'",
    ),
    "an opening without a shape": (
        (CHUTE, "{name: chute}"),
        f"17:22: hoods[box].other_openings[chute]: got none; {SHAPE}",
    ),
    "an opening with two shapes": (
        (CHUTE, "{name: chute, round: 200 mm, rectangle: [1 m, 1 m]}"),
        f"17:22: hoods[box].other_openings[chute]: got both; {SHAPE}",
    ),
    "no openings of a kind": (
        (CHUTE, "{name: chute, round: 200 mm, count: 0}"),
        "17:58: hoods[box].other_openings[chute].count: got '0'; allowed: at least 1; choose a number inside",
    ),
    "two openings of one name": (
        (f"[{CHUTE}]", f"[{CHUTE}, {CHUTE}]"),
        "12:5: hoods[box]: two other openings are named 'chute'; give each its own name, or use 'count'",
    ),
    "bulk heavier than its grains": (
        ("bulk_density: 620", "bulk_density: 1620"),
        "10:12: sources[sack].falls: bulk_density is above grain_density; air lies between grains: exchange them",
    ),
    "no rate of fall": (
        ("rate: 600 kg/h, ", ""),
        "10:12: sources[sack].falls.rate: missing; add 'rate: 600 kg/h'",
    ),
    "a fall upward": (
        ("height: 0.8 m", "height: -0.8 m"),
        "10:37: sources[sack].falls.height: got '-0.8 m'; allowed: at least 1 mm, at most 100 m; write for example "
        "'150 mm' or '6 in'",
    ),
    "a grain without a unit": (
        ("grain: 90 um", "grain: 90"),
        "10:51: sources[sack].falls.grain: 90 has no unit; write for example 90 um",
    ),
}

PUSH_FAULT = {
    "no slot": (
        ("slot: [1.2 m, 6 mm], ", ""),
        "13:11: hoods[far side].push.slot: missing; add 'slot: [1.2 m, 6 mm]'",
    ),
    "no flow": ((", flow: 120 m3/h", ""), "13:11: hoods[far side].push.flow: missing; add 'flow: 300 m3/h'"),
    "no place": (
        ("at: [3.6 m, 2.9 m, 1.05 m], ", ""),
        "13:11: hoods[far side].push.at: missing; add 'at: [2 m, 1.5 m, 0.9 m]'",
    ),
    "a slot with its width first": (
        ("[1.2 m, 6 mm]", "[6 mm, 1.2 m]"),
        "13:11: hoods[far side].push: got a push slot of 6 mm by 1200 mm; it is at least 5 times as long as wide, "
        "length first: exchange the two, or make it narrower",
    ),
    "a storm": (
        ("flow: 120 m3/h", "flow: 120 m3/min"),
        "13:11: hoods[far side].push: the slot would blow at 278 m/s; at most 60 m/s: read its flow and its width "
        "again",
    ),
    "a velocity for a flow": (
        ("flow: 120 m3/h", "flow: 5 m/s"),
        "13:67: hoods[far side].push.flow: 5 m/s is a velocity; a flow is needed, for example 300 m3/h or 180 cfm",
    ),
    "a nozzle in the hood itself": (
        ("[3.6 m, 2.9 m, 1.05 m]", "[3.6 m, 4.1 m, 1.1 m]"),
        "7:5: hoods[far side]: the push nozzle stands in the hood's own opening; put it on the other side of the work",
    ),
    "a key too many": (
        ("flow: 120 m3/h}", "flow: 120 m3/h, tilt: 10 deg}"),
        "13:77: hoods[far side].push.tilt: unknown key; allowed here: at, slot, flow; remove it or mend its spelling",
    ),
}


def faults_of(text: str) -> list[str]:
    with pytest.raises(WorkplaceError) as caught:
        parse_workplace(text, "file.yaml")
    return [str(fault).removeprefix("file.yaml:") for fault in caught.value.faults]


@pytest.mark.parametrize("base", [BOX, TANK])
def test_the_bases_are_without_fault(base):
    assert parse_workplace(base, "file.yaml").hoods


@pytest.mark.parametrize("change, fault", ONE_FAULT.values(), ids=ONE_FAULT)
def test_one_clear_fault(change, fault):
    old, new = change
    assert old in BOX
    assert faults_of(BOX.replace(old, new, 1)) == [fault]


@pytest.mark.parametrize("way", ["facing: [0, 0, 1]", "facing: [0, -1, 0]\n    along: [0, 0, 1]"])
def test_a_sill_asks_for_an_opening_that_looks_level(way):
    text = BOX.replace("    facing: [0, -1, 0]", f"    {way}").replace(SILL[0], SILL[1].format("100 mm"))
    assert faults_of(text) == [SILL_LEVEL]


@pytest.mark.parametrize("change, fault", PUSH_FAULT.values(), ids=PUSH_FAULT)
def test_one_clear_fault_of_a_push_nozzle(change, fault):
    old, new = change
    assert old in TANK
    assert faults_of(TANK.replace(old, new, 1)) == [fault]


def test_a_push_nozzle_belongs_to_capturing_hoods():
    push = "    push: {at: [4 m, 2 m, 1 m], slot: [1 m, 6 mm], flow: 100 m3/h}\n"
    text = BOX + push
    assert faults_of(text) == [f"22:5: hoods[box].push: unknown key; allowed here: {HOOD_KEYS}; {ONLY_CAPTURING}"]
