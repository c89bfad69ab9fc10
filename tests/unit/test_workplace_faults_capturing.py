"""Faults of capturing hoods and of sources with extent, each with the exact words its writer reads."""

import pytest

from hoodwright.errors import WorkplaceError
from hoodwright.tables import load_table
from hoodwright.workplace import parse_workplace

SHOP = """hoodwright: 1
name: Shop
room: {size: [9 m, 9 m, 3 m]}
contaminants: [{name: fume, kind: fume}]
sources:
- {name: joint, contaminant: fume, dispersion: gentle, WHERE}
hoods:
- {name: nozzle, type: capturing, serves: [joint], OPENING, at: [2 m, 2 m, 1 m], facing: [0, -1, 0]WHAT}
"""
AT, SLOT = "at: [2 m, 1.8 m, 1 m]", "opening: {slot: [1 m, 50 mm]}"
SIZE = "allowed: at least 1 mm, at most 100 m; write for example '150 mm' or '6 in'"
SHAPES = "one shape is needed: 'round: 100 mm', 'rectangle: [300 mm, 200 mm]' or 'slot: [600 mm, 25 mm]'"
LONGER = "a slot is at least 5 times as long as wide, length first: exchange the two, or write 'rectangle'"
FORMS = "downdraught bench, side-draught bench, stone tool hood, on-torch, on-tool sander, on-tool grinder"
POINTS = "write for example [[2 m, 1.5 m, 0.9 m], [3 m, 1.5 m, 0.9 m]]"
PLACES = "one of at, line, box, path is needed, for example 'at: [2 m, 1.5 m, 0.9 m]'; keep one"
PROCESSES = len(load_table("process_guide").columns["process"])
KEYS = (
    "name, type, serves, opening, at, facing, along, entry, filter, intended_flow, commissioned, today, flange, "
    "bell_mouth, form, push"
)

