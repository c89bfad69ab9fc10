"""Suction behind a hood by its entry, worked on paper: 0.3 m3/s in a duct of 0.2 x 0.1 m, 15 m/s, air of 1.2041 kg/m3.

VP = 1.2041 x 15² / 2 = 135.46 Pa.
"""

import pytest

from hoodwright.tasks.assess import assess
from hoodwright.tasks.hood_entry import entry_loss
from hoodwright.workplace import parse_workplace

WORKPLACE = """
hoodwright: 1
name: Shop
air: {temperature: 20 degC, relative_humidity: 0 %}
room: {size: [9 m, 9 m, 4 m]}
contaminants: [{name: dust, kind: dust}]
sources: [{name: saw, contaminant: dust, at: [2 m, 1.9 m, 1 m], dispersion: gentle}]
hoods:
- {name: hood, type: capturing, serves: [saw], opening: {rectangle: [0.4 m, 0.2 m]}, flange: 0.4 m, at: [2 m, 2 m, 1 m], facing: [0, -1, 0], intended_flow: 1080 m3/h}
ducts:
- {name: A, from: hood, to: fan, rectangle: [0.2 m, 0.1 m], length: 3 m}
- {name: stack, from: fan, to: outside, rectangle: [0.2 m, 0.1 m], length: 3 m}
fans: [{name: fan}]
"""  # noqa: E501

VP = 1.2041 * 15**2 / 2
FLANGED = 0.49
PAPER = 2e-4  # the density on paper has five digits
RECEIVING = (
    ("type: capturing", "type: receiving"),
    ("flange: 0.4 m, at: [2 m, 2 m, 1 m], facing: [0, -1, 0]", "at: [2 m, 1.9 m, 1.6 m], facing: [0, 0, -1]"),
)
ENCLOSING = ("type: capturing", "type: enclosing"), ("flange: 0.4 m", "form: laboratory cupboard")


def workplace_of(*changes: tuple[str, str], **entry: str):
    text = WORKPLACE
    for key, value in entry.items():
        changes = (*changes, ("serves: [saw]", f"serves: [saw], {key}: {value}"))
    for old, new in changes:
        assert old in text, old
        text = text.replace(old, new)
    return parse_workplace(text)


def answer_of(*changes: tuple[str, str], **entry: str):
    return assess(workplace_of(*changes, **entry))


def suction_of(*changes: tuple[str, str], **entry: str) -> float:
    return answer_of(*changes, **entry).hoods[0].suction


def cautions_of(answer, about: str = "hood") -> list[str]:
    return [c.text.replace("\u2009", " ") for c in answer.cautions if c.about == about]


def lines_of(answer) -> list[tuple[str, str]]:
    return [(line.formula, line.filled) for line in answer.ducts[0].lines]


def paper(value: float):
    return pytest.approx(value, rel=PAPER)


@pytest.mark.parametrize(
    "entry, loss",
    [
        ("{taper: 90 deg}", 0.25),
        ("{taper: 75 deg}", 0.21),
        ("{like: grinding tapered}", 0.40),
        ("{like: grinding tapered by regulation}", 0.45),
        ("{loss: 0.3}", 0.3),
        ("{loss: 0}", 0.0),
    ],
)
def test_a_stated_entry(entry, loss):
    assert suction_of(entry=entry) == paper((1 + loss) * VP)


def test_a_round_taper_loses_less_than_a_rectangular_one():
    assert suction_of(("{rectangle: [0.4 m, 0.2 m]}", "{round: 0.3 m}"), entry="{taper: 90 deg}") == paper(1.15 * VP)


def test_slots_and_plenum():
    """Two slots of 0.6 m x 25 mm, 0.03 m2: 10 m/s, 60.205 Pa. 1.78 x 60.205 + 0.49 x 135.46 + 135.46 = 309.0 Pa."""
    answer = answer_of(entry="{slots: {count: 2, size: [0.6 m, 25 mm], plenum: [0.6 m, 0.3 m]}}")
    assert answer.hoods[0].suction == paper(1.78 * 1.2041 * 10**2 / 2 + FLANGED * VP + VP)
    assert ("r = VP of the slots / VP of the duct = (A duct / A slots)²", "(0.02 / 0.03)² = 0.44444") in lines_of(
        answer
    )
    assert "F = 1.78 r + F into the duct + the greater of r and 1 - 1" in dict(lines_of(answer))


