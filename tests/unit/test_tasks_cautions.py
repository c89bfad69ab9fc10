"""Cautions of the trade: each appears where it applies, and only there."""

import pytest

from hoodwright.tasks.assess import assess
from hoodwright.tasks.streams import NEVER_TOGETHER
from hoodwright.workplace import parse_workplace

BENCH = """
hoodwright: 1
name: Bench
room: {size: [9 m, 9 m, 3 m]}
contaminants:
- {name: fume, kind: fume, hazards: []}
- {name: mist, kind: mist, hazards: []}
sources:
- {name: joint, contaminant: fume, at: [2 m, 1.9 m, 1 m], dispersion: gentle}
- {name: bath, contaminant: mist, at: [4 m, 1.9 m, 1 m], dispersion: gentle}
hoods:
- {name: nozzle, type: capturing, serves: [joint], opening: {round: 100 mm}, flange: 100 mm, at: [2 m, 2 m, 1 m], facing: [0, -1, 0]}
- {name: slot, type: capturing, serves: [bath], opening: {round: 100 mm}, flange: 100 mm, at: [4 m, 2 m, 1 m], facing: [0, -1, 0]}
ducts:
- {name: A, from: nozzle, to: J, round: 100 mm, length: 3 m}
- {name: B, from: slot, to: J, round: 100 mm, length: 3 m}
- {name: main, from: J, to: fan, round: 150 mm, length: 3 m}
- {name: stack, from: fan, to: outside, round: 150 mm, length: 3 m}
fans: [{name: fan}]
"""  # noqa: E501

ALWAYS = [
    ("nozzle", "for the joint the lower end of its class was taken"),
    ("slot", "for the bath the lower end of its class was taken"),
    ("nozzle", "23.8 Pa is right behind its opening"),
    ("slot", "23.8 Pa is right behind its opening"),
    ("J", "A and B meet here without 'joins_at'"),
    ("fan", "291 m³/h leaves the room through it"),
    ("fan", "system effect, belt and motor losses are not in its power"),
    ("Bench", "static or hood suction taps: mind lagging"),
    ("Bench", "these answers hold for still, open air before the hood"),
]


def cautions_of(*changes: tuple[str, str], system: str = "SI") -> list[tuple[str, str]]:
    text = BENCH
    for old, new in changes:
        assert old in text, old
        text = text.replace(old, new)
    answer = assess(parse_workplace(text), system)
    return [(caution.about, caution.text.replace("\u2009", " ")) for caution in answer.cautions]


def starts(cautions: list[tuple[str, str]], about: str, words: str) -> bool:
    return any(one == about and text.startswith(words) for one, text in cautions)


def hazard(word: str, of: str = "fume, hazards: []") -> tuple[str, str]:
    return f"kind: {of}", f"kind: {of.split(',')[0]}, hazards: [{word}]"


def draught(text: str) -> tuple[str, str]:
    return "size: [9 m, 9 m, 3 m]", f"size: [9 m, 9 m, 3 m], draught: {{{text}}}"


def person(at: str) -> tuple[str, str]:
    return "contaminants:", f"people: [{{name: worker, at: {at}}}]\ncontaminants:"


def test_a_quiet_bench_gets_only_what_always_holds():
    cautions = cautions_of()
    assert len(cautions) == len(ALWAYS)
    assert all(starts(cautions, *caution) for caution in ALWAYS)


@pytest.mark.parametrize(
    "word, begins",
    [
        ("asthmagen", "an asthmagen: no level is known to be harmless"),
        ("carcinogen", "a carcinogen: enclose first"),
        ("isocyanate", "isocyanates: breathing protection stays on until a measured clearance time"),
        ("asbestos", "asbestos: licensed work only"),
        ("lead", "lead: a ventilation test does not show compliance"),
        ("silica", "silica dust: a ventilation test does not show compliance"),
        ("flammable", "flammable: keep the exhaust below 25 % of the lower limit"),
        ("explosible dust", "explosible dust: a named person must review the whole system first"),
        ("sparks", "sparks: keep them out of ducts and filters"),
        ("aluminium or magnesium", "aluminium or magnesium: keep its system apart"),
        ("perchloric", "perchloric acid: a wash-down system of its own"),
    ],
)
def test_each_hazard_has_its_caution(word, begins):
    assert starts(cautions_of(hazard(word)), "fume", begins)
    assert not starts(cautions_of(), "fume", begins)


def test_explosible_dust_names_the_standard_of_today():
    text = dict(cautions_of(hazard("explosible dust")))["fume"]
    assert "NFPA 660" in text
    assert "DSEAR" in text


