"""Hints of capturing hoods that change more than place and flange: they hold when they are followed."""

import pytest

from hoodwright.results import Verdict
from hoodwright.tasks.assess import assess
from hoodwright.workplace import parse_workplace

BENCH = """
hoodwright: 1
name: Bench
room: {size: [9 m, 9 m, 3 m]}
contaminants: [{name: fume, kind: fume, hazards: []}]
surfaces: []
sources:
- {name: joint, contaminant: fume, at: [2 m, 1.85 m, 1 m], dispersion: gentle}
hoods:
- name: nozzle
  type: capturing
  serves: [joint]
  opening: {round: 100 mm}
  at: [2 m, 2 m, 1 m]
  facing: [0, -1, 0]
  intended_flow: 300 m3/h
"""
UNDER = (
    "surfaces: []",
    "surfaces: [{name: bench, corner: [1 m, 1 m, 0.95 m], sides: [[2 m, 0 m, 0 m], [0 m, 1 m, 0 m]]}]",
)
BESIDE = (
    "surfaces: [{",
    "surfaces: [{name: plate, corner: [1.95 m, 1 m, 0 m], sides: [[0 m, 1 m, 0 m], [0 m, 0 m, 2 m]]}, {",
)
GRAVE = ("hazards: []", "hazards: [carcinogen]")


def hood_of(*changes: tuple[str, str], text: str = BENCH):
    for old, new in changes:
        assert old in text, old
        text = text.replace(old, new)
    return assess(parse_workplace(text)).hoods[0]


def hints_of(*changes, **how) -> dict[str, str]:
    return {hint.change: hint.text.replace("\u2009", " ") for hint in hood_of(*changes, **how).hints}


def test_a_plate_mirrors_the_opening():
    """X² = 0.15² + 0.05² = 0.025 m2: 0.5 x (5 x 0.025 + 0.00785398) = 0.066427 m3/s = 239.1 m3/h."""
    assert hints_of()["plate"] == (
        "with a bench or a plate along one edge of its opening, out past the joint, 240 m³/h would be enough at the "
        "same place"
    )
    assert hood_of(UNDER, ("300 m3/h", "240 m3/h")).enough.verdict is Verdict.MEETS
    assert hood_of(UNDER, ("300 m3/h", "239 m3/h")).enough.verdict is Verdict.SHORT


def test_a_plate_beside_a_bench_makes_a_corner():
    """X² = 0.15² + 2 x 0.05² = 0.0275 m2: 0.5 x (2.5 x 0.0275 + 0.00785398) = 0.038302 m3/s = 137.9 m3/h."""
    assert "138 m³/h" in hints_of(UNDER)["plate"]
    assert hood_of(UNDER, BESIDE, ("300 m3/h", "138 m3/h")).enough.verdict is Verdict.MEETS
    assert "plate" not in hints_of(UNDER, BESIDE)


def test_a_plate_that_would_hide_the_source_is_not_proposed():
    """Joints above, below, left and right of the opening: each plate would lie between one of them and the hood."""
    names = ["up", "down", "left", "right"]
    places = ["[2 m, 1.85 m, 1.07 m]", "[2 m, 1.86 m, 0.93 m]", "[1.93 m, 1.87 m, 1 m]", "[2.07 m, 1.88 m, 1 m]"]
    lines = [
        f"- {{name: {name}, contaminant: fume, at: {place}, dispersion: gentle}}\n"
        for name, place in zip(names, places, strict=True)
    ]
    joint = "- {name: joint, contaminant: fume, at: [2 m, 1.85 m, 1 m], dispersion: gentle}\n"
    four = [
        (joint, "".join(lines)),
        ("serves: [joint]", f"serves: [{', '.join(names)}]"),
        ("round: 100 mm", "round: 120 mm"),
    ]
    assert "plate" not in hints_of(*four)


def test_a_slot_comes_closer_along_its_axis():
    """A seam along a slot of 1 m, flanged: 200 mm before its end the line asks 0.640762 m3/s = 2306.7 m3/h.

    At 100 mm, 2 pi x 0.1 x 0.5 x sqrt(0.1² + 1) = 0.315725 m3/s = 1136.6 m3/h.
    """
    seam = ("at: [2 m, 1.85 m, 1 m]", "line: [[1.5 m, 1.8 m, 1 m], [2.5 m, 1.8 m, 1 m]]")
    slot = ("opening: {round: 100 mm}", "opening: {slot: [1 m, 50 mm]}\n  flange: 250 mm")
    assert (
        "at 100 mm from the joint, 1140 m³/h would be enough"
        in hints_of(seam, slot, ("300 m3/h", "3000 m3/h"))["closer"]
    )
    moved = ("at: [2 m, 2 m, 1 m]", "at: [2 m, 1.9 m, 1 m]")
    assert hood_of(seam, slot, moved, ("300 m3/h", "1140 m3/h")).enough.verdict is Verdict.MEETS


