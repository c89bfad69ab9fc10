"""Faults of ducts, fittings, cleaners and fans, each with the exact words its writer reads."""

import pytest

from hoodwright.errors import WorkplaceError
from hoodwright.workplace import parse_workplace

GOOD = """\
hoodwright: 1
name: Bench
room: {size: [9 m, 9 m, 3 m]}
contaminants: [{name: fume, kind: fume}]
sources: [{name: joint, contaminant: fume, at: [2 m, 1.9 m, 1 m], dispersion: gentle}]
hoods:
- {name: hood, type: capturing, serves: [joint], opening: {round: 100 mm}, at: [2 m, 2 m, 1 m], facing: [0, -1, 0]}
ducts:
- {name: A, from: hood, to: filter, round: 100 mm, length: 3 m, fittings: [{elbow: 90 deg, pieces: 5}]}
- {name: B, from: filter, to: fan, rectangle: [200 mm, 100 mm], length: 3 m, fittings: [{elbow: 90 deg}]}
- {name: stack, from: fan, to: outside, round: 125 mm, length: 3 m, taper: 30 deg}
cleaners: [{name: filter, resistance: {clean: 250 Pa, dirty: 500 Pa, at: 600 m3/h}}]
fans: [{name: fan, efficiency: 55 %, drive_loss: 5 %}]
"""
PIECES, ROUND = "{elbow: 90 deg, pieces: 5}", "{elbow: 90 deg}"

