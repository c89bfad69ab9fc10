"""Faults of canopies and of hot work, each with the exact words its writer reads."""

import pytest

from hoodwright.errors import WorkplaceError
from hoodwright.workplace import parse_workplace

HEAT = "heat: {form: body, round: 400 mm, height: 500 mm, temperature: 1100 degC}"
SHOP = f"""hoodwright: 1
name: Shop
room: {{size: [9 m, 9 m, 5 m]}}
contaminants: [{{name: fume, kind: fume}}]
sources:
- {{name: melt, contaminant: fume, dispersion: gentle, at: [2 m, 2 m, 0.9 m], {HEAT}}}
hoods:
- {{name: canopy, type: receiving, serves: [melt], opening: {{round: 800 mm}}, at: [2 m, 2 m, 1.6 m], open_sides: 4}}
"""
HOOD_KEYS = (
    "name, type, serves, opening, at, facing, along, entry, filter, intended_flow, commissioned, today, open_sides"
)
ONE_STRENGTH = "one of temperature, convective, boils_off is needed, for example 'temperature: 400 degC'; keep one"
WARMTH = "allowed: at least 0 degC, at most 3000 degC; write for example '21 degC' or '70 degF'"

# What stands in place of the heat, and the one fault that follows.
HEAT_FAULTS = {
    "an unknown form": (
        "{form: dome, round: 400 mm, temperature: 1100 degC}",
        "heat.form: got 'dome'; allowed: face, body, cylinder, boiling tank; choose one of these",
    ),
    "a body without height": (
        "{form: body, round: 400 mm, temperature: 1100 degC}",
        "heat: form 'body' and 'height' do not fit: a body has one, nothing else does",
    ),
    "a face with a height": (
        "{form: face, round: 400 mm, height: 500 mm, temperature: 1100 degC}",
        "heat: form 'face' and 'height' do not fit: a body has one, nothing else does",
    ),
    "no strength": ("{form: face, round: 400 mm}", f"heat: got none of them; {ONE_STRENGTH}"),
    "two strengths": (
        "{form: face, round: 400 mm, temperature: 1100 degC, convective: 2 kW}",
        f"heat: got temperature and convective; {ONE_STRENGTH}",
    ),
    "a tank that does not boil": (
        "{form: boiling tank, round: 400 mm, temperature: 100 degC}",
        "heat: form 'boiling tank' and 'boils_off' do not fit: a boiling tank has it, nothing else does",
    ),
    "a face that boils": (
        "{form: face, round: 400 mm, boils_off: 3 kg/h}",
        "heat: form 'face' and 'boils_off' do not fit: a boiling tank has it, nothing else does",
    ),
    "a round cylinder": (
        "{form: cylinder, round: 400 mm, temperature: 100 degC}",
        "heat: a cylinder lies level; give 'rectangle: [length, diameter]'",
    ),
    "no shape": (
        "{form: face, temperature: 100 degC}",
        "heat: got none; one shape is needed: 'round: 100 mm' or 'rectangle: [300 mm, 200 mm]'",
    ),
    "two shapes": (
        "{form: face, round: 400 mm, rectangle: [1 m, 1 m], temperature: 100 degC}",
        "heat: got both; one shape is needed: 'round: 100 mm' or 'rectangle: [300 mm, 200 mm]'",
    ),
    "no unit": (
        "{form: face, round: 400 mm, temperature: 100}",
        "heat.temperature: 100 has no unit; write for example 100 degC",
    ),
    "hotter than any furnace": (
        "{form: face, round: 400 mm, temperature: 5000 degC}",
        f"heat.temperature: got '5000 degC'; {WARMTH}",
    ),
    "frozen": ("{form: face, round: 400 mm, temperature: -20 degC}", f"heat.temperature: got '-20 degC'; {WARMTH}"),
    "a word for a temperature": (
        "{form: face, round: 400 mm, temperature: warm}",
        "heat.temperature: warm does not start with a number; write for example 20 degC or 68 degF",
    ),
    "no heat": (
        "{form: face, round: 400 mm, convective: 0 kW}",
        "heat.convective: got '0 kW'; allowed: more than 0 W, at most 10000 kW; write for example '2.5 kW'",
    ),
    "heat as a mass rate": (
        "{form: face, round: 400 mm, convective: 2 kg/h}",
        "heat.convective: 2 kg/h is a mass rate; a power is needed, for example 750 W or 1 hp",
    ),
    "steam as a power": (
        "{form: boiling tank, round: 400 mm, boils_off: 3 kW}",
        "heat.boils_off: 3 kW is a power; a mass rate is needed, for example 1.5 mg/min",
    ),
    "a misspelled key": (
        "{form: face, round: 400 mm, convectve: 2 kW}",
        "heat.convectve: unknown key; allowed here: round, rectangle, form, height, temperature, convective, "
        "boils_off; did you mean 'convective'?",
    ),
    "a bare temperature": (
        "1100 degC",
        "heat: a group of keys is needed, got '1100 degC'; write 'key: value' lines below it",
    ),
    "a body of no height": (
        "{form: body, round: 400 mm, height: 0 mm, temperature: 1100 degC}",
        "heat.height: got '0 mm'; allowed: at least 1 mm, at most 100 m; write for example '150 mm' or '6 in'",
    ),
}