WORDS_OF_A_FILE = {"anything else": "flammable", "organic": "flammable", "mist": "lead"}


@pytest.mark.parametrize("one, other, words", NEVER_TOGETHER)
def test_streams_that_must_not_meet_in_a_duct(one, other, words):
    """The first stream is a fume, the second a mist; 'mist' itself is told by the kind."""
    first, second = (WORDS_OF_A_FILE.get(word, word) for word in ((other, one) if one == "mist" else (one, other)))
    both = (hazard(first), hazard(second, "mist, hazards: []"))
    text = f"{words} must not share a duct: give each a system of its own"
    assert ("J", text) in cautions_of(*both)
    assert not any(text == found for _, found in cautions_of(*both, *apart("outside")))


def apart(end: str) -> tuple[tuple[str, str], ...]:
    """The second hood on a duct and a fan of its own."""
    return (
        ("from: slot, to: J", "from: slot, to: second fan"),
        ("fans: [", "fans: [{name: second fan}, "),
        ("- {name: main", f"- {{name: end, from: second fan, to: {end}, round: 100 mm, length: 1 m}}\n- {{name: main"),
    )


def test_two_fans_into_one_stack_share_a_duct_too():
    joined = (("from: fan, to: outside", "from: fan, to: top"), ("fans: [", "fans: ["))
    top = ("- {name: main", "- {name: chimney, from: top, to: outside, round: 200 mm, length: 2 m}\n- {name: main")
    found = cautions_of(hazard("acid"), hazard("cyanide", "mist, hazards: []"), *apart("top"), *joined, top)
    assert ("top", "acid and cyanide must not share a duct: give each a system of its own") in found


def test_a_narrow_flange():
    narrow = ("flange: 100 mm, at: [2 m", "flange: 50 mm, at: [2 m")
    assert (
        "nozzle",
        "its flange is narrower than 88.6 mm, so it is counted as plain; a table top is not a flange",
    ) in cautions_of(narrow)


def test_an_opening_and_a_duct_of_different_size():
    begins = "its duct is narrower than its opening"
    assert starts(cautions_of(("to: J, round: 100 mm, length: 3 m}\n- {name: B", "to: J, round: 80 mm, length: 3 m}\n- {name: B")), "nozzle", begins)  # fmt: skip  # noqa: E501


@pytest.mark.parametrize("speed, told", [("0.25 m/s", False), ("0.26 m/s", True), ("0.2 m/s, wander: 0.1 m/s", True)])
def test_a_draught_of_more_than_half_the_capture_velocity(speed, told):
    """Gentle: 0.5 m/s, half of it 0.25 m/s."""
    cautions = cautions_of(draught(f"towards: [1, 0, 0], speed: {speed}"))
    assert starts(cautions, "nozzle", "draughts reach") is told


def test_equations_that_differ_widely():
    """A slot-like plain rectangle 200 x 50 mm at 150 mm: DallaValle 0.5 x (10 x 0.0225 + 0.01) = 0.1175 m3/s;
    Fletcher: z = 1.5, b = 0.174716, a = 1.5 x 4^b = 1.91110, 0.5 x 0.01 x (0.93 + 8.58 x 3.65230) = 0.161334 m3/s:
    27 % less."""
    slot = "opening: {rectangle: [200 mm, 50 mm]}, flange: 0 mm, at: [2 m"
    cautions = cautions_of(
        ("opening: {round: 100 mm}, flange: 100 mm, at: [2 m", slot), ("[2 m, 1.9 m", "[2 m, 1.85 m")
    )
    assert ("nozzle", "the equations differ by 27 % for the joint; the most demanding one rules") in cautions


def test_outside_the_range():
    cautions = cautions_of(("[2 m, 1.9 m", "[2 m, 1.6 m"))
    assert ("nozzle", "400 mm to the joint is outside the equations' range; only certain bounds are given") in cautions


def test_a_source_beside_the_axis():
    cautions = cautions_of(("[2 m, 1.9 m", "[2.03 m, 1.9 m"))  # atan(0.03 / 0.1) = 16.7 degrees
    assert ("nozzle", "the joint lies 17 degrees off its axis; the straight distance is used") in cautions
    assert not any("off its axis" in text for _, text in cautions_of(("[2 m, 1.9 m", "[2.01 m, 1.9 m")))


TO_THE_RIGHT = draught("towards: [1, 0, 0], speed: 0.1 m/s")


