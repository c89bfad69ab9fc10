"""Faults of fan curves, leaks, oval ducts, scenarios and prices, each with the words its writer reads."""

import pytest

from built_shop import LINE, ONE_DUCTS, hood, shop_text
from hoodwright.errors import InputError, WorkplaceError
from hoodwright.tasks.as_built.report import check_joined
from hoodwright.workplace import parse_workplace

GOOD = shop_text(
    [hood(1)],
    ONE_DUCTS.replace("length: 0 m}", "length: 2 m, rise: 1 m, leak: {flow: 10 m3/h, at: 500 Pa}}"),
    f"- {{name: fan, {LINE}, speed: 2900 rpm, runs_at: 2800 rpm, efficiency: [[0 m3/h, 40 %], [900 m3/h, 60 %]]}}",
    "scenarios: [{name: shut, closed: [hood 1], dampers: {A: 3}}]\nprices: {energy: 0.25 per kWh}\n",
)
CURVE = LINE[LINE.index("curve:") :]

FAULTS = {
    "a curve that rises twice": (
        (
            CURVE,
            "curve: [[0 m3/h, 500 Pa], [300 m3/h, 600 Pa], [600 m3/h, 500 Pa], [900 m3/h, 550 Pa], [1200 m3/h, 0 Pa]]",
        ),
        "fans[fan].curve: the pressure rises, falls and rises again; a fan's curve rises once at most: read it again",
    ),
    "a curve that never falls": (
        (CURVE, "curve: [[0 m3/h, 500 Pa], [300 m3/h, 400 Pa], [600 m3/h, 450 Pa]]"),
        "fans[fan].curve: the pressure rises up to the last point; a fan's curve falls in the end: add its end",
    ),
    "flows that do not rise": (
        (CURVE, "curve: [[0 m3/h, 500 Pa], [600 m3/h, 400 Pa], [300 m3/h, 300 Pa]]"),
        "fans[fan].curve: flow 300 m3/h follows 600 m3/h; the points go from no flow to the most: put them in order",
    ),
    "too few points": (
        (CURVE, "curve: [[0 m3/h, 500 Pa], [600 m3/h, 400 Pa]]"),
        "fans[fan].curve: got 2 points; three or more are needed, from the maker's curve: add some",
    ),
    "a point of three": (
        ("[0 m3/h, 1000 Pa]", "[0 m3/h, 1000 Pa, 3]"),
        "fans[fan].curve[#1]: a flow and a pressure are needed, got a list of 3; write for example [1500 m3/h, "
        "2500 Pa]",
    ),
    "a point without units": (
        ("[0 m3/h, 1000 Pa]", "[0, 1000 Pa]"),
        "fans[fan].curve[#1][#1]: 0 has no unit; write for example 0 m3/h",
    ),
    "a curve of no kind": (
        ("pressure: total, ", ""),
        "fans[fan]: a curve says static or total pressure, and the two differ; add 'pressure: static' or "
        "'pressure: total'",
    ),
    "a speed without its curve's": (
        ("speed: 2900 rpm, ", ""),
        "fans[fan]: 'runs_at' is held against the speed of the curve; add 'speed', as on its sheet",
    ),
    "a speed without a curve": (
        (f"{LINE}, ", ""),
        "fans[fan]: 'pressure', 'speed' and 'runs_at' belong to a curve, and there is none; add 'curve'",
    ),
    "an efficiency that is no list of points": (
        ("[[0 m3/h, 40 %], [900 m3/h, 60 %]]", "[[0 m3/h, 40 %]]"),
        "fans[fan].efficiency: two points or more are needed, each with more flow than the one before; mend the list",
    ),
    "a negative length": (
        ("length: 2 m", "length: -2 m"),
        "ducts[stack].length: got '-2 m'; allowed: at least 0 mm, at most 1000 m; write for example '150 mm' or '6 in'",
    ),
    "a duct that rises more than it is long": (
        ("rise: 1 m", "rise: 3 m"),
        "ducts[stack]: got rise 3 m over a length of 2 m; a duct rises no more than it is long",
    ),
    "a leak without its pressure": (
        ("{flow: 10 m3/h, at: 500 Pa}", "{flow: 10 m3/h}"),
        "ducts[stack].leak.at: missing; add 'at: 500 Pa'",
    ),
    "an oval the wrong way round": (
        ("rectangle: [100 mm, 200 mm], length: 2 m", "oval: [100 mm, 200 mm], length: 2 m"),
        "ducts[stack]: got oval [100 mm, 200 mm]; its longer side comes first: exchange the two",
    ),
    "an elbow in an oval": (
        (
            "rectangle: [100 mm, 200 mm], length: 2 m",
            "oval: [200 mm, 100 mm], length: 2 m, fittings: [{elbow: 90 deg}]",
        ),
        "ducts[stack]: no table has elbows of oval ducts; give its 'loss' instead, from the maker",
    ),
    "two shapes": (
        ("rectangle: [100 mm, 200 mm], length: 2 m", "round: 100 mm, oval: [200 mm, 100 mm], length: 2 m"),
        "ducts[stack]: got round and oval; one shape is needed: 'round: 100 mm' or 'rectangle: [300 mm, 200 mm]'",
    ),
    "a scenario of an unknown hood": (
        ("closed: [hood 1]", "closed: [hod 1]"),
        "scenarios[shut].closed[#1]: no hood is named 'hod 1'; there is: hood 1; did you mean 'hood 1'?",
    ),
    "a scenario with an unknown damper": (
        ("dampers: {A: 3}", "dampers: {Z9: 3}"),
        "scenarios[shut].dampers: no duct is named 'Z9'; there is: A, stack; add that duct or mend the name",
    ),
    "dampers that are no group": (
        ("dampers: {A: 3}", "dampers: 3"),
        "scenarios[shut].dampers: dampers by their ducts are needed, got '3'; write for example {B1: 4}",
    ),
    "a price in words": (
        ("0.25 per kWh", "cheap"),
        "prices.energy: a price is needed, got 'cheap'; write for example '0.25 per kWh'",
    ),
    "two roots": (
        ("scenarios:", "- {name: fan 2}\nscenarios:"),
        "fans[fan 2].name: no duct leads to 'fan 2'; add one, or remove the part",
    ),
    "a loop without a fan": (
        ("to: fan, rect", "to: J, rect"),
        "ducts[B]: runs in a circle: J > K > J; lead it to a fan",
    ),
}
LOOP = (
    "- {name: B, from: J, to: K, round: 100 mm, length: 1 m}\n- {name: C, from: K, to: J, round: 100 mm, length: 1 m}\n"
)