OPENINGS = {
    "width before length": ("{slot: [50 mm, 1 m]}", f"opening: got a slot of 50 mm by 1000 mm; {LONGER}"),
    "too wide for a slot": ("{slot: [1 m, 0.3 m]}", f"opening: got a slot of 1000 mm by 300 mm; {LONGER}"),
    "one side": (
        "{slot: [1 m]}",
        "opening.slot: 2 lengths are needed, got a list of 1; write for example [300 mm, 200 mm]",
    ),
    "no unit": ("{slot: [1, 50 mm]}", "opening.slot[#1]: 1 has no unit; write for example 1 mm"),
    "no width": ("{slot: [1 m, 0 mm]}", f"opening.slot[#2]: got '0 mm'; {SIZE}"),
    "a negative width": ("{slot: [1 m, -5 mm]}", f"opening.slot[#2]: got '-5 mm'; {SIZE}"),
    "a speed": (
        "{slot: [1 m, 5 m/s]}",
        "opening.slot[#2]: 5 m/s is a velocity; a length is needed, for example 250 mm or 10 in",
    ),
    "two shapes": ("{slot: [1 m, 50 mm], round: 100 mm}", f"opening: got both; {SHAPES}"),
    "no shape": ("{}", f"opening: got none; {SHAPES}"),
    "a misspelt shape": (
        "{slit: [1 m, 50 mm]}",
        "opening.slit: unknown key; allowed here: round, rectangle, slot; did you mean 'slot'?",
    ),
}
HOODS = {
    "a misspelt form": (
        "form: downdraft bench",
        f"form: got 'downdraft bench'; allowed: {FORMS}; did you mean 'downdraught bench'?",
    ),
    "the form of an enclosure": (
        "form: spray booth",
        f"form: got 'spray booth'; allowed: {FORMS}; choose one of these",
    ),
    "no form": ("form: []", f"form: got a list of 0; allowed: {FORMS}; choose one of these"),
    "a first side along the axis": (
        "along: [0, 1, 0]",
        "'along' is the direction of the opening's first side: it must be square to 'facing'",
    ),
    "a first side that points nowhere": (
        "along: [0, 0, 0]",
        "along: a direction of length zero points nowhere; write for example [0, -1, 0]",
    ),
    "a first side in metres": (
        "along: [1 m, 0, 0]",
        "along: a direction is three plain numbers without a unit; write for example [0, -1, 0]",
    ),
    "a negative flange": (
        "flange: -50 mm",
        "flange: got '-50 mm'; allowed: at least 0 mm, at most 100 m; write for example '150 mm' or '6 in'",
    ),
    "a bell mouth neither true nor false": (
        "bell_mouth: maybe",
        "bell_mouth: true or false is needed, got 'maybe'; write one of the two",
    ),
    "the open sides of a canopy": (
        "open_sides: 3",
        f"open_sides: unknown key; allowed here: {KEYS}; only a hood of type 'receiving' has it: remove it, or change "
        "the type",
    ),
}
SOURCES = {
    "two places": (f"{AT}, line: [[1 m, 1 m, 1 m], [2 m, 1 m, 1 m]]", f"sources[joint]: got at and line; {PLACES}"),
    "no place": ("capture_velocity: 0.5 m/s", f"sources[joint]: got none of them; {PLACES}"),
    "a line of one point": (
        "line: [[1 m, 1 m, 1 m]]",
        f"sources[joint].line: 2 points are needed, got a list of 1; {POINTS}",
    ),
    "a box of one corner": (
        "box: [[1 m, 1 m, 1 m]]",
        f"sources[joint].box: 2 points are needed, got a list of 1; {POINTS}",
    ),
    "a path of one bend": (
        "path: [[1 m, 1 m, 1 m]]",
        f"sources[joint].path: 2 points or more are needed, got 1; {POINTS}",
    ),
    "a path that is no list": (
        "path: 3 m",
        "sources[joint].path: a list is needed, got '3 m'; begin each entry with '- '",
    ),
    "a word in a path": (
        "path: [[1 m, 1 m, 1 m], [2 m, 1 m, one]]",
        "sources[joint].path[#2][#3]: one does not start with a number; write for example 250 mm or 10 in",
    ),
    "a line that leaves the room": (
        "line: [[1 m, 1 m, 1 m], [20 m, 1 m, 1 m]]",
        "sources[joint].line: [20, 1, 1] m is outside the room of 9 x 9 x 3 m; move the source or mend the room",
    ),
    "a process that the guide lacks": (
        f"{AT}, process: welding",
        "sources[joint].process: got 'welding'; allowed: TIG welding, manual arc welding, flux-cored welding, and "
        f"{PROCESSES} rows in all; did you mean 'TIG welding'?",
    ),
}


def faults(where: str = AT, opening: str = SLOT, what: str = "") -> list[str]:
    with pytest.raises(WorkplaceError) as caught:
        parse_workplace(SHOP.replace("WHERE", where).replace("OPENING", opening).replace("WHAT", what))
    return [line.split(": ", 1)[1] for line in str(caught.value).splitlines()]


def test_the_shop_itself_has_no_fault():
    parse_workplace(SHOP.replace("WHERE", AT).replace("OPENING", SLOT).replace("WHAT", ", form: side-draught bench"))


@pytest.mark.parametrize("opening, told", OPENINGS.values(), ids=list(OPENINGS))
def test_a_bad_opening_has_one_clear_fault(opening, told):
    assert faults(opening=f"opening: {opening}") == [f"hoods[nozzle].{told}"]


@pytest.mark.parametrize("what, told", HOODS.values(), ids=list(HOODS))
def test_a_bad_hood_has_one_clear_fault(what, told):
    place = "hoods[nozzle]: " if told.startswith("'") else "hoods[nozzle]."
    assert faults(what=f", {what}") == [place + told]


@pytest.mark.parametrize("where, told", SOURCES.values(), ids=list(SOURCES))
def test_a_bad_source_has_one_clear_fault(where, told):
    assert faults(where=where) == [told]