@pytest.mark.parametrize(
    "at, told",
    [
        ("[1.5 m, 1.9 m]", True),  # the draught blows from behind the worker to the joint
        ("[2.5 m, 1.9 m]", False),  # the worker stands downstream
        ("[2 m, 1.4 m]", False),  # the draught crosses
        ("[0.5 m, 1.9 m]", False),  # too far off to matter
    ],
)
def test_a_person_between_draught_and_source(at, told):
    cautions = cautions_of(TO_THE_RIGHT, person(at))
    assert starts(cautions, "worker", "stands between the draught and the joint") is told


def test_a_person_without_a_draught():
    assert not any(about == "worker" for about, _ in cautions_of(person("[1.5 m, 1.9 m]")))


def test_flexible_hose():
    hose = ("to: fan, round: 150 mm", "to: fan, material: flexible, round: 150 mm")
    assert starts(cautions_of(hose), "main", "flexible hose: sag and bends make its loss two to three times")


def test_a_junction_out_of_balance():
    longer = ("from: slot, to: J, round: 100 mm, length: 3 m", "from: slot, to: J, round: 100 mm, length: 9 m")
    text = next(text for about, text in cautions_of(longer) if about == "J" and text.startswith("static"))
    assert text.startswith("static pressures differ (ratio 0.")
    assert "left alone, B gets less than intended; " in text
    assert text.endswith(". Editions of the rule differ")


def test_a_junction_far_out_of_balance_shows_no_corrected_flow():
    longer = ("from: slot, to: J, round: 100 mm, length: 3 m", "from: slot, to: J, round: 100 mm, length: 60 m")
    found = cautions_of(longer)
    text = next(text for about, text in found if about == "J" and text.startswith("static"))
    assert "must carry" not in text and "before the fan is ordered" in text
    assert starts(found, "slot", "its side of J governs: until that is balanced it gets less")


def test_a_duct_wider_than_the_opening_takes_more_suction_than_shown():
    wide = ("to: J, round: 100 mm, length: 3 m}\n- {name: B", "to: J, round: 120 mm, length: 3 m}\n- {name: B")
    assert starts(cautions_of(wide), "nozzle", "its duct is wider than its opening")


def test_the_lowest_class_says_what_later_editions_begin_it_at():
    found = cautions_of(("at: [2 m, 1.9 m, 1 m], dispersion: gentle", "at: [2 m, 1.9 m, 1 m], dispersion: still"))
    text = next(text for about, text in found if about == "nozzle")
    assert "its upper end, 0.5 m/s, which takes" in text and "0.38 m/s (75 fpm)" in text


def test_a_hood_that_no_duct_leads_from():
    lone = ("- {name: B, from: slot, to: J, round: 100 mm, length: 3 m}\n", "")
    assert starts(cautions_of(lone), "slot", "no duct leads from it: its suction")


def test_without_any_ducts_nothing_is_said_of_them():
    text = BENCH[: BENCH.index("ducts:")]
    found = [caution.text for caution in assess(parse_workplace(text)).cautions]
    assert [text for text in found if "lower end" not in text] == [found[-1]]


def test_each_caution_is_told_once():
    cautions = cautions_of(hazard("sparks"), TO_THE_RIGHT, person("[1.5 m, 1.9 m]"))
    assert len(cautions) == len(set(cautions))


def test_cautions_in_us_units():
    """0.3 m/s = 59 fpm, 0.5 m/s = 98 fpm."""
    cautions = cautions_of(draught("towards: [1, 0, 0], speed: 0.3 m/s"), system="US")
    assert starts(cautions, "nozzle", "draughts reach 59.1 fpm, more than half the capture velocity of 98.4 fpm")


def test_a_clash_of_one_hood_is_told_where_the_others_join_too():
    """The first hood alone has both; the second shares its duct from J on, and is refused with it."""
    both = hazard("flammable, sparks")
    text = "flammable vapour or mist and sparks must not share a duct: give each a system of its own"
    found = cautions_of(both)
    assert ("nozzle", text) in found and ("J", text) in found


def test_a_stated_capture_velocity_outside_its_class_is_told():
    old = "dispersion: gentle}\n- {name: bath"
    slow = cautions_of((old, old.replace("gentle", "gentle, capture_velocity: 0.3 m/s")))
    assert starts(slow, "joint", "its stated capture velocity of 0.3 m/s lies below the 0.5 to 1 m/s of a gentle")
    inside = cautions_of((old, old.replace("gentle", "gentle, capture_velocity: 0.7 m/s")))
    assert not any(text.startswith("its stated") for _, text in inside)