def test_slots_faster_than_the_duct_are_what_the_air_is_accelerated_for():
    """One slot of 0.6 m x 25 mm: 20 m/s, 240.82 Pa. 1.78 x 240.82 + 0.49 x 135.46 + 240.82 = 735.9 Pa."""
    found = suction_of(entry="{slots: {size: [0.6 m, 25 mm], plenum: [0.6 m, 0.3 m]}}")
    slot = 1.2041 * 20**2 / 2
    assert found == paper(1.78 * slot + FLANGED * VP + slot)


def test_a_slot_as_opening_is_taken_as_a_slot_before_a_plenum():
    answer = answer_of(("{rectangle: [0.4 m, 0.2 m]}", "{slot: [0.6 m, 50 mm]}"), ("flange: 0.4 m, ", ""))
    assert answer.hoods[0].suction == paper(1.78 * 1.2041 * 10**2 / 2 + FLANGED * VP + VP)
    assert any("it is taken as a slot before a plenum" in text for text in cautions_of(answer))


def test_a_capturing_hood_is_plain_flanged_or_a_bell_mouth():
    assert suction_of() == paper(1.49 * VP)
    assert suction_of(("flange: 0.4 m, ", "")) == paper(1.93 * VP)
    assert suction_of(("flange: 0.4 m", "bell_mouth: true")) == paper(1.04 * VP)


def test_a_canopy_without_entry_has_its_duct_butted_into_the_back_and_says_so():
    answer = answer_of(*RECEIVING)
    assert answer.hoods[0].suction == paper(1.49 * VP)
    said = "a duct butted into the back of the hood is taken, which loses as a flanged opening (F = 0.49)"
    assert f"how its air enters the duct is not stated in full: {said}" in cautions_of(answer)


def test_a_wheel_hood_without_entry_has_a_straight_take_off():
    wheel = ("dispersion: gentle", "dispersion: thrown, wheel: {work: grinding, diameter: 300 mm, width: 50 mm}")
    workplace = workplace_of(*RECEIVING, wheel)
    loss = entry_loss(workplace.hoods[0], workplace.ducts[0], workplace)
    assert (loss.coefficient, loss.assumed) == (0.65, "a straight take-off of a wheel hood is taken")


def test_an_enclosure_without_entry_has_its_duct_butted_into_the_back():
    answer = answer_of(*ENCLOSING)
    assert answer.hoods[0].suction == paper(1.49 * VP)
    assert any("back of the enclosure" in text for text in cautions_of(answer))


def test_a_stated_entry_is_not_called_assumed():
    for entry in ("{taper: 90 deg}", "{like: plain}", "{loss: 0.2}"):
        assert not any("not stated in full" in text for text in cautions_of(answer_of(*RECEIVING, entry=entry)))


FILTER = "{clean: 50 Pa, dirty: 200 Pa, at: 2160 m3/h, exponent: 1}"


def test_a_filter_in_the_hood_is_in_its_suction():
    """Half its rated flow: 100 Pa dirty, 25 Pa clean."""
    answer = answer_of(filter=FILTER)
    assert answer.hoods[0].suction == paper(1.49 * VP + 100)
    assert answer.hoods[0].suction_line.formula.startswith("hood suction = (1 + F) rho V² / 2 + filter")
    assert answer.hoods[0].suction_line.filled.endswith(f" + 100 = {answer.hoods[0].suction:.5g} Pa")
    assert ("filter in hood, dirty = rated x (Q / Q rated)^n", "200 x (0.3 / 0.6)^1 = 100 Pa") in lines_of(answer)
    assert "its suction is 302 Pa with a dirty filter and 227 Pa with a clean one at the same flow: read both" in (
        cautions_of(answer)
    )


def test_the_fan_is_told_of_the_filter_clean_and_dirty():
    with_filter, without = answer_of(filter=FILTER).fans[0], answer_of().fans[0]
    assert with_filter.total_pressure - without.total_pressure == pytest.approx(100)
    assert with_filter.total_pressure_clean - without.total_pressure_clean == pytest.approx(25)


def test_uneven_slots_are_told():
    """0.03 m2 of slots before 0.0594 m2 of plenum: 1.98 times; 0.06 m2 is just even."""
    slots = "{{slots: {{count: 2, size: [0.6 m, 25 mm], plenum: [{}, 0.1 m]}}}}"
    uneven = cautions_of(answer_of(entry=slots.format("0.5 m")))
    assert any(text.startswith("the air in its slots is 1.7 times as fast as in the plenum") for text in uneven)
    assert not any("as in the plenum" in text for text in cautions_of(answer_of(entry=slots.format("0.6 m"))))