def faults_of(text: str) -> list[str]:
    with pytest.raises(WorkplaceError) as caught:
        parse_workplace(text)
    return [f"{fault.field}: {fault.message}" for fault in caught.value.faults]


def test_the_good_file_is_good():
    parse_workplace(GOOD)


@pytest.mark.parametrize("name", FAULTS)
def test_one_fault_is_told_in_these_words(name):
    (old, new), fault = FAULTS[name]
    assert old in GOOD
    text = GOOD.replace(old, new, 1)
    text = text.replace("fans:", f"{LOOP}fans:", 1) if name == "a loop without a fan" else text
    assert fault in faults_of(text)


def test_all_faults_come_together():
    text = GOOD.replace("length: 2 m", "length: -2 m").replace("[0 m3/h, 1000 Pa]", "[0, 1000 Pa]")
    text = text.replace("closed: [hood 1]", "closed: [hod 1]").replace("0.25 per kWh", "cheap")
    assert len(faults_of(text)) >= 4


def test_a_second_duct_from_one_junction_is_a_second_root():
    more = "- {name: B, from: fan, to: outside, round: 100 mm, length: 1 m}\nfans:"
    (fault,) = faults_of(GOOD.replace("fans:", more, 1))
    assert fault.startswith("ducts[B].from: a second duct leads away from 'fan'")


def test_a_hood_without_a_duct():
    source, alone = hood(2)
    text = GOOD.replace("hoods:", f"{source}\nhoods:\n{alone}", 1)
    with pytest.raises(InputError, match=r"hoods\[hood 2\]: no duct leads from this hood, so no fan draws on it; add"):
        check_joined(parse_workplace(text))


@pytest.mark.parametrize(
    ("cut", "words"),
    [
        ("fans", "the file has no fan, and nothing drives the air"),
        ("ducts", "the file has no ducts; add 'ducts' and a fan"),
        ("curve", "no curve is given for fan, so no flow can be computed as built; add it from the maker's sheet"),
    ],
)
def test_what_is_missing_to_compute_anything(cut, words):
    workplace = parse_workplace(GOOD.split("scenarios:")[0])
    bare = workplace.fans[0].model_copy(update={"curve": None})
    update = {"curve": {"fans": (bare,)}, "fans": {"fans": ()}, "ducts": {"ducts": ()}}[cut]
    with pytest.raises(InputError, match=words):
        check_joined(workplace.model_copy(update=update))
