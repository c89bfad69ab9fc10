"""Openings in the walls of the room, what the user knows of the inputs, and openings of an enclosure with a place."""

import pytest

from hoodwright.errors import WorkplaceError
from hoodwright.workplace import json_schema, parse_workplace

FILE = """\
hoodwright: 1
name: Hall
room:
  size: [6 m, 5 m, 3 m]
  openings:
    - {name: yard door, wall: west, at: [2 m, 1.05 m], size: [1 m, 2.1 m], kind: door}
    - {name: terminal, wall: ceiling, at: [4 m, 2 m], round: 300 mm, kind: supply, flow: 360 m3/h}
    - {name: roof fan, wall: north, at: [5 m, 2.5 m], size: [300 mm, 300 mm], kind: extract, flow: 720 m3/h}
uncertainty: {flow: 5 %, position: 20 mm, draught: 0.02 m/s}
contaminants: [{name: fume, kind: fume}]
sources: [{name: joint, contaminant: fume, at: [1.5 m, 1.3 m, 1.1 m], dispersion: gentle}]
hoods: [{name: nozzle, type: capturing, serves: [joint], opening: {round: 100 mm},
  at: [1.5 m, 1.4 m, 1.1 m], facing: [0, -1, 0]},
  {name: box, type: enclosing, form: cabinet, serves: [joint], opening: {rectangle: [600 mm, 300 mm]},
  inside: [0.8 m, 0.6 m, 0.5 m], other_openings: [{name: hatch, rectangle: [100 mm, 50 mm], wall: left,
  at: [250 mm, 300 mm]}], at: [1.5 m, 3 m, 1.2 m], facing: [0, -1, 0]}]
"""


def faults(old, new):
    assert old in FILE
    with pytest.raises(WorkplaceError) as error:
        parse_workplace(FILE.replace(old, new, 1), "hall.yaml")
    return str(error.value)


def test_openings_have_a_place_a_shape_and_a_flow():
    door, terminal, fan = parse_workplace(FILE).room.openings
    assert (door.sides, door.flow_in, door.centre((6, 5, 3))) == ((1.0, 2.1), None, (0.0, 2.0, 1.05))
    assert terminal.centre((6, 5, 3)) == (4.0, 2.0, 3.0) and terminal.flow_in == pytest.approx(0.1)
    assert terminal.sides[0] * terminal.sides[1] == pytest.approx(0.0706858, abs=1e-6)  # pi / 4 x 0.3²
    assert fan.centre((6, 5, 3)) == (5.0, 5.0, 2.5) and fan.flow_in == pytest.approx(-0.2)


def test_what_is_known_of_the_inputs_has_usual_values():
    told = parse_workplace(FILE).uncertainty
    assert (told.flow, told.position, told.draught, told.release) == (0.05, 0.02, 0.02, 0.10)


@pytest.mark.parametrize(
    "old, new, words",
    [
        (
            "at: [2 m, 1.05 m]",
            "at: [2 m, 0 m]",
            r"hall.yaml:6:41: room.openings[yard door].at: its 1000 mm by 2.1 m reach over",
        ),
        ("wall: west", "wall: left", "room.openings[yard door].wall: got 'left'; allowed: west, east"),
        ("kind: door}", "kind: door, flow: 1 m3/h}", "remove 'flow'"),
        (", flow: 360 m3/h", "", "add for example 'flow: 800 m3/h'"),
        ("flow: 720 m3/h", "flow: 90000 m3/h", "at most 30 m/s"),
        ("round: 300 mm", "round: 300 mm, size: [1 m, 1 m]", "got size and round"),
        ("name: terminal", "name: nozzle", "already the name of another part"),
        ("wall: north, at: [5 m, 2.5 m]", "wall: west, at: [2 m, 2 m]", "it lies over the yard door"),
        ("kind: door", "sort: door", "allowed here: name, wall, at, size, round, kind, flow"),
        (
            "at: [250 mm, 300 mm]",
            "at: [460 mm, 300 mm]",
            "hall.yaml:16:7: hoods[box].other_openings[hatch].at: its 100 mm",
        ),
        (
            "at: [250 mm, 300 mm]",
            "at: [250 mm, 580 mm]",
            "edge of the left wall of 500 mm by 600 mm; 'at' is its middle",
        ),
        ("wall: left,\n  at: [250 mm, 300 mm]", "wall: left", "'wall' and 'at' say together where it is"),
        ("wall: left", "wall: side", "got 'side'; allowed: left, right, back, front, top, floor"),
        ("wall: left", "count: 2, wall: left", "give each an entry"),
        ("position: 20 mm", "position: 3 m", "at most 1000 mm"),
        ("flow: 5 %", "flow: nan", "uncertainty.flow"),
        ("at: [5 m, 2.5 m]", "at: [.nan, 2.5 m]", "room.openings[roof fan].at"),
    ],
)
def test_one_clear_fault_for_each_slip(old, new, words):
    assert words in faults(old, new)


def test_schema_knows_the_new_keys():
    known = json_schema()["$defs"]
    assert {"RoomOpening", "Uncertainty"} <= set(known) and "at" in known["OtherOpening"]["properties"]