FAULTS = {
    "a fitting of no kind": (
        (PIECES, "{name: something}"),
        "9:76: ducts[A].fittings[something]: got none of them; one of elbow, loss, damper, damper_loss, weather_cap is "
        "needed, for example 'elbow: 90 deg' or 'loss: 0.3'; keep one",
    ),
    "a fitting of two kinds": (
        (PIECES, "{elbow: 90 deg, damper: 30 Pa}"),
        "9:76: ducts[A].fittings[#1]: got elbow and damper; one of elbow, loss, damper, damper_loss, weather_cap is "
        "needed, for example 'elbow: 90 deg' or 'loss: 0.3'; keep one",
    ),
    "a loss without a number": (
        (PIECES, "{loss: much}"),
        "9:83: ducts[A].fittings[#1].loss: much does not start with a number; write for example 2",
    ),
    "a loss below nothing": (
        (PIECES, "{loss: -0.2}"),
        "9:83: ducts[A].fittings[#1].loss: got '-0.2'; allowed: at least 0, at most 1000; write for example 1.5",
    ),
    "a damper in velocity pressures": (
        (PIECES, "{damper: 0.6}"),
        "9:85: ducts[A].fittings[#1].damper: 0.6 has no unit; write for example 0.6 Pa",
    ),
    "a mitred damper": (
        (PIECES, "{damper: 30 Pa, mitred: true}"),
        "9:76: ducts[A].fittings[#1]: 'pieces' and 'mitred' belong to an elbow, and this is a damper; remove them",
    ),
    "a mitred elbow of five pieces": (
        (PIECES, "{elbow: 90 deg, pieces: 5, mitred: true}"),
        "9:76: ducts[A].fittings[#1]: a mitred elbow is of two pieces; keep 'mitred' or 'pieces', not both",
    ),
    "an elbow of pieces too tight for its table": (
        (PIECES, "{elbow: 90 deg, pieces: 5, radius: 0.5}"),
        "9:76: ducts[A].fittings[#1]: got radius 0.5; elbows of 5 pieces are tabulated for radius 0.75 to 2 diameters: "
        "choose one inside, or give its 'loss'",
    ),
    "an elbow of pieces in a rectangular duct": (
        (ROUND, "{elbow: 90 deg, pieces: 4}"),
        "10:3: ducts[B]: elbows of pieces are round, and this duct is rectangular; remove 'pieces', or give the 'loss'",
    ),
    "a rectangular elbow too wide for its table": (
        (ROUND, "{elbow: 90 deg, radius: 2}"),
        "10:3: ducts[B]: got radius 2 in a rectangular duct; its elbows are tabulated for radius 0.5 to 1.5 sides: "
        "choose one inside, or give its 'loss'",
    ),
    "a weather cap in the middle of a run": (
        (PIECES, "{weather_cap: 0.75}"),
        "9:3: ducts[A]: a weather cap stands on the stack, and 'A' leads to 'filter'; move the cap",
    ),
    "a weather cap that all but closes the stack": (
        ("taper: 30 deg", "fittings: [{weather_cap: 0.2}]"),
        "11:94: ducts[stack].fittings[#1].weather_cap: got '0.2'; allowed: at least 0.45, at most 1; "
        "write for example 0.75",
    ),
    "a cone at a hood": (
        (
            "length: 3 m, fittings: [{elbow: 90 deg, pieces",
            "length: 3 m, taper: 30 deg, fittings: [{elbow: 90 deg, pieces",
        ),
        "9:72: ducts[A].taper: this duct begins at a hood, whose own taper is told there: write "
        "'entry: {taper: 45 deg}' at the hood",
    ),
    "a cone steeper than its table": (
        ("taper: 30 deg", "taper: 90 deg"),
        "11:76: ducts[stack].taper: got '90 deg'; allowed: at least 5 deg, at most 60 deg; write for example '30 deg'",
    ),
    "a branch that enters backwards": (
        ("to: filter, round: 100 mm", "to: filter, joins_at: 120 deg, round: 100 mm"),
        "9:47: ducts[A].joins_at: got '120 deg'; allowed: at least 10 deg, at most 90 deg; write for example '90 deg'",
    ),
    "hot air without its unit": (
        ("to: filter, round: 100 mm", "to: filter, temperature: 80, round: 100 mm"),
        "9:50: ducts[A].temperature: 80 has no unit; write for example 80 degC",
    ),
    "air as hot as a flame": (
        ("to: filter, round: 100 mm", "to: filter, temperature: 2000 degC, round: 100 mm"),
        "9:50: ducts[A].temperature: got '2000 degC'; allowed: at least -40 degC, at most 1000 degC; write for example "
        "'80 degC'",
    ),
    "a material that no table holds": (
        ("round: 100 mm, length", "round: 100 mm, material: tin, length"),
        "9:62: ducts[A].material: got 'tin'; allowed: galvanised, medium smooth, black iron, stainless, PVC, flexible; "
        "choose one of these",
    ),
    "a duct without a size": (
        ("round: 100 mm, length: 3 m", "length: 3 m"),
        "9:3: ducts[A]: got none; one shape is needed: 'round: 100 mm' or 'rectangle: [300 mm, 200 mm]'",
    ),
    "a duct of two sizes": (
        ("round: 100 mm, length: 3 m", "round: 100 mm, rectangle: [100 mm, 90 mm], length: 3 m"),
        "9:3: ducts[A]: got both; one shape is needed: 'round: 100 mm' or 'rectangle: [300 mm, 200 mm]'",
    ),
    "a duct without a length": (
        ("round: 100 mm, length: 3 m", "round: 100 mm"),
        "9:3: ducts[A].length: missing; add 'length: 3 m'",
    ),
    "a narrow hose": (
        ("round: 100 mm, length: 3 m", "round: 20 mm, material: flexible, length: 3 m"),
        "9:3: ducts[A]: got a flexible hose of 20 mm; its friction is known from 30 mm: choose a wider one",
    ),
    "a cleaner whose resistance falls with flow": (
        ("at: 600 m3/h}", "at: 600 m3/h, exponent: -1}"),
        "12:94: cleaners[filter].resistance.exponent: got '-1'; allowed: at least 0, at most 3; write for example 1.5",
    ),
    "a cleaner of no resistance at all": (
        (", resistance: {clean: 250 Pa, dirty: 500 Pa, at: 600 m3/h}", ""),
        "12:12: cleaners[filter].resistance: missing; add 'resistance: {clean: 250 Pa, dirty: 500 Pa, at: 600 m3/h}'",
    ),
    "belts that lose more than half": (
        ("drive_loss: 5 %", "drive_loss: 60 %"),
        "13:50: fans[fan].drive_loss: got '60 %'; allowed: at least 0 %, at most 50 %; write for example '5 %'",
    ),
    "a fan better than perfect": (
        ("efficiency: 55 %", "efficiency: 120 %"),
        "13:32: fans[fan].efficiency: got '120 %'; allowed: at least 5 %, at most 100 %; write for example '45 %'",
    ),
}


def faults_of(text: str) -> list[str]:
    with pytest.raises(WorkplaceError) as caught:
        parse_workplace(text, "bench.yaml")
    return [str(fault) for fault in caught.value.faults]


def test_the_file_itself_is_good():
    assert parse_workplace(GOOD).fans[0].drive_loss == pytest.approx(0.05)


@pytest.mark.parametrize("change, fault", FAULTS.values(), ids=FAULTS.keys())
def test_one_fault_is_told_in_these_words(change, fault):
    old, new = change
    assert old in GOOD
    assert faults_of(GOOD.replace(old, new, 1)) == [f"bench.yaml:{fault}"]
