"""Capturing hoods that look enough by an equation and are not called enough: each with what takes it away."""

import pytest

from hoodwright.results import Verdict
from hoodwright.tasks.assess import assess
from hoodwright.workplace import parse_workplace

BENCH = """
hoodwright: 1
name: Bench
room: {size: [9 m, 9 m, 3 m]}
people: []
contaminants: [{name: fume, kind: fume, hazards: []}]
surfaces: []
sources: [{name: joint, contaminant: fume, at: [2 m, 1.9 m, 1 m], dispersion: gentle}]
hoods:
  - name: hood
    type: capturing
    serves: [joint]
    opening: {round: 100 mm}
    flange: 100 mm
    at: [2 m, 2 m, 1 m]
    facing: [0, -1, 0]
    intended_flow: 3000 m3/h
"""
TABLE = [
    (
        "opening: {round: 100 mm}\n    flange: 100 mm",
        "form: downdraught bench\n    opening: {rectangle: [1.2 m, 0.6 m]}",
    ),
    ("facing: [0, -1, 0]", "facing: [0, 0, 1]"),
]


def enough(*changes: tuple[str, str]):
    text = BENCH
    for old, new in changes:
        assert old in text, old
        text = text.replace(old, new)
    return assess(parse_workplace(text)).hoods[0].enough


def test_the_hood_itself_is_enough():
    assert enough().verdict is Verdict.MEETS


@pytest.mark.parametrize(
    ("change", "why"),
    [
        (
            (
                "surfaces: []",
                "surfaces: [{name: screen, corner: [1 m, 1.95 m, 0 m], sides: [[2 m, 0 m, 0 m], [0, 0, 2 m]]}]",
            ),
            "the screen stands between the joint and the hood",
        ),
        (
            ("dispersion: gentle", "dispersion: gentle, heat: {form: face, round: 200 mm, temperature: 1000 degC}"),
            "hot air rises from the joint past the hood",
        ),
        (("hazards: []", "hazards: [asbestos]"), "asbestos is licensed work in an enclosure of its own"),
    ],
)
def test_what_takes_it_away(change, why):
    told = enough(change)
    assert told.verdict is Verdict.CANNOT_TELL
    assert why in told.because


def test_a_draught_from_behind_someone():
    """They stand 0.6 m in front of the joint, and the draught of 0.2 m/s goes their way."""
    person = ("people: []", "people: [{name: welder, at: [2 m, 1.3 m], facing: [0, 1, 0]}]")
    room = "size: [9 m, 9 m, 3 m]"
    behind = (room, f"{room}, draught: {{towards: [0, 1, 0], speed: 0.2 m/s}}")
    across = (room, f"{room}, draught: {{towards: [1, 0, 0], speed: 0.2 m/s}}")
    assert "welder has the draught from behind at the joint" in enough(person, behind).because
    assert enough(person, across).verdict is Verdict.MEETS


def test_a_screen_beside_the_way_does_not_matter():
    low = "surfaces: [{name: screen, corner: [1 m, 1.95 m, 0 m], sides: [[2 m, 0 m, 0 m], [0, 0, 0.8 m]]}]"
    assert enough(("surfaces: []", low)).verdict is Verdict.MEETS


@pytest.mark.parametrize(
    ("place", "verdict"),
    [
        ("[2.3 m, 2.1 m, 1.2 m]", Verdict.MEETS),
        ("[3 m, 2 m, 1.1 m]", Verdict.CANNOT_TELL),  # 1 m aside of a grille of 1.2 m
        ("[2 m, 2 m, 2 m]", Verdict.CANNOT_TELL),  # 1 m above it
        ("[2 m, 2 m, 0.9 m]", Verdict.CANNOT_TELL),  # below it
    ],
)
def test_a_table_is_for_work_near_its_hood(place, verdict):
    told = enough(*TABLE, ("at: [2 m, 1.9 m, 1 m]", f"at: {place}"))
    assert told.verdict is verdict
    if verdict is Verdict.CANNOT_TELL:
        assert "is for work before its opening, up to 500\u2009mm off (our limit)" in told.because