def test_a_face_of_less_than_two_duct_areas_is_told():
    narrow = cautions_of(answer_of(("[0.4 m, 0.2 m]", "[0.2 m, 0.15 m]"), entry="{taper: 60 deg}"))
    assert any(text.startswith("its face has 1.5 times the area of its duct") for text in narrow)
    just = cautions_of(answer_of(("[0.4 m, 0.2 m]", "[0.2 m, 0.2 m]"), entry="{taper: 60 deg}"))
    assert not any("times the area of its duct" in text for text in just)


@pytest.mark.parametrize(
    "entry, diameters", [("{taper: 60 deg}", 3), ("{loss: 0.3}", 5), ("{like: plain}", 5), ("{like: bell mouth}", 3)]
)
def test_where_a_tap_is_read(entry, diameters):
    told = cautions_of(answer_of(entry=entry))
    assert any(f"a tap {diameters} diameters along A reads about" in text for text in told)


def test_a_duct_too_short_for_a_tap_is_told():
    short = cautions_of(answer_of(("name: A, from: hood, to: fan", "name: A, from: hood, to: fan"), ("length: 3 m}\n- {name: stack", "length: 0.3 m}\n- {name: stack")))  # fmt: skip  # noqa: E501
    assert "A is 300 mm long; suction is read from 400 mm on: there is no good place for a tap" in short
    assert not any("no good place" in text for text in cautions_of(answer_of()))


def test_without_a_duct_nothing_is_told_of_the_entry():
    text = WORKPLACE[: WORKPLACE.index("ducts:")].replace("serves: [saw]", "serves: [saw], entry: {taper: 60 deg}")
    answer = assess(parse_workplace(text))
    assert answer.hoods[0].suction is None
    assert not any("tap" in caution.text for caution in answer.cautions)


def test_every_source_of_an_entry_is_listed():
    answer = answer_of(entry="{slots: {size: [0.6 m, 25 mm], plenum: [0.6 m, 20 mm]}}")
    assert {"hood-figure", "exam-equations", "even-flow"} <= set(answer.sources)
    assert "us-1910-94" in answer_of(entry="{like: grinding tapered by regulation}").sources
    assert "hood-taper" in answer_of(entry="{taper: 60 deg}").sources


TAKE_OFF = "{{slots: {{count: 2, size: [0.6 m, 25 mm], plenum: [0.6 m, 0.3 m], take_off: {}}}}}"


@pytest.mark.parametrize(
    "take_off, loss",
    [("{taper: 60 deg}", 0.17), ("{taper: 180 deg}", 0.64), ("{like: plain}", 0.93), ("{loss: 0.3}", 0.3)],
)
def test_how_the_duct_leaves_the_plenum(take_off, loss):
    """Slots as above: 1.78 x 60.205 + F x 135.46 + 135.46, F of the take-off in place of 0.49."""
    answer = answer_of(entry=TAKE_OFF.format(take_off))
    assert answer.hoods[0].suction == pytest.approx((1.78 * 0.44444 + loss + 1) * VP, rel=PAPER)
    assert not any("is not stated in full" in text for text in cautions_of(answer))


def test_a_tapered_take_off_is_named_and_its_suction_is_read_nearer():
    workplace = workplace_of(entry=TAKE_OFF.format("{taper: 60 deg}"))
    entry = entry_loss(workplace.hoods[0], workplace.ducts[0], workplace)
    assert entry.name == "2 slots before a plenum, rectangular taper of 60 deg"
    assert entry.source == "hood-figure, compound hoods; hood-taper, tapered hoods"
    assert entry.tapered and entry.behind == 0.17


def test_what_is_taken_for_the_take_off_stands_beside_its_words():
    texts = cautions_of(answer_of(entry="{slots: {count: 2, size: [0.6 m, 25 mm], plenum: [0.6 m, 0.3 m]}}"))
    taken = "its duct is taken as butted into the plenum (F = 0.49); a tapered take-off loses less"
    assert f"how its air enters the duct is not stated in full: {taken}" in texts


@pytest.mark.parametrize(
    "angle, source",
    [
        (90, "hood-taper, tapered hoods"),
        (165, "hood-taper, tapered hoods; duct-maker-hoods, slope of 0 degrees"),
        (180, "duct-maker-hoods, slope of 0 degrees"),
    ],
)
def test_a_taper_names_the_tables_it_was_read_from(angle, source):
    workplace = workplace_of(entry=f"{{taper: {angle} deg}}")
    assert entry_loss(workplace.hoods[0], workplace.ducts[0], workplace).source == source
