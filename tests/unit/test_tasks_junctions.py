"""Three ways to balance a junction: each is put into the file, and the sides must then agree.

The bench with two branches of test_tasks_run: A governs with -294.673 Pa, B arrives with -261.148 Pa at 200 m3/h.
"""

import pytest
from test_tasks_run import TWO_BRANCHES, answer_of, paper

from hoodwright.tasks.assess import assess
from hoodwright.workplace import parse_workplace

B_ROUND = "to: J, round: 80 mm"


def side_of(*changes):
    (junction,) = answer_of(*changes).junctions
    (side,) = junction.sides
    return side


def ratio_with(*changes) -> float:
    (junction,) = answer_of(*changes).junctions
    return junction.ratio


def test_the_numbers_on_paper():
    """Damper 294.673 - 261.148 = 33.525 Pa, 33.525 / 73.5466 = 0.45583 VP. Flow 212.452 m3/h, main 612.452 m3/h."""
    side = side_of()
    assert (side.name, side.damper, side.damper_vp) == ("B", pytest.approx(33.525, rel=1e-3), paper(0.45583))
    assert (side.flow * 3600, side.main_flow * 3600, side.fan_flow * 3600) == (
        paper(212.452),
        paper(612.452),
        paper(612.452),
    )
    assert side.advice == "correct the flow of the side with less suction"


def test_words_say_all_three():
    size, flow, damper = (words.replace("\u2009", " ") for words in side_of().words)
    assert size == (
        "another size: a round duct of 77.8 mm would agree at the same flow, and no size made comes nearer than the one "  # noqa: E501
        "it has"
    )
    assert flow == "more flow: 212 m³/h; with every side corrected the main carries 612 m³/h, the fan 612 m³/h"
    assert damper == "damper: 33.5 Pa, 0.46 velocity pressures of B; lock it and mark its position"


def test_the_agreeing_diameter_agrees():
    diameter = side_of().diameter
    assert ratio_with((B_ROUND, f"to: J, round: {diameter * 1000!r} mm")) == pytest.approx(1.0, abs=1e-6)


def test_the_damper_agrees():
    damper = side_of().damper
    changed = ("fittings: [{elbow: 90 deg}]", f"fittings: [{{elbow: 90 deg}}, {{damper: {damper!r} Pa}}]")
    assert ratio_with(changed) == pytest.approx(1.0, abs=1e-9)


def test_the_corrected_flow_agrees_as_far_as_losses_go_by_the_square():
    flow = side_of().flow
    assert ratio_with(("intended_flow: 200 m3/h", f"intended_flow: {flow * 3600!r} m3/h")) == pytest.approx(
        1.0, abs=0.01
    )


def test_another_size_of_the_series_is_named_where_it_comes_nearer():
    """Without its elbow and at 1 m, B arrives with too little: at 80 mm -(1.93 + 0.32270 + 0.18) x 73.5466 = -178.92."""  # noqa: E501
    side = side_of(("length: 4 m, fittings: [{elbow: 90 deg}]", "length: 1 m"))
    assert side.ratio == pytest.approx(178.92 / 294.673, rel=1e-4)
    assert side.advice == "choose another size for one side"
    assert side.size_ratio >= side.ratio
    assert "The rule corrects flows from a ratio of 0.80 only" in side.words[1]


def test_inch_sizes_in_us_units():
    (junction,) = assess(parse_workplace(TWO_BRANCHES), "US").junctions
    assert junction.sides[0].size / 0.0254 == pytest.approx(3.0)


@pytest.mark.parametrize(
    "entry", ["slots: {count: 1, size: [300 mm, 15 mm], plenum: [300 mm, 100 mm]}", "taper: 60 deg", "loss: 0.2"]
)
def test_the_agreeing_diameter_agrees_behind_any_entry(entry):
    """The slots stay as they are when the duct changes: their loss does not go with the duct's velocity pressure."""
    slotted = (
        "facing: [0, -1, 0], intended_flow: 200 m3/h",
        f"facing: [0, -1, 0], intended_flow: 200 m3/h, entry: {{{entry}}}",
    )
    hood_filter = ("facing: [0, -1, 0], intended_flow: 400 m3/h", "facing: [0, -1, 0], intended_flow: 400 m3/h, filter: {clean: 300 Pa, dirty: 500 Pa, at: 400 m3/h}")  # fmt: skip  # noqa: E501
    side = side_of(slotted, hood_filter)
    assert side.name == "B"
    changed = (B_ROUND, f"to: J, round: {side.diameter * 1000!r} mm")
    assert ratio_with(slotted, hood_filter, changed) == pytest.approx(1.0, abs=1e-6)


THREE_LEVELS = (
    (
        "- {name: main, from: J, to: filter, round: 125 mm, length: 5 m}",
        "- {name: sub, from: J, to: K, round: 125 mm, length: 1 m, joins_at: 30 deg}\n- {name: C, from: third hood, to: K, round: 100 mm, length: 9 m, fittings: [{elbow: 90 deg, pieces: 3}, {elbow: 90 deg, pieces: 3}]}\n- {name: main, from: K, to: filter, round: 160 mm, length: 5 m}",  # noqa: E501
    ),
    (
        "ducts:",
        "- {name: third hood, type: capturing, serves: [left joint], opening: {round: 100 mm}, at: [2 m, 2 m, 1.2 m], facing: [0, -1, 0], intended_flow: 420 m3/h}\nducts:",  # noqa: E501
    ),
)


def test_a_side_that_is_a_main_itself():
    """At K the sub-main, faster when it is narrower, is brought up to C."""
    first, second = answer_of(*THREE_LEVELS).junctions
    assert (first.name, second.name, second.governing) == ("J", "K", "C")
    (side,) = second.sides
    assert side.name == "sub"
    narrower = ("to: K, round: 125 mm", f"to: K, round: {side.diameter * 1000!r} mm")
    changed = answer_of(*THREE_LEVELS, narrower).junctions[1]
    assert changed.ratio == pytest.approx(1.0, abs=1e-6)


def test_no_size_helps_where_the_side_lacks_nothing_by_friction():
    """Hood 'right' alone through a damper so strong that no wide duct takes as little: B governs, A is brought up."""
    side = side_of(("fittings: [{elbow: 90 deg}]", "fittings: [{elbow: 90 deg}, {damper: 5000 Pa}]"))
    assert side.name == "A" and side.diameter < 0.06


def test_where_editions_disagree_both_are_told():
    """B of 3.2 m: -(1.93 + 1.29079 x 0.8 + 0.33) x 73.5466 = -242.16 Pa: ratio 0.8218, the other way round 1.217."""
    changed = ("round: 80 mm, length: 4 m", "round: 80 mm, length: 3.2 m")
    (junction,) = answer_of(changed).junctions
    assert junction.ratio == pytest.approx(0.8218, abs=5e-5)
    assert junction.advice == "correct the flow of the side with less suction"
    assert junction.editions_differ.endswith("say: choose another size for one side")
    assert answer_of().junctions[0].editions_differ == ""