# What is changed in the canopy, and the one fault that follows.
CANOPY_FAULTS = {
    "one open side": (("sides: 4", "sides: 1"), "open_sides: got '1'; allowed: 2, 3, 4; choose one of these"),
    "a word for open sides": (
        ("sides: 4", "sides: four"),
        "open_sides: got 'four'; allowed: 2, 3, 4; choose one of these",
    ),
    "a flange": (
        ("open_sides: 4", "flange: 100 mm"),
        f"flange: unknown key; allowed here: {HOOD_KEYS}; only a hood of type 'capturing' has it: remove it, or change "
        "the type",
    ),
    "facing nowhere": (
        ("open_sides: 4", "facing: [0, 0, 0]"),
        "facing: a direction of length zero points nowhere; write for example [0, -1, 0]",
    ),
    "an opening of no size": (
        ("{round: 800 mm}", "{round: 0 mm}"),
        "opening.round: got '0 mm'; allowed: at least 1 mm, at most 100 m; write for example '150 mm' or '6 in'",
    ),
    "an opening without a shape": (
        ("{round: 800 mm}", "{}"),
        "opening: got none; one shape is needed: 'round: 100 mm', 'rectangle: [300 mm, 200 mm]' or "
        "'slot: [600 mm, 25 mm]'",
    ),
    "a source that is not there": (
        ("serves: [melt]", "serves: [metl]"),
        "serves[#1]: no source is named 'metl'; there is: melt; did you mean 'melt'?",
    ),
    "above the roof": (
        ("2 m, 1.6 m", "2 m, 6 m"),
        "at: [2, 2, 6] m is outside the room of 9 x 9 x 5 m; move the hood or mend the room",
    ),
}


def one_fault(text: str) -> str:
    with pytest.raises(WorkplaceError) as caught:
        parse_workplace(text, "shop.yaml")
    (fault,) = caught.value.faults
    return str(fault)


@pytest.mark.parametrize("heat, fault", HEAT_FAULTS.values(), ids=HEAT_FAULTS)
def test_one_fault_of_hot_work_is_told_in_these_words(heat, fault):
    assert one_fault(SHOP.replace(HEAT, f"heat: {heat}")).split(": sources[melt].", 1)[1] == fault


@pytest.mark.parametrize("change, fault", CANOPY_FAULTS.values(), ids=CANOPY_FAULTS)
def test_one_fault_of_a_canopy_is_told_in_these_words(change, fault):
    assert change[0] in SHOP
    assert one_fault(SHOP.replace(*change)).split(": hoods[canopy].", 1)[1] == fault


def test_a_side_that_does_not_lie_in_the_opening():
    assert one_fault(SHOP.replace("open_sides: 4", "along: [0, 0, 1]")).endswith(
        "hoods[canopy]: 'along' is the direction of the opening's first side: it must be square to 'facing'"
    )


def test_the_shop_has_no_fault():
    assert parse_workplace(SHOP).hoods[0].is_canopy
