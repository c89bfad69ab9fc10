"""Faults of wheels, thrown streams and their hoods, each with the exact words its writer reads."""

import pytest

from hoodwright.errors import WorkplaceError
from hoodwright.workplace import parse_workplace

SHOP = """hoodwright: 1
name: Shop
room: {size: [9 m, 9 m, 3 m]}
contaminants: [{name: dust, kind: dust}]
sources:
- {name: stone, contaminant: dust, dispersion: thrown, at: [2 m, 2 m, 1 m], WHAT}
hoods:
- {name: shroud, type: receiving, serves: [stone], opening: {round: 200 mm}, at: [2 m, 2.2 m, 1 m], facing: [0, -1, 0]}
"""
WORKS = (
    "grinding, cutting off, buffing, polishing, scratch brushing, single-spindle disc, double-spindle disc, covered "
    "vertical-spindle disc, open vertical-spindle disc, belt"
)
SIZE = "allowed: at least 1 mm, at most 100 m; write for example '150 mm' or '6 in'"

SPEED = "allowed: more than 0 m/s, at most 300 m/s; write for example '0.5 m/s' or '100 fpm'"

# What the wheel is, and the one fault that follows.
WHEEL_FAULTS = {
    "an unknown work": (
        "{work: griding, diameter: 300 mm, width: 50 mm}",
        f"wheel.work: got 'griding'; allowed: {WORKS}; did you mean 'grinding'?",
    ),
    "no work": ("{diameter: 300 mm, width: 50 mm}", "wheel.work: missing; add 'work: grinding'"),
    "a wheel without width": (
        "{work: buffing, diameter: 300 mm}",
        "wheel: got diameter; 'buffing' is told by its diameter and width alone: give exactly that",
    ),
    "a wheel without sizes": (
        "{work: grinding}",
        "wheel: got nothing; 'grinding' is told by its diameter and width alone: give exactly that",
    ),
    "a disc with a width": (
        "{work: single-spindle disc, diameter: 300 mm, width: 50 mm}",
        "wheel: got diameter and width; 'single-spindle disc' is told by its diameter alone: give exactly that",
    ),
    "a belt with a diameter": (
        "{work: belt, diameter: 300 mm}",
        "wheel: got diameter; 'belt' is told by its width alone: give exactly that",
    ),
    "no unit": (
        "{work: grinding, diameter: 300, width: 50 mm}",
        "wheel.diameter: 300 has no unit; write for example 300 mm",
    ),
    "a negative diameter": (
        "{work: grinding, diameter: -300 mm, width: 50 mm}",
        f"wheel.diameter: got '-300 mm'; {SIZE}",
    ),
    "a width of nothing": ("{work: grinding, diameter: 300 mm, width: 0 mm}", f"wheel.width: got '0 mm'; {SIZE}"),
    "a speed for a width": (
        "{work: grinding, diameter: 300 mm, width: 30 m/s}",
        "wheel.width: 30 m/s is a velocity; a length is needed, for example 250 mm or 10 in",
    ),
    "a misspelled key": (
        "{work: belt, witdh: 50 mm}",
        "wheel.witdh: unknown key; allowed here: work, diameter, width; did you mean 'width'?",
    ),
    "a bare word": ("grinding", "wheel: a group of keys is needed, got 'grinding'; write 'key: value' lines below it"),
}
THROW = "{speed: 20 m/s, grain: 100 um, grain_density: 2600 kg/m3, towards: [0, 1, 0]}"
# What is changed in the throw, and the one fault that follows.
THROW_FAULTS = {
    "no speed": ("speed: 20 m/s, ", "", "throws.speed: missing; add 'speed: 0.15 m/s'"),
    "no grain": ("grain: 100 um, ", "", "throws.grain: missing; add 'grain: 100 um'"),
    "no direction": (", towards: [0, 1, 0]", "", "throws.towards: missing; add 'towards: [1, 0, 0]'"),
    "standing still": (
        "20 m/s",
        "0 m/s",
        f"throws.speed: got '0 m/s'; {SPEED}",
    ),
    "faster than any wheel": (
        "20 m/s",
        "900 m/s",
        f"throws.speed: got '900 m/s'; {SPEED}",
    ),
    "a boulder": (
        "100 um",
        "100 mm",
        "throws.grain: got '100 mm'; allowed: at least 0.00001 mm, at most 50 mm; write for example '150 mm' or '6 in'",
    ),
    "lighter than air": (
        "2600 kg/m3",
        "0.5 kg/m3",
        "throws.grain_density: got '0.5 kg/m3'; allowed: at least 1 kg/m3, at most 25000 kg/m3; write for example "
        "'2600 kg/m3' or '160 lb/ft3'",
    ),
    "a density as a length": (
        "2600 kg/m3",
        "26 mm",
        "throws.grain_density: 26 mm is a length; a density is needed, for example 1.2 kg/m3 or 0.075 lb/ft3",
    ),
    "towards nowhere": (
        "[0, 1, 0]",
        "[0, 0, 0]",
        "throws.towards: a direction of length zero points nowhere; write for example [0, -1, 0]",
    ),
    "towards a point with units": (
        "[0, 1, 0]",
        "[0 m, 1 m, 0 m]",
        "throws.towards: a direction is three plain numbers without a unit; write for example [0, -1, 0]",
    ),
    "two numbers for a direction": (
        "[0, 1, 0]",
        "[0, 1]",
        "throws.towards: 3 numbers are needed, got a list of 2; write for example [0, -1, 0]",
    ),
}


def one_fault(text: str) -> str:
    with pytest.raises(WorkplaceError) as caught:
        parse_workplace(text, "shop.yaml")
    (fault,) = [f"{fault.field}: {fault.message}" for fault in caught.value.faults]
    return fault


@pytest.mark.parametrize(("wheel", "words"), WHEEL_FAULTS.values(), ids=WHEEL_FAULTS)
def test_one_clear_fault_of_a_wheel(wheel, words):
    assert one_fault(SHOP.replace("WHAT", f"wheel: {wheel}")) == f"sources[stone].{words}"


@pytest.mark.parametrize(("old", "new", "words"), THROW_FAULTS.values(), ids=THROW_FAULTS)
def test_one_clear_fault_of_a_throw(old, new, words):
    assert old in THROW
    assert one_fault(SHOP.replace("WHAT", f"throws: {THROW.replace(old, new)}")) == f"sources[stone].{words}"


def test_the_shop_itself_has_no_fault():
    parse_workplace(SHOP.replace("WHAT", f"throws: {THROW}"))
    parse_workplace(SHOP.replace("WHAT", "wheel: {work: belt, width: 100 mm}"))