def test_a_hood_on_the_bench_comes_closer_on_the_bench():
    """Joint 5 mm above the bench, 45 mm below the middle: 200 mm away it is 194.872 mm ahead, 100 mm away 89.303 mm.

    X = 100 mm: 0.5 x (5 x 0.01 + 0.00785398) = 0.028927 m3/s = 104.14 m3/h. The hood moves 105.569 mm along the bench.
    """
    low = ("at: [2 m, 1.85 m, 1 m]", "at: [2 m, 1.805128 m, 0.955 m]")
    assert "at 100 mm from the joint, 105 m³/h" in hints_of(UNDER, low, ("300 m3/h", "1000 m3/h"))["closer"]
    moved = ("at: [2 m, 2 m, 1 m]", "at: [2 m, 1.894431 m, 1 m]")
    assert hood_of(UNDER, low, moved, ("300 m3/h", "105 m3/h")).enough.verdict is Verdict.MEETS


def test_a_cabinet_has_one_way_in():
    """0.4 x 0.3 m at 0.508 m/s (100 fpm): 0.06096 m3/s = 219.5 m3/h; 0.8636 m/s (170 fpm) for a carcinogen: 373.1."""
    assert hints_of()["enclose"] == (
        "in a cabinet round the joint, open 400 mm by 300 mm at the front, 220 m³/h brings 0.508 m/s through its "
        "opening"
    )
    assert "374 m³/h brings 0.864 m/s" in hints_of(GRAVE)["enclose"]
    assert "enclose" not in hints_of(("1.85 m", "1.97 m"))  # 30 mm away the hood itself takes less


def test_a_cabinet_is_as_large_as_the_source():
    """0.5 + 0.2 m wide, 0.2 + 0.2 m high."""
    box = ("at: [2 m, 1.85 m, 1 m]", "box: [[1.75 m, 1.45 m, 0.9 m], [2.25 m, 1.5 m, 1.1 m]]")
    large = ("{round: 100 mm}", "{rectangle: [500 mm, 300 mm]}")
    assert "open 700 mm by 400 mm" in hints_of(box, large)["enclose"]


def test_suction_on_the_torch_where_the_guide_names_it():
    """34.06 cfm = 57.87 m3/h, 60 cfm = 101.9 m3/h."""
    torch = ("dispersion: gentle", "dispersion: gentle, process: MIG or MAG welding")
    assert hints_of(torch)["another hood"] == (
        "extraction on the torch itself takes 57.9 m³/h instead, from a vacuum of its own, not from this fan"
    )
    assert "102 m³/h" in hints_of(torch, GRAVE)["another hood"]
    assert "another hood" not in hints_of(("dispersion: gentle", "dispersion: gentle, process: TIG welding"))


def test_suction_on_a_grinder_goes_by_its_wheel():
    """25 cfm for each inch of 125 mm: 123.03 cfm = 209.03 m3/h."""
    process = "dispersion: gentle, process: grinding concrete"
    wheel = f"{process}, wheel: {{work: cutting off, diameter: 125 mm, width: 3 mm}}"
    assert "210 m³/h" in hints_of(("dispersion: gentle", wheel))["another hood"]
    assert "another hood" not in hints_of(("dispersion: gentle", process))


@pytest.mark.parametrize("form", ["on-torch", "downdraught bench"])
def test_a_form_with_a_table_has_no_plate_and_no_flange(form):
    found = hints_of(
        ("opening: {round: 100 mm}", f"opening: {{round: 100 mm}}\n  form: {form}"), ("300 m3/h", "20 m3/h")
    )
    assert not {"plate", "flange", "closer", "another hood"} & set(found)


def test_each_hint_carries_flow_and_make_up_air():
    torch = ("dispersion: gentle", "dispersion: gentle, process: MIG or MAG welding")
    hints = hood_of(torch).hints
    assert {"plate", "enclose", "another hood"} <= {hint.change for hint in hints}
    assert all(hint.make_up_air.value == hint.flow.value > 0 for hint in hints)
