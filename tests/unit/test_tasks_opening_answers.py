"""What goes in through each opening of an enclosure, and the lines of a hood's entry loss."""

import math

import pytest

from hoodwright.tasks.assess import assess
from hoodwright.tasks.export import as_json
from hoodwright.workplace import parse_workplace
from odd_hoods import ODD_HOODS

ANSWER = assess(parse_workplace(ODD_HOODS))


def hood(name, answer=ANSWER):
    return next(hood for hood in answer.hoods if hood.name == name)


def test_the_flow_through_all_openings_is_the_design_flow():
    cell = hood("robot cell")
    assert sum(o.count * o.area * o.velocity for o in cell.openings) == pytest.approx(cell.design_flow, rel=1e-9)
    assert [o.name for o in cell.openings] == ["main opening", "cable port", "gap under the door"]
    assert cell.openings[1].area == pytest.approx(math.pi / 4 * 0.06**2)


def test_todays_velocity_follows_todays_flow():
    first = hood("robot cell").openings[0]
    assert first.velocity_today / first.velocity == pytest.approx(650 / 700, rel=1e-9)


def test_other_hoods_have_no_openings():
    assert all(answer.openings == () for answer in ANSWER.hoods if answer.type != "enclosing")


def test_entry_lines_only_where_there_are_slots_or_a_filter():
    assert [bool(h.entry_lines) for h in ANSWER.hoods if h.name in ("tray slot", "downdraught table")] == [True, True]
    assert hood("corner hood").entry_lines == () and hood("robot cell").entry_lines == ()
    assert "filter in downdraught table" in hood("downdraught table").entry_lines[0].formula


def test_machines_get_both_in_si():
    (cell,) = [h for h in as_json(ANSWER)["hoods"] if h["name"] == "robot cell"]
    assert cell["openings"][1]["count"] == 3
    assert cell["openings"][0]["inward_velocity_m_s"] == pytest.approx(hood("robot cell").openings[0].velocity)
    (slot,) = [h for h in as_json(ANSWER)["hoods"] if h["name"] == "tray slot"]
    assert len(slot["entry_lines"]) == len(hood("tray slot").entry_lines)


def test_words_follow_the_units_that_are_asked_for():
    answer = assess(parse_workplace(ODD_HOODS), "US")
    assert "in" in hood("robot cell", answer).openings[0].size
    told = " ".join(str(h.enough) + str(h.met) for h in answer.hoods)
    assert "\u2009mm" not in told and "m³/h" not in told
